// Water for the customer, through the planner.
#include <random>

#include "mainbore/finding_words.hpp"
#include "mainbore/hydraulics/friction.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

namespace {

NominalSize inches(double nominal) { return NominalSize::inches(nominal); }

// A house: 60 psi, 12 gpm through 80 ft of one-inch copper and a meter of 3/4 in, 6 ft up.
Job house() {
  Job job = sound_job();
  job.main.pressure = 60.0 * units::psi;
  job.main.pressure_low = 60.0 * units::psi;
  job.service.meter = inches(0.75);
  job.service.line.material = Tubing::copper_k;
  job.service.line.length = 80.0 * units::foot;
  job.service.line.rise = 6.0 * units::foot;
  job.service.demand.flow = 12.0 * units::gpm;
  return job;
}

Plan planned_house(void (*change)(Job&)) {
  Job job = house();
  change(job);
  return plan_of(job);
}

double loss_of(const ServicePlan& service, LossPart part) {
  for (const LossItem& item : service.losses) {
    if (item.part == part) return item.loss / units::psi;
  }
  return -1.0;
}

}  // namespace

TEST_CASE("whole services agree with the worked examples") {
  const ReferenceTable table("hydraulics_service_lines.csv");
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    Job job = sound_job();
    job.main.pressure = job.main.pressure_low = row.number("main_psi") * units::psi;
    job.service.demand.flow = row.number("gpm") * units::gpm;
    job.service.line.length = row.number("length_ft") * units::foot;
    job.service.line.rise = row.number("rise_ft") * units::foot;
    job.service.meter = inches(row.text("meter") == "3/4" ? 0.75 : row.number("meter"));
    // The tubing is known by its bore, and its C is the tabulated one.
    for (std::size_t i = 0; i < tubing_count; ++i) {
      const auto tubing = static_cast<Tubing>(i);
      const TubeSize* tube = Catalog::builtin().service_tables().tube(tubing, inches(1));
      if (!job.service.line.material && tube->bore / units::inch == Approx(row.number("bore_in"))) {
        job.service.line.material = tubing;
      }
    }
    const Plan plan = plan_of(job);
    REQUIRE(plan.service);
    const ServicePlan& service = *plan.service;
    const double tolerance = table.tolerance();
    CHECK(service.c == Approx(row.number("c")));
    CHECK(loss_of(service, LossPart::corporation_stop) + loss_of(service, LossPart::curb_stop) +
              loss_of(service, LossPart::line) ==
          Approx(row.number("friction_psi")).margin(tolerance));
    CHECK(loss_of(service, LossPart::rise) == Approx(row.number("elevation_psi")).margin(tolerance));
    CHECK(loss_of(service, LossPart::meter) == Approx(row.number("meter_psi")).margin(tolerance));
    CHECK(service.residual / units::psi == Approx(row.number("residual_psi")).margin(tolerance));
    CHECK(service.residual_least <= service.residual);
  }
}

TEST_CASE("a house served well is no finding") {
  const Plan plan = plan_of(house());
  CHECK(plan.verdict == Verdict::go);
  REQUIRE(plan.service);
  for (const Finding& finding : plan.findings) {
    INFO(name_of(finding.code));
    CHECK_FALSE(name_of(finding.code).starts_with("service."));
  }
  // 4.96 ft/s: 0.408531 x 12 / 0.995^2.
  CHECK(plan.service->velocity / units::ft_per_s == Approx(4.952).margin(0.001));
  CHECK(plan.service->losses.back().left == plan.service->residual);
  CHECK(plan.service->profile.front().pressure == plan.service->supply);
  CHECK(plan.service->profile.back().pressure == plan.service->residual);
}

TEST_CASE("the flow that leaves the least pressure is the root of the balance") {
  const Plan plan = plan_of(house());
  CHECK(plan.service->available.status == hydraulics::FlowStatus::converged);
  Job job = house();
  job.service.demand.flow = plan.service->available.flow;
  CHECK(plan_of(job).service->residual_least / units::psi == Approx(20).margin(1e-6));
}

TEST_CASE("a starved customer is held, and just enough is not") {
  Job job = house();
  const Plan plan = plan_of(job);
  const Pressure spare = plan.service->residual_least - plan.service->residual_wanted;
  job.main.pressure_low = *job.main.pressure_low - spare;
  CHECK_FALSE(has(plan_of(job), FindingCode::service_starved));
  job.main.pressure_low = *job.main.pressure_low - 0.01 * units::psi;
  const Plan starved = plan_of(job);
  CHECK(severity_of(starved, FindingCode::service_starved) == Severity::hold);
  CHECK(starved.verdict == Verdict::hold);
  // Who wants more than the rule is held sooner, who wants less is not let off.
  CHECK(
      has(planned_house([](Job& j) { j.service.demand.residual = 55.0 * units::psi; }), FindingCode::service_starved));
  job.service.demand.residual = 5.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::service_starved));
}

