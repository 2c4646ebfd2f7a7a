// What only a utility's standard asks: mains left alone, seasons, cover, the smallest tap, words on fittings; and whose
// rule decided.
#include <array>
#include <random>
#include <string>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_compare.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {}  // namespace

TEST_CASE("a main that the utility leaves alone is a no-go, and the next size below is not") {
  const Rules rules = rules_of(R"({"name": "Fern Hollow Water",
    "main": {"not_tapped": [{"main_above": "8 in", "why": "Trunk mains"}]}})");
  Job job = sound_job();
  CHECK_FALSE(has(plan_under(job, rules), FindingCode::main_not_tapped));
  job.main.size = NominalSize::inches(10);
  const Plan made = plan_under(job, rules);
  CHECK(made.verdict == Verdict::no_go);
  CHECK(made.method.kind == Method::none);
  const Finding* finding = find(made, FindingCode::main_not_tapped);
  REQUIRE(finding != nullptr);
  CHECK(decided_in_words(*finding) == "By the utility's rule: Fern Hollow Water.");
}

TEST_CASE("a rule for one class holds a main whose class nobody knows, and stops it once it is read") {
  const Rules rules = rules_of(R"({"main": {"not_tapped": [{"class": "PC 350", "why": "Old stock"}]}})");
  Job job = sound_job();
  CHECK(plan_under(job, rules).verdict == Verdict::no_go);
  job.main.class_name.clear();
  const Plan unknown = plan_under(job, rules);
  CHECK(has(unknown, FindingCode::main_perhaps_not_tapped));
  CHECK(unknown.verdict == Verdict::hold);
}

TEST_CASE("a closed season is for the mains it names") {
  const Rules rules = rules_of(R"({"main": {"closed_season": [
    {"material": "cast iron", "from": "11-15", "to": "03-15"},
    {"material": "ductile iron", "main_above": "8 in", "from": "06-01", "to": "06-30"}]}})");
  Job job = sound_job();
  CHECK_FALSE(has(plan_under(job, rules), FindingCode::season_date_unknown));  // 8 in: neither row
  job.main.size = NominalSize::inches(10);
  CHECK(has(plan_under(job, rules), FindingCode::season_date_unknown));
  job.date = "2026-06-30";
  CHECK(has(plan_under(job, rules), FindingCode::season_closed));
  job.date = "2026-07-01";
  CHECK_FALSE(has(plan_under(job, rules), FindingCode::season_closed));
  job.date = "2026-07-01T08:00";
  CHECK_FALSE(has(plan_under(job, rules), FindingCode::season_date_unknown));
  for (const char* const unread : {"07-01", "2026-7-1", "2026-13-01", "2026-06-31", "2026-07-011", "1 July 2026"}) {
    job.date = unread;
    CHECK(has(plan_under(job, rules), FindingCode::season_date_unknown));
  }
}

TEST_CASE("a greatest cover holds what lies deeper") {
  const Rules rules = rules_of(R"({"place": {"least_cover": "3 ft", "greatest_cover": "8 ft"}})");
  Job job = sound_job();
  for (const auto& [feet, outside] : {std::pair(2.99, true), {3.0, false}, {8.0, false}, {8.01, true}}) {
    job.main.cover = feet * units::foot;
    CHECK(has(plan_under(job, rules), FindingCode::place_cover) == outside);
  }
}

TEST_CASE("a tap smaller than the utility makes is held, and no series is made of such") {
  const Rules rules = rules_of(R"({"water": {"smallest_tap": "1 in"},
    "direct": {"largest": [{"material": "ductile iron", "main_from": "6 in", "largest": "1 in"}]},
    "saddle": {"largest": []}, "sleeve": {"largest": []}})");
  Job job = sound_job();
  job.service.size = NominalSize::inches(0.75);
  CHECK(has(plan_under(job, rules), FindingCode::service_tap_small));
  job.service.size = NominalSize::inches(1);
  CHECK(plan_under(job, rules).verdict == Verdict::go);
  job.service.size = NominalSize::inches(1.5);
  const Plan several = plan_under(job, rules);
  CHECK(several.method.count > 1);
  CHECK(several.method.tap == NominalSize::inches(1));
}

TEST_CASE("a rule looser than a safety default is told with its reason wherever it bears on the plan") {
  const Rules rules = rules_of(R"({"name": "Fern Hollow Water",
    "pressure": {"stop_rating": {"value": "150 psi", "reference": "Standard 3", "reason": "no other is stocked"}},
    "pit": {"egress_depth": {"value": "5 ft", "reason": "short pits"}},
    "direct": {"largest_first": [{"material": "ductile iron", "main_from": "4 in", "main_to": "4 in", "largest": "1 in",
                                  "reason": "tried for forty years"}]}})");
  Job unread = sound_job();
  unread.service.stop_rating.reset();
  const Plan made = plan_under(unread, rules);
  const Finding* finding = find(made, FindingCode::rules_looser);
  REQUIRE(finding != nullptr);
  CHECK(detail_of(*finding, UnitSystem::us) ==
        "The utility sets pressure.stop_rating to 150 psi; the default is 100 psi. Its reason: no other is stocked.");
  CHECK(made.verdict == Verdict::go);  // it tells, and changes no verdict
  const auto told = [](const Plan& plan) {
    return std::count_if(plan.findings.begin(), plan.findings.end(),
                         [](const Finding& f) { return f.code == FindingCode::rules_looser; });
  };
  CHECK(told(made) == 1);                            // the pit was not asked for, and the row is for another main
  CHECK(told(plan_under(sound_job(), rules)) == 0);  // the mark on the stop was read
  Job pit = sound_job();
  pit.main.cover = 4.0 * units::foot;
  pit.excavation.located = true;
  CHECK(told(plan_under(pit, rules)) == 1);
  Job small = sound_job();
  small.main.size = NominalSize::inches(4);
  small.service.size = NominalSize::inches(0.75);
  CHECK(told(plan_under(small, rules)) == 0);  // no more than by default
  small.service.size = NominalSize::inches(1);
  small.main.wall = 0.5 * units::inch;
  const Plan larger = plan_under(small, rules);
  if (larger.method.kind == Method::direct) CHECK(told(larger) == 1);
  const std::string text = text_report(made, {});
  CHECK(text.find("no other is stocked") != std::string::npos);
}

