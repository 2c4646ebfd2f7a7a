// Reads rules files: the defaults first, then each utility's own laid over them.
//
// A merge patch (RFC 7396) replaces what it names. Reading each file straight into the rules, in order, gives the same
// rules as patching the JSON and reading the result, and every message can still point into the file it is about.
#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "io/job_fields.hpp"
#include "io/json_text.hpp"
#include "io/nearest.hpp"
#include "io/source_text.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/rules_file.hpp"

namespace mainbore {
namespace {

using io::FieldType;
using io::FieldValue;
using io::JobField;
using io::JsonType;
using io::Problem;

constexpr std::string_view default_file = "rules/default.json";
constexpr int deepest_rules = 8;

// Values are read as those of a job are, so that one spelling serves both; their faults are the rules' here.
std::string_view rules_code(std::string_view job_code) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 8> codes = {{
      {"job.duplicate-key", "rules.duplicate-key"},
      {"job.unknown-value", "rules.unknown-value"},
      {"job.wrong-type", "rules.wrong-type"},
      {"job.no-unit", "rules.wrong-quantity"},
      {"job.unknown-unit", "rules.wrong-quantity"},
      {"job.wrong-unit", "rules.wrong-quantity"},
      {"job.not-a-quantity", "rules.wrong-quantity"},
      {"job.out-of-range", "rules.out-of-range"},
  }};
  const auto* const found =
      std::find_if(codes.begin(), codes.end(), [&](const auto& c) { return c.first == job_code; });
  return found == codes.end() ? job_code : found->second;
}

constexpr double foot = 12.0;  // inches
constexpr JobField main_size{.path = "main size",
                             .type = FieldType::size,
                             .help = "nominal size of a main",
                             .least = Measure(0.5, Kind::length),
                             .greatest = Measure(150.0, Kind::length)};
constexpr JobField tap_size{.path = "largest",
                            .type = FieldType::size,
                            .help = "nominal size of a tap",
                            .least = Measure(0.25, Kind::length),
                            .greatest = Measure(60.0, Kind::length)};
constexpr JobField wall{.path = "wall_from",
                        .type = FieldType::quantity,
                        .help = "nominal wall",
                        .kind = Kind::length,
                        .least = Measure(0.01, Kind::length),
                        .greatest = Measure(20.0, Kind::length)};
constexpr JobField material{.path = "material",
                            .type = FieldType::material,
                            .help = "what the main is made of",
                            .least = Measure(),
                            .greatest = Measure()};
constexpr JobField clock_position{.path = "clock",
                                  .type = FieldType::clock,
                                  .help = "place round the pipe",
                                  .least = Measure(),
                                  .greatest = Measure()};
constexpr JobField printed_text{
    .path = "text", .type = FieldType::text, .help = "a line of text", .least = Measure(), .greatest = Measure()};
constexpr JobField clearance{.path = "clearance",
                             .type = FieldType::quantity,
                             .help = "distance along the main",
                             .kind = Kind::distance,
                             .least = Measure(0.0, Kind::distance),
                             .greatest = Measure(100.0 * foot, Kind::distance)};

JobField quantity_of(const RuleField& field) {
  return {.path = field.path,
          .type = FieldType::quantity,
          .help = field.help,
          .kind = field.kind,
          .least = Measure(field.least, field.kind),
          .greatest = Measure(field.most, field.kind)};
}

std::string_view group_of(std::string_view path) { return path.substr(0, path.find('.')); }
std::string_view key_of(std::string_view path) { return path.substr(path.find('.') + 1); }

std::vector<std::string_view> all_paths() {
  std::vector<std::string_view> paths;
  for (const RuleField& field : rule_fields()) paths.push_back(field.path);
  for (const TapLimitField& field : tap_limit_fields()) paths.push_back(field.path);
  paths.push_back(clearances_path);
  return paths;
}

class RulesReader {
 public:
  explicit RulesReader(const Catalog& catalog) : catalog_(catalog), set_(rule_fields().size(), false) {}

  RulesFile load(std::span<const RuleText> files) {
    read(default_file, catalog_.file(default_file), true);
    if (diagnostics_.empty()) expect_complete();
    rules_.name = "default rules";
    for (const RuleText& file : files) {
      read(file.name, file.text, false);
      rules_.name = &file == files.data() ? file_name_ : rules_.name + " + " + file_name_;
    }
    RulesFile result;
    if (diagnostics_.empty()) result.rules = std::move(rules_);
    result.diagnostics = std::move(diagnostics_);
    return result;
  }

