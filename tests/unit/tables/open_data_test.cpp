// Real exports of utilities, which are not part of the project: read where they are at hand.
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <map>

#include "mainbore/plan.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/tables/tables.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

// MAINBORE_OPEN_DATA names the folder that holds them.
std::optional<std::string> open_data(const std::string& file) {
  const char* const folder = std::getenv("MAINBORE_OPEN_DATA");
  if (folder != nullptr && std::filesystem::exists(std::filesystem::path(folder) / file)) {
    return file_text((std::filesystem::path(folder) / file).string());
  }
  std::cout << "[skipped] " << file << " is not at hand\n";
  return std::nullopt;
}

struct Outcome {
  std::size_t rows = 0;
  std::size_t readable = 0;
  std::size_t with_remarks = 0;
  std::map<std::string, std::size_t> reasons;  // pointer of each diagnostic
  std::map<std::string, std::size_t> remarks;
  std::map<std::pair<std::string, Material>, std::size_t> materials;  // cell as written -> what it was taken for
  std::vector<OrderRecord> orders;
};

// The materials are collected with the columns, in order, from which the map takes them.
Outcome read_all(const std::string& text, const std::string& map_file, std::vector<std::string> material_columns) {
  const io::OrderMap map = map_of(project_file("tests/maps/" + map_file));
  const ReadTable read = read_table(text, &map);
  REQUIRE(read.faults.empty());
  Outcome out;
  const auto records = records_of(text);
  REQUIRE(records.size() == read.orders.size() + 1);
  const auto header = cells_of(records[0]);
  for (std::size_t i = 0; i < read.orders.size(); ++i) {
    const OrderRecord& order = read.orders[i];
    CHECK(order.row == i + 1);
    if (order.job.has_value() != order.diagnostics.empty()) FAIL("a record is neither read nor refused");
    ++out.rows;
    out.readable += order.job ? 1u : 0u;
    out.with_remarks += order.job && !order.remarks.empty() ? 1u : 0u;
    for (const Diagnostic& told : order.diagnostics) ++out.reasons[told.pointer];
    for (const Diagnostic& told : order.remarks) ++out.remarks[told.pointer];
    if (!order.job) continue;
    std::string written;
    for (const std::string& column : material_columns) {
      const auto at = static_cast<std::size_t>(std::find(header.begin(), header.end(), column) - header.begin());
      written += (written.empty() ? "" : "|") + std::string(records[i + 1].cell(at));
    }
    ++out.materials[{written, *order.job->main.material}];
  }
  out.orders = read.orders;
  return out;
}

}  // namespace

TEST_CASE("city mains in mm") {
  const auto text = open_data("ca_kitchener_water_mains_raw.csv");
  if (!text) return;
  const Outcome out = read_all(*text, "city_mains_mm.json", {"MATERIAL"});
  CHECK(out.rows == 16062);
  CHECK(out.readable == 16028);
  CHECK(out.with_remarks == 0);
  CHECK(out.reasons == std::map<std::string, std::size_t>{{"/main/material", 31}, {"/main/size", 3}});
  // Counts of codes and sizes taken from the file by other means.
  std::map<Material, std::size_t> by_material;
  for (const auto& [key, rows] : out.materials) by_material[key.second] += rows;
  CHECK(out.materials.size() == 9);
  CHECK(out.materials.at({"DI", Material::ductile_iron}) <= 5100);
  CHECK(out.materials.at({"PVCO", Material::pvco}) == 611);
  CHECK(out.materials.at({"CPP", Material::concrete_cylinder}) == 220);
  CHECK(out.materials.at({"ST", Material::steel}) == 5);
  CHECK(by_material[Material::copper] == 11);
  std::map<double, std::size_t> sizes;
  for (const OrderRecord& order : out.orders) {
    if (!order.job) continue;
    ++sizes[order.job->main.size->number()];
    if (order.job->main.installed) CHECK((*order.job->main.installed >= 1889 && *order.job->main.installed <= 2024));
  }
  CHECK(sizes.size() == 16);
  CHECK(sizes[18] == 687);  // 450 mm, less 15 rows without a known material
  CHECK(sizes[1.5] == 6);   // 38 mm
  CHECK(sizes[24] == 311);
}

