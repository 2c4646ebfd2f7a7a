#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "mainbore/hydraulics/equal_capacity.hpp"
#include "mainbore/mechanics/section.hpp"
#include "mainbore/mechanics/stripping.hpp"
#include "mainbore/mechanics/trial_taps.hpp"
#include "planning/calculations.hpp"
#include "planning/checks.hpp"
#include "planning/main_in_question.hpp"

namespace mainbore::planning {
namespace {

// The codes with which a method refuses, one set a method.
struct RefusalCodes {
  FindingCode not_allowed;
  FindingCode over_maximum;
  FindingCode no_rule;
};
constexpr RefusalCodes direct_codes{FindingCode::direct_not_allowed, FindingCode::direct_over_maximum,
                                    FindingCode::direct_no_rule};
constexpr RefusalCodes saddle_codes{FindingCode::saddle_not_allowed, FindingCode::saddle_over_maximum,
                                    FindingCode::saddle_no_rule};
constexpr RefusalCodes sleeve_codes{FindingCode::sleeve_not_allowed, FindingCode::sleeve_over_maximum,
                                    FindingCode::sleeve_no_rule};

// Of a way that is refused a verdict tells the first reason alone, which nothing found later changes: the rest is not
// looked at, which saves a sixth of planning.
bool settled_against(const Site& site, const Candidate& candidate) {
  return !site.whole() && candidate.verdict() == Verdict::no_go;
}

// A tap larger than a cap above which somebody must consent.
void ask_consent_above(const Site& site, const rules::Cap& cap, Candidate& candidate) {
  if (cap.row == nullptr || candidate.method.tap <= cap.row->largest) return;
  candidate.said.findings.add(FindingCode::rules_consent, Severity::hold)
      .with(name_of(candidate.method.kind), name_of(site.main.material), Detail(), std::string_view(cap.row->consent))
      .basis(cap.row->basis);
}

// A tap that the rules permit by somebody's consent alone: the defaults close the main to the method, or the row says so.
void ask_consent(const Site& site, const rules::Ruling& decided, Candidate& candidate) {
  ask_consent_above(site, decided.consent_cap, candidate);
  if (decided.by_consent == nullptr) return;
  const TapLimit& row = *decided.by_consent;
  const std::string_view method = name_of(candidate.method.kind);
  const std::string_view material = name_of(site.main.material);
  const bool usual_says = decided.closed_by != nullptr && !decided.closed_by->why.empty();
  const Detail usual = usual_says ? Detail(std::string_view(decided.closed_by->why)) : Detail();
  if (row.consent.empty()) {
    candidate.said.findings.add(FindingCode::rules_consent_unnamed, Severity::hold)
        .with(method, material, usual)
        .basis(row.basis);
    return;
  }
  candidate.said.findings.add(FindingCode::rules_consent, Severity::hold)
      .with(method, material, usual, std::string_view(row.consent))
      .basis(row.basis);
}

// (a) what is published, or the utility's own maximum.
void judge_by_rule(const Site& site, const rules::MethodLists& lists, const RefusalCodes& codes, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const rules::Ruling decided = rules::ruling(main_in_question(site, main), lists);
  candidate.method.limit = decided.permission;
  Findings& findings = candidate.said.findings;
  const TapLimit* const cap = decided.cap.row;
  for (const TapLimit* const row : {decided.permission, cap}) {
    if (row != nullptr)
      candidate.said.taken.take(PlanPart::tap, Taken::largest_tap, row->basis, row->largest, From::rule);
  }
  const bool own_is_open = decided.open != nullptr && decided.open->basis.utility;
  const Detail open = own_is_open ? Detail(fact_that_settles(decided.asks)) : Detail();
  if (decided.none) {
    findings.add(codes.no_rule, Severity::stop).with(name_of(main.material), main.size, open);
    return;
  }
  const bool capped = cap != nullptr && cap->largest < decided.permission->largest;
  const TapLimit& row = capped ? *cap : *decided.permission;
  const Detail unsettled = !capped ? open : decided.cap.asks ? Detail(fact_that_settles(*decided.cap.asks)) : Detail();
  if (site.calculates()) {
    candidate.said.taken.calculated(
        Worked(PlanPart::tap, Formula::tap_size, {given(Measure(candidate.method.tap.number(), Kind::ratio))},
               Measure(candidate.method.tap.number(), Kind::ratio), name_of(candidate.method.kind))
            .at_most(figure(Measure(row.largest.number(), Kind::ratio), row.basis, From::rule)));
  }
  if (row.largest == NominalSize()) {
    findings.add(codes.not_allowed, Severity::stop)
        .with(name_of(main.material), std::string_view(row.why), unsettled)
        .basis(row.basis);
  } else if (candidate.method.tap > row.largest) {
    const std::string_view what = main.governing != nullptr && !main.governing->class_name.empty()
                                      ? std::string_view(main.governing->class_name)
                                      : name_of(main.material);
    findings.add(codes.over_maximum, Severity::stop)
        .with(candidate.method.tap, row.largest, what, unsettled)
        .basis(row.basis);
  }
  ask_consent(site, decided, candidate);
}

// The hole of a direct tap is that over its threads, of any other the outlet's nominal bore.
CalculationInput hole_of(const Site& site, const Candidate& candidate) {
  const ChosenMethod& method = candidate.method;
  const TapThread* const thread =
      method.kind == Method::direct && method.thread ? site.catalog.thread(*method.thread, method.tap) : nullptr;
  return figure(Measure(*method.hole), thread != nullptr ? thread->basis : usual_practice);
}

// What the hole leaves of the pipe as a beam. The ratio hardly depends on the wall, and falls as it thickens: judged at a
// tenth of the diameter, thicker than nearly any main, so that no reading of the wall can better it.
void judge_section(const Site& site, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const Rule<double>& rule = site.rules.saddle.section_left;
  if (!main.od_least || !candidate.method.hole) return;
  const auto section = mechanics::net_section({*main.od_least, 0.1 * *main.od_least}, *candidate.method.hole);
  candidate.method.section_left = section ? section->modulus_ratio : 0.0;
  candidate.said.taken.take(PlanPart::tap, Taken::section_left, rule.basis, Measure(rule.value, Kind::ratio));
  if (section && site.calculates()) {
    candidate.said.taken.calculated(Worked(PlanPart::tap, Formula::section_left,
                                           {hole_of(site, candidate), diameter(site, main, *main.od_least), plain(0.1)},
                                           Measure(*candidate.method.section_left, Kind::ratio))
                                        .at_least(figure(rule, Kind::ratio)));
  }
  if (!over(rule.value, *candidate.method.section_left)) return;
  candidate.said.findings.add(FindingCode::section_too_little_left, Severity::stop)
      .value(Measure(*candidate.method.section_left, Kind::ratio))
      .at_least(Measure(rule.value, Kind::ratio))
      .basis(rule.basis);
}

void judge_hole_ratio(const Site& site, Candidate& candidate, const Rule<double>& rule, FindingCode code) {
  const ResolvedMain& main = site.main;
  if (!main.od_least || !candidate.method.hole) return;
  const double ratio = mechanics::hole_ratio(*candidate.method.hole, *main.od_least);
  candidate.said.taken.take(PlanPart::tap, Taken::hole_ratio, rule.basis, Measure(rule.value, Kind::ratio));
  if (site.calculates()) {
    candidate.said.taken.calculated(Worked(PlanPart::tap, Formula::hole_ratio,
                                           {hole_of(site, candidate), diameter(site, main, *main.od_least)},
                                           Measure(ratio, Kind::ratio))
                                        .at_most(figure(rule, Kind::ratio)));
  }
  if (!over(ratio, rule.value)) return;
  candidate.said.findings.add(code, Severity::stop)
      .value(Measure(ratio, Kind::ratio))
      .at_most(Measure(rule.value, Kind::ratio))
      .with(Measure(*candidate.method.hole))
      .basis(rule.basis);
}

// (b) complete threads in the wall, at nominal, and at the least wall of the smallest pipe that it can be: in that the hole
// drops furthest.
void judge_threads(const Site& site, const TapThread& thread, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const Rules& rules = site.rules;
  Findings& findings = candidate.said.findings;
  if (!main.od_least) return;  // main.od-unknown already asks for it
  const double required = rules.direct.required_threads.value;
  const Measure asked(required, Kind::threads);
  candidate.said.taken.take(PlanPart::tap, Taken::threads_required, rules.direct.required_threads.basis, asked);
  const auto needed = mechanics::wall_needed(*main.od_least, thread.form, required);
  // (c) of the AWWA taper we only recall the dimensions: its count is shown, and the published maximum judges. Where the
  // utility itself asks for so many threads, a count that falls short by those dimensions is a doubt, and holds.
  const bool recalled = thread.basis.how == How::memory;
  const bool judged = !recalled || rules.direct.required_threads.basis.utility;
  if (!main.wall_nominal) {
    auto finding = findings.add(FindingCode::direct_wall_unknown, Severity::hold);
    if (needed) finding.at_least(wall_reading_for(*needed, rules));
    finding.basis(rules.direct.required_threads.basis);
    return;
  }
  ThreadsInWall& in_wall = candidate.engagement.emplace();
  in_wall.required = required;
  in_wall.judged = judged;
  in_wall.wall_needed = needed;
  in_wall.at_nominal = mechanics::engagement({*main.od, *main.wall_nominal}, thread.form);
  in_wall.at_least = mechanics::engagement({*main.od_least, *main.wall_least}, thread.form);
  if (needed) in_wall.margin = *main.wall_least - *needed;
  if (thread.geometry && site.whole()) {
    const MaterialFacts& facts = site.catalog.facts(main.material);
    in_wall.end_load = mechanics::pressure_end_load(*thread.geometry, site.line());
    if (facts.shear_strength) {
      const auto areas = mechanics::taper_shear_areas(*thread.geometry, in_wall.at_least->complete_ring_length);
      const Pressure stop = *site.catalog.stop_material().shear_strength;
      in_wall.strip_load = mechanics::stripping_load(areas, {.internal = *facts.shear_strength, .external = stop},
                                                     rules.direct.strip_effectiveness.value);
      candidate.said.taken.take(PlanPart::tap, Taken::pipe_strength, facts.basis, Measure(*facts.shear_strength));
      candidate.said.taken.take(PlanPart::tap, Taken::stop_strength, site.catalog.stop_material().basis, Measure(stop));
      candidate.said.taken.take(PlanPart::tap, Taken::shear_area, rules.direct.strip_effectiveness.basis,
                                Measure(rules.direct.strip_effectiveness.value, Kind::ratio));
    }
  }

  write_threads(site, thread, candidate);
  const double at_nominal = in_wall.at_nominal.complete_threads;
  const double at_least = in_wall.at_least->complete_threads;
  if (!judged) {
    findings.add(FindingCode::direct_recalled_thread, Severity::note)
        .value(Measure(at_nominal, Kind::threads))
        .at_least(asked)
        .basis(rules.direct.required_threads.basis, thread.basis);
  } else if (recalled && over(required, at_nominal)) {
    findings.add(FindingCode::direct_recalled_thread, Severity::hold)
        .value(Measure(at_nominal, Kind::threads))
        .at_least(asked)
        .with(Measure(*main.wall_nominal), needed ? Detail(Measure(wall_reading_for(*needed, rules))) : Detail())
        .basis(rules.direct.required_threads.basis, thread.basis);
  } else if (over(required, at_nominal)) {
    findings.add(FindingCode::direct_few_threads, Severity::stop)
        .value(Measure(at_nominal, Kind::threads))
        .at_least(asked)
        .with(Measure(*main.wall_nominal))
        .basis(rules.direct.required_threads.basis, thread.basis);
  } else if (over(required, at_least)) {
    findings.add(FindingCode::direct_thin_wall, Severity::hold)
        .value(*main.wall_least)
        .at_least(*needed)
        .with(Measure(at_least, Kind::threads), Measure(wall_reading_for(*needed, rules)))
        .basis(rules.direct.required_threads.basis, thread.basis);
  } else if (over(required + rules.direct.marginal_threads.value, at_least)) {
    findings.add(FindingCode::direct_marginal_threads, Severity::caution)
        .value(Measure(at_least, Kind::threads))
        .at_least(asked)
        .basis(rules.direct.required_threads.basis, rules.direct.marginal_threads.basis);
  }
}

// Walls that rust, graphitise or soften in service guarantee nothing until they are gauged.
bool wall_decays(Material material) {
  return material == Material::cast_iron || material == Material::steel || material == Material::galvanized_steel ||
         material == Material::asbestos_cement || material == Material::concrete_cylinder;
}

// Of these a gauge can tell whether a saddle's bands have metal to hold on to.
bool rusts(Material material) {
  return material == Material::cast_iron || material == Material::steel || material == Material::galvanized_steel;
}

// Held until the wall is gauged: enough for the threads where they are counted, else what a sound pipe of the class reads.
void require_wall_reading(const Site& site, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const Rules& rules = site.rules;
  if (main.wall_basis == WallBasis::measured) return;
  auto finding = candidate.said.findings.add(FindingCode::main_wall_unmeasured, Severity::hold);
  finding.basis(rules.direct.required_threads.basis, rules.measuring.wall_uncertainty.basis);
  if (candidate.engagement && candidate.engagement->judged && candidate.engagement->wall_needed) {
    finding.at_least(wall_reading_for(*candidate.engagement->wall_needed, rules));
  } else if (const auto reading = class_wall_reading(main.governing, rules)) {
    finding.at_least(*reading);
  }
}

void judge_pvc_direct(const Site& site, Candidate& candidate) {
  const MainFacts& facts = site.job().main;
  Findings& findings = candidate.said.findings;
  if (*candidate.method.thread != ThreadStandard::awwa_taper) {
    findings.add(FindingCode::direct_wrong_thread, Severity::stop).with(name_of(*candidate.method.thread));
  }
  if (!facts.curved) {
    findings.add(FindingCode::main_curve_unknown, Severity::hold);
  } else if (*facts.curved) {
    findings.add(FindingCode::main_curved, Severity::stop);
  }
}

// A tap, with whatever cutter, is made while the plastic is neither brittle nor soft.
void judge_temperature(const Site& site, Candidate& candidate) {
  const auto& temperature = site.job().main.temperature;
  if (!is_plastic(site.main.material) || !temperature) return;
  const TemperatureWindow window = tapping_window(site);
  for (const Rule<Temperature>* const end : {window.coldest, window.warmest}) {
    candidate.said.taken.take(PlanPart::tap, Taken::plastic_temperature, end->basis, Measure(end->value));
  }
  const bool cold = *temperature < window.coldest->value;
  if (!cold && !(*temperature > window.warmest->value)) return;
  const Measure low(window.coldest->value);
  const Measure high(window.warmest->value);
  const bool pressurized = site.pressurized();
  auto finding = candidate.said.findings.add(FindingCode::main_temperature_outside, Severity::hold);
  finding.value(*temperature)
      .with(low, high, std::string_view(pressurized ? "under pressure" : "dry"),
            pressurized ? Detail(std::string_view("or tap the main dry")) : Detail())
      .basis(cold ? window.coldest->basis : window.warmest->basis);
  if (cold) finding.at_least(low);
  else finding.at_most(high);
}

void plan_makeup(const Site& site, const TapThread& thread, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const Rules& rules = site.rules;
  if (!thread.geometry) {
    candidate.said.findings.add(FindingCode::makeup_by_trial, Severity::note).with(name_of(thread.standard));
    return;
  }
  MakeupPlan& plan = candidate.makeup.emplace();
  plan.wrench_turns = rules.direct.wrench_turns.value;
  plan.threads_showing = rules.direct.threads_showing.value;
  plan.makeup = mechanics::makeup(*thread.geometry, {plan.wrench_turns, plan.threads_showing});
  candidate.said.taken.take(PlanPart::tap, Taken::wrench_turns, rules.direct.wrench_turns.basis,
                            Measure(plan.wrench_turns, Kind::turns));
  candidate.said.taken.take(PlanPart::tap, Taken::threads_showing, rules.direct.threads_showing.basis,
                            Measure(plan.threads_showing, Kind::threads));
  if (main.wall_nominal) plan.protrusion = mechanics::protrusion(plan.makeup.engaged_length, *main.wall_nominal);
  if (thread.projection) {
    plan.tip_depth = mechanics::tap_tip_depth(*thread.geometry, *thread.projection, plan.makeup.stop_past_gauge);
  }
  write_makeup(site, thread, candidate);
}

// The card makes the stop up by the counts of a trial. A mark more than a turn from what was tried is no mark
// (mechanics::TrialLimits).
void judge_trial_counts(const Site& site, Candidate& candidate) {
  constexpr double noise = 1e-9;
  const TrialFacts& trial = site.job().service.trial;
  const DirectRules& rules = site.rules.direct;
  const auto off = [&](std::string_view what, std::string_view why, Measure value, Measure limit, const Basis& basis) {
    return candidate.said.findings.add(FindingCode::makeup_trial_off, Severity::hold)
        .value(value)
        .with(what, why)
        .basis(basis)
        .at_least(limit);
  };
  if (trial.wrench_turns && *trial.wrench_turns < mechanics::quarter_turn) {
    off("turns by wrench", "a stop made up by hand alone does not seal; it should be",
        Measure(*trial.wrench_turns, Kind::turns),
        Measure(std::max(rules.wrench_turns.value, mechanics::quarter_turn), Kind::turns), rules.wrench_turns.basis);
  } else if (trial.wrench_turns && trial.hand_turns &&
             *trial.hand_turns + *trial.wrench_turns < rules.required_threads.value - noise) {
    off("turns by hand and by wrench, together", "fewer threads went in than the wall must hold; it must be at least",
        Measure(*trial.hand_turns + *trial.wrench_turns, Kind::turns),
        Measure(rules.required_threads.value, Kind::turns), rules.required_threads.basis);
  } else if (trial.wrench_turns || trial.threads_showing) {
    const double turns = trial.wrench_turns.value_or(rules.wrench_turns.value);
    const double showing = trial.threads_showing.value_or(rules.threads_showing.value);
    const auto off_by_more = [&](std::string_view what, double had, double wanted, Kind kind, const Basis& basis) {
      if (std::abs(had - wanted) <= mechanics::TrialLimits{}.reach + noise) return false;
      off(what, "more than a turn off what a made-up stop has; it should be near", Measure(had, kind),
          Measure(wanted, kind), basis);
      return true;
    };
    const Rule<double>& by_wrench = rules.wrench_turns;
    const Rule<double>& left = rules.threads_showing;
    if (off_by_more("turns by wrench", turns, by_wrench.value, Kind::turns, by_wrench.basis)) return;
    if (off_by_more("threads showing", showing, left.value, Kind::threads, left.basis)) return;
    off_by_more("turns by wrench and threads showing, together", turns + showing, by_wrench.value + left.value,
                Kind::threads, left.basis);
  }
}

// A thread whose own dimensions are not listed is counted as the next larger one: a wider hole, in which fewer close.
const TapThread* next_larger_thread(const Catalog& catalog, ThreadStandard standard, NominalSize size) {
  const TapThread* next = nullptr;
  for (const TapThread& thread : catalog.threads()) {
    if (thread.standard == standard && thread.size > size && (next == nullptr || thread.size < next->size))
      next = &thread;
  }
  return next;
}

// Stops are made in the sizes for which their thread is listed: any other is a slip, or a thing that nobody can load.
void judge_tap_size(const Site& site, Candidate& candidate) {
  const ThreadStandard standard = *candidate.method.thread;
  const NominalSize tap = candidate.method.tap;
  if (site.catalog.thread(standard, tap) != nullptr) return;
  std::optional<NominalSize> smaller;
  std::optional<NominalSize> larger;
  for (const TapThread& thread : site.catalog.threads()) {
    if (thread.standard != standard) continue;
    if (thread.size < tap && (!smaller || thread.size > *smaller)) smaller = thread.size;
    if (thread.size > tap && (!larger || thread.size < *larger)) larger = thread.size;
  }
  candidate.said.findings.add(FindingCode::service_size_not_made, Severity::hold)
      .with(tap, name_of(standard), smaller ? Detail(*smaller) : Detail(), larger ? Detail(*larger) : Detail());
}

// The inlet thread of the corporation stop.
void take_thread(const Site& site, Candidate& candidate) {
  const Rule<ThreadStandard>& usual = site.rules.direct.default_thread;
  const auto& given = site.job().service.thread;
  const ThreadStandard standard = given.value_or(usual.value);
  candidate.method.thread = standard;
  if (!site.whole()) return;
  if (const TapThread* const thread = site.catalog.thread(standard, candidate.method.tap)) {
    candidate.said.taken.take(PlanPart::tap, Taken::thread, thread->basis, name_of(standard));
  }
  if (!given) candidate.said.taken.assumed(PlanPart::tap, Taken::thread, usual.basis, name_of(standard));
}

void try_direct(const Site& site, NominalSize tap, Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const Rules& rules = site.rules;
  candidate.method.kind = Method::direct;
  candidate.method.tap = tap;
  judge_by_rule(site,
                {rules.direct.largest, rules.direct.largest_by_default, {&rules.main.at_most, &rules.direct.at_most}},
                direct_codes, candidate);
  if (settled_against(site, candidate)) return;
  take_thread(site, candidate);
  judge_tap_size(site, candidate);
  if (main.material == Material::pvc) judge_pvc_direct(site, candidate);
  judge_temperature(site, candidate);
  if (site.job().main.condition == Condition::pitted) {
    candidate.said.findings.add(FindingCode::main_condition_pitted, Severity::stop);
  }
  // A wall thinner than the class was made is corroded or another pipe: published maxima do not speak of it.
  for (const Finding& finding : site.findings.list()) {
    if (finding.code == FindingCode::main_wall_thin) candidate.said.findings.add(finding, Severity::stop);
  }
  const TapThread* known = site.catalog.thread(*candidate.method.thread, tap);
  const TapThread* thread = known != nullptr ? known : next_larger_thread(site.catalog, *candidate.method.thread, tap);
  if (known == nullptr) {
    candidate.said.findings.add(FindingCode::direct_thread_unknown, thread == nullptr ? Severity::hold : Severity::note)
        .with(name_of(*candidate.method.thread), tap);
  }
  if (thread == nullptr) return;
  candidate.method.hole = thread->form.major;
  judge_hole_ratio(site, candidate, rules.direct.hole_ratio, FindingCode::direct_hole_too_large);
  judge_section(site, candidate);
  judge_threads(site, *thread, candidate);
  judge_trial_counts(site, candidate);
  if (wall_decays(main.material)) require_wall_reading(site, candidate);
  if (known != nullptr) plan_makeup(site, *known, candidate);
}

// What the utility asks of the fitting, in its own words.
const FittingSpecification* specification(const Site& site, const std::vector<FittingSpecification>& rows,
                                          Candidate& candidate) {
  const ResolvedMain& main = site.main;
  const NominalSize tap = candidate.method.tap;
  if (rows.empty()) return nullptr;
  const rules::MainInQuestion question = main_in_question(site, main);
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const FittingSpecification& row) {
    return row.covers(main.material, main.size) && rules::match_any(row, question) != rules::Match::no &&
           (!row.tap_from || tap >= *row.tap_from) && (!row.tap_to || tap <= *row.tap_to) &&
           (!row.tap_above || tap > *row.tap_above);
  });
  if (found == rows.end()) return nullptr;
  candidate.said.taken.take(PlanPart::tap, Taken::fitting, found->basis, {}, From::rule);
  return &*found;
}

