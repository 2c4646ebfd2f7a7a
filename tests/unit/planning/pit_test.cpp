// The pit, through the planner: every threshold at its boundary.
#include <random>

#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;
using excavation::ProtectiveSystem;
using excavation::SoilType;

namespace {

// Ground that nothing speaks against, located and looked at, with a chosen protective system.
Job in_good_ground(SoilClaim soil) {
  Job job = sound_job();
  job.main.cover = 3.0 * units::foot;
  ExcavationFacts& facts = job.excavation;
  facts.soil = soil;
  facts.disturbed = false;
  facts.vibration = false;
  facts.fissured = false;
  facts.finding = CaveInSign::no_sign;
  facts.protection = Protection::slope;
  facts.hazard = false;
  facts.located = true;
  facts.open_for = 8.0 * units::hour;
  return job;
}

// The same job with the cover that gives a depth.
Job with_depth(Job job, double feet) {
  job.main.cover = 1.0 * units::foot;
  const Length below_and_main = plan_of(job).excavation->pit.depth - *job.main.cover;
  job.main.cover = feet * units::foot - below_and_main;
  return job;
}

Plan at_depth(const Job& job, double feet) { return plan_of(with_depth(job, feet)); }

SoilClaim claim_named(const std::string& name) {
  if (name == "type_a") return SoilClaim::type_a;
  if (name == "type_b") return SoilClaim::type_b;
  if (name == "type_c") return SoilClaim::type_c;
  return SoilClaim::stable_rock;
}

}  // namespace

TEST_CASE("duties and slopes change exactly at their depths") {
  const ReferenceTable table("excavation_thresholds.csv");
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    Job job = in_good_ground(claim_named(row.text("soil")));
    job.excavation.open_for = row.number("open_h") * units::hour;
    job.excavation.hazard = row.text("hazard") == "yes";
    job.excavation.finding.reset();
    if (row.text("finding") == "no_sign") job.excavation.finding = CaveInSign::no_sign;
    if (row.text("finding") == "sign") job.excavation.finding = CaveInSign::sign;
    if (row.has("spoil_ft")) job.excavation.spoil_distance = row.number("spoil_ft") * units::foot;
    const Plan plan = at_depth(job, row.number("depth_ft"));
    REQUIRE(plan.excavation);
    const PitPlan& pit = *plan.excavation;
    CHECK(pit.ladder == (row.text("egress") == "yes"));
    CHECK(has(plan, FindingCode::pit_egress) == (row.text("egress") == "yes"));
    CHECK(pit.atmosphere_test == (row.text("atmosphere") == "yes"));
    CHECK(has(plan, FindingCode::pit_atmosphere) == (row.text("atmosphere") == "yes"));
    CHECK(has(plan, FindingCode::pit_protective_system) == (row.text("system") == "yes"));
    CHECK(has(plan, FindingCode::pit_not_examined) == (row.text("system") == "finding"));
    CHECK(pit.engineer_design == (row.text("engineer") == "yes"));
    CHECK(has(plan, FindingCode::pit_engineer) == (row.text("engineer") == "yes"));
    CHECK(has(plan, FindingCode::pit_spoil_too_near) == (row.text("spoil_too_near") == "yes"));
    if (row.text("slope") == "none") {
      CHECK_FALSE(pit.slope);
    } else {
      REQUIRE(pit.slope);
      CHECK(pit.slope->run == Approx(row.number("slope")));
    }
  }
}

TEST_CASE("a depth from meters is at the limit when it is the limit") {
  Job job = in_good_ground(SoilClaim::type_b);
  CHECK(plan_of(with_depth(job, 1.2192 * (units::meter / units::foot))).excavation->ladder);
  CHECK_FALSE(at_depth(job, 3.99).excavation->ladder);
}

TEST_CASE("strength parts the soil types at 1.50 and 0.50 tsf") {
  const auto type_at = [](double tsf) {
    Job job = in_good_ground(SoilClaim::type_a);
    job.excavation.soil.reset();
    job.excavation.strength = tsf * units::tsf;
    return plan_of(job).excavation->soil.type;
  };
  CHECK(type_at(1.50) == SoilType::type_a);
  CHECK(type_at(1.49) == SoilType::type_b);
  CHECK(type_at(0.51) == SoilType::type_b);
  CHECK(type_at(0.50) == SoilType::type_c);
}

