// The agent that takes the chlorine out of flushed water before it is let go.
//
//   weight = 8.34 lb/gal x gallons x mg/L / 1,000,000 x r (1 + excess)
//
//   r: milligrams of agent per milligram of chlorine, for the agent as sold and the acidity of the water. Field tables
//   give for water near pH 7 sodium sulfite 1.96, sodium thiosulfate 1.9, ascorbic acid 2.5 and so on.
//
// Field doses often run 10 % over, so that no chlorine passes; say so with `excess` = 0.10.
//
//     dechlorination_weight(100000 * gallon, Concentration::mg_per_liter(1), 1.96) / lbf;   // 1.63
#pragma once

#include "mainbore/sanitary/concentration.hpp"
#include "mainbore/units.hpp"

namespace mainbore::sanitary {

// Throws std::invalid_argument when the volume, the chlorine or the excess is negative, or the ratio not positive.
[[nodiscard]] Force dechlorination_weight(Volume water, Concentration chlorine, double agent_per_chlorine,
                                          double excess = 0.0);

}  // namespace mainbore::sanitary
