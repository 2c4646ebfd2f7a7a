#include "mainbore/schema.hpp"

#include <nlohmann/json.hpp>
#include <span>
#include <type_traits>
#include <vector>

#include "io/job_fields.hpp"
#include "io/plan_schema.hpp"
#include "mainbore/job.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/rules_file.hpp"
#include "units/unit_names.hpp"

namespace mainbore {
namespace {

using Json = nlohmann::ordered_json;
using io::FieldType;
using io::JobField;
using io::Need;

// --- regular expressions ----------------------------------------------------------------------------------------
// In the dialect of ECMA 262, which has no flag for "any case" inside a schema: each letter stands in both.

std::string any_case(std::string_view word) {
  constexpr std::string_view special = R"(\^$.|?*+()[]{})";
  std::string pattern;
  for (const char c : word) {
    const bool lower = c >= 'a' && c <= 'z';
    if (lower || (c >= 'A' && c <= 'Z')) {
      const char small = lower ? c : static_cast<char>(c - 'A' + 'a');
      pattern += {'[', small, static_cast<char>(small - 'a' + 'A'), ']'};
    } else {
      if (special.find(c) != std::string_view::npos) pattern += '\\';
      pattern += c;
    }
  }
  return pattern;
}

// A word as plain_name (nearest.hpp) reads it, with any separator, or none, where it has one.
std::string any_spelling(std::string_view word) {
  std::string pattern;
  for (std::size_t i = 0; i < word.size(); ++i) {
    const bool separator = word[i] == ' ' || word[i] == '-' || word[i] == '_' || word[i] == '.';
    pattern += separator ? "[ ._-]*" : any_case(word.substr(i, 1));
  }
  return pattern;
}

template <class Words, class Spell>
std::string one_of(const Words& words, Spell spell) {
  std::string pattern;
  for (const auto& word : words) pattern += (pattern.empty() ? "(?:" : "|") + spell(word);
  return pattern + ')';
}

std::string whole(const std::string& pattern) { return "^[ \\t]*" + pattern + "[ \\t]*$"; }

// 12, 1.5, 3/4, 1-1/4, 1 1/4: as Scanner of measure.cpp reads it.
constexpr const char* unsigned_number =
    R"((?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?(?:/0*[1-9][0-9]*|[- \t][0-9]+/0*[1-9][0-9]*)?)";
std::string number_pattern() { return std::string("[+-]?") + unsigned_number; }

std::string quantity_pattern(Kind kind) {
  const std::vector<std::string_view> names = unit_names(kind);
  const std::string simple = number_pattern() + "[ \\t]*" + one_of(names, any_case);
  if (names.front() != "in") return simple;
  // Feet, then inches: "4 ft 6 in", 4'6".
  constexpr std::array<std::string_view, 3> feet = {"ft", "foot", "feet"};
  constexpr std::array<std::string_view, 4> inches = {"in", "inch", "inches", "\""};
  return "(?:" + simple + '|' + number_pattern() + "[ \\t]*(?:" + one_of(feet, any_case) + "[ \\t]+|'[ \\t]*)" +
         unsigned_number + "[ \\t]*" + one_of(inches, any_case) + ')';
}

// --- parts ------------------------------------------------------------------------------------------------------

constexpr std::array<std::string_view, kind_count> kind_names = {
    "length",    "tape",     "distance",    "pressure", "force",     "torque",   "flow",  "volume",
    "earth",     "velocity", "temperature", "area",     "line_load", "strength", "speed", "duration",
    "time_span", "percent",  "angle",       "threads",  "turns",     "ratio"};
std::string name_of_kind(Kind kind) { return std::string(kind_names[static_cast<std::size_t>(kind)]); }

bool has_unit(Kind kind) { return kind != Kind::ratio && kind != Kind::threads && kind != Kind::turns; }

Json text_matching(const std::string& pattern) { return {{"type", "string"}, {"pattern", pattern}}; }

Json closed_object() { return {{"type", "object"}, {"properties", Json::object()}, {"additionalProperties", false}}; }

// The words themselves, for editors to offer, and every other case and spelling of them that is read.
Json words(std::span<const std::string_view> names, std::span<const io::OtherWord> others = {}) {
  std::vector<std::string_view> all(names.begin(), names.end());
  for (const io::OtherWord& other : others) all.push_back(other.word);
  return {{"anyOf", Json::array({{{"enum", names}}, text_matching('^' + one_of(all, any_spelling) + '$')})}};
}

// The names of the materials, and the other spellings that the tables list.
Json material(const Catalog& catalog) {
  Json named = words(material_names);
  const Json table = Json::parse(catalog.file("material_names.json"));
  std::vector<std::string> spellings;
  for (const auto& [name, listed] : table.items()) {
    if (!material_named(name)) continue;  // spellings that name no material of a main
    for (const Json& spelling : listed) spellings.push_back(spelling.get<std::string>());
  }
  named["anyOf"].push_back(text_matching('^' + one_of(spellings, any_case) + '$'));
  return named;
}

Json unit_word(Kind kind) {
  const std::array shown_units = {shown(Measure(0.0, kind), UnitSystem::us).unit,
                                  shown(Measure(0.0, kind), UnitSystem::si).unit};
  const std::span<const std::string_view> usual(shown_units.data(), shown_units[0] == shown_units[1] ? 1u : 2u);
  return {{"anyOf", Json::array({{{"enum", usual}}, text_matching('^' + one_of(unit_names(kind), any_case) + '$')})}};
}

// One line, or several, without control characters.
Json plain_text(bool several_lines) {
  return {{"type", "string"},
          {"maxLength", several_lines ? 10000 : 300},
          {"pattern", several_lines ? R"(^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]*$)"
                                    : R"(^[^\u0000-\u001f\u007f-\u009f]*$)"}};
}

Json clock_position() { return text_matching(R"(^[ \t]*(?:0?[1-9]|1[0-2])(?::[0-5][0-9])?[ \t]*(?:o'clock)?[ \t]*$)"); }

// "8 in", "DN 200", "200 mm".
std::string size_pattern(const Catalog& catalog) {
  constexpr int greatest_dn = 4000;
  std::vector<std::string> trade;
  for (int dn = 1; dn <= greatest_dn; ++dn) {
    if (catalog.metric_size(dn)) trade.push_back(std::to_string(dn));
  }
  const auto as_is = [](const std::string& number) { return number; };
  return whole("(?:" + quantity_pattern(Kind::length) + "|[dD][nN][ \\t]*" + one_of(trade, as_is) + ')');
}

Json reference(const std::string& definition) { return {{"$ref", "#/definitions/" + definition}}; }

// Beside a reference nothing else counts (draft-07, 8.3): a description needs the reference inside "allOf".
Json described(std::string_view help, const std::string& definition) {
  return {{"description", help}, {"allOf", Json::array({reference(definition)})}};
}

std::string with_range(std::string_view help, Measure least, Measure greatest) {
  return std::string(help) + "; from " + format_measure(least, UnitSystem::us) + " to " +
         format_measure(greatest, UnitSystem::us);
}

Json document(SchemaOf what, int version, std::string_view title) {
  return {{"$schema", "http://json-schema.org/draft-07/schema#"},
          {"$id", "urn:mainbore:schema:" + std::string(schema_names[static_cast<std::size_t>(what)]) + ':' +
                      std::to_string(version)},
          {"title", title}};
}

// --- the job ----------------------------------------------------------------------------------------------------

class JobSchema {
 public:
  explicit JobSchema(const Catalog& catalog) : catalog_(catalog) {}

