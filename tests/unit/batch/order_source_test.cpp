// Streams cut into orders: what is an order, where it stands, whatever pieces the stream comes in.
#include "batch/order_source.hpp"

#include "batch/batch.hpp"
#include "mainbore/job_file.hpp"
#include "support/catch.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::batch;
using namespace mainbore::test;

namespace {

struct Cut {
  std::string text;
  std::int64_t line;
  std::uint64_t row;
  bool operator==(const Cut&) const = default;
};

std::vector<Cut> all_of(OrderSource& source) {
  std::vector<Cut> cuts;
  Piece piece;
  for (; source.take(piece); piece.clear()) {
    for (const OrderText& text : piece.texts) {
      const std::string_view bytes = std::string_view(piece.bytes).substr(text.begin, text.size);
      cuts.push_back({text.fault.empty() ? std::string(bytes) : "fault", text.line, text.row});
      CHECK(piece.bytes.size() >= text.begin + text.size + 64);  // room for the fast reader
    }
  }
  return cuts;
}

std::vector<Cut> lines(std::string_view text, std::size_t piece = 1u << 16) {
  return all_of(*line_source(source_of(text, piece)));
}
std::vector<Cut> values(std::string_view text, std::size_t piece = 1u << 16) {
  return all_of(*json_source(source_of(text, piece)));
}

}  // namespace

TEST_CASE("a line is an order") {
  CHECK(lines("").empty());
  CHECK(lines("\n \r\n\t\n").empty());
  CHECK(lines("a\nb\n") == std::vector<Cut>{{"a", 1, 1}, {"b", 2, 2}});
  CHECK(lines("a\r\n\r\nb") == std::vector<Cut>{{"a", 1, 1}, {"b", 3, 2}});
  CHECK(lines("\xEF\xBB\xBF"
              "a\n\xEF\xBB\xBF"
              "b") == std::vector<Cut>{{"a", 1, 1},
                                       {"\xEF\xBB\xBF"
                                        "b",
                                        2, 2}});
}

TEST_CASE("lines do not depend on the pieces they come in") {
  std::string text;
  for (int i = 0; i < 3000; ++i)
    text += std::string(static_cast<std::size_t>(i) % 700, 'x') + (i % 3 == 0 ? "\r\n" : "\n");
  const auto whole = lines(text);
  CHECK(whole.size() > 2900);
  for (const std::size_t piece : {1u, 7u, 4096u}) CHECK(lines(text, piece) == whole);
}

TEST_CASE("a line longer than any job is cut off, and reading goes on behind it") {
  for (const std::size_t size : {longest_job - 1, longest_job, longest_job + 1, std::size_t{10} << 20}) {
    const std::string text = "a\n" + std::string(size, 'x') + "\nb\n";
    const auto cuts = lines(text);
    REQUIRE(cuts.size() == 3);
    CHECK(cuts[0] == Cut{"a", 1, 1});
    CHECK(cuts[1].text.size() >= std::min(size, longest_job + 1));
    CHECK(cuts[1].text.size() <= 2 * longest_job + 2);
    CHECK(cuts[2] == Cut{"b", 3, 3});
  }
}

TEST_CASE("an array is its elements; values may also stand one after the other") {
  CHECK(values("").empty());
  CHECK(values(" [ ] ").empty());
  CHECK(values("[{\"a\":1},{\"b\":[1,{}]}]") == std::vector<Cut>{{"{\"a\":1}", 1, 1}, {"{\"b\":[1,{}]}", 1, 2}});
  const auto spaced = values("\xEF\xBB\xBF[\n  {},\n  {\"x\": \"],[\"}\n]\n");
  REQUIRE(spaced.size() == 2);
  CHECK(spaced[0].line == 2);
  CHECK(spaced[1].line == 3);
  CHECK(spaced[1].text.find("{\"x\": \"],[\"}") != std::string::npos);
  CHECK(values("{\n\"a\":1\n}\n{}").size() == 2);
  CHECK(values("[{}]\n[{},{}]").size() == 3);
  CHECK(values("7").size() == 1);
}

TEST_CASE("a fault of the array is an order of its own, one of an order spoils no other") {
  CHECK(values("[{},]").back().text == "fault");
  CHECK(values("[,{}]").front().text == "fault");
  CHECK(values("[{}").back().text == "fault");
  CHECK(values("[{},").back().text == "fault");
  CHECK(values("[{\"a\":").size() == 1);                   // cut off inside an order, which says so itself
  CHECK(values("[{\"a\":\"x\n},{\"b\":1}]").size() == 2);  // a quote is missing: its line ends the text
}

TEST_CASE("values do not depend on the pieces they come in") {
  std::string text = "[";
  for (int i = 0; i < 800; ++i) text += (i > 0 ? ",\n" : "\n") + good_order;
  text += "\n]";
  const auto whole = values(text);
  CHECK(whole.size() == 800);
  CHECK(whole.back().line == 801);
  for (const std::size_t piece : {1u, 13u, 4096u}) CHECK(values(text, piece) == whole);
}

TEST_CASE("the format is told from the first byte") {
  CHECK(format_of("\xEF\xBB\xBF {\"id\"") == InputFormat::ndjson);
  CHECK(format_of("\n[") == InputFormat::json);
  CHECK(format_of("{\n") == InputFormat::json);
  CHECK(format_of("id,main.size") == InputFormat::csv);
  CHECK(format_of("") == InputFormat::csv);
}
