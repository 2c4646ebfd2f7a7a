#include "io/orders/verdict_record.hpp"

#include <nlohmann/json.hpp>

#include "io/text/csv.hpp"
#include "io/text/csv_writer.hpp"
#include "mainbore/job_file.hpp"
#include "support/catch.hpp"
#include "support/painted.hpp"
#include "support/plan_under.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

struct Made {
  OrderRecord order;
  std::optional<Plan> plan;
};

Made made_of(const std::string& text) {
  Made made;
  made.order.row = 7;
  made.order.line = 9;
  JobFile read = read_job(text, "orders", Catalog::builtin(), {}, 9);
  made.order.id = read.id;
  made.order.diagnostics = std::move(read.diagnostics);
  if (read.job) made.plan = plan_under(*std::move(read.job), default_rules());
  return made;
}

std::optional<io::Decision> decision_of(const Made& made, io::RecordShape shape, UnitSystem units = UnitSystem::us) {
  return made.plan ? std::optional(io::decision_of(*made.plan, shape, units)) : std::nullopt;
}

nlohmann::json json_of(const Made& made, const io::RecordOptions& options = {}) {
  std::string out;
  const auto decision = decision_of(made, io::RecordShape::line, options.units);
  io::append_verdict_json(out, made.order, decision ? &*decision : nullptr, options);
  REQUIRE(out.back() == '\n');
  CHECK(std::count(out.begin(), out.end(), '\n') == 1);
  return nlohmann::json::parse(out);
}

std::vector<std::string> cells_of(const Made& made) {
  std::string out;
  const auto decision = decision_of(made, io::RecordShape::row);
  io::append_verdict_row(out, made.order, decision ? &*decision : nullptr, {});
  io::CsvReader reader(source_of(out));
  io::CsvRecord record;
  REQUIRE(reader.read(record));
  std::vector<std::string> cells;
  for (std::size_t i = 0; i < record.cells.size(); ++i) cells.emplace_back(record.cell(i));
  CHECK_FALSE(reader.read(record));
  return cells;
}

const std::string unreadable =
    R"({"id":"A,\"1\"","main":{"material":"ductile irn","size":"8","pressure":"82 psi"},"service":{"size":"1 in"}})";

}  // namespace

TEST_CASE("a record repeats what the plan decided, under the plan's names") {
  const Made made = made_of(good_order);
  REQUIRE(made.plan);
  const nlohmann::json record = json_of(made);
  CHECK(record["row"] == 7);
  CHECK(record["line"] == 9);
  CHECK(record["id"] == "AV-1");
  const auto document = nlohmann::json::parse(plan_to_json(*made.plan, UnitSystem::us, JsonStyle::compact));
  CHECK(record["verdict"] == document["verdict"]);
  CHECK(record["method"] == document["method"]["kind"]);
  CHECK(record["tap"] == document["method"]["tap"]);
  CHECK(record["limit"] == document["pressure"]["limit"]);
  CHECK(record["holds"].size() == document["holds"].size());
  CHECK(record["holds"][0] == document["holds"][0]["code"]);
  CHECK(record["stops"].empty());
}

TEST_CASE("units are chosen, rows can be left out, files be named") {
  const Made made = made_of(good_order);
  CHECK(json_of(made, {.units = UnitSystem::si})["limit"]["unit"] == "kPa");
  const auto bare = json_of(made, {.rows = false});
  CHECK_FALSE(bare.contains("row"));
  CHECK_FALSE(bare.contains("line"));
  CHECK(json_of(made, {.file = "may.ndjson"})["file"] == "may.ndjson");
  Made nameless = made_of(good_order);
  nameless.order.id.clear();
  nameless.order.remarks.push_back({"order.year", "orders", 9, 1, "/main/installed", "no year", "", "", 0, 0});
  CHECK(json_of(nameless, {.rows = false})["remarks"].size() == 1);
}

TEST_CASE("an order that cannot be read says all of why") {
  const auto record = json_of(made_of(unreadable));
  CHECK(record["verdict"] == "unreadable");
  CHECK(record["id"] == "A,\"1\"");
  REQUIRE(record["reasons"].size() == 2);
  CHECK(record["reasons"][0]["code"] == "job.unknown-value");
  CHECK(record["reasons"][0]["path"] == "/main/material");
  CHECK(record["reasons"][0]["line"] == 9);
  CHECK(record["reasons"][0]["column"].get<int>() > 1);
  CHECK_FALSE(json_of(made_of(unreadable), {.rows = false})["reasons"][0].contains("line"));
}

