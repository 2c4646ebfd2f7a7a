// Mixing chlorine solution from liquid stock or dry product.
//
//   C1 V1 = C2 V2                       stock volume V1 = V2 C2 / C1
//   parts of water per part of stock    C1 / C2 - 1
//   chlorine                            8.34 lb/gal x gallons x mg/L / 1,000,000
//   dry product                         chlorine / fraction available
//   liquid by weight                    chlorine / (fraction of sodium hypochlorite x 70.906 / 74.442)
//
// 70.906 and 74.442 are the molar masses of chlorine and of sodium hypochlorite, by the standard atomic weights of IUPAC: a
// part of the salt does the work of 0.9525 parts of chlorine.
//
//   C1: strength of the stock, available chlorine   C2: strength wanted   V2: volume of finished solution
//
// Sodium hypochlorite is sold at 5 to 15 %, calcium hypochlorite at 65 to 70 % available chlorine; the label decides,
// and liquid weakens in storage.
//
//     dilute(2 * gallon, Concentration::percent(8.25), Concentration::percent(1.0));   // 31 fl oz stock, 225 fl oz
//     water
#pragma once

#include "mainbore/sanitary/concentration.hpp"
#include "mainbore/units.hpp"

namespace mainbore::sanitary {

struct Dilution {
  Volume stock;
  Volume water;
};

// What to measure out for a volume of finished solution.
// Throws std::invalid_argument when the volume is negative or the strengths are not 0 < wanted <= stock.
[[nodiscard]] Dilution dilute(Volume finished, Concentration stock, Concentration wanted);

// Parts of water to one part of stock. Same preconditions on the strengths.
[[nodiscard]] double water_parts(Concentration stock, Concentration wanted);

// The strength a mixture comes out at. Throws std::invalid_argument when either volume is negative or both are zero.
[[nodiscard]] Concentration mixed_strength(Volume stock, Concentration stock_strength, Volume water);

// The chlorine in a volume of water at a strength, at 8.34 lbf a gallon.
[[nodiscard]] Force chlorine_weight(Volume volume, Concentration strength);

// The dry product that brings a volume to a strength. Throws std::invalid_argument when `available` is not in (0, 100
// %].
[[nodiscard]] Force dry_product_weight(Volume volume, Concentration wanted, Concentration available);

// The weight of liquid whose label gives sodium hypochlorite by weight. A label that gives available chlorine by weight
// promises a twentieth more chlorine: this weight is then rather too much. Throws as above.
[[nodiscard]] Force hypochlorite_weight(Volume volume, Concentration wanted, Concentration hypochlorite);

}  // namespace mainbore::sanitary
