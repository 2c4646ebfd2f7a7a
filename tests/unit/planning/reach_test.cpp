// What the bar reaches, where round the pipe a tap stands, and sizes that nobody makes.
#include <algorithm>
#include <string>

#include "mainbore/finding_words.hpp"
#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/jobs.hpp"
#include "unit/planning/random_jobs.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

namespace {

constexpr int usual = 2000;

Job saddle_job() {
  Job job = sound_job();
  job.service.method = Method::saddle;
  return job;
}

std::shared_ptr<MachineProfile> machine_of(const Job& job) {
  return std::make_shared<MachineProfile>(*job.machine.given);
}

Nearby tap_at(double inches, std::optional<ClockPosition> clock) {
  Nearby tap;
  tap.what = NearbyThing::tap;
  tap.along = inches * units::inch;
  tap.clock = clock;
  return tap;
}

}  // namespace

TEST_CASE("a saddle tap goes only where the bar reaches through adapter, stop and saddle") {
  Job job = saddle_job();
  const Plan sound = plan_of(job);
  REQUIRE(sound.verdict == Verdict::go);
  REQUIRE(sound.setup.travel_needed);
  // Saddle 2, stop 3.5, adapter to cutter 2; the wall of 0.25 may read half as much again and a hundredth off; then a drill of
  // 1 in at 118 degrees (0.300), the drop of its flanks in a bore of 8.28 (0.030) and an eighth.
  CHECK(*sound.setup.travel_needed / units::inch == Approx(7.5 + 0.385 + 0.300 + 0.030 + 0.125).margin(0.002));

  SECTION("half an inch of travel") {
    auto machine = machine_of(job);
    machine->bar_travel = 0.5 * units::inch;
    job.machine.given = machine;
    CHECK(has(plan_of(job), FindingCode::machine_travel_short));
  }
  SECTION("each length that is not given is asked for by its path") {
    const auto asks_for = [&](std::string_view path) {
      const Plan plan = plan_of(job);
      const Finding* hold = find(plan, FindingCode::machine_reach_unknown);
      REQUIRE(hold != nullptr);
      CHECK(plan.verdict == Verdict::hold);
      CHECK(detail_of(*hold, UnitSystem::us).find(path) != std::string::npos);
      if (path != "machine.bar_travel") CHECK_FALSE(plan.setup.travel_needed);
    };
    SECTION("saddle") {
      job.service.saddle_height.reset();
      asks_for("service.saddle_height");
    }
    SECTION("stop") {
      job.service.stop_length.reset();
      asks_for("service.stop_length");
    }
    SECTION("adapter") {
      auto machine = machine_of(job);
      machine->adapter_standoff.reset();
      job.machine.given = machine;
      asks_for("machine.adapter_standoff");
    }
    SECTION("travel") {
      auto machine = machine_of(job);
      machine->bar_travel.reset();
      job.machine.given = machine;
      asks_for("machine.bar_travel");
    }
    SECTION("all of them, on a machine that nobody has named") {
      job.machine = {};
      job.service.stop_length.reset();
      job.service.saddle_height.reset();
      for (const std::string_view path :
           {"service.saddle_height", "service.stop_length", "machine.adapter_standoff", "machine.bar_travel"}) {
        asks_for(path);
      }
    }
  }
  SECTION("what is known already may be too much") {
    job.service.saddle_height = 20.0 * units::inch;
    job.service.stop_length.reset();
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::machine_travel_short));
    CHECK(has(plan, FindingCode::machine_reach_unknown));
  }
}

TEST_CASE("the valve must shut behind what is on the bar, and the stop must get where it goes") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(0.75);
  job.service.method = Method::direct;
  auto machine = machine_of(job);
  machine->valve_height = 5.0 * units::inch;
  job.machine.given = machine;
  REQUIRE(plan_of(job).verdict == Verdict::go);
  SECTION("a tool that hangs in the valve") {
    machine->valve_height = 6.5 * units::inch;
    CHECK(has(plan_of(job), FindingCode::machine_valve_not_clear));
    CHECK(plan_of(job).verdict == Verdict::hold);
  }
  SECTION("a stop on its insertion tool longer than the tool that cut") {
    job.tool.length = 6.0 * units::inch;
    job.tool.insertion_length = 6.9 * units::inch;
    CHECK(plan_of(job).verdict == Verdict::go);
    job.tool.insertion_length = 7.1 * units::inch;
    CHECK(has(plan_of(job), FindingCode::machine_valve_not_clear));
  }
  SECTION("an insertion tool so short that the bar ends before the stop is home") {
    job.tool.length = 9.0 * units::inch;
    job.tool.insertion_length = 5.0 * units::inch;
    CHECK(plan_of(job).verdict == Verdict::go);
    job.tool.insertion_length = 3.0 * units::inch;
    CHECK(has(plan_of(job), FindingCode::machine_travel_short));
  }
}

