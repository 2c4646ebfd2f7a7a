// "Did you mean": the nearest of the known names.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace mainbore::io {

// Letters in lower case, without spaces, hyphens, underscores and dots: how names are compared.
[[nodiscard]] std::string plain_name(std::string_view text);
// Whether two names compare as equal, without writing either out.
[[nodiscard]] bool same_name(std::string_view a, std::string_view b);

// Edits (insert, delete, change, swap two neighbors) from one word to the other. Where it takes over `most`, any number
// over that.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b,
                                        std::size_t most = static_cast<std::size_t>(-1));

// The known name nearest to `text`, if it is near enough to be worth offering: at most a third of its letters differ.
// The first of equals. Only ever a suggestion: nothing is accepted for being near.
[[nodiscard]] std::optional<std::string_view> nearest(std::string_view text, std::span<const std::string_view> known);

// "a, b, c"
[[nodiscard]] std::string listed(std::span<const std::string_view> names);

}  // namespace mainbore::io
