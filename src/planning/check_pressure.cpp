#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

void add_limit(PressureChain& chain, PressureLink link, Pressure limit, const Basis& basis) {
  const PressureLimit added{link, limit, &basis};
  chain.limits.push_back(added);
  if (!chain.governed_by || limit < chain.governed_by->limit) chain.governed_by = added;
}

// A surge is over in a moment; a fitting that is proved at half as much again bears it.
void bear_surge(const Context& context, Findings& findings, Pressure line, Pressure limit, const Basis& basis) {
  const Rule<double>& factor = context.rules.fitting_surge_factor;
  const Pressure surge = context.job().main.surge.value_or(context.rules.surge_assumed.value);
  if (over(line, limit) || !over(line + surge, factor.value * limit)) return;  // over already is said already
  findings.add(FindingCode::pressure_surge_over_rating, Severity::hold)
      .value(line + surge)
      .at_most(factor.value * limit)
      .with(Measure(surge))
      .basis(factor.basis, basis);
}

// A limit that lowering the main for the time of the tap can meet.
void require_while_tapping(PressureChain& chain, Findings& findings, PressureLink link, FindingCode code,
                           Pressure limit, const Basis& basis, Detail detail = {}) {
  add_limit(chain, link, limit, basis);
  if (!over(chain.line, limit)) return;
  findings.add(code, Severity::hold).value(chain.line).at_most(limit).with(detail).basis(basis);
  if (!chain.reduce_to || limit < *chain.reduce_to) chain.reduce_to = limit;
}

// A limit of something that stays on the main: only a fitting of a higher rating can meet it.
void require_for_good(PressureChain& chain, Findings& findings, PressureLink link, FindingCode code, Pressure limit,
                      const Basis& basis) {
  add_limit(chain, link, limit, basis);
  if (over(chain.line, limit)) findings.add(code, Severity::hold).value(chain.line).at_most(limit).basis(basis);
}

// The greatest of the candidates' ratings, derated alike: if even that is exceeded, no reading of the class will help.
std::optional<Pressure> greatest_rating(const ResolvedMain& main) {
  std::optional<Pressure> greatest;
  for (const Pipe* pipe : main.candidates) {
    if (pipe->rating && (!greatest || *pipe->rating > *greatest)) greatest = pipe->rating;
  }
  if (greatest) greatest = main.temperature_factor * *greatest;
  return greatest;
}

// Iron classes carry a surge allowance inside them; plastic may see a stated multiple of its rating for a moment. For
// other pipe nothing is published here: a surge that the job gives must lie inside the rating, and none is assumed.
void check_surge(Context& context, Pressure rating, const Basis& rating_basis) {
  const Rules& rules = context.rules;
  ResolvedMain& main = context.plan.main;
  PressureChain& chain = context.plan.pressure;
  const bool iron = main.material == Material::ductile_iron || main.material == Material::cast_iron;
  chain.surge = context.job().main.surge;
  if (!chain.surge) {
    if (!iron && !is_plastic(main.material)) return;
    chain.surge = rules.surge_assumed.value;
    context.assume("main.surge", Measure(*chain.surge), "the usual allowance for a small system",
                   "ask the utility what surge the main sees");
  }
  Pressure allowed = rating;
  const Basis* basis = &rating_basis;
  if (iron) {
    allowed = rating + rules.iron_surge_allowance.value;
    basis = &rules.iron_surge_allowance.basis;
  } else if (is_plastic(main.material)) {
    allowed = rules.plastic_surge_factor.value * rating;
    basis = &rules.plastic_surge_factor.basis;
  }
  if (!over(chain.line + *chain.surge, allowed)) return;
  context.common.add(FindingCode::pressure_surge_over_rating, Severity::hold)
      .value(chain.line + *chain.surge)
      .at_most(allowed)
      .with(Measure(*chain.surge))
      .basis(*basis, rating_basis);
}

}  // namespace

