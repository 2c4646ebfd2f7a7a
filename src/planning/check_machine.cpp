#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "planning/calculations.hpp"
#include "planning/checks.hpp"
#include "planning/instrument.hpp"

namespace mainbore::planning {
namespace {

constexpr auto drill_point_angle = mechanics::Angle::degrees(118.0);

// The machine to plan with: the job's own, the catalog's, or the unspecified one.
const MachineProfile& machine_of(const Site& site) {
  const MachineFacts& facts = site.job().machine;
  if (facts.given) return *facts.given;
  const MachineProfile* named = facts.profile.empty() ? nullptr : site.catalog.machine(facts.profile);
  return named != nullptr ? *named : site.catalog.unspecified_machine();
}

// By hand while that is enough.
Feed feed_of(const Site& site, const MachineProfile& machine) {
  if (site.job().machine.feed) return *site.job().machine.feed;
  const bool too_much_for_hand = machine.hand_limit && over(site.line(), *machine.hand_limit);
  const bool powered = machine.powered_limit && (!machine.hand_limit || too_much_for_hand);
  return powered ? Feed::powered : Feed::hand;
}

void plan_chain(const Site& site, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const MachineProfile& machine = *candidate.setup.machine;
  if (!main.od || !machine.chain_length || !machine.anchor_offset || !machine.anchor_height) return;
  const mechanics::ChainAnchor anchor{*machine.anchor_offset, 0.5 * *main.od + *machine.anchor_height};
  const Length thickness = machine.chain_thickness.value_or(Length());
  const auto path = mechanics::chain_path(*main.od, thickness, anchor);
  if (!path) {
    candidate.said.findings.add(FindingCode::machine_figures_wrong, Severity::hold)
        .value(*machine.anchor_height)
        .at_least(mechanics::lowest_anchor(*main.od, thickness, anchor.offset) - 0.5 * *main.od)
        .with(std::string_view("machine.anchor_height"),
              std::string_view("the chain cannot run from there round the pipe; it must be over"))
        .basis(machine.basis);
    return;
  }
  ChainPlan& chain = candidate.setup.chain.emplace();
  chain.needed = path->length;
  chain.leg_degrees = path->leg.degrees();
  const Length missing = path->length - *machine.chain_length;
  const bool extends = machine.chain_extension && *machine.chain_extension > Length();
  if (over(path->length, *machine.chain_length) && extends) {
    chain.extensions = static_cast<int>(std::ceil(missing / *machine.chain_extension - 1e-9));
  }
  chain.available =
      *machine.chain_length + static_cast<double>(chain.extensions) * machine.chain_extension.value_or(Length());
  const int on_truck = site.job().machine.extensions.value_or(chain.extensions);
  if (chain.extensions > 0 && !site.job().machine.extensions) {
    candidate.said.assume({"machine.extensions", chain.extensions, "the load list asks for them",
                           "count the chain extensions on the truck"});
    candidate.said.taken.assumed(PlanPart::machine, Taken::chain_extensions, machine.basis, chain.extensions);
  }
  write_chain(site, *machine.chain_length + static_cast<double>(on_truck) * machine.chain_extension.value_or(Length()),
              candidate);
  if (over(chain.needed, chain.available) || on_truck < chain.extensions) {
    candidate.said.findings.add(FindingCode::machine_chain_short, Severity::hold)
        .value(
            Measure(*machine.chain_length + static_cast<double>(on_truck) * machine.chain_extension.value_or(Length()),
                    Kind::tape))
        .at_least(Measure(chain.needed, Kind::tape))
        .with(chain.extensions, on_truck)
        .basis(machine.basis);
  }
}

bool gasket_lies_on_pipe(const Site& site, const MachineProfile& machine) {
  const auto& od = site.main.od;
  return !od || !machine.gasket_diameter || over(*od, *machine.gasket_diameter);
}

void plan_clamp(const Site& site, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const Rules& rules = site.rules;
  Setup& setup = candidate.setup;
  const MachineProfile& machine = *setup.machine;
  if (!machine.gasket_diameter || !setup.chain || !gasket_lies_on_pipe(site, machine)) return;
  mechanics::ClampLoad load;
  if (site.pressurized()) load.line = site.line();
  load.seal_diameter = *machine.gasket_diameter;
  load.gasket_factor = rules.machine.gasket_factor.value;
  load.gasket_area = std::numbers::pi * *machine.gasket_diameter * rules.machine.gasket_width.value;
  load.thrust = setup.cut_thrust;
  ClampPlan& clamp = setup.clamp.emplace();
  clamp.force = mechanics::clamp_force_needed(load);
  candidate.said.taken.take(PlanPart::machine, Taken::seal, rules.machine.gasket_factor.basis,
                            Measure(rules.machine.gasket_factor.value, Kind::ratio));
  candidate.said.taken.take(PlanPart::machine, Taken::seal, rules.machine.gasket_width.basis,
                            Measure(rules.machine.gasket_width.value));
  clamp.tension = mechanics::chain_tension_needed(load, mechanics::Angle::degrees(setup.chain->leg_degrees));
  if (clamp.tension && machine.stud_diameter) {
    clamp.stud_torque = mechanics::stud_torque(*clamp.tension, *machine.stud_diameter, {});
    // More studs may share a leg; that each pulls a whole one is never too little.
    const Pressure stress = mechanics::stud_stress(*clamp.tension, *machine.stud_diameter);
    candidate.said.taken.take(PlanPart::machine, Taken::stud_stress, rules.machine.stud_stress.basis,
                              Measure(rules.machine.stud_stress.value));
    if (site.calculates()) {
      candidate.said.taken.calculated(Worked(PlanPart::machine, Formula::stud_stress,
                                             {worked_out(Formula::chain_tension, *clamp.tension),
                                              figure(Measure(*machine.stud_diameter), machine.basis)},
                                             stress)
                                          .at_most(figure(rules.machine.stud_stress)));
    }
    if (over(stress, rules.machine.stud_stress.value)) {
      candidate.said.findings.add(FindingCode::machine_stud_overloaded, Severity::hold)
          .value(stress)
          .at_most(rules.machine.stud_stress.value)
          .with(Measure(*clamp.tension), Measure(*machine.stud_diameter))
          .basis(rules.machine.stud_stress.basis, machine.basis);
    }
  }
  write_clamp(site, candidate);
  const MaterialFacts& facts = site.catalog.facts(main.material);
  const auto& modulus = facts.modulus;
  if (!is_plastic(main.material) || !modulus || !main.od || !main.wall_least) return;
  const mechanics::Barrel barrel{*main.od, *main.wall_least};
  if (!over(*main.wall_least, Length()) || !over(*main.od, 2.0 * *main.wall_least)) return;
  clamp.ovality = mechanics::ovality(barrel, *modulus, clamp.force, rules.machine.chain_bearing.value);
  candidate.said.taken.take(PlanPart::machine, Taken::pipe_stiffness, facts.basis, Measure(*modulus));
  candidate.said.taken.take(PlanPart::machine, Taken::chain_squeeze, rules.machine.chain_bearing.basis,
                            Measure(rules.machine.chain_bearing.value));
  candidate.said.taken.take(PlanPart::machine, Taken::chain_squeeze, rules.machine.ovality_limit.basis,
                            Measure(100.0 * rules.machine.ovality_limit.value, Kind::percent));
  if (site.calculates()) {
    candidate.said.taken.calculated(
        Worked(PlanPart::machine, Formula::ovality,
               {figure(Measure(*modulus), facts.basis), diameter(site, main, *main.od), least_wall(main),
                worked_out(Formula::clamp_force, clamp.force), figure(rules.machine.chain_bearing)},
               Measure(100.0 * *clamp.ovality, Kind::percent))
            .at_most(figure(Measure(100.0 * rules.machine.ovality_limit.value, Kind::percent),
                            rules.machine.ovality_limit.basis, From::rule)));
  }
  const bool beyond = over(*clamp.ovality, rules.machine.ovality_limit.value);
  if (beyond || over(*clamp.ovality, rules.machine.ovality_caution.value)) {
    const Rule<double>& rule = beyond ? rules.machine.ovality_limit : rules.machine.ovality_caution;
    candidate.said.findings.add(FindingCode::machine_chain_ovals_pipe, beyond ? Severity::hold : Severity::caution)
        .value(Measure(100.0 * *clamp.ovality, Kind::percent))
        .at_most(Measure(100.0 * rule.value, Kind::percent))
        .with(Measure(100.0 * rules.machine.ovality_caution.value, Kind::percent),
              Measure(100.0 * rules.machine.ovality_limit.value, Kind::percent))
        .basis(rule.basis, rules.machine.chain_bearing.basis);
  }
}

// What is drilled, and what the tool presses on the pipe. Where the thread's own drill is not listed, the hole over the
// threads is taken: no drill is larger, and thrust, stroke and travel all grow with it.
void plan_cutting(const Site& site, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const Rules& rules = site.rules;
  Setup& setup = candidate.setup;
  if (is_plastic(main.material)) {
    setup.cut_thrust = rules.drilling.shell_cutter_thrust.value;
    candidate.said.taken.take(PlanPart::machine, Taken::tool_thrust, rules.drilling.shell_cutter_thrust.basis,
                              Measure(setup.cut_thrust));
    return;
  }
  const TapThread* thread = site.catalog.thread(*candidate.method.thread, candidate.method.tap);
  setup.drill_is_bound = thread == nullptr || !thread->drill;
  setup.drill = setup.drill_is_bound ? *candidate.method.hole : *thread->drill;
  setup.drill_stroke = main.wall_nominal ? drill_stroke_for(site, *setup.drill, *main.wall_nominal) : std::nullopt;
  const mechanics::DrillCut cut{*setup.drill, rules.drilling.feed.value};
  setup.drill_load = mechanics::drill_load_range(
      mechanics::handbook_drill_load(cut, rules.drilling.work_factor.value, 1.0, mechanics::standard_point),
      mechanics::cast_iron_drill_load(cut, rules.drilling.iron_factor.value));
  setup.cut_thrust = setup.drill_load->high.thrust;
  if (site.calculates()) {
    const mechanics::DrillPoint& point = mechanics::standard_point;
    candidate.said.taken.calculated(Worked(
        PlanPart::machine, Formula::drill_thrust,
        {figure(Measure(*setup.drill), thread != nullptr ? thread->basis : usual_practice), figure(rules.drilling.feed),
         figure(rules.drilling.work_factor, Kind::ratio), plain(point.thrust_factor), plain(point.chisel_factor),
         figure(rules.drilling.iron_factor, Kind::ratio)},
        setup.cut_thrust));
  }
  candidate.said.taken.take(PlanPart::machine, Taken::tool_thrust, rules.drilling.feed.basis,
                            Measure(rules.drilling.feed.value));
  candidate.said.taken.take(PlanPart::machine, Taken::tool_thrust, rules.drilling.work_factor.basis,
                            Measure(rules.drilling.work_factor.value, Kind::ratio));
  candidate.said.taken.take(PlanPart::machine, Taken::tool_thrust, rules.drilling.iron_factor.basis,
                            Measure(rules.drilling.iron_factor.value, Kind::ratio));
}

// What the bar must pass, against what it has.
void write_travel(Candidate& candidate, Formula formula, std::initializer_list<CalculationInput> lengths,
                  Length needed) {
  const MachineProfile& machine = *candidate.setup.machine;
  Worked travel(PlanPart::machine, formula, lengths, Measure(needed, Kind::tape));
  if (machine.bar_travel) travel.at_most(figure(Measure(*machine.bar_travel), machine.basis));
  candidate.said.taken.calculated(std::move(travel));
}

void require_travel(Candidate& candidate, Length needed) {
  Setup& setup = candidate.setup;
  const MachineProfile& machine = *setup.machine;
  setup.travel_needed = std::max(setup.travel_needed.value_or(needed), needed);
  if (!machine.bar_travel || !over(needed, *machine.bar_travel)) return;
  candidate.said.findings.add(FindingCode::machine_travel_short, Severity::hold)
      .value(Measure(*machine.bar_travel, Kind::tape))
      .at_least(Measure(needed, Kind::tape))
      .basis(machine.basis);
}

// A direct tap: from behind the machine's valve to the tap's full depth.
void plan_travel(const Site& site, Candidate& candidate) {
  const MachineProfile& machine = *candidate.setup.machine;
  if (!machine.standoff) return;
  const auto stroke = stroke_through(site, candidate, candidate.setup.drill.value_or(*candidate.method.hole));
  if (!stroke) return;
  // On a combined tool the drill stands ahead of the tap by its stroke at the least: it is through before the tap bites.
  const Length tap_depth = tap_depth_for(site, candidate).value_or(Length());
  const ToolFacts& tool = site.job().tool;
  const Length lead = std::max(*stroke, tool.lead.value_or(Length()));
  Length needed = mechanics::bar_travel(*machine.standoff, *stroke, lead + tap_depth);
  const CalculationInput standoff = figure(Measure(*machine.standoff), machine.basis);
  if (site.calculates()) {
    const CalculationInput depth = candidate.makeup && candidate.makeup->tip_depth
                                       ? worked_out(Formula::tap_depth, tap_depth)
                                       : plain(tap_depth.base(), Kind::length);
    write_travel(candidate, Formula::travel_tool,
                 {standoff, worked_out(Formula::drill_stroke, *stroke),
                  tool.lead ? given(*tool.lead) : plain(0.0, Kind::length), depth},
                 needed);
  }
  // The stop on its insertion tool goes in as deep as it is made up.
  if (tool.length && tool.insertion_length) {
    const Length made_up = candidate.makeup ? candidate.makeup->makeup.engaged_length : tap_depth;
    const Length for_stop = *machine.standoff + *tool.length - *tool.insertion_length + made_up;
    needed = std::max(needed, for_stop);
    if (site.calculates()) {
      write_travel(candidate, Formula::travel_stop,
                   {standoff, given(*tool.length), given(*tool.insertion_length), plain(made_up.base(), Kind::length)},
                   for_stop);
    }
  }
  require_travel(candidate, needed);
}

// What is on the bar must stand behind the valve before that is shut.
void judge_valve(const Site& site, Candidate& candidate) {
  const MachineProfile& machine = *candidate.setup.machine;
  if (!machine.standoff || !machine.valve_height) return;
  const ToolFacts& tool = site.job().tool;
  const auto judge = [&](Length drawn_back, std::string_view what) {
    if (!over(*machine.valve_height, drawn_back)) return;
    candidate.said.findings.add(FindingCode::machine_valve_not_clear, Severity::hold)
        .value(drawn_back)
        .at_least(*machine.valve_height)
        .with(what)
        .basis(machine.basis);
  };
  judge(*machine.standoff, "tool's point");
  if (tool.length && tool.insertion_length) {
    judge(*machine.standoff + *tool.length - *tool.insertion_length, "stop on the insertion tool");
  }
}

// A saddle's machine stands on the open stop: its bar reaches through adapter, stop and saddle before it cuts. Each length
// is taken with a tape in the yard; one that nobody has taken may be the one that is too long.
void plan_reach_through_saddle(const Site& site, Candidate& candidate) {
  const MachineProfile& machine = *candidate.setup.machine;
  if (machine.without_limits) return;
  const std::optional<Length>& saddle_height = candidate.fitting.saddle_height.value;
  const std::optional<Length>& stop_length = candidate.fitting.stop_length.value;
  std::array<Detail, 4> missing;
  std::size_t count = 0;
  const auto need = [&](bool known, std::string_view what) {
    if (!known) missing[count++] = what;
  };
  need(saddle_height.has_value(), "the saddle from pipe to outlet face (service.saddle_height)");
  need(stop_length.has_value(), "the corporation stop from end to end (service.stop_length)");
  need(machine.adapter_standoff.has_value(),
       "the adapter's end to the drawn-back cutter's edge (machine.adapter_standoff)");
  need(machine.bar_travel.has_value(), "the bar's travel (machine.bar_travel)");
  if (count > 0) {
    candidate.said.findings.add(FindingCode::machine_reach_unknown, Severity::hold)
        .with(missing[0], missing[1], missing[2], missing[3])
        .basis(machine.basis);
  }
  const auto stroke = stroke_through(site, candidate, *candidate.method.hole);
  if (!stroke) return;
  // What is known already may be too much.
  require_travel(candidate, saddle_height.value_or(Length()) + stop_length.value_or(Length()) +
                                machine.adapter_standoff.value_or(Length()) + *stroke);
  if (count > 0 && !(count == 1 && !machine.bar_travel)) candidate.setup.travel_needed.reset();
  if (site.calculates() && candidate.setup.travel_needed) {
    write_travel(
        candidate, Formula::travel_saddle,
        {length_of(candidate.fitting.saddle_height), length_of(candidate.fitting.stop_length),
         figure(Measure(*machine.adapter_standoff), machine.basis), worked_out(Formula::drill_stroke, *stroke)},
        *candidate.setup.travel_needed);
  }
}

// Figures that contradict the pipe, the hole or each other.
void judge_figures(const Site& site, Candidate& candidate) {
  const MachineProfile& machine = *candidate.setup.machine;
  Findings& findings = candidate.said.findings;
  if (!gasket_lies_on_pipe(site, machine)) {
    findings.add(FindingCode::machine_figures_wrong, Severity::hold)
        .value(*machine.gasket_diameter)
        .at_most(*site.main.od)
        .with(std::string_view("machine.gasket_diameter"),
              std::string_view("the sealing circle lies on the pipe; it must be under"))
        .basis(machine.basis);
  }
  if (!candidate.method.hole) return;
  const Length hole = *candidate.method.hole;
  const Rule<Length>& land = site.rules.machine.gasket_land;
  if (machine.gasket_diameter) {
    candidate.said.taken.take(PlanPart::machine, Taken::gasket_land, land.basis, Measure(land.value));
  }
  const Length sealing = hole + 2.0 * land.value;
  if (machine.gasket_diameter && site.calculates()) {
    candidate.said.taken.calculated(
        Worked(PlanPart::machine, Formula::gasket_needed, {plain(hole.base(), Kind::length), figure(land)}, sealing)
            .at_most(figure(Measure(*machine.gasket_diameter), machine.basis)));
  }
  if (machine.gasket_diameter && (over(sealing, *machine.gasket_diameter) || !over(*machine.gasket_diameter, hole))) {
    findings.add(FindingCode::machine_gasket_small, Severity::hold)
        .value(*machine.gasket_diameter)
        .at_least(sealing)
        .with(Measure(hole))
        .basis(machine.basis, land.basis);
  }
  // The valve between pipe and tool passes the hole's tool, and is no thinner than the flap or plug that shuts it.
  if (machine.standoff && over(hole, *machine.standoff)) {
    findings.add(FindingCode::machine_figures_wrong, Severity::hold)
        .value(*machine.standoff)
        .at_least(hole)
        .with(std::string_view("machine.standoff"),
              std::string_view("valve and saddle stand between the pipe and the drawn-back tool; it must be at least"))
        .basis(machine.basis);
  }
}

// A check without its figures is not passed. Of a machine whose maker's figures nobody has given, all are asked for.
void ask_for_figures(Candidate& candidate) {
  const MachineProfile& machine = *candidate.setup.machine;
  if (!machine.maker_figures || machine.without_limits) return;
  std::array<Detail, 4> missing;
  std::size_t count = 0;
  const auto need = [&](bool known, std::string_view what) {
    if (!known) missing[count++] = what;
  };
  need(machine.bar_travel && machine.standoff, "the bar's travel (machine.bar_travel, machine.standoff)");
  need(machine.saddle_od_from && machine.saddle_od_to,
       "the seat on the pipe (machine.saddle_od_from, machine.saddle_od_to)");
  need(machine.chain_length && machine.chain_thickness && machine.anchor_offset && machine.anchor_height,
       "the chain (machine.chain_length, machine.chain_thickness, machine.anchor_offset, machine.anchor_height)");
  need(machine.gasket_diameter && machine.stud_diameter,
       "seal and clamp (machine.gasket_diameter, machine.stud_diameter)");
  if (count == 0) return;
  candidate.said.findings.add(FindingCode::machine_figures_missing, Severity::hold)
      .with(missing[0], missing[1], missing[2], missing[3])
      .basis(machine.basis);
}

// A direct tap's machine stands on the pipe itself: a seat of its diameter, and a chain round it.
void plan_seat(const Site& site, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const MachineProfile& machine = *candidate.setup.machine;
  candidate.setup.saddle_od = main.od;
  ask_for_figures(candidate);
  // A pipe that measures no further outside the seat than the instrument errs is taken to be inside it.
  const Length error = diameter_error(site.job().main, site.rules);
  const bool too_small = main.od && machine.saddle_od_from && over(*machine.saddle_od_from, *main.od + error);
  const bool too_large = main.od && machine.saddle_od_to && over(*main.od - error, *machine.saddle_od_to);
  if (too_small || too_large) {
    candidate.said.findings.add(FindingCode::machine_no_saddle, Severity::hold)
        .value(*main.od)
        .at_most(too_large ? *machine.saddle_od_to : *machine.saddle_od_from)
        .with(machine.saddle_od_from ? Detail(Measure(*machine.saddle_od_from)) : Detail(),
              machine.saddle_od_to ? Detail(Measure(*machine.saddle_od_to)) : Detail())
        .basis(machine.basis);
  }
  judge_figures(site, candidate);
  // The cut decides nothing but the travel and, by its thrust, the clamp.
  const bool cut_decides = machine.standoff || machine.gasket_diameter;
  if (candidate.method.hole && (site.whole() || cut_decides)) {
    plan_cutting(site, candidate);
    plan_travel(site, candidate);
  }
  plan_chain(site, candidate);
  plan_clamp(site, candidate);
}

}  // namespace

std::optional<Length> thickest_reading_of(const std::vector<const Pipe*>& pipes) {
  std::optional<Length> thickest;
  for (const Pipe* const pipe : pipes) {
    if (pipe->wall) thickest = std::max(thickest, std::optional(thickest_reading(*pipe)));
    else if (pipe->plausible) thickest = std::max(thickest, std::optional(pipe->plausible->wall_to));
  }
  return thickest;
}

std::optional<Length> thickest_wall(const Site& site) {
  const ResolvedMain& main = site.main;
  const Length gauge = site.rules.measuring.wall_uncertainty.value;
  if (main.wall_basis == WallBasis::measured) return *main.wall_nominal + gauge;
  const std::optional<Length> thickest = std::max(main.wall_nominal, site.thickest_listed);
  if (thickest) return *thickest + gauge;
  return std::nullopt;
}

std::optional<Length> drill_stroke_for(const Site& site, Length drill, Length wall) {
  const ResolvedMain& main = site.main;
  if (is_plastic(main.material) || !main.od) return std::nullopt;
  return mechanics::drill_stroke({*main.od, wall}, drill, drill_point_angle, site.rules.drilling.clearance.value);
}

// At the flanks of the hole the wall is longer; in metal the point of a drill is ahead of them.
std::optional<Length> stroke_through(const Site& site, Candidate& candidate, Length hole) {
  const ResolvedMain& main = site.main;
  const auto wall = thickest_wall(site);
  if (!main.od || !wall) return std::nullopt;
  candidate.said.taken.take(PlanPart::machine, Taken::past_breakthrough, site.rules.drilling.clearance.basis,
                            Measure(site.rules.drilling.clearance.value));
  const auto drilled = drill_stroke_for(site, hole, *wall);
  const auto stroke = drilled ? drilled
                              : mechanics::drill_stroke({*main.od, *wall}, hole, mechanics::Angle::degrees(180.0),
                                                        site.rules.drilling.clearance.value);
  if (!stroke) return wall;
  if (site.calculates()) {
    candidate.said.taken.calculated(
        Worked(PlanPart::machine, Formula::drill_stroke,
               {diameter(site, main, *main.od), plain(wall->base(), Kind::length), plain(hole.base(), Kind::length),
                plain(drilled ? 118.0 : 180.0, Kind::angle), figure(site.rules.drilling.clearance)},
               *stroke, std::string_view("thickest wall it may meet")));
  }
  return stroke;
}

std::optional<Length> tap_depth_for(const Site& site, const Candidate& candidate) {
  if (candidate.makeup && candidate.makeup->tip_depth) return candidate.makeup->tip_depth;
  // The smallest that is no narrower than the hole, else the largest.
  const auto comes_first = [&](const TapThread& one, const TapThread& other) {
    const bool one_narrow = over(*candidate.method.hole, one.form.major);
    const bool other_narrow = over(*candidate.method.hole, other.form.major);
    if (one_narrow != other_narrow) return other_narrow;
    return one_narrow ? one.form.major > other.form.major : one.form.major < other.form.major;
  };
  const TapThread* next = nullptr;
  for (const TapThread& thread : site.catalog.threads()) {
    if (!thread.geometry || !thread.projection) continue;
    if (next == nullptr || comes_first(thread, *next)) next = &thread;
  }
  if (next == nullptr) return std::nullopt;
  const Rules& rules = site.rules;
  const auto makeup =
      mechanics::makeup(*next->geometry, {rules.direct.wrench_turns.value, rules.direct.threads_showing.value});
  return mechanics::tap_tip_depth(*next->geometry, *next->projection, makeup.stop_past_gauge);
}

void check_machine(const Site& site, Candidate& candidate) {
  const MachineProfile& machine = machine_of(site);
  const Rules& rules = site.rules;
  const NominalSize tap = candidate.method.tap;
  Setup& setup = candidate.setup;
  Findings& findings = candidate.said.findings;
  setup.machine = &machine;
  setup.feed = feed_of(site, machine);
  if (candidate.method.kind == Method::none || candidate.method.kind == Method::sleeve) return;
  if (site.pressurized()) setup.push = mechanics::bar_push(site.line(), machine.bar_diameter);

  if (!machine.maker_figures) {
    findings.add(FindingCode::machine_unspecified, Severity::hold)
        .with(std::string_view(machine.title))
        .basis(machine.basis);
    candidate.said.assume({"machine", std::string_view(machine.title), "limits that nearly any machine meets",
                           "give the machine's own figures from its maker's instructions"});
    candidate.said.taken.assumed(PlanPart::machine, Taken::machine, machine.basis, std::string_view(machine.title));
  } else {
    candidate.said.taken.take(PlanPart::machine, Taken::machine, machine.basis);
  }
  if (tap < machine.smallest_tap || tap > machine.largest_tap) {
    findings.add(FindingCode::machine_wrong_size, Severity::hold)
        .with(tap, machine.smallest_tap, machine.largest_tap)
        .basis(machine.basis);
  }
  if (setup.feed == Feed::powered && !machine.powered_limit) {
    findings.add(FindingCode::machine_no_powered_feed, Severity::hold).basis(machine.basis);
  }
  if (candidate.method.kind == Method::direct) {
    plan_seat(site, candidate);
    judge_valve(site, candidate);
  } else {
    plan_reach_through_saddle(site, candidate);
  }
  check_far_wall(site, candidate);

  if (site.pressurized()) {
    candidate.said.taken.take(PlanPart::machine, Taken::push_by_hand, rules.machine.push_caution.basis,
                              Measure(rules.machine.push_caution.value));
  }
  if (site.calculates() && site.pressurized()) {
    candidate.said.taken.calculated(Worked(PlanPart::machine, Formula::bar_push,
                                           {given(site.line()), figure(Measure(machine.bar_diameter), machine.basis)},
                                           setup.push, std::string_view("a caution beyond the limit"))
                                        .at_most(figure(rules.machine.push_caution)));
  }
  const bool beyond = over(setup.push, rules.machine.push_limit.value);
  if (beyond || over(setup.push, rules.machine.push_caution.value)) {
    const Rule<Force>& rule = beyond ? rules.machine.push_limit : rules.machine.push_caution;
    findings.add(FindingCode::machine_push_by_hand, Severity::caution)
        .value(setup.push)
        .at_most(rule.value)
        .basis(rule.basis, machine.basis);
  }
}

}  // namespace mainbore::planning
