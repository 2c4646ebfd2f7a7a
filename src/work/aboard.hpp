// What a truck has of a load list.
#pragma once

#include "mainbore/work.hpp"

namespace mainbore::work {

// Says of each item how many are aboard, and what else aboard would do for what is lacking. A thing of the approved list is
// found by its stock number; any other by its name, with its size, the diameters that it takes or its length where those
// matter.
void count_aboard(const Plan& plan, const Aboard& aboard, Audience audience, std::vector<LoadItem>& list);

}  // namespace mainbore::work
