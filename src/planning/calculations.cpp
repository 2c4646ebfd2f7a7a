#include "planning/calculations.hpp"

#include <algorithm>
#include <utility>

namespace mainbore::planning {

CalculationInput figure(Detail value, const Basis& basis, From otherwise) {
  return {value, {}, Recorder::from_of(basis, otherwise), basis};
}

CalculationInput figure(const Pipe& pipe, PipeColumn column, Length value) {
  CalculationInput input = figure(Measure(value), pipe.series->basis_of(column));
  input.basis.how = pipe.how_of(column);
  return input;
}

CalculationInput given(Measure value) { return figure(value, stated_in_job); }
CalculationInput length_of(const FittingFacts::Fact<Length>& fact) { return figure(Measure(*fact.value), *fact.basis); }

CalculationInput given_or(bool stated, Measure value, const Basis& basis) {
  return stated ? given(value) : figure(value, basis, From::assumed);
}

CalculationInput worked_out(Formula by, Measure value) { return {value, by, From::given, {}}; }

CalculationInput plain(double value, Kind kind) {
  return {Measure(value, kind), {}, From::given, {.how = How::derived}};
}

CalculationInput diameter(const Context& context, const ResolvedMain& main, Length value) {
  const MainFacts& facts = context.job().main;
  if (facts.od || facts.circumference) return {Measure(value), {}, From::measured, stated_in_job};
  if (main.governing != nullptr && main.governing->od) return figure(*main.governing, PipeColumn::od, value);
  return figure(Measure(value), usual_practice, From::assumed);
}

CalculationInput least_wall(const ResolvedMain& main) {
  return worked_out(main.wall_basis == WallBasis::measured ? Formula::wall_by_gauge : Formula::wall_by_table,
                    *main.wall_least);
}

CalculationInput nominal_wall(const ResolvedMain& main) {
  if (main.wall_basis == WallBasis::measured) return {Measure(*main.wall_nominal), {}, From::measured, stated_in_job};
  return figure(*main.governing, PipeColumn::wall, *main.wall_nominal);
}

Worked::Worked(PlanPart part, Formula formula, std::initializer_list<CalculationInput> inputs, Measure result,
               Detail of) {
  made_.part = part;
  made_.formula = formula;
  made_.of = of;
  made_.inputs = inputs;
  made_.result = result;
}

Worked& Worked::bound(const CalculationInput& limit, bool least) {
  made_.limit = {std::get<Measure>(limit.value), least, limit.worked_out, limit.from, limit.basis};
  return *this;
}

void write_threads(const Site& site, const TapThread& thread, Candidate& candidate) {
  Recorder& taken = candidate.said.taken;
  if (!taken.calculates()) return;
  const ResolvedMain& main = site.main;
  const ThreadsInWall& in_wall = *candidate.engagement;
  const CalculationInput major = figure(Measure(thread.form.major), thread.basis);
  const CalculationInput pitch = figure(Measure(thread.form.pitch()), thread.basis);
  const CalculationInput required = figure(site.rules.direct.required_threads, Kind::threads);
  const auto put = [&](Worked worked) {
    // Of a recalled thread the published largest tap decides, and the count is told alone.
    if (in_wall.judged) worked.at_least(required);
    taken.calculated(std::move(worked));
  };
  put({PlanPart::tap,
       Formula::threads_in_wall,
       {diameter(site, main, *main.od), major, nominal_wall(main), pitch},
       Measure(in_wall.at_nominal.complete_threads, Kind::threads),
       std::string_view("wall given")});
  put({PlanPart::tap,
       Formula::threads_in_wall,
       {diameter(site, main, *main.od_least), major, least_wall(main), pitch},
       Measure(in_wall.at_least->complete_threads, Kind::threads),
       std::string_view("least wall")});
  if (!in_wall.wall_needed) return;
  Worked needed(PlanPart::tap, Formula::wall_needed, {diameter(site, main, *main.od_least), major, required, pitch},
                *in_wall.wall_needed);
  if (in_wall.judged) needed.at_most(least_wall(main));
  taken.calculated(std::move(needed));
  if (in_wall.end_load) {
    taken.calculated(Worked(PlanPart::tap, Formula::pressure_end_load,
                            {given(site.line()), figure(Measure(thread.geometry->pitch_gauge), thread.basis),
                             figure(Measure(thread.geometry->thread_height), thread.basis)},
                            *in_wall.end_load));
  }
}

void write_makeup(const Site& site, const TapThread& thread, Candidate& candidate) {
  Recorder& taken = candidate.said.taken;
  if (!taken.calculates()) return;
  const Rules& rules = site.rules;
  const MakeupPlan& plan = *candidate.makeup;
  const mechanics::Makeup& makeup = plan.makeup;
  const auto of_thread = [&](Length value) { return figure(Measure(value), thread.basis); };
  const CalculationInput wrench = figure(rules.direct.wrench_turns, Kind::turns);
  const CalculationInput by_hand = worked_out(Formula::hand_tight, makeup.hand_tight_length);
  const CalculationInput pitch = of_thread(thread.form.pitch());
  taken.calculated(Worked(PlanPart::tap, Formula::hand_tight,
                          {of_thread(thread.geometry->effective_length), wrench,
                           figure(rules.direct.threads_showing, Kind::threads), pitch},
                          makeup.hand_tight_length));
  taken.calculated(Worked(PlanPart::tap, Formula::past_gauge, {by_hand, of_thread(thread.geometry->gauge_length)},
                          makeup.stop_past_gauge));
  if (plan.protrusion) {
    taken.calculated(Worked(PlanPart::tap, Formula::stop_in_bore, {by_hand, wrench, pitch, nominal_wall(site.main)},
                            *plan.protrusion));
  }
  if (!plan.tip_depth) return;
  taken.calculated(Worked(PlanPart::tap, Formula::tap_depth,
                          {of_thread(thread.geometry->gauge_length), of_thread(*thread.projection),
                           worked_out(Formula::past_gauge, makeup.stop_past_gauge)},
                          *plan.tip_depth));
}

void write_chain(const Site& site, Length on_truck, Candidate& candidate) {
  Recorder& taken = candidate.said.taken;
  if (!taken.calculates()) return;
  const MachineProfile& machine = *candidate.setup.machine;
  const ChainPlan& chain = *candidate.setup.chain;
  const auto of_machine = [&](Length value) { return figure(Measure(value), machine.basis); };
  const CalculationInput od = diameter(site, site.main, *site.main.od);
  const CalculationInput thick = of_machine(machine.chain_thickness.value_or(Length()));
  const CalculationInput aside = of_machine(*machine.anchor_offset);
  const CalculationInput above = of_machine(*machine.anchor_height);
  taken.calculated(Worked(PlanPart::machine, Formula::chain_made_up,
                          {of_machine(*machine.chain_length), plain(chain.extensions),
                           of_machine(machine.chain_extension.value_or(Length()))},
                          Measure(chain.available, Kind::tape)));
  Worked needed(PlanPart::machine, Formula::chain_length, {od, thick, aside, above}, Measure(chain.needed, Kind::tape));
  if (over(chain.available, on_truck)) needed.at_most(of_machine(on_truck));
  else needed.at_most(worked_out(Formula::chain_made_up, Measure(chain.available, Kind::tape)));
  taken.calculated(std::move(needed));
  taken.calculated(Worked(PlanPart::machine, Formula::chain_leg, {od, thick, aside, above},
                          Measure(chain.leg_degrees, Kind::angle)));
}

void write_clamp(const Site& site, Candidate& candidate) {
  Recorder& taken = candidate.said.taken;
  if (!taken.calculates()) return;
  const Rules& rules = site.rules;
  const Setup& setup = candidate.setup;
  const MachineProfile& machine = *setup.machine;
  const ClampPlan& clamp = *setup.clamp;
  const CalculationInput thrust = is_plastic(site.main.material) ? figure(rules.drilling.shell_cutter_thrust)
                                  : setup.drill_load             ? worked_out(Formula::drill_thrust, setup.cut_thrust)
                                                                 : plain(setup.cut_thrust.base(), Kind::force);
  const Pressure line = site.pressurized() ? site.line() : Pressure();
  taken.calculated(Worked(PlanPart::machine, Formula::clamp_force,
                          {given(line), figure(Measure(*machine.gasket_diameter), machine.basis), thrust,
                           figure(rules.machine.gasket_factor, Kind::ratio), figure(rules.machine.gasket_width)},
                          clamp.force));
  if (!clamp.tension) return;
  taken.calculated(Worked(PlanPart::machine, Formula::chain_tension,
                          {worked_out(Formula::clamp_force, clamp.force),
                           worked_out(Formula::chain_leg, Measure(setup.chain->leg_degrees, Kind::angle))},
                          *clamp.tension));
  if (!clamp.stud_torque) return;
  const mechanics::NutFactors factors;
  const CalculationInput stud = figure(Measure(*machine.stud_diameter), machine.basis);
  const CalculationInput tension = worked_out(Formula::chain_tension, *clamp.tension);
  for (const auto& [factor, torque, how] :
       {std::tuple(factors.low, clamp.stud_torque->low, std::string_view("well greased")),
        std::tuple(factors.usual, clamp.stud_torque->usual, std::string_view("dry")),
        std::tuple(factors.high, clamp.stud_torque->high, std::string_view("rusty"))}) {
    const CalculationInput nut = figure(Measure(factor, Kind::ratio), usual_practice);
    taken.calculated(Worked(PlanPart::machine, Formula::stud_torque, {nut, stud, tension}, torque, how));
  }
}

void write_marks(const Site& site, const Candidate& candidate, const MarksPlan& marks,
                 std::optional<Length> greatest_wall, Recorder& taken) {
  if (!taken.calculates()) return;
  const ResolvedMain& main = site.main;
  const Rules& rules = site.rules;
  const ToolFacts& tool = site.job().tool;
  const ServiceFacts& service = site.job().service;
  const auto put = [&](Formula formula, std::initializer_list<CalculationInput> inputs, Measure result,
                       Detail of = {}) { taken.calculated(Worked(PlanPart::machine, formula, inputs, result, of)); };
  if (marks.clear && candidate.method.kind == Method::direct) {
    put(Formula::valve_clear, {figure(Measure(*marks.clear), candidate.setup.machine->basis)}, *marks.clear);
  } else if (marks.clear) {
    put(Formula::stop_clear, {length_of(candidate.fitting.saddle_height), length_of(candidate.fitting.stop_length)},
        *marks.clear);
  }
  if (!marks.at || !greatest_wall) return;
  put(Formula::breakthrough, {least_wall(main)}, marks.at->breakthrough);
  const bool drilled = candidate.method.kind == Method::direct && !is_plastic(main.material) && candidate.setup.drill;
  if (marks.at->full_width) {
    const Length width = drilled ? *candidate.setup.drill : *candidate.method.hole;
    const TapThread* const thread =
        candidate.method.thread ? site.catalog.thread(*candidate.method.thread, candidate.method.tap) : nullptr;
    const Basis& of_hole = thread != nullptr ? thread->basis : usual_practice;
    put(Formula::drill_stroke,
        {diameter(site, main, *main.od), plain(greatest_wall->base(), Kind::length), figure(Measure(width), of_hole),
         plain(drilled ? 118.0 : 180.0, Kind::angle), figure(rules.drilling.clearance)},
        *marks.at->full_width, std::string_view("mark: hole full, greatest wall"));
  }
  if (marks.at->catches) put(Formula::tap_catches, {given(*tool.lead)}, *marks.at->catches);
  if (marks.at->stop_tapping && marks.by_trial) {
    put(Formula::stop_by_trial, {given(*service.trial.depth)}, *marks.at->stop_tapping);
  } else if (marks.at->stop_tapping) {
    put(Formula::stop_tapping, {given(*tool.lead), worked_out(Formula::tap_depth, *marks.tap_depth)},
        *marks.at->stop_tapping);
  }
  if (marks.tap_turns) {
    const TapThread* const thread = site.catalog.thread(*candidate.method.thread, candidate.method.tap);
    put(Formula::tap_turns,
        {worked_out(Formula::tap_depth, *marks.tap_depth), figure(Measure(thread->form.pitch()), thread->basis)},
        Measure(*marks.tap_turns, Kind::turns));
  }
  if (marks.at->stop_touches) {
    put(Formula::stop_touches, {given(*tool.length), given(*tool.insertion_length)}, *marks.at->stop_touches);
  }
  if (marks.stop_drawn_back) {
    put(Formula::stop_drawn_back,
        {figure(Measure(*marks.drawn_back), candidate.setup.machine->basis), given(*tool.length),
         given(*tool.insertion_length)},
        *marks.stop_drawn_back);
  }
  if (marks.limit) {
    put(Formula::never_past,
        {diameter(site, main, *main.od_least), plain(farthest_wall(site)->base(), Kind::length),
         figure(rules.machine.tool_clearance), plain(pilot_ahead(site, candidate.method.kind).base(), Kind::length)},
        *marks.limit);
  }
}

namespace {

// The friction of one piece, by the law the line is planned with.
Calculation friction(const LaidLine& laid, const ServicePlan& service, const hydraulics::ServiceSegment& segment,
                     Pressure loss, std::string_view part, bool run) {
  const ServiceTables& tables = *laid.tables;
  const Length length = segment.length + segment.equivalent_length;
  const CalculationInput counted =
      run ? given(Measure(length, Kind::distance)) : figure(Measure(length, Kind::distance), tables.fittings_basis);
  const CalculationInput flow = worked_out(Formula::demand, service.demand.flow);
  const CalculationInput bore = figure(Measure(segment.bore), service.tube->basis);
  if (service.method == FrictionMethod::hazen_williams) {
    const CalculationInput c = figure(Measure(service.c, Kind::ratio), *service.friction_basis);
    return Worked(PlanPart::service, Formula::friction_by_c, {counted, flow, c, bore}, loss, part);
  }
  constexpr double hundred_thousand = 1e5;
  const double viscosity = hundred_thousand * (laid.water.viscosity / (units::foot * units::foot / units::second));
  return Worked(PlanPart::service, Formula::friction_by_roughness,
                {counted, flow, bore, figure(Measure(service.roughness), *service.friction_basis),
                 figure(Measure(viscosity, Kind::ratio), tables.water_basis),
                 figure(Measure(tables.head * units::foot), tables.head_basis)},
                loss, part);
}

// What of a meter's greatest flow may pass it, and what may pass it without pause.
void write_shares(const Rules& rules, const MeterSize& meter, const DemandPlan& demand, Recorder& taken) {
  const auto put = [&](const Rule<double>& share, Flow flow, const CalculationInput& passing, std::string_view which) {
    const Flow most = share.value * meter.safe_maximum;
    taken.calculated(Worked(PlanPart::service, Formula::meter_share,
                            {figure(share, Kind::ratio), figure(Measure(meter.safe_maximum), meter.basis)}, most,
                            which));
    taken.calculated(Worked(PlanPart::service, Formula::meter_flow, {passing}, flow, which)
                         .at_most(worked_out(Formula::meter_share, most)));
  };
  put(rules.water.meter_share, demand.flow, worked_out(Formula::demand, demand.flow), "in use");
  if (demand.continuous > Flow()) {
    put(rules.water.meter_continuous_share, demand.continuous, given(demand.continuous), "without pause");
  }
}

using LossParts = std::array<CalculationInput, loss_part_count>;

CalculationInput& part_of(LossParts& parts, LossPart which) { return parts[static_cast<std::size_t>(which)]; }

constexpr std::array<std::string_view, loss_part_count> thickest_names = {"tap and corporation stop, thickest walls",
                                                                          "curb stop, thickest walls",
                                                                          "line, thickest walls",
                                                                          "fittings, thickest walls",
                                                                          "meter",
                                                                          "rise"};

// The friction of each piece of the line. Pieces are named apart where the walls are taken as thick as they may be.
void write_friction(const LaidLine& laid, const ServicePlan& service, const LineLosses& of, LossParts& parts,
                    Recorder& taken) {
  const Formula by =
      service.method == FrictionMethod::hazen_williams ? Formula::friction_by_c : Formula::friction_by_roughness;
  for (std::size_t i = 0; i < of.line.segments.size(); ++i) {
    const Pressure loss = of.losses.segments[i].friction;
    const bool run = static_cast<LossPart>(i) == LossPart::line;
    if (!(loss > Pressure())) continue;
    taken.calculated(friction(laid, service, of.line.segments[i], loss,
                              of.thickest_walls ? thickest_names[i] : loss_part_names[i], run));
    parts[i] = worked_out(by, loss);
  }
}

}  // namespace

void write_losses(const Context& context, const LaidLine& laid, const ServicePlan& service, const LineLosses& of,
                  Recorder& taken) {
  if (!taken.calculates()) return;
  const ServiceTables& tables = *laid.tables;
  const hydraulics::ServiceLosses& losses = of.losses;
  LossParts parts;
  parts.fill(plain(0.0, Kind::pressure));
  write_friction(laid, service, of, parts, taken);
  if (service.meter != nullptr) part_of(parts, LossPart::meter) = worked_out(Formula::meter_loss, losses.meter);
  part_of(parts, LossPart::rise) = worked_out(Formula::rise_loss, losses.elevation);
  if (service.meter != nullptr && !of.thickest_walls) {
    taken.calculated(Worked(PlanPart::service, Formula::meter_loss,
                            {figure(Measure(losses.meter), service.meter->basis)}, losses.meter));
    taken.calculated(Worked(PlanPart::service, Formula::meter_flow, {worked_out(Formula::demand, service.demand.flow)},
                            service.demand.flow)
                         .at_most(figure(Measure(service.meter->safe_maximum), service.meter->basis)));
    write_shares(context.rules, *service.meter, service.demand, taken);
  }
  if (!of.thickest_walls) {
    taken.calculated(Worked(
        PlanPart::service, Formula::rise_loss,
        {figure(Measure(tables.head * units::foot), tables.head_basis),
         given_or(context.job().service.line.rise.has_value(), Measure(service.rise, Kind::distance), usual_practice)},
        losses.elevation));
  }
  const bool own =
      context.job().service.demand.residual.value_or(Pressure()) > context.rules.water.least_residual.value;
  taken.calculated(Worked(PlanPart::service, Formula::residual,
                          {given_or(context.job().main.pressure_low.has_value(), service.supply, stated_in_job),
                           parts[0], parts[1], parts[2], parts[3], parts[4], parts[5]},
                          of.thickest_walls ? service.residual_least : service.residual,
                          of.thickest_walls ? Detail(std::string_view("thickest walls")) : Detail())
                       .at_least(own ? given(service.residual_wanted) : figure(context.rules.water.least_residual)));
}

void write_flush(const Context& context, const LaidLine& laid, const FlushPlan& flush, Recorder& taken) {
  if (!taken.calculates()) return;
  const Rules& rules = context.rules;
  const CalculationInput bore = figure(Measure(laid.tube->bore), laid.tube->basis);
  const auto put = [&](const sanitary::Flushing& plan, const Rule<Velocity>& speed, std::string_view which) {
    taken.calculated(Worked(PlanPart::cleaning, Formula::flush_flow, {figure(speed), bore}, plan.flow, which)
                         .at_most(plain(flush.available.base(), Kind::flow)));
    const CalculationInput water = worked_out(Formula::flush_volume, plan.discharged);
    taken.calculated(Worked(PlanPart::cleaning, Formula::flush_time,
                            {water, worked_out(Formula::flush_flow, plan.flow)}, plan.time, which));
  };
  taken.calculated(
      Worked(PlanPart::cleaning, Formula::flush_volume,
             {figure(rules.cleaning.flush_changes, Kind::ratio), bore, given(Measure(laid.length, Kind::distance))},
             flush.full.discharged));
  put(flush.full, rules.cleaning.flush_velocity, "full");
  put(flush.least, rules.cleaning.flush_velocity_least, "least");
  for (const AgentDose& dose : flush.agents) {
    taken.calculated(
        Worked(PlanPart::cleaning, Formula::dechlorination,
               {worked_out(Formula::flush_volume, flush.full.discharged),
                figure(Measure(flush.chlorine.mg_per_liter(), Kind::ratio), rules.cleaning.flush_chlorine.basis),
                figure(Measure(dose.agent->per_chlorine, Kind::ratio), laid.tables->dechlorination_basis),
                figure(rules.cleaning.dechlorination_excess, Kind::ratio)},
               dose.weight, std::string_view(dose.agent->name)));
  }
}

void write_fill(const Context& context, const LaidLine& laid, const FillPlan& fill, Recorder& taken) {
  if (!taken.calculates()) return;
  const ServiceTables& tables = *laid.tables;
  const ChlorineDose& dose = *fill.dose;
  const auto put = [&](Formula formula, std::initializer_list<CalculationInput> inputs, Measure result,
                       std::string_view of) {
    taken.calculated(Worked(PlanPart::cleaning, formula, inputs, result, of));
  };
  put(Formula::fill_chlorine,
      {figure(Measure(laid.tube->bore), laid.tube->basis), given(Measure(laid.length, Kind::distance)),
       figure(Measure(dose.dose.mg_per_liter(), Kind::ratio), dose.basis)},
      fill.chlorine, dose.method);
  const CalculationInput chlorine = worked_out(Formula::fill_chlorine, fill.chlorine);
  for (const FillProduct& product : fill.products) {
    const auto listed = std::find_if(tables.chlorine_products.begin(), tables.chlorine_products.end(),
                                     [&](const ChlorineProduct& row) { return row.name == product.name; });
    const CalculationInput strength = figure(Measure(product.strength.percent(), Kind::percent),
                                             listed == tables.chlorine_products.end() ? stated_in_job : listed->basis);
    if (product.volume) put(Formula::fill_liquid, {chlorine, strength}, *product.volume, product.name);
    if (product.weight) {
      put(product.volume ? Formula::fill_by_weight : Formula::fill_dry, {chlorine, strength}, *product.weight,
          product.name);
    }
  }
  for (const AgentDose& agent : fill.agents) {
    put(Formula::fill_dechlorination,
        {chlorine, figure(Measure(agent.agent->per_chlorine, Kind::ratio), tables.dechlorination_basis),
         figure(context.rules.cleaning.dechlorination_excess, Kind::ratio)},
        agent.weight, agent.agent->name);
  }
}

void write_pit(const Site& site, const PitPlan& plan, const Rule<double>& swell, Recorder& taken) {
  if (!taken.calculates()) return;
  const Rules& rules = site.rules;
  const auto put = [&](Formula formula, std::initializer_list<CalculationInput> inputs, Measure result,
                       Detail of = {}) { taken.calculated(Worked(PlanPart::pit, formula, inputs, result, of)); };
  const auto far = [](Length value) { return Measure(value, Kind::distance); };
  const auto rule_far = [](const Rule<Length>& rule) { return figure(rule, Kind::distance); };
  const CalculationInput od = diameter(site, site.main, plan.main_od);
  const CalculationInput depth = worked_out(Formula::pit_depth, far(plan.pit.depth));
  const CalculationInput slope = plain(plan.pit.slope);
  const CalculationInput top = worked_out(Formula::pit_top, far(plan.top.across));
  put(Formula::pit_across, {rule_far(rules.pit.room_far_side), od, rule_far(rules.pit.room_machine_side)},
      far(plan.pit.across));
  const CalculationInput across = worked_out(Formula::pit_across, far(plan.pit.across));
  put(Formula::pit_top, {across, slope, depth}, far(plan.top.across), std::string_view("across the main"));
  put(Formula::pit_top, {rule_far(rules.pit.room_along), slope, depth}, far(plan.top.along),
      std::string_view("along the main"));
  put(Formula::pit_volume, {rule_far(rules.pit.room_along), across, depth, slope}, Measure(plan.bank, Kind::earth));
  put(Formula::loose_volume,
      {worked_out(Formula::pit_volume, Measure(plan.bank, Kind::earth)), figure(swell, Kind::ratio)},
      Measure(plan.loose, Kind::earth));
  put(Formula::spoil_height,
      {worked_out(Formula::loose_volume, Measure(plan.loose, Kind::earth)),
       worked_out(Formula::pit_top, far(plan.top.along)), figure(rules.pit.repose, Kind::ratio)},
      far(plan.spoil.height));
  put(Formula::strip_taken,
      {top, rule_far(rules.pit.spoil_setback), figure(rules.pit.repose, Kind::ratio),
       worked_out(Formula::spoil_height, far(plan.spoil.height))},
      far(plan.occupied));
  put(Formula::ladder, {depth, rule_far(rules.pit.ladder_extension)}, far(plan.ladder_length));
  const auto& tolerance = site.job().excavation.tolerance;
  put(Formula::zone, {od, tolerance ? given(*tolerance) : figure(rules.pit.tolerance_margin)},
      far(plan.zone_half_width));
}

}  // namespace mainbore::planning
