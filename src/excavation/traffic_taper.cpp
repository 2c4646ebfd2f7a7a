#include "mainbore/excavation/traffic_taper.hpp"

#include <stdexcept>

#include "excavation/compare.hpp"

namespace mainbore::excavation {

Length taper_length(TaperKind kind, Length width, Velocity speed) {
  if (width < Length{} || speed < Velocity{}) {
    throw std::invalid_argument("taper_length: width and speed must not be negative");
  }
  constexpr Velocity greatest_low_speed = 40.0 * units::mph;  // the two formulas do not meet here
  const double s = speed / units::mph;
  const Length merging = detail::at_most(speed, greatest_low_speed) ? s * s / 60.0 * width : s * width;
  switch (kind) {
    case TaperKind::merging:
      return merging;
    case TaperKind::shifting:
      return merging / 2.0;
    case TaperKind::shoulder:
      return merging / 3.0;
  }
  throw std::invalid_argument("taper_length: unknown kind of taper");
}

}  // namespace mainbore::excavation