 private:
  // ---- one file

  void read(std::string_view name, std::string_view text, bool defaults) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    defaults_ = defaults;
    file_name_ = name;
    touched_.clear();
    const io::SourceText source(text, name, 1);
    source_ = &source;
    if (text.size() > longest_rules) {
      return add({0, 0}, "",
                 {"json.too-large", std::to_string(text.size()) + " bytes",
                  "a rules file is at most " + std::to_string(longest_rules) + " bytes"});
    }
    if (const auto bad = io::first_not_utf8(text)) {
      return add({*bad, *bad + 1}, "", {"json.encoding", "not UTF-8 from here on", "save the file as UTF-8"});
    }
    const io::JsonText json(text, deepest_rules);
    json_ = &json;
    for (const io::JsonFault& fault : json.faults()) add(fault.span, json.pointer(fault.node), fault.problem);
    if (!json.is_json()) return;
    if (json.node(0).type != JsonType::object) {
      return add(0,
                 {"rules.wrong-type", std::string(io::article_of(json.node(0).type)) + " where the rules should stand",
                  "rules are an object: { \"name\": ..., \"direct\": { ... }, ... }"});
    }
    // The name first: every rule of the file may need it.
    for_members(0, [&](std::uint32_t child, std::string_view key) {
      if (key != "name") return;
      if (std::string given = plain_text(child); !given.empty()) file_name_ = std::move(given);
    });
    for_members(0, [&](std::uint32_t child, std::string_view key) { read_top(child, key); });
    check_order();
  }

  template <class Visit>
  void for_members(std::uint32_t node, Visit visit) {
    for (std::uint32_t child = node + 1; child < json_->node(node).next; child = json_->node(child).next) {
      visit(child, json_->node(child).key);
    }
  }

  void read_top(std::uint32_t node, std::string_view key) {
    if (key == "name") return;
    if (key == "note") return static_cast<void>(text_of(node));
    std::vector<std::string_view> known = {"name", "note"};
    for (const std::string_view path : all_paths()) {
      if (std::find(known.begin(), known.end(), group_of(path)) == known.end()) known.push_back(group_of(path));
    }
    if (std::find(known.begin(), known.end(), key) == known.end())
      return unknown_key(node, key, "a group of rules", known);
    if (!is_object(node, "a group of rules is an object")) return;
    for_members(node, [&](std::uint32_t child, std::string_view inner) { read_rule(child, key, inner); });
  }

  void read_rule(std::uint32_t node, std::string_view group, std::string_view key) {
    const std::string path = std::string(group) + '.' + std::string(key);
    const auto fields = rule_fields();
    for (std::size_t i = 0; i < fields.size(); ++i) {
      if (fields[i].path == path) return read_field(node, i);
    }
    for (const TapLimitField& field : tap_limit_fields()) {
      if (field.path == path) return read_limits(node, field);
    }
    if (path == clearances_path) return read_clearances(node);
    std::vector<std::string_view> known;
    std::string_view elsewhere;
    for (const std::string_view other : all_paths()) {
      if (group_of(other) == group) known.push_back(key_of(other));
      if (key_of(other) == key) elsewhere = other;
    }
    unknown_key(node, key, "a rule of " + io::quoted(group), known,
                elsewhere.empty() ? "" : "it belongs under " + io::quoted(group_of(elsewhere)));
  }

  // ---- rules with a single value

  // The value of a rule and what it rests on.
  struct Stated {
    std::uint32_t value = 0;  // 0: the value stays as it is
    std::string unit;         // where number and unit are given apart
    Basis basis;
  };

