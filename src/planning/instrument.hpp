// What an instrument reads on a pipe: the same error whether a reading is judged or a bound is set for one.
#pragma once

#include <numbers>

#include "mainbore/catalog.hpp"
#include "mainbore/job.hpp"
#include "mainbore/rules.hpp"
#include "mainbore/units.hpp"

namespace mainbore::planning {

// Of the diameter that the job gives as measured; none where it gives none. The caliper goes before the tape.
[[nodiscard]] inline Length diameter_error(const MainFacts& facts, const Rules& rules) {
  if (facts.od) return rules.measuring.od_uncertainty.value;
  return facts.circumference ? rules.measuring.circumference_uncertainty.value / std::numbers::pi : Length();
}

}  // namespace mainbore::planning