TEST_CASE("speed is cautioned over 5 ft/s and held over 8") {
  const auto at = [](double feet_per_second) {
    Job job = house();
    job.main.pressure_low = 140.0 * units::psi;
    job.service.meter = inches(1.5);
    const Length bore = Catalog::builtin().service_tables().tube(Tubing::copper_k, inches(1))->bore;
    job.service.demand.flow = feet_per_second * units::ft_per_s * (0.7853981633974483 * (bore * bore));
    return plan_of(job);
  };
  CHECK_FALSE(has(at(5.0), FindingCode::service_too_fast));
  CHECK(severity_of(at(5.01), FindingCode::service_too_fast) == Severity::caution);
  CHECK(severity_of(at(8.0), FindingCode::service_too_fast) == Severity::caution);
  CHECK(severity_of(at(8.01), FindingCode::service_too_fast) == Severity::hold);
}

TEST_CASE("a meter may pass its greatest flow and no more") {
  const auto with_meter = [](double gpm, double continuous) {
    Job job = house();
    job.main.pressure_low = 150.0 * units::psi;
    job.service.line.size = inches(2);
    job.service.demand.flow = gpm * units::gpm;
    if (continuous > 0) job.service.demand.continuous = continuous * units::gpm;
    return plan_of(job);
  };
  CHECK_FALSE(has(with_meter(30.0, 0), FindingCode::service_meter_over));
  CHECK(severity_of(with_meter(30.1, 0), FindingCode::service_meter_over) == Severity::hold);
  CHECK_FALSE(has(with_meter(1.0, 15.0), FindingCode::service_meter_continuous));
  CHECK(severity_of(with_meter(1.0, 15.1), FindingCode::service_meter_continuous) == Severity::caution);
  CHECK(*with_meter(30.1, 0).service->smallest_meter == inches(1));
}

TEST_CASE("demand by fixtures goes by the code named") {
  const auto demand = [](std::string fixtures, std::optional<PlumbingCode> code) {
    Job job = house();
    job.service.demand = {};
    job.service.demand.fixtures = std::move(fixtures);
    job.service.demand.code = code;
    return plan_of(job);
  };
  // Two bathroom groups 3.6 each, kitchen sink, dishwasher and washer 1.4 each: 11.4 units, 15.64 gpm.
  const Plan ipc =
      demand("2 bathroom group, kitchen sink, 1 x dishwashing machine; washing machine 8 lb", PlumbingCode::ipc);
  REQUIRE(ipc.service);
  CHECK(*ipc.service->demand.fixture_units == Approx(11.4));
  CHECK(ipc.service->demand.flow / units::gpm == Approx(15.64));
  // The same house by the other family: 22 units, and 15.2 gpm on its own curve.
  const Plan upc = demand(
      "2 WC 1.6 gpf gravity tanks, 2 lavatories, 2 bathtub or combination bath/shower, kitchen sink domestic, "
      "dishwasher "
      "domestic, clothes washer",
      PlumbingCode::upc);
  CHECK(has(upc, FindingCode::service_fixture_unknown));  // "lavatories" is not the table's plural
  const Plan upc_house = demand(
      "2 WC 1.6 gpf gravity tank, 2 lavatory, 2 bathtub or combination bath/shower, kitchen sink domestic, dishwasher "
      "domestic, clothes washer",
      PlumbingCode::upc);
  REQUIRE(upc_house.service);
  CHECK(*upc_house.service->demand.fixture_units == Approx(22));
  CHECK(upc_house.service->demand.flow / units::gpm == Approx(15.2));

  // A fixture of the other family is not read as nothing.
  const Plan mixed = demand("bathroom group, clothes washer", PlumbingCode::ipc);
  CHECK(severity_of(mixed, FindingCode::service_fixture_unknown) == Severity::hold);
  CHECK(std::get<int>(find(mixed, FindingCode::service_fixture_unknown)->details[1]) == 2);
  CHECK_FALSE(mixed.service);
}

