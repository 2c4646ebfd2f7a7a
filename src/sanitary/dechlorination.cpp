#include "mainbore/sanitary/dechlorination.hpp"

#include <stdexcept>

#include "mainbore/sanitary/dilution.hpp"

namespace mainbore::sanitary {

Force dechlorination_weight(Volume water, Concentration chlorine, double agent_per_chlorine, double excess) {
  if (water < Volume{} || chlorine < Concentration{} || excess < 0.0 || !(agent_per_chlorine > 0.0)) {
    throw std::invalid_argument(
        "dechlorination_weight: volume, chlorine and excess must not be negative, the ratio must be positive");
  }
  return agent_per_chlorine * (1.0 + excess) * chlorine_weight(water, chlorine);
}

}  // namespace mainbore::sanitary