TEST_CASE("over a main the ground was dug before, and a street shakes, until somebody denies it") {
  Job job = in_good_ground(SoilClaim::type_a);
  CHECK(plan_of(job).excavation->soil.type == SoilType::type_a);
  CHECK_FALSE(has(plan_of(job), FindingCode::pit_soil_not_type_a));
  for (std::optional<bool> ExcavationFacts::*fact :
       {&ExcavationFacts::disturbed, &ExcavationFacts::vibration, &ExcavationFacts::fissured}) {
    Job silent = job;
    (silent.excavation.*fact).reset();
    const Plan plan = plan_of(silent);
    CHECK(plan.excavation->soil.type == SoilType::type_b);
    CHECK(severity_of(plan, FindingCode::pit_soil_not_type_a) == Severity::caution);
  }
  Job wet = job;
  wet.excavation.water = PitWater::seeping;
  CHECK(plan_of(wet).excavation->soil.type == SoilType::type_c);
  Job unclassified = job;
  unclassified.excavation.soil.reset();
  CHECK(plan_of(unclassified).excavation->soil.type == SoilType::type_c);
}

TEST_CASE("the pit has the room the rules ask, and its volumes are exact") {
  // Bottom 6 ft by 4.76 ft (1.5 + 9.11/12 + 2.5) in 6 ft of depth at 1:1; V = L W D + z D^2 (L + W) + 4/3 z^2 D^3.
  const Plan plan = at_depth(in_good_ground(SoilClaim::type_b), 6.0);
  const PitPlan& pit = *plan.excavation;
  const double width = 4.0 + pit.main_od / units::foot;
  CHECK(pit.pit.along / units::foot == Approx(6));
  CHECK(pit.pit.across / units::foot == Approx(width));
  CHECK(pit.pit.slope == 1.0);
  CHECK(pit.top.along / units::foot == Approx(18));
  CHECK(pit.top.across / units::foot == Approx(width + 12));
  CHECK(pit.bank / units::ft3 == Approx(6 * width * 6 + 36 * (6 + width) + 4.0 / 3.0 * 216));
  // The same by slices.
  double slices = 0.0;
  constexpr int count = 20000;
  for (int i = 0; i < count; ++i) {
    const double up = 6.0 * (i + 0.5) / count;
    slices += (6 + 2 * up) * (width + 2 * up) * 6.0 / count;
  }
  CHECK(pit.bank / units::ft3 == Approx(slices).epsilon(1e-6));
  CHECK(pit.loose / pit.bank == Approx(1.25));
  CHECK(pit.weight / units::lbf == Approx(100 * (pit.bank / units::ft3)));
  CHECK(pit.spoil.base * pit.spoil.height / 2.0 * pit.top.along / units::ft3 == Approx(pit.loose / units::ft3));
  CHECK(pit.occupied == pit.top.across / 2.0 + 2.0 * units::foot + pit.spoil.base);
  CHECK(pit.ladder_length / units::foot == Approx(10));
}

TEST_CASE("walls stand upright only where nothing is required or a shield stands") {
  Job job = in_good_ground(SoilClaim::type_c);
  CHECK(at_depth(job, 4.9).excavation->pit.slope == 0.0);
  CHECK(at_depth(job, 5.0).excavation->pit.slope == 1.5);
  job.excavation.protection = Protection::shield;
  CHECK(at_depth(job, 8.0).excavation->pit.slope == 0.0);
}

TEST_CASE("a required protective system is held until it is chosen") {
  Job job = in_good_ground(SoilClaim::type_b);
  CHECK(severity_of(at_depth(job, 6.0), FindingCode::pit_protective_system) == Severity::caution);
  CHECK(at_depth(job, 6.0).verdict == Verdict::go);
  job.excavation.protection.reset();
  CHECK(severity_of(at_depth(job, 6.0), FindingCode::pit_protective_system) == Severity::hold);
}

TEST_CASE("a shallow pit nobody looked at is held unless its walls are protected anyway") {
  Job job = in_good_ground(SoilClaim::type_b);
  job.excavation.finding.reset();
  CHECK(severity_of(at_depth(job, 4.5), FindingCode::pit_not_examined) == Severity::caution);
  job.excavation.protection.reset();
  CHECK(severity_of(at_depth(job, 4.5), FindingCode::pit_not_examined) == Severity::hold);
}

