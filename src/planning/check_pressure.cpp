#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

void add_limit(PressureChain& chain, PressureLink link, Pressure limit, const Basis& basis) {
  const PressureLimit added{link, limit, &basis};
  chain.limits.push_back(added);
  if (!chain.governed_by || limit < chain.governed_by->limit) chain.governed_by = added;
}

// A surge is over in a moment; a fitting that is proved at half as much again bears it. Of a line that is over the rating
// already, that is said elsewhere: here, whether the surge is still too much once the line is brought down to it.
void bear_surge(const Context& context, Findings& findings, Pressure line, std::string_view fitting, Pressure limit,
                const Basis& basis) {
  const Rule<double>& factor = context.rules.fitting_surge_factor;
  const Pressure surge = greatest_surge(context);
  if (!over(std::min(line, limit) + surge, factor.value * limit)) return;
  findings.add(FindingCode::pressure_surge_over_fitting, Severity::hold)
      .value(line + surge)
      .at_most(factor.value * limit)
      .with(Measure(surge), fitting, Measure(std::max(line, (1.0 / factor.value) * (line + surge))))
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

// Whether line and surge together stay within what the pipe may see; says so where they do not.
bool bears_in_pipe(Context& context, Pressure surge, std::string_view how_often, Pressure allowed, const Basis& basis) {
  const Pressure total = context.line() + surge;
  if (!over(total, allowed)) return true;
  context.common.add(FindingCode::pressure_surge_over_rating, Severity::hold)
      .value(total)
      .at_most(allowed)
      .with(Measure(surge), how_often,
            over(allowed, context.line()) ? Detail(Measure(allowed - context.line())) : Detail())
      .basis(basis, *context.plan.main.rating_basis);
  return false;
}

constexpr std::string_view recurring = "a recurring";
constexpr std::string_view occasional = "an occasional";

// Plastic tires: what comes back every day lies within the rating (and what an older class covers on top of it); what
// comes seldom may be more. A surge that nobody has called occasional is taken to recur.
void check_plastic_surge(Context& context) {
  const Rules& rules = context.rules;
  const ResolvedMain& main = context.plan.main;
  const Pressure rating = *main.rating;
  const bool polyethylene = main.material == Material::polyethylene;
  const Rule<double>& often =
      polyethylene ? rules.polyethylene_recurring_surge_factor : rules.plastic_recurring_surge_factor;
  const Pressure surge = *context.plan.pressure.surge;
  const bool bears = bears_in_pipe(context, surge, recurring, often.value * rating + main.surge_covered, often.basis);
  if (bears && polyethylene && often.basis.how == How::memory && over(context.line() + surge, rating)) {
    context.common.add(FindingCode::value_recalled, Severity::caution)
        .with(std::string_view("the recurring surge that polyethylene bears"),
              std::string_view(often.basis.source->title))
        .basis(often.basis);
  }
  if (const auto& seldom = context.job().main.occasional_surge) {
    bears_in_pipe(context, *seldom, occasional, rules.plastic_surge_factor.value * rating,
                  rules.plastic_surge_factor.basis);
  }
}

// Iron classes carry a surge allowance inside them. For other pipe none is counted: the surge lies inside the rating.
void check_surge(Context& context) {
  const Rules& rules = context.rules;
  ResolvedMain& main = context.plan.main;
  PressureChain& chain = context.plan.pressure;
  chain.surge = recurring_surge(context);
  if (!context.job().main.surge) {
    context.assume("main.surge", Measure(*chain.surge), "the usual allowance for a small system",
                   "ask the utility what surge the main sees");
  }
  if (is_plastic(main.material)) {
    check_plastic_surge(context);
    return;
  }
  const Rule<Pressure>* allowance = nullptr;
  if (is_iron(main.material)) allowance = &rules.iron_surge_allowance;
  if (main.material == Material::asbestos_cement) allowance = &rules.asbestos_cement_surge_allowance;
  const Pressure surge = greatest_surge(context);
  bears_in_pipe(context, surge, surge > *chain.surge ? occasional : recurring,
                *main.rating + (allowance != nullptr ? allowance->value : Pressure()),
                allowance != nullptr ? allowance->basis : *main.rating_basis);
}

}  // namespace

void check_pipe_pressure(Context& context) {
  const ResolvedMain& main = context.plan.main;
  PressureChain& chain = context.plan.pressure;
  chain.line = context.line();
  if (const auto& lowest = context.job().main.pressure_low; lowest && over(*lowest, chain.line)) {
    context.common.add(FindingCode::pressure_low_over_line, Severity::hold).value(*lowest).at_most(chain.line);
  }
  if (main.rating_unsettled) {
    context.common.add(FindingCode::pressure_rating_unknown, Severity::hold)
        .at_least(context.line() + greatest_surge(context));
  }
  if (main.rating) {
    const Basis& basis = *main.rating_basis;
    add_limit(chain, PressureLink::pipe, *main.rating, basis);
    if (over(chain.line, *main.rating)) {
      // Where even the greatest rating is exceeded, or the utility has spoken, no reading of the class will help.
      const bool class_may_help = !context.job().main.rating && !over(chain.line, *main.greatest_rating);
      context.common.add(FindingCode::pressure_over_pipe_rating, class_may_help ? Severity::hold : Severity::stop)
          .value(chain.line)
          .at_most(*main.rating)
          .with(main.rated_as.empty() ? Detail() : Detail(main.rated_as))
          .basis(basis);
    }
    check_surge(context);
  }

  // A pipe nobody has put a thermometer to may be as warm as the warmest that is tapped.
  const MaterialFacts& facts = context.catalog.facts(main.material);
  if (is_plastic(main.material) && !context.job().main.temperature) {
    const TemperatureWindow window = tapping_window(context);
    context.common.add(FindingCode::main_temperature_unmeasured, Severity::hold)
        .with(Measure(window.coldest->value), Measure(window.warmest->value))
        .basis(window.warmest->basis, facts.temperature_basis);
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
      bear_surge(context, findings, chain.line, name_of(limit.link), limit.limit, *limit.basis);
    }
  }
  if (!context.pressurised()) return;

  require_while_tapping(chain, findings, PressureLink::wet_tap_rule, FindingCode::pressure_over_wet_tap_limit,
                        rules.wet_tap_limit.value, rules.wet_tap_limit.basis);
  if (method == Method::sleeve) return;  // cut with a larger machine, chosen with the sleeve
  const MachineProfile& machine = *candidate.setup.machine;
  require_while_tapping(chain, findings, PressureLink::machine, FindingCode::pressure_over_machine_rating,
                        machine.body_rating, machine.basis);
  bear_surge(context, findings, chain.line, "machine", machine.body_rating, machine.basis);
  const Feed feed = candidate.setup.feed;
  const auto limit = feed == Feed::powered ? machine.powered_limit : machine.hand_limit;
  if (limit) {
    require_while_tapping(chain, findings, PressureLink::feed, FindingCode::pressure_over_feed_limit, *limit,
                          machine.basis, name_of(feed));
  }
}

}  // namespace mainbore::planning