  // A bare value, or an object with the value and what it rests on.
  std::optional<Stated> read_stated(std::uint32_t node) {
    const std::size_t faults = diagnostics_.size();
    Stated stated;
    if (json_->node(node).type != JsonType::object) {
      stated.value = node;
      stated.basis = basis_of(node, {}, {}, {});
    } else {
      std::optional<std::uint32_t> source;
      std::optional<std::uint32_t> how;
      std::optional<std::uint32_t> reference;
      for_members(node, [&](std::uint32_t child, std::string_view key) {
        if (key == "value") {
          stated.value = child;
        } else if (key == "unit") {
          stated.unit = text_of(child);
        } else if (!read_basis_key(child, key, source, how, reference)) {
          std::vector<std::string_view> known = basis_keys();
          known.insert(known.begin(), {"value", "unit"});
          unknown_key(child, key, "part of a rule", known);
        }
      });
      if (stated.value == 0 && !reference) {
        add(node, {"rules.missing", "a rule without a value", "\"value\": ..."});
      }
      stated.basis = basis_of(node, source, how, reference);
    }
    if (stated.value != 0 && json_->node(stated.value).type == JsonType::null) {
      add(stated.value, {"rules.wrong-type", "null would take the rule away",
                         "give a value, or leave the key out to keep the rule as it is"});
    }
    if (diagnostics_.size() > faults) return std::nullopt;
    return stated;
  }

  void read_field(std::uint32_t node, std::size_t index) {
    const auto stated = read_stated(node);
    if (!stated) return;
    const RuleField& field = rule_fields()[index];
    std::visit(
        [&](auto target) {
          auto& rule = rules_.*target;
          if (stated->value != 0) {
            const auto value = value_of<std::decay_t<decltype(rule.value)>>(*stated, field);
            if (!value) return;
            rule.value = *value;
            set_[index] = true;
          }
          rule.basis = stated->basis;
          touched_[field.path] = node;
        },
        field.target);
  }

  template <class T>
  std::optional<T> value_of(const Stated& stated, const RuleField& field) {
    if constexpr (std::is_same_v<T, ThreadStandard>) {
      const auto read = read_text_value(stated.value, *io::find_field("service.thread")->field);
      return read ? std::optional(static_cast<ThreadStandard>(std::get<int>(*read))) : std::nullopt;
    } else if constexpr (std::is_same_v<T, ClockPosition>) {
      const auto read = read_text_value(stated.value, clock_position);
      return read ? std::optional(std::get<ClockPosition>(*read)) : std::nullopt;
    } else if constexpr (std::is_same_v<T, NominalSize>) {
      JobField spec = quantity_of(field);
      spec.type = FieldType::size;
      return read_size(stated.value, spec);
    } else {
      const auto base = read_number(stated, quantity_of(field));
      if (!base) return std::nullopt;
      if constexpr (std::is_same_v<T, double>) {
        return *base;
      } else if constexpr (std::is_same_v<T, Temperature>) {
        return Temperature::fahrenheit(*base);
      } else {
        return T::from_base(*base);
      }
    }
  }

  std::optional<double> read_number(const Stated& stated, JobField spec) {
    const io::JsonNode& node = json_->node(stated.value);
    if (node.type != JsonType::string && node.type != JsonType::number) {
      add(stated.value, {"rules.wrong-type", std::string(io::article_of(node.type)) + " where a value should stand",
                         io::allowed_text(spec, catalog_)});
      return std::nullopt;
    }
    std::string text(node.text);
    if (node.type == JsonType::number && !stated.unit.empty()) text += ' ' + stated.unit;
    // A share may be written as a percentage.
    double scale = 1.0;
    if (spec.kind == Kind::ratio && text.ends_with('%')) {
      scale = 0.01;
      spec.kind = Kind::percent;
      spec.least = Measure(spec.least.base() / scale, Kind::percent);
      spec.greatest = Measure(spec.greatest.base() / scale, Kind::percent);
    }
    const auto read = read_value(stated.value, spec, text);
    return read ? std::optional(std::get<Measure>(*read).base() * scale) : std::nullopt;
  }

  // ---- clearances

  void read_clearances(std::uint32_t node) {
    if (!is_object(node, "clearances are an object: { \"joint\": \"24 in\", ... }")) return;
    for_members(node, [&](std::uint32_t child, std::string_view key) {
      const auto* const found = std::find_if(nearby_names.begin(), nearby_names.end(), [&](std::string_view name) {
        return io::plain_name(name) == io::plain_name(key);
      });
      if (found == nearby_names.end()) return unknown_key(child, key, "a thing to keep clear of", nearby_names);
      read_clearance(child, static_cast<NearbyThing>(found - nearby_names.begin()));
    });
  }
  void read_clearance(std::uint32_t node, NearbyThing what) {
    std::vector<Clearance>& all = rules_.clearances;
    const auto at = std::find_if(all.begin(), all.end(), [&](const Clearance& c) { return c.what == what; });
    if (json_->node(node).type == JsonType::null) {
      if (at != all.end()) all.erase(at);
      return;
    }
    const auto stated = read_stated(node);
    if (!stated) return;
    if (stated->value == 0 && at == all.end()) {
      return add(node, {"rules.missing", "a clearance without a distance", "\"value\": \"24 in\""});
    }
    Clearance changed = at != all.end() ? *at : Clearance{what, {}};
    if (stated->value != 0) {
      const auto base = read_number(*stated, clearance);
      if (!base) return;
      changed.least.value = Length::from_base(*base);
    }
    changed.least.basis = stated->basis;
    if (at != all.end()) {
      *at = changed;
    } else {
      all.push_back(changed);
    }
  }

