#include "io/orders/verdict_schema.hpp"

#include <array>
#include <string_view>

#include "io/schema/schema_parts.hpp"
#include "mainbore/finding.hpp"
#include "mainbore/plan.hpp"

namespace mainbore::io {
namespace {

using schema::Json;

constexpr std::array<std::string_view, 4> outcomes = {name_of(Verdict::go), name_of(Verdict::hold),
                                                      name_of(Verdict::no_go), "unreadable"};

Json amount(std::string_view what) {
  return {{"description", what},
          {"type", "object"},
          {"required", {"value", "unit"}},
          {"properties", {{"value", {{"type", "number"}}}, {"unit", {{"type", "string"}}}}}};
}

Json place(std::string_view what) { return {{"description", what}, {"type", "integer"}, {"minimum", 1}}; }

Json codes(std::string_view what) {
  return {{"description", what}, {"type", "array"}, {"items", {{"enum", finding_codes}}}};
}

// What is wrong with an order, or with a cell.
Json diagnostics(std::string_view what) {
  Json told = {{"type", "object"}, {"required", {"code", "message"}}};
  told["properties"] = {
      {"code", {{"type", "string"}}},    {"path", {{"description", "JSON Pointer (RFC 6901)"}, {"type", "string"}}},
      {"line", place("of the file")},    {"column", place("of the line")},
      {"message", {{"type", "string"}}}, {"help", {{"type", "string"}}}};
  return {{"description", what}, {"type", "array"}, {"minItems", 1}, {"items", std::move(told)}};
}

}  // namespace

Json verdict_schema() {
  Json schema = {{"type", "object"}, {"required", {"verdict"}}};
  schema["properties"] = {
      {"file", {{"description", "where several are read"}, {"type", "string"}}},
      {"row", place("of the order in the file, the header of a table not counted")},
      {"line", place("of the order in the file")},
      {"id", {{"description", "the work order, where it could be read"}, {"type", "string"}}},
      {"verdict", {{"enum", outcomes}}},
      {"waits_for", {{"description", "of a hold: who clears what it waits for"}, {"enum", {"office", "site"}}}},
      {"method", {{"enum", method_names}}},
      {"count", {{"description", "of taps, where there are several"}, {"type", "integer"}, {"minimum", 2}}},
      {"tap", amount("of each")},
      {"limit", amount("least limit of the pressure chain")},
      {"reduce_to", amount("what the line must be lowered to at the least")},
      {"holds", codes("what must be cleared before the cut")},
      {"stops", codes("what forbids the tap")},
      {"rejected", codes("why each of the methods not taken was not")},
      {"reasons", diagnostics("why the order cannot be read")},
      {"remarks", diagnostics("cells that were set aside; the order is planned without them")},
      {"kept", {{"description", "columns of the order carried on (--keep)"}, {"type", "object"}}}};
  schema["if"] = {{"properties", {{"verdict", {{"const", "unreadable"}}}}}};
  schema["then"] = {{"required", {"reasons"}}, {"properties", {{"method", false}, {"holds", false}, {"stops", false}}}};
  schema["else"] = {{"required", {"method", "holds", "stops"}}, {"properties", {{"reasons", false}}}};
  return schema;
}

}  // namespace mainbore::io