TEST_CASE("each finding says whose rule decided, once a utility has rules of its own") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(1.25);
  const Rules rules = rules_of(R"({"name": "Fern Hollow Water", "direct": {"largest_first": [
    {"material": "ductile iron", "largest": "3/4 in", "reference": "Standard 4.1"}]}})");
  const Plan own = plan_under(job, rules);
  REQUIRE(rejection(own, Method::direct) != nullptr);
  CHECK(decided_by(rejection(own, Method::direct)->why).by == Decided::by_utility);
  CHECK(text_report(own, {}).find("By the utility's rule: Standard 4.1.") != std::string::npos);
  const Plan usual = plan_of(job);
  REQUIRE(rejection(usual, Method::direct) != nullptr);
  CHECK(decided_by(rejection(usual, Method::direct)->why).by == Decided::by_default);
  CHECK(text_report(usual, {}).find("By a default rule") == std::string::npos);
}

TEST_CASE("a day or a cover left out never betters a verdict, under any season") {
  std::mt19937_64 random(9);
  const auto two = [](std::size_t n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  const auto day = [&] { return two(1 + random() % 12) + '-' + two(1 + random() % 28); };
  for (int i = 0; i < 300; ++i) {
    const Rules rules =
        rules_of(R"({"main": {"closed_season": [{"from": ")" + day() + R"(", "to": ")" + day() +
                 R"("}]}, "place": {"least_cover": ")" + std::to_string(2 + random() % 6) + R"( ft"}})");
    Job job = sound_job();
    job.date = "2026-" + day();
    job.main.cover = static_cast<double>(1 + random() % 10) * units::foot;
    const Verdict whole = plan_under(job, rules).verdict;
    Job undated = job;
    undated.date.clear();
    CHECK(plan_under(undated, rules).verdict >= whole);
    Job uncovered = job;
    uncovered.main.cover.reset();
    CHECK(plan_under(uncovered, rules).verdict >= whole);
    // Without the rules neither fact is asked for.
    CHECK(plan_of(undated).verdict == plan_of(job).verdict);
  }
}

TEST_CASE("a row that is looser for one class is told of that class alone") {
  const Rules rules = rules_of(R"({"direct": {"largest_first": [
    {"material": "ductile iron", "main_from": "14 in", "main_to": "14 in", "largest": "1-1/2 in",
     "reason": "tried for forty years"}]}})");
  Job job = sound_job();
  job.main.size = NominalSize::inches(14);
  job.service.size = NominalSize::inches(1.5);
  job.service.method = Method::direct;
  job.main.class_name = "PC 250";  // 1-1/4 in by default
  const Plan thin = plan_under(job, rules);
  job.main.class_name = "PC 350";  // 1-1/2 in by default
  const Plan thick = plan_under(job, rules);
  REQUIRE(thin.method.kind == Method::direct);
  REQUIRE(thick.method.kind == Method::direct);
  CHECK(has(thin, FindingCode::rules_looser));
  CHECK_FALSE(has(thick, FindingCode::rules_looser));
}

TEST_CASE("a stricter set of rules never betters a verdict") {
  const Rules strict = rules_of(R"({"main": {"not_tapped": [{"main_above": "12 in", "why": "Trunk mains"}],
      "closed_season": [{"from": "11-01", "to": "04-01"}]},
    "direct": {"largest_first": [{"material": "ductile iron", "largest": "3/4 in"}], "required_threads": 3},
    "pressure": {"stop_rating": "80 psi", "wet_tap_limit": "100 psi"},
    "place": {"least_cover": "5 ft", "clearances": {"tap": "3 ft", "joint": "3 ft"}},
    "water": {"smallest_tap": "3/4 in"}})");
  for (const RuleDifference& one : compare_rules(Catalog::builtin(), default_rules(), strict)) {
    REQUIRE(one.change != RuleChange::looser);
  }
  std::mt19937_64 random(11);
  const auto pipes = Catalog::builtin().pipes();
  constexpr std::array taps = {0.625, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0};
  for (int i = 0; i < 1500; ++i) {
    const Pipe& pipe = pipes[random() % pipes.size()];
    Job job = sound_job();
    job.main.material = pipe.series->material;
    job.main.size = pipe.size;
    job.main.class_name = random() % 2 == 0 ? pipe.class_name : "";
    job.main.pressure = static_cast<double>(10 + random() % 200) * units::psi;
    job.service.size = NominalSize::inches(taps[random() % taps.size()]);
    job.date = random() % 3 == 0 ? "" : "2026-0" + std::to_string(1 + random() % 9) + "-15";
    if (random() % 3 != 0) job.main.cover = static_cast<double>(3 + random() % 5) * units::foot;
    if (random() % 4 == 0) job.service.stop_rating.reset();
    INFO(name_of(*job.main.material) << ' ' << pipe.size.label() << " [" << job.main.class_name << "] tap "
                                     << job.service.size->label());
    CHECK(plan_under(job, strict).verdict >= plan_of(job).verdict);
  }
}
