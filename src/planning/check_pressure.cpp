#include <algorithm>
#include <array>

#include "planning/calculations.hpp"
#include "planning/candidates.hpp"
#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

constexpr std::array taken_of_link = {Taken::pipe_rating,      Taken::feed_limit, Taken::machine_rating,
                                      Taken::corporation_stop, Taken::saddle,     Taken::wet_tap_rule};
static_assert(taken_of_link.size() == pressure_link_names.size());

constexpr Taken taken_of(PressureLink link) { return taken_of_link[static_cast<std::size_t>(link)]; }

void add_limit(PressureChain& chain, PressureLink link, Pressure limit, const Basis& basis) {
  const PressureLimit added{link, limit, &basis};
  chain.limits.push_back(added);
  if (!chain.governed_by || limit < chain.governed_by->limit) chain.governed_by = added;
}

void write_line(const Context& context, Recorder& taken, std::string_view link, Pressure limit, const Basis& basis) {
  if (!taken.calculates()) return;
  taken.calculated(Worked(PlanPart::pressure, Formula::line_pressure, {given(context.line())}, context.line(), link)
                       .at_most(figure(Measure(limit), basis)));
}

CalculationInput surge_of(const Context& context, Pressure surge) {
  const MainFacts& facts = context.job().main;
  const bool stated = facts.surge == surge || facts.occasional_surge == surge;
  return given_or(stated, surge, context.rules.pressure.surge_assumed.basis);
}

// A surge is over in a moment; a fitting that is proved at half as much again bears it. Of a line that is over the rating
// already, that is said elsewhere: here, whether the surge is still too much once the line is brought down to it.
void bear_surge(const Site& site, Candidate& candidate, std::string_view fitting, Pressure limit, const Basis& basis) {
  const Rule<double>& factor = site.rules.pressure.fitting_surge_factor;
  candidate.said.taken.take(PlanPart::pressure, Taken::fitting_surge, factor.basis, Measure(factor.value, Kind::ratio));
  const Pressure line = candidate.pressure.line;
  const Pressure surge = greatest_surge(site);
  if (site.calculates()) {
    const CalculationInput rating = figure(Measure(limit), basis);
    Recorder& taken = candidate.said.taken;
    taken.calculated(Worked(PlanPart::pressure, Formula::fitting_allowed, {figure(factor, Kind::ratio), rating},
                            factor.value * limit, fitting));
    taken.calculated(Worked(PlanPart::pressure, Formula::fitting_with_surge,
                            {given(line), rating, surge_of(site, surge)}, std::min(line, limit) + surge, fitting)
                         .at_most(worked_out(Formula::fitting_allowed, factor.value * limit)));
  }
  if (!over(std::min(line, limit) + surge, factor.value * limit)) return;
  candidate.said.findings.add(FindingCode::pressure_surge_over_fitting, Severity::hold)
      .value(std::min(line, limit) + surge)
      .at_most(factor.value * limit)
      .with(Measure(surge), fitting, Measure(std::max(line, (1.0 / factor.value) * (line + surge))))
      .basis(factor.basis, basis);
}

// A limit that lowering the main for the time of the tap can meet.
void require_while_tapping(const Site& site, Candidate& candidate, PressureLink link, FindingCode code, Pressure limit,
                           const Basis& basis, Detail detail = {}) {
  PressureChain& chain = candidate.pressure;
  add_limit(chain, link, limit, basis);
  candidate.said.taken.take(PlanPart::pressure, taken_of(link), basis, Measure(limit));
  write_line(site, candidate.said.taken, name_of(link), limit, basis);
  if (!over(chain.line, limit)) return;
  candidate.said.findings.add(code, Severity::hold).value(chain.line).at_most(limit).with(detail).basis(basis);
  if (!chain.reduce_to || limit < *chain.reduce_to) chain.reduce_to = limit;
}

