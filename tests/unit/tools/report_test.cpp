#include <nlohmann/json.hpp>

#include "mainbore/tool_file.hpp"
#include "mainbore/tool_report.hpp"
#include "report/text_page.hpp"
#include "support/approx.hpp"
#include "support/plan_under.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

std::size_t widest(const std::string& text) {
  std::size_t most = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    most = std::max(most, report::columns(std::string_view(text).substr(begin, end - begin)));
    begin = end + 1;
  }
  return most;
}

PocketTable table_of(bool with_machine) {
  PocketOptions options;
  if (with_machine) options.machine = truck_machine();
  return pocket_table(planner_under(default_rules()), options);
}

Identification found_by(double circumference) {
  PipeReadings readings;
  readings.circumference = circumference * units::inch;
  return identify(readings, planner_under(default_rules()), load_field_tests(Catalog::builtin()));
}

struct Trials {
  std::vector<mechanics::TrialTap> taps = {{1.5 * units::inch, 4.0, 2.5, 3.0}, {1.6 * units::inch, {}, 2.0, 2.0}};
  TrialSheet sheet{
      taps, 14.0 * units::per_inch, {2.0, 2.0}, {}, mechanics::trial_taps(taps, 14.0 * units::per_inch, {2.0, 2.0})};
};

}  // namespace

TEST_CASE("the pocket table as text fits a hundred columns and explains each mark") {
  for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
    const std::string text = pocket_table_text(table_of(true), system);
    CHECK(widest(text) <= 100);
    CHECK(text.back() == '\n');
    CHECK(holds(text, "TC 50 to TC 56"));
    CHECK(holds(text, "main.wall-unmeasured"));
    CHECK(holds(text, "no permission"));
    CHECK(holds(text, "Check this value"));
  }
  CHECK_FALSE(holds(pocket_table_text(table_of(false), UnitSystem::us), "Chain for a direct tap"));
}

TEST_CASE("the pocket table as a page holds the same cells and nothing from elsewhere") {
  PocketOptions options;
  options.materials = {Material::pvc};
  options.main_to = NominalSize::inches(6);
  auto machine = truck_machine();
  machine->title = "<b>\"A&B\"</b>";
  options.machine = machine;
  const PocketTable table = pocket_table(planner_under(default_rules()), options);
  const std::string page = pocket_table_html(table, UnitSystem::us);
  CHECK(page.starts_with("<!DOCTYPE html>"));
  CHECK(holds(page, "&lt;b&gt;&quot;A&amp;B&quot;&lt;/b&gt;"));
  for (const char* foreign : {"<b>", "<script", "http", "src=", "url("}) CHECK_FALSE(holds(page, foreign));
  std::size_t rows = 0;
  for (std::size_t at = page.find("<tr><td>"); at != std::string::npos; at = page.find("<tr><td>", at + 1)) ++rows;
  CHECK(rows == pocket_lines(table).size());
  CHECK(holds(page, "@page{size:landscape"));
}

TEST_CASE("the pocket table as CSV and JSON has a row a cell, and they agree") {
  const PocketTable table = table_of(true);
  const std::string csv = pocket_table_to_csv(table, UnitSystem::us);
  const auto json = nlohmann::json::parse(pocket_table_to_json(table, UnitSystem::us, JsonStyle::pretty));
  CHECK(json.at("format") == 1);
  CHECK(json.at("cells").size() == table.cells.size());
  std::size_t lines = 0;
  for (std::size_t at = csv.find("\r\n"); at != std::string::npos; at = csv.find("\r\n", at + 2)) ++lines;
  CHECK(lines == table.cells.size() + 1);
  CHECK(csv.starts_with("material,series,size[nominal in],class,direct_go[nominal in],"));
  CHECK(holds(csv,
              "ductile iron,di-pressure-class,8,PC 350,1,,,,true,2,,,,false,2.14,1.54,false,0.238,9.05,32.611,0\r\n"));
  CHECK(holds(pocket_table_to_csv(table, UnitSystem::si), "wall_needed[mm]"));
  for (const auto& cell : json.at("cells")) {
    if (cell.at("series") != "di-pressure-class" || cell.at("size").at("value") != 8) continue;
    CHECK(cell.at("direct").at("go").at("value") == 1);
    CHECK(cell.at("saddle").at("go").at("value") == 2);
    CHECK(cell.at("chain_needed").at("unit") == "in");
  }
}

TEST_CASE("identify in words") {
  const std::string many = identify_text(found_by(21.6875), UnitSystem::us);
  CHECK(widest(many) <= 80);
  CHECK(holds(many, "Do not tap it until"));
  CHECK(many.find("Do not tap") < many.find("What fits"));
  CHECK(holds(many, "hold a magnet to it"));
  CHECK(holds(many, "neither in nor out"));
  const std::string none = identify_text(found_by(25.0), UnitSystem::si, 40);
  CHECK(widest(none) <= 40);
  CHECK(holds(none, "Nothing in the tables fits"));
  CHECK(holds(none, "635 mm"));

  const auto json =
      nlohmann::json::parse(identification_to_json(found_by(21.6875), UnitSystem::us, JsonStyle::compact));
  CHECK(json.at("fits").size() == 7);
  CHECK(json.at("water_proved") == false);
  CHECK(json.at("warnings").size() >= 3);
  for (const auto& step : json.at("next")) {
    for (const auto& answer : step.at("answers")) {
      for (const auto& place : answer.at("fits")) CHECK(place.get<std::size_t>() < json.at("fits").size());
    }
  }
  const auto empty = nlohmann::json::parse(identification_to_json(found_by(25.0), UnitSystem::us, JsonStyle::compact));
  CHECK(empty.at("fits").empty());
  CHECK(empty.at("nearest").size() == 2);
}

TEST_CASE("what-if in words") {
  Job job = sound_job();
  job.service.stop_rating.reset();
  job.main.pressure = 110 * units::psi;
  const auto facts = what_if(job, planner_under(default_rules()));
  const std::string text = what_if_text(facts, UnitSystem::us);
  CHECK(widest(text) <= 80);
  CHECK(holds(text, "Down to 101 psi"));
  CHECK(holds(text, "100 psi assumed"));
  CHECK(holds(text, "Down to 24 in; at 23 in hold"));
  const auto json = nlohmann::json::parse(what_if_to_json(facts, UnitSystem::us, JsonStyle::pretty));
  REQUIRE(json.at("what_if").size() == facts.size());
  const auto& pressure = json.at("what_if").at(0);
  CHECK(pressure.at("path") == "main.pressure");
  CHECK(pressure.at("down").at(0).at("effect") == "better");
  CHECK(pressure.at("down").at(0).at("changes_at").at("value") == 100);
  CHECK(pressure.at("down").at(0).at("then").at("verdict") == "go");
}

TEST_CASE("trial taps in words") {
  const Trials trials;
  const std::string text = trial_taps_text(trials.sheet, UnitSystem::us);
  CHECK(widest(text) <= 80);
  CHECK(holds(text, "another trial is needed"));
  CHECK(holds(text, "Only 2 of at least 3 trials agree"));
  const auto json = nlohmann::json::parse(trial_taps_to_json(trials.sheet, UnitSystem::si, JsonStyle::pretty));
  CHECK(json.at("settled") == false);
  CHECK(json.at("doubts").at(0) == "too-few");
  CHECK(json.at("trials").size() == 2);
  CHECK_FALSE(json.at("trials").at(1).contains("hand_turns"));
  // (1.5 + 1.5/14 + 1.6)/2 in = 1.6036 in
  CHECK(json.at("mark").at("value").get<double>() == Approx(40.7).margin(0.05));
}
