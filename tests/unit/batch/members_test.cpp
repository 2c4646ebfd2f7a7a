// Orders in JSON under a map file, and what records carry on of their orders.
#include <nlohmann/json.hpp>

#include "batch/batch.hpp"
#include "io/fast/json_skim.hpp"
#include "io/orders/order_map.hpp"
#include "io/text/json_text.hpp"
#include "support/catch.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::batch;
using namespace mainbore::test;
using nlohmann::json;

namespace {

io::OrderMap map_of(const std::string& members) {
  io::OrderMapFile read = io::read_order_map(
      R"({"format":1,"columns":{"WO":"id","pipe.mat":"main.material","pipe.dia":{"to":"main.size","unit":"in"},)"
      R"("PSI":{"to":"main.pressure","unit":"psi"},"SVC":{"to":"service.size","unit":"in"})" +
          members,
      "map.json", Catalog::builtin());
  REQUIRE(read.map);
  return *std::move(read.map);
}

std::vector<json> read(std::string_view text, const BatchOptions& options, InputFormat in = InputFormat::ndjson) {
  std::vector<json> records;
  for (const std::string& line : lines_of(records_of(text, in, options))) records.push_back(json::parse(line));
  return records;
}

BatchResult result_of(std::string_view text, const BatchOptions& options, InputFormat in = InputFormat::ndjson) {
  return plan_orders(source_of(text), in, "orders", planner_under(default_rules()), options, [](Piece&) {});
}

constexpr std::string_view exported = R"({"WO":3001,"pipe":{"mat":"DI","dia":8},"PSI":82.0,"SVC":1,"zone":"K\u00e9"})";

}  // namespace

TEST_CASE("a map file reads the members of orders in JSON") {
  const io::OrderMap map = map_of("}}");
  BatchOptions options;
  options.map = &map;
  const auto plain = read(good_order, {});
  for (const InputFormat in : {InputFormat::ndjson, InputFormat::json}) {
    auto mapped = read(exported, options, in);
    REQUIRE(mapped.size() == 1);
    CHECK(mapped[0]["id"] == "3001");
    mapped[0]["id"] = "AV-1";
    CHECK(mapped[0] == plain[0]);
  }
  // Quantities as objects and as texts, members in any order, a missing mark for a fact.
  for (const std::string_view same :
       {R"({"SVC":"1 in","PSI":{"value":82,"unit":"psi"},"pipe":{"dia":"8\"","mat":"ductile iron"},"wo":"AV-1"})",
        R"({"pipe.mat":"D.I.","pipe_dia":"8 in","PSI":"82","SVC":1,"WO":"AV-1","other":[1,{"a":null}]})"}) {
    INFO(same);
    CHECK(read(same, options)[0] == plain[0]);
  }
}

TEST_CASE("an order under a map that cannot be read says what and where") {
  const io::OrderMap map = map_of("}}");
  BatchOptions options;
  options.map = &map;
  const auto reason = [&](std::string_view text) {
    const json record = read(text, options)[0];
    REQUIRE(record["verdict"] == "unreadable");
    return record["reasons"][0];
  };
  CHECK(reason(R"({"WO":1,"pipe":{"mat":"DI","dia":null},"PSI":82,"SVC":1})")["message"] ==
        "main.size is missing: pipe.dia is empty");
  CHECK(reason(R"({"WO":1,"pipe":{"mat":"DI"},"PSI":82,"SVC":1})")["message"] ==
        "main.size is missing: no member says it");
  const json number = reason(R"({"WO":1,"pipe":{"mat":"DI","dia":"eight"},"PSI":82,"SVC":1})");
  CHECK(number["path"] == "/main/size");
  CHECK(number["column"] == 35);
  CHECK(reason(R"({"WO":1,"WO":2,"pipe":{"mat":"DI","dia":8},"PSI":82,"SVC":1})")["code"] == "job.duplicate-key");
  CHECK(reason(R"({"WO":1,"wo":2,"pipe":{"mat":"DI","dia":8},"PSI":82,"SVC":1})")["code"] == "job.duplicate-key");
  CHECK(reason(R"({"WO":1)")["code"] == "json.syntax");
  CHECK(reason("[1]")["code"] == "job.wrong-type");
}