TEST_CASE("units without their code are held, and planned by the code that asks for most") {
  const auto by = [](std::optional<PlumbingCode> code, double units) {
    Job job = house();
    job.service.demand = {};
    job.service.demand.fixture_units = units;
    job.service.demand.code = code;
    return plan_of(job);
  };
  CHECK(by(PlumbingCode::ipc, 10).service->demand.flow / units::gpm == Approx(14.6));
  CHECK(by(PlumbingCode::upc, 10).service->demand.flow / units::gpm == Approx(8));
  CHECK(by(PlumbingCode::nspc, 10).service->demand.flow / units::gpm == Approx(8));
  const Plan unnamed = by(std::nullopt, 10);
  CHECK(severity_of(unnamed, FindingCode::service_code_unnamed) == Severity::hold);
  CHECK(unnamed.service->demand.flow / units::gpm == Approx(14.6));
  // Rows of this curve between 14 and 120 units were not read.
  CHECK(by(PlumbingCode::nspc, 14).service);
  CHECK(severity_of(by(PlumbingCode::nspc, 15), FindingCode::service_curve_unread) == Severity::hold);
  CHECK(by(PlumbingCode::nspc, 120).service);
}

TEST_CASE("sprinklers take the greater of one and two, with the allowance where the pipe is shared") {
  const auto flow = [](DwellingSprinklers heads, bool shared) {
    Job job = house();
    job.service.demand.sprinklers = heads;
    job.service.demand.shared = shared;
    return plan_of(job).service->demand.flow / units::gpm;
  };
  CHECK(flow(DwellingSprinklers::none, true) == Approx(12));
  CHECK(flow(DwellingSprinklers::single, false) == Approx(18));
  CHECK(flow(DwellingSprinklers::pair, false) == Approx(26));
  CHECK(flow(DwellingSprinklers::pair, true) == Approx(31));
  // 31 gpm is over what a 3/4-inch meter may pass.
  CHECK(has(planned_house([](Job& job) {
              job.service.demand.sprinklers = DwellingSprinklers::pair;
              job.service.demand.shared = true;
            }),
            FindingCode::service_meter_over));
}

TEST_CASE("a customer higher than the main lifts water is held, though nobody asked for the water") {
  Job job = sound_job();
  job.main.pressure = 60.0 * units::psi;
  job.service.line.rise = 92.0 * units::foot;  // 0.433 psi a foot leaves 20.2 psi
  CHECK(plan_of(job).verdict == Verdict::go);
  job.service.line.rise = 93.0 * units::foot;
  const Plan high = plan_of(job);
  CHECK(high.verdict == Verdict::hold);
  CHECK(severity_of(high, FindingCode::service_too_high) == Severity::hold);
  job.service.line.rise = 60.0 * units::foot;
  job.main.pressure_low = 40.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::service_too_high));
  // Where the water is worked out, what is left behind the meter says it.
  job = house();
  job.service.line.rise = 200.0 * units::foot;
  CHECK(has(plan_of(job), FindingCode::service_starved));
  CHECK_FALSE(has(plan_of(job), FindingCode::service_too_high));
}

TEST_CASE("tubing that falls from the main is held against the pressure at its lower end") {
  Job job = sound_job();
  job.main.pressure = 60.0 * units::psi;
  job.main.temperature = Temperature::fahrenheit(50);
  job.service.line.material = Tubing::polyethylene;
  job.service.line.rise = -320.0 * units::foot;  // 0.433 psi a foot makes 198.7 psi of it
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_over_line_rating));
  job.service.line.rise = -330.0 * units::foot;
  CHECK(has(plan_of(job), FindingCode::pressure_over_line_rating));
  CHECK(plan_of(job).verdict == Verdict::hold);
}

TEST_CASE("what is not given is assumed and said, or not checked and said") {
  const Plan plan = planned_house([](Job& job) {
    job.main.pressure_low.reset();
    job.service.line.rise.reset();
    job.service.meter.reset();
  });
  REQUIRE(plan.service);
  CHECK(plan.service->supply == *plan.job.main.pressure);
  CHECK(plan.service->meter_assumed);
  CHECK(plan.service->meter->size == inches(0.625));  // the smallest that passes 12 gpm loses most
  for (const std::string_view path : {"main.pressure_low", "service.line.rise", "service.meter"}) {
    CHECK(std::any_of(plan.main.assumed.begin(), plan.main.assumed.end(),
                      [&](const Assumption& a) { return a.path == path; }));
  }
  const Plan without_length = planned_house([](Job& job) { job.service.line.length.reset(); });
  CHECK_FALSE(without_length.service);
  // Who tells of the demand asks for the check: what is missing for it holds. A line alone is only told of.
  CHECK(severity_of(without_length, FindingCode::service_not_checked) == Severity::hold);
  const Finding* const hold = find(without_length, FindingCode::service_not_checked);
  CHECK(detail_of(*hold, UnitSystem::us).find("service.line.length") != std::string::npos);
  const Plan line_alone = planned_house([](Job& job) { job.service.demand = {}; });
  CHECK(severity_of(line_alone, FindingCode::service_not_checked) == Severity::note);
  const Plan lawn_alone = planned_house([](Job& job) {
    job.service.demand = {};
    job.service.demand.continuous = 5.0 * units::gpm;
  });
  CHECK(severity_of(lawn_alone, FindingCode::service_not_checked) == Severity::hold);
}

