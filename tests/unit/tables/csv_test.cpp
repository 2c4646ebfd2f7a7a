#include <cstdint>
#include <filesystem>
#include <iostream>
#include <random>

#include "io/text/json_text.hpp"
#include "support/catch.hpp"
#include "unit/tables/tables.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Cells = std::vector<std::string>;

TEST_CASE("cells are as RFC 4180 has them") {
  const auto records = records_of(
      "a,b,c\r\n1,\"two, three\",\"say \"\"no\"\"\"\r\n,\"\", x \r\n\"line\r\nbreak\",\" kept \",6\" "
      "pipe\r\nz,y,x\r\n");
  REQUIRE(records.size() == 5);
  CHECK(cells_of(records[0]) == Cells{"a", "b", "c"});
  CHECK(cells_of(records[1]) == Cells{"1", "two, three", "say \"no\""});
  CHECK(cells_of(records[2]) == Cells{"", "", " x "});
  CHECK(cells_of(records[3]) == Cells{"line\r\nbreak", " kept ", "6\" pipe"});
  CHECK(records[3].line == 4);
  CHECK(records[3].row == 3);
  CHECK(records[4].line == 6);
}

TEST_CASE("a file may lack its last line end, begin with a mark, and end its lines in three ways") {
  for (const std::string end : {"\n", "\r\n", "\r"}) {
    for (const std::string& last : {std::string(), end, end + end}) {
      for (const std::string mark : {"", "\xEF\xBB\xBF"}) {
        const std::string text = mark + "a,b" + end + end + "1," + end + "\"x\",\"y" + end + "z\"" + last;
        for (const std::size_t piece : {1u, 2u, 3u, 1000u}) {
          const auto records = records_of(text, piece);
          REQUIRE(records.size() == 3);
          CHECK(cells_of(records[0]) == Cells{"a", "b"});
          CHECK(cells_of(records[1]) == Cells{"1", ""});
          CHECK(cells_of(records[2]) == Cells{"x", "y" + end + "z"});
          CHECK(records[1].line == 3);
          CHECK(records[2].line == 4);
        }
      }
    }
  }
}

TEST_CASE("what stands between cells is found from the first line, or said") {
  CHECK(cells_of(records_of("a\tb,c\td\n1\t2,3\t4\n")[1]) == Cells{"1", "2,3", "4"});
  CHECK(cells_of(records_of("a;b;c\n1;2,5;3\n")[1]) == Cells{"1", "2,5", "3"});
  CHECK(cells_of(records_of("\"x;y;z\",b\n1,2\n")[1]) == Cells{"1", "2"});
  io::CsvOptions semicolon;
  semicolon.delimiter = ';';
  CHECK(cells_of(records_of("a,b;c\n1;2\n", 1000, semicolon)[0]) == Cells{"a,b", "c"});
}

TEST_CASE("a bad quote breaks the record of its line and no other") {
  SECTION("text behind the closing quote") {
    const auto records = records_of("a,b\n1,\"6\" main\"\n2,y\n");
    REQUIRE(records.size() == 3);
    REQUIRE(records[1].fault);
    CHECK(records[1].fault->problem.code == "csv.quote");
    CHECK(records[1].text == "1,\"6\" main\"");
    CHECK(cells_of(records[2]) == Cells{"2", "y"});
    CHECK(records[2].line == 3);
  }
  SECTION("behind a cell with a line break in it") {
    const auto records = records_of("a,b\n\"1\n1\",\"6\" main\"\n2,y\n", 3);
    REQUIRE(records.size() == 3);
    REQUIRE(records[1].fault);
    CHECK(records[1].text == "\"1\n1\",\"6\" main\"");
    CHECK(records[1].fault->span.begin == 6);
    CHECK(cells_of(records[2]) == Cells{"2", "y"});
    CHECK(records[2].line == 4);
  }
  SECTION("a quote that never ends") {
    const auto records = records_of("a,b\n1,\"x\n2,y\n3,z", 2);
    REQUIRE(records.size() == 4);
    REQUIRE(records[1].fault);
    CHECK(records[1].fault->span.begin == 2);
    CHECK(cells_of(records[3]) == Cells{"3", "z"});
  }
  SECTION("a file cut off inside a quoted cell") {
    const auto records = records_of("a,b\n1,x\n2,\"cut o");
    REQUIRE(records.size() == 3);
    CHECK_FALSE(records[1].fault);
    CHECK(records[2].fault);
  }
}

