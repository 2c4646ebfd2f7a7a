// Published tables of tests/reference as the library takes them.
#pragma once

#include <string>
#include <vector>

#include "mainbore/hydraulics/demand.hpp"
#include "mainbore/hydraulics/minor_loss.hpp"
#include "mainbore/hydraulics/water.hpp"
#include "support/reference_table.hpp"

namespace mainbore::test {

inline constexpr UnitWeight trade_weight = 0.433 * units::psi / units::foot;  // of water, as the trade rounds it
inline constexpr KinematicViscosity ft2_per_s = units::foot * units::foot / units::second;

inline std::vector<hydraulics::DemandPoint> demand_curve(const std::string& column) {
  std::vector<hydraulics::DemandPoint> curve;
  const ReferenceTable table("hydraulics_demand_curve.csv");
  for (const auto& row : table.rows()) {
    if (row.has(column)) curve.push_back({row.number("wsfu"), row.number(column) * units::gpm});
  }
  return curve;
}

// `size` as the table writes it: "5/8", "1-1/2".
inline std::vector<hydraulics::MeterPoint> meter_table(const std::string& size) {
  std::vector<hydraulics::MeterPoint> points;
  const ReferenceTable table("hydraulics_meter_losses.csv");
  for (const auto& row : table.rows()) {
    if (row.has("psi_" + size)) {
      points.push_back({row.number("gpm") * units::gpm, row.number("psi_" + size) * units::psi});
    }
  }
  return points;
}

inline std::vector<hydraulics::WaterPoint> water_table() {
  std::vector<hydraulics::WaterPoint> points;
  const ReferenceTable table("hydraulics_water_properties.csv");
  for (const auto& row : table.rows()) {
    points.push_back({Temperature::fahrenheit(row.number("degF")),
                      {.weight = row.number("weight_lbf_ft3") * units::lbf_per_ft3,
                       .viscosity = row.number("nu_1e-5_ft2_s") * 1e-5 * (units::foot * units::foot / units::second)}});
  }
  return points;
}

// One unit in the last digit of a printed number: 0.1 for "6.3", 1 for "724".
inline double last_digit(const std::string& printed) {
  const auto point = printed.find('.');
  double digit = 1.0;
  if (point != std::string::npos) {
    for (std::size_t i = point + 1; i < printed.size(); ++i) digit /= 10.0;
  }
  return digit;
}

}  // namespace mainbore::test