// A saddle's or sleeve's outlet is cut to its nominal bore: here alone the name of a size is the size of a hole.
Length outlet_bore(NominalSize size) { return size.number() * units::inch; }

void try_saddle(const Site& site, NominalSize tap, Candidate& candidate) {
  candidate.method.kind = Method::saddle;
  candidate.method.tap = tap;
  candidate.method.hole = outlet_bore(tap);
  candidate.method.specification = specification(site, site.rules.saddle.specification, candidate);
  const Rules& rules = site.rules;
  judge_by_rule(site,
                {rules.saddle.largest, rules.saddle.largest_by_default, {&rules.main.at_most, &rules.saddle.at_most}},
                saddle_codes, candidate);
  if (settled_against(site, candidate)) return;
  take_thread(site, candidate);
  judge_tap_size(site, candidate);
  judge_hole_ratio(site, candidate, site.rules.saddle.hole_ratio, FindingCode::saddle_hole_too_large);
  judge_section(site, candidate);
  judge_temperature(site, candidate);
  if (rusts(site.main.material)) require_wall_reading(site, candidate);
  if (site.main.material == Material::concrete_cylinder) {
    candidate.said.findings.add(FindingCode::saddle_by_engineer, Severity::hold);
  }
}

void try_sleeve(const Site& site, NominalSize outlet, Candidate& candidate) {
  candidate.method.kind = Method::sleeve;
  candidate.method.tap = outlet;
  candidate.method.hole = outlet_bore(outlet);
  candidate.method.specification = specification(site, site.rules.sleeve.specification, candidate);
  const Rules& rules = site.rules;
  judge_by_rule(site,
                {rules.sleeve.largest, rules.sleeve.largest_by_default, {&rules.main.at_most, &rules.sleeve.at_most}},
                sleeve_codes, candidate);
  if (settled_against(site, candidate)) return;
  judge_hole_ratio(site, candidate, rules.sleeve.hole_ratio, FindingCode::sleeve_hole_too_large);
  if (outlet < rules.sleeve.smallest.value) {
    candidate.said.findings.add(FindingCode::sleeve_too_small, Severity::stop)
        .with(outlet, rules.sleeve.smallest.value)
        .basis(rules.sleeve.smallest.basis);
  }
  auto finding = candidate.said.findings.add(FindingCode::sleeve_to_be_chosen, Severity::hold);
  finding.with(outlet, site.main.od ? Detail(Measure(*site.main.od)) : Detail());
}

