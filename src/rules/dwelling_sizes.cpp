#include "rules/dwelling_sizes.hpp"

namespace mainbore::rules {
namespace {

void raise(LeastSize& least, const std::optional<NominalSize>& to, const Basis& by) {
  if (to && (!least.size || *to > *least.size)) least = {to, &by};
}

}  // namespace

std::optional<LeastSizes> least_sizes(const WaterRules& water, int dwellings) {
  std::optional<LeastSizes> sizes;
  for (const SizesByDwellings& row : water.by_dwellings) {
    if (!row.is_for(dwellings)) continue;
    if (!sizes) sizes.emplace();
    raise(sizes->tap, row.tap, row.basis);
    raise(sizes->line, row.line, row.basis);
    raise(sizes->meter, row.meter, row.basis);
  }
  return sizes;
}

}  // namespace mainbore::rules