// A limit of something that stays on the main: only a fitting of a higher rating can meet it.
// Where nobody has read its mark, the rule's rating is assumed.
void require_for_good(const Site& site, Candidate& candidate, PressureLink link, FindingCode code,
                      const FittingFacts::Fact<Pressure>& known, const Rule<Pressure>& rule, Assumption assumption) {
  PressureChain& chain = candidate.pressure;
  const std::optional<Pressure>& marked = known.value;
  const Pressure limit = marked.value_or(rule.value);
  const Basis& basis = marked ? *known.basis : rule.basis;
  add_limit(chain, link, limit, basis);
  write_line(site, candidate.said.taken, name_of(link), limit, basis);
  if (over(chain.line, limit))
    candidate.said.findings.add(code, Severity::hold).value(chain.line).at_most(limit).basis(basis);
  if (marked) {
    candidate.said.taken.take(PlanPart::pressure, taken_of(link), basis, Measure(limit));
    // The list is the office's word: whoever fits the thing still reads its mark.
    if (basis.how != How::stated_in_approved_list) return;
    assumption.because = "as the approved list has it";
    assumption.value = Measure(limit);
    candidate.said.assume(assumption);
  } else {
    candidate.said.taken.assumed(PlanPart::pressure, taken_of(link), basis, Measure(limit));
    candidate.said.assume(assumption);
  }
}

// What the pipe bears is its rating, or so much of it, and the surge that its class covers.
struct Borne {
  CalculationInput factor;
  CalculationInput covered;
};

// The class whose rating decides; nothing where a rating of its own does.
Detail judged_by(const ResolvedMain& main) {
  if (main.governing == nullptr || main.governing->class_name.empty()) return {};
  return std::string_view(main.governing->class_name);
}

// Holds where line and surge together are more than the pipe may see.
void bears_in_pipe(const Context& context, const ResolvedMain& main, Said& said, Pressure surge,
                   std::string_view how_often, Pressure allowed, const Basis& basis, const Borne& borne) {
  const Pressure total = context.line() + surge;
  if (said.taken.calculates()) {
    said.taken.calculated(Worked(PlanPart::pressure, Formula::surge_allowed,
                                 {borne.factor, figure(Measure(*main.rating), *main.rating_basis), borne.covered},
                                 allowed, how_often));
    said.taken.calculated(Worked(PlanPart::pressure, Formula::line_with_surge,
                                 {given(context.line()), surge_of(context, surge)}, total, how_often)
                              .at_most(worked_out(Formula::surge_allowed, allowed)));
  }
  if (!over(total, allowed)) return;
  said.findings.add(FindingCode::pressure_surge_over_rating, Severity::hold)
      .value(total)
      .at_most(allowed)
      .with(Measure(surge), how_often,
            over(allowed, context.line()) ? Detail(Measure(allowed - context.line())) : Detail(), judged_by(main))
      .basis(basis, *main.rating_basis);
}

constexpr std::string_view recurring = "a recurring";
constexpr std::string_view occasional = "an occasional";

// Plastic tires: what comes back every day lies within the rating (and what an older class covers on top of it); what
// comes seldom may be more. A surge that nobody has called occasional is taken to recur.
void check_plastic_surge(const Context& context, const ResolvedMain& main, Said& said, Pressure surge) {
  const Rules& rules = context.rules;
  const Pressure rating = *main.rating;
  const bool polyethylene = main.material == Material::polyethylene;
  const Rule<double>& often =
      polyethylene ? rules.pressure.polyethylene_recurring_surge_factor : rules.pressure.plastic_recurring_surge_factor;
  bears_in_pipe(context, main, said, surge, recurring, often.value * rating + main.surge_covered, often.basis,
                {figure(often, Kind::ratio), figure(Measure(main.surge_covered), *main.rating_basis)});
  const auto count_on = [&](const Rule<double>& factor) {
    said.taken.take(PlanPart::pressure, Taken::surge_allowance, factor.basis, Measure(factor.value, Kind::ratio));
  };
  // Within the rating no factor is counted on.
  if (over(context.line() + surge, rating)) count_on(often);
  if (const auto& seldom = context.job().main.occasional_surge) {
    if (over(context.line() + *seldom, rating)) count_on(rules.pressure.plastic_surge_factor);
    bears_in_pipe(context, main, said, *seldom, occasional, rules.pressure.plastic_surge_factor.value * rating,
                  rules.pressure.plastic_surge_factor.basis,
                  {figure(rules.pressure.plastic_surge_factor, Kind::ratio), plain(0.0, Kind::pressure)});
  }
}

