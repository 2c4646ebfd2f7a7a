// The swabbing solution as a jug measures it: one figure of stock, whoever prints it.
#pragma once

#include <string>

#include "mainbore/cleaning_plan.hpp"
#include "mainbore/measure.hpp"

namespace mainbore::report {

// Of a liquid stock. Rounded up to the fluid ounce a gallon, or 5 mL a liter; what is made is that many gallons or liters.
struct Mixing {
  std::string stock;   // "25 fl oz"
  std::string water;   // the rest of what is made
  std::string amount;  // "25 fl oz"
  std::string each;    // "25 fl oz to each gallon made"
};
[[nodiscard]] Mixing mixing_of(const SwabMix& swab, UnitSystem system);

}  // namespace mainbore::report
