#include "mainbore/mechanics/clamp.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "circle.hpp"
#include "precondition.hpp"

namespace mainbore::mechanics {
namespace {

using std::numbers::pi;

void require_ring(const Barrel& barrel) {
  require_domain(is_barrel(barrel), "ring stiffness: the wall must be positive and under half the outside diameter");
}

void require_stud(Length stud_diameter, const NutFactors& factors) {
  require(is_positive(stud_diameter), "stud: diameter must be positive");
  require(is_positive(factors.low) && factors.low <= factors.usual && factors.usual <= factors.high &&
              std::isfinite(factors.high),
          "stud: nut factors must be positive and in rising order");
}

}  // namespace

std::optional<ChainPath> chain_path(Length outside_diameter, Length chain_thickness, const ChainAnchor& anchor) {
  if (!is_positive(outside_diameter) || !is_not_negative(chain_thickness) || !is_not_negative(anchor.offset) ||
      !std::isfinite(anchor.height.base())) {
    return {};
  }
  const Length radius = (outside_diameter + chain_thickness) / 2.0;
  const double reach = std::hypot(anchor.offset / radius, anchor.height / radius);  // d/Rc
  if (!std::isfinite(reach) || reach <= 1.0) return {};

  // Measured from straight up, the anchor stands at psi and the chain touches the pipe gamma beyond it.
  const double psi = std::atan2(anchor.offset.base(), anchor.height.base());
  const double gamma = std::acos(1.0 / reach);
  const double wrap = 2.0 * (pi - psi - gamma);
  if (wrap <= 0.0) return {};

  ChainPath path;
  path.free_leg = radius * std::sqrt((reach - 1.0) * (reach + 1.0));
  path.wrap = Angle::radians(wrap);
  path.leg = Angle::radians(pi / 2.0 - psi - gamma);
  path.length = 2.0 * path.free_leg + radius * wrap;
  return path;
}

Length lowest_anchor(Length outside_diameter, Length chain_thickness, Length offset) {
  require(is_positive(outside_diameter) && is_not_negative(chain_thickness) && is_not_negative(offset),
          "anchor: diameter must be positive, thickness and offset not negative");
  const Length radius = (outside_diameter + chain_thickness) / 2.0;
  return offset < radius ? half_chord(radius, offset) : Length();
}

Force clamp_force(Force tension, Angle leg) { return 2.0 * std::cos(leg.radians()) * tension; }

Force clamp_force_needed(const ClampLoad& load) {
  const Force end_load = load.line * (pi / 4.0 * (load.seal_diameter * load.seal_diameter));
  const Force holding = end_load + load.thrust + load.gasket_factor * load.line * load.gasket_area;
  return std::max(holding, load.seating_stress * load.gasket_area);
}

std::optional<Force> chain_tension_needed(const ClampLoad& load, Angle leg) {
  if (!(std::abs(leg.radians()) < pi / 2.0)) return {};
  return clamp_force_needed(load) / (2.0 * std::cos(leg.radians()));
}

double wrap_tension_ratio(double friction, Angle wrap) { return std::exp(friction * wrap.radians()); }

Pressure contact_pressure(Force tension, Length outside_diameter, Length contact_width) {
  require(is_positive(outside_diameter) && is_positive(contact_width),
          "contact pressure: diameter and width must be positive");
  return tension / (outside_diameter / 2.0 * contact_width);
}

StudTension stud_tension(Torque torque, Length stud_diameter, const NutFactors& factors) {
  require_stud(stud_diameter, factors);
  const Force frictionless = torque / stud_diameter;
  return {frictionless / factors.high, frictionless / factors.usual, frictionless / factors.low};
}

StudTorque stud_torque(Force tension, Length stud_diameter, const NutFactors& factors) {
  require_stud(stud_diameter, factors);
  const Torque at_unity = tension * stud_diameter;
  return {factors.low * at_unity, factors.usual * at_unity, factors.high * at_unity};
}

Pressure stud_stress(Force tension, Length stud_diameter) {
  require(is_positive(stud_diameter), "stud: diameter must be positive");
  return tension / (pi / 4.0 * (stud_diameter * stud_diameter));
}

Force roller_chain_breaking_load(Length pitch) { return 12500.0 * units::psi * (pitch * pitch); }

Pressure ring_stiffness(const Barrel& barrel, Pressure modulus) {
  require_ring(barrel);
  const double radii = barrel.outside_diameter / barrel.wall - 1.0;  // mean diameter over wall
  return 4.47 / (radii * radii * radii) * modulus;
}

double ovality(const Barrel& barrel, Pressure modulus, Force force, Length width) {
  require_ring(barrel);
  require(is_positive(width) && is_positive(modulus), "ovality: width and modulus must be positive");
  const Length deflection = force / width / ring_stiffness(barrel, modulus);
  return deflection / (barrel.outside_diameter - barrel.wall);
}

}  // namespace mainbore::mechanics
