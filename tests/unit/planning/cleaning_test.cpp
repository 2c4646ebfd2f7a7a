// Disinfection, flushing and dechlorination, through the planner.
#include "support/catch.hpp"
#include "support/reference_table.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

namespace {

Job with_line() {
  Job job = sound_job();
  job.service.line.material = Tubing::copper_k;
  job.service.line.length = 100.0 * units::foot;
  job.service.line.rise = 0.0 * units::foot;
  return job;
}

Plan with_stock(double percent, Volume solution) {
  Job job = sound_job();
  job.sanitary.stock = percent;
  job.sanitary.solution = solution;
  return plan_of(job);
}

}  // namespace

TEST_CASE("a one per cent solution is mixed from the stock at hand") {
  // 2 gal from 8.25 % bleach: 31 fl oz of it and 225 of water.
  const Plan plan = with_stock(8.25, 2.0 * units::gallon);
  REQUIRE(plan.cleaning);
  const SwabMix& swab = plan.cleaning->swab;
  REQUIRE(swab.liquid);
  CHECK(128.0 * (swab.liquid->stock / units::gallon) == Approx(31.03).margin(0.01));
  CHECK(128.0 * (swab.liquid->water / units::gallon) == Approx(224.97).margin(0.01));
  CHECK_FALSE(swab.stock_assumed);
}

TEST_CASE("fluid ounces to the gallon are the published ones") {
  // Derived from C1 V1 = C2 V2 with 128 fl oz in a gallon, as field guides tabulate them.
  for (const auto& [percent, ounces] :
       {std::pair(5.25, 24.4), {6.0, 21.3}, {8.25, 15.5}, {10.0, 12.8}, {12.5, 10.2}, {15.0, 8.5}}) {
    INFO(percent);
    const Plan plan = with_stock(percent, 1.0 * units::gallon);
    CHECK(plan.cleaning->swab.fluid_ounces_per_gallon() == Approx(ounces).margin(0.06));
    CHECK(plan.cleaning->swab.milliliters_per_liter() == Approx(1000.0 / percent).epsilon(1e-9));
  }
}

TEST_CASE("dry stock is weighed") {
  const Plan plan = with_stock(65.0, 1.0 * units::gallon);
  REQUIRE(plan.cleaning->swab.dry);
  CHECK_FALSE(plan.cleaning->swab.liquid);
  CHECK(16.0 * (*plan.cleaning->swab.dry / units::lbf) == Approx(2.05).margin(0.01));
}

TEST_CASE("stock weaker than the solution is held") {
  CHECK(has(with_stock(1.0, 1.0 * units::gallon), FindingCode::clean_stock_too_weak) == false);
  Job job = sound_job();
  job.sanitary.stock = 0.9;
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(has(plan, FindingCode::clean_stock_too_weak));
  CHECK_FALSE(plan.cleaning->swab.liquid);
}

TEST_CASE("flushing changes the water at the speed that carries dirt") {
  const Plan plan = plan_of(with_line());
  REQUIRE(plan.cleaning);
  CHECK(plan.cleaning->swab.stock_assumed);
  REQUIRE(plan.cleaning->flush);
  const FlushPlan& flush = *plan.cleaning->flush;
  // 100 ft of one-inch Type K: 4.04 gal; 6.06 gpm at 2.5 ft/s and 7.27 at 3.
  CHECK(flush.full.line_volume / units::gallon == Approx(4.04).margin(0.005));
  CHECK(flush.full.flow / units::gpm == Approx(7.27).margin(0.005));
  CHECK(flush.least.flow / units::gpm == Approx(6.06).margin(0.005));
  // One change at V takes L / V: 100 ft at 2.5 ft/s is 40 s.
  CHECK(flush.least.time / units::second == Approx(3 * 40.0));
  CHECK(flush.full.time / units::second == Approx(100.0));
  CHECK_FALSE(has(plan, FindingCode::clean_cannot_scour));
}

TEST_CASE("dechlorination carries the field excess") {
  const Plan plan = plan_of(with_line());
  const FlushPlan& flush = *plan.cleaning->flush;
  REQUIRE(flush.agents.size() == 7);
  for (const AgentDose& dose : flush.agents) {
    const double by_hand = 8.34 * (flush.full.discharged / units::gallon) * 4.0 / 1e6 * dose.agent->per_chlorine * 1.1;
    CHECK(dose.weight / units::lbf == Approx(by_hand));
  }
}