// From the nearest joint on one side to the nearest on the other, where both are listed.
std::optional<Length> barrel_between_joints(const Site& site) {
  std::optional<Length> before;
  std::optional<Length> after;
  if (!site.job().nearby) return std::nullopt;
  for (const Nearby& thing : *site.job().nearby) {
    if (!is_joint(thing.what)) continue;
    const Length along = thing.along - site.location.shift;
    if (along <= Length()) before = before ? std::max(*before, along) : along;
    if (along >= Length()) after = after ? std::min(*after, along) : along;
  }
  if (!before || !after) return std::nullopt;
  return *after - *before;
}

// So many taps of this size that together they carry what the asked one would.
Candidate try_several_of(const Site& site, NominalSize tap) {
  const Rules& rules = site.rules;
  Candidate candidate(site);
  try_direct(site, tap, candidate);
  candidate.method.count = hydraulics::taps_needed(
      hydraulics::equal_capacity(site.asked().number() / tap.number(), rules.several.equal_capacity_exponent.value));
  candidate.said.taken.take(PlanPart::tap, Taken::equal_capacity, rules.several.equal_capacity_exponent.basis,
                            Measure(rules.several.equal_capacity_exponent.value, Kind::ratio));
  if (site.calculates()) {
    candidate.said.taken.calculated(Worked(PlanPart::tap, Formula::equal_taps,
                                           {given(Measure(site.asked().number(), Kind::ratio)), plain(tap.number()),
                                            figure(rules.several.equal_capacity_exponent, Kind::ratio)},
                                           Measure(candidate.method.count, Kind::ratio))
                                        .at_most(figure(rules.several.most_taps, Kind::ratio)));
  }
  if (over(static_cast<double>(candidate.method.count), rules.several.most_taps.value)) {
    candidate.said.findings.add(FindingCode::several_too_many, Severity::stop)
        .with(candidate.method.count, tap)
        .basis(rules.several.most_taps.basis, rules.several.equal_capacity_exponent.basis);
  }
  const rules::MainInQuestion question = main_in_question(site, site.main);
  ask_consent_above(site, rules::lowest_cap(question, rules.several.at_most, rules::Above::by_consent), candidate);
  if (const TapLimit* const cap = rules::lowest_cap(question, rules.several.at_most, rules::Above::none).row) {
    if (tap > cap->largest) {
      candidate.said.findings.add(FindingCode::several_over_maximum, Severity::stop)
          .with(tap, cap->largest == NominalSize() ? Detail() : Detail(cap->largest), std::string_view(cap->why))
          .basis(cap->basis);
    }
  }
  if (candidate.verdict() == Verdict::no_go) return candidate;
  Length spacing;
  Length joint;
  const Basis* spaced_by = &usual_practice;
  const Basis* joint_by = &usual_practice;
  if (const Clearance* const clearance = clearance_from(rules, NearbyThing::tap)) {
    spacing = clearance->least.value;
    spaced_by = &clearance->least.basis;
    candidate.said.taken.take(PlanPart::tap, Taken::taps_apart, clearance->least.basis,
                              Measure(spacing, Kind::distance));
  }
  if (const Clearance* const clearance = clearance_from(rules, NearbyThing::joint)) {
    joint = clearance->least.value;
    joint_by = &clearance->least.basis;
  }
  candidate.method.spacing = spacing;
  const Length needed = hydraulics::barrel_needed(candidate.method.count, spacing, joint);
  const auto barrel = barrel_between_joints(site);
  if (site.calculates()) {
    Worked row(
        PlanPart::tap, Formula::barrel_needed,
        {worked_out(Formula::equal_taps, Measure(candidate.method.count, Kind::ratio)),
         figure(Measure(spacing, Kind::distance), *spaced_by), figure(Measure(joint, Kind::distance), *joint_by)},
        Measure(needed, Kind::distance));
    if (barrel) row.at_most(given(Measure(*barrel, Kind::distance)));
    candidate.said.taken.calculated(std::move(row));
  }
  if (barrel && over(needed, *barrel)) {
    candidate.said.findings.add(FindingCode::several_no_room, Severity::stop)
        .value(Measure(*barrel, Kind::distance))
        .at_least(Measure(needed, Kind::distance))
        .with(candidate.method.count, tap);
    return candidate;
  }
  candidate.said.findings.add(FindingCode::several_need_room, Severity::hold)
      .at_least(Measure(needed, Kind::distance))
      .with(candidate.method.count, tap)
      .basis(rules.several.equal_capacity_exponent.basis);
  return candidate;
}

