#include "mainbore/mechanics/stripping.hpp"

#include <algorithm>
#include <numbers>

#include "precondition.hpp"

namespace mainbore::mechanics {
namespace {

using std::numbers::pi;

// Shear cylinder of diameter `at` through threads whose flanks are half a pitch thick at a distance (in diameter)
// `from_pitch` nearer the root than there.
Area shear_area(InverseLength threads_per_inch, Length engaged, Length at, Length from_pitch, double flank_tangent) {
  const double threads = std::max(Length{}, engaged) * threads_per_inch;
  return pi * threads * at * (0.5 / threads_per_inch + flank_tangent * from_pitch);
}

}  // namespace

ShearAreas shear_areas(const ThreadLimits& limits, Length engaged) {
  require(is_positive(limits.threads_per_inch), "shear_areas: threads per inch must be positive");
  constexpr double kTangent = 1.0 / std::numbers::sqrt3;
  const auto n = limits.threads_per_inch;
  return {shear_area(n, engaged, limits.internal_minor_max, limits.external_pitch_min - limits.internal_minor_max,
                     kTangent),
          shear_area(n, engaged, limits.external_major_min, limits.external_major_min - limits.internal_pitch_max,
                     kTangent)};
}

Area tensile_stress_area(Length major, InverseLength threads_per_inch) {
  require(is_positive(threads_per_inch), "tensile_stress_area: threads per inch must be positive");
  const Length diameter = std::max(Length{}, major - 0.9743 / threads_per_inch);
  return pi / 4.0 * (diameter * diameter);
}

ShearAreas taper_shear_areas(const TaperThread& thread, Length engaged) {
  require(is_positive(thread.threads_per_inch), "taper_shear_areas: threads per inch must be positive");
  const Length major = thread.pitch_gauge + thread.thread_height;
  const Length minor = thread.pitch_gauge - thread.thread_height;
  const auto n = thread.threads_per_inch;
  return {shear_area(n, engaged, minor, thread.thread_height, thread.flank_tangent),
          shear_area(n, engaged, major, thread.thread_height, thread.flank_tangent)};
}

Force stripping_load(const ShearAreas& areas, const ShearStrengths& strengths, double effectiveness) {
  return effectiveness * std::min(areas.internal * strengths.internal, areas.external * strengths.external);
}

Force pressure_end_load(const TaperThread& thread, Pressure line) {
  return line * (pi / 4.0 * (thread.major_at_gauge() * thread.major_at_gauge()));
}

}  // namespace mainbore::mechanics
