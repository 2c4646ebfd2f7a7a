// Which row of a list of largest taps decides for a pipe.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "mainbore/rules.hpp"

namespace mainbore::rules {

// Whether a row that covers the main fits this pipe of it: class, series and wall. `pipe` is absent where the catalogue
// lists nothing: then only rows that ask for none of these fit. A measured wall counts where it is the thinner.
[[nodiscard]] bool fits(const TapLimit& row, const Pipe* pipe, std::optional<Length> measured_wall);

// The one function that says which row decides for a pipe: the first that fits, or none.
[[nodiscard]] const TapLimit* deciding_row(std::span<const TapLimit> rows, Material material, NominalSize size,
                                           const Pipe* pipe, std::optional<Length> measured_wall = {});

// The same for a main that may be any of several pipes: the row of the one that is allowed least. `none` is set when some
// pipe is covered by no row.
struct Ruling {
  const TapLimit* row = nullptr;
  bool none = false;
};
[[nodiscard]] Ruling ruling(std::span<const TapLimit> rows, Material material, NominalSize size,
                            std::span<const Pipe* const> candidates, std::optional<Length> measured_wall);

}  // namespace mainbore::rules