// The largest size that will do, or the first refused.
std::optional<Candidate> try_several(const Site& site) {
  constexpr std::array<double, 5> smaller_sizes = {1.5, 1.25, 1.0, 0.75, 0.625};
  const auto& smallest = site.rules.water.smallest_tap.value;
  std::optional<Candidate> refused;
  for (const double size : smaller_sizes) {
    const NominalSize tap = NominalSize::inches(size);
    if (tap >= site.asked() || (smallest && tap < *smallest)) continue;
    Candidate candidate = try_several_of(site, tap);
    if (candidate.verdict() != Verdict::no_go) return candidate;
    if (!refused) refused = std::move(candidate);
  }
  return refused;
}

void reject(const Candidate& candidate, std::vector<RejectedMethod>& rejected, Recorder& refusals) {
  const Finding* why = candidate.said.findings.first(Severity::stop);
  if (why == nullptr) why = candidate.said.findings.first(Severity::hold);
  if (why == nullptr) return;
  const ChosenMethod& method = candidate.method;
  rejected.push_back({method.kind, method.count, method.tap, *why});
  refusals.refused(candidate.said.taken, *why);
}

void take_place(const Site& site, Candidate& candidate) {
  const ChosenMethod& method = candidate.method;
  candidate.place = place_round(site.job(), site.rules, site.location.shift, method.kind, method.count);
  for (const auto& finding : {&candidate.place.outside, &candidate.place.in_line}) {
    if (*finding) candidate.said.findings.add(**finding, (*finding)->severity);
  }
}