TEST_CASE("members that nobody named are an error unless the map or --keep says otherwise") {
  const io::OrderMap strict = map_of(R"(},"ignore_others":false})");
  const io::OrderMap lenient = map_of("}}");
  BatchOptions options;
  options.map = &strict;
  const json refused = read(exported, options)[0];
  CHECK(refused["verdict"] == "unreadable");
  CHECK(refused["reasons"][0]["code"] == "job.unknown-key");
  CHECK(refused["reasons"][0]["column"] == 59);
  io::KeepColumns keep;
  keep.names = {"Zone"};
  options.keep = &keep;
  CHECK(read(exported, options)[0]["verdict"] == "hold");
  options.keep = nullptr;
  options.map = &lenient;
  CHECK(read(exported, options)[0]["verdict"] == "hold");
  // The path of a fact is read beside the map, with the rest of a job.
  options.map = &strict;
  const json whole = read(R"({"WO":1,"pipe":{"mat":"DI","dia":8},"PSI":82,"SVC":1,"nearby":[],)"
                          R"("main":{"condition":"poor"},"crew":"North"})",
                          options)[0];
  CHECK(whole["verdict"] == "no-go");
  const auto second = read(
      R"({"WO":1,"pipe":{"mat":"DI","dia":8},"PSI":82,"SVC":1,"main.wall [in]":0.3,"main.wall":"0.3 in"})", options)[0];
  CHECK(second["reasons"][0]["code"] == "job.contradiction");
}

TEST_CASE("a number is an id, with a map and without") {
  std::string order = good_order;
  order.replace(order.find("\"AV-1\""), 6, "3001");
  CHECK(read(order, {})[0]["id"] == "3001");
  CHECK(read("[" + order + "]", {}, InputFormat::json)[0]["id"] == "3001");
  // Also where the slow reader reads it.
  CHECK(read("{\"id\":7,\"main\":{}}", {})[0]["id"] == "7");
}

TEST_CASE("records carry columns on") {
  io::KeepColumns keep;
  keep.names = {"zone", "n"};
  BatchOptions options;
  options.keep = &keep;
  std::string order = good_order;
  order.insert(1, R"("zone":"K\u00e9","n":[1, 2],)");
  const json record = read(order, options)[0];
  CHECK(record["verdict"] == "hold");
  CHECK(record["kept"] == json::parse(R"({"zone":"Ké","n":[1,2]})"));
  std::string last = good_order;
  last.insert(last.size() - 1, R"(, "n" : {"a":"}"} , "zone" : 1)");
  CHECK(read(last, options)[0]["kept"] == json::parse(R"({"zone":1,"n":{"a":"}"}})"));
  CHECK(read(good_order, options)[0].contains("kept") == false);
  // An order that cannot be read carries them too; a text that is no JSON has none.
  CHECK(read(R"({"zone":1,"main":{}})", options)[0]["kept"]["zone"] == 1);
  CHECK_FALSE(read(R"({"zone":1,"main":{)", options)[0].contains("kept"));

  keep = {};
  keep.all = true;
  CHECK(read(order, options)[0]["kept"]["zone"] == "Ké");
  CHECK(read(order, options)[0]["kept"]["service"]["size"] == "1 in");
  // A slip of the pen is still told.
  std::string slip = good_order;
  slip.insert(1, R"("crews":"North",)");
  CHECK(read(slip, options)[0]["reasons"][0]["code"] == "job.unknown-key");
  keep.names = {"crews"};
  CHECK(read(slip, options)[0]["verdict"] == "hold");

  options.format = BatchFormat::plans;
  CHECK(read(order, options)[0]["kept"]["zone"] == "Ké");
  CHECK(read(order, options)[0]["format"] == 1);
}

TEST_CASE("a table carries its columns on") {
  const std::string table =
      "id,main.material,main.size,main.pressure,service.size,ZONE\nA,DI,8 in,82 psi,1 in,\"a, \"\"b\"\"\"\nB,XX\n";
  io::KeepColumns keep;
  BatchOptions options;
  CHECK(result_of(table, options, InputFormat::csv).faults.size() == 1);
  keep.names = {"zone"};
  options.keep = &keep;
  const auto records = read(table, options, InputFormat::csv);
  REQUIRE(records.size() == 2);
  CHECK(records[0]["kept"] == json::parse(R"({"ZONE":"a, \"b\""})"));
  CHECK_FALSE(records[1].contains("kept"));
  keep.all = true;
  keep.names.clear();
  CHECK(read(table, options, InputFormat::csv)[0]["kept"]["main.size"] == "8 in");
  options.format = BatchFormat::table;
  const auto rows = lines_of(records_of(table, InputFormat::csv, options));
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].ends_with(",A,DI,8 in,82 psi,1 in,\"a, \"\"b\"\"\"\r"));
  CHECK(rows[1].ends_with(",,,,,,\r"));
  keep = {};
  keep.names = {"ZNE"};
  const auto faults = result_of(table, options, InputFormat::csv).faults;
  REQUIRE(faults.size() == 2);
  CHECK(faults[1].help == "did you mean \"ZONE\"?");
}