TEST_CASE("upright lower part and steps only as far as the rule allows") {
  const auto pit = [](SoilClaim soil, double feet) { return *at_depth(in_good_ground(soil), feet).excavation; };
  REQUIRE(pit(SoilClaim::type_a, 8.0).upright_lower);
  CHECK(pit(SoilClaim::type_a, 8.0).upright_lower->height / units::foot == Approx(3.5));
  CHECK(pit(SoilClaim::type_a, 8.0).upright_lower->slope_above == Approx(0.75));
  CHECK(pit(SoilClaim::type_a, 12.0).upright_lower->slope_above == Approx(1.0));
  CHECK_FALSE(pit(SoilClaim::type_a, 12.01).upright_lower);
  CHECK_FALSE(pit(SoilClaim::type_b, 6.0).upright_lower);
  CHECK(pit(SoilClaim::type_a, 8.0).benches->later / units::foot == Approx(5));
  CHECK_FALSE(pit(SoilClaim::type_b, 6.0).benches);  // nobody said that it holds together
  Job clay = in_good_ground(SoilClaim::type_b);
  clay.excavation.earth = Earth::clay;
  CHECK(at_depth(clay, 6.0).excavation->benches->later / units::foot == Approx(4));
  CHECK_FALSE(pit(SoilClaim::type_c, 6.0).benches);
}

TEST_CASE("distress flattens the walls and clears the pit") {
  Job job = in_good_ground(SoilClaim::type_b);
  job.excavation.distress = true;
  const Plan plan = at_depth(job, 4.5);
  CHECK(severity_of(plan, FindingCode::pit_distress) == Severity::hold);
  CHECK(plan.excavation->protective_system == ProtectiveSystem::required);
  CHECK(plan.excavation->slope->run == Approx(1.5));
  CHECK_FALSE(plan.excavation->benches);
}

TEST_CASE("nobody digs on an unknown ticket") {
  Job job = in_good_ground(SoilClaim::type_b);
  CHECK_FALSE(has(plan_of(job), FindingCode::pit_not_located));
  for (const std::optional<bool> located : {std::optional<bool>(), std::optional<bool>(false)}) {
    job.excavation.located = located;
    CHECK(severity_of(plan_of(job), FindingCode::pit_not_located) == Severity::hold);
  }
}

TEST_CASE("a sewer keeps its distance, or lies well below") {
  const auto near = [](double feet, std::optional<double> below_inches) {
    Job job = in_good_ground(SoilClaim::type_b);
    job.excavation.sewer = feet * units::foot;
    if (below_inches) job.excavation.sewer_below = *below_inches * units::inch;
    return has(plan_of(job), FindingCode::pit_sewer_near);
  };
  CHECK_FALSE(near(10.0, std::nullopt));
  CHECK(near(9.99, std::nullopt));
  CHECK_FALSE(near(3.0, 18.0));
  CHECK(near(3.0, 17.9));
  Job job = in_good_ground(SoilClaim::type_b);
  job.nearby = {Nearby{NearbyThing::sewer, 4.0 * units::foot, {}, {}}};
  CHECK(has(plan_of(job), FindingCode::pit_sewer_near));
}

TEST_CASE("marks, tapers and a hanging joint") {
  Job job = in_good_ground(SoilClaim::type_b);
  job.excavation.lane = 12.0 * units::foot;
  job.excavation.speed = 35.0 * units::mph;
  job.nearby = {Nearby{NearbyThing::joint, 2.5 * units::foot, {}, {}}};
  const PitPlan pit = *plan_of(job).excavation;
  CHECK(pit.own_mark == "blue");
  CHECK(pit.stop_mark == "yellow");
  CHECK(pit.tapers->merging / units::foot == Approx(245));
  CHECK(pit.joint_hangs);
  // An 8-inch main of 9.05 in, 18 in to each side: 45.05 in wide; planned by the widest it may be.
  CHECK(2.0 * pit.zone_half_width / units::inch == Approx(45.05).margin(0.1));
  job.excavation.tolerance = 24.0 * units::inch;
  CHECK(plan_of(job).excavation->zone_half_width - pit.zone_half_width == 6.0 * units::inch);
}

TEST_CASE("without cover the depth is not guessed") {
  Job job = in_good_ground(SoilClaim::type_b);
  job.main.cover.reset();
  job.excavation.spoil_distance = 1.0 * units::foot;
  const Plan plan = plan_of(job);
  CHECK_FALSE(plan.excavation);
  CHECK(has(plan, FindingCode::pit_not_checked));
  CHECK(has(plan, FindingCode::pit_spoil_too_near));
}

