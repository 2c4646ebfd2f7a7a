// The manual page, mainbore(1), in the man(7) macros.
#pragma once

#include <string>
#include <vector>

#include "command_tree.hpp"

namespace mainbore::docs {

// `pages`: names of the pages of docs/, for who wants more.
[[nodiscard]] std::string manual_page(const CommandFacts& program, const std::vector<std::string>& pages);

}  // namespace mainbore::docs
