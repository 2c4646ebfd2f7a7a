// One pipe a line in, its losses out, for comparing with independent programs.
//
//   in    bore_in length_ft C roughness_ft K flow_gpm temp_F
//   out   hazen_williams_psi darcy_weisbach_psi minor_psi friction_factor velocity_fps weight_lbf_ft3 viscosity_ft2_s
//
// The two friction losses are without the fittings. A line that does not read ends the program with status 1.
#include <iomanip>
#include <iostream>
#include <sstream>
#include <string>

#include "mainbore/hydraulics/friction.hpp"
#include "mainbore/hydraulics/minor_loss.hpp"
#include "mainbore/hydraulics/pipe.hpp"
#include "unit/hydraulics/tables.hpp"

int main() {
  using namespace mainbore;
  using namespace mainbore::hydraulics;
  const auto table = test::water_table();
  std::cout << std::setprecision(12);
  for (std::string line; std::getline(std::cin, line);) {
    std::istringstream fields(line);
    double bore_in = 0, length_ft = 0, c = 0, roughness_ft = 0, k = 0, flow_gpm = 0, degrees = 0;
    if (!(fields >> bore_in >> length_ft >> c >> roughness_ft >> k >> flow_gpm >> degrees)) return 1;

    const Length bore = bore_in * units::inch;
    const Length length = length_ft * units::foot;
    const Length roughness = roughness_ft * units::foot;
    const Flow flow = flow_gpm * units::gpm;
    const Water water = water_at(Temperature::fahrenheit(degrees), table);
    const Velocity velocity = mean_velocity(flow, bore);

    std::cout << hazen_williams_loss(flow, bore, length, c) / units::psi << ' '
              << darcy_weisbach_loss(flow, bore, length, roughness, water) / units::psi << ' '
              << minor_loss(k, velocity, water.weight) / units::psi << ' '
              << friction_factor(reynolds_number(velocity, bore, water.viscosity), roughness / bore) << ' '
              << velocity / units::ft_per_s << ' ' << water.weight / units::lbf_per_ft3 << ' '
              << water.viscosity / (units::foot * units::foot / units::second) << '\n';
  }
}
