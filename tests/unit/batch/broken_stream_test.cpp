// Streams of orders that are cut anywhere, marked, or broken in one place: nothing is invented, nothing lost in silence.
#include <fstream>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <random>

#include "batch/batch.hpp"
#include "bench/orders.hpp"
#include "mainbore/job_file.hpp"
#include "support/catch.hpp"
#include "support/json_texts.hpp"
#include "support/plan_under.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::batch;
using namespace mainbore::test;

namespace {

const std::string mark = "\xEF\xBB\xBF";

// The bytes in two reads, the second of which begins at `cut`; then nothing.
io::ByteSource in_two(std::string_view text, std::size_t cut) {
  return [text, cut, at = std::size_t{0}](char* to, std::size_t room) mutable {
    const std::size_t end = at < cut ? cut : text.size();
    const std::size_t size = std::min(room, end - at);
    std::memcpy(to, text.data() + at, size);
    at += size;
    return size;
  };
}

std::string records(io::ByteSource bytes, InputFormat in, const BatchOptions& options = {}) {
  std::string out;
  const BatchResult result = plan_orders(std::move(bytes), in, "orders", planner_under(default_rules()), options,
                                         [&](Piece& piece) { out += piece.out; });
  for (const Diagnostic& fault : result.faults) out += format_diagnostic(fault);
  return out;
}

// Whatever pieces a text comes in, its records are the same.
void same_in_any_pieces(const std::string& text, InputFormat in) {
  const std::string whole = records(in_two(text, text.size()), in);
  for (std::size_t cut = 0; cut < text.size(); ++cut) {
    if (records(in_two(text, cut), in) != whole) FAIL("cut at " << cut << " of " << text);
  }
  if (records(source_of(text, 1), in) != whole) FAIL("byte by byte: " << text);
}

std::string order(int number) {
  const std::string id = "AV-" + std::to_string(number);
  return R"({"id": ")" + id + R"(", "main": {"material": "ductile iron", "size": "8 in", "pressure": "82 psi"},)" +
         R"( "nearby": [{"what": "tap", "along": "4 ft"}], "service": {"size": "1 in"}})";
}

enum class Layout { one_line, line_each, pretty };

std::string pretty(const std::string& json) { return nlohmann::ordered_json::parse(json).dump(2); }

std::string list_of(int count, Layout layout) {
  std::string text = "[";
  for (int i = 0; i < count; ++i) {
    if (i > 0) text += ',';
    if (layout != Layout::one_line) text += '\n';
    text += layout == Layout::pretty ? pretty(order(i)) : order(i);
  }
  return text + (layout == Layout::one_line ? "]" : "\n]\n");
}

struct Told {
  std::map<std::string, std::string> verdicts;  // records by id, of the orders that were read, without their places
  std::size_t unreadable = 0;
  bool unread_lines = false;  // it says up to which line others may be lost
};
Told told_by(const std::string& out) {
  Told told;
  for (const std::string& line : lines_of(out)) {
    auto record = nlohmann::json::parse(line);
    record.erase("row");
    record.erase("line");
    if (record["verdict"] == "unreadable") ++told.unreadable;
    else told.verdicts[record.value("id", "nobody's")] = record.dump();
    told.unread_lines = told.unread_lines || line.find("was not read, and may hold other orders") != std::string::npos;
  }
  return told;
}

}  // namespace

TEST_CASE("a byte-order mark is no part of a stream, whatever pieces it comes in") {
  const std::string lines = good_order + "\n" + good_order + "\n";
  const std::string table = "id,main.material,main.size,main.pressure,service.size\nA,PVC,6 in,60 psi,1 in\n";
  const std::vector<std::pair<std::string, InputFormat>> streams = {{"", InputFormat::json},
                                                                    {"", InputFormat::ndjson},
                                                                    {"", InputFormat::csv},
                                                                    {" ", InputFormat::json},
                                                                    {"[" + good_order + "]", InputFormat::json},
                                                                    {lines, InputFormat::json},
                                                                    {lines, InputFormat::ndjson},
                                                                    {table, InputFormat::csv}};
  for (const auto& [text, in] : streams) {
    const std::string plain = records(in_two(text, 0), in);
    same_in_any_pieces(mark + text, in);
    CHECK(records(in_two(mark + text, 0), in) == plain);
  }
  // Half a mark, or two of them, are bytes like others.
  for (const std::string& begin : {mark.substr(0, 1), mark.substr(0, 2), mark + mark}) {
    same_in_any_pieces(begin, InputFormat::json);
    same_in_any_pieces(begin + "[" + good_order + "]", InputFormat::json);
    same_in_any_pieces(begin + lines, InputFormat::ndjson);
  }
}

