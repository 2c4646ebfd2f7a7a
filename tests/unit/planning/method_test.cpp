#include "mainbore/finding_words.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

TEST_CASE("everything known and sound is a go, by direct tap") {
  const Plan plan = plan_of(sound_job());
  for (const Finding& finding : plan.findings) INFO(name_of(finding.code));
  CHECK(plan.verdict == Verdict::go);
  CHECK(plan.method.kind == Method::direct);
  CHECK(plan.method.thread == ThreadStandard::awwa_taper);
  // The AWWA taper's count is a note, and no depth is printed for it.
  CHECK(has(plan, FindingCode::direct_recalled_thread));
  CHECK(has(plan, FindingCode::makeup_by_trial));
  CHECK_FALSE(plan.makeup);
}

TEST_CASE("smaller taps are named beside one that is over the largest, where rules and barrel allow them") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(1.25);
  const Plan plan = plan_of(job);
  REQUIRE(rejection(plan, Method::direct) != nullptr);
  REQUIRE(plan.method.smaller_taps);
  const SmallerTaps& taps = *plan.method.smaller_taps;
  // (1.25 / 1) ^ 2.5 is 1.75: two of 1 in, 18 in apart and 2 ft clear of each joint.
  CHECK(taps.count == 2);
  CHECK(taps.tap == NominalSize::inches(1));
  CHECK(taps.spacing / units::inch == Approx(18.0));
  CHECK(taps.barrel / units::inch == Approx(66.0));

  SECTION("no room between the joints: none") {
    job.nearby = {Nearby{NearbyThing::joint, -2.5 * units::foot, {}, {}},
                  Nearby{NearbyThing::joint, 2.5 * units::foot, {}, {}}};
    CHECK_FALSE(plan_of(job).method.smaller_taps);
  }
  SECTION("of a verdict alone, none") {
    CHECK_FALSE(plan_under(job, default_rules(), PlanDepth::verdict).method.smaller_taps);
  }
}

TEST_CASE("threads that the utility requires hold where a recalled thread falls short of them") {
  // 8-inch pressure class 350, 0.25 in of wall: 3/4 in AWWA taper, 14 threads an inch.
  const auto under = [](const std::string& rules, Job job) { return plan_under(std::move(job), rules_of(rules)); };
  const std::string three = R"({"direct": {"required_threads": {"value": "3 threads", "reference": "4.2"}}})";
  Job job = sound_job();
  job.service.method = Method::direct;
  const Plan by_default = plan_of(job);
  REQUIRE(by_default.engagement->at_nominal.complete_threads < 3.0);
  CHECK(find(by_default, FindingCode::direct_recalled_thread)->severity == Severity::note);
  CHECK_FALSE(by_default.engagement->judged);

  SECTION("too few even at the wall given: a hold, and never a refusal") {
    const Plan plan = under(three, job);
    CHECK(plan.verdict == Verdict::hold);
    CHECK(plan.method.kind == Method::direct);
    const Finding* finding = find(plan, FindingCode::direct_recalled_thread);
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::hold);
    CHECK(finding->limit == Measure(3.0, Kind::threads));
    CHECK(fix_of(*finding, UnitSystem::us).starts_with("Gauge the wall at the tap: at 0."));
  }
  SECTION("a wall that holds them clears it") {
    job.main.wall = 0.35 * units::inch;
    const Plan plan = under(three, job);
    CHECK(plan.verdict == Verdict::go);
    CHECK_FALSE(has(plan, FindingCode::direct_recalled_thread));
  }
  SECTION("a saddle that needs no word is taken where no method was asked for") {
    job.service.method.reset();
    const Plan plan = under(three, job);
    CHECK(plan.verdict == Verdict::go);
    CHECK(plan.method.kind == Method::saddle);
  }
}