TEST_CASE("trunk mains with wall thickness") {
  const auto text = open_data("us_la_trunk_mains_raw.csv");
  if (!text) return;
  const Outcome out = read_all(*text, "trunk_mains.json", {"PIPE_MATER", "PIPE_TYPE"});
  CHECK(out.rows == 13561);
  CHECK(out.readable == 13313);
  CHECK(out.with_remarks == 106);
  CHECK(out.reasons == std::map<std::string, std::size_t>{{"/main/material", 248}, {"/main/size", 2}});
  CHECK(out.remarks == std::map<std::string, std::size_t>{{"/main/wall", 102}, {"/main/installed", 4}});
  for (const auto& [key, rows] : out.materials) {
    const std::string first = key.first.substr(0, key.first.find('|'));
    INFO(key.first << " -> " << name_of(key.second) << ", " << rows << " rows");
    if (first == "STL") CHECK(key.second == Material::steel);
    if (first == "CI") CHECK(key.second == Material::cast_iron);
    if (first == "DI") CHECK(key.second == Material::ductile_iron);
    if (first == "HDPE") CHECK(key.second == Material::polyethylene);
    if (first == "CONC") CHECK(key.second == Material::concrete_cylinder);
    if (first == "CONC") CHECK(key.first != "CONC|CONC");
  }
  // No plastic pipe keeps a dimension ratio for a wall.
  for (const OrderRecord& order : out.orders) {
    if (order.job && order.job->main.material == Material::polyethylene) CHECK_FALSE(order.job->main.wall);
    if (order.job && order.job->main.wall) {
      CHECK(*order.job->main.wall < order.job->main.size->number() / 2.0 * units::inch);
    }
  }
}

TEST_CASE("leak work orders") {
  const auto text = open_data("us_la_leak_workorders.csv");
  if (!text) return;
  const Outcome out = read_all(*text, "leak_work_orders.json", {"PIPE_TYPE"});
  CHECK(out.rows == 5238);
  CHECK(out.readable == 4969);
  CHECK(out.reasons == std::map<std::string, std::size_t>{{"/main/material", 198}, {"/main/size", 101}});
  CHECK(out.remarks == std::map<std::string, std::size_t>{{"/main/installed", 2}});
  std::size_t several_lines = 0;
  for (const OrderRecord& order : out.orders) {
    if (order.job && order.job->note.find('\n') != std::string::npos) ++several_lines;
    CHECK_FALSE(order.id.empty());
  }
  CHECK(several_lines > 0);
  for (const auto& [key, rows] : out.materials) {
    INFO(key.first << ", " << rows << " rows");
    if (key.first == "C.I.") CHECK(key.second == Material::cast_iron);
    if (key.first == "A.C.") CHECK(key.second == Material::asbestos_cement);
    CHECK(key.first != "OLD CORP.");
    CHECK(key.first != "2");
  }
}

TEST_CASE("pipes of hydraulic models") {
  const auto text = open_data("epanet_pipes_dev.csv");
  if (!text) return;
  const Outcome out = read_all(*text, "network_pipes.json", {"material_guess"});
  CHECK(out.rows == 2187);
  CHECK(out.readable == 2056);
  CHECK(out.reasons ==
        std::map<std::string, std::size_t>{{"/main/material", 120}, {"/main/pressure", 8}, {"/main/size", 3}});
  CHECK(out.orders[0].id == "Net1-10");
  REQUIRE(out.orders[0].job);
  CHECK(out.orders[0].job->main.pressure->base() == Catch::Approx(125.4));
  CHECK(out.materials.size() == 2);
}

TEST_CASE("services of a town joined to their mains") {
  const auto text = open_data("micropolis_tap_jobs_200.csv");
  if (!text) return;
  const Outcome out = read_all(*text, "town_services.json", {"main_material"});
  CHECK(out.rows == 200);
  CHECK(out.readable == 200);
  CHECK(out.with_remarks == 0);
  std::size_t taps = 0;
  for (const OrderRecord& order : out.orders) taps += order.job->service.size == NominalSize::inches(0.75) ? 1u : 0u;
  CHECK(taps == 185);

  // Each gets a plan, and none is a go: nobody has looked at the pipe, and no machine is named.
  const Rules rules = *load_rules(Catalog::builtin()).rules;
  for (const OrderRecord& order : out.orders) {
    const Plan planned = plan_under(*order.job, rules);
    INFO(order.id);
    CHECK(planned.verdict != Verdict::go);
    CHECK(!planned.findings.empty());
    // A service as big as its main is no tap.
    if (*order.job->service.size >= *order.job->main.size) CHECK(planned.verdict == Verdict::no_go);
  }
}