  [[nodiscard]] Json write() {
    Json schema = document(SchemaOf::job, schema_version, "A service tap: what is known of one job");
    schema.update(object_of(io::job_fields(), 0));
    schema["definitions"] = std::move(definitions_);
    return schema;
  }

 private:
  // The object whose rows agree in the first `prefix` characters of their paths, with the objects inside it.
  [[nodiscard]] Json object_of(std::span<const JobField> rows, std::size_t prefix) {
    Json object = closed_object();
    Json required = Json::array();
    Json figures = Json::array();
    while (!rows.empty()) {
      const JobField& field = rows.front();
      const std::string_view rest = field.path.substr(prefix);
      const std::size_t end = rest.find_first_of(".[");
      const std::string key(rest.substr(0, end));
      Json& member = object["properties"][key];
      if (end == std::string_view::npos) {
        member = value_of(field);
        if (field.need == Need::always) required.push_back(key);
        if (field.need == Need::machine_figures) figures.push_back(key);
        rows = rows.subspan(1);
        continue;
      }
      const bool list = rest[end] == '[';
      const std::size_t inner = prefix + end + (list ? 3 : 1);
      std::size_t count = 0;
      while (count < rows.size() && rows[count].path.substr(0, inner) == field.path.substr(0, inner)) ++count;
      Json inside = object_of(rows.first(count), inner);
      if (list) {
        member = {{"type", "array"}, {"maxItems", io::longest_list}, {"items", std::move(inside)}};
      } else {
        if (inside.contains("required")) required.push_back(key);
        member = std::move(inside);
      }
      rows = rows.subspan(count);
    }
    if (!required.empty()) object["required"] = std::move(required);
    if (!figures.empty()) object["anyOf"] = one_machine(figures);
    return object;
  }

