#include "mainbore/hydraulics/friction.hpp"

#include <cmath>
#include <numbers>
#include <stdexcept>

#include "hydraulics/hazen_williams.hpp"
#include "mainbore/hydraulics/minor_loss.hpp"
#include "mainbore/hydraulics/pipe.hpp"

namespace mainbore::hydraulics {
namespace {

void require_pipe(Flow flow, Length bore, Length length, const char* message) {
  if (!(bore > Length{}) || flow < Flow{} || length < Length{}) throw std::invalid_argument(message);
}

void require_turbulence(double reynolds, double relative_roughness, const char* message) {
  if (!(reynolds >= laminar_limit) || !(relative_roughness >= 0.0 && relative_roughness < 1.0))
    throw std::invalid_argument(message);
}

}  // namespace

namespace detail {

double flow_factor(Flow flow, double c) { return 4.52 * std::pow(flow / units::gpm / c, 1.852); }

Flow flow_of_factor(double factor, double c) { return std::pow(factor / 4.52, 1.0 / 1.852) * c * units::gpm; }

double bore_factor(Length bore) { return std::pow(bore / units::inch, 4.8704); }

}  // namespace detail

Pressure hazen_williams_loss(Flow flow, Length bore, Length length, double c) {
  require_pipe(flow, bore, length, "hazen_williams_loss: the bore must be positive, flow and length not negative");
  if (!(c > 0.0)) throw std::invalid_argument("hazen_williams_loss: C must be positive");
  return detail::flow_factor(flow, c) / detail::bore_factor(bore) * (length / units::foot) * units::psi;
}

double reynolds_number(Velocity velocity, Length bore, KinematicViscosity viscosity) {
  return velocity * bore / viscosity;
}

double swamee_jain_factor(double reynolds, double relative_roughness) {
  require_turbulence(reynolds, relative_roughness,
                     "swamee_jain_factor: Re must be 2000 or more and the relative roughness 0 to 1");
  const double root = std::log10(relative_roughness / 3.7 + 5.74 / std::pow(reynolds, 0.9));
  return 0.25 / (root * root);
}

double colebrook_factor(double reynolds, double relative_roughness) {
  require_turbulence(reynolds, relative_roughness,
                     "colebrook_factor: Re must be 2000 or more and the relative roughness 0 to 1");
  // With x = 1/sqrt(f) the equation is x + 2 log10(a + b x) = 0, whose left side rises and bends down in x, so that
  // Newton's method from any start near the root goes to it.
  const double a = relative_roughness / 3.7;
  const double b = 2.51 / reynolds;
  double x = 1.0 / std::sqrt(swamee_jain_factor(reynolds, relative_roughness));
  for (int step = 0; step < 20; ++step) {
    const double argument = a + b * x;
    const double change = (x + 2.0 * std::log10(argument)) / (1.0 + 2.0 * b / (std::numbers::ln10 * argument));
    x -= change;
    if (std::abs(change) <= 1e-13 * x) break;
  }
  return 1.0 / (x * x);
}

double friction_factor(double reynolds, double relative_roughness) {
  if (!(reynolds > 0.0)) throw std::invalid_argument("friction_factor: Re must be positive");
  if (reynolds <= laminar_limit) return 64.0 / reynolds;
  if (reynolds >= turbulent_limit) return colebrook_factor(reynolds, relative_roughness);
  const double laminar_end = 64.0 / laminar_limit;
  const double turbulent_end = colebrook_factor(turbulent_limit, relative_roughness);
  return laminar_end + (reynolds - laminar_limit) / (turbulent_limit - laminar_limit) * (turbulent_end - laminar_end);
}

Pressure darcy_weisbach_loss(Flow flow, Length bore, Length length, Length roughness, const Water& water) {
  require_pipe(flow, bore, length, "darcy_weisbach_loss: the bore must be positive, flow and length not negative");
  if (!(water.viscosity > KinematicViscosity{}) || roughness < Length{}) {
    throw std::invalid_argument("darcy_weisbach_loss: the viscosity must be positive and the roughness not negative");
  }
  if (flow == Flow{}) return {};
  const Velocity velocity = mean_velocity(flow, bore);
  const double f = friction_factor(reynolds_number(velocity, bore, water.viscosity), roughness / bore);
  return minor_loss(loss_coefficient(length, f, bore), velocity, water.weight);
}

}  // namespace mainbore::hydraulics
