// The pressure a pipe wall is rated for, and the surge a stopped flow adds.
//
// Ductile iron, AWWA C150/A21.50, internal pressure:
//     t_net        = SF (Pw + Ps) OD / (2 S)            SF 2.0, Ps 100 psi of surge, S 42,000 psi yield
//     t_calculated = t_net + service allowance (0.08 in) + casting tolerance (0.05 to 0.09 in by size)
//     t_nominal    = t_calculated to the nearest 0.01 in, not below the least wall cast (0.25 in for 3 to 8 in)
// The two allowances are recalled, not read in the standard; with them the formula gives all 57 walls of
// ANSI/AWWA C151/A21.51-17.
// Plastic by dimension ratio DR = OD / least wall (ISO equation; AWWA C900, C906, ASTM D2241):
//     P = 2 sigma F / (DR - 1)       sigma: hydrostatic design stress for a pressure class, short-term strength for a
//                                    quick burst; F: temperature factor
// Surge (Joukowsky), water of bulk modulus K and density rho in a pipe of modulus E:
//     a  = a0 / sqrt(1 + (K/E) (Di/t))       a0 = sqrt(K/rho), 4660 ft/s in the plastic-pipe handbooks; Di/t = DR - 2
//     dp = rho a dv
// The constants are arguments: they belong to the standard's edition, and are data.
//
//     const IronDesign d{42e3 * units::psi, 2.0, 100.0 * units::psi, 0.08 * units::inch, 0.06 * units::inch};
//     iron_wall(13.20 * units::inch, 350.0 * units::psi, d).nominal          // 0.28 in
//     dr_pressure(2000.0 * units::psi, 18.0)                                 // 235.3 psi
#pragma once

#include <optional>
#include <span>

#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/units.hpp"

namespace mainbore::mechanics {

struct IronDesign {
  Pressure yield;              // S
  double safety_factor = 2.0;  // SF
  Pressure surge;              // Ps
  Length service_allowance;
  Length casting_tolerance;
  Length least_nominal;  // floor of the nominal wall; zero: none
  Length rounding = 0.01 * units::inch;
};

struct IronWall {
  Length net;
  Length calculated;
  Length nominal;
};

// Throws std::invalid_argument unless outside diameter, yield, safety factor and rounding are positive and finite and
// the working pressure is finite and not negative.
IronWall iron_wall(Length outside_diameter, Pressure working, const IronDesign& design);

// The working pressure a wall has metal for: 2 S t_net / (SF OD) - Ps, t_net being the wall without the two allowances.
// Give both allowances as zero in `design` for a wall measured on site. Not below zero. Throws as iron_wall() does.
Pressure iron_working_pressure(const Barrel& barrel, const IronDesign& design);

// 2 stress / (DR - 1). Throws std::domain_error unless DR > 2, the ratio of a solid rod.
Pressure dr_pressure(Pressure stress, double dimension_ratio);

// Its inverse: hoop stress under pressure, P (DR - 1)/2. Throws as dr_pressure() does.
Pressure dr_hoop_stress(Pressure pressure, double dimension_ratio);

// OD / DR, the least wall. Printed tables round it to 0.001 in. Throws as dr_pressure() does.
Length dr_wall(Length outside_diameter, double dimension_ratio);

// A rating as printed: down to a multiple of `step` (5 psi in AWWA C900: 235.3 is printed 235). Throws
// std::invalid_argument unless step is positive.
Pressure round_down(Pressure rating, Pressure step);

struct TemperatureFactor {
  Temperature temperature;
  double factor = 1.0;
};

// Temperature factor by straight line between the rows of a published table, in rising order of temperature. Below the
// first row its factor holds: no credit is taken for cold. Above the last row pressure is not permitted: no value. A
// temperature that is not a number has no value. Throws std::invalid_argument if the table is empty or not rising.
std::optional<double> temperature_factor(std::span<const TemperatureFactor> table, Temperature temperature);

// sqrt(K/rho): 4,700 to 4,900 ft/s in water. Throws std::invalid_argument unless both are positive and finite.
Velocity free_wave_speed(Pressure bulk_modulus, Density density);

// Speed of a pressure wave in the pipe. Throws std::invalid_argument if K, E are not positive or Di/t is negative.
Velocity wave_speed(Velocity free_wave_speed, Pressure bulk_modulus, Pressure pipe_modulus,
                    double inside_diameter_to_wall);

// Pressure rise when a flow changes by `change` at once.
constexpr Pressure surge(Density density, Velocity wave_speed, Velocity change) {
  return density * wave_speed * change;
}

}  // namespace mainbore::mechanics
