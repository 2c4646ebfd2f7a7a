// Random jobs, for what must hold over the whole space of them.
#pragma once

#include <array>
#include <cstdint>
#include <random>
#include <string>

#include "support/random_jobs.hpp"
#include "unit/planning/jobs.hpp"

namespace mainbore::test {

class RandomJobs {
 public:
  explicit RandomJobs(std::uint64_t seed) : random_(seed) {}

  Job next() {
    Job job = sound_job();
    const Catalog& catalog = Catalog::builtin();
    const std::span<const Pipe> pipes = catalog.pipes();
    const Pipe& pipe = pipes[below(pipes.size())];
    job.main.material = pipe.series->material;
    job.main.size = pipe.size;
    job.main.class_name = chance(60) ? pipe.class_name : "";
    constexpr std::array taps = {0.625, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0};
    job.service.size = NominalSize::inches(taps[below(taps.size())]);
    job.main.pressure = real(5, 320) * units::psi;
    if (pipe.wall && chance(50)) job.main.wall = real(0.5, 1.4) * *pipe.wall;
    if (pipe.plausible) {
      if (chance(50)) job.main.wall = real(0.3, 1.2) * pipe.plausible->wall_to;
      if (chance(70)) job.main.od = real(0.95, 1.05) * real(1, 1.1) * pipe.plausible->od_from;
    }
    if (chance(pipe.rating ? 15 : 70)) job.main.rating = real(40, 300) * units::psi;
    if (chance(30)) job.main.occasional_surge = real(0, 150) * units::psi;
    if (pipe.earlier && chance(50)) job.main.installed = 1990 + static_cast<int>(below(40));
    if (chance(20)) job.main.condition.reset();
    if (chance(20)) job.main.carries.reset();
    if (chance(20)) job.main.surge.reset();
    if (chance(20)) job.main.curved.reset();
    if (chance(20)) job.main.temperature.reset();
    else job.main.temperature = Temperature::fahrenheit(real(33, 100));
    if (chance(30)) job.machine = {};
    if (chance(50)) job.service.thread = static_cast<ThreadStandard>(below(3));
    if (chance(20)) job.service.method = static_cast<Method>(below(3));
    if (chance(20)) job.service.stop_rating.reset();
    if (chance(10)) job.main.condition = Condition::pitted;
    if (chance(15)) job.nearby.reset();
    else if (chance(50)) {
      Nearby thing;
      thing.what = static_cast<NearbyThing>(below(6));
      thing.along = real(-60, 60) * units::inch;
      job.nearby->push_back(thing);
    }
    return job;
  }
  std::size_t below(std::size_t n) { return random_() % n; }
  bool chance(unsigned percent) { return random_() % 100 < percent; }
  double real(double low, double high) {
    return low + (high - low) * (static_cast<double>(random_() % 100001) / 100000.0);
  }

 private:
  std::mt19937_64 random_;
};

// A random job that tells of the line, the demand, the cleaning and the pit as well.
inline Job telling_job(RandomJobs& random) {
  Job job = random.next();
  LineFacts& line = job.service.line;
  line.material = static_cast<Tubing>(random.below(tubing_count));
  line.length = random.real(5, 300) * units::foot;
  if (random.chance(50)) line.rise = random.real(-20, 60) * units::foot;
  if (random.chance(30)) line.friction = FrictionMethod::darcy_weisbach;
  if (random.chance(50)) line.elbows = static_cast<int>(random.below(6));
  if (random.chance(30)) line.size = job.service.size;
  DemandFacts& demand = job.service.demand;
  if (random.chance(50)) demand.flow = random.real(1, 200) * units::gpm;
  else demand.fixture_units = random.real(1, 300);
  if (random.chance(50)) demand.code = PlumbingCode::ipc;
  if (random.chance(20)) demand.sprinklers = DwellingSprinklers::pair;
  if (random.chance(20)) job.service.meter = NominalSize::inches(0.75);
  if (random.chance(50)) job.main.pressure_low = random.real(5, 120) * units::psi;
  if (random.chance(50)) job.sanitary.stock = 8.25;
  if (random.chance(50)) job.excavation.soil = SoilClaim::type_b;
  job.main.cover = random.real(1, 12) * units::foot;
  return job;
}

// A random job with readings already taken, a machine whose seat is narrow, and facts left out.
inline Job half_read_job(RandomJobs& random) {
  Job job = random.next();
  if (random.chance(50)) job.main.pressure = random.real(20, 120) * units::psi;
  if (random.chance(30)) job.main.class_name.clear();
  if (random.chance(30)) job.main.installed = 1900 + static_cast<int>(random.below(126));
  if (random.chance(10)) job.main.pressurized = false;
  const auto pipes = Catalog::builtin().pipes(*job.main.material, *job.main.size);
  const Pipe& pipe = pipes[random.below(pipes.size())];
  if (pipe.od && random.chance(20)) job.main.od = random.real(0.985, 1.015) * *pipe.od;
  if (pipe.od && random.chance(20)) job.main.circumference = 3.14159265 * random.real(0.985, 1.015) * *pipe.od;
  if (job.machine.given && pipe.od && random.chance(50)) {
    auto machine = truck_machine();
    machine->saddle_od_from = *pipe.od - (random.chance(30) ? 0.0 : random.real(-0.02, 0.2)) * units::inch;
    machine->saddle_od_to = *machine->saddle_od_from + (random.chance(30) ? 0.0 : random.real(0, 0.3)) * units::inch;
    job.machine.given = machine;
  }
  if (random.chance(30)) job.machine.feed = Feed::powered;
  return job;
}

// The verdict must not get better (go < hold < no-go).
inline void never_better(const Job& before, const Job& after, const char* change) {
  const Plan a = plan_of(before);
  const Plan b = plan_of(after);
  INFO(change << ": " << name_of(*before.main.material) << " " << before.main.size->label() << " ["
              << before.main.class_name << "] tap " << before.service.size->label() << " at "
              << before.main.pressure->base() << " psi, wall " << (before.main.wall ? before.main.wall->base() : -1.0)
              << ": " << name_of(a.verdict) << " became " << name_of(b.verdict));
  REQUIRE(b.verdict >= a.verdict);
}

}  // namespace mainbore::test
