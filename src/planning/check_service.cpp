// Does the customer get enough water? And what comes out if the tap lets go.
#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "mainbore/hydraulics/demand.hpp"
#include "mainbore/hydraulics/equal_capacity.hpp"
#include "mainbore/hydraulics/open_jet.hpp"
#include "mainbore/hydraulics/pipe.hpp"
#include "planning/calculations.hpp"
#include "planning/laid_line.hpp"

namespace mainbore::planning {
namespace {

// An open stop is a short tube: NFPA 291 has 0.80 for a square outlet; velocity coefficient alike. A sharp-edged hole
// gives less of both.
constexpr double short_tube_discharge = 0.80;
constexpr double short_tube_velocity = 0.80;

bool demand_given(const DemandFacts& facts) { return facts.flow || facts.fixture_units || !facts.fixtures.empty(); }

// Whoever says anything of the demand asks whether the customer gets it.
bool demand_told(const DemandFacts& facts) {
  return demand_given(facts) || facts.continuous || facts.residual || facts.sprinkler_flow ||
         facts.sprinklers.value_or(DwellingSprinklers::none) != DwellingSprinklers::none;
}

bool line_given(const LineFacts& facts) {
  return facts.material || facts.size || facts.length || facts.rise || facts.friction || facts.c || facts.elbows ||
         facts.couplings;
}

// ---- demand

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
bool skips(char c) { return c == ' ' || c == '-'; }

// "kitchen sinks" is the table's "kitchen sink"; case, spaces and hyphens do not matter.
bool same_fixture(std::string_view written, std::string_view listed) {
  // As most are written; the last letter tells most others apart.
  const bool as_listed =
      written.size() >= listed.size() && written[listed.size() - 1] == listed.back() && written.starts_with(listed);
  std::size_t at = as_listed ? listed.size() : 0;
  for (const char c : at > 0 ? std::string_view() : listed) {
    if (skips(c)) continue;
    while (at < written.size() && skips(written[at])) ++at;
    if (at == written.size() || lower(written[at]) != lower(c)) return false;
    ++at;
  }
  const std::string_view rest = written.substr(at);
  return rest.empty() || rest == "s" || rest == "es";
}

// A fixture's units. Of several rows those for a dwelling, then those fed as the job says, then the greatest.
std::optional<double> units_of(const ServiceTables& tables, PlumbingCode code, std::string_view name, bool by_valve) {
  constexpr int nothing = -1;
  int best_rank = nothing;
  double units = 0.0;
  while (!name.empty() && skips(name.front())) name.remove_prefix(1);
  if (name.empty()) return std::nullopt;
  bool same = false;
  for (const FixtureRow& row : tables.fixtures_beginning(code, lower(name.front()))) {
    if (!row.again) same = same_fixture(name, row.fixture);
    if (!same) continue;
    const int rank = (row.dwelling ? 2 : 0) + (row.flush_valve == by_valve ? 1 : 0);
    if (rank > best_rank) {
      best_rank = rank;
      units = row.units;
    } else if (rank == best_rank) {
      units = std::max(units, row.units);
    }
  }
  return best_rank == nothing ? std::nullopt : std::optional(units);
}

struct Counted {
  double units = 0.0;
  int unknown = 0;  // place in the list of the first fixture that the code does not know
};

Counted count_fixtures(const ServiceTables& tables, PlumbingCode code, std::string_view list, bool by_valve) {
  Counted counted;
  for (int place = 1; !list.empty(); ++place) {
    const auto ends = [](char c) { return c == ',' || c == ';'; };
    const auto end = static_cast<std::size_t>(std::find_if(list.begin(), list.end(), ends) - list.begin());
    std::string_view item = list.substr(0, end);
    list.remove_prefix(std::min(end + 1, list.size()));
    const auto trim = [&] {
      while (!item.empty() && item.front() == ' ') item.remove_prefix(1);
      while (!item.empty() && item.back() == ' ') item.remove_suffix(1);
    };
    trim();
    if (item.empty()) continue;
    // The name may begin with a digit itself: "3/4 in bathtub fill valve".
    int count = 1;
    auto units = units_of(tables, code, item, by_valve);
    if (!units) {
      const auto [rest, error] = std::from_chars(item.data(), item.data() + item.size(), count);
      if (error == std::errc() && count > 0 && count <= 100000) {
        item.remove_prefix(static_cast<std::size_t>(rest - item.data()));
        trim();
        if (item.starts_with("x ")) item.remove_prefix(2);
        units = units_of(tables, code, item, by_valve);
      }
    }
    if (units) counted.units += count * *units;
    else if (counted.unknown == 0) counted.unknown = place;
  }
  return counted;
}

// The flow that one code asks for; nothing when its tables or its curve do not reach.
struct CodeDemand {
  Flow flow;
  double units = 0.0;
  hydraulics::CurveCoverage coverage = hydraulics::CurveCoverage::within;
};

std::optional<CodeDemand> demand_by(const ServiceTables& tables, PlumbingCode code, const DemandFacts& facts,
                                    FindingCode& why_not, int& unknown) {
  const bool by_valve = facts.supply == FixtureSupply::flush_valve;
  double units = facts.fixture_units.value_or(0.0);
  if (!facts.fixture_units) {
    const Counted counted = count_fixtures(tables, code, facts.fixtures, by_valve);
    if (counted.unknown > 0) {
      why_not = FindingCode::service_fixture_unknown;
      unknown = counted.unknown;
      return std::nullopt;
    }
    units = counted.units;
  }
  const DemandCurve& curve = tables.curves[static_cast<std::size_t>(code)];
  const auto& drawn = by_valve ? curve.valve : curve.tank;
  if (!drawn || (curve.gap && units > curve.gap->front() && units < curve.gap->back())) {
    why_not = FindingCode::service_curve_unread;
    return std::nullopt;
  }
  const hydraulics::FixtureDemand read = hydraulics::fixture_demand(units, *drawn);
  return CodeDemand{read.flow, units, read.coverage};
}

std::optional<DemandPlan> plan_demand(const Context& context, Said& said) {
  const ServiceTables& tables = context.catalog.service_tables();
  const Rules& rules = context.rules;
  const DemandFacts& facts = context.job().service.demand;
  DemandPlan demand;
  demand.basis = &stated_in_job;
  demand.continuous = facts.continuous.value_or(Flow());
  demand.domestic = facts.flow.value_or(Flow());
  if (!facts.flow) {
    std::optional<CodeDemand> greatest;
    FindingCode why_not = FindingCode::service_curve_unread;
    int unknown = 0;
    for (std::size_t i = 0; i < plumbing_code_count; ++i) {
      const auto code = static_cast<PlumbingCode>(i);
      if (facts.code && *facts.code != code) continue;
      const auto read = demand_by(tables, code, facts, why_not, unknown);
      if (!read || (greatest && read->flow <= greatest->flow)) continue;
      greatest = read;
      demand.code = code;
      demand.basis = &tables.curves[i].basis;
    }
    if (!greatest) {
      auto finding = said.findings.add(why_not, Severity::hold);
      const Detail code = facts.code ? Detail(name_of(*facts.code)) : Detail();
      finding.with(code, unknown > 0 ? Detail(unknown) : Detail());
      return std::nullopt;
    }
    if (!facts.code) {
      said.findings.add(FindingCode::service_code_unnamed, Severity::hold)
          .value(greatest->flow)
          .with(name_of(*demand.code))
          .basis(*demand.basis);
    }
    demand.fixture_units = greatest->units;
    demand.coverage = greatest->coverage;
    demand.domestic = greatest->flow;
  }
  demand.domestic += demand.continuous;
  if (const auto heads = facts.sprinklers.value_or(DwellingSprinklers::none); heads != DwellingSprinklers::none) {
    hydraulics::SprinklerFlows flows{facts.sprinkler_flow.value_or(rules.water.sprinkler_single.value), Flow()};
    if (heads == DwellingSprinklers::pair) {
      flows.each_of_two = facts.sprinkler_flow.value_or(rules.water.sprinkler_of_two.value);
    }
    if (facts.sprinkler_flow) {
      said.taken.take(PlanPart::service, Taken::sprinkler_flow, stated_in_job, Measure(*facts.sprinkler_flow));
    } else {
      const auto& rule =
          heads == DwellingSprinklers::pair ? rules.water.sprinkler_of_two : rules.water.sprinkler_single;
      said.taken.take(PlanPart::service, Taken::sprinkler_flow, rule.basis, Measure(rule.value));
    }
    const Flow allowance = facts.shared.value_or(false) ? rules.water.sprinkler_shared.value : Flow();
    demand.sprinklers = hydraulics::sprinkler_demand(flows, allowance);
  }
  demand.flow = hydraulics::service_demand(demand.domestic, demand.sprinklers);
  said.taken.take(PlanPart::service, Taken::demand, *demand.basis, Measure(demand.flow));
  if (context.calculates()) {
    said.taken.calculated(Worked(PlanPart::service, Formula::demand,
                                 {figure(Measure(demand.domestic), *demand.basis),
                                  figure(Measure(demand.sprinklers), rules.water.sprinkler_single.basis)},
                                 demand.flow));
  }
  return demand;
}

// ---- the line

class ServiceCheck {
 public:
  ServiceCheck(const Context& context, const LaidLine& laid, const DemandPlan& demand, Said& said)
      : context_(context), said_(said), rules_(context.rules), tables_(context.catalog.service_tables()), laid_(laid) {
    service_.demand = demand;
  }