TEST_CASE("a line over the limit is passed over, and the next one read") {
  const std::string huge(10'000'000, 'x');
  for (const std::string& cell : {huge, '"' + huge + "\"\" \"", '"' + huge, std::string(3'000'000, ',')}) {
    for (const std::string end : {"\n", "\r\n", "\r"}) {
      const std::string text = "a,b" + end + "1,2" + end + "3," + cell + end + "4,5" + end;
      const auto records = records_of(text);
      REQUIRE(records.size() == 4);
      REQUIRE(records[2].fault);
      CHECK(records[2].fault->problem.code == "csv.too-large");
      CHECK(records[2].text.size() < 1000);
      CHECK(cells_of(records[3]) == Cells{"4", "5"});
      CHECK(records[3].line == 4);
      CHECK(records[3].row == 3);
    }
  }
}

namespace {

std::string good_rows(int count) {
  std::string rows;
  for (int i = 0; i < count; ++i) rows += std::to_string(i) + ",a row of thirty bytes or so\n";
  return rows;
}

}  // namespace

TEST_CASE("a quote that is never closed spoils its own line, however much stands behind it") {
  for (const int count : {20'000, 40'000, 120'000}) {
    for (const std::size_t piece : {5000u, 1u << 16}) {
      const std::string text = "a,b\n1,\"6 in main\n" + good_rows(count);
      io::CsvReader reader(source_of(text, piece));
      io::CsvRecord record;
      REQUIRE(reader.read(record));
      REQUIRE(reader.read(record));
      REQUIRE(record.fault);
      CHECK(record.fault->problem.code == "csv.quote");
      CHECK(record.fault->span.begin == 2);
      CHECK(record.text == "1,\"6 in main");
      int good = 0;
      for (; reader.read(record); ++good) {
        if (record.fault || record.line != good + 3 || record.cell(0) != std::to_string(good)) break;
      }
      CHECK(good == count);
    }
  }
}

TEST_CASE("a row of several lines may be as long as the limit, and no longer") {
  io::CsvOptions options;
  options.longest_record = 2000;
  for (const std::size_t piece : {1u, 700u, 1u << 16}) {
    for (const std::size_t over : {0u, 1u}) {
      const std::string row = "1,\"x\n" + std::string(2000 - 7 + over, 'y') + "\"\n";
      REQUIRE(row.size() == 2000 + over);
      const auto records = records_of("a,b\n" + row + "4,5\n", piece, options);
      REQUIRE(records.size() == 3 + over);
      CHECK(records[1].fault.has_value() == (over == 1));
      CHECK(cells_of(records.back()) == Cells{"4", "5"});
      CHECK(records.back().line == 4);
    }
  }
}

TEST_CASE("a great many quotes that are never closed are read, whatever the pieces") {
  // Each opens a cell that every later row closes and opens again, so that none of them ends within the limit.
  std::string text = "a,b\n";
  for (int i = 0; i < 100'000; ++i) text += "1,6\",\"" + std::string(94, 'x') + '\n';
  text += "4,5\n";
  const auto records = records_of(text);
  CHECK(records.size() > 80'000);
  CHECK(std::count_if(records.begin(), records.end(), [](const io::CsvRecord& one) { return !one.fault; }) == 2);
  CHECK(cells_of(records.back()) == Cells{"4", "5"});
  CHECK(records.back().line == 100'002);

  const auto again = records_of(text, 100'000);
  REQUIRE(again.size() == records.size());
  for (std::size_t i = 0; i < records.size(); ++i) {
    if (again[i].text != records[i].text || again[i].line != records[i].line) FAIL("record " << i << " differs");
  }
}

TEST_CASE("a record with a great many cells is passed over") {
  const auto records = records_of("a,b\n" + std::string(20000, ',') + "\n4,5\n");
  REQUIRE(records.size() == 3);
  CHECK(records[1].fault);
  CHECK(cells_of(records[2]) == Cells{"4", "5"});
}

TEST_CASE("records with NUL bytes or other encodings are marked") {
  const auto records = records_of(std::string("a,b\n1,caf\xC3\xA9\n2,caf\xE9\n3,", 21) + '\0' + "\n4,5\n");
  REQUIRE(records.size() == 5);
  CHECK_FALSE(records[1].not_text);
  CHECK(records[2].not_text);
  CHECK(records[3].not_text);
  CHECK_FALSE(records[4].not_text);
}

TEST_CASE("an empty file has no records") {
  CHECK(records_of("").empty());
  CHECK(records_of("\xEF\xBB\xBF").empty());
  CHECK(records_of("\r\n\r\n").empty());
}

TEST_CASE("what a writer quotes is read back, whatever the pieces the file arrives in") {
  std::mt19937_64 random(20240611);
  const std::vector<std::string> bits = {"a",  "7", ",", "\"", "\n",       "\r\n",
                                         "\r", " ", ";", "\t", "\xC3\xA9", "\xE2\x82\xAC"};
  for (int file = 0; file < 400; ++file) {
    const std::string end = file % 2 == 0 ? "\n" : "\r\n";
    const std::size_t columns = 2 + random() % 5;
    std::vector<Cells> rows;
    std::string text;
    for (std::size_t row = 0; row < 1 + random() % 12; ++row) {
      Cells cells;
      for (std::size_t column = 0; column < columns; ++column) {
        std::string cell;
        for (std::size_t i = random() % 6; i > 0; --i) cell += bits[random() % bits.size()];
        if (row == 0) cell = std::string(1, static_cast<char>('A' + column));  // a plain header
        if (column > 0) text += ',';
        const bool quote = cell.find_first_of("\",\r\n") != std::string::npos || random() % 4 == 0;
        if (quote) {
          text += '"';
          for (const char c : cell) text += c == '"' ? std::string("\"\"") : std::string(1, c);
          text += '"';
        } else {
          text += cell;
        }
        cells.push_back(std::move(cell));
      }
      text += end;
      rows.push_back(std::move(cells));
    }
    const auto records = records_of(text, 1 + random() % 20);
    INFO(text);
    REQUIRE(records.size() == rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
      CHECK_FALSE(records[i].fault);
      CHECK(cells_of(records[i]) == rows[i]);
    }
  }
}

// An independent collection of CSV files with what they hold as JSON, where the system has it installed.
TEST_CASE("the csv-spectrum collection is read as it says") {
  const std::string root = "/usr/share/nodejs/csv-spectrum";
  if (!std::filesystem::exists(root)) {
    std::cout << "[skipped] csv-spectrum is not installed\n";
    return;
  }
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(root + "/csvs")) {
    const auto records = records_of(file_text(entry.path().string()));
    const std::string expected = file_text(root + "/json/" + entry.path().stem().string() + ".json");
    const io::JsonText json(expected, 8);
    INFO(entry.path());
    REQUIRE(json.is_json());
    std::size_t row = 0;
    for (std::uint32_t object = 1; object < json.node(0).next; object = json.node(object).next) {
      ++row;
      REQUIRE(row < records.size());
      std::size_t column = 0;
      for (std::uint32_t member = object + 1; member < json.node(object).next;
           member = json.node(member).next, ++column) {
        REQUIRE(column < records[row].cells.size());
        CHECK(records[0].cell(column) == json.node(member).key);
        CHECK(records[row].cell(column) == json.node(member).text);
      }
      CHECK(column == records[row].cells.size());
    }
    CHECK(row + 1 == records.size());
    ++files;
  }
  CHECK(files >= 11);
}
