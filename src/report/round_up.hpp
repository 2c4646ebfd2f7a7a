// Figures of what is measured out: up to the next step, and a step that was only worn by the units is one still.
#pragma once

#include <cmath>

namespace mainbore::report {

[[nodiscard]] inline double round_up(double value, double step = 1.0) { return step * std::ceil(value / step - 1e-6); }

}  // namespace mainbore::report