  ServicePlan run() {
    describe();
    choose_meter();
    least_ = laid_.line(BoreTaken::least, service_.meter);
    laid_residual_ = hydraulics::residual_at(least_, service_.supply, flow());
    service_.residual_least = laid_residual_;
    service_.velocity = hydraulics::mean_velocity(flow(), laid_.tube->bore);
    if (context_.whole() || !plainly_enough()) {
      lose_pressure();
      judge_residual();
    }
    judge_velocity();
    judge_sizes();
    if (context_.whole()) {
      find_smallest();
      equal_taps();
    }
    return std::move(service_);
  }

 private:
  void take(Taken what, const Basis& basis, Detail value) { said_.taken.take(PlanPart::service, what, basis, value); }
  [[nodiscard]] Flow flow() const { return service_.demand.flow; }
  // The searches for the smallest come back to the line as it is laid, whose residual is known by then.
  [[nodiscard]] Pressure residual(const LaidLine& line, const MeterSize* meter) const {
    const bool as_laid = line.tube == laid_.tube && line.taps == laid_.taps && line.tap == laid_.tap;
    if (as_laid && meter == service_.meter) return laid_residual_;
    return hydraulics::residual_at(line.line(BoreTaken::least, meter), service_.supply, flow());
  }
  [[nodiscard]] Flow continuous_limit(const MeterSize& meter) const {
    return rules_.water.meter_continuous_share.value * meter.safe_maximum;
  }
  [[nodiscard]] bool meter_passes(const MeterSize& meter) const {
    return !over(flow(), meter.safe_maximum) && !over(service_.demand.continuous, continuous_limit(meter));
  }
  [[nodiscard]] bool serves(const LaidLine& laid, const MeterSize* meter) const {
    const Velocity velocity = hydraulics::mean_velocity(flow(), laid.tube->bore_least);
    return !over(velocity, rules_.water.velocity_limit.value) && !over(service_.residual_wanted, residual(laid, meter));
  }
  // Of each of so many taps, as wide as their name; the stop behind one is no wider.
  [[nodiscard]] Velocity tap_velocity(NominalSize tap, int taps) const {
    return hydraulics::mean_velocity((1.0 / static_cast<double>(taps)) * flow(), tap.number() * units::inch);
  }
  [[nodiscard]] bool tap_serves(NominalSize tap, int taps) const {
    return !over(tap_velocity(tap, taps), rules_.water.tap_velocity_limit.value);
  }
  // The smallest of the sizes of this tubing that will do; nothing where none does.
  template <class Does>
  [[nodiscard]] Detail next_size(Does does) const {
    for (const TubeSize& tube : tables_.tubes_of(laid_.tube->tubing)) {
      if (tube.size >= rules_.water.smallest_line.value && does(tube)) return tube.size;
    }
    return {};
  }
  // So much is left with the least bore that there is no need to work out where the pressure goes: sums of the same
  // losses differ by far less.
  [[nodiscard]] bool plainly_enough() const {
    constexpr Pressure rounding = 1e-3 * units::psi;
    return laid_residual_ > service_.residual_wanted + rounding;
  }

