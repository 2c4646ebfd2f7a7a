#include "mainbore/mechanics/section.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "circle.hpp"
#include "precondition.hpp"

namespace mainbore::mechanics {
namespace {

using std::numbers::pi;

// Wall over diameter under which the differences below have no digits left.
constexpr double kThinnest = 1e-6;

// The half disc of radius a over the axis, cut to the strip |x| <= r: area and moments about the axis. In units of the
// pipe's outside radius, so that no pipe is too large for it.
struct Strip {
  double area, first, second;
};

Strip strip(double a, double r) {
  r = std::min(r, a);
  const double chord = std::sqrt((a - r) * (a + r));
  const double angle = std::asin(r / a);
  return {r * chord + a * a * angle, a * a * r - r * r * r / 3.0,
          (0.5 * r * chord * chord * chord + 0.75 * a * a * (r * chord + a * a * angle)) / 3.0};
}

}  // namespace

std::optional<NetSection> net_section(const Barrel& barrel, Length hole_diameter) {
  if (!is_barrel(barrel) || !is_not_negative(hole_diameter) || hole_diameter >= barrel.outside_diameter) return {};
  const double inner = barrel.inside_diameter() / barrel.outside_diameter;
  const double hole = hole_diameter / barrel.outside_diameter;
  if (barrel.wall / barrel.outside_diameter < kThinnest) return {};
  const Strip whole = strip(1.0, hole);
  const Strip bore = strip(inner, hole);

  // Gross section by factors, to keep the digits of a very thin wall.
  const double gross_area = pi * (1.0 - inner) * (1.0 + inner);
  const double gross_second = gross_area * (1.0 + inner * inner) / 4.0;

  const double net_area = gross_area - (whole.area - bore.area);
  const double first = whole.first - bore.first;
  const double shift = first / net_area;
  const double net_second = gross_second - (whole.second - bore.second) - first * shift;
  const double farther_fiber = std::max(std::sqrt((1.0 - hole) * (1.0 + hole)) + shift, 1.0 - shift);

  return NetSection{net_area / gross_area, net_second / farther_fiber / gross_second,
                    shift * (barrel.outside_diameter / 2.0)};
}

double hole_ratio(Length hole_diameter, Length outside_diameter) {
  require(is_positive(outside_diameter), "hole_ratio: outside diameter must be positive");
  return hole_diameter / outside_diameter;
}

}  // namespace mainbore::mechanics
