// Reads rules files: the defaults first, then each utility's own laid over them.
//
// A merge patch (RFC 7396) replaces what it names. Reading each file straight into the rules, in order, gives the same
// rules as patching the JSON and reading the result, and every message can still point into the file it is about.
#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/rules/rule_rows.hpp"
#include "io/rules/rules_together.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_file.hpp"

namespace mainbore {
namespace {

using io::FieldType;
using io::JobField;
using io::JsonType;

constexpr std::string_view default_file = "rules/default.json";
constexpr int deepest_rules = 8;

constexpr double foot = 12.0;  // inches
constexpr JobField clock_position{.path = "clock",
                                  .type = FieldType::clock,
                                  .help = "place round the pipe",
                                  .least = Measure(),
                                  .greatest = Measure()};
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

class RulesReader : io::RuleRowReader {
 public:
  explicit RulesReader(const Catalog& catalog) : RuleRowReader(catalog), given_(rule_fields().size(), false) {}

  RulesFile load(std::span<const RuleText> files) {
    read(default_file, catalog().file(default_file), true);
    if (sound()) expect_complete();
    rules_.name = "default rules";
    if (!files.empty() && sound()) {
      usual_ = RulesReader(catalog()).load({}).rules;
      for (const PermissionField& field : permission_fields()) field.by_default.in(rules_) = field.target.in(*usual_);
    }
    for (const RuleText& file : files) {
      read(file.name, file.text, false);
      rules_.name = &file == files.data() ? file_name() : rules_.name + " + " + file_name();
    }
    if (sound() && usual_) rules_.looser = io::looser_rules(catalog(), *usual_, rules_);
    rules_.references = take_references();
    RulesFile result;
    if (sound()) result.rules = std::move(rules_);
    result.diagnostics = found();
    return result;
  }

 private:
  // ---- one file

  void read(std::string_view name, std::string_view text, bool defaults) {
    begin_file(name, defaults);
    set_ = {};
    for (auto& lists : {&own_, &first_}) {
      for (io::PlacedRows& rows : *lists) rows.nodes.assign(rows.rows.size(), io::untouched);
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
    if (!document.name.empty()) rename_file(document.name);
    document.name = file_name();
    if (!defaults) rules_.documents.push_back(std::move(document));
    for_members(0, [&](std::uint32_t child, std::string_view key) { read_top(child, key); });
    lay_rows();
    tell(io::conflicting_rules(rules_, set_));
    tell(io::rows_in_vain(rules_, set_));
    if (usual_) tell(io::looser_without_reason(catalog(), *usual_, rules_, set_, sound()));
  }
  void tell(std::vector<io::FaultAt> faults) {
    for (io::FaultAt& fault : faults) add(fault.node, std::move(fault.problem));
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
      set_.rules[field.path] = node;
      return read_limits(node, field.target.in(rules_), RowOf::caps);
    }
    for (const SpecificationField& field : specification_fields()) {
      if (field.path == path) return read_specifications(node, field.target.in(rules_));
    }
    if (path == not_tapped_path) return read_limits(node, rules_.main.not_tapped, RowOf::not_tapped);
    if (path == closed_season_path) return read_seasons(node, rules_.main.closed_season);
    if (path == clearances_path) return read_clearances(node);
    if (path == by_dwellings_path) return read_by_dwellings(node, rules_.water.by_dwellings);
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
            given_[index] = true;
          }
          rule.basis = stated->basis;
          set_.rules[field.path] = node;
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
    set_.rules[clearance_path(what)] = node;
    if (at != all.end()) {
      *at = changed;
    } else {
      all.push_back(changed);
    }
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

  // ---- all of a file

  // The rows that stand first, then the list they stand before.
  void lay_rows() {
    for (std::size_t i = 0; i < own_.size(); ++i) {
      std::vector<TapLimit> rows = first_[i].rows;
      rows.insert(rows.end(), own_[i].rows.begin(), own_[i].rows.end());
      permission_fields()[i].target.in(rules_) = TapLimits(std::move(rows));
      set_.rows[i] = first_[i].nodes;
      set_.rows[i].insert(set_.rows[i].end(), own_[i].nodes.begin(), own_[i].nodes.end());
    }
  }

  void expect_complete() {
    for (std::size_t i = 0; i < given_.size(); ++i) {
      if (given_[i] || may_be_unset(rule_fields()[i])) continue;
      Diagnostic missing;
      missing.code = "rules.missing";
      missing.file = default_file;
      missing.message = "no rule \"" + std::string(rule_fields()[i].path) + '"';
      add(std::move(missing));
    }
  }

  Rules rules_;
  std::optional<Rules> usual_;         // the defaults, where files are laid over them
  std::array<io::PlacedRows, 3> own_;  // by row of permission_fields(): the lists, and the rows that stand before them
  std::array<io::PlacedRows, 3> first_;
  std::vector<bool> given_;  // by row of rule_fields()
  io::SetByFile set_;        // by the file being read
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
