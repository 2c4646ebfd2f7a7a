#include <cmath>

#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

// Pipes whose drilling is planned with the drill the tap wants; a plastic pipe takes a shell cutter instead.
constexpr auto drill_point_angle = mechanics::Angle::degrees(118.0);

void plan_chain(const Context& context, const MachineProfile& machine, Findings& findings) {
  const ResolvedMain& main = context.plan.main;
  if (!main.od || !machine.chain_length || !machine.anchor_offset || !machine.anchor_height) return;
  const mechanics::ChainAnchor anchor{*machine.anchor_offset, 0.5 * *main.od + *machine.anchor_height};
  const auto path = mechanics::chain_path(*main.od, machine.chain_thickness, anchor);
  if (!path) return;
  ChainPlan& chain = context.plan.setup.chain.emplace();
  chain.needed = path->length;
  chain.leg_degrees = path->leg.degrees();
  const Length missing = path->length - *machine.chain_length;
  const bool extends = machine.chain_extension && *machine.chain_extension > Length();
  if (over(path->length, *machine.chain_length) && extends) {
    chain.extensions = static_cast<int>(std::ceil(missing / *machine.chain_extension - 1e-9));
  }
  chain.available = *machine.chain_length + static_cast<double>(chain.extensions) *
                                                machine.chain_extension.value_or(Length());
  const int on_truck = context.job().machine.extensions.value_or(chain.extensions);
  if (over(chain.needed, chain.available) || on_truck < chain.extensions) {
    findings.add(FindingCode::machine_chain_short, Severity::hold)
        .value(*machine.chain_length +
               static_cast<double>(on_truck) * machine.chain_extension.value_or(Length()))
        .at_least(chain.needed)
        .with(chain.extensions, on_truck)
        .basis(machine.basis);
  }
}

void plan_clamp(const Context& context, const MachineProfile& machine, Findings& findings) {
  const ResolvedMain& main = context.plan.main;
  const Rules& rules = context.rules;
  Setup& setup = context.plan.setup;
  if (!machine.gasket_diameter || !setup.chain) return;
  mechanics::ClampLoad load;
  load.line = context.line();
  load.seal_diameter = *machine.gasket_diameter;
  load.gasket_factor = rules.gasket_factor.value;
  if (setup.drill_load) load.thrust = setup.drill_load->high.thrust;
  ClampPlan& clamp = setup.clamp.emplace();
  clamp.force = mechanics::clamp_force_needed(load);
  clamp.tension = mechanics::chain_tension_needed(load, mechanics::Angle::degrees(setup.chain->leg_degrees));
  if (clamp.tension && machine.stud_diameter) {
    clamp.stud_torque = mechanics::stud_torque(*clamp.tension, *machine.stud_diameter, {});
  }
  const auto& modulus = context.catalog.facts(main.material).modulus;
  if (!is_plastic(main.material) || !modulus || !main.od || !main.wall_least) return;
  const mechanics::Barrel barrel{*main.od, *main.wall_least};
  if (!over(*main.wall_least, Length()) || !over(*main.od, 2.0 * *main.wall_least)) return;
  clamp.ovality = mechanics::ovality(barrel, *modulus, clamp.force, rules.chain_bearing.value);
  const bool beyond = over(*clamp.ovality, rules.ovality_limit.value);
  if (beyond || over(*clamp.ovality, rules.ovality_caution.value)) {
    const Rule<double>& rule = beyond ? rules.ovality_limit : rules.ovality_caution;
    findings.add(FindingCode::machine_chain_ovals_pipe, beyond ? Severity::hold : Severity::caution)
        .value(Measure(100.0 * *clamp.ovality, Kind::percent))
        .at_most(Measure(100.0 * rule.value, Kind::percent))
        .basis(rule.basis, rules.chain_bearing.basis);
  }
}

