// Which row of a list of largest taps decides for a pipe.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "mainbore/rules.hpp"

namespace mainbore::planning {

// Whether a row that covers the main fits this pipe of it: class, series and wall. `pipe` is absent where the catalogue
// lists nothing: then only rows that ask for none of these fit. A measured wall counts where it is the thinner.
[[nodiscard]] bool fits(const TapLimit& row, const Pipe* pipe, std::optional<Length> measured_wall);

// The first row that fits, or none.
[[nodiscard]] const TapLimit* deciding_row(std::span<const TapLimit> rows, Material material, NominalSize size,
                                           const Pipe* pipe);

}  // namespace mainbore::planning