  void describe() {
    const LineFacts& facts = context_.job().service.line;
    service_.supply = lowest_pressure(context_);
    service_.tube = laid_.tube;
    service_.length = laid_.length;
    service_.rise = laid_.rise;
    service_.taps = laid_.taps;
    service_.tap = laid_.tap;
    service_.temperature = laid_.temperature;
    service_.residual_wanted =
        std::max(rules_.water.least_residual.value, context_.job().service.demand.residual.value_or(Pressure()));
    if (const auto* law = std::get_if<hydraulics::HazenWilliams>(&laid_.friction)) {
      service_.c = law->c;
      service_.friction_basis = facts.c ? &stated_in_job : &tables_.friction_of(laid_.tube->tubing).c_basis;
    } else {
      service_.method = FrictionMethod::darcy_weisbach;
      service_.roughness = tables_.friction_of(laid_.tube->tubing).roughness;
      service_.friction_basis = &tables_.friction_of(laid_.tube->tubing).roughness_basis;
    }
    take(Taken::tubing_bore, service_.tube->basis, Measure(service_.tube->bore));
    take(Taken::friction, *service_.friction_basis, {});
    take(Taken::line_fittings, tables_.fittings_basis, {});
    take(Taken::residual, rules_.water.least_residual.basis, Measure(rules_.water.least_residual.value));
    take(Taken::water_speed, rules_.water.velocity_limit.basis, Measure(rules_.water.velocity_limit.value));
    if (!context_.job().main.pressure_low) {
      said_.assume({"main.pressure_low", Measure(service_.supply), "the line pressure, at which nobody else draws",
                    "ask the utility for the lowest pressure the main falls to"});
      said_.taken.assumed(PlanPart::service, Taken::lowest_pressure, stated_in_job, Measure(service_.supply));
    } else {
      take(Taken::lowest_pressure, stated_in_job, Measure(service_.supply));
    }
    if (!facts.rise) {
      const Measure no_rise(Length(), Kind::distance);
      said_.assume(
          {"service.line.rise", no_rise, "main and customer at one height", "level from the main to the customer"});
      said_.taken.assumed(PlanPart::service, Taken::line_rise, usual_practice, no_rise);
    }
  }

