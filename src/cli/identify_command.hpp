// mainbore identify: which mains fit a measured circumference.
#pragma once

#include <string>

#include "cli/console.hpp"
#include "cli/tool_values.hpp"

namespace mainbore::cli {

struct IdentifyRequest : ToolRequest {
  std::string circumference;
  std::string od;
  std::string wall;
  std::string installed;  // year
  std::string magnet;     // yes or no
  std::string sound;
  std::string joint;
  std::string carries;
};

// 0 where something fits, 1 where nothing does. Throws Stop.
[[nodiscard]] ExitStatus identify_command(const IdentifyRequest& request, Console& console);

}  // namespace mainbore::cli