// The place round the pipe, the machine and the pressures that go with the method.
void equip(const Site& site, Candidate& candidate, const ApprovedItems* among = nullptr) {
  if (settled_against(site, candidate)) return;
  take_place(site, candidate);
  choose_fittings(site, among, candidate);
  check_machine(site, candidate);
  check_equipment_pressure(site, candidate);
  if (site.approved != nullptr) choose_tools(site, among, candidate);
}

// `candidate` is filled where it stands: it is too large to be moved for each method.
void try_method(const Site& site, Method method, Candidate& candidate, const ApprovedItems* among = nullptr) {
  const auto& asked = site.job().service.method;
  if (method == Method::direct) try_direct(site, site.asked(), candidate);
  else if (method == Method::saddle) try_saddle(site, site.asked(), candidate);
  else try_sleeve(site, site.asked(), candidate);
  if (asked && *asked != method) {
    candidate.said.findings.add(FindingCode::method_not_as_asked, Severity::hold)
        .with(name_of(*asked), name_of(method));
  }
  equip(site, candidate, among);
}

// What the rules say is done where they allow no saddle or sleeve: the last word of whoever set them.
Detail way_by_rule(const std::vector<RejectedMethod>& rejected) {
  for (const RejectedMethod& method : rejected) {
    const FindingCode code = method.why.code;
    if (code == FindingCode::saddle_not_allowed || code == FindingCode::sleeve_not_allowed)
      return method.why.details[1];
  }
  return {};
}

