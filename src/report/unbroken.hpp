// What of a text stays on one line: a number with its fraction and its unit, feet with their inches, a blank with its unit.
#pragma once

#include <cstddef>
#include <string_view>

namespace mainbore::report {

// Where the piece that begins at `at` ends: with its word, or behind the unit that belongs to it.
[[nodiscard]] std::size_t unbroken_end(std::string_view text, std::size_t at);

// Whether a browser would break such a piece: it holds a space, or figures with a hyphen or a slash. Not of a long one.
[[nodiscard]] bool would_break(std::string_view piece);

}  // namespace mainbore::report
