#include "mainbore/excavation/pit.hpp"

#include <cmath>
#include <stdexcept>

namespace mainbore::excavation {
namespace {

void require(bool condition, const char* message) {
  if (!condition) throw std::invalid_argument(message);
}

}  // namespace

Pit size_pit(Length main_od, Length cover, const PitRoom& room, double slope) {
  require(main_od > Length{}, "size_pit: the outside diameter must be positive");
  for (const Length each : {cover, room.along, room.machine_side, room.far_side, room.below}) {
    require(each >= Length{}, "size_pit: a length must not be negative");
  }
  require(slope >= 0.0, "size_pit: the slope must not be negative");
  return {.along = room.along,
          .across = room.far_side + main_od + room.machine_side,
          .depth = cover + main_od + room.below,
          .slope = slope};
}

PitTop pit_top(const Pit& pit) {
  const Length spread = 2.0 * pit.slope * pit.depth;
  return {.along = pit.along + spread, .across = pit.across + spread};
}

Volume pit_volume(const Pit& pit) {
  const Length d = pit.depth;
  const double z = pit.slope;
  return pit.along * pit.across * d + z * (d * d * (pit.along + pit.across)) + 4.0 / 3.0 * z * z * (d * d * d);
}

Volume trench_volume(Length length, Length bottom_width, Length depth, double slope) {
  return length * depth * (bottom_width + slope * depth);
}

Volume loose_volume(Volume bank, double swell) { return bank * (1.0 + swell); }

SpoilPile spoil_windrow(Volume loose, Length pile_length, double repose_run) {
  require(loose >= Volume{} && pile_length > Length{} && repose_run > 0.0,
          "spoil_windrow: the volume must not be negative, the length and the repose run must be positive");
  const Length height = sqrt(loose / pile_length / repose_run);
  return {.height = height, .base = 2.0 * repose_run * height};
}

Length occupied_strip(Length top_width, Length setback, const SpoilPile& pile) {
  return top_width / 2.0 + setback + pile.base;
}

}  // namespace mainbore::excavation