TEST_CASE("an old lead or galvanised service stops the work") {
  for (const auto existing : {ExistingService::lead, ExistingService::galvanized}) {
    Job job = sound_job();
    job.service.existing = existing;
    CHECK(plan_of(job).verdict == Verdict::hold);
  }
  Job job = sound_job();
  job.service.existing = ExistingService::copper;
  CHECK(plan_of(job).verdict == Verdict::go);
}

TEST_CASE("a customer over 80 psi is told of a regulator") {
  const auto at = [](double psi) {
    Job job = house();
    job.main.pressure = psi * units::psi;
    job.service.line.rise = 0.0 * units::foot;
    return has(plan_of(job), FindingCode::pressure_needs_regulator);
  };
  CHECK_FALSE(at(80));
  CHECK(at(80.1));
}

TEST_CASE("equal taps stand apart by what is held equal") {
  const Plan plan = planned_house([](Job& job) {
    job.service.size = inches(2);
    job.service.line.length = 40.0 * units::foot;
  });
  REQUIRE(plan.service);
  REQUIRE(plan.service->equal_taps.size() == 4);
  const EqualTaps& three_quarters = plan.service->equal_taps.front();
  CHECK(three_quarters.size == inches(0.75));
  CHECK(three_quarters.by_velocity == Approx(7.11).margin(0.005));
  CHECK(three_quarters.by_rule == Approx(11.61).margin(0.005));
  CHECK(three_quarters.by_runs == Approx(13.45).margin(0.005));
}

TEST_CASE("Darcy-Weisbach takes its viscosity from the temperature") {
  const auto residual = [](double fahrenheit) {
    Job job = house();
    job.service.line.friction = FrictionMethod::darcy_weisbach;
    job.main.temperature = Temperature::fahrenheit(fahrenheit);
    return plan_of(job).service->residual;
  };
  CHECK(residual(35) < residual(70));
  Job job = house();
  job.service.line.friction = FrictionMethod::darcy_weisbach;
  job.main.temperature = Temperature::fahrenheit(50);
  const ServicePlan service = *plan_of(job).service;
  const hydraulics::Water water{0.433 * units::psi / units::foot,
                                1.410e-5 * (units::foot * units::foot / units::second)};
  const Pressure by_hand = hydraulics::darcy_weisbach_loss(12.0 * units::gpm, 0.995 * units::inch, 80.0 * units::foot,
                                                           5e-6 * units::foot, water);
  CHECK(loss_of(service, LossPart::line) == Approx(by_hand / units::psi));
}

TEST_CASE("more demand, more length, more rise or less pressure never serves better") {
  std::mt19937_64 random(41);
  const auto real = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random() % 100001) / 100000.0);
  };
  for (int i = 0; i < 400; ++i) {
    Job job = house();
    job.service.line.material = static_cast<Tubing>(random() % tubing_count);
    const std::array sizes = {0.75, 1.0, 1.25, 1.5, 2.0};
    job.service.line.size = inches(sizes[random() % sizes.size()]);
    const ServiceTables& tables = Catalog::builtin().service_tables();
    if (tables.tube(*job.service.line.material, *job.service.line.size) == nullptr) continue;  // not made so small
    job.service.line.length = real(5, 500) * units::foot;
    job.service.line.rise = real(-40, 60) * units::foot;
    job.service.line.elbows = static_cast<int>(random() % 6);
    if (random() % 2 == 0) job.service.line.friction = FrictionMethod::darcy_weisbach;
    job.service.meter = inches(random() % 2 == 0 ? 0.75 : 1.0);
    job.service.demand.flow = real(1, 60) * units::gpm;
    job.main.pressure_low = real(0.25, 1.0) * *job.main.pressure;
    const Plan before = plan_of(job);
    REQUIRE(before.service);
    const double k = real(1.0, 2.0);
    std::array<Job, 5> worse = {job, job, job, job, job};
    worse[0].service.demand.flow = k * *job.service.demand.flow;
    worse[1].service.line.length = k * *job.service.line.length;
    worse[2].service.line.rise = *job.service.line.rise + (k - 1.0) * 30.0 * units::foot;
    worse[3].main.pressure_low = *job.main.pressure_low / k;
    worse[4].service.line.elbows = *job.service.line.elbows + 2;
    for (const Job& changed : worse) {
      const Plan after = plan_of(changed);
      REQUIRE(after.verdict >= before.verdict);
      REQUIRE(after.service->residual_least <= before.service->residual_least + 1e-9 * units::psi);
    }
  }
}

