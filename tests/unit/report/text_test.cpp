#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/report.hpp"
#include "report/text_page.hpp"
#include "support/catch.hpp"
#include "support/one_line.hpp"
#include "unit/work/sample_plans.hpp"

namespace mainbore {
namespace {

using test::finding;
using test::on_one_line;
using test::Sample;
using test::sample_plan;

Plan held_plan() {
  Plan plan = sample_plan({.verdict = Verdict::hold});
  Finding thin = finding(FindingCode::direct_thin_wall, Severity::hold);
  thin.value = Measure(0.20 * units::inch);
  thin.limit = Measure(0.237 * units::inch);
  thin.limit_is_least = true;
  thin.details[0] = Measure(1.58, Kind::threads);
  thin.details[1] = Measure(0.25 * units::inch);
  Finding recalled = finding(FindingCode::value_recalled, Severity::caution);
  recalled.details[0] = std::string_view("the largest tap");
  recalled.basis[0] = &test::sample_tables().recalled;
  Finding few = finding(FindingCode::direct_few_threads, Severity::stop);
  few.value = Measure(1.2, Kind::threads);
  few.limit = Measure(2.0, Kind::threads);
  few.details[0] = Measure(0.25 * units::inch);
  plan.findings = {thin, finding(FindingCode::identity_unconfirmed, Severity::hold), recalled};
  plan.evidence.push_back({PlanPart::findings, Taken::finding, recalled.code, {}, From::table, *recalled.basis[0]});
  plan.method.rejected.push_back({Method::direct, 1, NominalSize::inches(1.25), few});
  return plan;
}

Plan refused_plan() {
  Plan plan = sample_plan({.verdict = Verdict::no_go});
  Finding gas = finding(FindingCode::identity_not_water, Severity::stop);
  gas.details[0] = std::string_view("gas");
  plan.findings = {gas, finding(FindingCode::main_condition_unseen, Severity::hold)};
  return plan;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

bool contains(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a crew reads figures that it can gauge") {
  Plan plan = sample_plan();
  plan.setup.drill_stroke = 1.133 * units::inch;
  plan.setup.saddle_od = 6.923 * units::inch;
  plan.main.od = 6.923 * units::inch;
  plan.location.clearings.front().kept = 29.4 * units::inch;
  const std::string text = text_report(plan, {});
  CHECK(contains(text, "1-3/16 in of feed"));
  CHECK(contains(text, "for 6.92 in outside"));
  CHECK(contains(text, "2 ft 5 in; at least 2 ft"));
  CHECK_FALSE(contains(text, "6.923"));
}

TEST_CASE("rating and wall of different pipes are told to be the worst of each") {
  Plan plan = sample_plan();
  CHECK_FALSE(contains(text_report(plan, {}), "worst of each"));
  plan.main.rated_as = test::sample_tables().thicker.class_name;
  CHECK(contains(on_one_line(text_report(plan, {})), "worst of each"));
}

TEST_CASE("no line is wider than asked, none ends in a space") {
  std::vector<Plan> plans = {held_plan(), refused_plan()};
  plans.front().job.note = std::string(300, 'w') + " and a long note about the place that goes on for some time";
  for (const Method method : {Method::direct, Method::saddle, Method::sleeve}) {
    for (std::size_t m = 0; m < material_count; ++m) {
      plans.push_back(sample_plan({.method = method, .material = static_cast<Material>(m), .wet = m % 2 == 0}));
    }
  }
  for (const Plan& plan : plans) {
    for (const int width : {40, 57, 80, 132}) {
      for (const std::string& line : lines_of(text_report(plan, {.width = width}))) {
        INFO(line);
        CHECK(report::columns(line) <= static_cast<std::size_t>(width));
        CHECK((line.empty() || line.back() != ' '));
      }
    }
  }
}

TEST_CASE("the verdict comes first and the stop numbers right under it") {
  const std::string text = text_report(held_plan());
  CHECK(text.rfind("HOLD", 0) == 0);
  const std::size_t numbers = text.find("STOP NUMBERS");
  const std::size_t holds = text.find("CLEAR AT THE PIPE");
  REQUIRE(numbers != std::string::npos);
  REQUIRE(holds != std::string::npos);
  CHECK(numbers < holds);
  CHECK(holds < text.find("THE TAP"));
  CHECK(contains(text, "Sound wall at the tap ....... at least 0.237 in       read ________ in\n"));
  CHECK(contains(text, "Line pressure when tapping .. at most 100 psi         read ________ psi\n"));
  CHECK(contains(text, "21-1/2 in to 21-7/8 in"));
}

TEST_CASE("each hold has its code, what to do and a blank to fill") {
  const std::string text = text_report(held_plan());
  CHECK(contains(text, "[direct.thin-wall]"));
  CHECK(contains(text, "--> Least wall: ________ in   by ________"));
  CHECK(contains(text, "--> Proved by (two means): ________________   by ________"));
  CHECK(contains(on_one_line(text), "It must read at least 0.237 in; if less, use a saddle."));
}

TEST_CASE("what was not used stands with its reason, what was assumed with its way out") {
  const std::string text = on_one_line(text_report(held_plan()));
  CHECK(contains(text, "1-1/4 in direct: A wall of 0.25 in holds 1.2 threads; 2 threads are required."));
  CHECK(contains(text,
                 "Main class: PC 350, the weakest pipe that fits what is known. Better: read the class on the pipe."));
  CHECK(contains(text, "0.29 in to 0.35 in ..... Sample pipe, Class 53, or 2 more that read the same"));
}

TEST_CASE("every link of the pressure chain is shown with its margin") {
  const std::string text = text_report(held_plan());
  CHECK(contains(text, "Pipe rating ............ 350 psi   268 psi to spare\n"));
  CHECK(contains(text, "Feed limit ............. 100 psi   18 psi to spare  <-- the least\n"));
  Plan over = held_plan();
  over.pressure.line = 110.0 * units::psi;
  over.pressure.reduce_to = 100.0 * units::psi;
  const std::string reduced = text_report(over);
  CHECK(contains(reduced, "over by 10 psi"));
  CHECK(contains(reduced, "Lower the main to ...... 100 psi or less"));
}

TEST_CASE("a no-go says what stops it, and shows no way to do it") {
  const std::string text = text_report(refused_plan());
  CHECK(text.rfind("NO-GO", 0) == 0);
  CHECK(contains(text, "WHAT STOPS IT"));
  CHECK(contains(text, "[identity.not-water]"));
  CHECK(contains(text, "ALSO OPEN"));
  for (const auto part : {"ORDER OF WORK", "LOAD", "THE TAP", "STOP NUMBERS", "MAKE-UP"})
    CHECK_FALSE(contains(text, part));
}

TEST_CASE("cautions cannot be switched off") {
  for (const Plan& plan : {held_plan(), refused_plan(), sample_plan()}) {
    const std::string text = on_one_line(text_report(plan, {.steps = false, .materials = false}));
    for (const Caution& caution : cautions(plan, UnitSystem::us)) {
      INFO(caution.code);
      CHECK(contains(text, caution.text));
    }
  }
}

TEST_CASE("steps and load can be left out") {
  const std::string text = text_report(held_plan(), {.steps = false, .materials = false});
  CHECK_FALSE(contains(text, "ORDER OF WORK"));
  CHECK_FALSE(contains(text, "IF IT GOES WRONG"));
  CHECK_FALSE(contains(text, "LOAD"));
}

TEST_CASE("every step and hold point is printed") {
  const Plan plan = held_plan();
  const std::string text = on_one_line(text_report(plan));
  for (const Step& step : procedure(plan, UnitSystem::us)) {
    INFO(step.id);
    CHECK(contains(text, in_words(step)));
    CHECK(contains(text, step.hold_point));
  }
  for (const Step& step : contingencies(plan, UnitSystem::us)) CHECK(contains(text, in_words(step)));
  CHECK(contains(text, "Now: machine valve SHUT, bypass SHUT, bleed OPEN, chamber AT ZERO"));
}

TEST_CASE("sources say how each number was had") {
  const std::string text = on_one_line(text_report(held_plan()));
  CHECK(contains(text, "Sample pipe standard, 3rd edition, table 4 (published): pipe diameter; pipe wall"));
  CHECK(contains(text, "Sample pipe standard, 3rd edition, table 4 (recalled: check this value)"));
  Plan plan = held_plan();
  const std::string reference = "Ashmere Water standard 4.2";
  const Basis own{.how = How::published, .utility = true, .reference = &reference};
  plan.evidence.push_back({PlanPart::pressure, Taken::feed_limit, {}, {}, From::rule, own});
  CHECK(contains(on_one_line(text_report(plan)), "The utility's own rule: Ashmere Water standard 4.2: feed limit."));
}

TEST_CASE("a recalled row of a published table is not passed off as published") {
  Plan plan = held_plan();
  for (Evidence& item : plan.evidence) {
    if (item.part == PlanPart::pipe) item.basis.how = How::memory;
  }
  const std::string text = on_one_line(text_report(plan));
  CHECK(contains(text, "(recalled: check this value): pipe diameter; pipe wall; pipe rating"));
  CHECK_FALSE(contains(text, "(published): pipe diameter"));
}

TEST_CASE("emphasis adds nothing but escapes, and only when asked for") {
  const std::string plain = text_report(held_plan());
  CHECK_FALSE(contains(plain, "\x1b"));
  std::string loud = text_report(held_plan(), {.color = true});
  CHECK(contains(loud, "\x1b[1;7mHOLD"));
  for (std::size_t at = loud.find('\x1b'); at != std::string::npos; at = loud.find('\x1b')) {
    loud.erase(at, loud.find('m', at) - at + 1);
  }
  CHECK(loud == plain);
}

TEST_CASE("an order's own words cannot write to the terminal") {
  Plan plan = held_plan();
  plan.job.place = "Ashmere\x1b[2J\nNO-GO";
  const std::string text = text_report(plan);
  CHECK_FALSE(contains(text, "\x1b"));
  CHECK_FALSE(contains(text, "\nNO-GO"));
  MachineProfile own = *plan.setup.machine;  // a job may give its machine whole, its name too
  own.title = "borer\x1b[2J";
  plan.setup.machine = &own;
  CHECK_FALSE(contains(text_report(plan), "\x1b"));
}

TEST_CASE("metric reports carry no inch but in names of sizes") {
  const std::string text = on_one_line(text_report(held_plan(), {.units = UnitSystem::si}));
  CHECK(contains(text, "565 kPa"));
  CHECK(contains(text, "at least 6.1 mm"));
  for (const auto unit : {" psi", " lbf", " ft "}) {
    INFO(unit);
    CHECK_FALSE(contains(text, unit));
  }
}

TEST_CASE("the same plan gives the same text") { CHECK(text_report(held_plan()) == text_report(held_plan())); }

TEST_CASE("summaries are one sentence") {
  CHECK(summary_of(sample_plan(), UnitSystem::us).whole() ==
        "Go: 1 in direct tap in the 6 in ductile iron main at 82 psi.");
  CHECK(summary_of(held_plan(), UnitSystem::si).whole() ==
        "Hold: 1 in direct tap in the 6 in ductile iron main at 565 kPa, once 2 holds are cleared.");
  CHECK(summary_of(refused_plan(), UnitSystem::us).whole() ==
        "No-go: 1 in service, 6 in ductile iron main at 82 psi: not a drinking-water main.");
  CHECK(summary_of(sample_plan({.method = Method::saddle, .wet = false}), UnitSystem::us).whole() ==
        "Go: 1 in tap through a saddle on the 6 in ductile iron main, drained.");
  Plan several = sample_plan();
  several.method.count = 3;
  several.method.tap = NominalSize::inches(0.75);
  CHECK(summary_of(several, UnitSystem::us).whole() ==
        "Go: 3 direct taps, 3/4 in each, in the 6 in ductile iron main at 82 psi.");
}

TEST_CASE("a summary has its parts, and puts them together without its verdict") {
  const Summary held = summary_of(held_plan(), UnitSystem::us);
  CHECK(held.verdict == "Hold");
  CHECK(held.work == "1 in direct tap in the 6 in ductile iron main at 82 psi");
  CHECK(held.once == "once 2 holds are cleared");
  CHECK(held.sentence() == "1 in direct tap in the 6 in ductile iron main at 82 psi, once 2 holds are cleared.");
  const Summary refused = summary_of(refused_plan(), UnitSystem::us);
  CHECK(refused.why == "not a drinking-water main");
  CHECK(refused.once.empty());
}

}  // namespace mainbore
