#pragma once

namespace mainbore::text {

// 0 to 9, whatever the locale.
[[nodiscard]] constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace mainbore::text