// What is assumed of the way that is taken, and of no other.
void assume_for(const Site& site, Candidate& chosen) {
  if (!site.whole()) return;
  const ServiceFacts& service = site.job().service;
  std::pmr::vector<Assumption>& assumed = chosen.said.assumed;
  if (!service.clock) {
    assumed.insert(assumed.begin(), {"service.clock", chosen.place.clock, chosen.place.because,
                                     "say where round the pipe the tap must stand"});
    const Basis& usual = chosen.method.kind == Method::sleeve ? usual_practice : site.rules.place.default_clock.basis;
    chosen.said.taken.assumed(PlanPart::place, Taken::place_round, usual, chosen.place.clock);
  }
  if (!service.thread && chosen.method.thread) {
    assumed.push_back({"service.thread", name_of(*chosen.method.thread),
                       "the most common inlet thread of corporation stops",
                       "read the thread on the stop's box or against a gauge"});
  }
}

// No tap: the machine is named all the same, for the reader of a refusal.
Candidate no_tap(const Site& site, const std::vector<RejectedMethod>& rejected) {
  Candidate none(site);
  none.method.tap = site.asked();
  take_place(site, none);
  check_machine(site, none);
  if (!rejected.empty()) {
    none.said.findings.add(FindingCode::method_none, Severity::stop).with(way_by_rule(rejected));
  }
  assume_for(site, none);
  return none;
}

}  // namespace