  void choose_meter() {
    const auto& asked = context_.job().service.meter;
    service_.meter = asked ? tables_.meter(*asked) : nullptr;
    if (service_.meter != nullptr) take(Taken::meter, service_.meter->basis, service_.meter->size);
    if (asked) return;  // one that is not listed is held already
    const auto fits = std::find_if(tables_.meters.begin(), tables_.meters.end(),
                                   [&](const MeterSize& meter) { return meter_passes(meter); });
    if (fits == tables_.meters.end()) {
      said_.findings.add(FindingCode::service_meter_over, Severity::hold)
          .value(flow())
          .at_most(tables_.meters.back().safe_maximum)
          .with(tables_.meters.back().size)
          .basis(tables_.meters.back().basis);
      return;
    }
    service_.meter = &*fits;
    service_.meter_assumed = true;
    said_.assume({"service.meter", fits->size, "the smallest that may pass the flow, which loses most",
                  "say which meter is set"});
    said_.taken.assumed(PlanPart::service, Taken::meter, fits->basis, fits->size);
  }

  void lose_pressure() {
    const hydraulics::ServiceLine line = laid_.itemised(BoreTaken::nominal, service_.meter);
    const hydraulics::ServiceLosses losses = hydraulics::losses_at(line, flow());
    Pressure left = service_.supply;
    service_.losses.reserve(loss_part_count);
    const auto take = [&](LossPart part, Pressure loss, std::optional<Length> counted_as) {
      left -= loss;
      service_.losses.push_back({part, loss, counted_as, left});
    };
    for (std::size_t i = 0; i < line.segments.size(); ++i) {
      const auto part = static_cast<LossPart>(i);
      const Length equivalent = line.segments[i].equivalent_length;
      if (part == LossPart::fittings && equivalent == Length()) continue;
      take(part, losses.segments[i].friction, part == LossPart::line ? std::nullopt : std::optional(equivalent));
    }
    take(LossPart::rise, losses.elevation, std::nullopt);
    const Pressure before_meter = left;
    if (service_.meter != nullptr) take(LossPart::meter, losses.meter, std::nullopt);
    service_.residual = left;
    service_.residual_least = std::min(left, laid_residual_);
    write_losses(context_, laid_, service_, {line, losses}, said_.taken);
    if (context_.calculates() && service_.residual_least < service_.residual) {
      const hydraulics::ServiceLine thickest = laid_.itemised(BoreTaken::least, service_.meter);
      write_losses(context_, laid_, service_, {thickest, hydraulics::losses_at(thickest, flow()), true}, said_.taken);
    }
    service_.available = hydraulics::flow_at_residual(least_, service_.supply, service_.residual_wanted);

    const Length nothing;
    service_.profile = {{"main", nothing, nothing, service_.supply},
                        {name_of(LossPart::corporation_stop), nothing, nothing, service_.losses.front().left},
                        {name_of(LossPart::line), laid_.length, laid_.rise, before_meter}};
    if (service_.meter != nullptr) {
      service_.profile.push_back({name_of(LossPart::meter), laid_.length, laid_.rise, left});
    }
  }

  void judge_residual() {
    if (!over(service_.residual_wanted, service_.residual_least)) return;
    said_.findings.add(FindingCode::service_starved, Severity::hold)
        .value(service_.residual_least)
        .at_least(service_.residual_wanted)
        .with(Measure(flow()), Measure(service_.available.flow))
        .basis(rules_.water.least_residual.basis, *service_.friction_basis);
  }

  void judge_velocity() {
    if (context_.calculates()) {
      said_.taken.calculated(
          Worked(PlanPart::service, Formula::water_speed,
                 {worked_out(Formula::demand, flow()), figure(Measure(laid_.tube->bore), laid_.tube->basis)},
                 service_.velocity)
              .at_most(figure(rules_.water.velocity_limit)));
    }
    judge_tap_velocity();
    const bool beyond = over(service_.velocity, rules_.water.velocity_limit.value);
    if (!beyond && !over(service_.velocity, rules_.water.velocity_caution.value)) return;
    const Rule<Velocity>& rule = beyond ? rules_.water.velocity_limit : rules_.water.velocity_caution;
    said_.findings.add(FindingCode::service_too_fast, beyond ? Severity::hold : Severity::caution)
        .value(service_.velocity)
        .at_most(rule.value)
        .with(Measure(flow()), Measure(rules_.water.velocity_limit.value), next_size([&](const TubeSize& tube) {
                return !over(hydraulics::mean_velocity(flow(), tube.bore), rule.value);
              }))
        .basis(rule.basis, laid_.tube->basis);
  }

