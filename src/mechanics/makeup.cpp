#include "mainbore/mechanics/makeup.hpp"

#include "precondition.hpp"

namespace mainbore::mechanics {

Makeup makeup(const TaperThread& thread, const MakeupGoal& goal) {
  require(is_positive(thread.threads_per_inch), "makeup: threads per inch must be positive");
  require(is_not_negative(goal.wrench_turns) && is_not_negative(goal.threads_showing),
          "makeup: wrench turns and threads showing must not be negative");
  const Length pitch = thread.pitch();
  Makeup result;
  result.hand_tight_length = thread.effective_length - (goal.wrench_turns + goal.threads_showing) * pitch;
  result.hand_tight_turns = result.hand_tight_length / pitch;
  result.stop_past_gauge = result.hand_tight_length - thread.gauge_length;
  result.turns_past_gauge = result.stop_past_gauge / pitch;
  result.engaged_length = result.hand_tight_length + goal.wrench_turns * pitch;
  result.interference = goal.wrench_turns * thread.taper * pitch;
  return result;
}

double threads_showing(const TaperThread& thread, Length stop_past_gauge, double wrench_turns) {
  require(is_positive(thread.threads_per_inch), "threads_showing: threads per inch must be positive");
  require(is_not_negative(wrench_turns), "threads_showing: wrench turns must not be negative");
  const Length left_outside = thread.effective_length - hand_tight_length(thread, stop_past_gauge);
  return left_outside * thread.threads_per_inch - wrench_turns;
}

}  // namespace mainbore::mechanics
