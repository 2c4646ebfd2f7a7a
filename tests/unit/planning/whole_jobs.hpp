// Random jobs that tell of everything a rule can bear on: main, place, machine, line, demand, cleaning and pit.
#pragma once

#include <array>
#include <memory>
#include <random>
#include <string>

#include "support/random_jobs.hpp"
#include "unit/planning/jobs.hpp"

namespace mainbore::test {

class WholeJobs {
 public:
  explicit WholeJobs(std::uint64_t seed) : random_(seed) {}

  Job next() {
    Job job = sound_job();
    tell_main(job);
    tell_service(job);
    if (chance(85)) tell_place(job);
    tell_machine(job);
    if (chance(60)) tell_line(job);
    if (chance(60)) tell_pit(job.excavation);
    if (chance(20)) job.sanitary.stock = real(0.02, 13);
    if (chance(80)) job.main.cover = real(0.5, 24) * units::foot;
    if (chance(70)) job.date = "2026-" + two(1 + below(12)) + "-" + two(1 + below(28));
    if (chance(60)) tell_day(job);
    return job;
  }
  std::size_t below(std::size_t n) { return random_() % n; }
  bool chance(unsigned percent) { return random_() % 100 < percent; }
  double real(double low, double high) {
    return low + (high - low) * (static_cast<double>(random_() % 100001) / 100000.0);
  }
  template <class T, std::size_t N>
  T one_of(const std::array<T, N>& choices) {
    return choices[below(N)];
  }

 private:
  static std::string two(std::size_t n) { return (n < 10 ? "0" : "") + std::to_string(n); }

  void tell_main(Job& job) {
    const std::span<const Pipe> pipes = Catalog::builtin().pipes();
    const Pipe& pipe = pipes[below(pipes.size())];
    MainFacts& main = job.main;
    main.material = pipe.series->material;
    main.size = chance(95) ? pipe.size : NominalSize::inches(static_cast<double>(1 + below(70)));
    main.class_name = chance(70) ? pipe.class_name : "";
    main.pressure = (chance(70) ? real(20, 120) : real(5, 320)) * units::psi;
    if (chance(30)) main.pressure_low = real(5, 100) * units::psi;
    if (pipe.wall && chance(60)) main.wall = real(0.6, 1.3) * *pipe.wall;
    if (pipe.od && chance(30)) main.od = real(0.97, 1.03) * *pipe.od;
    if (pipe.od && chance(30)) main.circumference = real(0.97, 1.03) * 3.14159265 * *pipe.od;
    if (pipe.plausible) {
      if (chance(60)) main.wall = real(0.3, 1.2) * pipe.plausible->wall_to;
      if (chance(70)) main.od = real(0.95, 1.05) * pipe.plausible->od_from;
    }
    if (chance(pipe.rating ? 15 : 70)) main.rating = real(40, 300) * units::psi;
    if (chance(30)) main.occasional_surge = real(0, 150) * units::psi;
    if (chance(50)) main.installed = 1900 + static_cast<int>(below(125));
    if (chance(30)) main.surge.reset();
    else main.surge = real(0, 80) * units::psi;
    if (chance(20)) main.temperature.reset();
    else main.temperature = Temperature::fahrenheit(real(-5, 120));
    if (chance(20)) tell_small_iron(main);
    if (chance(10)) main.pressurized = false;
    if (chance(5)) main.condition = Condition::pitted;
  }

  // Where a direct tap is likeliest, and its point nearest to the far wall.
  void tell_small_iron(MainFacts& main) {
    main.material = Material::ductile_iron;
    main.size = NominalSize::inches(one_of(std::array{3.0, 4.0, 6.0, 8.0}));
    main.class_name = chance(50) ? "Class 53" : "PC 350";
    main.wall.reset();
    main.od.reset();
    main.circumference.reset();
    main.rating.reset();
  }

  void tell_service(Job& job) {
    constexpr std::array taps = {0.625, 0.75, 1.0, 1.0, 1.25, 1.5, 2.0, 3.0, 4.0, 6.0};
    job.service.size = NominalSize::inches(one_of(taps));
    if (chance(60)) job.service.thread = static_cast<ThreadStandard>(below(3));
    if (chance(25)) job.service.method = static_cast<Method>(below(3));
    if (chance(40)) job.service.stop_rating.reset();
    if (chance(40)) job.service.saddle_rating.reset();
    if (chance(30)) job.service.clock = ClockPosition{static_cast<int>(30 * below(24))};
  }