TEST_CASE("pipe threads are counted in the wall") {
  Job job = sound_job();
  job.main.size = NominalSize::inches(6);
  job.service.thread = ThreadStandard::npt;

  SECTION("enough at nominal but not at the least wall: held, with the reading that clears it") {
    job.service.method = Method::direct;
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::hold);
    CHECK(plan.method.kind == Method::direct);
    const Finding* finding = find(plan, FindingCode::direct_thin_wall);
    REQUIRE(finding != nullptr);
    // 2 threads at 11.5 per inch and a drop of 0.0638 in, in the smallest such pipe, 6.84 in: 0.2377 in.
    CHECK(finding->limit->base() == Approx(0.2377).margin(0.0001));
    CHECK(plan.engagement->at_nominal.complete_threads == Approx(2.148).margin(0.001));
    CHECK(plan.engagement->at_least->complete_threads == Approx(1.5665).margin(0.001));
  }
  SECTION("a saddle that needs no reading is better than a direct tap that does") {
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::go);
    CHECK(plan.method.kind == Method::saddle);
    REQUIRE(rejection(plan, Method::direct) != nullptr);
    CHECK(rejection(plan, Method::direct)->why.code == FindingCode::direct_thin_wall);
  }
  SECTION("the gauge reads enough: direct") {
    job.main.wall = 0.25 * units::inch;
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::go);
    CHECK(plan.method.kind == Method::direct);
    REQUIRE(plan.makeup);
    // 1 NPT, two wrench turns, two threads showing: 0.0650 in short of gauge.
    CHECK(plan.makeup->makeup.stop_past_gauge / units::inch == Approx(-0.0650).margin(0.0001));
    // The brass of the stop shears before ductile iron does. ASME B1.20.1: E1 1.23863 in, h 0.06957 in, 11.5 threads an
    // inch; FED-STD-H28/2B: pi n K (1/(2n) + 0.57735 h) = 3.533 in2 an inch of rings; 25,000 psi, half of it counted.
    REQUIRE(plan.engagement->strip_load);
    CHECK(
        *plan.engagement->strip_load / units::lbf ==
        Approx(0.5 * 25000.0 * 3.533 * (plan.engagement->at_least->complete_ring_length / units::inch)).epsilon(0.001));
  }
  SECTION("too few even at nominal: refused") {
    job.main.size = NominalSize::inches(3);
    job.service.size = NominalSize::inches(0.75);
    job.main.wall = 0.21 * units::inch;  // n = 14 (0.21 - 0.0709) = 1.95
    const Plan plan = plan_of(job);
    REQUIRE(rejection(plan, Method::direct) != nullptr);
    CHECK(rejection(plan, Method::direct)->why.code == FindingCode::direct_few_threads);
    CHECK(plan.method.kind == Method::saddle);
  }
}

TEST_CASE("a tap over the maximum goes to a saddle, and far over it to a sleeve") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(2);
  const Plan saddle = plan_of(job);
  CHECK(saddle.method.kind == Method::saddle);
  CHECK(saddle.verdict == Verdict::go);
  CHECK(rejection(saddle, Method::direct)->why.code == FindingCode::direct_over_maximum);

  job.service.size = NominalSize::inches(4);
  const Plan sleeve = plan_of(job);
  CHECK(sleeve.method.kind == Method::sleeve);
  CHECK(sleeve.verdict == Verdict::hold);
  CHECK(has(sleeve, FindingCode::sleeve_to_be_chosen));
}

TEST_CASE("a service as large as the main is not a tap") {
  Job job = sound_job();
  job.service.size = job.main.size;
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::no_go);
  CHECK(plan.method.kind == Method::none);
  CHECK(has(plan, FindingCode::service_not_smaller));
}

TEST_CASE("materials that are never tapped directly go to a saddle") {
  for (const Material material : {Material::pvco, Material::polyethylene, Material::asbestos_cement, Material::steel}) {
    Job job = sound_job();
    job.main.material = material;
    job.main.class_name.clear();
    job.main.od = std::nullopt;
    const Plan plan = plan_of(job);
    INFO(name_of(material));
    CHECK(plan.method.kind != Method::direct);
    REQUIRE(rejection(plan, Method::direct) != nullptr);
    CHECK(rejection(plan, Method::direct)->why.code == FindingCode::direct_not_allowed);
  }
}

TEST_CASE("PVC is tapped directly only as its guidance allows") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 18";

  SECTION("a straight length, in the temperature window, with the corporation taper") {
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::go);
    CHECK(plan.method.kind == Method::direct);
  }
  SECTION("a bent length") {
    job.main.curved = true;
    const Plan plan = plan_of(job);
    CHECK(plan.method.kind == Method::saddle);
    CHECK(rejection(plan, Method::direct)->why.code == FindingCode::main_curved);
  }
  SECTION("pipe thread") {
    job.service.thread = ThreadStandard::npt;
    CHECK(plan_of(job).method.kind == Method::saddle);
  }
  SECTION("thin pipe, small pipe, large pipe, other diameters") {
    job.main.class_name = "C900 DR 25";
    CHECK(plan_of(job).method.kind == Method::saddle);
    job.main.class_name = "C900 DR 18";
    job.main.size = NominalSize::inches(4);
    CHECK(plan_of(job).method.kind == Method::saddle);
    job.main.size = NominalSize::inches(16);
    CHECK(plan_of(job).method.kind == Method::saddle);
    job.main.size = NominalSize::inches(8);
    job.main.class_name = "SDR 21";
    CHECK(plan_of(job).method.kind == Method::saddle);
  }
  SECTION("too warm for a wet tap: held when asked for") {
    job.main.temperature = Temperature::fahrenheit(95);
    job.service.method = Method::direct;
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::hold);
    CHECK(has(plan, FindingCode::main_temperature_outside));
  }
}

