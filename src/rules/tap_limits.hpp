// What the lists of largest taps say of a main: which row decides, and what else bears on it.
#pragma once

#include <array>
#include <optional>
#include <span>

#include "mainbore/rules.hpp"
#include "rules/main_filter.hpp"

namespace mainbore::rules {

// A main, which may be any of several pipes.
struct MainInQuestion {
  Material material{};
  NominalSize size;
  std::span<const Pipe* const> candidates;  // empty: the catalog lists nothing
  KnownOfMain known;
};

// Whether a row that covers the main's material and nominal size is for it: perhaps, where some of the pipes that it may be
// fit and some do not, or where what the row asks is not known.
[[nodiscard]] Match match_any(const MainFilter& row, const MainInQuestion& main, AsksOf* open = nullptr);

// The one function that says which row decides for a pipe: the first that fits, or none. Of the rows before it that fit
// perhaps, any may be the one: then the one that allows least decides, and where none fits for sure, none does. `open` is
// the first row that fits only perhaps.
struct Deciding {
  const TapLimit* row = nullptr;
  const TapLimit* open = nullptr;
  AsksOf asks{};                      // what would settle it
  const TapLimit* consent = nullptr;  // the first that may be the one and asks for consent
  bool of_any_pipe = true;            // no row that was looked at asks which pipe it is: it is so for any
};
[[nodiscard]] Deciding deciding_row(const TapLimits& rows, Material material, NominalSize size, const Pipe* pipe,
                                    const KnownOfMain& known = {});

// The least of the caps that are, or may be, for this main; `asks` is set to what would settle it where it may be alone. Above
// a cap that names who must consent a tap waits for that; above any other there is none.
enum class Above : std::uint8_t { none, by_consent };
struct Cap {
  const TapLimit* row = nullptr;
  std::optional<AsksOf> asks;
};
[[nodiscard]] Cap lowest_cap(const MainInQuestion& main, const TapLimits& caps, Above above);

// The lists that bear on one way of tapping.
struct MethodLists {
  const TapLimits& permissions;
  const TapLimits& by_default;
  std::array<const TapLimits*, 2> caps;
};

struct Ruling {
  const TapLimit* permission = nullptr;  // of the candidate that is allowed least
  bool none = false;                     // some candidate is covered by no row
  const TapLimit* open = nullptr;        // a row of permissions for which something of the main is to be known
  AsksOf asks{};                         // and what
  Cap cap;
  Cap consent_cap;  // above which a tap waits for consent
  // A row that permits by consent alone: it says so, or the defaults close the main to this method.
  const TapLimit* by_consent = nullptr;
  bool opened = false;                  // the latter
  const TapLimit* closed_by = nullptr;  // and the row of the defaults that does, where there is one
};
[[nodiscard]] Ruling ruling(const MainInQuestion& main, const MethodLists& lists);

}  // namespace mainbore::rules
