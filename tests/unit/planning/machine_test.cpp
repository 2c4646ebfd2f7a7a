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

TEST_CASE("a thread whose drill is not listed is clamped for the largest hole, never for none") {
  Job job = sound_job();
  job.service.method = Method::direct;
  job.service.size = NominalSize::inches(0.75);
  job.service.thread = ThreadStandard::awwa_taper;
  const Plan awwa = plan_of(job);
  job.service.thread = ThreadStandard::npt;
  const Plan npt = plan_of(job);
  REQUIRE(awwa.setup.drill);
  CHECK(awwa.setup.drill_is_bound);
  CHECK(*awwa.setup.drill == *awwa.method.hole);
  CHECK_FALSE(npt.setup.drill_is_bound);
  CHECK(*npt.setup.drill < *npt.method.hole);
  CHECK(awwa.setup.clamp->force > npt.setup.clamp->force);
  CHECK(awwa.setup.clamp->stud_torque->usual > npt.setup.clamp->stud_torque->usual);
  CHECK(*awwa.setup.travel_needed >= *npt.setup.travel_needed);
  CHECK(awwa.setup.drill_load->high.thrust > npt.setup.drill_load->high.thrust);
}

TEST_CASE("in a drained main no line pushes the machine off: the cutter's thrust alone is held") {
  Job job = sound_job();
  job.main.pressurized = false;
  const Plan iron = plan_of(job);
  CHECK(iron.setup.clamp->force == iron.setup.cut_thrust);
  job.main.pressure = 235.0 * units::psi;
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 18";
  job.service.method = Method::direct;
  const Plan plastic = plan_of(job);
  CHECK(plastic.setup.clamp->force == default_rules().drilling.shell_cutter_thrust.value);
  CHECK_FALSE(has(plastic, FindingCode::machine_chain_ovals_pipe));
}

TEST_CASE("figures of a machine that cannot be right hold the tap") {
  Job job = sound_job();
  job.service.method = Method::direct;
  job.service.size = NominalSize::inches(0.75);
  const auto with = [&](auto change) {
    auto machine = truck_machine();
    change(*machine);
    job.machine.given = machine;
    return plan_of(job);
  };
  REQUIRE(with([](MachineProfile&) {}).verdict == Verdict::go);
  const auto wrong = [](const Plan& plan, FindingCode code) {
    return plan.verdict == Verdict::hold && has(plan, code);
  };
  using enum FindingCode;
  CHECK(wrong(with([](MachineProfile& m) { m.gasket_diameter = 60.0 * units::inch; }), machine_figures_wrong));
  CHECK(wrong(with([](MachineProfile& m) { m.gasket_diameter = 1.3 * units::inch; }), machine_gasket_small));
  CHECK(wrong(with([](MachineProfile& m) { m.standoff = Length(); }), machine_figures_wrong));
  CHECK(wrong(with([](MachineProfile& m) { m.anchor_height = -3.0 * units::inch; }), machine_figures_wrong));
  CHECK(wrong(with([](MachineProfile& m) { m.anchor_height = -60.0 * units::inch; }), machine_figures_wrong));
  CHECK(wrong(with([](MachineProfile& m) { m.stud_diameter = 0.25 * units::inch; }), machine_stud_overloaded));
}

TEST_CASE("a check without its figures is not passed") {
  Job job = sound_job();
  job.service.method = Method::direct;
  job.service.size = NominalSize::inches(0.75);
  REQUIRE(plan_of(job).verdict == Verdict::go);
  for (std::optional<Length> MachineProfile::*figure :
       {&MachineProfile::bar_travel, &MachineProfile::standoff, &MachineProfile::saddle_od_from,
        &MachineProfile::saddle_od_to, &MachineProfile::chain_length, &MachineProfile::chain_thickness,
        &MachineProfile::anchor_offset, &MachineProfile::anchor_height, &MachineProfile::gasket_diameter,
        &MachineProfile::stud_diameter}) {
    auto machine = truck_machine();
    ((*machine).*figure).reset();
    job.machine.given = machine;
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::machine_figures_missing));
    CHECK(plan.verdict == Verdict::hold);
  }
  SECTION("and the hold names each that lacks") {
    auto machine = truck_machine();
    machine->bar_travel.reset();
    machine->gasket_diameter.reset();
    job.machine.given = machine;
    const Plan plan = plan_of(job);
    const Finding* finding = find(plan, FindingCode::machine_figures_missing);
    REQUIRE(finding != nullptr);
    CHECK(std::get<std::string_view>(finding->details[0]).find("machine.bar_travel") != std::string_view::npos);
    CHECK(std::get<std::string_view>(finding->details[1]).find("machine.gasket_diameter") != std::string_view::npos);
    CHECK(finding->details[2].index() == 0);
  }
  SECTION("of a machine on a saddle none of them is needed") {
    auto machine = truck_machine();
    machine->chain_length.reset();
    job.machine.given = machine;
    job.service.method = Method::saddle;
    CHECK_FALSE(has(plan_of(job), FindingCode::machine_figures_missing));
  }
}

TEST_CASE("extensions that nobody has counted are assumed, and the plan says so") {
  Job job = sound_job();
  job.main.size = NominalSize::inches(20);
  job.main.class_name = "PC 250";
  job.service.method = Method::direct;
  const auto assumed = [&] {
    const Plan plan = plan_of(job);
    REQUIRE(plan.setup.chain);
    REQUIRE(plan.setup.chain->extensions > 0);
    return std::any_of(plan.main.assumed.begin(), plan.main.assumed.end(),
                       [](const Assumption& one) { return one.path == "machine.extensions"; });
  };
  CHECK(assumed());
  job.machine.extensions = 3;
  CHECK_FALSE(assumed());
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
