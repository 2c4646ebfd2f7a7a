#include "mainbore/mechanics/section.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;
using std::numbers::pi;

namespace {

// The same section summed in thin strips across the pipe, at one radius R = 1: width of metal at each height.
struct Sums {
  double area_ratio, modulus_ratio, shift;
};

Sums by_strips(double inner, double hole) {
  constexpr int kStrips = 400'000;
  const auto width = [](double radius, double y) {
    return y * y < radius * radius ? std::sqrt(radius * radius - y * y) : 0.0;
  };
  double area = 0, first = 0, second = 0, gross_area = 0, gross_second = 0;
  for (int i = 0; i < kStrips; ++i) {
    const double dy = 2.0 / kStrips;
    const double y = -1.0 + (i + 0.5) * dy;
    const double outer_half = width(1.0, y);
    const double inner_half = width(inner, y);
    const double gross = 2 * (outer_half - inner_half) * dy;
    const double cut = y > 0 ? 2 * (std::min(outer_half, hole) - std::min(inner_half, hole)) * dy : 0.0;
    gross_area += gross;
    gross_second += gross * y * y;
    area += gross - cut;
    first += (gross - cut) * y;
    second += (gross - cut) * y * y;
  }
  const double center = first / area;
  const double about_center = second - area * center * center;
  const double farthest = std::max(std::sqrt(1 - hole * hole) - center, 1 + center);
  return {area / gross_area, about_center / farthest / gross_second, -center};
}

}  // namespace

TEST_CASE("what a hole leaves of the section, against summation by strips") {
  struct Case {
    double wall, hole_radius;  // over the outside radius
  };
  for (const Case c : {Case{0.25 / 3.45, 0.6575 / 3.45}, Case{0.28 / 6.6, 1.1875 / 6.6}, Case{0.5, 0.3}, Case{0.4, 0.8},
                       Case{0.9, 0.95}}) {
    INFO("wall " << c.wall << ", hole radius " << c.hole_radius);
    const Sums expected = by_strips(1 - c.wall, c.hole_radius);
    const auto net = net_section({2.0 * units::inch, c.wall * units::inch}, 2 * c.hole_radius * units::inch);
    REQUIRE(net);
    CHECK(net->area_ratio == Approx(expected.area_ratio).epsilon(1e-5));
    CHECK(net->modulus_ratio == Approx(expected.modulus_ratio).epsilon(1e-5));
    CHECK(net->axis_shift / units::inch == Approx(expected.shift).epsilon(1e-5));
  }
}

TEST_CASE("a thin ring loses the arc of the hole") {
  // Arc of half angle alpha gone from a line ring: area 1 - alpha/pi, shift sin(alpha)/(pi - alpha),
  // I/(R^3 t) = pi - alpha - sin(2 alpha)/2 - 2 (pi - alpha) shift^2.
  const double alpha = 0.3;
  const double shift = std::sin(alpha) / (pi - alpha);
  const double second = pi - alpha - std::sin(2 * alpha) / 2 - 2 * (pi - alpha) * shift * shift;
  const double modulus = second / std::max(1 - shift, std::cos(alpha) + shift) / pi;
  const auto net = net_section({2.0 * units::inch, 1e-4 * units::inch}, 2 * std::sin(alpha) * units::inch);
  REQUIRE(net);
  CHECK(net->area_ratio == Approx(1 - alpha / pi).margin(1e-4));
  CHECK(net->axis_shift / units::inch == Approx(shift).margin(1e-4));
  CHECK(net->modulus_ratio == Approx(modulus).margin(1e-4));
}

TEST_CASE("the example of the header, no hole, and holes that are none") {
  const Barrel six_inch{6.90 * units::inch, 0.25 * units::inch};
  CHECK(net_section(six_inch, 1.315 * units::inch)->modulus_ratio == Approx(0.828).margin(0.0006));
  CHECK(net_section(six_inch, Length{})->modulus_ratio == Approx(1.0));
  CHECK(net_section(six_inch, Length{})->area_ratio == Approx(1.0));
  CHECK_FALSE(net_section(six_inch, 6.90 * units::inch));
  CHECK_FALSE(net_section(six_inch, -0.1 * units::inch));
  CHECK_FALSE(net_section(six_inch, std::numeric_limits<double>::quiet_NaN() * units::inch));
  CHECK_FALSE(net_section({1.0 * units::inch, 1e-9 * units::inch}, 0.1 * units::inch));
  CHECK(hole_ratio(2.0 * units::inch, 8.0 * units::inch) == 0.25);
  CHECK_THROWS_AS(hole_ratio(2.0 * units::inch, Length{}), std::invalid_argument);
}
