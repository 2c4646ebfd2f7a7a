#include "mainbore/sanitary/dilution.hpp"

#include <stdexcept>

namespace mainbore::sanitary {
namespace {

// The weight of water that the trade's "8.34 x million gallons x mg/L" rests on.
constexpr UnitWeight dosing_weight = 8.34 * units::lbf / units::gallon;

}  // namespace

double water_parts(Concentration stock, Concentration wanted) {
  if (!(wanted > Concentration{}) || wanted > stock) {
    throw std::invalid_argument("dilution: the strength wanted must be positive and at most that of the stock");
  }
  return stock / wanted - 1.0;
}

Dilution dilute(Volume finished, Concentration stock, Concentration wanted) {
  if (finished < Volume{}) throw std::invalid_argument("dilution: the volume must not be negative");
  const Volume stock_volume = finished / (1.0 + water_parts(stock, wanted));
  return {.stock = stock_volume, .water = finished - stock_volume};
}

Concentration mixed_strength(Volume stock, Concentration stock_strength, Volume water) {
  if (stock < Volume{} || water < Volume{} || !(stock + water > Volume{})) {
    throw std::invalid_argument("dilution: volumes must not be negative, nor both zero");
  }
  return Concentration::mg_per_liter(stock_strength.mg_per_liter() * (stock / (stock + water)));
}

Force chlorine_weight(Volume volume, Concentration strength) { return strength.fraction() * (dosing_weight * volume); }

Force dry_product_weight(Volume volume, Concentration wanted, Concentration available) {
  if (!(available > Concentration{}) || available > Concentration::percent(100.0)) {
    throw std::invalid_argument("dilution: the available chlorine must be above 0 and at most 100 %");
  }
  return chlorine_weight(volume, wanted) / available.fraction();
}

Force hypochlorite_weight(Volume volume, Concentration wanted, Concentration hypochlorite) {
  constexpr double chlorine_mass = 70.906;
  constexpr double hypochlorite_mass = 74.442;
  return dry_product_weight(volume, wanted, hypochlorite) * (hypochlorite_mass / chlorine_mass);
}

}  // namespace mainbore::sanitary
