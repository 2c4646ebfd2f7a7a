#include "io/plan/plan_schema.hpp"

#include <array>
#include <initializer_list>
#include <string_view>
#include <utility>

#include "io/schema/schema_parts.hpp"
#include "mainbore/evidence.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/work.hpp"

namespace mainbore::io {
namespace {

using namespace schema;

const Json text = {{"type", "string"}};
const Json number = {{"type", "number"}};
const Json integer = {{"type", "integer"}};
const Json flag = {{"type", "boolean"}};
const Json quantity = {{"$ref", "#/definitions/quantity"}};
const Json measure = {{"anyOf", {quantity, number}}};  // a ratio has no unit
const Json ids = {{"type", "array"}, {"items", text}};

// A member whose name ends in '?' may be absent. What is not named here is allowed: paths only grow.
Json object(std::initializer_list<std::pair<std::string_view, Json>> members) {
  Json properties = Json::object();
  Json required = Json::array();
  for (const auto& [name, schema] : members) {
    const bool optional = name.ends_with('?');
    const std::string key(name.substr(0, name.size() - (optional ? 1 : 0)));
    properties[key] = schema;
    if (!optional) required.push_back(key);
  }
  return {{"type", "object"}, {"properties", std::move(properties)}, {"required", std::move(required)}};
}

constexpr std::array<std::string_view, 2> deciders = {"default", "utility"};
constexpr std::array feeds = {name_of(Feed::hand), name_of(Feed::powered)};

Json evidence() {
  return object({{"what", text},
                 {"finding?", one_of(finding_codes)},
                 {"value?", {{"anyOf", {text, number, quantity}}}},
                 {"from", one_of(from_names)},
                 {"how", one_of(how_names)},
                 {"source?", text},
                 {"utility_rule?", text},
                 {"check?", text}});
}

// Of a number or a limit: by which other calculation, or where from and how it was had.
Json calculation() {
  const Json figure = {{"anyOf", {number, quantity}}};
  const Json input = object({{"symbol", text},
                             {"what", text},
                             {"value", figure},
                             {"worked_out?", text},
                             {"from?", one_of(from_names)},
                             {"how?", one_of(how_names)},
                             {"source?", text},
                             {"utility_rule?", text}});
  const Json limit = object({{"at_least?", figure},
                             {"at_most?", figure},
                             {"worked_out?", text},
                             {"from?", one_of(from_names)},
                             {"how?", one_of(how_names)},
                             {"source?", text},
                             {"utility_rule?", text}});
  return object({{"id", text},
                 {"title", text},
                 {"of?", text},
                 {"formula", text},
                 {"inputs", list_of(input)},
                 {"result", figure},
                 {"limit?", limit},
                 {"utilization?", number},
                 {"refused?", flag}});
}

Json approved_part() {
  const Json item = object({{"kind", one_of(approved_kind_names)},
                            {"stock?", text},
                            {"text?", text},
                            {"size?", quantity},
                            {"thread?", text},
                            {"od_from?", quantity},
                            {"od_to?", quantity},
                            {"straps?", integer},
                            {"torque?", quantity},
                            {"rating?", quantity},
                            {"length?", quantity},
                            {"diameter?", quantity}});
  return object({{"file?", text}, {"name?", text}, {"edition?", text}, {"fittings", list_of(item)}});
}

Json main_part() {
  const Json reading =
      object({{"low", quantity}, {"high", quantity}, {"standard?", text}, {"class?", text}, {"also?", integer}});
  const Json assumption = object(
      {{"path", text}, {"value?", {{"anyOf", {text, number, quantity}}}}, {"because?", text}, {"settle?", text}});
  return object({{"material", one_of(material_names)},
                 {"size", quantity},
                 {"standard?", text},
                 {"class?", text},
                 {"od?", quantity},
                 {"od_low?", quantity},
                 {"od_high?", quantity},
                 {"caliper_low?", quantity},
                 {"caliper_high?", quantity},
                 {"wall_nominal?", quantity},
                 {"wall_min?", quantity},
                 {"wall_basis?", {{"enum", {"catalogue", "measured"}}}},
                 {"rating?", quantity},
                 {"rated_as?", text},
                 {"temperature_factor?", number},
                 {"candidates", list_of(object({{"standard", text}, {"class?", text}}))},
                 {"assumed", list_of(assumption)},
                 {"settle?", object({{"what", text}, {"readings", list_of(reading)}})}});
}

Json method_part() {
  const Json rejected = object({{"kind", one_of(method_names)},
                                {"count", integer},
                                {"tap", quantity},
                                {"code", one_of(finding_codes)},
                                {"why?", text},
                                {"decided_by?", one_of(deciders)},
                                {"utility_rule?", text}});
  return object(
      {{"kind", one_of(method_names)},
       {"count?", integer},
       {"tap?", quantity},
       {"thread?", text},
       {"hole?", quantity},
       {"spacing?", quantity},
       {"utility_words?", text},
       {"specification?", object({{"text", text}, {"utility_rule?", text}})},
       {"smaller_taps?", object({{"count", integer}, {"tap", quantity}, {"spacing", quantity}, {"barrel", quantity}})},
       {"rejected", list_of(rejected)}});
}

Json engagement_part() {
  return object({{"complete_threads", number},
                 {"complete_threads_nominal", number},
                 {"required_threads", number},
                 {"wall_needed?", quantity},
                 {"margin?", quantity},
                 {"judged", flag},
                 {"strip_load?", quantity},
                 {"end_load?", quantity}});
}

Json makeup_part() {
  return object({{"wrench_turns", number},
                 {"threads_showing", number},
                 {"hand_tight_turns", number},
                 {"hand_tight_length", quantity},
                 {"turns_past_gauge", number},
                 {"stop_past_gauge", quantity},
                 {"engaged_length", quantity},
                 {"tip_depth?", quantity},
                 {"far_wall_clearance?", quantity},
                 {"protrusion?", quantity}});
}

Json pressure_part() {
  const Json limit = object({{"link", one_of(pressure_link_names)},
                             {"limit", quantity},
                             {"how?", one_of(how_names)},
                             {"sources", ids},
                             {"utility_rule?", text}});
  return object({{"line", quantity},
                 {"surge?", quantity},
                 {"limit?", quantity},
                 {"governed_by?", one_of(pressure_link_names)},
                 {"margin?", quantity},
                 {"reduce_to?", quantity},
                 {"limits", list_of(limit)}});
}

Json marks_part() {
  return object({{"breakthrough?", quantity},
                 {"full_width?", quantity},
                 {"tap_catches?", quantity},
                 {"stop_tapping?", quantity},
                 {"stop_touches?", quantity},
                 {"never_past?", quantity},
                 {"tap_depth?", quantity},
                 {"tap_turns?", number},
                 {"drawn_back?", quantity},
                 {"stop_drawn_back?", quantity},
                 {"clear?", quantity},
                 {"feed_pitch?", quantity},
                 {"by_trial", flag}});
}

Json setup_part() {
  const Json torque = object({{"low", quantity}, {"usual", quantity}, {"high", quantity}});
  return object(
      {{"machine?", object({{"id", text}, {"title?", text}, {"maker_figures", flag}})},
       {"feed?", one_of(feeds)},
       {"machine_saddle?", object({{"od", quantity}})},
       {"chain?", object({{"needed", quantity}, {"available", quantity}, {"extensions", integer}, {"leg", quantity}})},
       {"clamp?",
        object({{"force", quantity}, {"tension?", quantity}, {"stud_torque?", torque}, {"ovality?", quantity}})},
       {"thrust", quantity},
       {"drill?", quantity},
       {"drill_is_bound?", flag},
       {"drill_stroke?", quantity},
       {"cut_thrust?", quantity},
       {"travel_needed?", quantity},
       {"drill_load?", object({{"thrust_low", quantity},
                               {"thrust_high", quantity},
                               {"torque_low", quantity},
                               {"torque_high", quantity}})}});
}

Json location_part() {
  const Json clearing =
      object({{"what", one_of(nearby_names)}, {"along", quantity}, {"kept", quantity}, {"least", quantity}});
  return object({{"shift", quantity}, {"clock", text}, {"clearings", list_of(clearing)}});
}

Json finding() {
  return object({{"code", one_of(finding_codes)},
                 {"severity", one_of(severity_names)},
                 {"title?", text},
                 {"detail?", text},
                 {"value?", measure},
                 {"limit?", measure},
                 {"margin?", measure},
                 {"fix?", text},
                 {"how?", one_of(how_names)},
                 {"sources", ids},
                 {"utility_rule?", text},
                 {"decided_by?", one_of(deciders)},
                 {"utility_reason?", text}});
}

Json load_item() {
  return object({{"key", text},
                 {"group", one_of(load_group_keys)},
                 {"item", text},
                 {"size?", text},
                 {"stock?", text},
                 {"quantity", integer},
                 {"aboard?", integer},
                 {"instead?", text},
                 {"check?", text}});
}

Json steps() {
  const Json valve = {{"enum", {"open", "shut"}}};
  const Json valves =
      object({{"valve", valve}, {"bypass", valve}, {"bleed", valve}, {"chamber", {{"enum", {"pressure", "zero"}}}}});
  return list_of(object({{"id", text},
                         {"phase", text},
                         {"text", text},
                         {"condition?", text},
                         {"action", text},
                         {"hold_point?", text},
                         {"utility_words?", text},
                         {"valves?", valves},
                         {"uses?", ids}}));
}

// Parts that only some jobs ask for.
Json open_hole_part() {
  return object({{"bore", quantity}, {"flow", quantity}, {"push", quantity}, {"jet", quantity}});
}
Json service_part() {
  return object({{"demand", object({{"flow", quantity}})},
                 {"supply", quantity},
                 {"line", object({{"material", text}, {"size", quantity}, {"bore", quantity}, {"length", quantity}})},
                 {"losses", list_of(object({{"part", text}, {"loss", quantity}, {"left", quantity}}))},
                 {"residual", quantity},
                 {"velocity", quantity},
                 {"smallest", {{"type", "object"}}}});
}
Json sanitary_part() {
  return object({{"swab", object({{"strength_percent", number}, {"finished", quantity}})},
                 {"flush?", {{"type", "object"}}},
                 {"as_main", flag},
                 {"fills?", list_of({{"type", "object"}})}});
}
Json excavation_part() {
  return object({{"depth", quantity},
                 {"bottom", {{"type", "object"}}},
                 {"top", {{"type", "object"}}},
                 {"soil", object({{"type", text}, {"because", ids}})},
                 {"protective_system", text},
                 {"slope", number},
                 {"bank", quantity},
                 {"bank_otherwise?", quantity},
                 {"loose", quantity}});
}

Json settings_part() {
  const Json taken = object({{"path", text}, {"value", {{"anyOf", {text, integer, quantity}}}}});
  return object({{"file", text}, {"taken", list_of(taken)}, {"set_aside", ids}});
}

}  // namespace

Json plan_schema() {
  const Json reading =
      object({{"id", one_of(reading_ids)}, {"what", text}, {"at_least?", quantity}, {"at_most?", quantity}});
  const Json hold = object({{"code", one_of(finding_codes)},
                            {"clears", {{"enum", {"office", "site"}}}},
                            {"fix?", text},
                            {"reading?", text}});
  const Json document =
      object({{"name?", text}, {"title?", text}, {"edition?", text}, {"date?", text}, {"approver?", text}});
  const Json source = object({{"title", text}, {"where?", text}, {"note?", text}});
  Json schema = object({
      {"format", {{"const", plan_format}}},
      {"job",
       {{"description", "the job as it was read, with settings laid under it: see its own schema"},
        {"type", "object"}}},
      {"rules?", text},
      {"rules_documents?", list_of(document)},
      {"settings?", settings_part()},
      {"fingerprint?",
       object(
           {{"plan", text}, {"program", text}, {"tables", text}, {"rules", text}, {"job", text}, {"approved?", text}})},
      {"verdict", one_of(verdicts)},
      {"waits_for?", {{"enum", {"office", "site"}}}},
      {"summary", text},
      {"main", main_part()},
      {"method", method_part()},
      {"approved?", approved_part()},
      {"engagement?", engagement_part()},
      {"makeup?", makeup_part()},
      {"pressure", pressure_part()},
      {"setup", setup_part()},
      {"marks?", marks_part()},
      {"location", location_part()},
      {"open_hole?", open_hole_part()},
      {"service?", service_part()},
      {"sanitary?", sanitary_part()},
      {"excavation?", excavation_part()},
      {"not_checked?", list_of(object({{"what", text}, {"give", text}}))},
      {"readings", list_of(reading)},
      {"holds", list_of(hold)},
      {"findings", list_of(finding())},
      {"materials?", list_of(load_item())},  // these four stand in a whole plan only
      {"procedure?", steps()},
      {"contingencies?", steps()},
      {"record?", list_of(object({{"field", text}, {"label", text}, {"in_unit?", text}}))},
      {"cautions", list_of(object({{"code", text}, {"utility_words?", text}, {"text?", text}, {"basis?", text}}))},
      {"evidence?", list_of(evidence())},
      {"calculations?", list_of(calculation())},
      {"sources", {{"type", "object"}, {"additionalProperties", source}}},
  });
  Json amount = object({{"value", number}, {"unit", text}});
  amount["additionalProperties"] = false;
  schema["definitions"] = {{"quantity", std::move(amount)}};
  return schema;
}

}  // namespace mainbore::io