TEST_CASE("a row has a cell for each column of the header") {
  std::string header;
  io::append_verdict_header(header, {});
  CHECK(header.ends_with("\r\n"));
  const auto columns = static_cast<std::size_t>(std::count(header.begin(), header.end(), ',')) + 1;
  const auto read = cells_of(made_of(good_order));
  REQUIRE(read.size() == columns);
  CHECK(read[2] == "AV-1");
  const auto not_read = cells_of(made_of(unreadable));
  REQUIRE(not_read.size() == columns);
  CHECK(not_read[2] == "A,\"1\"");
  CHECK(not_read[3] == "unreadable");
}

TEST_CASE("a whole plan keeps its paths, with the place in front") {
  const Made made = made_of(good_order);
  std::string out;
  io::append_plan_record(out, made.order, &*made.plan, PlanScope::whole, {});
  auto record = nlohmann::json::parse(out);
  CHECK(record["row"] == 7);
  record.erase("row");
  record.erase("line");
  CHECK(record == nlohmann::json::parse(plan_to_json(*made.plan, UnitSystem::us, JsonStyle::compact)));
  out.clear();
  io::append_plan_record(out, made.order, &*made.plan, PlanScope::whole, {.rows = false});
  CHECK(out == plan_to_json(*made.plan, UnitSystem::us, JsonStyle::compact) + "\n");
}

TEST_CASE("decisions leave out words, never a caution") {
  const Made made = made_of(good_order);
  std::string out;
  io::append_plan_record(out, made.order, &*made.plan, PlanScope::decisions, {.rows = false});
  const auto some = nlohmann::json::parse(out);
  const auto all = nlohmann::json::parse(plan_to_json(*made.plan, UnitSystem::us, JsonStyle::compact));
  CHECK_FALSE(some.contains("procedure"));
  REQUIRE(some["cautions"].size() == all["cautions"].size());
  for (std::size_t i = 0; i < all["cautions"].size(); ++i)
    CHECK(some["cautions"][i]["code"] == all["cautions"][i]["code"]);
  REQUIRE(some["findings"].size() == all["findings"].size());
  // What is left is the same: laid over the whole, it changes nothing.
  auto merged = all;
  for (const auto& [key, value] : some.items()) {
    if (value.is_object()) merged[key].merge_patch(value);
  }
  for (const auto& key : {"main", "pressure", "setup", "location", "job", "sources"}) CHECK(merged[key] == all[key]);
}

TEST_CASE("a cell that a spreadsheet would run is kept from it, and reads back as it was") {
  for (const std::string text : {"=1+1", "+1-555", "-12", "@SUM(A1)", "=cmd|' /C calc'!A0", "'=1", "''-x", "'plain",
                                 "plain", "", "'", "a=b", "=a,b", "=\"x\"", "- x"}) {
    INFO(text);
    std::string out;
    io::CsvWriter row(out);
    row.text(text);
    row.text("next");
    row.line();
    const std::string_view cell = out.starts_with('"') ? std::string_view(out).substr(1) : std::string_view(out);
    CHECK(std::string_view("=+-@\t\r").find(cell.front()) == std::string_view::npos);
    io::CsvReader reader(source_of(out));
    io::CsvRecord record;
    REQUIRE(reader.read(record));
    CHECK(record.cell(0) == text);
    CHECK(record.cell(1) == "next");
  }
  const Made made = made_of(R"({"id":"=1+1","main":{"material":"PVC","size":"6 in","pressure":"60 psi"},)"
                            R"("service":{"size":"1 in"}})");
  CHECK(cells_of(made)[2] == "=1+1");
  std::string out;
  const auto decision = decision_of(made, io::RecordShape::row);
  io::append_verdict_row(out, made.order, &*decision, {});
  CHECK(out.find(",'=1+1,") != std::string::npos);
}

TEST_CASE("records are UTF-8 and move no cursor, whatever was in the order") {
  for (const std::string& paint : painting) {
    const std::string escaped = nlohmann::json(paint).dump();
    for (const std::string& order :
         {"{\"main\":{\"pressure\":" + escaped + "}}", "{" + escaped + ":1}", "{\"id\":" + escaped + "}",
          "{\"main\":{\"material\":" + escaped + ",\"class\":" + escaped + "}}"}) {
      Made made = made_of(order);
      made.order.id = paint;
      std::string out;
      io::append_verdict_json(out, made.order, nullptr, {});
      CHECK(nlohmann::json::parse(out)["id"] == paint);  // nothing of it is lost
      io::append_verdict_row(out, made.order, nullptr, {});
      CHECK(not_fit(out) == "");
    }
  }
}
