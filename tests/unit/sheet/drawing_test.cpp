// The drawings' geometry, worked out again from the plan.
#include "report/figures/drawing.hpp"

#include <cmath>
#include <numbers>

#include "support/approx.hpp"
#include "unit/sheet/sheet_jobs.hpp"

namespace mainbore::report {
namespace {

using test::plan_of;
using test::sound_job;

double inches(Length length) { return length / units::inch; }

double total(const std::vector<ThreadTurn>& turns) {
  double sum = 0.0;
  for (const ThreadTurn& turn : turns) sum += inches(turn.to - turn.from);
  return sum;
}

Job npt_job(double size, double main_size = 8.0) {
  Job job = sound_job();
  job.main.size = NominalSize::inches(main_size);
  job.service.size = NominalSize::inches(size);
  job.service.thread = ThreadStandard::npt;
  job.main.wall = 0.36 * units::inch;
  return job;
}

TEST_CASE("the section has the plan's diameters, and the tap at its clock position", "[drawing]") {
  Job job = npt_job(0.75);
  const Plan plan = plan_of(job);
  const auto drawing = section_drawing(plan);
  REQUIRE(drawing);
  CHECK(drawing->radius == *plan.main.od / 2.0);
  CHECK(inches(*drawing->bore) == Approx(inches(*plan.main.od) / 2.0 - 0.36));
  CHECK(inches(*drawing->hole) == Approx(1.050 / 2.0));
  // 1:30 is half way between crown and springline.
  CHECK(inches(drawing->tap.right) == Approx(inches(drawing->radius) * std::sqrt(0.5)));
  CHECK(inches(drawing->tap.up) == Approx(inches(drawing->radius) * std::sqrt(0.5)));
  CHECK(*drawing->thread_in == plan.makeup->makeup.engaged_length);

  job.service.clock = ClockPosition{9 * 60};
  const auto left = section_drawing(plan_of(job));
  CHECK(inches(left->tap.right) == Approx(-inches(left->radius)));
  CHECK(inches(left->tap.up) == Approx(0.0).margin(1e-9));
}

TEST_CASE("threads drawn are threads computed", "[drawing]") {
  for (const double main_size : {4.0, 6.0, 8.0, 12.0, 24.0}) {
    for (const double size : {0.5, 0.75, 1.0}) {
      for (const double wall : {0.28, 0.33, 0.41, 0.60}) {
        Job job = npt_job(size, main_size);
        job.main.class_name.clear();
        job.main.wall = wall * units::inch;
        const Plan plan = plan_of(job);
        if (plan.verdict == Verdict::no_go || plan.method.kind != Method::direct) continue;
        const auto drawing = threads_drawing(plan);
        INFO(main_size << " in main, " << size << " in tap, wall " << wall);
        REQUIRE(drawing);
        REQUIRE(plan.engagement->at_least);
        const double computed = plan.engagement->at_least->complete_threads;
        const double pitch = inches(drawing->pitch);
        CHECK(drawing->complete.size() == static_cast<std::size_t>(std::floor(computed + 1e-9)));
        CHECK(total(drawing->complete) == Approx(pitch * std::floor(computed + 1e-9)));
        // The faces are full of thread: from the crown to the bore along the pipe, from the drop down across it.
        CHECK(total(drawing->along) + total(drawing->complete) == Approx(inches(drawing->wall)));
        CHECK(total(drawing->across) + total(drawing->complete) == Approx(inches(drawing->foot - drawing->drop)));
        // By the formula of the curved wall.
        const double outside = inches(drawing->radius);
        const double hole = inches(drawing->hole);
        const double drop = outside - std::sqrt(outside * outside - hole * hole);
        CHECK(inches(drawing->drop) == Approx(drop));
        CHECK((inches(drawing->wall) - drop) / pitch == Approx(computed));
        for (std::size_t i = 0; i < drawing->complete.size(); ++i) {
          CHECK(inches(drawing->complete[i].from) == Approx(drop + static_cast<double>(i) * pitch));
          CHECK(drawing->complete[i].to <= drawing->wall + 1e-9 * units::inch);
        }
      }
    }
  }
}

TEST_CASE("where the drop takes the whole wall no thread is drawn complete", "[drawing]") {
  Plan plan = plan_of(npt_job(1.0));
  REQUIRE(plan.engagement);
  const TapThread* thread = plan.catalog->thread(ThreadStandard::npt, NominalSize::inches(1.0));
  const mechanics::Barrel thin{*plan.main.od, 0.03 * units::inch};
  plan.engagement->at_least = mechanics::engagement(thin, thread->form);
  REQUIRE(plan.engagement->at_least->fit == mechanics::HoleFit::no_complete_ring);
  const auto drawing = threads_drawing(plan);
  REQUIRE(drawing);
  CHECK(drawing->complete.empty());
  CHECK(total(drawing->along) == Approx(0.03));
  CHECK(drawing->nominal_wall);
}

TEST_CASE("a turn less a hair is whole, as it is counted", "[drawing]") {
  Plan plan = plan_of(npt_job(1.0));
  const TapThread* thread = plan.catalog->thread(ThreadStandard::npt, NominalSize::inches(1.0));
  const auto wall = mechanics::wall_needed(*plan.main.od, thread->form, 3.0);
  REQUIRE(wall);
  plan.engagement->at_least = mechanics::engagement({*plan.main.od, *wall}, thread->form);
  const auto drawing = threads_drawing(plan);
  REQUIRE(drawing);
  CHECK(drawing->complete.size() == 3);
  CHECK(drawing->along.size() == 1);  // above the drop
}

TEST_CASE("along the main: near things in order, far ones apart, the tap where it is planned", "[drawing]") {
  Job job = npt_job(0.75);
  job.nearby = {{NearbyThing::valve, 40.0 * units::foot, {}, {}},
                {NearbyThing::hydrant, 5.0 * units::foot, {}, {}},
                {NearbyThing::joint, 1.0 * units::foot, {}, {}},
                {NearbyThing::sewer, -4.0 * units::foot, {}, {}}};
  const Plan plan = plan_of(job);
  REQUIRE(plan.location.shift != Length());
  const auto drawing = along_drawing(plan);
  REQUIRE(drawing);
  CHECK(drawing->looked);
  CHECK(drawing->planned == plan.location.shift);
  REQUIRE(drawing->things.size() == 3);
  CHECK(drawing->things[0].what == NearbyThing::sewer);
  CHECK(drawing->things[0].least == 24.0 * units::inch);
  CHECK(drawing->things[1].what == NearbyThing::joint);
  REQUIRE(drawing->things[1].kept);
  CHECK(*drawing->things[1].kept == abs(1.0 * units::foot - plan.location.shift));
  CHECK(*drawing->things[1].least == 24.0 * units::inch);
  REQUIRE(drawing->beyond.size() == 1);
  CHECK(drawing->beyond[0].what == NearbyThing::valve);
  for (const AlongThing& thing : drawing->things) {
    CHECK(thing.along > drawing->from);
    CHECK(thing.along < drawing->to);
  }
}

TEST_CASE("where nobody looked the widest clearance is drawn to be kept", "[drawing]") {
  Job job = npt_job(0.75);
  job.nearby.reset();
  const auto drawing = along_drawing(plan_of(job));
  REQUIRE(drawing);
  CHECK_FALSE(drawing->looked);
  CHECK(drawing->ask == 24.0 * units::inch);
  CHECK(drawing->things.empty());
}

TEST_CASE("the chain drawn touches the pipe and is as long as the plan's", "[drawing]") {
  for (const double size : {4.0, 8.0, 12.0, 16.0}) {
    const Plan plan = plan_of(npt_job(0.75, size));
    const auto drawing = machine_drawing(plan);
    INFO(size << " in main");
    REQUIRE(drawing);
    REQUIRE(drawing->chain);
    const ChainDrawing& chain = *drawing->chain;
    const double right = inches(chain.touch.right);
    const double up = inches(chain.touch.up);
    const double radius = inches(chain.radius);
    CHECK(std::hypot(right, up) == Approx(radius));
    const double leg_right = inches(chain.hook.right) - right;
    const double leg_up = inches(chain.hook.up) - up;
    CHECK(leg_right * right + leg_up * up == Approx(0.0).margin(1e-9));
    const double wrap = 2.0 * (std::numbers::pi - std::atan2(right, up));
    CHECK(2.0 * std::hypot(leg_right, leg_up) + radius * wrap == Approx(inches(plan.setup.chain->needed)));
  }
}

TEST_CASE("the strokes drawn are the marks on the bar", "[drawing]") {
  const Plan plan = plan_of(npt_job(0.75));
  const auto drawing = machine_drawing(plan);
  REQUIRE(drawing);
  REQUIRE(plan.marks);
  REQUIRE(plan.marks->at);
  CHECK(drawing->through == plan.marks->at->breakthrough);
  CHECK(drawing->full == plan.marks->at->full_width);
  CHECK(drawing->tap_stop == plan.makeup->tip_depth);
  CHECK(*drawing->full > *drawing->through);
  CHECK(drawing->standoff == plan.setup.machine->standoff);
}

Job pit_job(SoilClaim soil, double cover_feet) {
  Job job = npt_job(0.75);
  job.main.cover = cover_feet * units::foot;
  job.excavation.soil = soil;
  job.excavation.vibration = false;
  job.excavation.disturbed = false;
  job.excavation.protection = Protection::slope;
  return job;
}

TEST_CASE("the pit drawn is the pit dug", "[drawing]") {
  for (const SoilClaim soil : {SoilClaim::type_a, SoilClaim::type_b, SoilClaim::type_c}) {
    for (const double cover : {2.5, 4.0, 7.0, 15.0, 25.0}) {
      const Plan plan = plan_of(pit_job(soil, cover));
      const auto drawing = pit_drawing(plan);
      INFO("soil " << static_cast<int>(soil) << ", cover " << cover << " ft");
      REQUIRE(plan.excavation);
      REQUIRE(drawing);
      const PitPlan& pit = *plan.excavation;
      const double depth = inches(pit.pit.depth);
      CHECK(inches(drawing->ground - drawing->radius) == Approx(12.0 * cover));
      CHECK(inches(drawing->ground - drawing->far_foot.up) == Approx(depth));
      CHECK(drawing->near_foot.up == drawing->far_foot.up);
      CHECK(drawing->near_edge.up == drawing->ground);
      CHECK(inches(drawing->near_foot.right - drawing->far_foot.right) == Approx(inches(pit.pit.across)));
      CHECK(inches(drawing->near_edge.right - drawing->far_edge.right) == Approx(inches(pit.top.across)));
      CHECK(inches(-drawing->far_foot.right - drawing->radius) == Approx(inches(plan.rules->pit.room_far_side.value)));
      CHECK(inches(drawing->near_foot.right - drawing->radius) ==
            Approx(inches(plan.rules->pit.room_machine_side.value)));
      // Both walls run out as far as the slope says.
      CHECK(inches(drawing->far_foot.right - drawing->far_edge.right) == Approx(pit.pit.slope * depth));
      CHECK(inches(drawing->near_edge.right - drawing->near_foot.right) == Approx(pit.pit.slope * depth));
      CHECK(drawing->sloped == (pit.pit.slope > 0.0));
      CHECK_FALSE(drawing->shielded);
      // The heap holds what is dug, stands back from the edge, and ends where the strip ends.
      const double heap = 0.5 * inches(drawing->spoil_toe.right - drawing->spoil_heel.right) *
                          inches(drawing->spoil_top.up - drawing->ground);
      CHECK(heap * inches(pit.top.along) == Approx(pit.loose / units::in3));
      CHECK(inches(drawing->far_edge.right - drawing->spoil_toe.right) ==
            Approx(inches(plan.rules->pit.spoil_setback.value)));
      const Length middle = (drawing->far_edge.right + drawing->near_edge.right) / 2.0;
      CHECK(inches(middle - drawing->spoil_heel.right) == Approx(inches(pit.occupied)));
      REQUIRE(drawing->rails);
      CHECK(inches(*drawing->rails - drawing->ground) == Approx(inches(plan.rules->pit.ladder_extension.value)));
    }
  }
}

TEST_CASE("a shield stands between upright walls, and the pit turns over with the tap", "[drawing]") {
  Job job = pit_job(SoilClaim::type_c, 6.0);
  job.excavation.protection = Protection::shield;
  const auto shielded = pit_drawing(plan_of(job));
  REQUIRE(shielded);
  CHECK(shielded->shielded);
  CHECK_FALSE(shielded->sloped);
  CHECK(shielded->far_edge.right == shielded->far_foot.right);
  CHECK_FALSE(shielded->mirrored);

  job.service.clock = ClockPosition{9 * 60};
  CHECK(pit_drawing(plan_of(job))->mirrored);
}

TEST_CASE("a shallow pit over an empty main has no ladder", "[drawing]") {
  Plan plan = plan_of(pit_job(SoilClaim::type_b, 3.0));
  plan.job.main.pressurized = false;
  plan.excavation->ladder = false;
  CHECK_FALSE(pit_drawing(plan)->rails);
}

Job service_job(double flow) {
  Job job = npt_job(1.0);
  job.service.line.material = Tubing::polyethylene;
  job.service.line.length = 80.0 * units::foot;
  job.service.line.rise = -10.0 * units::foot;
  job.service.demand.flow = flow * units::gpm;
  return job;
}

TEST_CASE("the profile loses from part to part what the plan loses", "[drawing]") {
  for (const double flow : {2.0, 12.0, 30.0, 90.0}) {
    const Plan plan = plan_of(service_job(flow));
    const auto drawing = profile_drawing(plan);
    INFO(flow << " gpm");
    REQUIRE(plan.service);
    REQUIRE(drawing);
    const ServicePlan& service = *plan.service;
    REQUIRE(drawing->steps.size() == service.losses.size());
    double left = service.supply / units::psi;
    for (std::size_t i = 0; i < drawing->steps.size(); ++i) {
      CHECK(drawing->steps[i].part == service.losses[i].part);
      left -= service.losses[i].loss / units::psi;
      CHECK(drawing->steps[i].after / units::psi == Approx(left));
      CHECK(drawing->steps[i].after <= drawing->highest);
      CHECK(drawing->steps[i].after >= drawing->lowest);
    }
    CHECK(drawing->steps.back().after / units::psi == Approx(service.residual / units::psi));
    CHECK(drawing->supply == service.supply);
    CHECK(drawing->wanted == service.residual_wanted);
    CHECK(drawing->lowest <= Pressure());
    CHECK(drawing->highest >= drawing->supply);
    CHECK(drawing->highest >= drawing->wanted);
    REQUIRE(drawing->least);  // plastic tubing is bored under nominal where its wall is thick
    CHECK(*drawing->least == service.residual_least);
    CHECK(*drawing->least >= drawing->lowest);
  }
}

TEST_CASE("no facts of pit or service, no drawing of them", "[drawing]") {
  const Plan plan = plan_of(npt_job(0.75));
  CHECK_FALSE(pit_drawing(plan));
  CHECK_FALSE(profile_drawing(plan));
}

TEST_CASE("what is not known, and what is not cut, is not drawn", "[drawing]") {
  Job unknown = npt_job(0.75);
  unknown.machine.given = nullptr;
  const auto machine = machine_drawing(plan_of(unknown));
  REQUIRE(machine);
  CHECK_FALSE(machine->chain);
  CHECK_FALSE(machine->standoff);

  Plan no_diameter = plan_of(npt_job(0.75));
  no_diameter.main.od.reset();
  no_diameter.main.od_least.reset();
  CHECK_FALSE(section_drawing(no_diameter));
  CHECK_FALSE(machine_drawing(no_diameter));
  CHECK_FALSE(threads_drawing(no_diameter));

  Job sewage = npt_job(0.75);
  sewage.main.carries = Carries::sewage;
  const Plan refused = plan_of(sewage);
  REQUIRE(refused.verdict == Verdict::no_go);
  CHECK_FALSE(section_drawing(refused));
  CHECK_FALSE(threads_drawing(refused));
  CHECK_FALSE(along_drawing(refused));
  CHECK_FALSE(machine_drawing(refused));
  Job refused_pit = pit_job(SoilClaim::type_b, 5.0);
  refused_pit.main.carries = Carries::sewage;
  const Plan no_pit = plan_of(refused_pit);
  REQUIRE(no_pit.excavation);
  CHECK_FALSE(pit_drawing(no_pit));
}

}  // namespace
}  // namespace mainbore::report