  // A machine of the catalogue, or one by all of its own figures.
  static Json one_machine(const Json& figures) {
    return Json::array({{{"propertyNames", {{"enum", {"profile", "feed", "extensions"}}}}},
                        {{"required", figures}, {"not", {{"required", {"profile"}}}}}});
  }

  Json value_of(const JobField& field) {
    switch (field.type) {
      case FieldType::text:
        return described(field.help, defined("line", plain_text(false)));
      case FieldType::lines:
        return described(field.help, defined("lines", plain_text(true)));
      case FieldType::quantity:
        return quantity_of(field);
      case FieldType::size:
        return described(field.help, defined("size", size()));
      case FieldType::material:
        return described(field.help, defined("material", material(catalog_)));
      case FieldType::choice: {
        Json choice = {{"description", field.help}};
        choice.update(words(field.choice->names, field.choice->others));
        return choice;
      }
      case FieldType::machine: {
        Json ids = Json::array();
        for (const MachineProfile& machine : catalog_.machines()) ids.push_back(machine.id);
        return {{"description", field.help}, {"enum", std::move(ids)}};
      }
      case FieldType::flag:
        return {{"description", field.help}, {"type", "boolean"}};
      case FieldType::whole:
        return {{"description", field.help},
                {"type", "integer"},
                {"minimum", static_cast<int>(field.least.base())},
                {"maximum", static_cast<int>(field.greatest.base())}};
      case FieldType::clock:
        return described(field.help, defined("clock", clock_position()));
    }
    return {};
  }

  Json quantity_of(const JobField& field) {
    Json schema = described(with_range(field.help, field.least, field.greatest),
                            defined(name_of_kind(field.kind), has_unit(field.kind) ? quantity(field.kind) : number()));
    if (!has_unit(field.kind)) {  // both look only at an instance that is a number
      schema["minimum"] = field.least.base();
      schema["maximum"] = field.greatest.base();
    }
    return schema;
  }

  static Json number_with_unit(Json unit, bool unit_needed) {
    Json object = closed_object();
    object["properties"] = {{"value", {{"type", "number"}}}, {"unit", std::move(unit)}};
    object["required"] = unit_needed ? Json{"value", "unit"} : Json{"value"};
    return object;
  }
  static Json quantity(Kind kind) {
    return {{"description", expected_text(kind)},
            {"anyOf", {text_matching(whole(quantity_pattern(kind))), number_with_unit(unit_word(kind), true)}}};
  }
  static Json number() {
    return {{"anyOf",
             {Json{{"type", "number"}}, text_matching(whole(number_pattern())),
              number_with_unit({{"enum", {""}}}, false)}}};
  }
  [[nodiscard]] Json size() const {
    return {{"description", "a nominal size, such as \"8 in\", \"3/4 in\" or \"DN 200\""},
            {"anyOf", {text_matching(size_pattern(catalog_)), number_with_unit(unit_word(Kind::length), true)}}};
  }

  std::string defined(std::string name, Json schema) {
    if (!definitions_.contains(name)) definitions_[name] = std::move(schema);
    return name;
  }

  const Catalog& catalog_;
  Json definitions_ = Json::object();
};

// --- the rules --------------------------------------------------------------------------------------------------

class RulesSchema {
 public:
  explicit RulesSchema(const Catalog& catalog) : catalog_(catalog) {}

  [[nodiscard]] Json write() {
    Json schema = document(SchemaOf::rules, schema_version, "A utility's own rules, laid over the defaults");
    schema.update(closed_object());
    Json& groups = schema["properties"];
    groups["name"] = described("of the utility or its standard", defined("line", plain_text(false)));
    groups["note"] = {{"description", "anything worth saying about the file"}, {"type", "string"}};
    for (const RuleField& field : rule_fields()) rule_at(groups, field.path) = value_of(field);
    for (const TapLimitField& field : tap_limit_fields()) {
      rule_at(groups, field.path) = list(field.help, defined("tap_limit", tap_limit()));
      rule_at(groups, field.first) =
          list("rows that stand before those of " + std::string(field.path), defined("tap_limit", tap_limit()));
    }
    for (const SpecificationField& field : specification_fields()) {
      rule_at(groups, field.path) = list(field.help, defined("specification", specification()));
    }
    rule_at(groups, not_tapped_path) = list(not_tapped_help, defined("not_tapped", not_tapped()));
    rule_at(groups, closed_season_path) = list(closed_season_help, defined("closed_season", closed_season()));
    rule_at(groups, clearances_path) = clearances();
    schema["definitions"] = std::move(definitions_);
    return schema;
  }

