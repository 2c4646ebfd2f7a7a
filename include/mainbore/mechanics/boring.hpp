// Forces and travel of drilling and tapping a main.
//
// Push of the line on the bar      F = p pi/4 d^2
// Point of a twist drill           (d/2) / tan(angle/2)
// Stroke from first touch to full-diameter breakthrough, bore radius Ri, drill radius r:
//     t + [ Ri - sqrt(Ri^2 - r^2) ] + point length + clearance
//
// Drilling has two published methods. They differ by up to 1.6 in thrust and neither is for a dull drill in an old
// main, so they are given as a range:
//     Machinery's Handbook 31st ed. (after Shaw and Oxford), inch:   T = 2 Kd Ff FT B W + Kd D^2 J W        lbf
//                                                                    M = Kd Ff FM A W                       lbf in
//         FT = D^0.8, FM = D^1.8, Ff = f^0.8 (fitted: they give the printed tables); Kd work material,
//         W wear (1.0 sharp), A B J by chisel edge
//     Cast-iron cutting handbook, metric:                            T = 570 K D f^0.85                     N
//                                                                    M = K D^2 (0.630 + 16.84 f)/100        N m
//         K material, 1.00 for iron of 210 MPa and 177 HB
// Tapping torque has two as well, which differ five- to sixfold: size a handle for the upper.
//     M = kc p^2 d / 8                                  kc: cutting force per unit area
//     M = tan(half angle) kc k (D - d)^2 (D + 2 d) / 24 k: lubrication and wear factor, D major, d drilled hole
// All are for twist drills and straight taps in sound metal; pipe taps cut full height over many teeth and are harder
// to drive. Nothing is published for plastics.
//
//     bar_push(90.0 * units::psi, 1.0 * units::inch)                                        // 70.7 lbf
//     drill_point_length(0.875 * units::inch, Angle::degrees(118))                          // 0.263 in
#pragma once

#include <optional>

#include "mainbore/mechanics/angle.hpp"
#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/mechanics/taper_thread.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

// Line pressure on the end of a round bar: the push of the water on a boring or insertion bar.
Force bar_push(Pressure line, Length bar_diameter);

// Throws std::domain_error unless 0 < point angle <= 180 degrees.
Length drill_point_length(Length drill_diameter, Angle point_angle);

// No value where the drill is wider than the bore, the clearance negative, or the barrel not one (engagement.hpp).
// Throws as drill_point_length() does.
std::optional<Length> drill_stroke(const Barrel& barrel, Length drill_diameter, Angle point_angle, Length clearance);

// Travel of the bar from fully drawn back: setback (tool tip to pipe) plus the deeper of the drill's stroke and the
// depth to which the tip of a combined drill and tap must go (tap tip depth + drill ahead of the tap, makeup.hpp).
Length bar_travel(Length setback, Length drill_stroke, Length tool_depth);

// Chisel edge of a drill as the handbook method sees it.
struct DrillPoint {
  double torque_factor = 1.085;  // A
  double thrust_factor = 1.355;  // B
  double chisel_factor = 0.030;  // J
};
inline constexpr DrillPoint standard_point{1.085, 1.355, 0.030};  // chisel edge 0.18 of the diameter
inline constexpr DrillPoint split_point{1.000, 1.100, 0.001};     // chisel edge 0.03 of the diameter

struct DrillLoad {
  Force thrust;
  Torque torque;
};
struct DrillLoadRange {
  DrillLoad low;
  DrillLoad high;
};

// Drill and feed per turn. Both must be positive and finite, or the functions below throw std::invalid_argument.
struct DrillCut {
  Length diameter;
  Length feed;  // per revolution
};

// Machinery's Handbook method; work_factor is Kd, wear is W. Throws std::invalid_argument too unless both are positive.
DrillLoad handbook_drill_load(const DrillCut& cut, double work_factor, double wear, const DrillPoint& point);

// Cast-iron method; material_factor is K, to be positive.
DrillLoad cast_iron_drill_load(const DrillCut& cut, double material_factor);

// The lesser and greater of the two methods, thrust and torque apart.
DrillLoadRange drill_load_range(const DrillLoad& one, const DrillLoad& other);

struct TorqueRange {
  Torque low;
  Torque high;
};

// M = kc p^2 d / 8, d the major diameter of the thread.
Torque simple_tapping_torque(Pressure cutting_force, const ThreadForm& thread);

// M = tan(half angle) kc k (D - d)^2 (D + 2d) / 24, D the major diameter at gauge. Zero where the hole is as wide as
// that.
Torque full_tapping_torque(Pressure cutting_force, double friction_factor, const TaperThread& thread,
                           Length hole_diameter);

// Both, each with the cutting force that belongs to it: the two methods tabulate different ones.
TorqueRange tapping_torque_range(const TaperThread& thread, Length hole_diameter, Pressure simple_cutting_force,
                                 Pressure full_cutting_force, double friction_factor);

}  // namespace mainbore::mechanics
