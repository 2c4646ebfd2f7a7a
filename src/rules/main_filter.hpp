// Whether a row of rules is for a main, where some of the main may be unknown.
//
// In doubt a row that forbids, asks or lowers counts, and a row that permits does not stand alone: of all rows that may be the
// deciding one, the least counts. So no doubt betters a verdict.
#pragma once

#include <cstdint>
#include <optional>

#include "mainbore/rules.hpp"

namespace mainbore::rules {

enum class Match : std::uint8_t { no, perhaps, yes };

// What a row asks of a main that may be unknown, for the words about it.
enum class AsksOf : std::uint8_t { pipe_class, wall, bore, year };

// Both ends are inside; alike where the figure is known exactly.
struct Span {
  Length low;
  Length high;
};

// What is known of a main beside the pipes that it may be.
struct KnownOfMain {
  std::optional<Span> od;    // as measured, with what the instrument may be off: counts where the tables have none
  std::optional<Span> wall;  // the same
  std::optional<int> laid;
};

// Whether it matters to the row which pipe of its material and nominal size a main is.
[[nodiscard]] bool asks_of_pipe(const MainFilter& row);

// Of a row that covers material and nominal size: does it fit this pipe? `pipe` is absent where the catalog lists none.
// `open` is set to what would settle it where the answer is perhaps.
[[nodiscard]] Match match(const MainFilter& row, const Pipe* pipe, const KnownOfMain& known, AsksOf* open = nullptr);

}  // namespace mainbore::rules
