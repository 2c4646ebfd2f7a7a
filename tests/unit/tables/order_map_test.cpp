#include "mainbore/order_file.hpp"
#include "support/catch.hpp"
#include "unit/tables/tables.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

std::vector<Diagnostic> faults_of(std::string_view text) {
  return io::read_order_map(text, "map.json", Catalog::builtin()).diagnostics;
}
std::string one_fault(std::string_view text) {
  const auto faults = faults_of(text);
  if (faults.size() != 1) return std::to_string(faults.size()) + " faults";
  return std::string(faults[0].code) + ' ' + faults[0].pointer + ' ' + faults[0].message + " / " + faults[0].help;
}

}  // namespace

TEST_CASE("a map says columns, codes, markers and defaults") {
  const io::OrderMap map = map_of(R"({
    "format": 1, "name": "register",
    "columns": {"A": "id", "B": {"to": "main.size", "unit": "mm", "missing": [7, "none"], "greatest": 1200},
                "C": {"to": "main.material", "values": {"1": "cast iron", "2": "XX"}}},
    "materials": {"X.X.": "copper"}, "missing": ["TBA"],
    "defaults": {"main.pressure": "80 psi", "main.encased": true, "main.installed": 1950}})");
  CHECK(map.name == "register");
  REQUIRE(map.columns.size() == 3);
  CHECK(map.columns[1].unit == "mm");
  CHECK(map.columns[1].missing == std::vector<std::string>{"7", "none"});
  REQUIRE(map.columns[1].greatest);
  CHECK(map.columns[1].greatest->value == 48.0);  // 1200 mm is the 48-inch pipe
  CHECK(map.columns[1].greatest->text == "1200 mm");
  REQUIRE(map.columns[2].values.size() == 2);
  CHECK(std::get<Material>(map.columns[2].values[0].second) == Material::cast_iron);
  CHECK(std::get<Material>(map.columns[2].values[1].second) == Material::copper);
  CHECK(map.defaults.size() == 3);
  CHECK(map.ignore_others);
}

TEST_CASE("every fault of a map is said, with its place and the nearest known name") {
  CHECK(one_fault("{\"format\": 1}").starts_with("map.missing  \"columns\""));
  CHECK(one_fault(R"({"columns": {}})").starts_with("map.missing  \"format\""));
  CHECK(one_fault(R"({"format": 2, "columns": {}})").starts_with("map.unknown-value /format"));
  CHECK(one_fault(R"({"format": 1, "columns": {}, "defualts": {}})").find("did you mean \"defaults\"") !=
        std::string::npos);
  CHECK(one_fault(R"({"format": 1, "columns": {"A": "main.sise"}})").find("did you mean \"main.size\"") !=
        std::string::npos);
  CHECK(one_fault(R"({"format": 1, "columns": {"A": "pressure"}})").find("did you mean \"main.pressure\"") !=
        std::string::npos);
  CHECK(one_fault(R"({"format": 1, "columns": {"A": {"unit": "in"}}})").starts_with("map.missing /columns/A"));
  CHECK(one_fault(R"({"format": 1, "columns": {"A": {"to": "main.size", "unit": "psi"}}})")
            .starts_with("map.unknown-value /columns/A/unit \"psi\" is the unit of something else"));
  CHECK(one_fault(R"({"format": 1, "columns": {"A": {"to": "main.material", "unit": "in"}}})")
            .starts_with("map.contradiction"));
  CHECK(one_fault(R"({"format": 1, "columns": {"A": {"to": "service.line.c", "unit": "psi"}}})")
            .starts_with("map.contradiction"));
  CHECK(one_fault(R"({"format": 1, "columns": {"A": {"to": "main.size", "least": 8}}})").starts_with("job.no-unit"));
  CHECK(one_fault(R"({"format": 1, "columns": {"A": {"to": "main.installed", "least": 2000, "greatest": 1900}}})")
            .starts_with("map.contradiction"));
  CHECK(one_fault(R"({"format": 1, "columns": {"PIPE SIZE": "main.size", "pipe_size": "service.size"}})")
            .starts_with("map.contradiction"));
  CHECK(one_fault(R"({"format": 1, "columns": {"A": "id"}, "id": ["B"]})").starts_with("map.contradiction"));
  CHECK(one_fault(R"({"format": 1, "columns": {}, "materials": {"CO": "cooper"}})").find("did you mean \"copper\"") !=
        std::string::npos);
  CHECK(one_fault(R"({"format": 1, "columns": {}, "materials": {"C.O": "copper", "CO": "steel"}})")
            .starts_with("map.contradiction"));
  CHECK(one_fault(R"({"format": 1, "columns": {}, "defaults": {"main.pressure": 80}})").starts_with("job.no-unit"));
  CHECK(one_fault(R"({"format": 1, "columns": {}, "defaults": {"id": "X"}})").starts_with("map.contradiction"));
  CHECK(one_fault(R"({"format": 1, "columns": {}, "defaults": {"nearby[0].what": "valve"}})")
            .starts_with("map.unknown-key"));
  CHECK(one_fault(R"({"format": 1, "columns": [], "missing": []})").starts_with("map.wrong-type /columns"));
  CHECK(one_fault(R"({"format": 1, "format": 1, "columns": {}})").starts_with("map.duplicate-key"));
  CHECK(one_fault(R"({"format": 1, "columns": {}, "defaults": {"main.pressurised": true, "main.pressurized": false}})")
            .starts_with("map.duplicate-key"));
  CHECK(one_fault("{").starts_with("json.syntax"));
  CHECK(one_fault("[]").starts_with("map.wrong-type"));

  const auto several = faults_of(R"({"format": 1,
    "columns": {"A": "main.sise", "B": {"to": "main.wall", "unit": "psi"}},
    "materials": {"Q": "cheese"}})");
  REQUIRE(several.size() == 3);
  CHECK(several[0].line == 2);
  CHECK(several[2].line == 3);
}

TEST_CASE("every code that tables and maps use is explained") {
  for (const std::string_view code :
       {"csv.quote", "csv.too-large", "csv.ragged", "csv.encoding", "csv.header", "csv.no-column", "map.duplicate-key",
        "map.unknown-key", "map.unknown-value", "map.wrong-type", "map.contradiction", "map.missing",
        "order.two-materials", "order.not-a-wall", "order.out-of-map-range", "order.year", "order.day-count"}) {
    const auto texts = order_diagnostic_texts();
    INFO(code);
    CHECK(std::any_of(texts.begin(), texts.end(), [&](const DiagnosticText& text) { return text.code == code; }));
  }
}

TEST_CASE("cells compare by word and by number") {
  CHECK(io::cell_key("  N/A ") == "n/a");
  CHECK(io::cell_key("7.00") == "7");
  CHECK(io::cell_key("-999.0") == "-999");
  CHECK(io::cell_key("-0") == "0");
  CHECK(io::cell_key("007") == "7");
  CHECK(io::cell_key("7 in") == "7 in");
  CHECK(io::with_unit(" 150 ", "mm") == "150 mm");
  CHECK(io::with_unit("3/4", "in") == "3/4 in");
  CHECK(io::with_unit("DN 150", "mm") == "DN 150");
  CHECK(io::with_unit("6\"", "mm") == "6\"");
  CHECK(io::with_unit("82 kPa", "psi") == "82 kPa");
  CHECK(io::with_unit("", "psi").empty());
}
