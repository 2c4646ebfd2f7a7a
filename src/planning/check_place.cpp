#include <algorithm>
#include <memory_resource>
#include <span>
#include <vector>

#include "planning/checks.hpp"

namespace mainbore {

double ClockPosition::elevation_degrees() const {
  // Half a degree a minute from the crown, to the invert at 6:00 and back.
  const double from_crown = 0.5 * (minutes <= 360 ? minutes : 720 - minutes);
  return 90.0 - from_crown;
}

std::string ClockPosition::label() const {
  const int hour = minutes / 60 == 0 ? 12 : minutes / 60;
  const int minute = minutes % 60;
  return std::to_string(hour) + (minute < 10 ? ":0" : ":") + std::to_string(minute);
}

namespace planning {
namespace {

constexpr ClockPosition mirrored(ClockPosition clock) { return {(720 - clock.minutes) % 720}; }

const Clearance* clearance_for(const Rules& rules, NearbyThing what) {
  const auto found = std::find_if(rules.clearances.begin(), rules.clearances.end(),
                                  [&](const Clearance& c) { return c.what == what; });
  return found == rules.clearances.end() ? nullptr : &*found;
}

struct Obstacle {
  const Nearby* thing;
  const Clearance* rule;
};

// An obstacle that a place `shift` from the asked one would stand too near to.
const Obstacle* blocking(std::span<const Obstacle> obstacles, Length shift) {
  for (const Obstacle& obstacle : obstacles) {
    if (over(obstacle.rule->least.value, abs(obstacle.thing->along - shift))) return &obstacle;
  }
  return nullptr;
}

// The acceptable place nearest to the asked one. It is the asked place itself or lies just clear of some obstacle.
std::optional<Length> nearest_place(std::span<const Obstacle> obstacles, Length farthest) {
  std::vector<Length> places;
  places.reserve(1 + 2 * obstacles.size());
  places.push_back(Length());
  for (const Obstacle& obstacle : obstacles) {
    places.push_back(obstacle.thing->along - obstacle.rule->least.value);
    places.push_back(obstacle.thing->along + obstacle.rule->least.value);
  }
  std::stable_sort(places.begin(), places.end(), [](Length a, Length b) { return abs(a) < abs(b); });
  for (const Length place : places) {
    if (over(abs(place), farthest)) break;
    if (blocking(obstacles, place) == nullptr) return place;
  }
  return std::nullopt;
}

void choose_clock(Context& context) {
  const Rules& rules = context.rules;
  const auto& asked = context.job().service.clock;
  ClockPosition& clock = context.plan.location.clock;
  clock = asked.value_or(rules.default_clock.value);
  if (!asked) {
    context.assume("service.clock", clock, "the usual place, half way between crown and springline",
                   "say where round the pipe the tap must stand");
    return;
  }
  const double elevation = clock.elevation_degrees();
  const bool low = over(rules.lowest_elevation.value, elevation);
  if (low || over(elevation, rules.highest_elevation.value)) {
    const Rule<double>& rule = low ? rules.lowest_elevation : rules.highest_elevation;
    clock = rules.default_clock.value;
    auto finding = context.common.add(FindingCode::place_clock, Severity::hold)
                        .value(Measure(elevation, Kind::angle))
                        .with(clock)
                        .basis(rule.basis);
    if (low) finding.at_least(Measure(rule.value, Kind::angle));
    else finding.at_most(Measure(rule.value, Kind::angle));
  }
}

// Taps near each other are staggered round the pipe, so that no one line along it is weakened twice.
void stagger(Context& context) {
  const Rules& rules = context.rules;
  Location& location = context.plan.location;
  for (const Nearby& thing : *context.job().nearby) {
    const bool tapped = thing.what == NearbyThing::tap || thing.what == NearbyThing::saddle;
    if (!tapped || !thing.clock || over(abs(thing.along - location.shift), rules.stagger_within.value)) continue;
    if (*thing.clock != location.clock) continue;
    if (!context.job().service.clock) {
      location.clock = mirrored(location.clock);
    } else {
      context.common.add(FindingCode::place_stagger, Severity::caution)
          .with(Measure(abs(thing.along - location.shift), Kind::distance))
          .basis(rules.stagger_within.basis);
    }
    return;
  }
}

void note_what_lies_near(Context& context) {
  for (const Nearby& thing : *context.job().nearby) {
    const Measure distance(abs(thing.along - context.plan.location.shift), Kind::distance);
    const auto name = nearby_names[static_cast<std::size_t>(thing.what)];
    switch (thing.what) {
      case NearbyThing::repair_clamp:
      case NearbyThing::defect:
        context.common.add(FindingCode::place_defect_near, Severity::caution).with(name, distance);
        break;
      case NearbyThing::sewer:
      case NearbyThing::gas_line:
      case NearbyThing::electric_line:
        context.common.add(FindingCode::place_other_line, Severity::caution).with(name, distance);
        break;
      default: break;
    }
  }
}

}  // namespace

void check_place(Context& context) {
  const Rules& rules = context.rules;
  Location& location = context.plan.location;
  choose_clock(context);
  if (!context.job().nearby) {
    Length greatest;
    const Basis* basis = nullptr;
    for (const Clearance& clearance : rules.clearances) {
      if (clearance.least.value > greatest) {
        greatest = clearance.least.value;
        basis = &clearance.least.basis;
      }
    }
    auto finding = context.common.add(FindingCode::place_not_looked, Severity::hold);
    finding.at_least(Measure(greatest, Kind::distance));
    if (basis != nullptr) finding.basis(*basis);
    return;
  }

  std::pmr::vector<Obstacle> obstacles(&context.memory);
  obstacles.reserve(context.job().nearby->size());
  for (const Nearby& thing : *context.job().nearby) {
    if (const Clearance* rule = clearance_for(rules, thing.what)) obstacles.push_back({&thing, rule});
  }
  if (const Obstacle* obstacle = blocking(obstacles, Length())) {
    const auto name = nearby_names[static_cast<std::size_t>(obstacle->thing->what)];
    if (const auto place = nearest_place(obstacles, rules.farthest_shift.value)) {
      location.shift = *place;
      context.common.add(FindingCode::place_moved, Severity::hold)
          .value(Measure(*place, Kind::distance))
          .at_least(Measure(obstacle->rule->least.value, Kind::distance))
          .with(name, Measure(obstacle->thing->along, Kind::distance))
          .basis(obstacle->rule->least.basis);
    } else {
      context.common.add(FindingCode::place_no_room, Severity::hold)
          .at_most(Measure(rules.farthest_shift.value, Kind::distance))
          .with(Measure(rules.farthest_shift.value, Kind::distance), name)
          .basis(obstacle->rule->least.basis, rules.farthest_shift.basis);
    }
  }
  if (context.whole()) {
    location.clearings.reserve(obstacles.size());
    for (const Obstacle& obstacle : obstacles) {
      location.clearings.push_back({obstacle.thing->what, obstacle.thing->along,
                                    abs(obstacle.thing->along - location.shift), obstacle.rule->least.value});
    }
  }
  stagger(context);
  note_what_lies_near(context);
}

}  // namespace planning
}  // namespace mainbore
