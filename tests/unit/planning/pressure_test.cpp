#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

namespace {
Verdict verdict_at(Job job, double psi) {
  job.main.pressure = psi * units::psi;
  return plan_of(job).verdict;
}
}  // namespace

// 90 psi by hand and 250 psi powered: common practice, no source; here the figures of an invented machine.
TEST_CASE("a machine's feed limits hold to the pound") {
  Job job = sound_job();
  job.service.stop_rating = 400.0 * units::psi;
  job.machine.feed = Feed::hand;
  CHECK(verdict_at(job, 90.0) == Verdict::go);
  CHECK(verdict_at(job, 90.1) == Verdict::hold);
  job.machine.feed = Feed::powered;
  CHECK(verdict_at(job, 250.0) == Verdict::go);
  CHECK(verdict_at(job, 250.1) == Verdict::hold);
}

TEST_CASE("the feed that serves is chosen when none is asked for") {
  Job job = sound_job();
  job.main.pressure = 90.0 * units::psi;
  CHECK(plan_of(job).setup.feed == Feed::hand);
  job.main.pressure = 91.0 * units::psi;
  CHECK(plan_of(job).setup.feed == Feed::powered);
}

TEST_CASE("a line over the feed limit says what to reduce the main to") {
  Job job = sound_job();
  job.machine.feed = Feed::hand;
  job.main.pressure = 120.0 * units::psi;
  const Plan plan = plan_of(job);
  REQUIRE(plan.pressure.reduce_to);
  CHECK(*plan.pressure.reduce_to / units::psi == 90.0);
  REQUIRE(plan.pressure.governed_by);
  CHECK(plan.pressure.governed_by->link == PressureLink::feed);
  const Finding* finding = find(plan, FindingCode::pressure_over_feed_limit);
  REQUIRE(finding != nullptr);
  CHECK(finding->margin()->base() == Approx(-30.0));
}

TEST_CASE("a stop's rating is met by another stop, not by lowering the main") {
  Job job = sound_job();
  job.service.stop_rating = 60.0 * units::psi;
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(has(plan, FindingCode::pressure_over_stop_rating));
  CHECK_FALSE(plan.pressure.reduce_to);
}

TEST_CASE("no tap on a main over its own rating") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 18";  // 235 psi at 73 degF
  job.machine.feed = Feed::powered;
  job.service.stop_rating = 400.0 * units::psi;
  CHECK(verdict_at(job, 235.0) != Verdict::no_go);
  CHECK(verdict_at(job, 235.1) == Verdict::no_go);
  SECTION("and a warm plastic main is rated for less") {
    job.main.temperature = Temperature::fahrenheit(90);  // 0.75 x 235 = 176.25
    CHECK(verdict_at(job, 176.2) != Verdict::no_go);
    CHECK(verdict_at(job, 176.3) == Verdict::no_go);
  }
  SECTION("unless reading its class may show that it is not over") {
    job.main.class_name.clear();
    CHECK(verdict_at(job, 170.0) == Verdict::hold);
  }
  SECTION("and over 140 degF not at all") {
    job.main.temperature = Temperature::fahrenheit(141);
    CHECK(verdict_at(job, 20.0) == Verdict::no_go);
  }
}

TEST_CASE("surge is judged by what the wall allows for") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 25";  // 165 psi; 1.6 times: 264
  job.machine.feed = Feed::powered;
  job.main.pressure = 164.0 * units::psi;
  job.main.surge = 100.0 * units::psi;
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_surge_over_rating));
  job.main.surge = 101.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::pressure_surge_over_rating));
}

TEST_CASE("a dry main has no feed limit to meet") {
  Job job = sound_job();
  job.main.pressure = 120.0 * units::psi;
  job.machine.feed = Feed::hand;
  job.main.pressurised = false;
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::go);
  CHECK(plan.setup.push.base() == 0.0);
}

TEST_CASE("a surge far over a fitting's rating holds the job") {
  Job job = sound_job();
  job.service.stop_rating = 100.0 * units::psi;  // 1.5 times: 150
  job.main.surge = 80.0 * units::psi;            // 70 + 80
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_surge_over_rating));
  job.main.surge = 81.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::pressure_surge_over_rating));
  CHECK(plan_of(job).verdict == Verdict::hold);
}

TEST_CASE("the pressure to read is one that lowering the main can meet") {
  Job job = sound_job();
  job.main.material = Material::cast_iron;
  job.main.size = NominalSize::inches(6);
  job.main.class_name.clear();  // class A, rated 43 psi, is among those it may be
  const Plan plan = plan_of(job);
  CHECK(has(plan, FindingCode::pressure_over_pipe_rating));
  REQUIRE_FALSE(plan.stop_numbers.empty());
  CHECK(plan.stop_numbers.front().at_most->base() == 90.0);
}

TEST_CASE("a lowest pressure above the highest is a contradiction") {
  Job job = sound_job();
  job.main.pressure_low = *job.main.pressure;
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_low_over_line));
  job.main.pressure_low = *job.main.pressure + 1.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::pressure_low_over_line));
  CHECK(plan_of(job).verdict == Verdict::hold);
}
