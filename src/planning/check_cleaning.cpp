// What to mix, how long to flush, what to give the flushed water.
#include <algorithm>
#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "mainbore/sanitary/dechlorination.hpp"
#include "planning/calculations.hpp"
#include "planning/laid_line.hpp"

namespace mainbore::planning {
namespace {

using sanitary::Concentration;

// Liquids are sold to 15 % and a little over, dry products from 35 % on.
constexpr Concentration strongest_liquid = Concentration::percent(20.0);

void plan_swab(const Context& context, CleaningPlan& cleaning, Said& said) {
  const ServiceTables& tables = context.catalog.service_tables();
  const Rules& rules = context.rules;
  const SanitaryFacts& facts = context.job().sanitary;
  SwabMix& mix = cleaning.swab;
  mix.stock_assumed = !facts.stock;
  mix.stock = facts.stock ? Concentration::percent(*facts.stock) : tables.weakest_bleach;
  mix.wanted = Concentration::percent(rules.cleaning.swab_percent.value);
  mix.finished = facts.solution.value_or(rules.cleaning.solution.value);
  const auto take = [&](Taken what, const Basis& basis, Measure value) {
    said.taken.take(PlanPart::cleaning, what, basis, value);
  };
  take(Taken::solution_strength, rules.cleaning.swab_percent.basis, Measure(mix.wanted.percent(), Kind::percent));
  take(Taken::stock_strength, facts.stock ? stated_in_job : tables.stock_basis,
       Measure(mix.stock.percent(), Kind::percent));
  take(Taken::solution_amount, facts.solution ? stated_in_job : rules.cleaning.solution.basis, Measure(mix.finished));
  if (mix.stock < mix.wanted) {
    said.findings.add(FindingCode::clean_stock_too_weak, Severity::hold)
        .value(Measure(mix.stock.percent(), Kind::percent))
        .at_least(Measure(mix.wanted.percent(), Kind::percent))
        .basis(rules.cleaning.swab_percent.basis);
  } else if (mix.stock > strongest_liquid) {
    mix.dry = sanitary::dry_product_weight(mix.finished, mix.wanted, mix.stock);
  } else {
    mix.liquid = sanitary::dilute(mix.finished, mix.stock, mix.wanted);
  }
  if (!context.calculates() || (!mix.dry && !mix.liquid)) return;
  const std::initializer_list<CalculationInput> figures = {
      figure(Measure(mix.finished), facts.solution ? stated_in_job : rules.cleaning.solution.basis),
      figure(Measure(mix.wanted.percent(), Kind::percent), rules.cleaning.swab_percent.basis),
      figure(Measure(mix.stock.percent(), Kind::percent), facts.stock ? stated_in_job : tables.stock_basis)};
  if (mix.dry) said.taken.calculated(Worked(PlanPart::cleaning, Formula::swab_dry, figures, *mix.dry));
  else said.taken.calculated(Worked(PlanPart::cleaning, Formula::swab_stock, figures, mix.liquid->stock));
}

// Whether the line is known to pass this flow by what the customer's demand leaves of the pressure: no loss grows faster
// than the square of the flow, and the meter is not there yet when the line is flushed.
bool surely_passes(const std::optional<ServicePlan>& service, const LaidLine& laid, Flow flow) {
  if (!service || !(service->demand.flow > Flow())) return false;
  const double more = std::max(flow / service->demand.flow, 1.0);
  const Pressure spent = service->supply - laid.tables->head * laid.rise - service->residual_least;
  return service->residual_least > (more * more - 1.0) * spent;
}

// What takes the chlorine out of so much water.
std::vector<AgentDose> agents_for(const Context& context, Volume water, Concentration chlorine) {
  std::vector<AgentDose> agents;
  for (const DechlorinationAgent& agent : context.catalog.service_tables().dechlorination) {
    agents.push_back({&agent, sanitary::dechlorination_weight(water, chlorine, agent.per_chlorine,
                                                              context.rules.cleaning.dechlorination_excess.value)});
  }
  return agents;
}

FillProduct product_for(std::string_view name, bool dry, Concentration strength, Volume line, Concentration dose) {
  FillProduct product{name, strength, std::nullopt, std::nullopt};
  if (dry) {
    product.weight = sanitary::dry_product_weight(line, dose, strength);
    return product;
  }
  product.volume = sanitary::dilute(line, strength, dose).stock;
  product.weight = sanitary::hypochlorite_weight(line, dose, strength);
  return product;
}

// The line filled at each of the doses, by each product, that of the job first. The water is let go at no more than the dose
// it was filled with: what chlorine the pipe has used up is not counted on.
void plan_fills(const Context& context, const LaidLine& laid, CleaningPlan& cleaning, Said& said) {
  const ServiceTables& tables = context.catalog.service_tables();
  const auto& stock = context.job().sanitary.stock;
  const Volume line = cleaning.flush->full.line_volume;
  for (const ChlorineDose* dose : cleaning.doses) {
    FillPlan& fill = cleaning.fills.emplace_back();
    fill.dose = dose;
    fill.chlorine = sanitary::chlorine_weight(line, dose->dose);
    const Concentration at_hand = stock ? Concentration::percent(*stock) : Concentration();
    if (stock && at_hand > dose->dose) {
      fill.products.push_back(product_for("stock at hand", at_hand > strongest_liquid, at_hand, line, dose->dose));
    }
    for (const ChlorineProduct& product : tables.chlorine_products) {
      fill.products.push_back(product_for(product.name, product.dry, product.strength, line, dose->dose));
    }
    fill.agents = agents_for(context, line, dose->dose);
    write_fill(context, laid, fill, said.taken);
  }
  for (const ChlorineProduct& product : tables.chlorine_products) {
    said.taken.take(PlanPart::cleaning, Taken::stock_strength, product.basis,
                    Measure(product.strength.percent(), Kind::percent));
  }
}

void plan_flush(const Context& context, const LaidLine& laid, const std::optional<ServicePlan>& service,
                CleaningPlan& cleaning, Said& said) {
  const ServiceTables& tables = context.catalog.service_tables();
  const Rules& rules = context.rules;
  FlushPlan& flush = cleaning.flush.emplace();
  const std::array reach = {sanitary::FlushReach{laid.tube->bore, laid.length}};
  flush.changes = rules.cleaning.flush_changes.value;
  const auto take = [&](Taken what, const Basis& basis, Detail value) {
    said.taken.take(PlanPart::cleaning, what, basis, value);
  };
  take(Taken::flush_speed, rules.cleaning.flush_velocity.basis, Measure(rules.cleaning.flush_velocity.value));
  take(Taken::flush_speed, rules.cleaning.flush_velocity_least.basis,
       Measure(rules.cleaning.flush_velocity_least.value));
  take(Taken::flush_changes, rules.cleaning.flush_changes.basis,
       Measure(rules.cleaning.flush_changes.value, Kind::ratio));
  take(Taken::flush_chlorine, rules.cleaning.flush_chlorine.basis, {});
  take(Taken::dechlorination, tables.dechlorination_basis, {});
  flush.full = sanitary::flushing_at_velocity(reach, rules.cleaning.flush_velocity.value, flush.changes);
  if (!context.whole() && surely_passes(service, laid, flush.full.flow)) return;
  flush.least = sanitary::flushing_at_velocity(reach, rules.cleaning.flush_velocity_least.value, flush.changes);
  flush.available =
      hydraulics::flow_at_residual(laid.line(BoreTaken::least, nullptr), lowest_pressure(context), Pressure()).flow;
  flush.chlorine = Concentration::mg_per_liter(rules.cleaning.flush_chlorine.value);
  if (context.whole()) flush.agents = agents_for(context, flush.full.discharged, flush.chlorine);
  write_flush(context, laid, flush, said.taken);
  const bool only_rinses = over(flush.least.flow, flush.available);
  if (only_rinses || over(flush.full.flow, flush.available)) {
    const Rule<Velocity>& rule = only_rinses ? rules.cleaning.flush_velocity_least : rules.cleaning.flush_velocity;
    said.findings.add(FindingCode::clean_cannot_scour, only_rinses ? Severity::caution : Severity::note)
        .value(flush.available)
        .at_least(only_rinses ? flush.least.flow : flush.full.flow)
        .with(Measure(rule.value))
        .basis(rule.basis);
  }
}

}  // namespace

std::optional<CleaningPlan> check_cleaning(const Context& context, const std::optional<LaidLine>& laid,
                                           const std::optional<ServicePlan>& service, Said& said) {
  const SanitaryFacts& facts = context.job().sanitary;
  if (!facts.stock && !facts.solution && !laid) return std::nullopt;
  CleaningPlan cleaning;
  plan_swab(context, cleaning, said);
  if (laid) plan_flush(context, *laid, service, cleaning, said);
  if (context.asked() > context.rules.cleaning.sample_above.value) {
    cleaning.as_main = true;
    for (const ChlorineDose& dose : context.catalog.service_tables().doses) {
      cleaning.doses.push_back(&dose);
      said.taken.take(PlanPart::cleaning, Taken::chlorine_dose, dose.basis);
    }
    if (context.whole() && cleaning.flush) plan_fills(context, *laid, cleaning, said);
    said.taken.take(PlanPart::cleaning, Taken::as_main, context.rules.cleaning.sample_above.basis,
                    context.rules.cleaning.sample_above.value);
    said.findings.add(FindingCode::clean_as_main, Severity::caution)
        .with(context.asked(), context.rules.cleaning.sample_above.value)
        .basis(context.rules.cleaning.sample_above.basis);
  }
  return cleaning;
}

}  // namespace mainbore::planning
