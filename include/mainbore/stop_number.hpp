// Stop numbers: the bounds within which what a crew reads at the pipe before the cut bears the plan out.
//
// Each is named by what is read, so that whatever repeats one (a step, a finding, the load list, a
// drawing, a script) refers to it and prints that very value; its words are made in work.hpp. Ids only grow.
//
//     if (const StopNumber* wall = plan.stop_number(ReadingId::wall)) bounds_in_words(*wall, UnitSystem::us)  -> "at least 0.21 in"
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "mainbore/measure.hpp"

namespace mainbore {

// MAINBORE_READING(enumerator, "id")
#define MAINBORE_READINGS(X) \
  X(line_pressure, "line-pressure")       /* of the main at the gauge, when tapping */ \
  X(wall, "wall")                         /* sound wall at the tap */ \
  X(circumference, "circumference")       /* of the bare pipe, by tape */ \
  X(pipe_temperature, "pipe-temperature") /* of the pipe wall */ \
  X(joint_distance, "joint-distance")     /* from the tap to the nearest joint, along the main */ \
  X(surge, "surge")                       /* that the utility knows of this main: the office confirms it */ \
  X(air_temperature, "air-temperature")   /* on the day, where a rule asks for it */

enum class ReadingId : std::uint8_t {
#define MAINBORE_READING(name, id) name,
  MAINBORE_READINGS(MAINBORE_READING)
#undef MAINBORE_READING
};

inline constexpr std::array reading_ids = {
#define MAINBORE_READING(name, id) std::string_view(id),
    MAINBORE_READINGS(MAINBORE_READING)
#undef MAINBORE_READING
};

[[nodiscard]] constexpr std::string_view name_of(ReadingId id) { return reading_ids[static_cast<std::size_t>(id)]; }
[[nodiscard]] constexpr std::optional<ReadingId> reading_named(std::string_view id) {
  for (std::size_t i = 0; i < reading_ids.size(); ++i) {
    if (reading_ids[i] == id) return static_cast<ReadingId>(i);
  }
  return std::nullopt;
}

// One or both bounds; both of one kind. Outside them the crew stops, and the job is planned again.
struct StopNumber {
  ReadingId id = ReadingId::line_pressure;
  std::optional<Measure> at_least;
  std::optional<Measure> at_most;

  [[nodiscard]] Kind kind() const { return (at_least ? *at_least : *at_most).kind(); }
};

}  // namespace mainbore