void check_pipe_pressure(Context& context) {
  const ResolvedMain& main = context.plan.main;
  PressureChain& chain = context.plan.pressure;
  chain.line = context.line();
  if (!main.rating) {
    if (main.governing != nullptr) context.common.add(FindingCode::pressure_rating_unknown, Severity::caution);
    return;
  }
  const Basis& basis = main.rated->series->basis_of(PipeColumn::rating);
  add_limit(chain, PressureLink::pipe, *main.rating, basis);
  if (over(chain.line, *main.rating)) {
    const bool class_may_help = !over(chain.line, *greatest_rating(main));
    context.common
        .add(FindingCode::pressure_over_pipe_rating, class_may_help ? Severity::hold : Severity::stop)
        .value(chain.line)
        .at_most(*main.rating)
        .with(std::string_view(main.rated->class_name))
        .basis(basis);
  }
  check_surge(context, *main.rating, basis);

  // A pipe nobody has put a thermometer to may be as warm as the warmest that is tapped.
  const MaterialFacts& facts = context.catalog.facts(main.material);
  if (is_plastic(main.material) && !context.job().main.temperature) {
    context.common.add(FindingCode::main_temperature_unmeasured, Severity::hold)
        .with(Measure(context.rules.plastic_wet_tap_coldest.value), Measure(context.rules.plastic_wet_tap_warmest.value))
        .basis(context.rules.plastic_wet_tap_warmest.basis, facts.temperature_basis);
  }
}

void check_equipment_pressure(const Context& context, Candidate& candidate) {
  const Rules& rules = context.rules;
  const ServiceFacts& service = context.job().service;
  const Method method = candidate.method.kind;
  PressureChain& chain = candidate.pressure;
  Findings& findings = candidate.findings;
  chain = context.plan.pressure;

  if (method == Method::saddle || method == Method::sleeve) {
    require_for_good(chain, findings, PressureLink::saddle, FindingCode::pressure_over_saddle_rating,
                     service.saddle_rating.value_or(rules.saddle_rating.value),
                     service.saddle_rating ? stated_in_job : rules.saddle_rating.basis);
    if (!service.saddle_rating) {
      candidate.assumed.push_back({"service.saddle_rating", Measure(rules.saddle_rating.value),
                                   "a rating in common use", "read the pressure marked on the saddle"});
    }
  }
  if (method != Method::sleeve) {
    require_for_good(chain, findings, PressureLink::corporation_stop, FindingCode::pressure_over_stop_rating,
                     service.stop_rating.value_or(rules.stop_rating.value),
                     service.stop_rating ? stated_in_job : rules.stop_rating.basis);
    if (!service.stop_rating) {
      candidate.assumed.push_back({"service.stop_rating", Measure(rules.stop_rating.value),
                                   "the lowest rating in common use", "read the pressure marked on the stop"});
    }
  }
  // The least of them is the first to suffer from a surge.
  for (const PressureLimit& limit : chain.limits) {
    if (limit.link == PressureLink::corporation_stop || limit.link == PressureLink::saddle) {
      bear_surge(context, findings, chain.line, limit.limit, *limit.basis);
    }
  }
  if (!context.pressurised()) return;

  require_while_tapping(chain, findings, PressureLink::wet_tap_rule, FindingCode::pressure_over_wet_tap_limit,
                        rules.wet_tap_limit.value, rules.wet_tap_limit.basis);
  if (method == Method::sleeve) return;  // cut with a larger machine, chosen with the sleeve
  const MachineProfile& machine = *candidate.setup.machine;
  require_while_tapping(chain, findings, PressureLink::machine, FindingCode::pressure_over_machine_rating,
                        machine.body_rating, machine.basis);
  bear_surge(context, findings, chain.line, machine.body_rating, machine.basis);
  const Feed feed = candidate.setup.feed;
  const auto limit = feed == Feed::powered ? machine.powered_limit : machine.hand_limit;
  if (limit) {
    require_while_tapping(chain, findings, PressureLink::feed, FindingCode::pressure_over_feed_limit, *limit,
                          machine.basis, name_of(feed));
  }
}

}  // namespace mainbore::planning
