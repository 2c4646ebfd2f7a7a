// Reads rules files: the defaults first, then each utility's own laid over them.
//
// A merge patch (RFC 7396) replaces what it names. Reading each file straight into the rules, in order, gives the same
// rules as patching the JSON and reading the result, and every message can still point into the file it is about.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <map>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "catalog/class_meaning.hpp"
#include "io/job/job_fields.hpp"
#include "io/text/json_reader.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_compare.hpp"
#include "mainbore/rules_file.hpp"
#include "rules/conflicts.hpp"

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
constexpr std::array<std::pair<std::string_view, std::string_view>, 8> codes_of_a_job = {{
    {"job.duplicate-key", "rules.duplicate-key"},
    {"job.unknown-value", "rules.unknown-value"},
    {"job.wrong-type", "rules.wrong-type"},
    {"job.no-unit", "rules.wrong-quantity"},
    {"job.unknown-unit", "rules.wrong-quantity"},
    {"job.wrong-unit", "rules.wrong-quantity"},
    {"job.not-a-quantity", "rules.wrong-quantity"},
    {"job.out-of-range", "rules.out-of-range"},
}};
constexpr io::JsonCodes rules_codes{"rules.unknown-key", "rules.wrong-type", codes_of_a_job};

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
constexpr JobField bore{.path = "bore",
                        .type = FieldType::quantity,
                        .help = "inside diameter of the main",
                        .kind = Kind::length,
                        .least = Measure(0.3, Kind::length),
                        .greatest = Measure(160.0, Kind::length)};
constexpr JobField laid{.path = "laid",
                        .type = FieldType::whole,
                        .help = "year in which the main was laid",
                        .kind = Kind::ratio,
                        .least = Measure(1800.0, Kind::ratio),
                        .greatest = Measure(2100.0, Kind::ratio)};
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
constexpr JobField dwellings{.path = "dwellings",
                             .type = FieldType::whole,
                             .help = "a number of dwellings",
                             .kind = Kind::ratio,
                             .least = Measure(0.0, Kind::ratio),
                             .greatest = Measure(100000.0, Kind::ratio)};
constexpr JobField line_size{.path = "line",
                             .type = FieldType::size,
                             .help = "nominal size of a service line or meter",
                             .least = Measure(0.25, Kind::length),
                             .greatest = Measure(24.0, Kind::length)};
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
          .greatest = Measure(field.greatest, field.kind)};
}

std::string_view group_of(std::string_view path) { return path.substr(0, path.find('.')); }
std::string_view key_of(std::string_view path) { return path.substr(path.find('.') + 1); }

std::vector<std::string_view> all_paths() {
  std::vector<std::string_view> paths;
  for (const RuleField& field : rule_fields()) paths.push_back(field.path);
  for (const PermissionField& field : permission_fields()) {
    paths.push_back(field.path);
    paths.push_back(field.first);
  }
  for (const CapField& field : cap_fields()) paths.push_back(field.path);
  for (const SpecificationField& field : specification_fields()) paths.push_back(field.path);
  paths.insert(paths.end(), {not_tapped_path, closed_season_path, clearances_path, by_dwellings_path});
  return paths;
}

constexpr std::array<std::string_view, 12> months = {"January",   "February", "March",    "April",
                                                     "May",       "June",     "July",     "August",
                                                     "September", "October",  "November", "December"};

// "11-01"
std::optional<YearDay> year_day(std::string_view text) {
  const auto digits = [&](std::size_t at) {
    return io::is_digit(text[at]) && io::is_digit(text[at + 1]) ? 10 * (text[at] - '0') + (text[at + 1] - '0') : 0;
  };
  if (text.size() != 5 || text[2] != '-') return std::nullopt;
  const YearDay day{digits(0), digits(3)};
  const std::chrono::month_day date(std::chrono::month(static_cast<unsigned>(day.month)),
                                    std::chrono::day(static_cast<unsigned>(day.day)));
  return date.ok() ? std::optional(day) : std::nullopt;
}

std::string in_words(YearDay day) {
  return std::to_string(day.day) + ' ' + std::string(months[static_cast<std::size_t>(day.month - 1)]);
}

class RulesReader : io::JsonReader {
 public:
  explicit RulesReader(const Catalog& catalog)
      : JsonReader(rules_codes), catalog_(catalog), set_(rule_fields().size(), false) {}

  RulesFile load(std::span<const RuleText> files) {
    read(default_file, catalog_.file(default_file), true);
    if (sound()) expect_complete();
    rules_.name = "default rules";
    if (!files.empty() && sound()) {
      usual_ = RulesReader(catalog_).load({}).rules;
      for (const PermissionField& field : permission_fields()) field.by_default.in(rules_) = field.target.in(*usual_);
    }
    for (const RuleText& file : files) {
      read(file.name, file.text, false);
      rules_.name = &file == files.data() ? file_name_ : rules_.name + " + " + file_name_;
    }
    if (sound() && usual_) note_looser();
    RulesFile result;
    if (sound()) result.rules = std::move(rules_);
    result.diagnostics = found();
    return result;
  }

 private:
  // ---- one file

  void read(std::string_view name, std::string_view text, bool defaults) {
    defaults_ = defaults;
    file_name_ = name;
    file_ = defaults ? nullptr : kept(name);
    touched_.clear();
    for (auto& lists : {&own_, &first_}) {
      for (Rows& rows : *lists) rows.nodes.assign(rows.rows.size(), untouched);
    }
    read_document(text, {name, longest_rules, "a rules file", deepest_rules}, [&] { read_root(defaults); });
  }

