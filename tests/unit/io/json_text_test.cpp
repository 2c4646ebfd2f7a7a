#include "io/text/json_text.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <random>

#include "support/catch.hpp"
#include "support/json_texts.hpp"

using namespace mainbore::io;

namespace {

constexpr int deep = 500;

bool accepted(std::string_view text) { return !first_not_utf8(text) && JsonText(text, deep).is_json(); }

// The tree as the other reader builds it, from the nodes of ours.
nlohmann::json rebuilt(const JsonText& json, std::uint32_t index) {
  const JsonNode& node = json.node(index);
  switch (node.type) {
    case JsonType::null:
      return nullptr;
    case JsonType::boolean:
      return node.truth;
    case JsonType::number:
      return nlohmann::json::parse(node.text);
    case JsonType::string:
      return std::string(node.text);
    case JsonType::array: {
      auto list = nlohmann::json::array();
      for (auto c = index + 1; c < node.next; c = json.node(c).next) list.push_back(rebuilt(json, c));
      return list;
    }
    case JsonType::object: {
      auto object = nlohmann::json::object();
      for (auto c = index + 1; c < node.next; c = json.node(c).next)
        object[std::string(json.node(c).key)] = rebuilt(json, c);
      return object;
    }
  }
  return nullptr;
}

const std::vector<std::string>& seeds() {
  static const std::vector<std::string> texts = {
      R"({"id": "AV-1", "main": {"material": "ductile iron", "size": "8 in", "pressure": {"value": 82.5, "unit": "psi"}}})",
      R"({"nearby": [{"what": "joint", "along": "-4 ft 6 in"}, {"what": "tap", "along": "2.5 m", "clock": "1:30"}], "n": []})",
      R"([null, true, false, 0, -0, 1.5e+3, -2E-7, 123456789012, "", "\u00e9\ud83d\ude00\n\\\"\/", {}, [[]]])",
      R"("text")",
      "17",
      " { } ",
      "[\t1 ,\r\n2 ]",
      "{\"\": 0, \"a\": \"\xC3\xA9\"}"};
  return texts;
}

std::string fault_of(std::string_view text) {
  const JsonText json(text, 32);
  REQUIRE_FALSE(json.is_json());
  REQUIRE_FALSE(json.faults().empty());
  return json.faults().back().problem.message + " | " + json.faults().back().problem.help;
}

bool says(const std::string& message, std::initializer_list<std::string_view> parts) {
  return std::all_of(parts.begin(), parts.end(), [&](auto part) { return message.find(part) != std::string::npos; });
}

}  // namespace

TEST_CASE("what is JSON and what is not") {
  for (const std::string_view good :
       {"{}", "[]", "0", "-0", "1.0", "1e5", "1E+5", "\"\\u0041\"", " [ 1 , 2 ] ", "null"}) {
    INFO(good);
    CHECK(accepted(good));
  }
  for (const std::string_view bad : {"",
                                     " ",
                                     "{",
                                     "}",
                                     "[1,]",
                                     "{\"a\":1,}",
                                     "{\"a\" 1}",
                                     "{a:1}",
                                     "{'a':1}",
                                     "01",
                                     "+1",
                                     ".5",
                                     "5.",
                                     "1e",
                                     "1e+",
                                     "-",
                                     "0x10",
                                     "NaN",
                                     "Infinity",
                                     "True",
                                     "nul",
                                     "nulll",
                                     "\"\\x41\"",
                                     "\"\\u12G4\"",
                                     "\"\\ud800\"",
                                     "\"\\ud800\\u0041\"",
                                     "\"\\udc00\"",
                                     "\"a\nb\"",
                                     "\"a\tb\"",
                                     "\"a",
                                     "[1 2]",
                                     "{} {}",
                                     "[]]",
                                     "{\"a\":1 \"b\":2}",
                                     "// c\n{}",
                                     "{\"a\":}",
                                     "{,}",
                                     "[,1]",
                                     "{\"a\":1,,\"b\":2}",
                                     "1e999",
                                     "-1e999",
                                     "{1:2}"}) {
    INFO(bad);
    CHECK_FALSE(accepted(bad));
    CHECK_FALSE(nlohmann::json::accept(bad));
  }
}

TEST_CASE("two readers agree on what was written") {
  for (const std::string& text : seeds()) {
    INFO(text);
    const JsonText json(text, deep);
    REQUIRE(json.is_json());
    CHECK(rebuilt(json, 0) == nlohmann::json::parse(text));
  }
}

TEST_CASE("two readers agree on thousands of damaged texts") {
  std::mt19937_64 random(20260504);
  const std::string alphabet = "{}[]\",:\\0123456789.eE+-truefalsnu \n\t/'\xC3\xA9\x80\xE2";
  std::size_t kept_valid = 0;
  for (int round = 0; round < 40000; ++round) {
    std::string text = seeds()[random() % seeds().size()];
    for (std::uint64_t edits = 1 + random() % 3; edits > 0; --edits) {
      const std::size_t at = random() % (text.size() + 1);
      const char with = alphabet[random() % alphabet.size()];
      switch (random() % 4) {
        case 0:
          text.insert(at, 1, with);
          break;
        case 1:
          if (at < text.size()) text.erase(at, 1 + random() % 3);
          break;
        case 2:
          if (at < text.size()) text[at] = with;
          break;
        default:
          text.resize(at);
          break;
      }
    }
    const bool theirs = nlohmann::json::accept(text);
    INFO(text);
    REQUIRE(accepted(text) == theirs);
    if (!theirs) continue;
    ++kept_valid;
    const JsonText json(text, deep);
    REQUIRE(rebuilt(json, 0) == nlohmann::json::parse(text));
  }
  CHECK(kept_valid > 1000);  // otherwise the damage was too great to compare anything
}

