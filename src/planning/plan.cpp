#include <algorithm>
#include <array>
#include <cstddef>
#include <memory_resource>
#include <optional>
#include <stdexcept>
#include <utility>
#include <vector>

#include "planning/candidates.hpp"
#include "planning/checks.hpp"
#include "planning/laid_line.hpp"

namespace mainbore::planning {
namespace {

void require_facts(const Job& job) {
  if (!job.main.material || !job.main.size || !job.main.pressure || !job.service.size) {
    throw std::invalid_argument("a job needs the main's material and size, the service's size and the line pressure");
  }
}

using FindingLists = std::array<const Findings*, 3>;  // of the main, of the rest of the work, of the method

// Gravest first, then in the order of the checks.
std::vector<Finding> gathered(const FindingLists& lists) {
  std::vector<Finding> all;
  std::size_t count = 0;
  for (const Findings* const list : lists) count += list->list().size();
  all.reserve(count);
  for (const Severity severity : {Severity::stop, Severity::hold, Severity::caution, Severity::note}) {
    for (const Findings* const list : lists) {
      for (const Finding& finding : list->list()) {
        if (finding.severity == severity) all.push_back(finding);
      }
    }
  }
  return all;
}

void take_choice(Plan& plan, Choice& choice) {
  Candidate& chosen = choice.chosen;
  plan.method = std::move(chosen.method);
  plan.method.rejected = std::move(choice.rejected);
  plan.location.clock = chosen.place.clock;
  plan.location.other_clock = chosen.place.other_clock;
  plan.engagement = chosen.engagement;
  plan.makeup = chosen.makeup;
  plan.setup = chosen.setup;
  if (plan.method.kind != Method::none) plan.pressure = chosen.pressure;
}

// What was assumed and counted on.
Recorder write_down(Plan& plan, Said& main, Said& method, Said& work, Recorder& refusals) {
  for (const Said* const said : {&main, &method, &work}) {
    plan.main.assumed.insert(plan.main.assumed.end(), said->assumed.begin(), said->assumed.end());
  }
  Recorder taken = std::move(main.taken);
  for (Recorder* const other : {&method.taken, &work.taken, &refusals}) taken.add(std::move(*other));
  return taken;
}

// What is planned for the way that is taken.
struct Work {
  explicit Work(const Context& context) : said(context) {}

  std::optional<OpenHole> open_hole;
  std::optional<MarksPlan> marks;
  std::optional<ServicePlan> service;
  std::optional<CleaningPlan> cleaning;
  std::optional<PitPlan> excavation;
  std::vector<StopNumber> stop_numbers;
  Said said;
};

Work plan_work(const Site& site, const Candidate& chosen) {
  Work work(site);
  const auto laid = laid_line(site, chosen.method);
  work.open_hole = open_hole(site, chosen.method, work.said.taken);
  if (site.whole()) work.marks = bar_marks(site, chosen, work.said.taken);
  work.service = check_service(site, laid, work.said);
  work.cleaning = check_cleaning(site, laid, work.service, work.said);
  work.excavation = check_pit(site, work.open_hole, work.said);
  if (site.whole()) work.stop_numbers = stop_numbers(site, chosen, work.said.findings, work.said.taken);
  return work;
}

void take_work(Plan& plan, Work& work) {
  plan.open_hole = work.open_hole;
  plan.marks = work.marks;
  plan.service = std::move(work.service);
  plan.cleaning = std::move(work.cleaning);
  plan.excavation = work.excavation;
  plan.stop_numbers = std::move(work.stop_numbers);
}

// The plan of what the stages gave.
Plan assembled(const Context& context, Job&& job, JudgedMain&& judged, Choice&& choice, Work&& work) {
  Plan plan(std::move(job));
  plan.catalog = &context.catalog;
  plan.rules = &context.rules;
  plan.approved = context.approved;
  plan.main = std::move(judged.main);
  plan.pressure = judged.pressure;
  plan.location = std::move(judged.location);
  take_choice(plan, choice);
  take_work(plan, work);
  tell_looser_rules(context.rules, plan, work.said);
  Said& method = choice.chosen.said;
  const FindingLists lists = {&judged.said.findings, &work.said.findings, &method.findings};
  if (context.whole()) {
    Recorder taken = write_down(plan, judged.said, method, work.said, choice.refusals);
    if (const auto recalled = recalled_caution(taken, lists)) work.said.findings.add(*recalled, recalled->severity);
    plan.findings = gathered(lists);
    if (context.calculates()) {
      plan.evidence = evidence_for(plan, taken);
      plan.calculations = calculations_of(std::move(taken));
    }
  } else {
    plan.findings = gathered(lists);
  }
  plan.verdict =
      verdict_of(std::max({judged.said.findings.worst(), work.said.findings.worst(), method.findings.worst()}));
  return plan;
}

}  // namespace

JudgedMain judge_main(const Context& context, const PipesOnRecord& record) {
  JudgedMain judged(context);
  judged.said.add(record.said);
  judged.main = resolve_main(context, record, judged.said);
  check_identity(context, judged.said);
  check_utility(context, judged.main, judged.said);
  judged.pressure = check_pipe_pressure(context, judged.main, judged.said);
  judged.location = check_place(context, judged.said);
  return judged;
}

Plan plan_job(Job&& job, const Catalog& catalog, const Rules& rules, const ApprovedList* approved, PlanDepth depth) {
  require_facts(job);
  // Most plans need no more than this for their working lists, which then cost no call of the allocator.
  std::array<std::byte, 16 * 1024> room;
  std::pmr::monotonic_buffer_resource memory(room.data(), room.size());
  const Context context{catalog, rules, job, memory, depth, approved};

  const PipesOnRecord record = pipes_on_record(context);
  JudgedMain judged = judge_main(context, record);
  const Site site(context, record, judged);
  Choice choice = choose_method(site);
  Work work = plan_work(site, choice.chosen);
  return assembled(context, std::move(job), std::move(judged), std::move(choice), std::move(work));
}

}  // namespace mainbore::planning