Findings judge_method(const Site& site, const ChosenMethod& method) {
  if (method.count == 1) {
    Candidate candidate(site);
    try_method(site, method.kind, candidate, &method.fittings);
    return std::move(candidate.said.findings);
  }
  Candidate several = try_several_of(site, method.tap);
  equip(site, several, &method.fittings);
  return std::move(several.said.findings);
}

namespace {

// What could be put to the office in place of the one tap that was chosen.
void name_smaller_taps(const Site& site, Candidate& chosen) {
  if (!site.whole() || chosen.method.count > 1) return;
  auto several = try_several(site);
  if (!several) return;
  equip(site, *several);
  const auto& findings = several->said.findings.list();
  const auto room = std::find_if(findings.begin(), findings.end(),
                                 [](const Finding& finding) { return finding.code == FindingCode::several_need_room; });
  if (several->verdict() == Verdict::no_go || room == findings.end()) return;
  const ChosenMethod& method = several->method;
  chosen.method.smaller_taps = {method.count, method.tap, *method.spacing, room->limit->as<Length>()};
  const Rule<double>& exponent = site.rules.several.equal_capacity_exponent;
  chosen.said.taken.take(PlanPart::tap, Taken::equal_capacity, exponent.basis, Measure(exponent.value, Kind::ratio));
}

}  // namespace