  void judge_tap_velocity() {
    if (context_.calculates()) {
      said_.taken.calculated(
          Worked(PlanPart::service, Formula::tap_speed,
                 {worked_out(Formula::demand, flow()), plain(laid_.taps), given(laid_.tap.number() * units::inch)},
                 tap_velocity(laid_.tap, laid_.taps))
              .at_most(figure(rules_.water.tap_velocity_limit)));
    }
    if (tap_serves(laid_.tap, laid_.taps)) return;
    said_.findings.add(FindingCode::service_tap_too_fast, Severity::hold)
        .value(tap_velocity(laid_.tap, laid_.taps))
        .at_most(rules_.water.tap_velocity_limit.value)
        .with(Measure((1.0 / static_cast<double>(laid_.taps)) * flow()), laid_.tap,
              next_size([&](const TubeSize& tube) { return tap_serves(tube.size, laid_.taps); }))
        .basis(rules_.water.tap_velocity_limit.basis);
  }

  void judge_sizes() {
    Findings& findings = said_.findings;
    if (const MeterSize* meter = service_.meter) {
      if (over(flow(), meter->safe_maximum)) {
        findings.add(FindingCode::service_meter_over, Severity::hold)
            .value(flow())
            .at_most(meter->safe_maximum)
            .with(meter->size)
            .basis(meter->basis);
      }
      const Flow share = rules_.water.meter_share.value * meter->safe_maximum;
      if (over(flow(), share) && !over(flow(), meter->safe_maximum)) {
        const auto next = std::find_if(tables_.meters.begin(), tables_.meters.end(), [&](const MeterSize& larger) {
          return !over(flow(), rules_.water.meter_share.value * larger.safe_maximum);
        });
        findings.add(FindingCode::service_meter_share, Severity::caution)
            .value(flow())
            .at_most(share)
            .with(meter->size, next == tables_.meters.end() ? Detail() : Detail(next->size))
            .basis(rules_.water.meter_share.basis, meter->basis);
      }
      if (over(service_.demand.continuous, continuous_limit(*meter))) {
        findings.add(FindingCode::service_meter_continuous, Severity::caution)
            .value(service_.demand.continuous)
            .at_most(continuous_limit(*meter))
            .with(meter->size)
            .basis(rules_.water.meter_continuous_share.basis, meter->basis);
      }
    }
  }

  // The smallest line with this tap and meter; then, on the line laid or else on that one, the smallest tap and meter.
  void find_smallest() {
    LaidLine line = laid_;
    for (const TubeSize& tube : tables_.tubes_of(laid_.tube->tubing)) {
      if (tube.size < rules_.water.smallest_line.value) continue;
      line.tube = &tube;
      if (!serves(line, service_.meter)) continue;
      service_.smallest_line = tube.size;
      break;
    }
    if (!service_.smallest_line || serves(laid_, service_.meter)) line.tube = laid_.tube;
    for (const MeterSize& meter : tables_.meters) {
      if (!meter_passes(meter) || over(flow(), rules_.water.meter_share.value * meter.safe_maximum)) continue;
      if (!serves(line, &meter)) continue;
      service_.smallest_meter = meter.size;
      break;
    }
    line.taps = 1;
    for (const TubeSize& tube : tables_.tubes_of(laid_.tube->tubing)) {
      if (tube.size < rules_.water.smallest_line.value) continue;
      if (tube.size > line.tube->size) break;
      line.tap = tube.size;
      if (!tap_serves(tube.size, 1)) continue;
      if (!serves(line, service_.meter)) continue;
      service_.smallest_tap = tube.size;
      break;
    }
  }

  void equal_taps() {
    constexpr double equal_velocity = 2.0;
    const double asked = context_.asked().number();
    for (const TubeSize& tube : tables_.tubes_of(laid_.tube->tubing)) {
      if (tube.size < rules_.water.smallest_line.value) continue;
      if (tube.size >= context_.asked()) break;
      const double ratio = asked / tube.size.number();
      service_.equal_taps.push_back({tube.size, hydraulics::equal_capacity(ratio, equal_velocity),
                                     hydraulics::equal_capacity(ratio, rules_.several.equal_capacity_exponent.value),
                                     hydraulics::equal_capacity(ratio, rules_.water.equal_runs_exponent.value)});
    }
  }

