// The Hazen-Williams loss in factors, for whoever asks for many flows through the same pipe:
//
//   loss = flow_factor(Q, C) / bore_factor(d) x length
#pragma once

#include "mainbore/units.hpp"

namespace mainbore::hydraulics::detail {

// In psi to a foot of a pipe whose bore factor is 1; the flow must not be negative, C positive.
[[nodiscard]] double flow_factor(Flow flow, double c);
// The flow whose factor that is.
[[nodiscard]] Flow flow_of_factor(double factor, double c);
// The bore must be positive.
[[nodiscard]] double bore_factor(Length bore);

}  // namespace mainbore::hydraulics::detail