TEST_CASE("a class that is not known may be the thickest that the bar must pass") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(0.75);
  job.service.method = Method::direct;
  job.main.class_name = "Class 56";
  auto machine = machine_of(job);
  const Plan thick = plan_of(job);
  machine->bar_travel = *thick.setup.travel_needed - 0.01 * units::inch;
  job.machine.given = machine;
  REQUIRE(has(plan_of(job), FindingCode::machine_travel_short));
  job.main.class_name.clear();
  CHECK(has(plan_of(job), FindingCode::machine_travel_short));
}

TEST_CASE("less travel, more to reach through, or a length left out never betters a verdict") {
  WholeJobs random(31);
  const int jobs = random_jobs(usual);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    if (!job.machine.given) job.machine.given = truck_machine();
    auto whole = machine_of(job);
    whole->bar_travel = random.real(5, 14) * units::inch;
    whole->adapter_standoff = random.real(0.5, 6) * units::inch;
    job.machine.given = whole;
    job.service.saddle_height = random.real(0.5, 4) * units::inch;
    job.service.stop_length = random.real(1, 8) * units::inch;
    if (random.chance(30)) job.tool = {random.real(2, 8) * units::inch, {}, random.real(2, 8) * units::inch};
    const auto with = [&](auto change, const char* what) {
      Job worse = job;
      auto machine = machine_of(job);
      change(worse, *machine);
      worse.machine.given = machine;
      never_better(job, worse, what);
    };
    with([&](Job&, MachineProfile& m) { m.bar_travel = random.real(0.05, 1) * *m.bar_travel; }, "less travel");
    with([&](Job&, MachineProfile& m) { m.adapter_standoff = *m.adapter_standoff + random.real(0, 5) * units::inch; },
         "longer adapter");
    with([&](Job& j,
             MachineProfile&) { j.service.saddle_height = *j.service.saddle_height + random.real(0, 5) * units::inch; },
         "higher saddle");
    with([&](Job& j,
             MachineProfile&) { j.service.stop_length = *j.service.stop_length + random.real(0, 5) * units::inch; },
         "longer stop");
    with([&](Job&, MachineProfile& m) { m.bar_travel.reset(); }, "travel not given");
    with([&](Job&, MachineProfile& m) { m.adapter_standoff.reset(); }, "adapter not given");
    with([&](Job& j, MachineProfile&) { j.service.saddle_height.reset(); }, "saddle not given");
    with([&](Job& j, MachineProfile&) { j.service.stop_length.reset(); }, "stop not given");
  }
}