  // ---- largest taps

  void read_limits(std::uint32_t node, const TapLimitField& field) {
    if (json_->node(node).type != JsonType::array) {
      return add(
          node, {"rules.wrong-type", std::string(io::article_of(json_->node(node).type)) + " where a list should stand",
                 "a list of rows: [ { \"material\": ..., \"largest\": ... } ]; the first row that fits the main "
                 "decides, and an empty list allows no tap by this method"});
    }
    std::vector<TapLimit> rows;
    for (std::uint32_t row = node + 1; row < json_->node(node).next; row = json_->node(row).next) {
      if (is_object(row, "a row is an object: { \"material\": ..., \"largest\": ... }"))
        rows.push_back(read_limit(row));
    }
    rules_.*field.target = std::move(rows);
  }

  TapLimit read_limit(std::uint32_t node) {
    TapLimit row;
    std::optional<std::uint32_t> source;
    std::optional<std::uint32_t> how;
    std::optional<std::uint32_t> reference;
    bool has_largest = false;
    bool none = false;
    for_members(node, [&](std::uint32_t child, std::string_view key) {
      if (key == "material") {
        each_text(child, [&](std::uint32_t item) {
          if (const auto read = read_text_value(item, material)) row.materials.push_back(std::get<Material>(*read));
        });
      } else if (key == "class") {
        each_text(child, [&](std::uint32_t item) {
          std::string spelling = class_key(text_of(item));
          if (spelling.empty()) add(item, {"rules.unknown-value", "no class", "such as \"PC 350\" or \"DR 18\""});
          row.class_keys.push_back(std::move(spelling));
        });
      } else if (key == "series") {
        each_text(child, [&](std::uint32_t item) { row.series.push_back(read_series(item)); });
      } else if (key == "main_from") {
        row.main_from = read_size(child, main_size);
      } else if (key == "main_to") {
        row.main_to = read_size(child, main_size);
      } else if (key == "wall_from") {
        if (const auto read = read_text_value(child, wall)) row.wall_from = std::get<Measure>(*read).as<1, 0, 0>();
      } else if (key == "largest") {
        has_largest = true;
        none = json_->node(child).type == JsonType::string && io::plain_name(json_->node(child).text) == "none";
        if (!none) row.largest = read_size(child, tap_size).value_or(NominalSize());
      } else if (key == "why") {
        row.why = plain_text(child);
      } else if (!read_basis_key(child, key, source, how, reference)) {
        std::vector<std::string_view> known = basis_keys();
        known.insert(known.begin(),
                     {"material", "class", "series", "main_from", "main_to", "wall_from", "largest", "why"});
        unknown_key(child, key, "part of a row", known);
      }
    });
    if (!has_largest) {
      add(node, {"rules.missing", "a row without its largest tap", "\"largest\": \"1 in\", or \"none\""});
    } else if (none && row.why.empty()) {
      add(node,
          {"rules.missing", "a row that allows no tap and does not say what is done instead", "\"why\": \"...\""});
    }
    if (row.main_from && row.main_to && *row.main_to < *row.main_from) {
      add(node, {"rules.contradiction", "main_to is smaller than main_from", ""});
    }
    row.basis = basis_of(node, source, how, reference);
    return row;
  }