  void tell_place(Job& job) {
    for (std::size_t things = below(4); things > 0; --things) {
      Nearby thing;
      thing.what = static_cast<NearbyThing>(below(nearby_names.size()));
      thing.along = real(-130, 130) * units::inch;
      if (chance(70)) thing.clock = chance(50) ? ClockPosition{90} : ClockPosition{static_cast<int>(30 * below(24))};
      job.nearby->push_back(thing);
    }
  }

  // What rules of the utility's own ask for.
  void tell_day(Job& job) {
    if (chance(70)) job.air_temperature = Temperature::fahrenheit(real(-20, 100));
    if (chance(70)) job.service.dwellings = static_cast<int>(below(10));
    if (chance(70)) job.service.premises = 1 + static_cast<int>(below(3));
    LineFacts& line = job.service.line;
    if (chance(70)) line.cover = real(0, 8) * units::foot;
    if (chance(70)) line.gas = real(0, 12) * units::foot;
    if (chance(70)) line.electric = real(0, 12) * units::foot;
    if (chance(70)) line.sewer = real(0, 12) * units::foot;
  }

  void tell_machine(Job& job) {
    if (chance(10)) job.machine = {};
    if (!chance(60)) return;
    auto machine = truck_machine();
    machine->bar_diameter = real(0.5, 2.5) * units::inch;
    machine->bar_travel = real(8, 16) * units::inch;
    machine->standoff = real(2, 10) * units::inch;
    machine->gasket_diameter = real(1.2, 3.5) * units::inch;
    machine->stud_diameter = real(0.3, 0.8) * units::inch;
    machine->hand_limit = real(60, 250) * units::psi;
    job.machine.given = machine;
  }

  void tell_line(Job& job) {
    LineFacts& line = job.service.line;
    line.material = static_cast<Tubing>(below(tubing_count));
    line.length = real(2, 300) * units::foot;
    if (chance(50)) line.rise = real(-20, 60) * units::foot;
    if (chance(30)) line.friction = FrictionMethod::darcy_weisbach;
    if (chance(30)) line.size = job.service.size;
    else if (chance(20)) line.size = NominalSize::inches(one_of(std::array{0.625, 0.75, 1.0, 1.5}));
    DemandFacts& demand = job.service.demand;
    if (chance(60)) demand.flow = real(1, 80) * units::gpm;
    else demand.fixture_units = real(1, 100);
    if (chance(50)) demand.code = PlumbingCode::ipc;
    if (chance(40)) demand.sprinklers = static_cast<DwellingSprinklers>(below(3));
    if (chance(40)) demand.shared = true;
    if (chance(40)) demand.continuous = real(0, 20) * units::gpm;
    if (chance(40)) job.service.meter = NominalSize::inches(one_of(std::array{0.625, 0.75, 1.0, 1.5, 2.0}));
  }

  void tell_pit(ExcavationFacts& pit) {
    if (chance(70)) pit.soil = static_cast<SoilClaim>(below(4));
    if (chance(50)) pit.strength = real(0.1, 3) * units::tsf;
    if (chance(60)) pit.earth = static_cast<Earth>(below(4));
    if (chance(60)) pit.granular = false;
    if (chance(70)) pit.fissured = chance(10);
    if (chance(70)) pit.vibration = chance(10);
    if (chance(70)) pit.disturbed = chance(10);
    if (chance(20)) pit.layers = static_cast<LayerFacts>(below(3));
    if (chance(20)) pit.water = static_cast<PitWater>(below(3));
    if (chance(50)) pit.distress = chance(30);
    if (chance(60)) pit.open_for = real(1, 60) * units::hour;
    if (chance(50)) pit.protection = static_cast<Protection>(below(2));
    if (chance(60)) pit.finding = CaveInSign::no_sign;
    if (chance(60)) pit.hazard = chance(40);
    if (chance(60)) pit.crossing = chance(50);
    if (chance(50)) pit.spoil_distance = real(0, 6) * units::foot;
    if (chance(70)) pit.located = true;
    if (chance(40)) pit.sewer = real(0, 15) * units::foot;
    if (chance(40)) pit.sewer_below = real(0, 30) * units::inch;
  }

  std::mt19937_64 random_;
};

}  // namespace mainbore::test