TEST_CASE("the smallest that serve do serve, and the next smaller do not") {
  Job job = house();
  job.service.demand.flow = 22.0 * units::gpm;
  job.service.line.size = inches(1);
  const Plan plan = plan_of(job);
  REQUIRE(plan.service->smallest_line);
  CHECK(*plan.service->smallest_line == inches(1.25));
  const auto serves = [](const Plan& p) {
    return !has(p, FindingCode::service_starved) &&
           (find(p, FindingCode::service_too_fast) == nullptr ||
            find(p, FindingCode::service_too_fast)->severity != Severity::hold);
  };
  CHECK_FALSE(serves(plan));
  job.service.line.size = plan.service->smallest_line;
  CHECK(serves(plan_of(job)));
}

TEST_CASE("a job without facts of water, cleaning or pit gives a plan without them") {
  const Plan plan = plan_of(sound_job());
  CHECK_FALSE(plan.service);
  CHECK_FALSE(plan.cleaning);
  CHECK_FALSE(plan.excavation);
  for (const Finding& finding : plan.findings) {
    const std::string_view code = name_of(finding.code);
    CHECK_FALSE((code.starts_with("service.") || code.starts_with("clean.") || code.starts_with("pit.")));
  }
  CHECK(not_checked(plan).size() == 3);
  Job full = house();
  full.main.cover = 4.0 * units::foot;
  full.excavation.soil = SoilClaim::type_b;
  CHECK(not_checked(plan_of(full)).empty());
}

TEST_CASE("an open hole lets out what the published formula says") {
  const Plan plan = plan_of(sound_job());
  REQUIRE(plan.open_hole);
  const double inches_wide = plan.open_hole->bore / units::inch;
  // 29.84 c d^2 sqrt(p), with c 0.80 for a short tube.
  CHECK(plan.open_hole->flow / units::gpm ==
        Approx(29.84 * 0.80 * inches_wide * inches_wide * std::sqrt(70.0)).epsilon(0.001));
  CHECK(plan.open_hole->push / units::lbf == Approx(70.0 * 0.785398 * inches_wide * inches_wide).epsilon(1e-5));
  Job dry = sound_job();
  dry.main.pressurized = false;
  CHECK_FALSE(plan_of(dry).open_hole);
}

// SDR 9 of PE 3408: 200 psi at 73 degF; PEX: 160.
TEST_CASE("plastic service tubing is held against the line pressure") {
  Job job = sound_job();
  job.machine.feed = Feed::powered;
  const auto over = [&](double psi) {
    job.main.pressure = psi * units::psi;
    return has(plan_of(job), FindingCode::pressure_over_line_rating);
  };
  job.service.line.material = Tubing::pex;
  CHECK_FALSE(over(160.0));
  CHECK(over(160.1));
  CHECK(plan_of(job).verdict == Verdict::hold);
  job.service.line.material = Tubing::polyethylene;
  CHECK_FALSE(over(200.0));
  CHECK(over(200.1));
  SECTION("by what is printed on it") {
    job.service.line.rating = 250.0 * units::psi;
    CHECK_FALSE(over(250.0));
    CHECK(over(250.1));
    job.service.line.rating = 100.0 * units::psi;
    CHECK(over(100.1));
  }
  SECTION("and less where the ground is warm") {
    job.main.temperature = Temperature::fahrenheit(90);  // 0.86 x 200 = 172
    CHECK_FALSE(over(172.0));
    CHECK(over(172.1));
  }
  SECTION("with its surge, which may be half as much again") {
    job.main.surge = 240.0 * units::psi;
    const auto surges = [&](double psi) {
      job.main.pressure = psi * units::psi;
      const Plan plan = plan_of(job);
      return std::any_of(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
        return finding.code == FindingCode::pressure_surge_over_fitting && finding.limit->base() == 300.0;
      });
    };
    CHECK_FALSE(surges(60.0));
    CHECK(surges(60.1));
  }
  SECTION("copper is not") {
    job.service.line.material = Tubing::copper_k;
    CHECK_FALSE(over(240.0));
  }
}
