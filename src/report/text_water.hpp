// The sections of the text report that only some jobs ask for: water for the customer, cleaning, the pit.
#pragma once

#include "mainbore/plan.hpp"
#include "report/text_page.hpp"

namespace mainbore::report {

// Quiet where the job gave no facts: then a single line says what was not checked, and what would let it be.
void water_sections(TextPage& page, const Plan& plan, UnitSystem system);

}  // namespace mainbore::report
