#include "mainbore/plan.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <memory_resource>
#include <numbers>
#include <stdexcept>
#include <utility>

#include "planning/checks.hpp"
#include "planning/laid_line.hpp"

namespace mainbore {
namespace planning {
namespace {

// Gravest first, then in the order of the checks.
void gather_findings(Context& context, const Findings& method) {
  std::pmr::vector<const Finding*> order(&context.memory);
  order.reserve(context.common.list().size() + method.list().size());
  for (const Finding& finding : context.common.list()) order.push_back(&finding);
  for (const Finding& finding : method.list()) order.push_back(&finding);
  // By insertion, which keeps equals in their order: they are few.
  for (std::size_t i = 1; i < order.size(); ++i) {
    const Finding* const finding = order[i];
    std::size_t at = i;
    for (; at > 0 && order[at - 1]->severity < finding->severity; --at) order[at] = order[at - 1];
    order[at] = finding;
  }
  context.plan.findings.reserve(order.size());
  for (const Finding* finding : order) context.plan.findings.push_back(*finding);
}

// A tape reads to a sixteenth: ask for the next reading that is surely inside.
Length down_to_sixteenth(Length value) { return std::floor(value / (0.0625 * units::inch) + 1e-6) * (0.0625 * units::inch); }
Length up_to_sixteenth(Length value) { return std::ceil(value / (0.0625 * units::inch) - 1e-6) * (0.0625 * units::inch); }

// The most the gauge may show when tapping. A pipe or fitting that is over its rating already is a hold of its own:
// lowering the line for an hour is no cure for it.
std::optional<Pressure> pressure_to_read(const Context& context) {
  std::optional<Pressure> least;
  if (!context.pressurised()) return least;
  for (const PressureLimit& limit : context.plan.pressure.limits) {
    const bool for_good = limit.link == PressureLink::pipe || limit.link == PressureLink::corporation_stop ||
                          limit.link == PressureLink::saddle;
    if (for_good && over(context.line(), limit.limit)) continue;
    if (!least || limit.limit < *least) least = limit.limit;
  }
  return least;
}

// Each doubt as a number for the trench.
void write_stop_numbers(Context& context) {
  Plan& plan = context.plan;
  const ResolvedMain& main = plan.main;
  const Rules& rules = context.rules;
  if (plan.method.kind == Method::none) return;
  if (const auto limit = pressure_to_read(context)) {
    plan.stop_numbers.push_back({"line pressure when tapping", std::nullopt, Measure(*limit)});
  }
  if (plan.method.kind == Method::direct) {
    std::optional<Length> wall;
    if (plan.engagement && plan.engagement->judged) wall = plan.engagement->wall_needed;
    if (wall) wall = wall_reading_for(*wall, rules);
    else wall = class_wall_reading(main.governing, rules);
    if (wall) plan.stop_numbers.push_back({"sound wall at the tap", Measure(*wall), std::nullopt});
  }
  if (main.od_low && main.od_high) {
    constexpr double pi = std::numbers::pi;
    const Length tape = rules.circumference_uncertainty.value;
    plan.stop_numbers.push_back({"circumference of the pipe", Measure(down_to_sixteenth(pi * *main.od_low - tape), Kind::tape),
                                 Measure(up_to_sixteenth(pi * *main.od_high + tape), Kind::tape)});
  }
  if (is_plastic(main.material) && plan.method.kind != Method::sleeve && context.pressurised()) {
    plan.stop_numbers.push_back({"temperature of the pipe", Measure(rules.plastic_wet_tap_coldest.value),
                                 Measure(rules.plastic_wet_tap_warmest.value)});
  }
  Length joint;
  for (const Clearance& clearance : rules.clearances) {
    if (clearance.what == NearbyThing::joint) joint = clearance.least.value;
  }
  if (joint > Length()) {
    plan.stop_numbers.push_back({"distance to the nearest joint", Measure(joint, Kind::length), std::nullopt});
  }
}

}  // namespace
}  // namespace planning

Plan plan(Job job, const Catalog& catalog, const Rules& rules, PlanDepth depth) {
  if (!job.main.material || !job.main.size || !job.main.pressure || !job.service.size) {
    throw std::invalid_argument("a job needs the main's material and size, the service's size and the line pressure");
  }
  Plan result(std::move(job));
  result.catalog = &catalog;
  result.rules = &rules;

  // Most plans need no more than this for their working lists, which then cost no call of the allocator.
  std::array<std::byte, 16 * 1024> room;
  std::pmr::monotonic_buffer_resource memory(room.data(), room.size());
  planning::Context context{catalog, rules, result, memory, depth};
  planning::resolve_main(context);
  planning::check_identity(context);
  planning::check_utility(context);
  planning::check_pipe_pressure(context);
  planning::check_place(context);
  const planning::Findings method = planning::choose_method(context);
  planning::plan_open_hole(context);
  const auto laid = planning::laid_line(context);
  planning::check_service(context, laid);
  planning::check_cleaning(context, laid);
  planning::check_pit(context);
  planning::tell_looser_rules(context);
  planning::gather_findings(context, method);
  if (context.whole()) planning::write_stop_numbers(context);
  result.verdict = planning::verdict_of(std::max(context.common.worst(), method.worst()));
  return result;
}

}  // namespace mainbore
