// Which pipes of the catalogue fit what is known.
//
// Only what was published or read at the pipe, or its own record, removes a candidate. What is recalled or common practice
// (the years of a series, the names a pipe usually goes by) may tell that nothing fits, or be told; it removes none. A
// wall removes none either: pipe rusts, and nothing is published on how far a wall may run over.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "planning/checks.hpp"

namespace mainbore::planning {

struct MeasuredDiameter {
  Length value;
  Length uncertainty;
  const Basis* basis = nullptr;
};

// What the card and the readings say of the pipe, read once.
struct PipeKnown {
  ClassWords by_class;          // of main.class
  ClassWords by_standard;       // of main.standard
  bool settles_series = false;  // main.standard names a series outright
  std::optional<MeasuredDiameter> measured;
};

// The pipes that fit, and what is known of them. Contradictions and doubts are findings.
[[nodiscard]] std::pair<std::vector<const Pipe*>, PipeKnown> find_candidates(const Context& context, Said& said);

// Whether a tape tells these two apart: nearer than a fiftieth of an inch outside they read alike.
[[nodiscard]] inline bool told_apart(const Pipe& one, const Pipe& other) {
  return one.od && other.od && abs(*one.od - *other.od) > 0.02 * units::inch;
}

// Whether its years allow it; where none are known, any year does.
[[nodiscard]] inline bool laid_in(const PipeSeries& series, int year) {
  return (!series.laid_from || year >= *series.laid_from) && (!series.laid_to || year <= *series.laid_to);
}

}  // namespace mainbore::planning
