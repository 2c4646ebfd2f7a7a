#include "mainbore/hydraulics/open_jet.hpp"

#include <stdexcept>

#include "mainbore/hydraulics/pipe.hpp"
#include "mainbore/hydraulics/water.hpp"

namespace mainbore::hydraulics {
namespace {

void require_coefficient(double coefficient) {
  if (!(coefficient > 0.0 && coefficient <= 1.0)) {
    throw std::invalid_argument("open jet: a coefficient must be above 0 and at most 1");
  }
}

void require_pressure(Pressure pressure) {
  if (!(pressure >= Pressure{})) throw std::invalid_argument("open jet: the pressure must not be negative");
}

}  // namespace

Velocity jet_velocity(Pressure pressure, UnitWeight weight) {
  require_pressure(pressure);
  if (!(weight > UnitWeight{})) throw std::invalid_argument("open jet: the weight of water must be positive");
  return sqrt(2.0 * units::standard_gravity * head_of_pressure(pressure, weight));
}

Flow open_jet_flow(Length bore, Pressure pressure, double discharge_coefficient, UnitWeight weight) {
  require_coefficient(discharge_coefficient);
  return discharge_coefficient * flow_at_velocity(jet_velocity(pressure, weight), bore);
}

Force jet_force(Length bore, Pressure pressure, double discharge_coefficient, double velocity_coefficient) {
  require_pressure(pressure);
  require_coefficient(discharge_coefficient);
  require_coefficient(velocity_coefficient);
  return 2.0 * discharge_coefficient * velocity_coefficient * (bore_area(bore) * pressure);
}

std::optional<Time> time_to_fill(Volume volume, Flow inflow, Flow pumped_out) {
  const Flow gain = inflow - pumped_out;
  if (gain <= Flow{}) return std::nullopt;
  return volume / gain;
}

}  // namespace mainbore::hydraulics
