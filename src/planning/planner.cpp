#include "mainbore/planner.hpp"

#include <stdexcept>
#include <utility>

#include "planning/checks.hpp"

namespace mainbore {

std::shared_ptr<const Catalog> builtin_catalog() {
  return {std::shared_ptr<const void>(), &Catalog::builtin()};  // lives as long as the program
}

Planner::Planner(Rules rules) : Planner(builtin_catalog(), std::move(rules)) {}

Planner::Planner(std::shared_ptr<const Catalog> catalog, Rules rules)
    : Planner(std::move(catalog), std::make_shared<const Rules>(std::move(rules))) {}

Planner::Planner(std::shared_ptr<const Catalog> catalog, std::shared_ptr<const Rules> rules) {
  if (catalog == nullptr || rules == nullptr) throw std::invalid_argument("a planner needs a catalog and rules");
  kept_ = std::make_shared<const Kept>(Kept{std::move(catalog), std::move(rules), nullptr});
}

Planner::Planner(std::shared_ptr<const Catalog> catalog, Rules rules, std::shared_ptr<const ApprovedList> approved) {
  if (catalog == nullptr) throw std::invalid_argument("a planner needs a catalog and rules");
  kept_ = std::make_shared<const Kept>(
      Kept{std::move(catalog), std::make_shared<const Rules>(std::move(rules)), std::move(approved)});
}

Plan Planner::plan(Job&& job, PlanDepth depth) const {
  Plan made = planning::plan_job(std::move(job), catalog(), rules(), approved(), depth);
  made.keeps = kept_;
  return made;
}

}  // namespace mainbore
