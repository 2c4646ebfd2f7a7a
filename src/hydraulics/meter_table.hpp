// The loss of a meter whose table has been looked over before: solvers ask for many flows of one meter.
#pragma once

#include "mainbore/hydraulics/minor_loss.hpp"

namespace mainbore::hydraulics::detail {

// Throws std::invalid_argument as meter_loss does, for everything but the flow.
void require_meter(const Meter& meter);

// meter_loss of a meter that passed, at a flow that is not negative.
[[nodiscard]] MeterLoss loss_of_checked_meter(const Meter& meter, Flow flow);

}  // namespace mainbore::hydraulics::detail
