#include "mainbore/plan.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <memory_resource>
#include <stdexcept>
#include <utility>

#include "planning/checks.hpp"

namespace mainbore {
namespace planning {
namespace {

// Gravest first, then in the order of the checks.
void gather_findings(Context& context, const Findings& method) {
  std::vector<Finding>& all = context.plan.findings;
  all.reserve(context.common.list().size() + method.list().size());
  for (const Severity severity : {Severity::stop, Severity::hold, Severity::caution, Severity::note}) {
    for (const Findings* findings : {&std::as_const(context.common), &method}) {
      for (const Finding& finding : findings->list()) {
        if (finding.severity == severity) all.push_back(finding);
      }
    }
  }
}

}  // namespace

Findings judge(Context& context) {
  resolve_main(context);
  check_identity(context);
  check_utility(context);
  check_pipe_pressure(context);
  check_place(context);
  return choose_method(context);
}

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
  const planning::Findings method = planning::judge(context);
  planning::plan_open_hole(context);
  planning::check_service(context);
  planning::check_cleaning(context);
  planning::check_pit(context);
  planning::tell_looser_rules(context);
  planning::gather_findings(context, method);
  if (context.whole()) planning::write_stop_numbers(context, method);
  result.verdict = planning::verdict_of(std::max(context.common.worst(), method.worst()));
  return result;
}

}  // namespace mainbore
