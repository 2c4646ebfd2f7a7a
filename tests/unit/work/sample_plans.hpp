// Finished plans, put together by hand, for tests of the words: an invented district, plausible numbers.
#pragma once

#include "mainbore/plan.hpp"

namespace mainbore::test {

struct Sample {
  Method method = Method::direct;
  Material material = Material::ductile_iron;
  bool wet = true;
  Feed feed = Feed::hand;
  Verdict verdict = Verdict::go;
};

// Tables that the sample plans point into.
struct SampleTables {
  Source handbook{"sample-standard", "Sample pipe standard, 3rd edition", "Sample pipe standard", "table 4", ""};
  Basis published{&handbook, How::published, false, nullptr};
  Basis practice{};
  Basis recalled{&handbook, How::memory, false, nullptr};
  PipeSeries series;
  Pipe pipe;
  Pipe thicker;
  MachineProfile machine;

  SampleTables() {
    series.id = "sample";
    series.title = "Sample pipe";
    series.provenance.fill(published);
    pipe.series = &series;
    pipe.size = NominalSize::inches(6);
    pipe.class_name = "PC 350";
    pipe.od = 6.90 * units::inch;
    pipe.wall = 0.25 * units::inch;
    pipe.rating = 350.0 * units::psi;
    thicker = pipe;
    thicker.class_name = "Class 53";
    machine.id = "sample";
    machine.title = "sample machine";
    machine.maker_figures = true;
    machine.basis = practice;
  }
};

inline const SampleTables& sample_tables() {
  static const SampleTables tables;
  return tables;
}

inline Finding finding(FindingCode code, Severity severity) {
  Finding made;
  made.code = code;
  made.severity = severity;
  made.basis[0] = &sample_tables().published;
  return made;
}

inline Plan sample_plan(const Sample& sample = {}) {
  const SampleTables& tables = sample_tables();
  Plan plan;
  plan.verdict = sample.verdict;
  Job& job = plan.job;
  job.id = "S-104";
  job.place = "12 Quarry Lane, Ashmere";
  job.main.material = sample.material;
  job.main.size = NominalSize::inches(6);
  job.main.pressure = 82.0 * units::psi;
  job.main.cover = 60.0 * units::inch;
  job.main.pressurized = sample.wet;
  job.service.size = NominalSize::inches(1);

  ResolvedMain& main = plan.main;
  main.material = sample.material;
  main.size = NominalSize::inches(6);
  main.candidates = {&tables.pipe, &tables.thicker};
  main.governing = &tables.pipe;
  main.od = 6.90 * units::inch;
  main.od_low = 6.84 * units::inch;
  main.od_high = 6.96 * units::inch;
  main.wall_nominal = 0.25 * units::inch;
  main.wall_least = 0.20 * units::inch;
  main.wall_basis = WallBasis::catalog;
  main.rating = 350.0 * units::psi;
  main.assumed.push_back({"main.class", std::string_view("PC 350"), "the weakest pipe that fits what is known",
                          "read the class on the pipe"});
  main.settle = SettlingReading{ReadingId::wall,
                                {{Measure(0.20 * units::inch), Measure(0.26 * units::inch), &tables.pipe, 0},
                                 {Measure(0.29 * units::inch), Measure(0.35 * units::inch), &tables.thicker, 2}}};

  plan.evidence = {
      {PlanPart::pipe, Taken::pipe_diameter, {}, Measure(6.90 * units::inch), From::table, tables.published},
      {PlanPart::pipe, Taken::pipe_wall, {}, Measure(0.25 * units::inch), From::table, tables.published},
      {PlanPart::pipe, Taken::pipe_rating, {}, Measure(350.0 * units::psi), From::table, tables.published},
  };
  plan.pressure.line = 82.0 * units::psi;
  plan.pressure.surge = 50.0 * units::psi;
  plan.pressure.limits = {{PressureLink::pipe, 350.0 * units::psi, &tables.published},
                          {PressureLink::feed, 100.0 * units::psi, &tables.practice}};
  plan.pressure.governed_by = plan.pressure.limits.back();
  plan.location.clock = {90};
  plan.location.shift = -18.0 * units::inch;
  plan.location.clearings.push_back({NearbyThing::joint, 6.0 * units::inch, 24.0 * units::inch, 24.0 * units::inch});
  plan.stop_numbers = {
      {ReadingId::wall, Measure(0.237 * units::inch), std::nullopt},
      {ReadingId::line_pressure, std::nullopt, Measure(100.0 * units::psi)},
      {ReadingId::circumference, Measure(21.5 * units::inch, Kind::tape), Measure(21.875 * units::inch, Kind::tape)}};

  Setup& setup = plan.setup;
  setup.machine = &tables.machine;
  setup.feed = sample.feed;
  setup.saddle_od = 6.90 * units::inch;
  if (sample.wet) setup.push = 64.4 * units::lbf;
  if (sample.verdict == Verdict::no_go) return plan;

  ChosenMethod& method = plan.method;
  method.kind = sample.method;
  method.tap = NominalSize::inches(1);
  method.hole = 1.0 * units::inch;
  if (sample.method != Method::sleeve) method.thread = ThreadStandard::npt;
  MarksPlan& marks = plan.marks.emplace();
  marks.at = mechanics::BarMarks{0.20 * units::inch, 0.62 * units::inch, {}, {}, 6.4 * units::inch, {}};
  marks.limit = 5.9 * units::inch;
  if (sample.method != Method::direct) return plan;
  marks.drawn_back = 4.5 * units::inch;
  marks.tap_depth = 1.1 * units::inch;
  marks.tap_turns = 12.65;

  method.hole = 1.315 * units::inch;
  setup.chain = ChainPlan{18.8 * units::inch, 24.0 * units::inch, 1, 12.0};
  setup.clamp = ClampPlan{620.0 * units::lbf,
                          320.0 * units::lbf,
                          mechanics::StudTorque{2.0 * units::ft_lbf, 4.0 * units::ft_lbf, 6.0 * units::ft_lbf},
                          {}};
  setup.drill_stroke = 0.62 * units::inch;
  setup.travel_needed = 4.4 * units::inch;
  ThreadsInWall& in_wall = plan.engagement.emplace();
  in_wall.at_nominal.complete_threads = 2.15;
  in_wall.at_least = mechanics::Engagement{};
  in_wall.at_least->complete_threads = 1.58;
  in_wall.required = 2.0;
  in_wall.wall_needed = 0.237 * units::inch;
  in_wall.margin = -0.037 * units::inch;
  in_wall.judged = true;
  MakeupPlan& makeup = plan.makeup.emplace();
  makeup.wrench_turns = 2.0;
  makeup.threads_showing = 2.0;
  makeup.makeup.hand_tight_turns = 3.85;
  makeup.makeup.turns_past_gauge = -0.75;
  makeup.makeup.stop_past_gauge = -0.065 * units::inch;
  makeup.tip_depth = 1.1 * units::inch;
  makeup.far_wall_clearance = 5.2 * units::inch;
  makeup.protrusion = 0.27 * units::inch;
  return plan;
}

}  // namespace mainbore::test
