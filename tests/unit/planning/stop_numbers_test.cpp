// The numbers under the verdict, taken together.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

const StopNumber& number(const Plan& plan, ReadingId id) {
  const StopNumber* const found = plan.stop_number(id);
  REQUIRE(found != nullptr);
  return *found;
}

double most_pressure(const Plan& plan) { return number(plan, ReadingId::line_pressure).at_most->base(); }
double warmest(const Plan& plan) { return number(plan, ReadingId::pipe_temperature).at_most->base(); }

// 8-inch C900 of DR 25, rated 165 psi at 73 degF, tapped through a saddle by a powered machine.
Job plastic_job() {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.size = NominalSize::inches(8);
  job.main.class_name = "DR 25";
  job.main.installed = 2015;
  job.main.temperature = Temperature::fahrenheit(60);
  job.main.pressure = 100.0 * units::psi;
  job.main.surge = Pressure();
  job.service.method = Method::saddle;
  job.machine.feed = Feed::powered;
  return job;
}

}  // namespace

TEST_CASE("the pressure to read is one that the pipe bears at its warmest") {
  const Job job = plastic_job();
  const Plan plan = plan_of(job);
  // At 90 degF PVC keeps 0.75 of its rating (AWWA C900-16, temperature coefficients).
  CHECK(warmest(plan) == 90.0);
  CHECK(most_pressure(plan) == std::floor(0.75 * 165.0));
}

TEST_CASE("the pressure to read is one that the service tubing bears") {
  Job job = plastic_job();
  job.main.material = Material::ductile_iron;
  job.main.class_name = "PC 350";
  job.main.temperature = Temperature::fahrenheit(110);
  job.main.pressure = 75.0 * units::psi;
  job.service.line.material = Tubing::pex;
  const double most = most_pressure(plan_of(job));
  job.main.pressure = most * units::psi;
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_over_line_rating));
  CHECK(most < 160.0);
}

TEST_CASE("where the line is more than the pipe bears at its warmest, the warmth gives way") {
  Job job = plastic_job();
  job.main.pressure = 150.0 * units::psi;
  const Plan plan = plan_of(job);
  CHECK(warmest(plan) < 90.0);
  CHECK(warmest(plan) > 73.0);
  CHECK(most_pressure(plan) >= 150.0);
  job.main.temperature = Temperature::fahrenheit(warmest(plan));
  job.main.pressure = most_pressure(plan) * units::psi;
  CHECK(plan_of(job).verdict == plan.verdict);
  job.main.temperature = Temperature::fahrenheit(warmest(plan) + 1.0);
  CHECK(has(plan_of(job), FindingCode::pressure_over_pipe_rating));
}

TEST_CASE("the pressure to read leaves room for the surge") {
  Job job = sound_job();
  job.service.stop_rating = 100.0 * units::psi;  // 1.5 times that for a moment
  job.main.surge = 70.0 * units::psi;
  job.machine.feed = Feed::powered;
  const Plan plan = plan_of(job);
  CHECK(most_pressure(plan) == 80.0);
  job.main.pressure = 81.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::pressure_surge_over_fitting));
}

TEST_CASE("the tape's numbers are whole marks inside what the pipe may measure") {
  const Plan plan = plan_of(sound_job());
  const StopNumber& tape = number(plan, ReadingId::circumference);
  constexpr double pi = std::numbers::pi;
  const double reach = default_rules().measuring.circumference_uncertainty.value.base();
  CHECK(std::fmod(tape.at_least->base() * 16.0, 1.0) == 0.0);
  CHECK(std::fmod(tape.at_most->base() * 16.0, 1.0) == 0.0);
  CHECK(tape.at_least->base() >= pi * plan.main.od_low->base() - reach);
  CHECK(tape.at_most->base() <= pi * plan.main.od_high->base() + reach);
  for (const auto& end : {tape.at_least, tape.at_most}) {
    Job job = sound_job();
    job.main.circumference = Length::from_base(end->base());
    CHECK_FALSE(has(plan_of(job), FindingCode::main_od_contradicts));
  }
}

TEST_CASE("a hold that is there already makes no number wider") {
  Job job = sound_job();
  job.main.material = Material::asbestos_cement;
  job.main.class_name = "Class 150";
  job.main.circumference = 29.0 * units::inch;
  job.main.pressure = 80.0 * units::psi;
  job.machine.feed = Feed::powered;
  job.main.surge = 70.0 * units::psi;
  CHECK(most_pressure(plan_of(job)) == 80.0);
  job.main.surge = 71.0 * units::psi;
  REQUIRE(has(plan_of(job), FindingCode::pressure_surge_over_rating));
  CHECK(most_pressure(plan_of(job)) == 80.0);
}

TEST_CASE("what is said to tell the pipes apart is read as the stop numbers are, and tells what it says") {
  std::set<std::pair<Material, NominalSize>> asked;
  int ranges = 0;
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    if (!asked.emplace(pipe.series->material, pipe.size).second) continue;
    Job job = sound_job();
    job.main.material = pipe.series->material;
    job.main.size = pipe.size;
    job.main.class_name.clear();
    const Plan plan = plan_of(job);
    const auto fits = [&](const Plan& read, const Pipe* wanted) {
      const auto& left = read.main.candidates;
      return !has(read, FindingCode::main_od_contradicts) && std::find(left.begin(), left.end(), wanted) != left.end();
    };
    if (plan.main.caliper_low) {
      for (const auto& od : {plan.main.caliper_low, plan.main.caliper_high}) {
        Job read = job;
        read.main.od = od;
        CHECK_FALSE(has(plan_of(read), FindingCode::main_od_contradicts));
      }
    }
    if (!plan.main.settle) continue;
    const StopNumber* const tape = plan.stop_number(ReadingId::circumference);
    bool covers = tape == nullptr;
    for (const ReadingMeans& means : plan.main.settle->readings) {
      for (const Measure& end : {means.low, means.high}) {
        Job read = job;
        read.main.circumference = Length::from_base(end.base());
        INFO(means.pipe->series->id << ' ' << pipe.size.label() << ' ' << end.base());
        CHECK(fits(plan_of(read), means.pipe));
        ++ranges;
      }
      covers |= means.low.base() <= tape->at_least->base() && tape->at_least->base() <= means.high.base();
    }
    CHECK(covers);
  }
  CHECK(ranges > 40);
}