// Iron classes carry a surge allowance inside them. For other pipe none is counted: the surge lies inside the rating.
// Gives the recurring surge.
Pressure check_surge(const Context& context, const ResolvedMain& main, Said& said) {
  const Rules& rules = context.rules;
  const Pressure usual = recurring_surge(context);
  if (!context.job().main.surge) {
    said.assume({"main.surge", Measure(usual), "the usual allowance for a small system",
                 "ask the utility what surge the main sees"});
    said.taken.assumed(PlanPart::pressure, Taken::surge, rules.pressure.surge_assumed.basis, Measure(usual));
  } else {
    said.taken.take(PlanPart::pressure, Taken::surge, stated_in_job, Measure(usual));
  }
  if (is_plastic(main.material)) {
    check_plastic_surge(context, main, said, usual);
    return usual;
  }
  const Rule<Pressure>* allowance = nullptr;
  if (is_iron(main.material)) allowance = &rules.pressure.iron_surge_allowance;
  if (main.material == Material::asbestos_cement) allowance = &rules.pressure.asbestos_cement_surge_allowance;
  if (allowance != nullptr) {
    said.taken.take(PlanPart::pressure, Taken::surge_allowance, allowance->basis, Measure(allowance->value));
  }
  const Pressure surge = greatest_surge(context);
  bears_in_pipe(context, main, said, surge, surge > usual ? occasional : recurring,
                *main.rating + (allowance != nullptr ? allowance->value : Pressure()),
                allowance != nullptr ? allowance->basis : *main.rating_basis,
                {plain(1.0), allowance != nullptr ? figure(*allowance) : plain(0.0, Kind::pressure)});
  return usual;
}

// What is read of a pipe that may be rated for more than is counted on. A reading that tells the candidates apart is
// offered where it could mean one that bears the line.
Detail what_proves_more(const Context& context, const ResolvedMain& main) {
  if (main.candidates.size() == 1) return std::string_view("year or class");
  const auto bears = [&](const Pipe* pipe) {
    return pipe->rating && !over(context.line(), main.temperature_factor * *pipe->rating);
  };
  // A tape that reads this pipe reads none that does not bear the line.
  const auto stands_apart = [&](const Pipe* pipe) {
    return pipe->od && bears(pipe) &&
           std::none_of(main.candidates.begin(), main.candidates.end(),
                        [&](const Pipe* other) { return !bears(other) && !told_apart(*pipe, *other); });
  };
  const bool by_tape = main.settle && main.settle->id == ReadingId::circumference &&
                       std::any_of(main.candidates.begin(), main.candidates.end(), stands_apart);
  return by_tape ? std::string_view("class or circumference") : std::string_view("class");
}

}  // namespace

