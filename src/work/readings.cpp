#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"

namespace mainbore {

std::string_view words_of(ReadingId id) {
  switch (id) {
    case ReadingId::line_pressure:
      return "line pressure when tapping";
    case ReadingId::wall:
      return "sound wall at the tap";
    case ReadingId::circumference:
      return "circumference of the pipe";
    case ReadingId::pipe_temperature:
      return "temperature of the pipe";
    case ReadingId::joint_distance:
      return "distance to the nearest joint";
    case ReadingId::surge:
      return "surge, by the utility";
  }
  return "";
}

std::string bounds_in_words(const Reading& reading, UnitSystem system) {
  const std::string bare = bare_bounds(reading, system);
  if (reading.at_least && reading.at_most) return bare;
  return (reading.at_least ? "at least " : "at most ") + bare;
}

std::string bare_bounds(const Reading& reading, UnitSystem system) {
  if (reading.at_least && reading.at_most) return format_between(*reading.at_least, *reading.at_most, system);
  return reading.at_least ? format_measure(*reading.at_least, system, Toward::more)
                          : format_measure(*reading.at_most, system, Toward::less);
}

std::string least_in_words(const Plan& plan, const Clearing& clearing, UnitSystem system) {
  const Reading* const joint = plan.reading(ReadingId::joint_distance);
  if (clearing.what == NearbyThing::joint && joint != nullptr) return bare_bounds(*joint, system);
  return on_tape(clearing.least, system, Toward::more);
}

const Reading* lower_the_main_to(const Plan& plan) {
  const auto& limit = plan.pressure.reduce_to;
  return limit && *limit < plan.pressure.line ? plan.reading(ReadingId::line_pressure) : nullptr;
}

std::optional<ReadingId> reading_that_clears(FindingCode code) {
  using enum FindingCode;
  switch (code) {
    case pressure_over_feed_limit:
    case pressure_over_machine_rating:
    case pressure_over_wet_tap_limit:
      return ReadingId::line_pressure;
    case main_wall_thin:
    case main_wall_unmeasured:
    case direct_thin_wall:
    case direct_wall_unknown:
      return ReadingId::wall;
    case main_od_unsettled:
      return ReadingId::circumference;
    case main_temperature_outside:
    case main_temperature_unmeasured:
    case main_freezing:
      return ReadingId::pipe_temperature;
    case pressure_surge_over_rating:
      return ReadingId::surge;
    default:
      return std::nullopt;
  }
}

}  // namespace mainbore