TEST_CASE("what is named and no order has is told at the end") {
  const io::OrderMap map = map_of(R"(,"COND":"main.condition","AGE":{"to":"main.installed","optional":true}}})");
  io::KeepColumns keep;
  keep.names = {"zone", "road"};
  BatchOptions options;
  options.map = &map;
  options.keep = &keep;
  const auto faults = result_of(exported, options).faults;
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].message == "the map file names \"COND\", which no order of the file has");
  CHECK(faults[1].message == "--keep names \"road\", which no order of the file has");
  CHECK(result_of("", options).faults.empty());
  CHECK(result_of("{", options).faults.empty());
}

TEST_CASE("records of mapped orders are the same with any number of threads and in any pieces") {
  const io::OrderMap map = map_of(R"(},"ignore_others":false})");
  io::KeepColumns keep;
  keep.all = true;
  std::string text;
  const std::vector<std::string> extra = {"", R"(,"zone":[1])", R"(,"main.wall":"0.3 in","main":{"condition":"sound"})",
                                          R"(,"main.wall [in]":"x","main.installed":1650)", R"(,"presure":1})"};
  for (int i = 0; i < 3000; ++i) {
    text += R"({"WO":)" + std::to_string(i) + R"(,"pipe":{"mat":"DI","dia":)" + (i % 7 == 0 ? "null" : "8") +
            R"(},"PSI":82,"SVC":1)" + extra[static_cast<std::size_t>(i) % extra.size()] + "}\n";
  }
  BatchOptions options;
  options.map = &map;
  options.keep = &keep;
  const std::string one = records_of(text, InputFormat::ndjson, options);
  CHECK(lines_of(one).size() == 3000);
  options.jobs = 4;
  CHECK(records_of(text, InputFormat::ndjson, options) == one);
}

TEST_CASE("the quick reader of JSON takes what the careful one takes") {
  const std::vector<std::string> texts = {
      R"({"a":[1,-0.5e+3,true,false,null,"x\n\"\\\/\b\f\r\t\u00e9\ud83d\ude00"],"b":{}})",
      " [ ] ",
      "{}",
      "0",
      "-0",
      "\"\"",
      R"(["é","日本"])"};
  std::uint32_t seed = 1;
  const auto random = [&](std::size_t below) {
    seed = seed * 1664525u + 1013904223u;
    return static_cast<std::size_t>(seed >> 8) % below;
  };
  constexpr std::string_view bytes = "{}[]\",:0123456789-+.eE\\untrfals \n\t\x01\x7F\xC3\xA9\xED\xA0\x80/";
  int taken = 0;
  for (int i = 0; i < 40000; ++i) {
    std::string text = texts[random(texts.size())];
    for (std::size_t changes = random(4); changes > 0; --changes) {
      const char c = bytes[random(bytes.size())];
      const std::size_t at = random(text.size() + 1);
      if (random(2) == 0 || at == text.size()) text.insert(at, 1, c);
      else if (random(2) == 0) text[at] = c;
      else text.erase(at, 1);
    }
    io::JsonSkim skim;
    const bool quick = skim.read(text);
    const io::JsonText careful(text, io::JsonSkim::deepest);
    const bool utf8 = !io::first_not_utf8(text);
    INFO(text);
    REQUIRE(quick == (careful.is_json() && utf8));
    if (!quick) continue;
    ++taken;
    REQUIRE(quick == json::accept(text));
    for (std::uint32_t node = 0; node < careful.nodes().size(); ++node) {
      REQUIRE(skim.node(node).type == careful.node(node).type);
      REQUIRE(skim.node(node).next == careful.node(node).next);
      REQUIRE(skim.node(node).span.begin == careful.node(node).span.begin);
      REQUIRE(skim.node(node).span.end == careful.node(node).span.end);
      if (careful.node(node).type != io::JsonType::string) continue;
      std::string plain;
      const io::Span span = skim.node(node).span;
      io::append_unescaped(plain, std::string_view(text).substr(span.begin + 1, span.end - span.begin - 2));
      REQUIRE(plain == careful.node(node).text);
    }
  }
  CHECK(taken > 4000);
}

TEST_CASE("a list longer than a job may have makes its order unreadable, and no thing near a tap is dropped") {
  const auto order = [](int things) {
    std::string text =
        R"({"type":"Feature","geometry":null,"properties":{"id":"AV-1","main.material":"DI","main.size":"8 in",)"
        R"("main.pressure":"82 psi","service.size":"1 in","nearby":[)";
    for (int i = 0; i < things; ++i) text += std::string(i == 0 ? "" : ",") + R"({"what":"tap","along":"90 ft"})";
    return text + "]}}";
  };
  const auto most = read(order(1000), {}, InputFormat::geojson);
  CHECK(most.at(0)["verdict"] != "unreadable");
  const auto more = read(order(1001), {}, InputFormat::geojson);
  REQUIRE(more.at(0)["verdict"] == "unreadable");
  CHECK(more.at(0)["reasons"][0]["code"] == "json.too-large");
}