PressureChain check_pipe_pressure(const Context& context, const ResolvedMain& main, Said& said) {
  PressureChain chain;
  chain.line = context.line();
  said.taken.take(PlanPart::pressure, Taken::line_pressure, stated_in_job, Measure(chain.line));
  if (const auto& lowest = context.job().main.pressure_low; lowest && over(*lowest, chain.line)) {
    said.findings.add(FindingCode::pressure_low_over_line, Severity::hold).value(*lowest).at_most(chain.line);
  }
  // More pressure takes it away: it must never hold.
  const Pressure lowest_told = std::min(chain.line, context.job().main.pressure_low.value_or(chain.line));
  if (const auto& least = context.rules.water.system_least; context.pressurized() && over(least.value, lowest_told)) {
    said.findings.add(FindingCode::pressure_system_low, Severity::caution)
        .value(lowest_told)
        .at_least(least.value)
        .basis(least.basis);
  }
  if (main.rating_unsettled) {
    said.findings.add(FindingCode::pressure_rating_unknown, Severity::hold)
        .at_least(context.line() + greatest_surge(context));
  }
  if (main.rating) {
    const Basis& basis = *main.rating_basis;
    add_limit(chain, PressureLink::pipe, *main.rating, basis);
    write_line(context, said.taken, name_of(PressureLink::pipe), *main.rating, basis);
    if (over(chain.line, *main.rating)) {
      // Where even the greatest rating is exceeded, or the utility has spoken, no reading of the class will help.
      const bool class_may_help = !context.job().main.rating && !over(chain.line, *main.greatest_rating);
      said.findings.add(FindingCode::pressure_over_pipe_rating, class_may_help ? Severity::hold : Severity::stop)
          .value(chain.line)
          .at_most(*main.rating)
          .with(main.rated_as.empty() ? Detail() : Detail(main.rated_as),
                class_may_help ? what_proves_more(context, main) : Detail())
          .basis(basis);
    }
    chain.surge = check_surge(context, main, said);
  }

  // A pipe nobody has put a thermometer to may be as warm as the warmest that is tapped.
  const MaterialFacts& facts = context.catalog.facts(main.material);
  if (is_plastic(main.material) && !context.job().main.temperature) {
    const TemperatureWindow window = tapping_window(context);
    said.findings.add(FindingCode::main_temperature_unmeasured, Severity::hold)
        .with(Measure(window.coldest->value), Measure(window.warmest->value))
        .basis(window.warmest->basis, facts.temperature_basis);
  }
  return chain;
}

void check_equipment_pressure(const Site& site, Candidate& candidate) {
  const Rules& rules = site.rules;
  const Method method = candidate.method.kind;
  PressureChain& chain = candidate.pressure;
  chain = site.pressure;

  if (method == Method::saddle || method == Method::sleeve) {
    require_for_good(site, candidate, PressureLink::saddle, FindingCode::pressure_over_saddle_rating,
                     candidate.fitting.saddle_rating, rules.pressure.saddle_rating,
                     {"service.saddle_rating", Measure(rules.pressure.saddle_rating.value), "a rating in common use",
                      "read the pressure marked on the saddle"});
  }
  if (method != Method::sleeve) {
    require_for_good(site, candidate, PressureLink::corporation_stop, FindingCode::pressure_over_stop_rating,
                     candidate.fitting.stop_rating, rules.pressure.stop_rating,
                     {"service.stop_rating", Measure(rules.pressure.stop_rating.value),
                      "the lowest rating in common use", "read the pressure marked on the stop"});
  }
  // The least of them is the first to suffer from a surge.
  for (const PressureLimit& limit : chain.limits) {
    if (limit.link == PressureLink::corporation_stop || limit.link == PressureLink::saddle) {
      bear_surge(site, candidate, name_of(limit.link), limit.limit, *limit.basis);
    }
  }
  if (!site.pressurized()) return;

  require_while_tapping(site, candidate, PressureLink::wet_tap_rule, FindingCode::pressure_over_wet_tap_limit,
                        rules.pressure.wet_tap_limit.value, rules.pressure.wet_tap_limit.basis);
  if (method == Method::sleeve) return;  // cut with a larger machine, chosen with the sleeve
  const MachineProfile& machine = *candidate.setup.machine;
  require_while_tapping(site, candidate, PressureLink::machine, FindingCode::pressure_over_machine_rating,
                        machine.body_rating, machine.basis);
  bear_surge(site, candidate, "machine", machine.body_rating, machine.basis);
  const Feed feed = candidate.setup.feed;
  const auto limit = feed == Feed::powered ? machine.powered_limit : machine.hand_limit;
  if (limit) {
    require_while_tapping(site, candidate, PressureLink::feed, FindingCode::pressure_over_feed_limit, *limit,
                          machine.basis, name_of(feed));
  }
}

}  // namespace mainbore::planning