TEST_CASE("what was asked is planned where it can be, and said where it cannot") {
  Job job = sound_job();
  job.service.method = Method::saddle;
  CHECK(plan_of(job).method.kind == Method::saddle);
  CHECK(plan_of(job).verdict == Verdict::go);

  job.service.method = Method::direct;
  job.service.size = NominalSize::inches(2);
  const Plan plan = plan_of(job);
  CHECK(plan.method.kind == Method::saddle);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(has(plan, FindingCode::method_not_as_asked));
}

TEST_CASE("anything but known water is no-go") {
  Job job = sound_job();
  for (const Carries carries : {Carries::unknown, Carries::reclaimed_water, Carries::gas, Carries::sewage}) {
    job.main.carries = carries;
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::no_go);
    CHECK(plan.method.kind == Method::none);
  }
  job.main.carries.reset();
  CHECK(plan_of(job).verdict == Verdict::hold);
}

TEST_CASE("a small main is not cut in half") {
  Job job = sound_job();
  job.main.material = Material::steel;
  job.main.size = NominalSize::inches(3);
  job.main.class_name.clear();
  job.service.size = NominalSize::inches(2);
  const Plan plan = plan_of(job);
  REQUIRE(rejection(plan, Method::saddle) != nullptr);
  CHECK(rejection(plan, Method::saddle)->why.code == FindingCode::saddle_hole_too_large);
}

TEST_CASE("small corporation threads are counted by figures of their own") {
  Job job = sound_job();
  job.main.material = Material::cast_iron;
  job.main.size = NominalSize::inches(6);
  job.main.class_name = "Class B";
  job.service.method = Method::direct;
  double wider = 0.0;
  for (const double tap : {0.5, 0.625, 0.75}) {
    job.service.size = NominalSize::inches(tap);
    const Plan plan = plan_of(job);
    INFO(tap);
    CHECK(plan.verdict == Verdict::hold);
    CHECK(has(plan, FindingCode::main_wall_unmeasured));
    CHECK_FALSE(has(plan, FindingCode::direct_thread_unknown));
    CHECK_FALSE(plan.makeup);
    CHECK(plan.method.hole.value() / units::inch > wider);
    wider = plan.method.hole.value() / units::inch;
  }
}

// Nothing is listed of a 5/8 pipe thread: it is judged as the next larger one, never waved through.
TEST_CASE("a thread without listed dimensions is judged all the same") {
  Job job = sound_job();
  job.main.material = Material::cast_iron;
  job.main.size = NominalSize::inches(6);
  job.main.class_name = "Class B";
  job.service.size = NominalSize::inches(0.625);
  job.service.thread = ThreadStandard::npt;
  job.service.method = Method::direct;
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(has(plan, FindingCode::main_wall_unmeasured));
  CHECK(has(plan, FindingCode::direct_thread_unknown));
  CHECK_FALSE(plan.makeup);
}

TEST_CASE("a saddle's bands need metal as well: rusting mains are gauged first") {
  for (const Material material : {Material::cast_iron, Material::steel, Material::galvanized_steel}) {
    Job job = sound_job();
    job.main.material = material;
    job.main.size = NominalSize::inches(4);
    job.main.class_name.clear();
    job.service.size = NominalSize::inches(0.75);
    job.service.method = Method::saddle;
    job.main.pressure = 40.0 * units::psi;
    INFO(name_of(material));
    CHECK(has(plan_of(job), FindingCode::main_wall_unmeasured));
    CHECK(plan_of(job).verdict == Verdict::hold);
  }
}

TEST_CASE("a plastic main too cold or too warm is not wet-tapped by any cutter") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 25";
  for (const double degrees : {20.0, 95.0}) {
    job.main.temperature = Temperature::fahrenheit(degrees);
    const Plan plan = plan_of(job);
    CHECK(plan.method.kind == Method::saddle);
    CHECK(has(plan, FindingCode::main_temperature_outside));
  }
}

// Dry the window is wider: 0 to 100 degF, published for PVC.
TEST_CASE("a plastic main too cold or too warm is not tapped dry either") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 25";
  job.main.pressure = 40.0 * units::psi;
  job.main.pressurized = false;
  const auto outside = [&](double degrees) {
    job.main.temperature = Temperature::fahrenheit(degrees);
    return has(plan_of(job), FindingCode::main_temperature_outside);
  };
  CHECK_FALSE(outside(25));
  CHECK_FALSE(outside(0));
  CHECK(outside(-1));
  CHECK_FALSE(outside(100));
  CHECK(outside(101));
  CHECK(plan_of(job).verdict == Verdict::hold);
  job.main.temperature.reset();
  const Plan plan = plan_of(job);
  const Finding* finding = find(plan, FindingCode::main_temperature_unmeasured);
  REQUIRE(finding != nullptr);
  CHECK(std::get<Measure>(finding->details[1]).base() == Catch::Approx(Measure(Temperature::fahrenheit(100)).base()));
}
