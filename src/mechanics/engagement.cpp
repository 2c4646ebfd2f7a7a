#include "mainbore/mechanics/engagement.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "circle.hpp"
#include "precondition.hpp"

namespace mainbore::mechanics {
namespace {

bool is_thread(const ThreadForm& thread) { return is_positive(thread.major) && is_positive(thread.threads_per_inch); }

// Length of thread on the line that stands at distance x from the plane through the pipe's axis. Where the bore is
// narrower than that the line stays in metal, and is counted to the level of the axis.
Length axial_length(Length outer, Length inner, Length x) {
  return half_chord(outer, x) - (x < inner ? half_chord(inner, x) : Length{});
}

// Mean of half_chord(radius, hole_radius * sin(angle)) round the hole, for a hole within the circle: (2/pi) R E(r/R) with
// the complete elliptic integral of the second kind, by the arithmetic-geometric mean (Abramowitz and Stegun 17.6).
// Each turn doubles the digits.
Length mean_half_chord(Length radius, Length hole_radius) {
  const double k = hole_radius / radius;
  double a = 1.0;
  double b = std::sqrt((1.0 - k) * (1.0 + k));
  double sum = 0.5 * k * k;
  for (double weight = 1.0; a - b > 1e-15 * a; weight *= 2.0) {
    const double c = 0.5 * (a - b);
    const double mean = 0.5 * (a + b);
    b = std::sqrt(a * b);
    a = mean;
    sum += weight * c * c;
  }
  return radius * ((1.0 - sum) / a);
}

// Mean of the axial length round the hole. Where the hole is wider than the bore the length has corners, and midpoints
// of equal steps over a quarter turn are summed.
Length mean_axial_length(Length outer, Length inner, Length hole_radius) {
  if (hole_radius < inner) return mean_half_chord(outer, hole_radius) - mean_half_chord(inner, hole_radius);
  constexpr int kSteps = 64;
  Length sum;
  for (int i = 0; i < kSteps; ++i) {
    sum += axial_length(outer, inner, hole_radius * std::sin((i + 0.5) / kSteps * (std::numbers::pi / 2.0)));
  }
  return sum / kSteps;
}

// Everything but the drop, which is the only thing the taper moves.
Engagement engagement_below(const Barrel& barrel, const ThreadForm& thread, Length drop) {
  const Length outer = barrel.outside_diameter / 2.0;
  const Length inner = outer - barrel.wall;
  const Length hole = thread.major / 2.0;

  Engagement result;
  result.drop = drop;
  result.complete_ring_length = std::max(Length{}, barrel.wall - drop);
  result.complete_threads = result.complete_ring_length * thread.threads_per_inch;
  result.axial_along = barrel.wall;
  result.axial_transverse = axial_length(outer, inner, hole);
  result.mean_axial = mean_axial_length(outer, inner, hole);
  if (hole >= inner) {
    result.fit = HoleFit::wider_than_bore;
  } else {
    result.fit = result.complete_ring_length > Length{} ? HoleFit::complete_rings : HoleFit::no_complete_ring;
  }
  return result;
}

Engagement no_engagement(HoleFit why) {
  Engagement result;
  result.fit = why;
  return result;
}

// Depth z at which a narrowing hole meets the sides of the cylinder, (r - k z)^2 + (R - z)^2 = R^2: the lesser root, in
// the form that keeps its digits. With r under R the roots are real.
Length taper_drop(Length outer, Length hole, double k) {
  const double q = hole / outer;
  return hole * (q / (1.0 + k * q + std::sqrt((1.0 - q) * (1.0 + q) + 2.0 * k * q)));
}

}  // namespace

std::optional<Length> sagitta(Length outside_diameter, Length hole_diameter) {
  if (!is_positive(outside_diameter) || !is_not_negative(hole_diameter) || hole_diameter > outside_diameter) return {};
  return chord_drop(outside_diameter / 2.0, hole_diameter / 2.0);
}

Engagement engagement(const Barrel& barrel, const ThreadForm& thread) {
  if (!is_barrel(barrel) || !is_thread(thread)) return no_engagement(HoleFit::undefined);
  if (thread.major >= barrel.outside_diameter) return no_engagement(HoleFit::wider_than_pipe);
  return engagement_below(barrel, thread, chord_drop(barrel.outside_diameter / 2.0, thread.major / 2.0));
}

Engagement taper_engagement(const Barrel& barrel, const ThreadForm& thread) {
  if (!is_barrel(barrel) || !is_thread(thread) || !is_not_negative(thread.taper)) {
    return no_engagement(HoleFit::undefined);
  }
  if (thread.major >= barrel.outside_diameter) return no_engagement(HoleFit::wider_than_pipe);
  return engagement_below(barrel, thread,
                          taper_drop(barrel.outside_diameter / 2.0, thread.major / 2.0, thread.taper / 2.0));
}

std::optional<Length> wall_needed(Length outside_diameter, const ThreadForm& thread, double complete_threads) {
  if (!is_thread(thread) || !is_not_negative(complete_threads) || thread.major >= outside_diameter) return {};
  const std::optional<Length> drop = sagitta(outside_diameter, thread.major);
  if (!drop) return {};
  const Length wall = complete_threads / thread.threads_per_inch + *drop;
  if (!(wall < outside_diameter / 2.0)) return {};
  return wall;
}

}  // namespace mainbore::mechanics
