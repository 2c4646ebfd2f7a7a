// The sizes that the rules ask of a service for so many dwellings.
#pragma once

#include <optional>

#include "mainbore/rules.hpp"

namespace mainbore::rules {

// The largest of the sizes that rows ask for, and whose row it is.
struct LeastSize {
  std::optional<NominalSize> size;
  const Basis* basis = nullptr;
};

struct LeastSizes {
  LeastSize tap;
  LeastSize line;
  LeastSize meter;
};

// Nothing where no row is for so many.
[[nodiscard]] std::optional<LeastSizes> least_sizes(const WaterRules& water, int dwellings);

}  // namespace mainbore::rules
