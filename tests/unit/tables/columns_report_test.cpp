#include "io/orders/columns_report.hpp"

#include "support/catch.hpp"
#include "unit/tables/tables.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

io::ColumnsReport report_of(std::string_view text, const io::OrderMap* map) {
  static const std::string name = "orders.csv";
  io::TableRows rows(source_of(text), {}, Catalog::builtin(), map, name);
  REQUIRE(rows.table() != nullptr);
  REQUIRE(rows.table()->faults().empty());
  return io::report_columns(rows);
}

}  // namespace

TEST_CASE("the report says of each column what was understood") {
  const std::string text = project_file("examples/orders/ashby_vale_export.csv");
  const io::OrderMap map = map_of(project_file("examples/orders/ashby_vale_map.json"));
  const io::ColumnsReport report = report_of(text, &map);
  CHECK(report.rows == 24);
  CHECK(report.readable == 12);
  CHECK(report.with_remarks == 4);
  CHECK(report.delimiter == ',');
  REQUIRE(report.columns.size() == 12);
  const io::ColumnReport& size = report.columns[6];
  CHECK(size.header == "DIA_CM");
  CHECK(size.path == "main.size");
  CHECK(size.unit == "mm");
  CHECK(size.missing == 4);                                 // empty, 0, -999 and 7
  CHECK(size.values + size.missing + size.rejected == 23);  // of one row nothing can be trusted
  CHECK(size.examples.at(0).cell == "200");
  CHECK(size.examples.at(0).meaning == "8 in");
  CHECK(size.greatest == "12 in");
  CHECK(report.defaults == std::vector<std::string>{"service.thread = AWWA", "main.standard = AWWA"});

  // The second column for the material counts only where the first says nothing.
  CHECK(report.columns[5].values + report.columns[5].missing + report.columns[5].rejected == report.columns[4].missing);

  const std::string shown = io::format_columns_report(report);
  std::stringstream lines(shown);
  for (std::string line; std::getline(lines, line);) {
    INFO(line);
    CHECK(line.size() <= 100);
    CHECK((line.empty() || line.back() != ' '));
  }
  CHECK(shown.find("12 rows can be planned (50 %)") != std::string::npos);
  CHECK(shown.find("200 -> 8 in") != std::string::npos);
}

TEST_CASE("a unit that cannot be right is pointed out") {
  const io::OrderMap map =
      map_of(R"({"format": 1, "columns": {"D": {"to": "main.size", "unit": "cm"}, "M": "main.installed"}})");
  const io::ColumnsReport report = report_of("D,M\n150,yes\n200,no\n300,no\n", &map);
  CHECK(report.readable == 0);
  REQUIRE(report.hints.size() == 2);
  CHECK(report.hints[0].find("unit of main.size") != std::string::npos);
  CHECK(report.hints[1].find("nothing of M was understood") != std::string::npos);
}

TEST_CASE("long and strange cells do not break the page") {
  const std::string wild = "\"" + std::string(500, 'x') + "\x1b[31m\nnext\"";
  const io::OrderMap map = map_of(R"({"format": 1, "columns": {"A": "note", "B": "place"}})");
  const std::string shown = io::format_columns_report(
      report_of("A,B," + std::string(300, 'h') + "\n" + wild + ",caf\xC3\xA9 " + std::string(90, 'y') + ",1\n", &map));
  CHECK(shown.find('\x1b') == std::string::npos);
  std::stringstream lines(shown);
  for (std::string line; std::getline(lines, line);) {
    CHECK(std::count_if(line.begin(), line.end(),
                        [](char c) { return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u; }) <= 100);
  }
}

TEST_CASE("every value that was not understood is listed with its count") {
  const io::OrderMap map = map_of(R"({"format": 1, "columns": {"M": "main.material", "Y": "main.installed"}})");
  std::string text = "M,Y\n";
  for (int i = 0; i < 40; ++i) text += "X" + std::to_string(i % 20) + ",1650\n";
  text += "X3,\n=cmd,\n";
  const io::ColumnsReport report = report_of(text, &map);
  REQUIRE(report.values_rejected.size() == 22);
  CHECK(report.values_rejected[0].cell == "X3");
  CHECK(report.values_rejected[0].rows == 3);
  CHECK(report.values_rejected[21].cell == "1650");
  CHECK(report.values_rejected[21].rows == 40);
  const std::string shown = io::format_columns_report(report, true);
  CHECK(shown.find("every value that was not understood\n  M, read as main.material\n        3  X3\n") !=
        std::string::npos);
  CHECK(shown.find("       40  1650\n") != std::string::npos);
  CHECK(io::format_columns_report(report).find("every value") == std::string::npos);
}
