// mainbore rules: check a utility's own rules, show what is in force, compare two sets.
#pragma once

#include <string>
#include <vector>

#include "cli/console.hpp"
#include "cli/tool_values.hpp"

namespace mainbore::cli {

struct RulesRequest : ToolRequest {
  std::string action;              // check, show or diff
  std::vector<std::string> words;  // and with what
};

[[nodiscard]] ExitStatus rules_command(const RulesRequest& request, Console& console);

}  // namespace mainbore::cli
