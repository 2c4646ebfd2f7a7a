// A plan under rules that the caller keeps, by the tables built into the program.
#pragma once

#include <memory>
#include <utility>

#include "mainbore/planner.hpp"

namespace mainbore::test {

inline Planner planner_under(const Rules& rules) {
  return {builtin_catalog(), std::shared_ptr<const Rules>(std::shared_ptr<const void>(), &rules)};
}
inline Plan plan_under(Job job, const Rules& rules, PlanDepth depth = PlanDepth::whole) {
  return planner_under(rules).plan(std::move(job), depth);
}

}  // namespace mainbore::test