void plan_drilling(const Context& context, const MachineProfile& machine, Findings& findings) {
  const Plan& plan = context.plan;
  const ResolvedMain& main = plan.main;
  const Rules& rules = context.rules;
  Setup& setup = context.plan.setup;
  const TapThread* thread = plan.method.kind == Method::direct && plan.method.thread
                                ? context.catalog.thread(*plan.method.thread, plan.method.tap)
                                : nullptr;
  std::optional<Length> drill = thread != nullptr ? thread->drill : std::nullopt;
  if (plan.method.kind == Method::saddle) drill = plan.method.hole;
  if (!drill) return;
  if (main.material == Material::ductile_iron || main.material == Material::cast_iron) {
    const mechanics::DrillCut cut{*drill, rules.drill_feed.value};
    setup.drill_load = mechanics::drill_load_range(
        mechanics::handbook_drill_load(cut, rules.drill_work_factor.value, 1.0, mechanics::standard_point),
        mechanics::cast_iron_drill_load(cut, rules.drill_iron_factor.value));
  }
  if (!main.od || !main.wall_nominal) return;
  setup.drill_stroke =
      mechanics::drill_stroke({*main.od, *main.wall_nominal}, *drill, drill_point_angle, rules.drill_clearance.value);
  if (!setup.drill_stroke || !machine.standoff) return;
  const Length tool_depth = plan.makeup && plan.makeup->tip_depth ? *plan.makeup->tip_depth : Length();
  setup.travel_needed = mechanics::bar_travel(*machine.standoff, *setup.drill_stroke, tool_depth);
  if (machine.bar_travel && over(*setup.travel_needed, *machine.bar_travel)) {
    findings.add(FindingCode::machine_travel_short, Severity::hold)
        .value(*machine.bar_travel)
        .at_least(*setup.travel_needed)
        .basis(machine.basis);
  }
}

}  // namespace

const MachineProfile& machine_of(const Context& context) {
  const MachineFacts& facts = context.job().machine;
  if (facts.given) return *facts.given;
  const MachineProfile* named = facts.profile.empty() ? nullptr : context.catalog.machine(facts.profile);
  return named != nullptr ? *named : context.catalog.unspecified_machine();
}

Feed feed_of(const Context& context) {
  const MachineProfile& machine = machine_of(context);
  if (context.job().machine.feed) return *context.job().machine.feed;
  const bool too_much_for_hand = machine.hand_limit && over(context.line(), *machine.hand_limit);
  const bool powered = machine.powered_limit && (!machine.hand_limit || too_much_for_hand);
  return powered ? Feed::powered : Feed::hand;
}

void check_machine(Context& context, Findings& findings) {
  const MachineProfile& machine = machine_of(context);
  const ResolvedMain& main = context.plan.main;
  const NominalSize tap = context.plan.method.tap;
  Setup& setup = context.plan.setup;
  setup.machine = &machine;
  setup.feed = feed_of(context);
  setup.saddle_od = main.od;
  if (context.pressurised()) setup.push = mechanics::bar_push(context.line(), machine.bar_diameter);
  if (context.plan.method.kind == Method::none || context.plan.method.kind == Method::sleeve) return;

  if (!machine.maker_figures) {
    findings.add(FindingCode::machine_unspecified, Severity::hold)
        .with(std::string_view(machine.title))
        .basis(machine.basis);
    context.plan.main.assumed.push_back({"machine", std::string_view(machine.title),
                                         "limits that nearly any machine meets",
                                         "give the machine's own figures from its maker's instructions"});
  }
  if (tap < machine.smallest_tap || tap > machine.largest_tap) {
    findings.add(FindingCode::machine_wrong_size, Severity::hold)
        .with(tap, machine.smallest_tap, machine.largest_tap)
        .basis(machine.basis);
  }
  if (setup.feed == Feed::powered && !machine.powered_limit) {
    findings.add(FindingCode::machine_no_powered_feed, Severity::hold).basis(machine.basis);
  }
  const bool too_small = main.od && machine.saddle_od_from && over(*machine.saddle_od_from, *main.od);
  const bool too_large = main.od && machine.saddle_od_to && over(*main.od, *machine.saddle_od_to);
  if (too_small || too_large) {
    findings.add(FindingCode::machine_no_saddle, Severity::hold)
        .value(*main.od)
        .at_most(too_large ? *machine.saddle_od_to : *machine.saddle_od_from)
        .with(machine.saddle_od_from ? Detail(Measure(*machine.saddle_od_from)) : Detail(),
              machine.saddle_od_to ? Detail(Measure(*machine.saddle_od_to)) : Detail())
        .basis(machine.basis);
  }
  plan_drilling(context, machine, findings);
  plan_chain(context, machine, findings);
  plan_clamp(context, machine, findings);

  const Rules& rules = context.rules;
  const bool beyond = over(setup.push, rules.push_limit.value);
  if (beyond || over(setup.push, rules.push_caution.value)) {
    const Rule<Force>& rule = beyond ? rules.push_limit : rules.push_caution;
    findings.add(FindingCode::machine_push_by_hand, Severity::caution)
        .value(setup.push)
        .at_most(rule.value)
        .basis(rule.basis, machine.basis);
  }
}

}  // namespace mainbore::planning
