// No tool and no stop goes on a bar that would take it to the far wall of the smallest and thickest pipe it can be.
#include <algorithm>
#include <array>
#include <string>

#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"
#include "unit/planning/whole_jobs.hpp"
#include "words/card.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Job direct_job() {
  Job job = sound_job();
  job.service.size = NominalSize::inches(0.75);
  job.service.method = Method::direct;
  job.service.thread = ThreadStandard::npt;
  return job;
}

// "6-1/4 in past 1, found by trial": nothing where the card asks for a length, or has no such mark.
std::optional<Length> printed(const std::vector<BarMark>& marks, std::string_view key) {
  for (const BarMark& mark : marks) {
    std::string text(mark.where);
    const std::size_t end = text.find(" past 1");
    if (mark.key != key || end == std::string::npos) continue;
    text.resize(end);
    if (text.starts_with("from ")) text.erase(0, 5);
    const ParsedMeasure read = parse_measure(text, Kind::length);
    if (read) return read.value.as<Length>();
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("a trial that stops beyond the far-wall mark holds the tap, and no card tells to tap there") {
  Job job = direct_job();
  REQUIRE(plan_of(job).verdict == Verdict::go);
  // Class PC 350 of 8 in, 9.05 in outside and at least 8.99; its wall of 0.25 may be half as thick again; half an inch clear.
  job.service.trial.depth = (8.99 - 0.375 - 0.5 - 0.01) * units::inch;
  CHECK(plan_of(job).verdict == Verdict::go);
  job.service.trial.depth = (8.99 - 0.375 - 0.5 + 0.01) * units::inch;
  const Plan deep = plan_of(job);
  CHECK(deep.verdict == Verdict::hold);
  CHECK(has(deep, FindingCode::machine_tool_strikes_far_wall));
  CHECK_FALSE(printed(bar_marks(deep, UnitSystem::us), "stop-tapping"));
}

TEST_CASE("a trial that stops before the hole is full, or before the tap catches, holds the tap") {
  Job job = direct_job();
  // Through the least wall of 0.20 in by the point of a 59/64 in drill: 0.20 + 0.024 + 0.277 in, and no clearance.
  job.service.trial.depth = 0.45 * units::inch;
  const Plan shallow = plan_of(job);
  CHECK(shallow.verdict == Verdict::hold);
  REQUIRE(has(shallow, FindingCode::machine_figures_wrong));
  CHECK_FALSE(printed(bar_marks(shallow, UnitSystem::us), "stop-tapping"));
  job.service.trial.depth = 1.6 * units::inch;
  job.tool.lead = 1.0 * units::inch;
  CHECK(plan_of(job).verdict == Verdict::go);
  job.tool.lead = 1.7 * units::inch;
  const Plan before = plan_of(job);
  CHECK(before.verdict == Verdict::hold);
  CHECK(find(before, FindingCode::machine_figures_wrong)->limit == Measure(1.7 * units::inch));
  CHECK(printed(bar_marks(before, UnitSystem::us), "stop-tapping") > 1.7 * units::inch);  // the thread's own depth
}

TEST_CASE("a trial whose counts are of no made-up stop holds the tap, and no card makes up by it") {
  const auto tried = [](std::optional<double> hand, std::optional<double> wrench, std::optional<double> showing) {
    Job job = direct_job();
    job.service.trial = {.depth = 1.625 * units::inch,
                         .hand_turns = hand,
                         .wrench_turns = wrench,
                         .threads_showing = showing,
                         .date = {},
                         .tool = {}};
    return job;
  };
  for (const ThreadStandard thread : {ThreadStandard::npt, ThreadStandard::awwa_taper}) {
    const auto plan = [&](std::optional<double> hand, std::optional<double> wrench, std::optional<double> showing) {
      Job job = tried(hand, wrench, showing);
      job.service.thread = thread;
      return plan_of(job);
    };
    for (const Plan& good : {plan({}, {}, {}), plan(4, 2, 2), plan({}, 2, 3), plan({}, 3, {}), plan(4, 1, 3)}) {
      CHECK(good.verdict == Verdict::go);
      CHECK(printed(bar_marks(good, UnitSystem::us), "stop-tapping") == 1.625 * units::inch);
    }
    for (const Plan& bad : {plan({}, 0, 3), plan(4, 0, 4), plan({}, 2, 8), plan({}, {}, 7), plan(0, 1, 3),
                            plan({}, 2, 0), plan({}, 0.2, {}), plan({}, 6, {}), plan(4, 4, 0), plan(4, 0.9, 3.2)}) {
      CHECK(bad.verdict == Verdict::hold);
      CHECK(has(bad, FindingCode::makeup_trial_off));
      CHECK(printed(bar_marks(bad, UnitSystem::us), "stop-tapping") != 1.625 * units::inch);
      for (const Language language : {Language::english, Language::spanish}) {
        CHECK(makeup_in_words(bad, language) ==
              (bad.makeup ? makeup_in_words(plan({}, {}, {}), language)
                          : std::string(words::say(words::CardWord::makeup_by_trial, language))));
      }
    }
  }
}

TEST_CASE("a drill measured too far ahead of its tap, and a saddle's pilot, stop short of the far wall") {
  Job job = direct_job();
  job.tool.lead = 5.0 * units::inch;
  CHECK(plan_of(job).verdict == Verdict::go);
  job.tool.lead = 7.5 * units::inch;
  CHECK(has(plan_of(job), FindingCode::machine_tool_strikes_far_wall));
  job = sound_job();
  job.service.method = Method::saddle;
  REQUIRE(plan_of(job).verdict == Verdict::go);
  job.tool.lead = 7.5 * units::inch;
  CHECK(has(plan_of(job), FindingCode::machine_tool_strikes_far_wall));
  CHECK(plan_of(job).verdict == Verdict::hold);
}

TEST_CASE("an insertion tool so short that the bar passes the far-wall mark with it is measured again") {
  Job job = direct_job();
  auto machine = std::make_shared<MachineProfile>(*job.machine.given);
  machine->bar_travel = 30.0 * units::inch;
  job.machine.given = machine;
  job.tool.length = 12.0 * units::inch;
  job.tool.insertion_length = 5.0 * units::inch;
  CHECK(plan_of(job).verdict == Verdict::go);
  job.tool.insertion_length = 3.5 * units::inch;
  const Plan crossed = plan_of(job);
  CHECK(has(crossed, FindingCode::machine_figures_wrong));
  CHECK_FALSE(printed(bar_marks(crossed, UnitSystem::us), "stop-touches"));
}

TEST_CASE("no card prints a mark beyond the one that no tool may pass") {
  WholeJobs random(47);
  int marked = 0;
  for (int i = random_jobs(3000); i > 0; --i) {
    Job job = random.next();
    if (random.chance(70)) job.service.trial.depth = random.real(0.1, 12) * units::inch;
    if (random.chance(50)) job.tool.lead = random.real(0, 9) * units::inch;
    if (random.chance(50)) {
      job.tool.length = random.real(2, 16) * units::inch;
      job.tool.insertion_length = random.real(2, 16) * units::inch;
    }
    const Plan plan = plan_of(job);
    if (plan.marks && plan.marks->limit && plan.verdict == Verdict::go) {
      const auto& at = *plan.marks->at;
      CHECK((!at.stop_tapping || *at.stop_tapping <= *plan.marks->limit));
      CHECK((!at.stop_touches || !job.main.is_pressurized() || *at.stop_touches <= *plan.marks->limit));
    }
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
      const auto marks = bar_marks(plan, system);
      const auto limit = printed(marks, "far-wall");
      if (!limit) continue;
      for (const std::string_view key : {"through", "tap-catches", "stop-tapping", "stop-touches"}) {
        const auto at = printed(marks, key);
        if (!at) continue;
        ++marked;
        INFO(key << ' ' << *at / units::inch << " limit " << *limit / units::inch);
        REQUIRE(*at <= *limit + 1e-9 * units::inch);
      }
    }
  }
  CHECK(marked > 100);
}