// Every way is tried in the order of preference until one could not be bettered; the best verdict wins, and of equals the
// earlier. Choosing the first that merely "could be" would let a thinner wall, by ruling out a direct tap that needed a
// reading, better the verdict.
Choice choose_method(const Site& site) {
  std::vector<RejectedMethod> rejected;
  Recorder refusals(site.depth);
  if (site.findings.worst() == Severity::stop)
    return {no_tap(site, rejected), std::move(rejected), std::move(refusals)};
  const auto& asked = site.job().service.method;
  std::pmr::vector<Candidate> tried(&site.memory);
  tried.reserve(4);
  const auto best = [&]() -> Candidate* {
    const auto found = std::min_element(
        tried.begin(), tried.end(), [](const Candidate& a, const Candidate& b) { return a.verdict() < b.verdict(); });
    return found == tried.end() || found->verdict() == Verdict::no_go ? nullptr : &*found;
  };
  // No method betters what the main itself already holds.
  const Verdict bound = verdict_of(site.findings.worst());
  const auto settled = [&] { return best() != nullptr && best()->verdict() <= bound; };

  const auto try_also = [&](Method method) { try_method(site, method, tried.emplace_back(site)); };

  if (asked && *asked != Method::none) try_also(*asked);
  for (const Method method : {Method::direct, Method::saddle}) {
    if (!settled() && asked != method) try_also(method);
  }
  // Several taps and sleeves are never better than a hold.
  if (best() == nullptr) {
    if (auto several = try_several(site)) {
      equip(site, *several);
      tried.push_back(std::move(*several));
    }
  }
  if (best() == nullptr && asked != Method::sleeve) try_also(Method::sleeve);

  // A way as good as the chosen one, only later in the order, was not rejected.
  Candidate* const chosen = best();
  for (const Candidate& candidate : tried) {
    if (chosen == nullptr || candidate.verdict() > chosen->verdict()) reject(candidate, rejected, refusals);
  }
  if (chosen == nullptr) {
    Candidate none = no_tap(site, rejected);
    return {std::move(none), std::move(rejected), std::move(refusals)};
  }
  assume_for(site, *chosen);
  name_smaller_taps(site, *chosen);
  return {std::move(*chosen), std::move(rejected), std::move(refusals)};
}

}  // namespace mainbore::planning
