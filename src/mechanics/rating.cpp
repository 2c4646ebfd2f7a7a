#include "mainbore/mechanics/rating.hpp"

#include <algorithm>
#include <cmath>

#include "precondition.hpp"

namespace mainbore::mechanics {
namespace {

// A hair, in steps, that a quotient may miss a whole number by and still be meant as it: 0.285 / 0.01 is 28.499999...
constexpr double kHair = 1e-9;

void require_design(const IronDesign& design) {
  require(is_positive(design.yield) && is_positive(design.safety_factor) && is_positive(design.rounding),
          "iron wall: yield, safety factor and rounding must be positive");
}

void require_ratio(double dimension_ratio) {
  require_domain(std::isfinite(dimension_ratio) && dimension_ratio > 2.0, "a dimension ratio must be over 2");
}

}  // namespace

IronWall iron_wall(Length outside_diameter, Pressure working, const IronDesign& design) {
  require_design(design);
  require(is_positive(outside_diameter), "iron wall: outside diameter must be positive");
  require(is_not_negative(working), "iron wall: working pressure must not be negative");
  IronWall wall;
  wall.net = design.safety_factor * ((working + design.surge) / (2.0 * design.yield)) * outside_diameter;
  wall.calculated = wall.net + design.service_allowance + design.casting_tolerance;
  const Length rounded = std::floor(wall.calculated / design.rounding + 0.5 + kHair) * design.rounding;
  wall.nominal = std::max(rounded, design.least_nominal);
  return wall;
}

Pressure iron_working_pressure(const Barrel& barrel, const IronDesign& design) {
  require_design(design);
  require(is_positive(barrel.outside_diameter), "iron wall: outside diameter must be positive");
  const Length net = barrel.wall - design.service_allowance - design.casting_tolerance;
  const Pressure total = net / barrel.outside_diameter * 2.0 * design.yield / design.safety_factor;
  return std::max(Pressure{}, total - design.surge);
}

Pressure dr_pressure(Pressure stress, double dimension_ratio) {
  require_ratio(dimension_ratio);
  return 2.0 * stress / (dimension_ratio - 1.0);
}

Pressure dr_hoop_stress(Pressure pressure, double dimension_ratio) {
  require_ratio(dimension_ratio);
  return pressure * (dimension_ratio - 1.0) / 2.0;
}

Length dr_wall(Length outside_diameter, double dimension_ratio) {
  require_ratio(dimension_ratio);
  return outside_diameter / dimension_ratio;
}

Pressure round_down(Pressure rating, Pressure step) {
  require(is_positive(step), "round_down: step must be positive");
  return std::floor(rating / step + kHair) * step;
}

std::optional<double> temperature_factor(std::span<const TemperatureFactor> table, Temperature temperature) {
  require(!table.empty(), "temperature factor: the table is empty");
  const auto not_rising = [](const TemperatureFactor& a, const TemperatureFactor& b) {
    return !(a.temperature < b.temperature);
  };
  require(std::ranges::adjacent_find(table, not_rising) == table.end(),
          "temperature factor: the table must rise in temperature");

  if (temperature <= table.front().temperature) return table.front().factor;
  const auto above = std::ranges::find_if(table, [&](const auto& row) { return temperature <= row.temperature; });
  if (above == table.end()) return {};
  const TemperatureFactor& below = *std::prev(above);
  const double part = (temperature.fahrenheit() - below.temperature.fahrenheit()) /
                      (above->temperature.fahrenheit() - below.temperature.fahrenheit());
  return std::lerp(below.factor, above->factor, part);
}

Velocity free_wave_speed(Pressure bulk_modulus, Density density) {
  require(is_positive(bulk_modulus) && is_positive(density), "wave speed: modulus and density must be positive");
  return sqrt(bulk_modulus / density);
}

Velocity wave_speed(Velocity free_wave_speed, Pressure bulk_modulus, Pressure pipe_modulus,
                    double inside_diameter_to_wall) {
  require(is_positive(bulk_modulus) && is_positive(pipe_modulus), "wave speed: moduli must be positive");
  require(is_not_negative(inside_diameter_to_wall), "wave speed: diameter over wall must not be negative");
  return free_wave_speed / std::sqrt(1.0 + bulk_modulus / pipe_modulus * inside_diameter_to_wall);
}

}  // namespace mainbore::mechanics