TEST_CASE("taps near each other stand apart round the pipe") {
  Job job = sound_job();
  constexpr ClockPosition half_past_one{90};
  constexpr ClockPosition half_past_ten{630};
  SECTION("one at the usual place: the other side of the crown") {
    job.nearby = {tap_at(20, half_past_one)};
    const Plan plan = plan_of(job);
    CHECK(plan.location.clock == half_past_ten);
    CHECK(plan.verdict == Verdict::go);
  }
  SECTION("one on either side: clear of both") {
    job.nearby = {tap_at(20, half_past_one), tap_at(-20, half_past_ten)};
    const Plan plan = plan_of(job);
    CHECK(plan.location.clock != half_past_one);
    CHECK(plan.location.clock != half_past_ten);
    CHECK(plan.location.clock == ClockPosition{150});  // 2:30: an hour off, and within the rule
    CHECK(plan.verdict == Verdict::go);
  }
  SECTION("asked for in line with one: turned away from it, as a hold") {
    job.service.clock = half_past_one;
    job.nearby = {tap_at(21.6, half_past_one)};
    const Plan plan = plan_of(job);
    REQUIRE(find(plan, FindingCode::place_stagger) != nullptr);
    CHECK(plan.verdict == Verdict::hold);
    CHECK(plan.location.clock == half_past_ten);
    CHECK(fix_of(*find(plan, FindingCode::place_stagger), UnitSystem::us).find("10:30") != std::string::npos);
  }
  SECTION("five minutes of the clock apart is in line all the same") {
    job.service.clock = half_past_one;
    job.nearby = {tap_at(20, ClockPosition{95})};
    CHECK(has(plan_of(job), FindingCode::place_stagger));
  }
  SECTION("where nobody knows the place of one, no place is clear of it") {
    job.nearby = {tap_at(20, std::nullopt)};
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::hold);
    REQUIRE(find(plan, FindingCode::place_stagger) != nullptr);
    CHECK(fix_of(*find(plan, FindingCode::place_stagger), UnitSystem::us).find("clock position") != std::string::npos);
  }
  SECTION("taps all round: held, with how far to move") {
    job.nearby.emplace();
    for (int hour = 0; hour < 12; ++hour) job.nearby->push_back(tap_at(20, ClockPosition{60 * hour}));
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::hold);
    CHECK(has(plan, FindingCode::place_stagger));
  }
  SECTION("far enough along, any place serves") {
    job.nearby = {tap_at(24.1, std::nullopt)};
    CHECK(plan_of(job).verdict == Verdict::go);
  }
}

TEST_CASE("a sleeve's own place round the pipe is judged") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(6);
  SECTION("level by itself") {
    const Plan plan = plan_of(job);
    REQUIRE(plan.method.kind == Method::sleeve);
    CHECK(plan.location.clock == ClockPosition{180});
    CHECK_FALSE(has(plan, FindingCode::place_clock));
  }
  SECTION("beside another level outlet: on the other side") {
    job.nearby = {tap_at(20, ClockPosition{180})};
    CHECK(plan_of(job).location.clock == ClockPosition{540});
  }
  SECTION("under a utility that taps higher up") {
    const Rules rules = rules_of(R"({"place": {"lowest_elevation": "10 deg"}})");
    const Plan plan = plan_under(job, rules);
    REQUIRE(find(plan, FindingCode::place_clock) != nullptr);
    CHECK(find(plan, FindingCode::place_clock)->value->base() == Approx(0));
    CHECK(plan.location.clock.elevation_degrees() >= 10);
  }
}

TEST_CASE("a nearer tap, or one whose place nobody knows, never betters a verdict") {
  WholeJobs random(32);
  const int jobs = random_jobs(usual);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    if (!job.nearby) job.nearby.emplace();
    const double away = random.real(0, 60) * (random.chance(50) ? 1 : -1);
    job.nearby = {tap_at(away, ClockPosition{static_cast<int>(5 * random.below(144))})};
    Job unknown = job;
    unknown.nearby->back().clock.reset();
    never_better(job, unknown, "clock not known");
    Job nearer = job;
    nearer.nearby->back().along = random.real(0, 1) * nearer.nearby->back().along;
    never_better(job, nearer, "nearer tap");
    Job more = job;
    more.nearby->push_back(tap_at(random.real(-60, 60), ClockPosition{static_cast<int>(5 * random.below(144))}));
    never_better(job, more, "one more tap");
  }
}

TEST_CASE("no plan that goes stands in line with a tap near it") {
  WholeJobs random(33);
  const Rules& rules = default_rules();
  const int jobs = random_jobs(usual);
  int staggered = 0;
  for (int i = 0; i < jobs; ++i) {
    Job job = sound_job();
    if (random.chance(30)) job.service.size = NominalSize::inches(4);
    if (random.chance(50)) job.service.clock = ClockPosition{static_cast<int>(5 * random.below(144))};
    for (std::size_t taps = random.below(4); taps > 0; --taps) {
      job.nearby->push_back(tap_at(random.real(18, 30) * (random.chance(50) ? 1 : -1),
                                   ClockPosition{static_cast<int>(5 * random.below(144))}));
    }
    const Plan plan = plan_of(job);
    const bool held = has(plan, FindingCode::place_stagger);
    for (const Nearby& tap : *job.nearby) {
      if (abs(tap.along - plan.location.shift) > rules.place.stagger_within.value) continue;
      const int minutes = std::abs(tap.clock->minutes - plan.location.clock.minutes);
      const double degrees = 0.5 * std::min(minutes, 720 - minutes);
      INFO(plan.location.clock.label() << " beside " << tap.clock->label());
      REQUIRE((held || degrees >= rules.place.stagger_apart.value - 1e-6));
      ++staggered;
    }
    const double elevation = plan.location.clock.elevation_degrees();
    REQUIRE(elevation >= rules.place.lowest_elevation.value);
    REQUIRE(elevation <= rules.place.highest_elevation.value);
  }
  CHECK(staggered > jobs / 10);
}

