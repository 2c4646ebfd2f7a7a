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
      return "surge of the main, by the utility";
  }
  return "";
}

std::string bounds_in_words(const Reading& reading, UnitSystem system) {
  if (reading.at_least && reading.at_most && !step_between(*reading.at_least, *reading.at_most, system)) {
    return format_measure(*reading.at_least, system) + " to " + format_measure(*reading.at_most, system);
  }
  const std::string least = reading.at_least ? format_measure(*reading.at_least, system, Toward::more) : std::string();
  const std::string most = reading.at_most ? format_measure(*reading.at_most, system, Toward::less) : std::string();
  if (reading.at_least && reading.at_most) return least + " to " + most;
  return reading.at_least ? "at least " + least : "at most " + most;
}

}  // namespace mainbore
