// What the lists of largest taps say of a main: which row decides, and what else bears on it.
#pragma once

#include <array>
#include <optional>
#include <span>

#include "mainbore/rules.hpp"

namespace mainbore::rules {

// Whether a row that covers the main fits this pipe of it: class, series and wall. `pipe` is absent where the catalogue
// lists nothing: then only rows that ask for none of these fit. A measured wall counts where none is tabulated.
[[nodiscard]] bool fits(const TapLimit& row, const Pipe* pipe, std::optional<Length> measured_wall);

// The one function that says which row decides for a pipe: the first that fits, or none.
[[nodiscard]] const TapLimit* deciding_row(const TapLimits& rows, Material material, NominalSize size, const Pipe* pipe,
                                           std::optional<Length> measured_wall = {});

// A main, which may be any of several pipes.
struct MainInQuestion {
  Material material{};
  NominalSize size;
  std::span<const Pipe* const> candidates;  // empty: the catalogue lists nothing
  std::optional<Length> measured_wall;
};

// The lists that bear on one way of tapping.
struct MethodLists {
  const TapLimits& permissions;
  const TapLimits& by_default;
  std::array<const TapLimits*, 2> caps;
};

struct Ruling {
  const TapLimit* permission = nullptr;  // of the candidate that is allowed least
  bool none = false;                     // some candidate is covered by no row
  const TapLimit* cap = nullptr;         // the least of those that are, or may be, for this main
  // A row that permits by consent alone: it says so, or the defaults close the main to this method.
  const TapLimit* by_consent = nullptr;
  bool opened = false;                   // the latter
  const TapLimit* closed_by = nullptr;   // and the row of the defaults that does, where there is one
};
[[nodiscard]] Ruling ruling(const MainInQuestion& main, const MethodLists& lists);

// The least of the caps that are, or may be, for this main.
[[nodiscard]] const TapLimit* lowest_cap(const MainInQuestion& main, const TapLimits& caps);

}  // namespace mainbore::rules