TEST_CASE("a cover of nothing is a cover that nobody measured") {
  Job job = sound_job();
  job.main.cover = Length();
  const Plan bare = plan_of(job);
  for (const Caution& caution : cautions(bare, UnitSystem::us)) {
    CHECK(caution.text.view().find("goes at least") == std::string::npos);
  }
  job.excavation.located = true;
  const Plan plan = plan_of(job);
  CHECK_FALSE(plan.excavation.has_value());
  CHECK(has(plan, FindingCode::pit_not_checked));
  const auto missing = not_checked(plan);
  const auto pit =
      std::find_if(missing.begin(), missing.end(), [](const NotChecked& n) { return n.what == "the pit"; });
  REQUIRE(pit != missing.end());
  CHECK(pit->give == "main.cover, excavation.soil");
  const Rules rules = rules_of(R"({"place": {"least_cover": "3 ft"}})");
  CHECK(has(plan_under(job, rules), FindingCode::place_cover_unknown));
  // Where the job says that it was measured, it is one.
  job.main.cover_measured = true;
  CHECK(has(plan_under(job, rules), FindingCode::place_cover));
  const Plan measured = plan_of(job);
  REQUIRE(measured.excavation);
  CHECK(measured.excavation->cover == Length());
  job.main.cover.reset();
  CHECK_FALSE(plan_of(job).excavation);
}

TEST_CASE("a tap in a size that no thread is made in is held, with the sizes that may be meant") {
  struct Row {
    double inches;
    Method method;
    const char* meant;
  };
  const Row row = GENERATE(Row{0.6, Method::direct, "1/2 in or 5/8 in"}, Row{0.8, Method::direct, "3/4 in or 1 in"},
                           Row{0.9, Method::direct, "3/4 in or 1 in"}, Row{0.87, Method::direct, "3/4 in or 1 in"},
                           Row{0.8, Method::saddle, "3/4 in or 1 in"}, Row{1.1, Method::saddle, "1 in or 1-1/4 in"},
                           Row{0.4, Method::saddle, "1/2 in may"});
  Job job = sound_job();
  job.service.size = NominalSize::inches(row.inches);
  job.service.method = row.method;
  auto machine = machine_of(job);
  machine->smallest_tap = NominalSize::inches(0.25);
  job.machine.given = machine;
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::hold);
  REQUIRE(find(plan, FindingCode::service_size_not_made) != nullptr);
  CHECK(fix_of(*find(plan, FindingCode::service_size_not_made), UnitSystem::us).find(row.meant) != std::string::npos);
}

TEST_CASE("no size that nobody makes is better than the listed ones beside it") {
  WholeJobs random(34);
  const Catalog& catalog = Catalog::builtin();
  constexpr std::array made = {0.5, 0.625, 0.75, 1.0, 1.25, 1.5, 2.0};
  const int jobs = random_jobs(usual);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    job.service.thread = ThreadStandard::awwa_taper;
    if (job.machine.given) {
      auto machine = machine_of(job);
      machine->smallest_tap = NominalSize::inches(0.25);
      job.machine.given = machine;
    }
    const std::size_t below = random.below(made.size() - 1);
    const double between = made[below] + random.real(0.02, 0.98) * (made[below + 1] - made[below]);
    const auto of_tap = [&](double inches) {
      Job sized = job;
      sized.service.size = NominalSize::inches(inches);
      if (sized.service.line.size) sized.service.line.size = NominalSize::inches(made[below]);
      else if (sized.service.line.material) sized.service.line.size = NominalSize::inches(made[below]);
      return sized;
    };
    Job odd = of_tap(between);
    REQUIRE(plan_of(odd).verdict != Verdict::go);
    never_better(of_tap(made[below]), odd, "a tap that nobody makes");
    // A line, and a meter.
    Job listed = of_tap(made[below]);
    Job line = listed;
    line.service.line.size = NominalSize::inches(random.chance(20) ? random.real(3, 60) : between);
    REQUIRE(plan_of(line).verdict != Verdict::go);
    never_better(listed, line, "a line that nobody makes");
    Job meter = listed;
    meter.service.meter = NominalSize::inches(random.chance(20) ? random.real(17, 60) : between);
    if (catalog.service_tables().meter(*meter.service.meter) != nullptr) continue;
    REQUIRE(plan_of(meter).verdict != Verdict::go);
  }
}

