// Completion of commands, options and their values for the shells: lists from the option table in a small fixed frame.
#pragma once

#include <string>

#include "command_tree.hpp"

namespace mainbore::docs {

[[nodiscard]] std::string bash_completion(const CommandFacts& program);
[[nodiscard]] std::string zsh_completion(const CommandFacts& program);
[[nodiscard]] std::string fish_completion(const CommandFacts& program);

}  // namespace mainbore::docs
