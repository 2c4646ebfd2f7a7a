// The planner: made once from tables and rules, which it keeps alive; then a plan a job.
//
//     Planner planner(*load_rules(Catalog::builtin()).rules);
//     const Plan plan = planner.plan(job);
//     std::cout << text_report(plan);
//
// A planner is cheap to copy and never changes: one serves any number of threads. Its plans point into its tables and
// rules, and keep them: a plan may outlive its planner. What else points into them (a Finding taken out of a plan, a
// Pipe) must not outlive every planner and plan.
#pragma once

#include <memory>

#include "mainbore/approved.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/job.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/rules.hpp"

namespace mainbore {

// How much of a plan is asked for. A verdict is the same plan without what neither decides anything nor is a finding:
// its verdict, findings, method with what was rejected and pressure chain are those of the whole plan; the rest may be
// left out. So is the evidence, and with it the caution that is made from it, value.recalled. Decisions are the whole plan
// without evidence and calculations, which is all that PlanScope::decisions (plan_file.hpp) writes.
enum class PlanDepth : std::uint8_t { verdict, decisions, whole };

// The tables built into the program, for whatever shares a catalog.
[[nodiscard]] std::shared_ptr<const Catalog> builtin_catalog();

class Planner {
 public:
  // Rules over the tables built into the program: those that load_rules(Catalog::builtin(), ...) gave.
  explicit Planner(Rules rules);
  // Rules over tables of one's own: those that load_rules(*catalog, ...) gave. Throws std::invalid_argument for null.
  Planner(std::shared_ptr<const Catalog> catalog, Rules rules);
  Planner(std::shared_ptr<const Catalog> catalog, std::shared_ptr<const Rules> rules);
  // And a list of approved fittings, which plans choose from; null: none is named.
  Planner(std::shared_ptr<const Catalog> catalog, Rules rules, std::shared_ptr<const ApprovedList> approved);

  // Pure: the same job gives the same plan. The job must have its four required facts (throws std::invalid_argument
  // otherwise; the readers of job_file.hpp refuse such a job with a diagnostic first).
  [[nodiscard]] Plan plan(Job&& job, PlanDepth depth = PlanDepth::whole) const;
  [[nodiscard]] Plan plan(const Job& job, PlanDepth depth = PlanDepth::whole) const { return plan(Job(job), depth); }

  [[nodiscard]] const Catalog& catalog() const { return *kept_->catalog; }
  [[nodiscard]] const Rules& rules() const { return *kept_->rules; }
  [[nodiscard]] const ApprovedList* approved() const { return kept_->approved.get(); }
  // Keeps them alive for as long as it lives.
  [[nodiscard]] std::shared_ptr<const void> keeps() const { return kept_; }

 private:
  struct Kept {
    std::shared_ptr<const Catalog> catalog;
    std::shared_ptr<const Rules> rules;
    std::shared_ptr<const ApprovedList> approved;
  };
  std::shared_ptr<const Kept> kept_;
};

}  // namespace mainbore