TEST_CASE("a line that cannot reach the speed is told of") {
  Job job = with_line();
  job.main.pressure_low = 2.0 * units::psi;
  job.service.line.length = 400.0 * units::foot;
  const Plan plan = plan_of(job);
  REQUIRE(has(plan, FindingCode::clean_cannot_scour));
  CHECK(find(plan, FindingCode::clean_cannot_scour)->severity == Severity::caution);
}

TEST_CASE("only a large service is chlorinated and sampled as a main") {
  Job job = with_line();
  job.service.size = NominalSize::inches(2);
  CHECK_FALSE(plan_of(job).cleaning->as_main);
  job.service.size = NominalSize::inches(3);
  job.sanitary.stock = 8.25;
  const Plan plan = plan_of(job);
  CHECK(plan.cleaning->as_main);
  CHECK(plan.cleaning->doses.size() == 3);
  CHECK(has(plan, FindingCode::clean_as_main));
}

namespace {

Job large_line(double size, Tubing tubing) {
  Job job = with_line();
  job.service.size = NominalSize::inches(size);
  job.service.line.material = tubing;
  job.main.size = NominalSize::inches(16);
  job.main.class_name = "PC 350";
  return job;
}

}  // namespace

TEST_CASE("a large service is filled with chlorine by weight or volume of the product, and let go harmless") {
  Job job = large_line(6, Tubing::pvc_pressure);
  const Plan plan = plan_of(job);
  REQUIRE(plan.cleaning);
  REQUIRE(plan.cleaning->flush);
  REQUIRE(plan.cleaning->fills.size() == 3);
  const double gallons = plan.cleaning->flush->full.line_volume / units::gallon;
  // 100 ft of DR 18 of 6 in: bore 6.134 in, 0.0408 d^2 gal a foot (US Navy training manual).
  CHECK(gallons == Approx(0.0408 * 6.134 * 6.134 * 100).epsilon(0.001));
  for (const FillPlan& fill : plan.cleaning->fills) {
    const double milligrams = fill.dose->dose.mg_per_liter();
    CHECK(fill.chlorine / units::lbf == Approx(8.34 * gallons * milligrams / 1e6));
    REQUIRE(fill.products.size() == 3);
    // pounds = 8.34 x gallons x mg/L / 1e6 over the share available (a water-operator training text).
    REQUIRE(fill.products[0].weight);
    CHECK(*fill.products[0].weight / units::lbf == Approx(8.34 * gallons * milligrams / 1e6 / 0.65));
    // 125 and 100 g of chlorine in a liter.
    REQUIRE(fill.products[1].volume);
    CHECK(*fill.products[1].volume / units::gallon == Approx(gallons * milligrams / 125000.0));
    CHECK(*fill.products[2].volume / units::gallon == Approx(gallons * milligrams / 100000.0));
    REQUIRE(fill.agents.size() == 7);
    CHECK(fill.agents[0].weight / units::lbf == Approx(1.61 * 1.1 * 8.34 * gallons * milligrams / 1e6));
  }
  job.sanitary.stock = 70.0;
  const Plan stocked = plan_of(job);
  REQUIRE(stocked.cleaning->fills[0].products.size() == 4);
  CHECK(stocked.cleaning->fills[0].products[0].weight);
}

TEST_CASE("services of 3 to 12 in are flushed, and nothing that was given is asked for") {
  for (const double size : {3.0, 4.0, 6.0, 8.0, 10.0, 12.0}) {
    INFO(size);
    const Plan plan = plan_of(large_line(size, Tubing::ductile_iron));
    REQUIRE(plan.cleaning);
    REQUIRE(plan.cleaning->flush);
    CHECK(plan.cleaning->flush->full.flow / units::gpm > 0.95 * 2.448 * size * size * 3.0 * 0.9);
    for (const NotChecked& part : not_checked(plan)) {
      INFO(part.what << ": " << part.give);
      CHECK(part.give.find("service.line.") == std::string::npos);
    }
  }
}
