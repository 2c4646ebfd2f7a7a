// mainbore table: allowable taps per main size and class, under the rules in force.
#pragma once

#include <string>
#include <vector>

#include "cli/console.hpp"
#include "cli/tool_values.hpp"

namespace mainbore::cli {

struct TableRequest : ToolRequest {
  std::vector<std::string> materials;  // none: every one
  std::string from = "4 in";           // main sizes, inclusive
  std::string to = "12 in";
  bool all_sizes = false;
  std::string thread;
  std::string pressure;
  std::string machine;  // a job file whose machine is meant
};

[[nodiscard]] ExitStatus table_command(const TableRequest& request, Console& console);

}  // namespace mainbore::cli
