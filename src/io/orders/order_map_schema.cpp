#include "io/orders/order_map_schema.hpp"

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/orders/day_count.hpp"
#include "io/schema/schema_parts.hpp"

namespace mainbore::io {
namespace {

using namespace schema;

class MapSchema {
 public:
  explicit MapSchema(const Catalog& catalog) : catalog_(catalog) {}

  [[nodiscard]] Json write() {
    Json map = closed_object();
    map["required"] = {"format", "columns"};
    definitions_["words"] = {{"type", "array"}, {"items", {{"type", {"string", "number", "boolean"}}}}};
    std::vector<const JobField*> all;
    for (const JobField& field : job_fields()) all.push_back(&field);
    definitions_["fact"] = fact(all);
    Json& members = map["properties"];
    members["format"] = {{"type", "integer"}, {"const", 1}};
    members["name"] = {{"description", "of the export"}, {"type", "string"}};
    members["columns"] = {{"description", "the name of each column, and the fact that it holds"},
                          {"type", "object"},
                          {"additionalProperties", {{"anyOf", Json::array({reference("fact"), column()})}}}};
    members["id"] = {
        {"description", "columns that make the id together"}, {"type", "array"}, {"items", {{"type", "string"}}}};
    members["materials"] = {{"description", "the export's own codes"},
                            {"type", "object"},
                            {"additionalProperties", {{"anyOf", Json::array({material(catalog_), code()})}}}};
    members["decimal"] = {{"description", "between the digits of a number"}, {"enum", {",", "."}}};
    members["missing"] = described("words that say nothing, in any column", "words");
    members["defaults"] = defaults();
    members["ignore_others"] = {{"description", "pass over columns that are not named here (true)"},
                                {"type", "boolean"}};
    map["definitions"] = std::move(definitions_);
    return map;
  }

 private:
  // The path of one of the facts.
  static Json fact(const std::vector<const JobField*>& fields) {
    Json paths = Json::array();
    std::vector<std::string> listed;
    for (const JobField* field : fields) {
      if (!field->in_list()) {
        paths.push_back(field->path);
        continue;
      }
      std::string pattern;
      for (const char c : field->path) {
        if (c == ']') pattern += "0*[0-9]{1,3}";  // below longest_list
        if (c == '.' || c == '[' || c == ']') pattern += '\\';
        pattern += c;
      }
      listed.push_back(std::move(pattern));
    }
    static_assert(longest_list == 1000);
    if (listed.empty()) return {{"enum", std::move(paths)}};
    Json by_pattern = text_matching('^' + one_of(listed, [](const std::string& path) { return path; }) + '$');
    if (paths.empty()) return by_pattern;
    return {{"anyOf", Json::array({{{"enum", std::move(paths)}}, by_pattern})}};
  }

  // Facts whose columns may say the same stand together.
  [[nodiscard]] Json column() {
    struct Alike {
      Json shape;
      std::vector<const JobField*> fields;
    };
    std::vector<Alike> groups;
    for (const JobField& field : job_fields()) {
      Json shape = shape_of(field);
      std::size_t known = 0;
      while (known < groups.size() && groups[known].shape != shape) ++known;
      if (known == groups.size()) groups.push_back(Alike{std::move(shape), {}});
      groups[known].fields.push_back(&field);
    }
    Json column = closed_object();
    column["required"] = {"to"};
    column["properties"] = {
        {"to", described("the fact", "fact")},
        {"unit", {{"description", "of cells that are bare numbers"}, {"type", "string"}}},
        {"missing", described("words that say nothing here", "words")},
        {"values", {{"description", "words of the export, and what each means"}, {"type", "object"}}},
        {"least", {{"description", "anything below is an error"}}},
        {"greatest", {{"description", "anything above is an error"}}},
        {"optional", {{"description", "the export may be without the column (false)"}, {"type", "boolean"}}}};
    Json rules = Json::array();
    for (const Alike& group : groups) {
      Json chosen = {{"properties", {{"to", fact(group.fields)}}}, {"required", {"to"}}};
      rules.push_back({{"if", std::move(chosen)}, {"then", group.shape}});
    }
    column["allOf"] = std::move(rules);
    return column;
  }

