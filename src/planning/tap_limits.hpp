// Which row of a list of largest taps decides for a pipe.
#pragma once

#include <algorithm>
#include <optional>
#include <span>
#include <vector>

#include "mainbore/rules.hpp"

namespace mainbore::planning {

// Whether a row of any list is for mains of this material and size.
template <class Row>
[[nodiscard]] bool covers(const Row& row, Material material, NominalSize size) {
  if ((row.main_from && size < *row.main_from) || (row.main_to && size > *row.main_to)) return false;
  return row.materials.empty() || std::find(row.materials.begin(), row.materials.end(), material) != row.materials.end();
}

// Whether a row that covers the main fits this pipe of it: class, series and wall. `pipe` is absent where the catalogue
// lists nothing: then only rows that ask for none of these fit. A measured wall counts where it is the thinner.
[[nodiscard]] bool fits(const TapLimit& row, const Pipe* pipe, std::optional<Length> measured_wall);

// The first row that fits, or none.
[[nodiscard]] const TapLimit* deciding_row(std::span<const TapLimit> rows, Material material, NominalSize size,
                                           const Pipe* pipe);

}  // namespace mainbore::planning
