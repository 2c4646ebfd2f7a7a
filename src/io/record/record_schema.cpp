#include "io/record/record_schema.hpp"

#include <array>
#include <string>

#include "mainbore/tap_record.hpp"

namespace mainbore::io {
namespace {

using Json = nlohmann::ordered_json;

Json text() { return {{"type", "string"}, {"minLength", 1}}; }
Json whole() { return {{"type", "integer"}, {"minimum", 1}}; }
Json flag() { return {{"type", "boolean"}}; }
Json quantity() { return {{"$ref", "#/definitions/quantity"}}; }
Json size() { return quantity(); }

template <class Words>
Json one_of(const Words& words) {
  return {{"enum", words}};
}

// What is not named is allowed: paths only grow.
Json object(Json properties, std::vector<std::string> required) {
  return {{"type", "object"}, {"properties", std::move(properties)}, {"required", std::move(required)}};
}
Json list_of(Json items) { return {{"type", "array"}, {"items", std::move(items)}}; }

constexpr std::array verdicts = {name_of(Verdict::go), name_of(Verdict::hold), name_of(Verdict::no_go)};

Json plan_part() {
  return object({{"verdict", one_of(verdicts)},
                 {"method", one_of(method_names)},
                 {"count", whole()},
                 {"tap", size()},
                 {"thread", text()},
                 {"clock", text()}},
                {"verdict", "method"});
}

Json as_built() {
  Json properties = Json::object();
  for (const RecordEntry& entry : record_entries()) {
    if (entry.key == RecordKey::order || entry.key == RecordKey::tap_number) continue;
    Json value = text();
    if (!entry.words.empty()) value = one_of(entry.words);
    if (entry.type == RecordType::day) value["pattern"] = "^[0-9]{4}-[0-9]{2}-[0-9]{2}";
    if (entry.type == RecordType::time) value["pattern"] = "^([01]?[0-9]|2[0-3]):[0-5][0-9]$";
    if (entry.type == RecordType::quantity && entry.kind != Kind::ratio) value = Json{{"allOf", {quantity()}}};
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
  const Json hold = object({{"code", one_of(finding_codes)},
                            {"clears", {{"enum", {"office", "site"}}}},
                            {"cleared", flag()},
                            {"reading", one_of(reading_ids)},
                            {"found", text()},
                            {"by", text()}},
                           {"code", "clears", "cleared"});
  const Json reading = object({{"id", one_of(reading_ids)},
                               {"what", text()},
                               {"at_least", quantity()},
                               {"at_most", quantity()},
                               {"value", quantity()},
                               {"judged", one_of(judged_names)}},
                              {"id", "what", "judged"});
  Json schema = object(
      {{"format", {{"const", 1}}},
       {"revision",
        {{"description", "of a line of a ledger: 1, and one more for each correction"},
         {"type", "integer"},
         {"minimum", 1}}},
       {"id", text()},
       {"tap_number", whole()},
       {"place", text()},
       {"crew", text()},
       {"main", object({{"material", text()}, {"size", size()}, {"class", text()}}, {"material", "size"})},
       {"service", object({{"size", size()}}, {})},
       {"rules", text()},
       {"verdict", one_of(verdicts)},
       {"planned", plan_part()},
       {"found", plan_part()},
       {"complete", flag()},
       {"void", flag()},
       {"leak_check", one_of(leak_check_names)},
       {"because", list_of(object({{"code", text()}, {"text", text()}}, {"code", "text"}))},
       {"missing", list_of(object({{"name", text()}, {"label", text()}}, {"name", "label"}))},
       {"readings", list_of(reading)},
       {"settled", list_of(one_of(finding_codes))},
       {"holds", list_of(hold)},
       {"deviations",
        list_of(object({{"what", text()}, {"planned", text()}, {"done", text()}, {"reason", text()}}, {"what"}))},
       {"record", as_built()}},
      {"format", "tap_number", "main", "service", "verdict", "planned", "found", "complete", "void", "because",
       "missing", "readings", "settled", "holds", "deviations", "record"});
  schema["definitions"]["quantity"] = {{"type", "object"},
                                       {"properties", {{"value", {{"type", "number"}}}, {"unit", text()}}},
                                       {"required", {"value", "unit"}},
                                       {"additionalProperties", false}};
  return schema;
}

}  // namespace mainbore::io