TEST_CASE("every node knows where it stands") {
  const std::string text = R"({"a": [10, {"b/~": "x\ny"}], "c": true})";
  const JsonText json(text, 32);
  REQUIRE(json.is_json());
  const auto at = [&](std::uint32_t i) {
    return text.substr(json.node(i).span.begin, json.node(i).span.end - json.node(i).span.begin);
  };
  CHECK(at(0) == text);
  CHECK(at(1) == R"([10, {"b/~": "x\ny"}])");
  CHECK(at(2) == "10");
  CHECK(at(4) == R"("x\ny")");
  CHECK(json.node(4).text == "x\ny");
  CHECK(json.pointer(0).empty());
  CHECK(json.pointer(2) == "/a/0");
  CHECK(json.pointer(4) == "/a/1/b~1~0");
  CHECK(json.pointer(5) == "/c");
}

TEST_CASE("keys given twice are found, however many there are") {
  const JsonText twice(R"({"a": 1, "b": {"a": 2, "c": 3, "c": 4}, "a": 5})", 32);
  CHECK(twice.is_json());
  REQUIRE(twice.faults().size() == 2);
  CHECK(twice.pointer(twice.faults()[0].node) == "/b/c");
  CHECK(twice.pointer(twice.faults()[1].node) == "/a");
  CHECK(twice.faults()[0].problem.code == "job.duplicate-key");
  const JsonText escaped(R"({"a": 1, "\u0061": 2})", 32);
  CHECK(escaped.faults().size() == 1);
  const JsonText lines("{\n\"a\": 1,\n\"b\": 2,\n\n\"b\": 3,\n\"a\": 4}", 32, 10);
  REQUIRE(lines.faults().size() == 2);
  CHECK(lines.faults()[0].problem.help.starts_with("first given on line 11:"));
  CHECK(lines.faults()[1].problem.help.starts_with("first given on line 12:"));

  std::string many = "{\"k0\": 0";
  for (int i = 1; i < 100000; ++i) many += ",\"k" + std::to_string(i) + "\": 0";
  CHECK(JsonText(many + "}", 32).faults().empty());
  CHECK(JsonText(many + ",\"k7\": 0}", 32).faults().size() == 1);
}

TEST_CASE("nesting is bounded") {
  const auto nested = [](std::size_t n) { return std::string(n, '[') + std::string(n, ']'); };
  CHECK(JsonText(nested(32), 32).is_json());
  CHECK_FALSE(JsonText(nested(34), 32).is_json());
  const JsonText hostile(std::string(1000000, '['), 32);
  REQUIRE(hostile.faults().size() == 1);
  CHECK(hostile.faults()[0].problem.code == "json.too-large");
}

TEST_CASE("a syntax error names its usual cause") {
  CHECK(says(fault_of(R"({"a": 82 psi})"), {"82 psi without quotes", R"(write "82 psi")"}));
  CHECK(says(fault_of(R"({"a": 3/4 in, "b": 1})"), {R"(write "3/4 in")"}));
  CHECK(says(fault_of(R"({"a": 8"})"), {R"(write "8 in")"}));
  CHECK(says(fault_of(R"({"a": "3/4""})"), {"inch mark"}));
  CHECK(says(fault_of(R"({"a": 1,})"), {"comma before the closing }"}));
  CHECK(says(fault_of(R"([1,])"), {"comma before the closing ]"}));
  CHECK(says(fault_of("{\"a\": 1\n\"b\": 2}"), {"a comma is missing"}));
  CHECK(says(fault_of("{'a': 1}"), {"double quotes"}));
  CHECK(says(fault_of("{a: 1}"), {R"("a" without quotes)"}));
  CHECK(says(fault_of("{\"a\": True}"), {"write true or false"}));
  CHECK(says(fault_of("{\"a\": None}"), {"leave out the key"}));
  CHECK(says(fault_of("{\"a\": }"), {"no value for"}));
  CHECK(says(fault_of("{\"a\": \"b}\n"), {"closing quote"}));
  CHECK(says(fault_of("// a job\n{}"), {"no comments"}));
  CHECK(says(fault_of("{\n\"a\": {\n\"b\": 1}"), {"of line 1 is never closed"}));
  CHECK(says(fault_of("{\xE2\x80\x9C"
                      "a\": 1}"),
             {"typographic"}));
  CHECK(says(fault_of("{} {}"), {"second value"}));
  CHECK(says(fault_of("  "), {"empty"}));
}

TEST_CASE("what is JSON, and what is none, is as another reader of JSON has it") {
  mainbore::test::JsonTexts texts(5);
  std::size_t good = 0;
  std::size_t bad = 0;
  for (int round = 0; round < 20000; ++round) {
    std::string text = texts.value();
    if (round % 3 != 0) text = texts.broken(text);
    // Bytes that are not UTF-8 and the byte-order mark are looked at before.
    if (first_not_utf8(text)) continue;
    const bool is_json = JsonText(text, 32).is_json();
    if (is_json != nlohmann::json::accept(text)) FAIL(text);
    ++(is_json ? good : bad);
  }
  CHECK(good > 5000);
  CHECK(bad > 3000);
}