TEST_CASE("no main of a size that nobody makes goes") {
  WholeJobs random(35);
  const Catalog& catalog = Catalog::builtin();
  const int jobs = random_jobs(usual);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    job.main.size = NominalSize::inches(random.real(1, 100));
    if (!catalog.pipes(*job.main.material, *job.main.size).empty()) continue;
    INFO(name_of(*job.main.material) << " " << job.main.size->label());
    REQUIRE(plan_of(job).verdict != Verdict::go);
  }
}

TEST_CASE("what was given is not asked for again") {
  WholeJobs random(36);
  const int jobs = random_jobs(usual);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    if (random.chance(20)) job.service.line.size = NominalSize::inches(random.real(0.3, 50));
    const Plan plan = plan_of(job);
    for (const NotChecked& part : not_checked(plan)) {
      INFO(part.what << ": " << part.give);
      const auto asks = [&](std::string_view path) { return part.give.find(path) != std::string::npos; };
      REQUIRE_FALSE((asks("service.line.material") && job.service.line.material.has_value()));
      REQUIRE_FALSE((asks("service.line.length") && job.service.line.length.has_value()));
      REQUIRE_FALSE((asks("service.demand") && (job.service.demand.flow || job.service.demand.fixture_units)));
      REQUIRE_FALSE((asks("main.cover") && job.main.cover.has_value()));
      REQUIRE_FALSE((asks("excavation.soil") && job.excavation.soil.has_value()));
      // All of it given, and nothing worked out: then a hold says why.
      if (part.what == "water for the customer" && part.give == "what its holds ask for") {
        REQUIRE(plan.verdict != Verdict::go);
      }
    }
  }
}

// FED-STD-H28/2B on the rings of a 1 in NPT tap: A_s = 0.96188 pi L (E1 - h) and A_n = 0.96188 pi L (E1 + h), E1 1.23863
// and h 0.8/11.5 in (ASME B1.20.1); cast leaded brass shears at 25 000 psi, half of it counted.
TEST_CASE("a thread strips where it is weaker, in the stop or in the main") {
  Job job = sound_job();
  job.service.method = Method::direct;
  job.service.thread = ThreadStandard::npt;
  job.main.wall = 0.26 * units::inch;
  const Plan plan = plan_of(job);
  REQUIRE(plan.engagement);
  REQUIRE(plan.engagement->strip_load);
  const double length = plan.engagement->at_least->complete_ring_length / units::inch;
  const double brass = 0.5 * 25000 * 0.96188 * 3.14159265 * length * (1.23863 - 0.8 / 11.5);
  CHECK(*plan.engagement->strip_load / units::lbf == Approx(brass).epsilon(1e-4));
}

TEST_CASE("where the engineer has the word, no cut is written down before it is given") {
  Job job = sound_job();
  job.main.material = Material::concrete_cylinder;
  job.main.size = NominalSize::inches(24);
  job.main.class_name.clear();
  job.main.rating = 150.0 * units::psi;
  job.main.od = 30.0 * units::inch;
  job.main.wall = 2.5 * units::inch;
  const Plan plan = plan_of(job);
  REQUIRE(plan.method.kind == Method::saddle);
  REQUIRE(has(plan, FindingCode::saddle_by_engineer));
  const auto steps = procedure(plan, UnitSystem::us);
  REQUIRE_FALSE(steps.empty());
  CHECK(steps.back().id == "engineer.call");
  for (const Step& step : steps) {
    INFO(step.id);
    CHECK_FALSE(step.id.starts_with("cut."));
    CHECK_FALSE(step.id.starts_with("machine."));
    CHECK_FALSE(step.id.starts_with("connect."));
  }
}