 private:
  static Json& rule_at(Json& groups, std::string_view path) {
    const std::size_t dot = path.find('.');
    Json& group = groups[std::string(path.substr(0, dot))];
    if (group.is_null()) group = closed_object();
    return group["properties"][std::string(path.substr(dot + 1))];
  }

  static Json list(std::string_view help, const std::string& row) {
    return {{"description", help}, {"type", "array"}, {"items", reference(row)}};
  }

  // Null takes a rule away that is unset by default.
  static Json or_null(Json rule) {
    Json description = rule["description"];
    rule.erase("description");
    return {{"description", std::move(description)}, {"anyOf", {Json{{"type", "null"}}, std::move(rule)}}};
  }

  Json value_of(const RuleField& field) {
    return std::visit(
        [&]<class T>(Rule<T> Rules::*) -> Json {
          if constexpr (std::is_same_v<T, std::optional<Length>>) {
            return or_null(described(range_of(field), quantity_rule(field.kind, false)));
          } else if constexpr (std::is_same_v<T, std::optional<NominalSize>>) {
            return or_null(described(range_of(field), defined("new_size_rule", rule(reference(size_text()), false))));
          } else if constexpr (std::is_same_v<T, ThreadStandard>) {
            const io::Choice& names = *io::find_field("service.thread")->field->choice;
            return described(field.help, defined("thread_rule", rule(words(names.names, names.others))));
          } else if constexpr (std::is_same_v<T, ClockPosition>) {
            return described(field.help, defined("clock_rule", rule(clock_position())));
          } else if constexpr (std::is_same_v<T, NominalSize>) {
            return described(range_of(field), defined("size_rule", rule(reference(size_text()))));
          } else if (has_unit(field.kind)) {
            return described(range_of(field), quantity_rule(field.kind));
          } else {
            return number_of(field);
          }
        },
        field.target);
  }

  static std::string range_of(const RuleField& field) {
    return with_range(field.help, Measure(field.least, field.kind), Measure(field.most, field.kind));
  }

  // "3", "2.5 threads", "35 %" of a share.
  Json number_of(const RuleField& field) {
    const std::string_view unit =
        field.kind == Kind::ratio ? "%" : shown(Measure(0.0, field.kind), UnitSystem::us).unit;
    const Json value = {
        {"anyOf",
         {Json{{"type", "number"}}, text_matching(whole(number_pattern() + "(?:[ \\t]*" + any_case(unit) + ")?"))}}};
    Json schema = described(range_of(field), defined(name_of_kind(field.kind) + "_rule", rule(value)));
    // Looked at only where the instance, or its "value", is a number.
    schema["minimum"] = field.least;
    schema["maximum"] = field.most;
    schema["properties"] = {{"value", {{"minimum", field.least}, {"maximum", field.most}}}};
    return schema;
  }

  std::string quantity_rule(Kind kind, bool has_default = true) {
    const Json text = reference(defined(name_of_kind(kind), text_matching(whole(quantity_pattern(kind)))));
    Json parts = rule(text, has_default);
    Json& object = parts["anyOf"][1];
    object["properties"]["value"] = {{"anyOf", {text, Json{{"type", "number"}}}}};
    object["properties"]["unit"] = unit_word(kind);
    object["if"] = {{"required", {"value"}}, {"properties", {{"value", {{"type", "number"}}}}}};
    object["then"] = {{"required", {"unit"}}};
    object["else"] = {{"not", {{"required", {"unit"}}}}};
    parts["description"] = expected_text(kind);
    return defined((has_default ? "" : "new_") + name_of_kind(kind) + "_rule", std::move(parts));
  }

  // The bare value, or an object with what it rests on. With a reference and no value, the default becomes the
  // utility's own.
  Json rule(const Json& value, bool has_default = true) {
    Json object = closed_object();
    object["properties"] = {{"value", value}};
    add_basis(object);
    if (has_default) object["anyOf"] = Json::array({{{"required", {"value"}}}, {{"required", {"reference"}}}});
    else object["required"] = {"value"};
    return {{"anyOf", {value, object}}};
  }

