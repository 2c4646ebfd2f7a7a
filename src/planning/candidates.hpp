// Which pipes of the catalog fit what is known.
//
// Only what was published or read at the pipe, or its own record, removes a candidate. What is recalled or common practice
// (the years of a series, the names a pipe usually goes by) may tell that nothing fits, or be told; it removes none. A
// wall removes none either: pipe rusts, and nothing is published on how far a wall may run over.
#pragma once

#include <memory_resource>
#include <optional>
#include <vector>

#include "planning/checks.hpp"

namespace mainbore::planning {

struct MeasuredDiameter {
  Length value;
  Length uncertainty;
  const Basis* basis = nullptr;
};

// What the record of the main leaves, its card and its year, before anything is read at the pipe: the same for every reading
// that is tried.
struct PipesOnRecord {
  explicit PipesOnRecord(const Context& context) : pipes(&context.memory), said(context) {}

  std::pmr::vector<const Pipe*> pipes;
  ClassWords by_class;          // of main.class
  ClassWords by_standard;       // of main.standard
  bool settles_series = false;  // main.standard names a series outright
  Said said;
};

// The pipes that fit the readings too, and what was measured. Contradictions and doubts are findings.
struct Candidates {
  std::vector<const Pipe*> pipes;
  std::optional<MeasuredDiameter> measured;
};
[[nodiscard]] Candidates find_candidates(const Context& context, const PipesOnRecord& record, Said& said);

// Whether a tape tells these two apart: nearer than a fiftieth of an inch outside they read alike.
[[nodiscard]] inline bool told_apart(const Pipe& one, const Pipe& other) {
  return one.od && other.od && abs(*one.od - *other.od) > 0.02 * units::inch;
}

// Whether its years allow it; where none are known, any year does.
[[nodiscard]] inline bool laid_in(const PipeSeries& series, int year) {
  return (!series.laid_from || year >= *series.laid_from) && (!series.laid_to || year <= *series.laid_to);
}

}  // namespace mainbore::planning
