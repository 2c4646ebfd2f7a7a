// The smallest tools of reading text.
#pragma once

#include <string_view>

#include "text/digit.hpp"

namespace mainbore::io {

using text::is_digit;

// Without the blanks and line ends around it.
[[nodiscard]] constexpr std::string_view trimmed(std::string_view text) {
  constexpr std::string_view space = " \t\r\n";
  const std::size_t first = text.find_first_not_of(space);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(space) - first + 1);
}

}  // namespace mainbore::io
