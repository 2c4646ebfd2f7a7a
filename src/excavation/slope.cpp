#include "mainbore/excavation/slope.hpp"

#include <stdexcept>

#include "excavation/compare.hpp"

namespace mainbore::excavation {

std::optional<AllowedSlope> allowed_slope(const SlopeCase& slope_case, const SlopeTable& table,
                                          const ExcavationThresholds& thresholds) {
  const auto& [soil, depth, open_for, distress] = slope_case;
  if (depth < Length{} || open_for < Time{}) {
    throw std::invalid_argument("allowed_slope: depth and time must not be negative");
  }
  if (!(thresholds.engineer_depth > Length{}) || !(thresholds.short_term_depth > Length{}) ||
      !(thresholds.short_term_open > Time{})) {
    throw std::invalid_argument("allowed_slope: a threshold must be positive");
  }
  for (const double run : {table.stable_rock, table.type_a, table.type_a_short_term, table.type_b, table.type_c,
                           table.distress_flattening}) {
    if (!(run >= 0.0)) throw std::invalid_argument("allowed_slope: a slope must not be negative");
  }
  if (detail::exceeds(depth, thresholds.engineer_depth)) return std::nullopt;

  const double flattening = distress ? table.distress_flattening : 0.0;
  switch (soil) {
    case SoilType::stable_rock:
      if (distress) break;
      return AllowedSlope{.run = table.stable_rock};
    case SoilType::type_a:
      // Ground in distress has no short term: its walls are already on the move.
      if (!distress && detail::at_most(depth, thresholds.short_term_depth) &&
          detail::at_most(open_for, thresholds.short_term_open)) {
        return AllowedSlope{.run = table.type_a_short_term, .short_term = true};
      }
      return AllowedSlope{.run = table.type_a + flattening};
    case SoilType::type_b:
      return AllowedSlope{.run = table.type_b + flattening};
    case SoilType::type_c:
      break;
  }
  return AllowedSlope{.run = table.type_c + flattening};
}

}  // namespace mainbore::excavation
