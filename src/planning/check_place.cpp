#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory_resource>
#include <span>
#include <vector>

#include "planning/calculations.hpp"
#include "planning/checks.hpp"

namespace mainbore {

namespace planning {
namespace {

constexpr ClockPosition mirrored(ClockPosition clock) { return {(720 - clock.minutes) % 720}; }

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

// Positions are tried by the half hour, as crews name them, and by five minutes where no half hour serves.
constexpr std::array<int, 2> clock_steps = {30, 5};
constexpr ClockPosition level{180};  // 3 o'clock

bool within_rules(const Rules& rules, ClockPosition clock) {
  const double elevation = clock.elevation_degrees();
  return !over(rules.place.lowest_elevation.value, elevation) && !over(elevation, rules.place.highest_elevation.value);
}

double degrees_between(ClockPosition a, ClockPosition b) {
  const int minutes = std::abs(a.minutes - b.minutes);
  return 0.5 * std::min(minutes, 720 - minutes);
}

// The nearest tap along the main that this place round it would stand in line with. One whose own place nobody has read
// may be anywhere.
const Nearby* in_line_with(const Job& job, const Rules& rules, Length shift, ClockPosition clock) {
  const Nearby* nearest = nullptr;
  if (!job.nearby) return nearest;
  for (const Nearby& thing : *job.nearby) {
    if (thing.what != NearbyThing::tap && thing.what != NearbyThing::saddle) continue;
    const Length away = abs(thing.along - shift);
    if (over(away, rules.place.stagger_within.value)) continue;
    if (thing.clock && !over(rules.place.stagger_apart.value, degrees_between(*thing.clock, clock))) continue;
    if (nearest == nullptr || away < abs(nearest->along - shift)) nearest = &thing;
  }
  return nearest;
}

// The place that serves nearest to the one wanted, the other side of the crown before all others.
template <class Serves>
std::optional<ClockPosition> clear_clock(ClockPosition wanted, const Serves& serves) {
  if (serves(wanted)) return wanted;
  if (serves(mirrored(wanted))) return mirrored(wanted);
  for (const int step : clock_steps) {
    for (int away = step; away <= 360; away += step) {
      const int from = wanted.minutes / step * step;
      for (const int minutes : {from + away, from + 720 - away}) {
        const ClockPosition clock{minutes % 720};
        if (serves(clock)) return clock;
      }
    }
  }
  return std::nullopt;
}

Finding outside_finding(const Rules& rules, ClockPosition wanted, ClockPosition planned) {
  const double elevation = wanted.elevation_degrees();
  const bool low = over(rules.place.lowest_elevation.value, elevation);
  const Rule<double>& rule = low ? rules.place.lowest_elevation : rules.place.highest_elevation;
  Finding finding;
  finding.code = FindingCode::place_clock;
  finding.severity = Severity::hold;
  FindingBuilder said(finding);
  said.value(Measure(elevation, Kind::angle)).with(planned).basis(rule.basis);
  if (low) said.at_least(Measure(rule.value, Kind::angle));
  else said.at_most(Measure(rule.value, Kind::angle));
  return finding;
}

Finding stagger_finding(const Rules& rules, const Nearby& tap, Length shift, std::optional<ClockPosition> planned) {
  Finding finding;
  finding.code = FindingCode::place_stagger;
  finding.severity = Severity::hold;
  const Length away = abs(tap.along - shift);
  FindingBuilder(finding)
      .value(Measure(away, Kind::distance))
      .at_least(Measure(rules.place.stagger_within.value, Kind::distance))
      .with(Measure(away, Kind::distance), tap.clock ? Detail(*tap.clock) : Detail(),
            planned ? Detail(*planned) : Detail(), Measure(rules.place.stagger_apart.value, Kind::angle))
      .basis(rules.place.stagger_within.basis, rules.place.stagger_apart.basis);
  return finding;
}

void note_what_lies_near(const Context& context, Length shift, Said& said) {
  for (const Nearby& thing : *context.job().nearby) {
    const Measure distance(abs(thing.along - shift), Kind::distance);
    const auto name = nearby_names[static_cast<std::size_t>(thing.what)];
    switch (thing.what) {
      case NearbyThing::repair_clamp:
      case NearbyThing::defect:
        said.findings.add(FindingCode::place_defect_near, Severity::caution).with(name, distance);
        break;
      case NearbyThing::sewer:
      case NearbyThing::gas_line:
      case NearbyThing::electric_line:
        said.findings.add(FindingCode::place_other_line, Severity::caution).with(name, distance);
        break;
      default:
        break;
    }
  }
}

}  // namespace

// Taps near each other are staggered round the pipe, so that no one line along it is weakened twice.
PlaceRound place_round(const Job& job, const Rules& rules, Length shift, Method method, int taps) {
  const auto& asked = job.service.clock;
  PlaceRound place;
  const bool sleeve = method == Method::sleeve;
  const ClockPosition usual = sleeve ? level : rules.place.default_clock.value;
  const ClockPosition wanted = asked.value_or(usual);
  place.because = sleeve ? "a tapping valve and its machine are set level"
                         : "the usual place, half way between crown and springline";
  const auto stands = [&](ClockPosition clock) {
    return within_rules(rules, clock) && in_line_with(job, rules, shift, clock) == nullptr;
  };
  const auto serves = [&](ClockPosition clock) { return stands(clock) && (taps == 1 || stands(mirrored(clock))); };
  // What the rules refuse is no place to look from.
  const ClockPosition from = within_rules(rules, wanted) ? wanted : usual;
  const auto clear = clear_clock(from, serves);
  // Where no place is clear of the taps, one that the rules allow is planned all the same, and held.
  const auto planned =
      clear ? clear : clear_clock(from, [&](ClockPosition clock) { return within_rules(rules, clock); });
  place.clock = planned.value_or(wanted);
  place.other_clock = mirrored(place.clock);
  if (!within_rules(rules, wanted)) place.outside = outside_finding(rules, wanted, place.clock);
  if (!asked && clear) {
    if (*clear != wanted) place.because = "clear of the taps near it";
    return place;
  }
  const Nearby* tap = in_line_with(job, rules, shift, wanted);
  if (tap == nullptr && taps > 1) tap = in_line_with(job, rules, shift, mirrored(wanted));
  if (tap == nullptr && !clear) tap = in_line_with(job, rules, shift, place.clock);
  if (tap != nullptr) place.in_line = stagger_finding(rules, *tap, shift, clear);
  return place;
}

Location check_place(const Context& context, Said& said) {
  const Rules& rules = context.rules;
  Location location;
  if (!context.job().nearby) {
    Length greatest;
    const Basis* basis = nullptr;
    for (const Clearance& clearance : rules.place.clearances) {
      if (clearance.least.value > greatest) {
        greatest = clearance.least.value;
        basis = &clearance.least.basis;
      }
    }
    auto finding = said.findings.add(FindingCode::place_not_looked, Severity::hold);
    finding.at_least(Measure(greatest, Kind::distance));
    if (basis == nullptr) return location;
    finding.basis(*basis);
    said.taken.take(PlanPart::place, Taken::clearance, *basis, Measure(greatest, Kind::distance));
    return location;
  }

  std::pmr::vector<Obstacle> obstacles(&context.memory);
  obstacles.reserve(context.job().nearby->size());
  for (const Nearby& thing : *context.job().nearby) {
    const Clearance* const rule = clearance_from(rules, thing.what);
    if (rule == nullptr) continue;
    obstacles.push_back({&thing, rule});
    said.taken.take(PlanPart::place, Taken::clearance, rule->least.basis, Measure(rule->least.value, Kind::distance));
  }
  if (const Obstacle* obstacle = blocking(obstacles, Length())) {
    const auto name = nearby_names[static_cast<std::size_t>(obstacle->thing->what)];
    if (const auto place = nearest_place(obstacles, rules.place.farthest_shift.value)) {
      location.shift = *place;
      said.findings.add(FindingCode::place_moved, Severity::hold)
          .value(Measure(*place, Kind::distance))
          .at_least(Measure(obstacle->rule->least.value, Kind::distance))
          .with(name, Measure(obstacle->thing->along, Kind::distance))
          .basis(obstacle->rule->least.basis);
    } else {
      said.findings.add(FindingCode::place_no_room, Severity::hold)
          .at_most(Measure(rules.place.farthest_shift.value, Kind::distance))
          .with(Measure(rules.place.farthest_shift.value, Kind::distance), name)
          .basis(obstacle->rule->least.basis, rules.place.farthest_shift.basis);
    }
  }
  if (context.whole()) {
    location.clearings.reserve(obstacles.size());
    for (const Obstacle& obstacle : obstacles) {
      location.clearings.push_back({obstacle.thing->what, obstacle.thing->along,
                                    abs(obstacle.thing->along - location.shift), obstacle.rule->least.value});
      if (!context.calculates()) continue;
      const Clearing& clearing = location.clearings.back();
      said.taken.calculated(
          Worked(PlanPart::place, Formula::distance_kept,
                 {given(Measure(clearing.along, Kind::distance)), plain(location.shift.base(), Kind::distance)},
                 Measure(clearing.kept, Kind::distance), nearby_names[static_cast<std::size_t>(clearing.what)])
              .at_least(figure(obstacle.rule->least, Kind::distance)));
    }
  }
  note_what_lies_near(context, location.shift, said);
  return location;
}

}  // namespace planning
}  // namespace mainbore