  void read_root(bool defaults) {
    if (node_at(0).type != JsonType::object) {
      return wrong_type(0, "the rules", "rules are an object: { \"name\": ..., \"direct\": { ... }, ... }");
    }
    // The name first: every rule of the file may need it.
    RulesDocument document;
    for_members(0, [&](std::uint32_t child, std::string_view key) {
      const auto* const line = document_line(key);
      if (line != nullptr) document.*line->text = plain_text(child);
    });
    if (!document.name.empty()) file_name_ = document.name;
    document.name = file_name_;
    if (!defaults) rules_.documents.push_back(std::move(document));
    for_members(0, [&](std::uint32_t child, std::string_view key) { read_top(child, key); });
    lay_rows();
    check_conflicts();
    check_rows();
    if (usual_) check_reasons();
  }

  template <class Visit>
  void for_members(std::uint32_t node, Visit visit) {
    members(node, [&](std::uint32_t child) { visit(child, node_at(child).key); });
  }

  void read_top(std::uint32_t node, std::string_view key) {
    if (document_line(key) != nullptr) return;
    if (key == "note") return static_cast<void>(text_of(node));
    if (key == own_words_path) return read_words(node);
    std::vector<std::string_view> known = {"note", own_words_path};
    for (const DocumentLine& line : document_lines()) known.push_back(line.key);
    for (const std::string_view path : all_paths()) {
      if (std::find(known.begin(), known.end(), group_of(path)) == known.end()) known.push_back(group_of(path));
    }
    if (std::find(known.begin(), known.end(), key) == known.end())
      return not_known(node, key, "a group of rules", known);
    if (!is_object(node, "a group of rules is an object")) return;
    for_members(node, [&](std::uint32_t child, std::string_view inner) { read_rule(child, key, inner); });
  }

