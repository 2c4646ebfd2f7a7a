#include "mainbore/sanitary/flushing.hpp"

#include <algorithm>
#include <stdexcept>

#include "mainbore/hydraulics/pipe.hpp"

namespace mainbore::sanitary {
namespace {

void require_reaches(std::span<const FlushReach> reaches) {
  if (reaches.empty()) throw std::invalid_argument("flushing: no reach");
  for (const FlushReach& reach : reaches) {
    if (!(reach.bore > Length{}) || reach.length < Length{}) {
      throw std::invalid_argument("flushing: a bore must be positive and a length not negative");
    }
  }
}

}  // namespace

Flushing flushing_at_velocity(std::span<const FlushReach> reaches, Velocity velocity, double changes) {
  require_reaches(reaches);
  const Length widest = std::ranges::max(reaches, {}, &FlushReach::bore).bore;
  return flushing_at_flow(reaches, hydraulics::flow_at_velocity(velocity, widest), changes);
}

Flushing flushing_at_flow(std::span<const FlushReach> reaches, Flow flow, double changes) {
  require_reaches(reaches);
  if (!(flow > Flow{}) || changes < 0.0) {
    throw std::invalid_argument("flushing: the flow must be positive and the number of changes not negative");
  }
  Volume line_volume;
  for (const FlushReach& reach : reaches) line_volume += hydraulics::pipe_volume(reach.bore, reach.length);
  const Volume discharged = changes * line_volume;
  return {.flow = flow, .line_volume = line_volume, .discharged = discharged, .time = discharged / flow};
}

}  // namespace mainbore::sanitary
