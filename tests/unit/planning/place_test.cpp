#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

namespace {}  // namespace

TEST_CASE("nobody looked: held until the distances are measured") {
  Job job = sound_job();
  job.nearby.reset();
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(has(plan, FindingCode::place_not_looked));
}

TEST_CASE("a place too near a joint is moved to the nearest that serves") {
  Job job = sound_job();
  SECTION("just clear: stays") {
    job.nearby = {at(NearbyThing::joint, 24.0)};
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::go);
    CHECK(plan.location.shift.base() == 0.0);
  }
  SECTION("a bell 10 in up the + way: 14 in the other way") {
    job.nearby = {at(NearbyThing::bell, 10.0)};
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::hold);
    CHECK(has(plan, FindingCode::place_moved));
    CHECK(plan.location.shift / units::inch == Approx(-14.0));
    REQUIRE(plan.location.clearings.size() == 1);
    CHECK(plan.location.clearings[0].kept / units::inch == Approx(24.0));
  }
  SECTION("hemmed in on one side: goes the longer way") {
    job.nearby = {at(NearbyThing::joint, 10.0), at(NearbyThing::tap, -20.0)};
    CHECK(plan_of(job).location.shift / units::inch == Approx(34.0));
  }
  SECTION("no room within reach") {
    job.nearby.emplace();
    for (int i = -6; i <= 6; ++i) job.nearby->push_back(at(NearbyThing::tap, 20.0 * i));
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::place_no_room));
    CHECK(plan.verdict == Verdict::hold);
  }
}

TEST_CASE("taps near each other stand at different places round the pipe") {
  Job job = sound_job();
  job.nearby = {at(NearbyThing::tap, 20.0)};
  job.nearby->front().clock = default_rules().place.default_clock.value;
  CHECK(plan_of(job).location.clock.minutes == 720 - default_rules().place.default_clock.value.minutes);
  job.service.clock = default_rules().place.default_clock.value;
  CHECK(has(plan_of(job), FindingCode::place_stagger));
}

TEST_CASE("clock positions are angles above the horizontal") {
  CHECK(ClockPosition{0}.elevation_degrees() == 90.0);
  CHECK(ClockPosition{90}.elevation_degrees() == 45.0);    // 1:30
  CHECK(ClockPosition{630}.elevation_degrees() == 45.0);   // 10:30
  CHECK(ClockPosition{180}.elevation_degrees() == 0.0);    // 3:00
  CHECK(ClockPosition{360}.elevation_degrees() == -90.0);  // 6:00
  CHECK(ClockPosition{90}.label() == "1:30");
  CHECK(ClockPosition{0}.label() == "12:00");
}

TEST_CASE("the bottom of the pipe is no place for a tap") {
  Job job = sound_job();
  job.service.clock = ClockPosition{360};
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(has(plan, FindingCode::place_clock));
  CHECK(plan.location.clock == default_rules().place.default_clock.value);
}

TEST_CASE("another line at the tap is kept clear of") {
  Job job = sound_job();
  for (const NearbyThing line : {NearbyThing::gas_line, NearbyThing::electric_line, NearbyThing::other}) {
    job.nearby = {at(line, 0.0)};
    CHECK(plan_of(job).verdict == Verdict::hold);
    CHECK(has(plan_of(job), FindingCode::place_moved));
  }
}