  void add_basis(Json& object) {
    const std::string line = defined("line", plain_text(false));
    object["properties"]["reference"] = described("document and section", line);
    object["properties"]["reason"] = described("why the utility has it so", line);
  }

  Json clearances() {
    Json distance = reference(quantity_rule(Kind::distance));
    return {{"description", "kept from each thing, along the main"},
            {"type", "object"},
            {"propertyNames", words(nearby_names)},
            {"additionalProperties", std::move(distance)}};
  }

  std::string size_text() { return defined("size", text_matching(size_pattern(catalog_))); }

  // One, or a list of several.
  static Json one_or_several(const Json& item) { return {{"anyOf", {item, Json{{"type", "array"}, {"items", item}}}}}; }

  // For which mains a row is.
  Json mains() {
    const Json size = reference(size_text());
    Json row = closed_object();
    row["properties"] = {{"material", one_or_several(reference(defined("material", material(catalog_))))},
                         {"main_from", size},
                         {"main_to", size},
                         {"main_above", size},
                         {"main_below", size}};
    add_basis(row);
    return row;
  }
  Json specification() {
    const Json size = reference(size_text());
    Json row = mains();
    row["properties"]["tap_from"] = size;
    row["properties"]["tap_to"] = size;
    row["properties"]["tap_above"] = size;
    row["properties"]["text"] = text_of_one_line();
    row["required"] = {"text"};
    return row;
  }
  Json closed_season() {
    const Json day = text_matching(
        "^(?:(?:0[13578]|1[02])-(?:0[1-9]|[12][0-9]|3[01])|(?:0[469]|11)-(?:0[1-9]|[12][0-9]|30)"
        "|02-(?:0[1-9]|[12][0-9]))$");
    Json row = mains();
    row["properties"]["from"] = day;
    row["properties"]["to"] = day;
    row["properties"]["why"] = reference(defined("line", plain_text(false)));
    row["required"] = {"from", "to"};
    return row;
  }
  Json not_tapped() {
    Json row = tap_limit();
    row["properties"].erase("largest");
    row.erase("if");
    row.erase("then");
    row["properties"]["why"] = text_of_one_line();
    row["required"] = {"why"};
    return row;
  }
  Json text_of_one_line() {
    return {{"allOf", {reference(defined("line", plain_text(false))), Json{{"minLength", 1}}}}};
  }

  Json tap_limit() {
    Json series = Json::array();
    for (const Pipe& pipe : catalog_.pipes()) {
      if (series.empty() || series.back() != pipe.series->id) series.push_back(pipe.series->id);
    }
    const Json size = reference(size_text());
    const Json line = reference(defined("line", plain_text(false)));
    const Json none = text_matching("^" + any_case("none") + "$");
    Json row = closed_object();
    Json& members = row["properties"];
    members["material"] = one_or_several(reference(defined("material", material(catalog_))));
    members["class"] = one_or_several({{"type", "string"}, {"minLength", 1}});
    members["series"] = one_or_several({{"enum", std::move(series)}});
    members["main_from"] = size;
    members["main_to"] = size;
    members["main_above"] = size;
    members["main_below"] = size;
    members["wall_from"] =
        reference(defined(name_of_kind(Kind::length), text_matching(whole(quantity_pattern(Kind::length)))));
    members["largest"] = {{"description", "the tap, or \"none\""}, {"anyOf", {size, none}}};
    members["why"] = line;
    add_basis(row);
    row["required"] = {"largest"};
    row["if"] = {{"properties", {{"largest", none}}}, {"required", {"largest"}}};
    row["then"] = {{"required", {"why"}}, {"properties", {{"why", {{"minLength", 1}}}}}};
    return row;
  }

  std::string defined(std::string name, Json schema) {
    if (!definitions_.contains(name)) definitions_[name] = std::move(schema);
    return name;
  }

  const Catalog& catalog_;
  Json definitions_ = Json::object();
};

Json schema_of(SchemaOf what, const Catalog& catalog) {
  switch (what) {
    case SchemaOf::job:
      return JobSchema(catalog).write();
    case SchemaOf::rules:
      return RulesSchema(catalog).write();
    case SchemaOf::plan:
      break;
  }
  Json schema = document(SchemaOf::plan, plan_format, "A plan of a service tap");
  schema.update(io::plan_schema());
  return schema;
}

}  // namespace

std::string json_schema(SchemaOf what, const Catalog& catalog) { return schema_of(what, catalog).dump(2) + '\n'; }

}  // namespace mainbore
