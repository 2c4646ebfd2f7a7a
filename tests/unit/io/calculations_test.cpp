#include <algorithm>
#include <cctype>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <string>

#include "mainbore/calculation.hpp"
#include "mainbore/calculation_sheet.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/random_jobs.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;

namespace {

Plan example_plan(const std::string& example, PlanDepth depth = PlanDepth::whole) {
  static const Planner planner(*load_rules(Catalog::builtin()).rules);
  std::ifstream file(std::string(MAINBORE_SOURCE_DIR) + "/examples/jobs/" + example + ".json");
  std::stringstream text;
  text << file.rdbuf();
  JobFile read = read_job(text.str(), example, Catalog::builtin());
  REQUIRE(read.job);
  return planner.plan(*std::move(read.job), depth);
}

// The names in a formula that are neither a function nor behind a figure.
std::set<std::string> names_in(std::string_view formula) {
  std::set<std::string> names;
  for (std::size_t i = 0; i < formula.size();) {
    if (std::isalpha(static_cast<unsigned char>(formula[i])) == 0) {
      ++i;
      continue;
    }
    std::size_t end = i;
    while (end < formula.size() && (std::isalnum(static_cast<unsigned char>(formula[end])) != 0 || formula[end] == '_'))
      ++end;
    names.emplace(formula.substr(i, end - i));
    i = end;
  }
  return names;
}

}  // namespace

TEST_CASE("each symbol of a formula stands in it, and ids are told apart") {
  std::set<std::string_view> ids;
  for (const FormulaText& text : formula_texts) {
    INFO(text.id);
    CHECK(ids.insert(text.id).second);
    const std::set<std::string> names = names_in(text.text);
    for (const FormulaSymbol& symbol : text.symbols) {
      if (!symbol.name.empty()) CHECK(names.contains(std::string(symbol.name)));
    }
    CHECK(std::ifstream(std::string(MAINBORE_SOURCE_DIR) + "/include/mainbore/" + std::string(text.header)).good());
  }
}

TEST_CASE("a calculation has a figure for each symbol of its formula") {
  for (const char* example : {"ductile_iron_direct", "pvc_saddle", "old_cast_iron", "high_pressure"}) {
    const Plan plan = example_plan(example);
    CHECK_FALSE(plan.calculations.empty());
    for (const Calculation& made : plan.calculations) {
      INFO(example << " " << text_of(made.formula).id);
      CHECK(made.inputs.size() == inputs_of(made.formula));
    }
  }
}

TEST_CASE("of a verdict alone no calculation is written down") {
  CHECK(example_plan("ductile_iron_direct", PlanDepth::verdict).calculations.empty());
}

TEST_CASE("what is worked out and held against a limit stands among the calculations, in random jobs") {
  using enum FindingCode;
  // Of these the value is a fact of the job, a reading or a size, which nobody works out.
  const std::set<FindingCode> facts = {
      clean_stock_too_weak,  machine_no_saddle, main_freezing,  main_od_contradicts, main_readings_disagree,
      main_wall_impossible,  main_wall_thin,    pit_sewer_near, pit_spoil_too_near,  main_temperature_outside,
      place_clock,           place_moved,       place_stagger,  place_cover,         pressure_low_over_line,
      machine_figures_wrong, makeup_trial_off};
  static const Planner planner(*load_rules(Catalog::builtin()).rules);
  test::WholeJobs random(31);
  std::set<std::string_view> without;
  const int jobs = test::random_jobs(150);
  for (int i = 0; i < jobs; ++i) {
    const Plan plan = planner.plan(random.next());
    for (const Finding& finding : plan.findings) {
      if (finding.severity < Severity::hold || !finding.value || !finding.limit || facts.contains(finding.code))
        continue;
      const auto same = [](const Measure& a, const Measure& b) { return std::abs(a.base() - b.base()) < 1e-6; };
      // Where what is there is held against what is needed, the need is what was worked out.
      const bool worked_out =
          std::any_of(plan.calculations.begin(), plan.calculations.end(), [&](const Calculation& made) {
            if (!made.limit) return false;
            const Measure& limit = made.limit->value;
            return (same(made.result, *finding.value) && same(limit, *finding.limit)) ||
                   (same(made.result, *finding.limit) && same(limit, *finding.value));
          });
      if (!worked_out) without.insert(name_of(finding.code));
    }
  }
  for (const std::string_view code : without) UNSCOPED_INFO(code);
  CHECK(without.empty());
}

TEST_CASE("sheets and JSON have every calculation of the plan") {
  const Plan plan = example_plan("ductile_iron_direct");
  const std::string text = calculation_sheet_text(plan, UnitSystem::us);
  const std::string html = calculation_sheet_html(plan, UnitSystem::us);
  const auto json = nlohmann::json::parse(plan_to_json(plan, UnitSystem::us, JsonStyle::compact))["calculations"];
  REQUIRE(json.size() == plan.calculations.size());
  CHECK(html.find("<script") == std::string::npos);
  CHECK(html.find("script-src") == std::string::npos);
  for (std::size_t i = 0; i < json.size(); ++i) {
    const FormulaText& formula = text_of(plan.calculations[i].formula);
    CHECK(json[i]["id"] == formula.id);
    CHECK(text.find("[" + std::string(formula.id) + "]") != std::string::npos);
    CHECK(html.find(formula.title) != std::string::npos);
  }
}

TEST_CASE("utilization is over one exactly where the limit is not met") {
  Calculation made;
  made.result = Measure(100.0 * units::psi);
  made.limit = {Measure(80.0 * units::psi), false, {}, From::rule, {}};
  CHECK(*made.utilization() == 1.25);
  made.limit->is_least = true;
  CHECK(*made.utilization() == 0.8);
  made.result = Measure(Pressure());
  CHECK_FALSE(made.utilization());
}