  [[nodiscard]] Json shape_of(const JobField& field) {
    const auto values = [&](const Json& value) {
      Json members = {{"values", {{"additionalProperties", value}}}};
      members["least"] = field.has_range() ? value : Json(false);
      members["greatest"] = members["least"];
      return Json{{"properties", std::move(members)}};
    };
    if (!field.has_unit()) {
      Json shape = values(value_of(field));
      shape["properties"]["unit"] = is_dated(field) ? Json{{"enum", {"ms", "s"}}} : Json(false);
      return shape;
    }
    const Json bare = {
        {"anyOf", {Json{{"type", "number"}}, text_matching(whole(number_pattern(field.kind))), value_of(field)}}};
    return {{"properties", {{"unit", unit_word(field.kind)}}},
            {"if", {{"required", {"unit"}}}},
            {"then", values(bare)},
            {"else", values(value_of(field))}};
  }

  // A code that says the material and further facts.
  [[nodiscard]] Json code() {
    Json object = defaults();
    object["description"] = "facts that the code says, where no column does";
    object["properties"]["main.material"] = material(catalog_);
    object["required"] = {"main.material"};
    return object;
  }

  [[nodiscard]] Json defaults() {
    Json object = closed_object();
    object["description"] = "facts where no column says anything";
    for (const JobField& field : job_fields()) {
      if (field.in_list() || field.path == "id") continue;
      Json value = {{"description", field.help}};
      value.update(Json{{"allOf", Json::array({value_of(field)})}});
      object["properties"][std::string(field.path)] = std::move(value);
    }
    return object;
  }

  // A value as a map writes it: what stands in a cell, numbers and yes or no with quotes or without.
  [[nodiscard]] Json value_of(const JobField& field) {
    switch (field.type) {
      case FieldType::text:
      case FieldType::lines: {
        const bool lines = field.type == FieldType::lines;
        return defined(lines ? "lines" : "line",
                       {{"anyOf", {plain_text(lines), Json{{"type", {"number", "boolean"}}}}}});
      }
      case FieldType::quantity:
        if (!has_unit(field.kind)) {
          return {{"anyOf",
                   {Json{{"type", "number"}, {"minimum", field.least.base()}, {"maximum", field.greatest.base()}},
                    text_matching(whole(number_pattern(field.kind)))}}};
        }
        return defined(name_of_kind(field.kind), text_matching(whole(quantity_pattern(field.kind))));
      case FieldType::size:
        return defined("size", text_matching(size_pattern(catalog_)));
      case FieldType::material:  // by name, or by a code of "materials"
        return {{"type", {"string", "number"}}, {"pattern", "[^ \\t\\r\\n]"}};
      case FieldType::choice:
        return words(field.choice->names, field.choice->others);
      case FieldType::machine: {
        Json ids = Json::array();
        for (const MachineProfile& machine : catalog_.machines()) ids.push_back(machine.id);
        return {{"enum", std::move(ids)}};
      }
      case FieldType::flag: {
        constexpr std::array<std::string_view, 4> answers = {"true", "false", "yes", "no"};
        return {{"anyOf", {Json{{"type", "boolean"}}, text_matching('^' + one_of(answers, any_spelling) + '$')}}};
      }
      case FieldType::whole:
        return {{"anyOf",
                 {Json{{"type", "integer"},
                       {"minimum", static_cast<int>(field.least.base())},
                       {"maximum", static_cast<int>(field.greatest.base())}},
                  text_matching(whole("[0-9]+"))}}};
      case FieldType::clock:
        return defined("clock",
                       {{"anyOf", {clock_position(), Json{{"type", "integer"}, {"minimum", 1}, {"maximum", 12}}}}});
    }
    return {};
  }

  Json defined(const std::string& name, Json schema) {
    if (!definitions_.contains(name)) definitions_[name] = std::move(schema);
    return reference(name);
  }

  const Catalog& catalog_;
  Json definitions_ = Json::object();
};

}  // namespace

nlohmann::ordered_json order_map_schema(const Catalog& catalog) { return MapSchema(catalog).write(); }

}  // namespace mainbore::io
