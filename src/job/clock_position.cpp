#include <string>

#include "mainbore/job.hpp"

namespace mainbore {

double ClockPosition::elevation_degrees() const {
  // Half a degree a minute from the crown, to the invert at 6:00 and back.
  const double from_crown = 0.5 * (minutes <= 360 ? minutes : 720 - minutes);
  return 90.0 - from_crown;
}

std::string ClockPosition::label() const {
  const int hour = minutes / 60 == 0 ? 12 : minutes / 60;
  const int minute = minutes % 60;
  return std::to_string(hour) + (minute < 10 ? ":0" : ":") + std::to_string(minute);
}

}  // namespace mainbore
