// How far a tap keeps from a thing.
#include <algorithm>
#include <array>

#include "mainbore/rules.hpp"

namespace mainbore {

const Clearance* clearance_from(const Rules& rules, NearbyThing what) {
  const auto& all = rules.place.clearances;
  const auto of = [&](NearbyThing thing) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Clearance& c) { return c.what == thing; });
    return found == all.end() ? nullptr : &*found;
  };
  const Clearance* greatest = of(what);
  if (what != NearbyThing::joint) return greatest;
  const bool own_joint = greatest != nullptr && greatest->least.basis.utility;
  for (const NearbyThing end : {NearbyThing::bell, NearbyThing::plain_end}) {
    const Clearance* const one = of(end);
    if (one == nullptr || (own_joint && !one->least.basis.utility)) continue;
    if (greatest == nullptr || one->least.value > greatest->least.value) greatest = one;
  }
  return greatest;
}

}  // namespace mainbore
