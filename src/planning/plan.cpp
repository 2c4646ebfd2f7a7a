#include <algorithm>
#include <array>
#include <cstddef>
#include <memory_resource>
#include <stdexcept>
#include <utility>

#include "planning/checks.hpp"
#include "planning/laid_line.hpp"

namespace mainbore::planning {
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

void tell_recalled(Context& context, const Findings& method) {
  const std::array<const Findings*, 2> findings = {&context.common, &method};
  if (const auto recalled = recalled_caution(context.taken, findings)) context.common.add(*recalled, recalled->severity);
}

}  // namespace

void judge_main(Context& context) {
  resolve_main(context);
  check_identity(context);
  check_utility(context);
  check_pipe_pressure(context);
  check_place(context);
}

Plan plan_job(Job job, const Catalog& catalog, const Rules& rules, PlanDepth depth) {
  if (!job.main.material || !job.main.size || !job.main.pressure || !job.service.size) {
    throw std::invalid_argument("a job needs the main's material and size, the service's size and the line pressure");
  }
  Plan result(std::move(job));
  result.catalog = &catalog;
  result.rules = &rules;

  // Most plans need no more than this for their working lists, which then cost no call of the allocator.
  std::array<std::byte, 16 * 1024> room;
  std::pmr::monotonic_buffer_resource memory(room.data(), room.size());
  Context context{catalog, rules, result, memory, depth};
  judge_main(context);
  const Findings method = choose_method(context);
  plan_open_hole(context);
  if (context.whole()) plan_bar_marks(context);
  const auto laid = laid_line(context);
  check_service(context, laid);
  check_cleaning(context, laid);
  check_pit(context);
  tell_looser_rules(context);
  if (context.whole()) {
    write_readings(context, method);
    tell_recalled(context, method);
  }
  gather_findings(context, method);
  if (context.whole()) result.evidence = evidence_for(result, context.taken);
  result.verdict = verdict_of(std::max(context.common.worst(), method.worst()));
  return result;
}

}  // namespace mainbore::planning
