// mainbore trial: the tap's depth from trial taps.
#pragma once

#include <string>
#include <vector>

#include "cli/console.hpp"
#include "cli/tool_values.hpp"

namespace mainbore::cli {

struct TrialRequest : ToolRequest {
  std::vector<std::string> trials;  // "depth=1.5 in, hand=4, wrench=2.5, showing=3"
  std::string threads_per_inch;     // counted
  std::string wrench;               // wanted; empty: the rules'
  std::string showing;
  std::string least;  // trials that must agree; empty: the usual number
};

// 0 where the trials settle the depth, 3 where another is needed. Throws Stop.
[[nodiscard]] ExitStatus trial_command(const TrialRequest& request, Console& console);

}  // namespace mainbore::cli
