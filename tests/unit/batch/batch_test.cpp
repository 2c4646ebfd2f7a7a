// Streams of orders: one record for each, in order, whatever is wrong with them and however many threads plan them.
#include "batch/batch.hpp"

#include <nlohmann/json.hpp>

#include "batch/pipeline.hpp"
#include "bench/orders.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::batch;
using namespace mainbore::test;

namespace {

std::vector<nlohmann::json> read(std::string_view records) {
  std::vector<nlohmann::json> list;
  for (const std::string& line : lines_of(records)) list.push_back(nlohmann::json::parse(line));
  return list;
}

}  // namespace

TEST_CASE("records are the same with any number of threads") {
  std::string text = bench::orders(4000);
  text.insert(text.find('\n', text.size() / 2) + 1, "not an order\n");
  const std::string one = records_of(text, InputFormat::ndjson);
  CHECK(lines_of(one).size() == 4001);
  for (const int jobs : {2, 3, 8}) {
    BatchOptions options;
    options.jobs = jobs;
    CHECK(records_of(text, InputFormat::ndjson, options) == one);
  }
}

TEST_CASE("an order on which the program fails is one record that says so, and the others are planned") {
  // Rules that no file may give, to make the planner throw for a job with a trench.
  Rules broken = std::move(*load_rules(Catalog::builtin()).rules);
  broken.pit.type_c_most.value = broken.pit.type_a_least.value;
  std::string digging = good_order;
  digging.replace(digging.find("AV-1"), 4, "AV-2");
  digging.insert(digging.size() - 1, R"(,"excavation":{"soil":"B"})");
  const std::string text = good_order + '\n' + digging + '\n' + good_order + '\n';
  for (const BatchFormat format : {BatchFormat::verdicts, BatchFormat::plans}) {
    BatchOptions options;
    options.format = format;
    std::string out;
    const BatchResult result = plan_orders(source_of(text), InputFormat::ndjson, "orders", planner_under(broken),
                                           options, [&](Piece& piece) { out += piece.out; });
    CHECK(result.tally.all() == 3);
    CHECK(result.tally.unreadable == 1);
    CHECK(result.tally.internal == 1);
    const auto records = read(out);
    REQUIRE(records.size() == 3);
    CHECK(records[0]["verdict"] == "hold");
    CHECK(records[1]["id"] == "AV-2");
    CHECK(records[1]["verdict"] == "unreadable");
    CHECK(records[1]["reasons"][0]["code"] == "order.internal-error");
    CHECK(records[2]["verdict"] == "hold");
  }
}

TEST_CASE("what is thrown on the way ends the batch and comes out") {
  for (const int jobs : {1, 4}) {
    int taken = 0;
    const auto take = [&](Piece&) { return ++taken < 1000; };
    const auto nothing = [] { return Work([](Piece&) {}); };
    CHECK_THROWS_AS(run_in_order(jobs, take, nothing, [](Piece&) { throw std::runtime_error("full"); }),
                    std::runtime_error);
    CHECK(taken < 1000);
  }
}

TEST_CASE("a fault makes one record and spoils no other") {
  const std::vector<std::string> faults = {
      "{",
      good_order.substr(0, good_order.size() / 2),
      std::string("{\"id\":\"A\0B\"}", 12),
      "{\"id\":\"\xFF\xFE\"}",
      R"({"main":{"installed":1e999}})",
      "[1,2]",
      "\"text\"",
      R"({"id":"AV-9","id":"AV-9"})",
      std::string(5000, '['),
      "{\"note\":\"" + std::string(std::size_t{10} << 20, 'x') + "\"}",
  };
  std::string text;
  for (const std::string& fault : faults) text += good_order + '\n' + fault + '\n';
  text += good_order;  // the last line has no end
  const auto records = read(records_of(text, InputFormat::ndjson));
  REQUIRE(records.size() == 2 * faults.size() + 1);
  for (std::size_t i = 0; i < records.size(); ++i) {
    INFO(i);
    CHECK(records[i]["row"] == i + 1);
    CHECK(records[i]["line"] == i + 1);
    const bool fault = i % 2 == 1;
    CHECK((records[i]["verdict"] == "unreadable") == fault);
    if (fault) CHECK(records[i]["reasons"].size() >= 1);
  }
}

TEST_CASE("the same orders as lines, as an array and as a table have the same verdicts") {
  std::string ndjson;
  std::string array = "[";
  std::string csv = "id,main.material,main.size [mm],main.pressure [kPa],service.size\r\n";
  for (int i = 1; i <= 60; ++i) {
    const std::string id = "AV-" + std::to_string(i);
    const std::string material = i % 2 == 0 ? "PVC" : "ductile iron";
    const std::string psi = std::to_string(50 + i);
    const std::string order = R"({"id":")" + id + R"(","main":{"material":")" + material +
                              R"(","size":"8 in","pressure":")" + psi + R"( psi"},"service":{"size":"1 in"}})";
    ndjson += order + '\n';
    array += (i > 1 ? "," : "") + order;
    char kpa[32];
    std::snprintf(kpa, sizeof kpa, "%.3f", (50 + i) * 6.894757293168);
    csv += id + ',' + material + ",203.2," + kpa + ",1 in\r\n";
  }
  array += "]";
  BatchOptions options;
  options.rows = false;
  const std::string lines = records_of(ndjson, InputFormat::ndjson, options);
  CHECK(records_of(array, InputFormat::json, options) == lines);
  CHECK(records_of("\xEF\xBB\xBF" + csv, InputFormat::csv, options) == lines);
}

TEST_CASE("a table with a header that cannot be used has faults and no records") {
  std::string out;
  const BatchResult result = plan_orders(source_of("id,main.sise\nA,8 in\n"), InputFormat::csv, "orders.csv",
                                         planner_under(default_rules()), {}, [&](Piece& piece) { out += piece.out; });
  CHECK(result.faults.size() == 1);
  CHECK(result.tally.all() == 0);
  CHECK(out.empty());
}

TEST_CASE("a table's oddities make a record each") {
  const std::string csv =
      "id,main.material,main.size,main.pressure,service.size,note\n"
      "A,PVC,6 in,60 psi,1 in,\n"
      "B,PVC,6 in,60 psi,1 in,\"" +
      std::string(std::size_t{10} << 20, 'x') +
      "\"\n"
      "C,PVC,6 in,1e999 psi,1 in,\n"
      "D,PVC,6 in,60 psi\n"
      "E,PVC,6 in,60 psi,1 in,\"two\nlines\"\n"
      "F,PVC,6 in,60 psi,1 in,\"never closed";
  const auto records = read(records_of(csv, InputFormat::csv));
  REQUIRE(records.size() == 6);
  const std::vector<bool> readable = {true, false, false, false, true, false};
  for (std::size_t i = 0; i < records.size(); ++i) {
    INFO(records[i].dump().substr(0, 300));
    CHECK((records[i]["verdict"] != "unreadable") == readable[i]);
  }
  CHECK(records[4]["line"] == 6);
}