  std::string read_series(std::uint32_t node) {
    const std::string id(text_of(node));
    std::vector<std::string_view> known;
    for (const Pipe& pipe : catalog_.pipes()) {
      if (std::find(known.begin(), known.end(), pipe.series->id) == known.end()) known.push_back(pipe.series->id);
    }
    if (std::find(known.begin(), known.end(), id) == known.end()) {
      Problem problem{"rules.unknown-value", io::quoted(id) + " is not a known series of pipe", ""};
      suggest(problem, id, known);
      add(node, std::move(problem));
    }
    return id;
  }
  std::optional<NominalSize> read_size(std::uint32_t node, const JobField& spec) {
    const auto read = read_text_value(node, spec);
    return read ? std::optional(std::get<NominalSize>(*read)) : std::nullopt;
  }
  // One text, or a list of several.
  template <class Visit>
  void each_text(std::uint32_t node, Visit visit) {
    if (json_->node(node).type != JsonType::array) return visit(node);
    for (std::uint32_t item = node + 1; item < json_->node(node).next; item = json_->node(item).next) visit(item);
  }

  // ---- what a rule rests on

  [[nodiscard]] std::vector<std::string_view> basis_keys() const {
    if (defaults_) return {"source", "how", "note"};
    return {"reference", "reason"};
  }
  // True when the key is one of those above, and read.
  bool read_basis_key(std::uint32_t node, std::string_view key, std::optional<std::uint32_t>& source,
                      std::optional<std::uint32_t>& how, std::optional<std::uint32_t>& reference) {
    const auto known = basis_keys();
    if (std::find(known.begin(), known.end(), key) == known.end()) return false;
    static_cast<void>(key == "reference" ? plain_text(node) : std::string(text_of(node)));
    if (key == "source") source = node;
    if (key == "how") how = node;
    if (key == "reference") reference = node;
    return true;
  }
  Basis basis_of(std::uint32_t node, std::optional<std::uint32_t> source, std::optional<std::uint32_t> how,
                 std::optional<std::uint32_t> reference) {
    Basis basis;
    if (!defaults_) {
      basis.how = How::published;  // in the utility's own standard
      basis.utility = true;
      const std::string_view given = reference ? json_->node(*reference).text : std::string_view();
      basis.reference = kept(given.empty() ? std::string_view(file_name_) : given);
      return basis;
    }
    if (!source || !how) {
      add(node, {"rules.missing", "a default without \"source\" and \"how\"", ""});
      return basis;
    }
    basis.source = catalog_.source(text_of(*source));
    if (basis.source == nullptr) {
      add(*source, {"rules.unknown-value", io::quoted(text_of(*source)) + " is not a known source", ""});
    }
    for (const How known : {How::published, How::derived, How::common_practice, How::memory}) {
      if (text_of(*how) == name_of(known)) {
        basis.how = known;
        return basis;
      }
    }
    add(*how, {"rules.unknown-value", io::quoted(text_of(*how)) + " does not say how a number was had", ""});
    return basis;
  }
  const std::string* kept(std::string_view reference) {
    const auto found = std::find(rules_.references.begin(), rules_.references.end(), reference);
    return found != rules_.references.end() ? &*found : &rules_.references.emplace_back(reference);
  }

  // ---- the rules together

  void expect_complete() {
    for (std::size_t i = 0; i < set_.size(); ++i) {
      if (set_[i]) continue;
      Diagnostic missing;
      missing.code = "rules.missing";
      missing.file = default_file;
      missing.message = "no rule \"" + std::string(rule_fields()[i].path) + '"';
      diagnostics_.push_back(std::move(missing));
    }
  }

  // A rule that may not lie above another; judged where a file touched either.
  void check_order() {
    not_above("direct.plastic_wet_tap_coldest", rules_.plastic_wet_tap_coldest, "direct.plastic_wet_tap_warmest",
              rules_.plastic_wet_tap_warmest);
    not_above("machine.push_caution", rules_.push_caution, "machine.push_limit", rules_.push_limit);
    not_above("machine.ovality_caution", rules_.ovality_caution, "machine.ovality_limit", rules_.ovality_limit);
    not_above("place.lowest_elevation", rules_.lowest_elevation, "place.highest_elevation", rules_.highest_elevation);
    not_above("water.velocity_caution", rules_.velocity_caution, "water.velocity_limit", rules_.velocity_limit);
    not_above("cleaning.flush_velocity_least", rules_.flush_velocity_least, "cleaning.flush_velocity",
              rules_.flush_velocity);
    not_above("pit.type_c_most", rules_.type_c_most, "pit.type_a_least", rules_.type_a_least);
    not_above("pit.slope_stable_rock", rules_.slope_stable_rock, "pit.slope_type_a_short", rules_.slope_type_a_short);
    not_above("pit.slope_type_a_short", rules_.slope_type_a_short, "pit.slope_type_a", rules_.slope_type_a);
    not_above("pit.slope_type_a", rules_.slope_type_a, "pit.slope_type_b", rules_.slope_type_b);
    not_above("pit.slope_type_b", rules_.slope_type_b, "pit.slope_type_c", rules_.slope_type_c);
  }
  template <class T>
  void not_above(std::string_view lower_path, const Rule<T>& lower, std::string_view upper_path, const Rule<T>& upper) {
    if (!(upper.value < lower.value)) return;
    for (const auto& [path, other] : {std::pair(lower_path, upper_path), std::pair(upper_path, lower_path)}) {
      const auto touched = touched_.find(path);
      if (touched == touched_.end()) continue;
      return add(touched->second,
                 {"rules.contradiction", std::string(lower_path) + " lies above " + std::string(upper_path),
                  "set " + std::string(other) + " to match"});
    }
  }

