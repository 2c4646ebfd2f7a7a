#include "mainbore/schema.hpp"

#include <algorithm>
#include <type_traits>

#include "io/approved/approved_fields.hpp"
#include "io/job/field_tree.hpp"
#include "io/orders/order_map_schema.hpp"
#include "io/orders/verdict_schema.hpp"
#include "io/plan/plan_schema.hpp"
#include "io/record/record_schema.hpp"
#include "io/schema/schema_parts.hpp"
#include "io/settings/aboard_fields.hpp"
#include "mainbore/job.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/settings_file.hpp"

namespace mainbore {
namespace {

using namespace io::schema;
using io::FieldType;
using io::JobField;
using io::Need;

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
    schema.update(object_of(io::job_members()));
    schema["definitions"] = std::move(definitions_);
    return schema;
  }

  // What may stand under "machine" of a job or of settings.
  [[nodiscard]] Json write_machine() {
    Json schema =
        document(SchemaOf::machine, schema_version, "A tapping machine: one of the catalog, or its own figures");
    schema.update(machine());
    schema["definitions"] = std::move(definitions_);
    return schema;
  }

  [[nodiscard]] Json write_approved() {
    Json schema =
        document(SchemaOf::approved, schema_version, "Approved fittings of a utility, each with its stock number");
    schema.update(closed_object());
    Json& members = schema["properties"];
    members["format"] = {{"type", "integer"}, {"const", 1}};
    members["name"] = described("of the list", defined("line", plain_text(false)));
    members["edition"] = described("day or number of the list", defined("line", plain_text(false)));
    members["items"] = {{"type", "array"}, {"maxItems", most_approved_items}, {"items", approved_item()}};
    schema["required"] = {"items"};
    schema["definitions"] = std::move(definitions_);
    return schema;
  }

  [[nodiscard]] Json write_settings() {
    Json schema = document(SchemaOf::settings, schema_version, "Settings: what is the same for every job");
    schema.update(closed_object());
    Json& members = schema["properties"];
    members["format"] = {{"type", "integer"}, {"const", 1}};
    members["machine"] = machine();
    members["fittings"] = fittings();
    const Json file_name = {{"allOf", Json::array({reference(defined("line", plain_text(false)))})},
                            {"minLength", 1},
                            {"not", {{"const", "-"}}}};
    members["rules"] = {{"description", "rules files, seen from the folder of the settings file; laid in this order"},
                        {"type", "array"},
                        {"maxItems", most_rules_files},
                        {"items", file_name}};
    members["approved"] = file_name;
    members["approved"]["description"] = "file of approved fittings, seen from the same folder";
    members["aboard"] = aboard();
    members["units"] = {{"description", "of results"}, {"enum", {"us", "si"}}};
    members["language"] = {{"description", "of what a crew reads"}, {"enum", language_codes}};
    members[std::string(translation_reviewed_by)] = {
        {"description", "who has reviewed the translation for the utility; named on each translated page"},
        {"type", "string"}};
    members["crew"] = value_of(*io::find_field("crew")->field);
    schema["definitions"] = std::move(definitions_);
    return schema;
  }

 private:
  // Lengths of what stands on the truck, by the size of the tap.
  [[nodiscard]] Json fittings() {
    Json row = closed_object();
    const auto field = [](std::string_view path) -> const JobField& { return *io::find_field(path)->field; };
    for (const auto& [key, path] : settings_fitting_facts) row["properties"][key] = value_of(field(path));
    row["required"] = {"tap"};
    return {{"description", "lengths by size of tap, each size once, where a job does not give them"},
            {"type", "array"},
            {"maxItems", most_fittings},
            {"items", std::move(row)}};
  }

  // What is on the truck.
  [[nodiscard]] Json aboard() {
    Json row = closed_object();
    for (const JobField& field : io::aboard_fields()) row["properties"][std::string(field.path)] = value_of(field);
    row["anyOf"] = Json::array({{{"required", {"item"}}}, {{"required", {"stock"}}}});
    return {{"description", "what is on the truck, and how many"},
            {"type", "array"},
            {"maxItems", most_aboard},
            {"items", std::move(row)}};
  }

  // An item of an approved list: which members it has follows from its kind.
  [[nodiscard]] Json approved_item() {
    Json row = closed_object();
    for (const io::ApprovedField& field : io::approved_fields()) {
      const Json value = value_of(field.value);
      Json& member = row["properties"][std::string(field.column.key)];
      member = field.several ? Json{{"description", field.column.help},
                                    {"anyOf", {value, Json{{"type", "array"}, {"minItems", 1}, {"items", value}}}}}
                             : value;
    }
    row["required"] = {"kind"};
    for (std::size_t i = 0; i < approved_kind_count; ++i)
      row["allOf"].push_back(approved_kind(static_cast<ApprovedKind>(i)));
    return row;
  }
  [[nodiscard]] static Json approved_kind(ApprovedKind kind) {
    Json then = Json::object();
    for (const io::ApprovedField& field : io::approved_fields()) {
      const std::string key(field.column.key);
      if (field.use(kind) == io::ColumnUse::required) then["required"].push_back(key);
      if (field.use(kind) == io::ColumnUse::none) then["properties"][key] = false;
    }
    return {{"if", {{"properties", {{"kind", text_matching("^" + any_spelling(name_of(kind)) + "$")}}}}},
            {"then", std::move(then)}};
  }