  const Context& context_;
  Said& said_;
  const Rules& rules_;
  const ServiceTables& tables_;
  const LaidLine& laid_;
  ServicePlan service_;
  hydraulics::ServiceLine least_;  // the line as laid, with its meter and the least bore
  Pressure laid_residual_;         // of that
};

// A size that no table lists cannot be judged; the listed ones on either side of it are what may be meant.
template <class Rows>
void hold_for_size(Said& said, std::string_view path, NominalSize size, const Rows& rows) {
  Detail smaller;
  Detail larger;
  for (const auto& row : rows) {
    if (row.size < size) smaller = row.size;
    else if (std::holds_alternative<std::monostate>(larger)) larger = row.size;
  }
  said.findings.add(FindingCode::service_not_tabulated, Severity::hold).with(path, size, smaller, larger);
}

void check_listed_sizes(const Context& context, Said& said) {
  const ServiceTables& tables = context.catalog.service_tables();
  const ServiceFacts& service = context.job().service;
  const LineFacts& line = service.line;
  const bool to_be_judged = line.material && line.length && demand_given(service.demand);
  if (line.size || to_be_judged) {
    const NominalSize size = line.size.value_or(context.asked());
    // Tubing that nobody has named may be any that is listed.
    const auto tubing = line.material.value_or(Tubing::copper_k);
    bool listed = tables.tube(tubing, size) != nullptr;
    for (std::size_t i = 0; !line.material && !listed && i < tubing_count; ++i) {
      listed = tables.tube(static_cast<Tubing>(i), size) != nullptr;
    }
    if (!listed) {
      hold_for_size(said, line.size ? "service.line.size" : "service.size", size, tables.tubes_of(tubing));
    }
  }
  if (service.meter && tables.meter(*service.meter) == nullptr) {
    hold_for_size(said, "service.meter", *service.meter, tables.meters);
  }
}

// Of the line that is stated, with or without a demand.
void check_line_size(const Context& context, Said& said) {
  const Rules& rules = context.rules;
  const auto& size = context.job().service.line.size;
  const Rule<NominalSize>& smallest = rules.water.smallest_line;
  if (size && *size < smallest.value) {
    said.findings.add(FindingCode::service_line_small, Severity::hold)
        .with(*size, smallest.value)
        .basis(smallest.basis);
  }
  const auto& least = rules.water.line_over_tap_least;
  const auto& most = rules.water.line_over_tap_most;
  if (!least.value && !most.value) return;
  const Length tap = context.asked().number() * units::inch;
  const std::optional<Length> line = size ? std::optional(size->number() * units::inch) : std::nullopt;
  const bool small = least.value && line && over(tap + *least.value, *line);
  const bool large = most.value && line && over(*line, tap + *most.value);
  if (line && context.calculates()) {
    const auto against = [&](const auto& rule) {
      Worked worked(PlanPart::service, Formula::line_over_tap, {given(Measure(*line)), given(Measure(tap))},
                    Measure(*line - tap), &rule == &least ? std::string_view("least") : std::string_view("most"));
      const CalculationInput limit = figure(Measure(*rule.value), rule.basis, From::rule);
      if (&rule == &least) worked.at_least(limit);
      else worked.at_most(limit);
      said.taken.calculated(std::move(worked));
    };
    if (least.value) against(least);
    if (most.value) against(most);
  }
  if (line && !small && !large) return;
  const auto size_of = [&](const auto& rule) { return rule.value ? Detail(Measure(tap + *rule.value)) : Detail(); };
  said.findings.add(FindingCode::service_line_against_tap, Severity::hold)
      .with(context.asked(), size ? Detail(*size) : Detail(), size_of(least), size_of(most))
      .basis(large || !least.value ? most.basis : least.basis);
}

void check_existing(const Context& context, Said& said) {
  const auto& existing = context.job().service.existing;
  if (existing == ExistingService::lead) said.findings.add(FindingCode::service_existing_lead, Severity::hold);
  if (existing == ExistingService::galvanized) {
    said.findings.add(FindingCode::service_existing_galvanized, Severity::hold);
  }
}

// The customer's house stands under the main's pressure whether or not anybody asked for the water to be worked out.
void check_regulator(const Context& context, Said& said) {
  const Rule<Pressure>& above = context.rules.pressure.regulator_above;
  const Length rise = context.job().service.line.rise.value_or(Length());
  const ServiceTables& tables = context.catalog.service_tables();
  const Pressure at_customer = context.line() - tables.head * rise;
  if (context.calculates()) {
    said.taken.calculated(
        Worked(PlanPart::service, Formula::customer_pressure,
               {given(context.line()), figure(Measure(tables.head * units::foot), tables.head_basis),
                given_or(context.job().service.line.rise.has_value(), Measure(rise, Kind::distance), usual_practice)},
               at_customer)
            .at_most(figure(above)));
  }
  if (!over(at_customer, above.value)) return;
  said.findings.add(FindingCode::pressure_needs_regulator, Severity::caution)
      .value(at_customer)
      .at_most(above.value)
      .basis(above.basis);
}

// PVC tires and warms in its own way; chlorinated PVC bears more warmth than it, and is counted as it.
bool is_pvc(Tubing tubing) {
  return tubing == Tubing::pvc_40 || tubing == Tubing::pvc_80 || tubing == Tubing::cpvc ||
         tubing == Tubing::pvc_pressure;
}

// The size that is laid, with its rating; of one that is not listed, the weakest listed. Null: metal, which is not rated here.
const TubeSize* rated_tube(const Context& context, Tubing tubing) {
  const ServiceTables& tables = context.catalog.service_tables();
  const TubeSize* const listed = tables.tube(tubing, context.job().service.line.size.value_or(context.asked()));
  if (listed != nullptr) return listed->rating ? listed : nullptr;
  const TubeSize* weakest = nullptr;
  for (const TubeSize& size : tables.tubes_of(tubing)) {
    if (size.rating && (weakest == nullptr || *size.rating < *weakest->rating)) weakest = &size;
  }
  return weakest;
}

const Rule<double>& tubing_surge(const Rules& rules, bool of_pvc) {
  return of_pvc ? rules.pressure.plastic_recurring_surge_factor : rules.pressure.polyethylene_recurring_surge_factor;
}

struct TubingRating {
  Pressure rating;  // at the temperature of the water
  const Basis& basis;
  bool derated = false;
};

// In the lowest part of a line that falls from the main the water stands higher.
Pressure pressure_in_line(const Context& context) {
  const Length fall = -context.job().service.line.rise.value_or(Length());
  if (!(fall > Length())) return context.line();
  return context.line() + context.catalog.service_tables().head * fall;
}

// The line pressure in the tubing, and with the surge on top of it.
void write_tubing(const Context& context, const TubingRating& tubing, bool of_pvc, Recorder& taken) {
  if (!taken.calculates()) return;
  constexpr std::string_view link = "service pipe";
  const CalculationInput rating =
      tubing.derated ? plain(tubing.rating.base(), Kind::pressure) : figure(Measure(tubing.rating), tubing.basis);
  const Pressure line = pressure_in_line(context);
  const CalculationInput pressed =
      line > context.line() ? worked_out(Formula::customer_pressure, line) : planning::given(line);
  taken.calculated(Worked(PlanPart::service, Formula::line_pressure, {pressed}, line, link).at_most(rating));
  const Rule<double>& factor = tubing_surge(context.rules, of_pvc);
  const Pressure surge = greatest_surge(context);
  const MainFacts& facts = context.job().main;
  const bool stated = facts.surge == surge || facts.occasional_surge == surge;
  taken.calculated(Worked(PlanPart::service, Formula::fitting_allowed, {figure(factor, Kind::ratio), rating},
                          factor.value * tubing.rating, link));
  taken.calculated(Worked(PlanPart::service, Formula::fitting_with_surge,
                          {pressed, rating, given_or(stated, surge, context.rules.pressure.surge_assumed.basis)},
                          std::min(line, tubing.rating) + surge, link)
                       .at_most(worked_out(Formula::fitting_allowed, factor.value * tubing.rating)));
}

}  // namespace

// What is printed on the tubing goes before the least of its kind.
void check_line_rating(const Context& context, Said& said) {
  const LineFacts& facts = context.job().service.line;
  if (!facts.material) return;
  const TubeSize* const laid = rated_tube(context, *facts.material);
  if (laid == nullptr) return;
  const TubeSize& tube = *laid;
  const bool of_pvc = is_pvc(*facts.material);
  Pressure rating = facts.rating.value_or(*tube.rating);
  const auto& temperature = context.job().main.temperature;
  if (temperature) {
    const MaterialFacts& plastic = context.catalog.facts(of_pvc ? Material::pvc : Material::polyethylene);
    rating = temperature_factor(context, plastic, *temperature).value_or(0.0) * rating;
  }
  const Basis& basis = facts.rating ? stated_in_job : tube.rating_basis;
  said.taken.take(PlanPart::service, Taken::tubing_rating, basis, Measure(rating));
  write_tubing(context, {rating, basis, temperature.has_value()}, of_pvc, said.taken);
  const Pressure line = pressure_in_line(context);
  if (over(line, rating)) {
    said.findings.add(FindingCode::pressure_over_line_rating, Severity::hold)
        .value(line)
        .at_most(rating)
        .with(name_of(*facts.material), temperature ? Detail(Measure(*temperature)) : Detail())
        .basis(basis);
    return;
  }
  const Rule<double>& factor = tubing_surge(context.rules, of_pvc);
  const Pressure surge = greatest_surge(context);
  if (over(line + surge, rating)) {
    said.taken.take(PlanPart::service, Taken::fitting_surge, factor.basis, Measure(factor.value, Kind::ratio));
  }
  if (!over(line + surge, factor.value * rating)) return;
  said.findings.add(FindingCode::pressure_surge_over_fitting, Severity::hold)
      .value(line + surge)
      .at_most(factor.value * rating)
      .with(Measure(surge), std::string_view("service line"), Measure((1.0 / factor.value) * (line + surge)))
      .basis(factor.basis, basis);
}

std::optional<OpenHole> open_hole(const Context& context, const ChosenMethod& method, Recorder& taken) {
  const auto& hole = method.hole;
  if (!context.whole() || !context.pressurized() || !hole) return std::nullopt;
  OpenHole open;
  open.bore = *hole;
  open.flow =
      hydraulics::open_jet_flow(*hole, context.line(), short_tube_discharge, context.catalog.service_tables().head);
  open.push = context.line() * hydraulics::bore_area(*hole);
  open.jet = hydraulics::jet_force(*hole, context.line(), short_tube_discharge, short_tube_velocity);
  if (!context.calculates()) return open;
  const ServiceTables& tables = context.catalog.service_tables();
  const CalculationInput discharge = plain(short_tube_discharge);
  const CalculationInput bore = plain(hole->base(), Kind::length);
  taken.calculated(
      Worked(PlanPart::pressure, Formula::open_hole_flow,
             {discharge, bore, given(context.line()), figure(Measure(tables.head * units::foot), tables.head_basis)},
             open.flow));
  taken.calculated(Worked(PlanPart::pressure, Formula::jet_force,
                          {discharge, plain(short_tube_velocity), bore, given(context.line())}, open.jet));
  return open;
}

namespace {

// No line, however large, brings water higher than the main's pressure lifts it.
void check_height(const Context& context, Said& said) {
  const auto& rise = context.job().service.line.rise;
  if (!rise) return;
  const Rule<Pressure>& least = context.rules.water.least_residual;
  const ServiceTables& tables = context.catalog.service_tables();
  const Pressure lowest = lowest_pressure(context);
  const Pressure at_customer = lowest - tables.head * *rise;
  if (context.whole()) {
    said.taken.calculated(Worked(PlanPart::service, Formula::customer_pressure,
                                 {given(lowest), figure(Measure(tables.head * units::foot), tables.head_basis),
                                  given(Measure(*rise, Kind::distance))},
                                 at_customer, std::string_view("before any water runs"))
                              .at_least(figure(least)));
  }
  if (!over(least.value, at_customer)) return;
  said.findings.add(FindingCode::service_too_high, Severity::hold)
      .value(at_customer)
      .at_least(least.value)
      .with(Measure(*rise, Kind::distance))
      .basis(least.basis, tables.head_basis);
}

std::optional<ServicePlan> plan_water(const Context& context, const std::optional<LaidLine>& laid, Said& said) {
  const ServiceFacts& facts = context.job().service;
  const bool asked_for = line_given(facts.line) || demand_told(facts.demand) || facts.meter;
  if (!asked_for) return std::nullopt;

  const auto missing = [](bool is_missing, std::string_view path) { return is_missing ? Detail(path) : Detail(); };
  const bool no_line = !facts.line.material || !facts.line.length;
  if (no_line || !demand_given(facts.demand)) {
    const Severity severity = demand_told(facts.demand) ? Severity::hold : Severity::note;
    said.findings.add(FindingCode::service_not_checked, severity)
        .with(std::string_view("whether the customer gets enough water"),
              missing(!facts.line.material, "service.line.material"),
              missing(!facts.line.length, "service.line.length"),
              missing(!demand_given(facts.demand), "service.demand"));
    return std::nullopt;
  }
  if (!laid) return std::nullopt;  // no such tubing: held already
  const auto demand = plan_demand(context, said);
  if (!demand) return std::nullopt;
  return ServiceCheck(context, *laid, *demand, said).run();
}

}  // namespace

std::optional<ServicePlan> check_service(const Context& context, const std::optional<LaidLine>& laid, Said& said) {
  check_existing(context, said);
  check_line_rating(context, said);
  check_listed_sizes(context, said);
  check_line_size(context, said);
  check_regulator(context, said);
  std::optional<ServicePlan> water = plan_water(context, laid, said);
  if (!water) check_height(context, said);
  return water;
}

}  // namespace mainbore::planning
