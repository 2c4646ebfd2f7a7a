#include "mainbore/mechanics/boring.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "circle.hpp"
#include "precondition.hpp"

namespace mainbore::mechanics {
namespace {

using std::numbers::pi;

void require_cut(const DrillCut& cut, bool factors_positive) {
  require(is_positive(cut.diameter) && is_positive(cut.feed), "drill load: diameter and feed must be positive");
  require(factors_positive, "drill load: factors must be positive");
}

}  // namespace

Force bar_push(Pressure line, Length bar_diameter) { return line * (pi / 4.0 * (bar_diameter * bar_diameter)); }

Length drill_point_length(Length drill_diameter, Angle point_angle) {
  const double half = point_angle.radians() / 2.0;
  require_domain(half > 0.0 && half <= pi / 2.0, "a drill's point angle must be over 0 and not over 180 degrees");
  return drill_diameter / 2.0 * (std::cos(half) / std::sin(half));
}

std::optional<Length> drill_stroke(const Barrel& barrel, Length drill_diameter, Angle point_angle, Length clearance) {
  const Length point = drill_point_length(drill_diameter, point_angle);
  if (!is_barrel(barrel) || !is_positive(drill_diameter) || !is_not_negative(clearance) ||
      drill_diameter > barrel.inside_diameter()) {
    return {};
  }
  const Length inner_drop = chord_drop(barrel.inside_diameter() / 2.0, drill_diameter / 2.0);
  return barrel.wall + inner_drop + point + clearance;
}

Length bar_travel(Length setback, Length drill_stroke, Length tool_depth) {
  return setback + std::max(drill_stroke, tool_depth);
}

DrillLoad handbook_drill_load(const DrillCut& cut, double work_factor, double wear, const DrillPoint& point) {
  require_cut(cut, is_positive(work_factor) && is_positive(wear));
  const double d = cut.diameter / units::inch;
  const double f = cut.feed / units::inch;
  const double feed_factor = std::pow(f, 0.8);
  const double thrust = 2.0 * work_factor * feed_factor * std::pow(d, 0.8) * point.thrust_factor * wear +
                        work_factor * d * d * point.chisel_factor * wear;
  const double torque = work_factor * feed_factor * std::pow(d, 1.8) * point.torque_factor * wear;
  return {thrust * units::lbf, torque * units::in_lbf};
}

DrillLoad cast_iron_drill_load(const DrillCut& cut, double material_factor) {
  require_cut(cut, is_positive(material_factor));
  const double d = cut.diameter / units::mm;
  const double f = cut.feed / units::mm;
  return {570.0 * material_factor * d * std::pow(f, 0.85) * units::newton,
          material_factor * d * d * (0.630 + 16.84 * f) / 100.0 * units::newton_meter};
}

DrillLoadRange drill_load_range(const DrillLoad& one, const DrillLoad& other) {
  return {{std::min(one.thrust, other.thrust), std::min(one.torque, other.torque)},
          {std::max(one.thrust, other.thrust), std::max(one.torque, other.torque)}};
}

Torque simple_tapping_torque(Pressure cutting_force, const ThreadForm& thread) {
  require(is_positive(thread.threads_per_inch), "tapping torque: threads per inch must be positive");
  return cutting_force * (thread.pitch() * thread.pitch()) * thread.major / 8.0;
}

Torque full_tapping_torque(Pressure cutting_force, double friction_factor, const TaperThread& thread,
                           Length hole_diameter) {
  const Length depth = std::max(Length{}, thread.major_at_gauge() - hole_diameter);
  return thread.flank_tangent * friction_factor * cutting_force * (depth * depth) *
         (thread.major_at_gauge() + 2.0 * hole_diameter) / 24.0;
}

TorqueRange tapping_torque_range(const TaperThread& thread, Length hole_diameter, Pressure simple_cutting_force,
                                 Pressure full_cutting_force, double friction_factor) {
  const Torque simple = simple_tapping_torque(simple_cutting_force, thread);
  const Torque full = full_tapping_torque(full_cutting_force, friction_factor, thread, hole_diameter);
  return {std::min(simple, full), std::max(simple, full)};
}

}  // namespace mainbore::mechanics