  [[nodiscard]] Json machine() {
    const std::vector<io::FieldMember>& job = io::job_members();
    const auto machine =
        std::find_if(job.begin(), job.end(), [](const io::FieldMember& member) { return member.key == "machine"; });
    return object_of(machine->members);
  }

  // The object with these members, and the objects inside it.
  [[nodiscard]] Json object_of(const std::vector<io::FieldMember>& members) {
    Json object = closed_object();
    Json required = Json::array();
    Json figures = Json::array();
    for (const io::FieldMember& one : members) {
      const std::string key(one.key);
      Json& member = object["properties"][key];
      if (one.fact != nullptr) {
        member = value_of(*one.fact);
        if (one.fact->need == Need::always) required.push_back(key);
        if (!one.fact->older.empty()) add_older(object, *one.fact);
        if (one.fact->need == Need::machine_figures) figures.push_back(key);
        continue;
      }
      Json inside = object_of(one.members);
      if (one.list) {
        member = {{"type", "array"}, {"maxItems", io::longest_list}, {"items", std::move(inside)}};
      } else {
        if (inside.contains("required")) required.push_back(key);
        member = std::move(inside);
      }
    }
    if (!required.empty()) object["required"] = std::move(required);
    if (!figures.empty()) object["anyOf"] = one_machine(figures);
    return object;
  }

  // By its name of old or by the one of today, not by both.
  void add_older(Json& object, const JobField& field) {
    const auto key_of = [](std::string_view path) { return std::string(path.substr(path.rfind('.') + 1)); };
    Json& member = object["properties"][key_of(field.older)];
    member = value_of(field);
    member["description"] = "older name of " + std::string(field.path);
    object["not"] = {{"required", {key_of(field.path), key_of(field.older)}}};
  }

  // A machine of the catalog, or one by all of its own figures.
  static Json one_machine(const Json& figures) {
    return Json::array({{{"propertyNames", {{"enum", {"profile", "feed", "extensions"}}}}},
                        {{"required", figures}, {"not", {{"required", {"profile"}}}}}});
  }

