// Words and lists as shells read them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "option_values.hpp"

namespace mainbore::docs {

inline constexpr std::string_view made_by =
    "# Made from the program's option table by tests/docs/pages.cpp: not to be edited.\n";

[[nodiscard]] std::string replaced(std::string text, std::string_view what, std::string_view with);
[[nodiscard]] std::string joined(const std::vector<std::string>& words, std::string_view between = " ");

// In single quotes, as bash and zsh read them.
[[nodiscard]] std::string in_shell_quotes(std::string_view text);
[[nodiscard]] std::vector<std::string> all_quoted(const std::vector<std::string>& words);

// The names of the values of one kind.
[[nodiscard]] std::vector<std::string> names_of(const std::vector<OptionValue>& values, ValueKind kind);

}  // namespace mainbore::docs
