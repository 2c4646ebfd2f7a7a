// What of the order of work decides for more than one of its parts.
#pragma once

#include "mainbore/plan.hpp"

namespace mainbore::work {

// The way of tapping is an engineer's to give: nothing of the cut is planned, and nothing for it is loaded.
[[nodiscard]] bool only_by_engineer(const Plan& plan);

}  // namespace mainbore::work