  Json value_of(const JobField& field) {
    switch (field.type) {
      case FieldType::text:
        if (field.meaning == io::TextMeaning::name) {
          Json name = plain_text(false);
          name["type"] = {"string", "number"};
          return described(field.help, defined("name", std::move(name)));
        }
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
             {Json{{"type", "number"}}, text_matching(whole(number_pattern(Kind::ratio))),
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
    for (const DocumentLine& line : document_lines()) {
      groups[std::string(line.key)] = described(line.help, defined("line", plain_text(false)));
    }
    groups["note"] = {{"description", "anything worth saying about the file"}, {"type", "string"}};
    for (const RuleField& field : rule_fields()) rule_at(groups, field.path) = value_of(field);
    for (const PermissionField& field : permission_fields()) {
      rule_at(groups, field.path) = list(field.help, defined("tap_limit", tap_limit()));
      rule_at(groups, field.first) =
          list("rows that stand before those of " + std::string(field.path), defined("tap_limit", tap_limit()));
    }
    for (const CapField& field : cap_fields()) {
      rule_at(groups, field.path) = list(field.help, defined("tap_limit", tap_limit()));
    }
    for (const SpecificationField& field : specification_fields()) {
      rule_at(groups, field.path) = list(field.help, defined("specification", specification()));
    }
    rule_at(groups, not_tapped_path) = list(not_tapped_help, defined("not_tapped", not_tapped()));
    rule_at(groups, closed_season_path) = list(closed_season_help, defined("closed_season", closed_season()));
    rule_at(groups, clearances_path) = clearances();
    rule_at(groups, by_dwellings_path) = list(by_dwellings_help, defined("by_dwellings", by_dwellings()));
    groups[std::string(own_words_path)] = own_words();
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
        [&]<class T>(const RuleTarget<Rule<T>>&) -> Json {
          if constexpr (std::is_same_v<T, std::optional<Length>>) {
            return or_null(described(range_of(field), quantity_rule(field.kind, false)));
          } else if constexpr (std::is_same_v<T, std::optional<Temperature>>) {
            return or_null(described(range_of(field), quantity_rule(field.kind, false)));
          } else if constexpr (std::is_same_v<T, std::optional<double>>) {
            return or_null(number_of(field));
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
    return with_range(field.help, Measure(field.least, field.kind), Measure(field.greatest, field.kind));
  }

  // "3", "2.5 threads", "35 %" of a share.
  Json number_of(const RuleField& field) {
    const std::string_view unit =
        field.kind == Kind::ratio ? "%" : shown(Measure(0.0, field.kind), UnitSystem::us).unit;
    const Json value = {{"anyOf",
                         {Json{{"type", "number"}},
                          text_matching(whole(number_pattern(field.kind) + "(?:[ \\t]*" + any_case(unit) + ")?"))}}};
    Json schema = described(range_of(field), defined(name_of_kind(field.kind) + "_rule", rule(value)));
    // Looked at only where the instance, or its "value", is a number.
    schema["minimum"] = field.least;
    schema["maximum"] = field.greatest;
    schema["properties"] = {{"value", {{"minimum", field.least}, {"maximum", field.greatest}}}};
    if (field.whole) schema["multipleOf"] = schema["properties"]["value"]["multipleOf"] = 1;
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
    Json series = Json::array();
    for (const Pipe& pipe : catalog_.pipes()) {
      if (series.empty() || series.back() != pipe.series->id) series.push_back(pipe.series->id);
    }
    const Json size = reference(size_text());
    const Json length =
        reference(defined(name_of_kind(Kind::length), text_matching(whole(quantity_pattern(Kind::length)))));
    Json row = closed_object();
    Json& members = row["properties"];
    members["material"] = one_or_several(reference(defined("material", material(catalog_))));
    members["class"] = one_or_several({{"type", "string"}, {"minLength", 1}});
    members["series"] = one_or_several({{"enum", std::move(series)}});
    for (const char* const key : {"main_from", "main_to", "main_above", "main_below"}) members[key] = size;
    for (const char* const key : {"wall_from", "wall_below"}) members[key] = length;
    for (const char* const key : {"bore_from", "bore_to", "bore_above", "bore_below"}) members[key] = length;
    for (const char* const key : {"laid_from", "laid_to"}) {
      members[key] = {{"description", "year in which the main was laid; the end is inside"},
                      {"type", "integer"},
                      {"minimum", 1800},
                      {"maximum", 2100}};
    }
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
  Json by_dwellings() {
    const Json size = reference(size_text());
    const JobField& dwellings = *io::find_field("service.dwellings")->field;
    const Json count = {{"type", "integer"},
                        {"minimum", static_cast<int>(dwellings.least.base())},
                        {"maximum", static_cast<int>(dwellings.greatest.base())}};
    Json row = closed_object();
    Json& members = row["properties"];
    members["dwellings_from"] = count;
    members["dwellings_to"] = count;
    for (const char* const key : {"tap", "line", "meter"}) members[key] = size;
    add_basis(row);
    row["required"] = {"dwellings_from"};
    row["anyOf"] = {Json{{"required", {"tap"}}}, Json{{"required", {"line"}}}, Json{{"required", {"meter"}}}};
    return row;
  }
  // Null takes words away again.
  Json own_words() {
    const Json text = {{"allOf", {text_of_one_line(), Json{{"maxLength", longest_own_words}}}}};
    Json with_basis = closed_object();
    with_basis["properties"]["text"] = text;
    add_basis(with_basis);
    with_basis["required"] = {"text"};
    return {{"description", own_words_help},
            {"type", "object"},
            {"propertyNames", {{"enum", own_words_ids()}}},
            {"additionalProperties", {{"anyOf", {Json{{"type", "null"}}, text, std::move(with_basis)}}}}};
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
    const Json size = reference(size_text());
    const Json line = reference(defined("line", plain_text(false)));
    const Json none = text_matching("^" + any_case("none") + "$");
    Json row = mains();
    Json& members = row["properties"];
    members["largest"] = {{"description", "the tap, or \"none\""}, {"anyOf", {size, none}}};
    members["why"] = line;
    members["consent"] = {{"description", "who must consent to each tap under this row"}, {"allOf", {line}}};
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
    case SchemaOf::machine:
      return JobSchema(catalog).write_machine();
    case SchemaOf::settings:
      return JobSchema(catalog).write_settings();
    case SchemaOf::approved:
      return JobSchema(catalog).write_approved();
    case SchemaOf::map: {
      Json schema = document(SchemaOf::map, schema_version, "A map: which column of an export is which fact of a job");
      schema.update(io::order_map_schema(catalog));
      return schema;
    }
    case SchemaOf::verdict: {
      Json schema = document(SchemaOf::verdict, schema_version, "A record of a batch: what was decided of one order");
      schema.update(io::verdict_schema());
      return schema;
    }
    case SchemaOf::record: {
      Json schema = document(SchemaOf::record, schema_version, "A record of a tap");
      schema.update(io::record_schema());
      return schema;
    }
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