TEST_CASE("ground over a main is not taken for undisturbed on a word alone") {
  const Job job = in_good_ground(SoilClaim::type_a);
  CHECK(has(plan_of(job), FindingCode::pit_claimed_undisturbed));
  CHECK(plan_of(job).verdict == Verdict::hold);
  Job dug = job;
  dug.excavation.disturbed.reset();
  CHECK_FALSE(has(plan_of(dug), FindingCode::pit_claimed_undisturbed));
  CHECK(plan_of(dug).excavation->soil.type == SoilType::type_b);
  // Of soil that is softer anyway nothing hangs on it.
  CHECK_FALSE(has(plan_of(in_good_ground(SoilClaim::type_b)), FindingCode::pit_claimed_undisturbed));
}

TEST_CASE("a deeper pit and a weaker soil never better a verdict") {
  std::mt19937_64 random(77);
  const auto chance = [&](unsigned percent) { return random() % 100 < percent; };
  const auto maybe = [&]() -> std::optional<bool> {
    if (chance(40)) return std::nullopt;
    return chance(50);
  };
  for (int i = 0; i < 600; ++i) {
    Job job = in_good_ground(static_cast<SoilClaim>(random() % 3));
    ExcavationFacts& facts = job.excavation;
    facts.disturbed = maybe();
    facts.vibration = maybe();
    facts.fissured = maybe();
    facts.hazard = maybe();
    facts.crossing = maybe();
    if (chance(40)) facts.finding.reset();
    if (chance(10)) facts.finding = CaveInSign::sign;
    if (chance(40)) facts.protection.reset();
    if (chance(30)) facts.open_for.reset();
    const double depth = 2.0 + static_cast<double>(random() % 2000) / 100.0;
    job = with_depth(job, depth);
    const Plan before = plan_of(job);
    Job deeper = job;
    deeper.main.cover = *job.main.cover + static_cast<double>(random() % 60) * units::inch;
    REQUIRE(plan_of(deeper).verdict >= before.verdict);
    Job weaker = job;
    weaker.excavation.soil = static_cast<SoilClaim>(static_cast<int>(*job.excavation.soil) + 1);
    const Plan after = plan_of(weaker);
    // A claim that cannot be is a contradiction of its own, not a firmer soil.
    if (!has(before, FindingCode::pit_claimed_undisturbed)) REQUIRE(after.verdict >= before.verdict);
    REQUIRE(after.excavation->soil.type >= before.excavation->soil.type);
    if (before.excavation->slope && after.excavation->slope) {
      REQUIRE(after.excavation->slope->run >= before.excavation->slope->run);
    }
    Job wetter = job;
    wetter.excavation.water = PitWater::seeping;
    if (!has(before, FindingCode::pit_claimed_undisturbed)) REQUIRE(plan_of(wetter).verdict >= before.verdict);
  }
}

TEST_CASE("a pit beyond the tables is the engineer's, whatever else of it the job leaves out") {
  Job job = with_depth(in_good_ground(SoilClaim::type_b), 20.1);
  job.excavation = {};
  const Plan deep = plan_of(job);
  CHECK(deep.verdict == Verdict::hold);
  CHECK(severity_of(deep, FindingCode::pit_engineer) == Severity::hold);
  CHECK(has(deep, FindingCode::pit_not_located));
  job = with_depth(in_good_ground(SoilClaim::type_b), 19.9);
  job.excavation = {};
  CHECK(plan_of(job).verdict == Verdict::go);
}

// The boundary that 29 CFR 1926.652(a)(1) sets, of an order that tells its cover and nothing else of its pit.
TEST_CASE("a pit that is deep by its cover alone is to be protected, and says so in every language") {
  Job job = sound_job();
  const Length beneath = 9.05 * units::inch + 1.0 * units::foot;  // the main, and room below it
  job.main.cover = 5.0 * units::foot - beneath - 0.1 * units::inch;
  CHECK_FALSE(has(plan_of(job), FindingCode::pit_protective_system));
  job.main.cover = 5.0 * units::foot - beneath + 0.1 * units::inch;
  const Plan deep = plan_of(job);
  CHECK(severity_of(deep, FindingCode::pit_protective_system) == Severity::caution);
  CHECK(deep.verdict == Verdict::go);
  CHECK_FALSE(deep.excavation);
  for (const Language language : {Language::english, Language::spanish}) {
    const auto brief = [&](const Plan& plan) {
      for (const Caution& one : cautions(plan, {UnitSystem::us, language})) {
        if (one.code == "caution.pit") return one.brief;
      }
      return std::string_view();
    };
    CHECK(brief(deep).find(language == Language::english ? "shore" : "puntales") != std::string_view::npos);
    CHECK(brief(plan_of(sound_job())) != brief(deep));
  }
  job.main.cover = 0.0 * units::foot;  // not known
  CHECK_FALSE(has(plan_of(job), FindingCode::pit_protective_system));
}
