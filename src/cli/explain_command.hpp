// mainbore explain: what a code means.
#pragma once

#include <string>

#include "cli/console.hpp"

namespace mainbore::cli {

struct ExplainRequest {
  std::string code;
  bool list = false;
};

[[nodiscard]] ExitStatus explain_command(const ExplainRequest& request, Console& console);

}  // namespace mainbore::cli
