#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

TEST_CASE("a base chain that reaches round 16-inch mains needs an extension at 18") {
  Job job = sound_job();
  job.main.class_name.clear();
  job.main.size = NominalSize::inches(16);
  const Plan sixteen = plan_of(job);
  REQUIRE(sixteen.setup.chain);
  CHECK(sixteen.setup.chain->extensions == 0);
  job.main.size = NominalSize::inches(18);
  const Plan eighteen = plan_of(job);
  REQUIRE(eighteen.setup.chain);
  CHECK(eighteen.setup.chain->extensions == 1);
  CHECK(eighteen.setup.chain->available >= eighteen.setup.chain->needed);

  SECTION("which must be on the truck: without it a saddle tap, which needs no chain, is the better way") {
    job.machine.extensions = 0;
    const Plan saddle = plan_of(job);
    CHECK(saddle.method.kind == Method::saddle);
    CHECK_FALSE(saddle.setup.chain);
    REQUIRE(rejection(saddle, Method::direct) != nullptr);
    CHECK(rejection(saddle, Method::direct)->why.code == FindingCode::machine_chain_short);
    job.service.method = Method::direct;
    CHECK(plan_of(job).verdict == Verdict::hold);
    job.machine.extensions = 1;
    CHECK(plan_of(job).verdict == Verdict::go);
  }
}

TEST_CASE("the unspecified machine holds until its maker's figures are given") {
  Job job = sound_job();
  job.machine = {};
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(has(plan, FindingCode::machine_unspecified));
}

TEST_CASE("a machine that does not fit the job holds it") {
  Job job = sound_job();
  job.service.method = Method::direct;
  auto machine = truck_machine();
  SECTION("the tap is outside its range") {
    machine->largest_tap = NominalSize::inches(0.75);
    job.machine.given = machine;
    CHECK(has(plan_of(job), FindingCode::machine_wrong_size));
  }
  SECTION("no machine saddle for this diameter") {
    machine->saddle_od_to = 8.0 * units::inch;
    job.machine.given = machine;
    CHECK(has(plan_of(job), FindingCode::machine_no_saddle));
  }
  SECTION("no powered feed") {
    machine->powered_limit.reset();
    job.machine.given = machine;
    job.machine.feed = Feed::powered;
    CHECK(has(plan_of(job), FindingCode::machine_no_powered_feed));
  }
  SECTION("a seal no wider than the hole") {
    machine->gasket_diameter = 1.0 * units::inch;
    job.machine.given = machine;
    CHECK(has(plan_of(job), FindingCode::machine_gasket_small));
  }
  SECTION("a bar that does not even reach through the wall, whatever the thread") {
    machine->bar_travel = 6.2 * units::inch;
    job.machine.given = machine;
    CHECK(has(plan_of(job), FindingCode::machine_travel_short));
  }
  SECTION("bar too short") {
    machine->bar_travel = 6.0 * units::inch;
    job.machine.given = machine;
    job.service.thread = ThreadStandard::npt;
    job.main.wall = 0.25 * units::inch;
    CHECK(has(plan_of(job), FindingCode::machine_travel_short));
  }
  CHECK(plan_of(job).verdict == Verdict::hold);
}

TEST_CASE("the line's push on the bar is told, and is never to be held by hand alone") {
  Job job = sound_job();
  job.main.pressure = 90.0 * units::psi;
  const Plan plan = plan_of(job);
  // 90 psi on a 1-inch bar: 70.7 lbf, over what a person should hold.
  CHECK(plan.setup.push / units::lbf == Approx(70.7).margin(0.05));
  CHECK(has(plan, FindingCode::machine_push_by_hand));
}

TEST_CASE("the clamp holds the line's force and the drill's") {
  const Plan plan = plan_of(sound_job());
  REQUIRE(plan.setup.clamp);
  // 70 psi on a 2.25-inch seal is 278 lbf; the drill's thrust comes on top.
  CHECK(plan.setup.clamp->force / units::lbf > 278.0);
  REQUIRE(plan.setup.clamp->tension);
  REQUIRE(plan.setup.clamp->stud_torque);
  CHECK(plan.setup.clamp->stud_torque->low < plan.setup.clamp->stud_torque->high);
}

TEST_CASE("plastic under the chain is checked for ovality") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 18";
  const Plan plan = plan_of(job);
  REQUIRE(plan.setup.clamp);
  REQUIRE(plan.setup.clamp->ovality);
  CHECK(*plan.setup.clamp->ovality > 0.0);
}