  // ---- values and messages

  std::optional<FieldValue> read_value(std::uint32_t node, const JobField& spec, std::string_view text) {
    auto read = io::read_value(spec, text, catalog_);
    if (auto* const problem = std::get_if<Problem>(&read)) {
      problem->code = rules_code(problem->code);
      add(node, std::move(*problem));
      return std::nullopt;
    }
    return std::get<FieldValue>(std::move(read));
  }
  std::optional<FieldValue> read_text_value(std::uint32_t node, const JobField& spec) {
    const io::JsonNode& found = json_->node(node);
    if (found.type == JsonType::string || found.type == JsonType::number) return read_value(node, spec, found.text);
    add(node, {"rules.wrong-type", std::string(io::article_of(found.type)) + " where a value should stand",
               io::allowed_text(spec, catalog_)});
    return std::nullopt;
  }
  std::string_view text_of(std::uint32_t node) {
    const io::JsonNode& found = json_->node(node);
    if (found.type != JsonType::string) {
      add(node, {"rules.wrong-type", std::string(io::article_of(found.type)) + " where a text should stand", ""});
      return {};
    }
    return found.text;
  }
  // One line that reports will print.
  std::string plain_text(std::uint32_t node) {
    if (json_->node(node).type != JsonType::string) return std::string(text_of(node));
    auto read = read_value(node, printed_text, json_->node(node).text);
    return read ? std::get<std::string>(std::move(*read)) : std::string();
  }
  bool is_object(std::uint32_t node, std::string_view help) {
    const JsonType type = json_->node(node).type;
    if (type == JsonType::object) return true;
    add(node,
        {"rules.wrong-type", std::string(io::article_of(type)) + " where an object should stand", std::string(help)});
    return false;
  }
  static void suggest(Problem& problem, std::string_view text, std::span<const std::string_view> known) {
    if (const auto near = io::nearest(text, known)) problem.help = "did you mean \"" + std::string(*near) + "\"?  ";
    problem.help += "one of: " + io::listed(known);
  }
  void unknown_key(std::uint32_t node, std::string_view key, const std::string& what,
                   std::span<const std::string_view> known, std::string help = {}) {
    Problem problem{"rules.unknown-key", io::quoted(key) + " is not " + what, std::move(help)};
    if (problem.help.empty()) suggest(problem, key, known);
    add(json_->node(node).key_span, json_->pointer(node), std::move(problem));
  }
  void add(std::uint32_t node, Problem problem) {
    add(json_->node(node).span, json_->pointer(node), std::move(problem));
  }
  void add(io::Span span, std::string pointer, Problem problem) {
    if (diagnostics_.size() >= most_diagnostics) return;
    problem.code = rules_code(problem.code);
    diagnostics_.push_back(source_->at(span, std::move(pointer), std::move(problem)));
  }

  const Catalog& catalog_;
  Rules rules_;
  std::vector<bool> set_;  // by row of rule_fields()
  std::vector<Diagnostic> diagnostics_;

  // of the file being read
  const io::SourceText* source_ = nullptr;
  const io::JsonText* json_ = nullptr;
  bool defaults_ = false;
  std::string file_name_;                              // its "name", or else its file's
  std::map<std::string_view, std::uint32_t> touched_;  // rules it set, and where
};

}  // namespace

RulesFile load_rules(const Catalog& catalog, std::span<const RuleText> files) {
  return RulesReader(catalog).load(files);
}

}  // namespace mainbore
