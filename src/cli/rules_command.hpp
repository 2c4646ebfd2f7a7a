// mainbore rules: check a utility's own rules, show what is in force, compare two sets.
#pragma once

#include <string>
#include <vector>

#include "cli/console.hpp"
#include "cli/tool_values.hpp"

namespace mainbore::cli {

struct RulesRequest : ToolRequest {
  std::vector<std::string> words;  // what to do, and with what
};

[[nodiscard]] ExitStatus rules_command(const RulesRequest& request, Console& console);

}  // namespace mainbore::cli