  void read_rule(std::uint32_t node, std::string_view group, std::string_view key) {
    const std::string path = std::string(group) + '.' + std::string(key);
    const auto fields = rule_fields();
    for (std::size_t i = 0; i < fields.size(); ++i) {
      if (fields[i].path == path) return read_field(node, i);
    }
    for (std::size_t i = 0; i < permission_fields().size(); ++i) {
      const PermissionField& field = permission_fields()[i];
      if (field.path == path) return read_limits(node, own_[i]);
      if (field.first == path) return read_limits(node, first_[i]);
    }
    for (const CapField& field : cap_fields()) {
      if (field.path != path) continue;
      touched_[field.path] = node;
      return read_into(node, field.target.in(rules_), RowOf::caps);
    }
    for (const SpecificationField& field : specification_fields()) {
      if (field.path == path)
        return read_rows(node, field.target.in(rules_), "\"text\": ...",
                         [&](std::uint32_t row) { return read_specification(row); });
    }
    if (path == not_tapped_path) return read_into(node, rules_.main.not_tapped, RowOf::not_tapped);
    if (path == closed_season_path) {
      return read_rows(node, rules_.main.closed_season, "\"from\": \"11-01\", \"to\": \"04-01\"",
                       [&](std::uint32_t row) { return read_season(row); });
    }
    if (path == clearances_path) return read_clearances(node);
    if (path == by_dwellings_path) {
      return read_rows(node, rules_.water.by_dwellings, "\"dwellings_from\": 1, \"tap\": \"1 in\"",
                       [&](std::uint32_t row) { return read_by_dwellings(row); });
    }
    std::vector<std::string_view> known;
    std::string_view elsewhere;
    for (const std::string_view other : all_paths()) {
      if (group_of(other) == group) known.push_back(key_of(other));
      if (key_of(other) == key) elsewhere = other;
    }
    not_known(node, key, "a rule of " + io::quoted(group), known,
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
    const std::size_t before = faults();
    Stated stated;
    if (node_at(node).type != JsonType::object) {
      stated.value = node;
      stated.basis = basis_of(node, {});
    } else {
      BasisKeys basis;
      for_members(node, [&](std::uint32_t child, std::string_view key) {
        if (key == "value") {
          stated.value = child;
        } else if (key == "unit") {
          stated.unit = text_of(child);
        } else if (!read_basis_key(child, key, basis)) {
          std::vector<std::string_view> known = basis_keys();
          known.insert(known.begin(), {"value", "unit"});
          not_known(child, key, "part of a rule", known);
        }
      });
      if (stated.value == 0 && !basis.reference) {
        add(node, {"rules.missing", "a rule without a value", "\"value\": ..."});
      }
      stated.basis = basis_of(node, basis);
    }
    if (stated.value != 0 && node_at(stated.value).type == JsonType::null) {
      add(stated.value, {"rules.wrong-type", "null would take the rule away",
                         "give a value, or leave the key out to keep the rule as it is"});
    }
    if (faults() > before) return std::nullopt;
    return stated;
  }

  void read_field(std::uint32_t node, std::size_t index) {
    const RuleField& field = rule_fields()[index];
    if (may_be_unset(field) && node_at(node).type == JsonType::null) return unset(field);
    const auto stated = read_stated(node);
    if (!stated) return;
    std::visit(
        [&](const auto& target) {
          auto& rule = target.in(rules_);
          if (stated->value == 0 && number_of(mainbore::value_of(rules_, field)) == std::nullopt &&
              may_be_unset(field)) {
            return add(node, {"rules.missing", "a rule without a value", "\"value\": ..."});
          }
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

  // As it is by default.
  void unset(const RuleField& field) {
    std::visit([&]<class Single>(const RuleTarget<Single>& target) { target.in(rules_) = Single(); }, field.target);
  }

  template <class T>
  std::optional<T> value_of(const Stated& stated, const RuleField& field) {
    if constexpr (std::is_same_v<T, std::optional<Length>>) {
      return value_of<Length>(stated, field);
    } else if constexpr (std::is_same_v<T, std::optional<NominalSize>>) {
      return value_of<NominalSize>(stated, field);
    } else if constexpr (std::is_same_v<T, std::optional<Temperature>>) {
      return value_of<Temperature>(stated, field);
    } else if constexpr (std::is_same_v<T, std::optional<double>>) {
      return value_of<double>(stated, field);
    } else if constexpr (std::is_same_v<T, ThreadStandard>) {
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
      if (field.whole && *base != std::floor(*base)) {
        add(stated.value, {"rules.out-of-range", io::quoted(node_at(stated.value).text) + " is not a whole number",
                           "a count, such as 4"});
        return std::nullopt;
      }
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
    const io::JsonNode& node = node_at(stated.value);
    if (node.type != JsonType::string && node.type != JsonType::number) {
      wrong_type(stated.value, "a value", io::allowed_text(spec, catalog_));
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
      if (found == nearby_names.end()) return not_known(child, key, "a thing to keep clear of", nearby_names);
      read_clearance(child, static_cast<NearbyThing>(found - nearby_names.begin()));
    });
  }
  void read_clearance(std::uint32_t node, NearbyThing what) {
    std::vector<Clearance>& all = rules_.place.clearances;
    const auto at = std::find_if(all.begin(), all.end(), [&](const Clearance& c) { return c.what == what; });
    if (node_at(node).type == JsonType::null) {
      return add(node, {"rules.wrong-type", "null would take the clearance away and say no word why",
                        "{ \"value\": \"0 ft\", \"reason\": \"...\" }"});
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
    touched_[clearance_path(what)] = node;
    if (at != all.end()) {
      *at = changed;
    } else {
      all.push_back(changed);
    }
  }

  // ---- largest taps

  // Rows of one list, and where each stands in the file being read.
  static constexpr std::uint32_t untouched = 0;
  struct Rows {
    std::vector<TapLimit> rows;
    std::vector<std::uint32_t> nodes;
  };

  void read_limits(std::uint32_t node, Rows& rows) {
    Rows read;
    read_rows(node, read.rows, "\"largest\": ...", [&](std::uint32_t row) {
      read.nodes.push_back(row);
      return read_limit(row, RowOf::permissions);
    });
    rows = std::move(read);
  }
  // Of which list a row with mains and a largest tap is.
  enum class RowOf : std::uint8_t { permissions, caps, not_tapped };
  void read_into(std::uint32_t node, TapLimits& limits, RowOf list) {
    std::vector<TapLimit> rows(limits.begin(), limits.end());
    read_rows(node, rows, list == RowOf::caps ? "\"largest\": ..." : "\"why\": ...",
              [&](std::uint32_t row) { return read_limit(row, list); });
    limits = TapLimits(std::move(rows));
  }

  template <class Row, class Read>
  void read_rows(std::uint32_t node, std::vector<Row>& rows, const std::string& part, Read read) {
    const std::string form = "{ \"material\": ..., " + part + " }";
    if (node_at(node).type != JsonType::array) {
      return wrong_type(node, "a list",
                        "a list of rows: [ " + form +
                            " ]; the first row that fits decides, and an empty list has "
                            "nothing to say");
    }
    rows.clear();
    for (std::uint32_t row = node + 1; row < node_at(node).next; row = node_at(row).next) {
      if (is_object(row, "a row is an object: " + form)) rows.push_back(read(row));
    }
  }

  // The part of a row that says for which mains it is.
  static constexpr std::array<std::string_view, 15> mains_keys = {
      "material",   "class",     "series",  "main_from",  "main_to",    "main_above", "main_below", "wall_from",
      "wall_below", "bore_from", "bore_to", "bore_above", "bore_below", "laid_from",  "laid_to"};
  // False for another key. Classes are read when the materials are known.
  bool read_mains_key(std::uint32_t child, std::string_view key, MainFilter& row, std::vector<std::uint32_t>& classes) {
    constexpr std::array<std::pair<std::string_view, std::optional<NominalSize> MainFilter::*>, 4> sizes = {{
        {"main_from", &MainFilter::main_from},
        {"main_to", &MainFilter::main_to},
        {"main_above", &MainFilter::main_above},
        {"main_below", &MainFilter::main_below},
    }};
    constexpr std::array<std::pair<std::string_view, std::optional<Length> MainFilter::*>, 6> lengths = {{
        {"wall_from", &MainFilter::wall_from},
        {"wall_below", &MainFilter::wall_below},
        {"bore_from", &MainFilter::bore_from},
        {"bore_to", &MainFilter::bore_to},
        {"bore_above", &MainFilter::bore_above},
        {"bore_below", &MainFilter::bore_below},
    }};
    const auto of = [&](const auto& keys) {
      const auto* const found =
          std::find_if(keys.begin(), keys.end(), [&](const auto& one) { return one.first == key; });
      return found == keys.end() ? nullptr : found;
    };
    if (const auto* const size = of(sizes)) {
      row.*size->second = read_size(child, main_size);
    } else if (const auto* const length = of(lengths)) {
      row.*length->second = read_length(child, key.starts_with("wall") ? wall : bore);
    } else if (key == "material") {
      each_text(child, [&](std::uint32_t item) {
        if (const auto read = read_text_value(item, material)) row.materials.push_back(std::get<Material>(*read));
      });
    } else if (key == "class") {
      each_text(child, [&](std::uint32_t item) { classes.push_back(item); });
    } else if (key == "series") {
      each_text(child, [&](std::uint32_t item) { row.series.push_back(read_series(item)); });
    } else if (key == "laid_from") {
      row.laid_from = read_year(child);
    } else if (key == "laid_to") {
      row.laid_to = read_year(child);
    } else {
      return false;
    }
    return true;
  }
  void finish_mains(std::uint32_t node, MainFilter& row, const std::vector<std::uint32_t>& classes) {
    check_ends(node, "main", row.main_from, row.main_to, row.main_above, row.main_below);
    check_ends(node, "bore", row.bore_from, row.bore_to, row.bore_above, row.bore_below);
    check_ends(node, "wall", row.wall_from, {}, {}, row.wall_below);
    check_ends(node, "laid", row.laid_from, row.laid_to, {}, {});
    for (const std::uint32_t item : classes) read_class(item, row);
    std::sort(row.pipes.begin(), row.pipes.end());
    row.pipes.erase(std::unique(row.pipes.begin(), row.pipes.end()), row.pipes.end());
  }
  // From and to are inclusive, above and below are not.
  template <class T>
  void check_ends(std::uint32_t node, std::string_view what, const std::optional<T>& from,
                  const std::type_identity_t<std::optional<T>>& to, const std::type_identity_t<std::optional<T>>& above,
                  const std::type_identity_t<std::optional<T>>& below) {
    const auto clash = [&](std::string_view upper, std::string_view lower) {
      add(node,
          {"rules.contradiction",
           std::string(what) + std::string(upper) + " leaves nothing over " + std::string(what) + std::string(lower),
           what == "laid" ? "years go from the earlier to the later" : "sizes go from the smaller to the larger"});
    };
    if (from && to && *to < *from) clash("_to", "_from");
    if (above && to && *to <= *above) clash("_to", "_above");
    if (from && below && *below <= *from) clash("_below", "_from");
    if (above && below && *below <= *above) clash("_below", "_above");
  }
  void unknown_part(std::uint32_t child, std::string_view key, std::vector<std::string_view> known) {
    known.insert(known.begin(), mains_keys.begin(), mains_keys.end());
    const auto basis = basis_keys();
    known.insert(known.end(), basis.begin(), basis.end());
    not_known(child, key, "part of a row", known);
  }

  ClosedSeason read_season(std::uint32_t node) {
    ClosedSeason row;
    BasisKeys basis;
    std::vector<std::uint32_t> classes;
    std::optional<YearDay> from;
    std::optional<YearDay> to;
    const auto day = [&](std::uint32_t child) {
      const auto read = year_day(text_of(child));
      if (!read && node_at(child).type == JsonType::string) {
        add(child, {"rules.unknown-value", io::quoted(node_at(child).text) + " is no day of the year",
                    "month and day, such as \"11-01\" for the first of November"});
      }
      return read;
    };
    bool has_from = false;
    bool has_to = false;
    for_members(node, [&](std::uint32_t child, std::string_view key) {
      if (read_mains_key(child, key, row, classes)) return;
      if (key == "from") {
        has_from = true;
        from = day(child);
      } else if (key == "to") {
        has_to = true;
        to = day(child);
      } else if (key == "why") {
        row.why = plain_text(child);
      } else if (!read_basis_key(child, key, basis)) {
        unknown_part(child, key, {"from", "to", "why"});
      }
    });
    if (!has_from || !has_to) {
      add(node,
          {"rules.missing", "a closed season without its first or last day", "\"from\": \"11-01\", \"to\": \"04-01\""});
    }
    if (from && to) {
      row.from = *from;
      row.to = *to;
      row.from_text = in_words(*from);
      row.to_text = in_words(*to);
    }
    finish_mains(node, row, classes);
    row.basis = basis_of(node, basis);
    return row;
  }

  FittingSpecification read_specification(std::uint32_t node) {
    FittingSpecification row;
    BasisKeys basis;
    std::vector<std::uint32_t> classes;
    for_members(node, [&](std::uint32_t child, std::string_view key) {
      if (read_mains_key(child, key, row, classes)) return;
      if (key == "tap_from") {
        row.tap_from = read_size(child, tap_size);
      } else if (key == "tap_to") {
        row.tap_to = read_size(child, tap_size);
      } else if (key == "tap_above") {
        row.tap_above = read_size(child, tap_size);
      } else if (key == "text") {
        row.text = plain_text(child);
      } else if (!read_basis_key(child, key, basis)) {
        unknown_part(child, key, {"tap_from", "tap_to", "tap_above", "text"});
      }
    });
    if (row.text.empty()) {
      add(node, {"rules.missing", "a specification without a word", "\"text\": \"bronze, double strap\""});
    }
    finish_mains(node, row, classes);
    check_ends(node, "tap", row.tap_from, row.tap_to, row.tap_above, {});
    row.basis = basis_of(node, basis);
    return row;
  }

  SizesByDwellings read_by_dwellings(std::uint32_t node) {
    SizesByDwellings row;
    BasisKeys basis;
    std::optional<int> from;
    for_members(node, [&](std::uint32_t child, std::string_view key) {
      if (key == "dwellings_from") {
        from = read_whole(child, dwellings, "a number of dwellings, such as 4");
      } else if (key == "dwellings_to") {
        row.to = read_whole(child, dwellings, "a number of dwellings, such as 4");
      } else if (key == "tap") {
        row.tap = read_size(child, tap_size);
      } else if (key == "line") {
        row.line = read_size(child, line_size);
      } else if (key == "meter") {
        row.meter = read_size(child, line_size);
      } else if (!read_basis_key(child, key, basis)) {
        std::vector<std::string_view> known = {"dwellings_from", "dwellings_to", "tap", "line", "meter"};
        const auto rest = basis_keys();
        known.insert(known.end(), rest.begin(), rest.end());
        not_known(child, key, "part of a row", known);
      }
    });
    const auto given = [&](std::string_view key) {
      bool found = false;
      for_members(node, [&](std::uint32_t, std::string_view member) { found = found || member == key; });
      return found;
    };
    if (!given("dwellings_from")) {
      add(node, {"rules.missing", "a row that does not say from how many dwellings on", "\"dwellings_from\": 1"});
    }
    if (!given("tap") && !given("line") && !given("meter")) {
      add(node, {"rules.missing", "a row without a size", "\"tap\", \"line\" or \"meter\": \"1 in\""});
    }
    row.from = from.value_or(0);
    if (from && row.to && *row.to < *from) {
      add(node, {"rules.contradiction", "dwellings_to lies below dwellings_from",
                 "numbers go from the smaller to the larger"});
    }
    row.basis = basis_of(node, basis);
    return row;
  }

  // ---- the utility's own words

  void read_words(std::uint32_t node) {
    if (!is_object(node, "own words are an object: { \"caution.eyes\": \"...\" }")) return;
    for_members(node, [&](std::uint32_t child, std::string_view key) {
      const auto ids = own_words_ids();
      const auto id = std::find(ids.begin(), ids.end(), key);
      if (id == ids.end()) return not_known(child, key, "a method, step or caution", ids);
      std::erase_if(rules_.words, [&](const OwnWords& words) { return words.id == *id; });
      if (node_at(child).type == JsonType::null) return;
      OwnWords words = read_own_words(child);
      words.id = *id;
      const auto at =
          std::find_if(rules_.words.begin(), rules_.words.end(), [&](const OwnWords& other) { return other.id > *id; });
      rules_.words.insert(at, std::move(words));
    });
  }
  // A bare text, or an object with the text and what it rests on.
  OwnWords read_own_words(std::uint32_t node) {
    OwnWords words;
    BasisKeys basis;
    if (node_at(node).type != JsonType::object) {
      words.text = plain_text(node);
    } else {
      for_members(node, [&](std::uint32_t child, std::string_view key) {
        if (key == "text") {
          words.text = plain_text(child);
        } else if (!read_basis_key(child, key, basis)) {
          std::vector<std::string_view> known = basis_keys();
          known.insert(known.begin(), "text");
          not_known(child, key, "part of the utility's words", known);
        }
      });
    }
    const JsonType type = node_at(node).type;
    if (text::is_blank(words.text) && (type == JsonType::string || type == JsonType::object)) {
      add(node, {"rules.missing", "words of the utility's own without a word", "\"...\", or null to take them away"});
    }
    const auto letters = std::count_if(words.text.begin(), words.text.end(),
                                       [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
    if (letters > longest_own_words) {
      add(node, {"rules.out-of-range", "words of the utility's own that are longer than a crew reads beside a step",
                 "at most " + std::to_string(longest_own_words) + " letters"});
    }
    words.basis = basis_of(node, basis);
    return words;
  }

  // A row of a list of largest taps, or of mains not tapped, which have none.
  TapLimit read_limit(std::uint32_t node, RowOf list) {
    const bool with_largest = list != RowOf::not_tapped;
    TapLimit row;
    std::vector<std::uint32_t> classes;
    BasisKeys basis;
    bool has_largest = false;
    bool none = !with_largest;
    for_members(node, [&](std::uint32_t child, std::string_view key) {
      if (read_mains_key(child, key, row, classes)) return;
      if (key == "largest" && with_largest) {
        has_largest = true;
        none = node_at(child).type == JsonType::string && io::plain_name(node_at(child).text) == "none";
        if (!none) row.largest = read_size(child, tap_size).value_or(NominalSize());
      } else if (key == "why") {
        row.why = plain_text(child);
      } else if (key == "consent") {
        row.consent = plain_text(child);
      } else if (!read_basis_key(child, key, basis)) {
        std::vector<std::string_view> parts;
        if (with_largest) parts.push_back("largest");
        parts.push_back("why");
        parts.push_back("consent");
        unknown_part(child, key, parts);
      }
    });
    if (text::is_blank(row.consent)) row.consent.clear();
    if (with_largest && !has_largest) {
      add(node, {"rules.missing", "a row without its largest tap", "\"largest\": \"1 in\", or \"none\""});
    } else if (none && row.why.empty()) {
      add(node,
          {"rules.missing", "a row that allows no tap and does not say what is done instead", "\"why\": \"...\""});
    }
    finish_mains(node, row, classes);
    row.basis = basis_of(node, basis);
    return row;
  }

  // A class is read as that of an order is, of each material that the row is for. One that means no pipe would never count.
  void read_class(std::uint32_t node, MainFilter& row) {
    const std::string_view text = text_of(node);
    const std::size_t before = row.pipes.size();
    for (std::size_t m = 0; m < material_count; ++m) {
      const auto of = static_cast<Material>(m);
      if (!row.materials.empty() && !row.materials.contains(of)) continue;
      const ClassWords words = catalog_.read_class(text, of);
      if (words.words.empty()) continue;
      for (const Pipe& pipe : catalog_.pipes()) {
        if (pipe.series->material == of && means_pipe(words, pipe)) row.pipes.push_back(&pipe);
      }
    }
    row.classes.emplace_back(text);
    if (row.pipes.size() > before) return;
    add(node, {"rules.unknown-value", io::quoted(text) + " is the class of no pipe that the row can be for",
               "such as \"PC 350\" or \"DR 18\""});
  }

  // The rows that stand first, then the list they stand before.
  void lay_rows() {
    for (std::size_t i = 0; i < own_.size(); ++i) {
      std::vector<TapLimit> rows = first_[i].rows;
      rows.insert(rows.end(), own_[i].rows.begin(), own_[i].rows.end());
      permission_fields()[i].target.in(rules_) = TapLimits(std::move(rows));
      nodes_[i] = first_[i].nodes;
      nodes_[i].insert(nodes_[i].end(), own_[i].nodes.begin(), own_[i].nodes.end());
    }
  }

  std::string read_series(std::uint32_t node) {
    std::string id(text_of(node));
    std::vector<std::string_view> known;
    for (const Pipe& pipe : catalog_.pipes()) {
      if (std::find(known.begin(), known.end(), pipe.series->id) == known.end()) known.push_back(pipe.series->id);
    }
    if (std::find(known.begin(), known.end(), id) == known.end()) {
      Problem problem{"rules.unknown-value", io::quoted(id) + " is not a known series of pipe", ""};
      problem.help = io::nearest_and_known(id, known, "one of: ");
      add(node, std::move(problem));
    }
    return id;
  }
  std::optional<NominalSize> read_size(std::uint32_t node, const JobField& spec) {
    const auto read = read_text_value(node, spec);
    return read ? std::optional(std::get<NominalSize>(*read)) : std::nullopt;
  }
  std::optional<Length> read_length(std::uint32_t node, const JobField& spec) {
    const auto read = read_text_value(node, spec);
    return read ? std::optional(std::get<Measure>(*read).as<1, 0, 0>()) : std::nullopt;
  }
  std::optional<int> read_year(std::uint32_t node) { return read_whole(node, laid, "a year, such as 1965"); }
  std::optional<int> read_whole(std::uint32_t node, const JobField& spec, std::string_view help) {
    if (node_at(node).type != JsonType::number) {
      wrong_type(node, help.substr(0, help.find(',')), std::string(help));
      return std::nullopt;
    }
    const auto read = read_text_value(node, spec);
    return read ? std::optional(std::get<int>(*read)) : std::nullopt;
  }
  // One text, or a list of several.
  template <class Visit>
  void each_text(std::uint32_t node, Visit visit) {
    if (node_at(node).type != JsonType::array) return visit(node);
    for (std::uint32_t item = node + 1; item < node_at(node).next; item = node_at(item).next) visit(item);
  }

  // ---- what a rule rests on

  [[nodiscard]] std::vector<std::string_view> basis_keys() const {
    if (defaults_) return {"source", "how", "note"};
    return {"reference", "reason"};
  }
  // Where the members stand that say so.
  struct BasisKeys {
    std::optional<std::uint32_t> source;
    std::optional<std::uint32_t> how;
    std::optional<std::uint32_t> reference;
    std::optional<std::uint32_t> reason;
  };
  // True when the key is one of those above, and read.
  bool read_basis_key(std::uint32_t node, std::string_view key, BasisKeys& basis) {
    const auto known = basis_keys();
    if (std::find(known.begin(), known.end(), key) == known.end()) return false;
    const bool printed = key == "reference" || key == "reason";
    static_cast<void>(printed ? plain_text(node) : std::string(text_of(node)));
    if (key == "source") basis.source = node;
    if (key == "how") basis.how = node;
    if (key == "reference") basis.reference = node;
    if (key == "reason") basis.reason = node;
    return true;
  }
  Basis basis_of(std::uint32_t node, const BasisKeys& keys) {
    Basis basis;
    basis.rule = true;
    if (!defaults_) {
      basis.how = How::published;  // in the utility's own standard
      basis.utility = true;
      const auto given = [&](const std::optional<std::uint32_t>& at) {
        return at ? node_at(*at).text : std::string_view();
      };
      const std::string_view reference = given(keys.reference);
      basis.reference = kept(reference.empty() ? std::string_view(file_name_) : reference);
      // A reason in which there is nothing to read is none.
      const std::string_view reason = given(keys.reason);
      if (!text::is_blank(reason)) basis.reason = kept(reason);
      basis.file = file_;
      return basis;
    }
    if (!keys.source || !keys.how) {
      add(node, {"rules.missing", "a default without \"source\" and \"how\"", ""});
      return basis;
    }
    basis.source = catalog_.source(text_of(*keys.source));
    if (basis.source == nullptr) {
      add(*keys.source, {"rules.unknown-value", io::quoted(text_of(*keys.source)) + " is not a known source", ""});
    }
    for (const How known : {How::published, How::derived, How::common_practice, How::memory}) {
      if (text_of(*keys.how) == name_of(known)) {
        basis.how = known;
        return basis;
      }
    }
    add(*keys.how, {"rules.unknown-value", io::quoted(text_of(*keys.how)) + " does not say how a number was had", ""});
    return basis;
  }
  const std::string* kept(std::string_view reference) {
    const auto found = std::find(rules_.references.begin(), rules_.references.end(), reference);
    return found != rules_.references.end() ? &*found : &rules_.references.emplace_back(reference);
  }

  // ---- the rules together

  void expect_complete() {
    for (std::size_t i = 0; i < set_.size(); ++i) {
      if (set_[i] || may_be_unset(rule_fields()[i])) continue;
      Diagnostic missing;
      missing.code = "rules.missing";
      missing.file = default_file;
      missing.message = "no rule \"" + std::string(rule_fields()[i].path) + '"';
      add(std::move(missing));
    }
  }

  // Told where the file touched either.
  void check_conflicts() {
    for (const rules::RuleConflict& conflict : rules::conflicts(rules_)) {
      constexpr std::array<std::string_view, 3> words = {" lies above ", " lies below ", " is the same as "};
      const std::string message = std::string(conflict.one) +
                                  std::string(words[static_cast<std::size_t>(conflict.clash)]) +
                                  std::string(conflict.other);
      for (const auto& [path, against] :
           {std::pair(conflict.one, conflict.other), std::pair(conflict.other, conflict.one)}) {
        const auto touched = touched_.find(path);
        if (touched == touched_.end()) continue;
        const Detail value = mainbore::value_of(rules_, field_at(against));
        add(touched->second,
            {"rules.contradiction", message, "set " + std::string(against) + " to match; it is " + shown_text(value)});
        break;
      }
    }
  }
  static const RuleField& field_at(std::string_view path) {
    const auto fields = rule_fields();
    return *std::find_if(fields.begin(), fields.end(), [&](const RuleField& field) { return field.path == path; });
  }
  static std::string shown_text(const Detail& value) {
    std::string text;
    append_detail(text, value, UnitSystem::us);
    return text.empty() ? "none" : text;
  }

  // Rows of this file that an earlier row leaves nothing to decide, or that allow less than the smallest tap.
  void check_rows() {
    const auto smallest = touched_.find("water.smallest_tap");
    for (const CapField& field : cap_fields()) check_cap(field);
    for (std::size_t list = 0; list < nodes_.size(); ++list) {
      const TapLimits& rows = permission_fields()[list].target.in(rules_);
      for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::uint32_t node = nodes_[list][i];
        const TapLimit& row = rows[i];
        const auto& tap = rules_.water.smallest_tap.value;
        if (tap && row.basis.utility && row.largest != NominalSize() && row.largest < *tap &&
            (node != untouched || smallest != touched_.end())) {
          add(node != untouched ? node : smallest->second,
              {"rules.contradiction",
               "the largest tap of " + row.largest.label() + " in lies below water.smallest_tap of " + tap->label() +
                   " in",
               "a row that allows no tap has \"largest\": \"none\" and says why"});
        }
        if (node == untouched) continue;
        for (std::size_t j = 0; j < i; ++j) {
          if (!rules::leaves_nothing_to(rows[j], row)) continue;
          if (rows[j].largest == row.largest) break;  // said twice
          add(node, {"rules.contradiction",
                     "row " + std::to_string(j + 1) + " is for all of these mains, stands first, and says " +
                         (rows[j].largest == NominalSize() ? "none" : rows[j].largest.label() + " in"),
                     "put the exception before the rule, or take one of them away"});
          break;
        }
      }
    }
  }

  void check_cap(const CapField& field) {
    const auto& tap = rules_.water.smallest_tap.value;
    const auto node = touched_.contains(field.path) ? touched_.find(field.path) : touched_.find("water.smallest_tap");
    if (!tap || node == touched_.end()) return;
    for (const TapLimit& row : field.target.in(rules_)) {
      if (row.largest == NominalSize() || row.largest >= *tap) continue;
      add(node->second, {"rules.contradiction",
                         std::string(field.path) + " of " + row.largest.label() +
                             " in lies below water.smallest_tap of " + tap->label() + " in",
                         "a cap that leaves no tap has \"largest\": \"none\" and says why"});
    }
  }

  // Looser than a safety default: not without a word.
  void check_reasons() {
    const bool all_read = sound();  // a row that was misread may be for other mains than it says
    std::vector<std::uint32_t> told;
    for (const RuleDifference& one : compare_rules(catalog_, *usual_, rules_)) {
      if (!needs_reason(one) || (one.material && !all_read)) continue;
      if (one.after_basis != nullptr && one.after_basis->reason != nullptr) continue;
      const auto node = place_of(one);
      if (!node || std::find(told.begin(), told.end(), *node) != told.end()) continue;
      told.push_back(*node);
      const std::string set = shown_text(one.after);
      add(*node, {"rules.looser-without-reason",
                  std::string(one.path) + ": " + set + mains_text(one) +
                      (one.change == RuleChange::looser ? " is looser than the default, "
                                                        : " is neither stricter nor looser than the default, ") +
                      shown_text(one.before),
                  one.material ? "say why in the row: \"reason\": \"...\""
                               : "say why: { \"value\": \"" + set + "\", \"reason\": \"...\" }"});
    }
  }
  // Where the file being read sets it.
  [[nodiscard]] std::optional<std::uint32_t> place_of(const RuleDifference& one) const {
    if (const auto touched = touched_.find(one.path); touched != touched_.end()) return touched->second;
    const auto* const row = std::get_if<const TapLimit*>(&one.row_after);
    if (row == nullptr) return std::nullopt;
    for (std::size_t list = 0; list < nodes_.size(); ++list) {
      const TapLimits& rows = permission_fields()[list].target.in(rules_);
      for (std::size_t i = 0; i < rows.size(); ++i) {
        if (&rows[i] == *row && nodes_[list][i] != untouched) return nodes_[list][i];
      }
    }
    return std::nullopt;
  }
  static std::string mains_text(const RuleDifference& one) {
    if (!one.material) return {};
    std::string text = " on " + std::string(name_of(*one.material)) + " of " + one.main_from->label();
    if (*one.main_to != *one.main_from) text += " to " + one.main_to->label();
    text += " in";
    if (!one.first_class.empty()) text += ", such as " + std::string(one.first_class) + ",";
    return text;
  }

  void note_looser() {
    for (const RuleDifference& one : compare_rules(catalog_, *usual_, rules_)) {
      if (!needs_reason(one) || one.after_basis == nullptr) continue;
      LooserRule& rule = rules_.looser.emplace_back();
      rule.path = one.path;
      rule.usual = one.before;
      rule.set = one.after;
      if (const auto* const row = std::get_if<const TapLimit*>(&one.row_after)) rule.row = *row;
      rule.material = one.material;
      rule.main_from = one.main_from;
      rule.main_to = one.main_to;
      rule.pipes = one.pipes;
      rule.basis = *one.after_basis;
    }
  }

  // ---- values and messages

  std::optional<FieldValue> read_value(std::uint32_t node, const JobField& spec, std::string_view text) {
    auto read = io::read_value(spec, text, catalog_);
    if (auto* const problem = std::get_if<Problem>(&read)) {
      add(node, std::move(*problem));
      return std::nullopt;
    }
    return std::get<FieldValue>(std::move(read));
  }
  std::optional<FieldValue> read_text_value(std::uint32_t node, const JobField& spec) {
    const io::JsonNode& found = node_at(node);
    if (found.type == JsonType::string || found.type == JsonType::number) return read_value(node, spec, found.text);
    wrong_type(node, "a value", io::allowed_text(spec, catalog_));
    return std::nullopt;
  }
  std::string_view text_of(std::uint32_t node) {
    const io::JsonNode& found = node_at(node);
    if (found.type != JsonType::string) {
      wrong_type(node, "a text");
      return {};
    }
    return found.text;
  }
  // One line that reports will print.
  std::string plain_text(std::uint32_t node) {
    if (node_at(node).type != JsonType::string) return std::string(text_of(node));
    auto read = read_value(node, printed_text, node_at(node).text);
    return read ? std::get<std::string>(std::move(*read)) : std::string();
  }
  bool is_object(std::uint32_t node, std::string_view help) {
    const JsonType type = node_at(node).type;
    if (type == JsonType::object) return true;
    wrong_type(node, "an object", std::string(help));
    return false;
  }
  void not_known(std::uint32_t node, std::string_view key, const std::string& what,
                 std::span<const std::string_view> known, std::string help = {}) {
    if (enough()) return;
    if (help.empty()) help = io::nearest_and_known(key, known, "one of: ");
    add_at_key(node, {"rules.unknown-key", io::quoted(key) + " is not " + what, std::move(help)});
  }

  const Catalog& catalog_;
  Rules rules_;
  std::optional<Rules> usual_;  // the defaults, where files are laid over them
  std::array<Rows, 3> own_;     // by row of permission_fields(): the lists, and the rows that stand before them
  std::array<Rows, 3> first_;
  std::array<std::vector<std::uint32_t>, 3> nodes_;  // of the rows in force
  std::vector<bool> set_;                            // by row of rule_fields()

  // of the file being read
  bool defaults_ = false;
  const std::string* file_ = nullptr;
  std::string file_name_;                              // its "name", or else its file's
  std::map<std::string_view, std::uint32_t> touched_;  // rules it set, and where
};

constexpr std::array codes = {
    DiagnosticText{"rules.duplicate-key", "a rule given twice",
                   "Of two equal keys neither counts: keep the right one."},
    DiagnosticText{
        "rules.unknown-key", "a key that is no rule",
        "A misspelt key would silently leave the default in force, so it is an error, with the nearest known "
        "key."},
    DiagnosticText{"rules.unknown-value", "a word that is not one of those known",
                   "The value must be one of the words listed. The nearest is offered but never taken."},
    DiagnosticText{
        "rules.wrong-type", "a value of the wrong kind",
        "A rule is its value or an object with the value; a list of largest taps is a list of objects. A null "
        "would take the rule away, and no rule can be missing."},
    DiagnosticText{"rules.wrong-quantity", "not a quantity of the right kind",
                   "Nobody guesses a unit here: write the number and its unit, such as \"18 in\" or \"150 psi\"."},
    DiagnosticText{
        "rules.out-of-range", "a value out of range",
        "The value lies outside what a rule of this kind can sensibly be: mostly a slip of the decimal point "
        "or the unit."},
    DiagnosticText{"rules.contradiction", "two rules that cannot both be",
                   "A caution level above its limit, a lower end above its upper end, a row that an earlier one leaves "
                   "nothing to decide, a largest tap below the smallest."},
    DiagnosticText{
        "rules.looser-without-reason", "looser than a safety default, and no word why",
        "A utility may set a rule looser than a default that guards people or pipe, or otherwise where neither way is "
        "the stricter, but not silently: the file gives the \"reason\", and every plan that relies on the "
        "rule prints it."},
    DiagnosticText{
        "rules.missing", "a value that is required",
        "An object for a rule needs its value or its reference; a row of largest taps needs its largest tap, "
        "and where that is none, what is done instead."},
};

}  // namespace

std::span<const DiagnosticText> rules_diagnostic_texts() { return codes; }

RulesFile load_rules(const Catalog& catalog, std::span<const RuleText> files) {
  return RulesReader(catalog).load(files);
}

}  // namespace mainbore