TEST_CASE("a list with one byte taken out, put in or changed loses one order at most") {
  constexpr int count = 8;
  for (const Layout layout : {Layout::one_line, Layout::line_each, Layout::pretty}) {
    const std::string sound = list_of(count, layout);
    const Told whole = told_by(records(in_two(sound, 0), InputFormat::json));
    REQUIRE(whole.verdicts.size() == count);
    REQUIRE(whole.unreadable == 0);
    const auto check = [&](const std::string& text, const std::string& how) {
      const Told told = told_by(records(in_two(text, 0), InputFormat::json));
      INFO(how << "\n" << text);
      std::size_t as_before = 0;
      for (const auto& [id, verdict] : told.verdicts) {
        const auto before = whole.verdicts.find(id);
        if (before != whole.verdicts.end() && before->second == verdict) ++as_before;
        if (!id.starts_with("AV-")) FAIL("an order is invented: " << verdict);
      }
      if (as_before + 1 < count) FAIL("only " << as_before << " orders are left");
      if (told.verdicts.size() + told.unreadable < count) FAIL("the count shrank");
      if (told.verdicts.size() + told.unreadable > count + 2) FAIL("records are invented");
    };
    // The middle orders, each byte that matters; the first and the last too.
    for (std::size_t at = 0; at < sound.size(); ++at) {
      const bool token = std::string_view("{}[]\",:").find(sound[at]) != std::string_view::npos;
      if (!token) continue;
      std::string text = sound;
      check(text.erase(at, 1), "without byte " + std::to_string(at));
      for (const char c : {'{', '}', '[', ']', '"', ','}) {
        text = sound;
        check(text.insert(at, 1, c), std::string("with ") + c + " at " + std::to_string(at));
        text = sound;
        text[at] = c;
        check(text, std::string("changed to ") + c + " at " + std::to_string(at));
      }
    }
  }
}

TEST_CASE("a missing brace loses its own order, and says where it stands") {
  std::string text = list_of(40, Layout::line_each);
  const std::size_t at = text.find(R"({"size": "1 in"}})", text.find("AV-5\""));
  text.erase(at + 16, 1);
  const std::vector<std::string> lines = lines_of(records(in_two(text, 0), InputFormat::json));
  REQUIRE(lines.size() == 40);
  const auto sixth = nlohmann::json::parse(lines[5]);
  CHECK(sixth["verdict"] == "unreadable");
  CHECK(sixth["line"] == 7);
  CHECK(told_by(records(in_two(text, 0), InputFormat::json)).verdicts.size() == 39);
}

TEST_CASE("where the next order is not sure, the lines that were not read are told") {
  // Their first key is nobody's: nothing tells one of them from a part of the order before.
  std::string text = "[\n";
  for (int i = 0; i < 6; ++i) {
    std::string one = order(i);
    one.insert(1, R"("ticket": 7, )");
    if (i == 1) one.pop_back();
    text += one + (i < 5 ? ",\n" : "\n");
  }
  const std::string out = records(in_two(text + "]\n", 0), InputFormat::json);
  const Told told = told_by(out);
  CHECK(told.unread_lines);
  CHECK(out.find("between here and line 9 was not read") != std::string::npos);
}

