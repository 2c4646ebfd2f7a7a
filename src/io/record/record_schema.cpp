#include "io/record/record_schema.hpp"

#include <array>
#include <string>

#include "io/schema/schema_parts.hpp"
#include "mainbore/tap_record.hpp"

namespace mainbore::io {
namespace {

using namespace schema;

Json some_text() { return {{"type", "string"}, {"minLength", 1}}; }
Json count() { return {{"type", "integer"}, {"minimum", 1}}; }
Json yes_or_no() { return {{"type", "boolean"}}; }
Json recorded_quantity() { return reference("quantity"); }

// What is not named is allowed: paths only grow.
Json object_with(Json properties, std::vector<std::string> required) {
  return {{"type", "object"}, {"properties", std::move(properties)}, {"required", std::move(required)}};
}

Json plan_part() {
  return object_with({{"verdict", one_of(verdicts)},
                      {"method", one_of(method_names)},
                      {"count", count()},
                      {"tap", recorded_quantity()},
                      {"thread", some_text()},
                      {"clock", some_text()}},
                     {"verdict", "method"});
}

Json as_built() {
  Json properties = Json::object();
  for (const RecordEntry& entry : record_entries()) {
    if (entry.key == RecordKey::order || entry.key == RecordKey::tap_number) continue;
    Json value = some_text();
    if (!entry.words.empty()) value = one_of(entry.words);
    if (entry.type == RecordType::day) value["pattern"] = "^[0-9]{4}-[0-9]{2}-[0-9]{2}";
    if (entry.type == RecordType::time) value["pattern"] = "^([01]?[0-9]|2[0-3]):[0-5][0-9]$";
    if (entry.type == RecordType::quantity && entry.kind != Kind::ratio) value = Json{{"allOf", {recorded_quantity()}}};
    if (entry.type == RecordType::quantity && entry.kind == Kind::ratio) {
      value = {{"type", "number"}};
      if (entry.greatest > entry.least) value.update({{"minimum", entry.least}, {"maximum", entry.greatest}});
    }
    value["description"] = entry.help;
    properties[std::string(entry.name)] = std::move(value);
  }
  return {{"type", "object"}, {"properties", std::move(properties)}};
}

}  // namespace

Json record_schema() {
  const Json hold = object_with({{"code", one_of(finding_codes)},
                                 {"clears", {{"enum", {"office", "site"}}}},
                                 {"cleared", yes_or_no()},
                                 {"reading", one_of(reading_ids)},
                                 {"found", some_text()},
                                 {"by", some_text()}},
                                {"code", "clears", "cleared"});
  const Json reading = object_with({{"id", one_of(reading_ids)},
                                    {"what", some_text()},
                                    {"at_least", recorded_quantity()},
                                    {"at_most", recorded_quantity()},
                                    {"value", recorded_quantity()},
                                    {"judged", one_of(judged_names)}},
                                   {"id", "what", "judged"});
  Json schema = object_with(
      {{"format", {{"const", 1}}},
       {"revision",
        {{"description", "of a line of a ledger: 1, and one more for each correction"},
         {"type", "integer"},
         {"minimum", 1}}},
       {"id", some_text()},
       {"tap_number", count()},
       {"place", some_text()},
       {"crew", some_text()},
       {"main", object_with({{"material", some_text()}, {"size", recorded_quantity()}, {"class", some_text()}},
                            {"material", "size"})},
       {"service", object_with({{"size", recorded_quantity()}}, {})},
       {"rules", some_text()},
       {"verdict", one_of(verdicts)},
       {"planned", plan_part()},
       {"found", plan_part()},
       {"complete", yes_or_no()},
       {"void", yes_or_no()},
       {"leak_check", one_of(leak_check_names)},
       {"because", list_of(object_with({{"code", some_text()}, {"text", some_text()}}, {"code", "text"}))},
       {"missing", list_of(object_with({{"name", some_text()}, {"label", some_text()}}, {"name", "label"}))},
       {"readings", list_of(reading)},
       {"settled", list_of(one_of(finding_codes))},
       {"holds", list_of(hold)},
       {"deviations",
        list_of(object_with(
            {{"what", some_text()}, {"planned", some_text()}, {"done", some_text()}, {"reason", some_text()}},
            {"what"}))},
       {"record", as_built()}},
      {"format", "tap_number", "main", "service", "verdict", "planned", "found", "complete", "void", "because",
       "missing", "readings", "settled", "holds", "deviations", "record"});
  schema["definitions"]["quantity"] = {{"type", "object"},
                                       {"properties", {{"value", {{"type", "number"}}}, {"unit", some_text()}}},
                                       {"required", {"value", "unit"}},
                                       {"additionalProperties", false}};
  return schema;
}

}  // namespace mainbore::io