TEST_CASE("what a brace too many cuts off is not left out of its order") {
  const std::string cut_off =
      R"([{"id": "AV-1", "main": {"material": "ductile iron", "size": "8 in", "pressure": "82 psi"},)"
      R"( "service": {"size": "1 in"}}, "nearby": [{"what": "gas line", "along": "0 ft"}]},)" +
      order(2) + "]";
  const Told told = told_by(records(in_two(cut_off, 0), InputFormat::json));
  CHECK(told.unreadable == 1);
  CHECK(told.verdicts.size() == 1);
  CHECK(told.verdicts.contains("AV-2"));
  // A text among the orders is none, and spoils none.
  const Told beside = told_by(records(in_two("[" + order(1) + ", \"text\", " + order(2) + "]", 0), InputFormat::json));
  CHECK(beside.unreadable == 1);
  CHECK(beside.verdicts.size() == 2);
}

TEST_CASE("outside a list as well, what a brace too many cuts off goes with its order") {
  const std::string cut_off =
      R"({"id": "AV-1", "main": {"material": "ductile iron", "size": "8 in", "pressure": "82 psi"},)"
      R"( "service": {"size": "1 in"}})";
  const std::string behind = R"("nearby": [{"what": "gas line", "along": "0 ft"}]})";
  for (const std::string_view between : {",", ", ", ",\n  ", " ", "}, ", ": "}) {
    const std::string text = cut_off + std::string(between) + behind + "\n" + order(2) + "\n" + order(3);
    INFO(text);
    const Told told = told_by(records(in_two(text, 0), InputFormat::json));
    CHECK_FALSE(told.verdicts.contains("AV-1"));
    CHECK(told.unreadable >= 1);
    CHECK(told.verdicts.contains("AV-2"));
    CHECK(told.verdicts.contains("AV-3"));
    same_in_any_pieces(text, InputFormat::json);
  }
  // One after the other, on lines or on one, they are as many as before; so they are with commas and no bracket.
  for (const std::string_view between : {"", " ", "\n", "\n\n", ", "}) {
    const std::string text = order(1) + std::string(between) + order(2) + std::string(between) + order(3);
    INFO(text);
    CHECK(told_by(records(in_two(text, 0), InputFormat::json)).verdicts.size() == 3);
    same_in_any_pieces(text, InputFormat::json);
  }
}

TEST_CASE("one answer whoever reads: the full reader, lines, lists, and any cut") {
  JsonTexts texts(11);
  const auto verdict_of = [](const std::string& record) {
    return nlohmann::json::parse(record)["verdict"].get<std::string>();
  };
  BatchOptions without_rows;
  without_rows.rows = false;
  for (int round = 0; round < 3000; ++round) {
    std::string text;
    switch (round % 4) {
      case 0:
        text = texts.broken(order(round));
        break;
      case 1:
        text = texts.value();
        break;
      case 2:
        text = texts.broken(texts.value());
        break;
      default:
        bench::append_order(text, static_cast<std::uint64_t>(round), bench::OrderFacts::all);
        text.pop_back();
        if (round % 8 == 3) text = texts.broken(text);
    }
    const JobFile full = read_job(text, "orders", Catalog::builtin());
    std::string line = text;
    std::replace(line.begin(), line.end(), '\n', ' ');
    std::replace(line.begin(), line.end(), '\r', ' ');
    const std::vector<std::string> by_line =
        lines_of(records(in_two(line + '\n', 0), InputFormat::ndjson, without_rows));
    const JobFile full_of_line = read_job(line, "orders", Catalog::builtin());
    INFO(text);
    if (by_line.size() == 1) CHECK((verdict_of(by_line[0]) != "unreadable") == full_of_line.job.has_value());
    else CHECK(line.find_first_not_of(" \t") == std::string::npos);
    if (full.job) {
      const std::vector<std::string> in_list =
          lines_of(records(in_two("[" + text + "]", 0), InputFormat::json, without_rows));
      REQUIRE(in_list.size() == 1);
      CHECK(in_list[0] == lines_of(records(in_two(text, 0), InputFormat::json, without_rows)).at(0));
      if (by_line.size() == 1) CHECK(in_list[0] == by_line[0]);
    }
    if (round % 44 < 4) {
      same_in_any_pieces("[" + text + "," + order(1) + "]", InputFormat::json);
      same_in_any_pieces(text + "\n" + good_order, InputFormat::ndjson);
    }
  }
}
