#include "mainbore/what_if.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <iterator>
#include <stdexcept>
#include <utility>

#include "planning/checks.hpp"

namespace mainbore {
namespace {

// Trade sizes of services, from one to the next.
constexpr std::array service_sizes = {0.625, 0.75, 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0};

// One number of the job: how it is read, set and moved.
struct Fact {
  std::string path;
  std::string_view name;
  bool given = false;
  FactValue value;
  std::function<void(Job&, const FactValue&)> set;
  // Readings are value_at(k) for whole k from `least` to `greatest`.
  std::function<FactValue(long)> value_at;
  long least = 0;
  long greatest = 0;
  double position = 0.0;  // of `value` among them, not always whole
};

// The step of a gauge, in base units, and the reading that is step 0.
struct Gauge {
  double step = 1.0;
  double zero = 0.0;
};

Gauge gauge_of(Kind kind, UnitSystem system) {
  const bool us = system == UnitSystem::us;
  switch (kind) {
    case Kind::pressure:
      return {us ? 1.0 : 5.0 * units::kpa.base(), 0.0};
    case Kind::length:
      return {us ? 0.01 : 0.2 * units::mm.base(), 0.0};
    case Kind::tape:
      return {us ? 0.0625 : units::mm.base(), 0.0};
    case Kind::temperature:
      return us ? Gauge{1.0, 0.0} : Gauge{0.9, 32.0};
    default:
      return {us ? 1.0 : 20.0 * units::mm.base(), 0.0};
  }
}

// A gauge's readings from `least` to `greatest`, both in base units. Rounded to 12 digits, as what a user types is, so
// that 24 steps of an inch are the same 24 in.
Fact gauged(std::string path, std::string_view name, bool given, Measure value, double least, double greatest,
            UnitSystem system) {
  const Gauge gauge = gauge_of(value.kind(), system);
  Fact fact;
  fact.path = std::move(path);
  fact.name = name;
  fact.given = given;
  fact.value = value;
  fact.value_at = [gauge, kind = value.kind()](long k) -> FactValue {
    return Measure(std::round((gauge.zero + gauge.step * static_cast<double>(k)) * 1e9) / 1e9, kind);
  };
  fact.position = (value.base() - gauge.zero) / gauge.step;
  const double nearest = std::round(fact.position);
  if (std::fabs(fact.position - nearest) < 1e-6) fact.position = nearest;
  fact.least = std::lround(std::ceil((least - gauge.zero) / gauge.step - 1e-6));
  fact.greatest = std::lround(std::floor((greatest - gauge.zero) / gauge.step + 1e-6));
  return fact;
}

Measure measure_of(const FactValue& value) {
  const auto* measure = std::get_if<Measure>(&value);
  if (measure == nullptr) throw std::invalid_argument("what_if: this fact is set to a measure");
  return *measure;
}

std::string nearby_path(std::size_t index) { return "nearby[" + std::to_string(index) + "].along"; }

// A joint the job does not list, on the side where it can be moved without meeting another.
void set_new_joint(Job& job, Length along) {
  Nearby joint;
  joint.what = NearbyThing::joint;
  joint.along = along;
  if (!job.nearby) job.nearby.emplace();
  job.nearby->push_back(joint);
}

Fact service_size_fact(NominalSize asked) {
  std::vector<NominalSize> sizes;
  for (const double size : service_sizes) sizes.push_back(NominalSize::inches(size));
  if (std::find(sizes.begin(), sizes.end(), asked) == sizes.end()) sizes.push_back(asked);
  std::sort(sizes.begin(), sizes.end());
  Fact fact;
  fact.path = "service.size";
  fact.name = "service size";
  fact.given = true;
  fact.value = asked;
  fact.position = static_cast<double>(std::find(sizes.begin(), sizes.end(), asked) - sizes.begin());
  fact.greatest = static_cast<long>(sizes.size()) - 1;
  fact.value_at = [sizes](long k) -> FactValue { return sizes[static_cast<std::size_t>(k)]; };
  return fact;
}

class Search {
 public:
  Search(const Job& job, const Planner& planner) : job_(job), planner_(planner) {}

  WhatIf operator()(const Fact& fact) const {
    WhatIf result;
    result.path = fact.path;
    result.name = fact.name;
    result.given = fact.given;
    result.value = fact.value;
    result.least = fact.value_at(fact.least);
    result.greatest = fact.value_at(fact.greatest);
    result.at = outcome(fact, fact.value);
    result.down = bounds(fact, result, -1);
    result.up = bounds(fact, result, +1);
    return result;
  }

 private:
  [[nodiscard]] Outcome outcome(const Fact& fact, const FactValue& value) const {
    return outcome_of(planner_.plan(with_fact(job_, fact.path, value)));
  }

  // The reading `steps` beyond the value in the given direction; 0 is the value itself.
  static FactValue reading(const Fact& fact, int direction, long steps) {
    if (steps == 0) return fact.value;
    const double start = direction > 0 ? std::floor(fact.position) : std::ceil(fact.position);
    return fact.value_at(std::lround(start) + direction * steps);
  }

  // Walks outward from the value until the verdict is another one or the range ends.
  [[nodiscard]] std::vector<Bound> bounds(const Fact& fact, const WhatIf& from, int direction) const {
    const double room = direction > 0 ? static_cast<double>(fact.greatest) - std::floor(fact.position)
                                      : std::ceil(fact.position) - static_cast<double>(fact.least);
    const long last = std::lround(room);
    const long stride = std::max<long>(1, last / 16);
    std::vector<Bound> found;
    Outcome here = from.at;
    for (long at = 0; at < last;) {
      const long next = std::min(last, at < 16 ? at + 1 : at + std::min(stride, at));
      const Outcome there = outcome(fact, reading(fact, direction, next));
      if (there == here) {
        at = next;
        continue;
      }
      const auto [edge, then] = bisect(fact, direction, at, here, next, there);
      const bool first = found.empty();
      const bool verdict_moves = then.verdict != from.at.verdict;
      if (first || verdict_moves) {
        found.push_back(bound(from.at, then, reading(fact, direction, edge - 1), reading(fact, direction, edge)));
      }
      if (verdict_moves) break;
      at = edge;
      here = then;
    }
    return found;
  }

  // Of the readings from `same` (which gives `here`) to `other` (which does not): the first that differs from the one
  // before it, given that one reading divides the two.
  [[nodiscard]] std::pair<long, Outcome> bisect(const Fact& fact, int direction, long same, const Outcome& here,
                                                long other, Outcome there) const {
    while (other - same > 1) {
      const long middle = same + (other - same) / 2;
      Outcome between = outcome(fact, reading(fact, direction, middle));
      if (between == here) {
        same = middle;
      } else {
        other = middle;
        there = std::move(between);
      }
    }
    return {other, std::move(there)};
  }

  static Bound bound(const Outcome& before, const Outcome& after, FactValue holds_to, FactValue changes_at) {
    Bound result;
    result.holds_to = holds_to;
    result.changes_at = changes_at;
    result.then = after;
    std::set_difference(after.hindrances.begin(), after.hindrances.end(), before.hindrances.begin(),
                        before.hindrances.end(), std::back_inserter(result.arrives));
    // What stops a job keeps the later checks from being made: their holds have not been cleared.
    if (after.verdict != Verdict::no_go) {
      std::set_difference(before.hindrances.begin(), before.hindrances.end(), after.hindrances.begin(),
                          after.hindrances.end(), std::back_inserter(result.leaves));
    }
    if (after.verdict != before.verdict) {
      result.effect = after.verdict < before.verdict ? Effect::better : Effect::worse;
    } else if (result.arrives.empty() != result.leaves.empty()) {
      result.effect = result.arrives.empty() ? Effect::better : Effect::worse;
    }
    return result;
  }

  const Job& job_;
  const Planner& planner_;
};

std::vector<Fact> main_facts(const Plan& plan, const Rules& rules, UnitSystem system) {
  const Job& job = plan.job;
  const MainFacts& main = job.main;
  std::vector<Fact> facts;
  const auto add = [&](std::string path, std::string_view name, bool given, Measure value, double least, double most) {
    facts.push_back(gauged(std::move(path), name, given, value, std::min(least, value.base()),
                           std::max(most, value.base()), system));
  };
  const double highest = std::max(400.0, 2.0 * main.pressure->base());
  add("main.pressure", "line pressure", true, *main.pressure, 1.0, highest);
  if (main.od) add("main.od", "outside diameter", true, *main.od, 0.9 * main.od->base(), 1.1 * main.od->base());
  if (main.circumference) {
    const double tape = main.circumference->base();
    add("main.circumference", "circumference", true, Measure(*main.circumference, Kind::tape), 0.9 * tape, 1.1 * tape);
  }
  // Assumed: as tabulated, which is what the gauge should find.
  if (const auto wall = main.wall ? main.wall : plan.main.wall_nominal) {
    add("main.wall", "wall at the tap", main.wall.has_value(), *wall, 0.01, 2.0 * wall->base());
  }
  if (is_plastic(plan.main.material)) {
    const Temperature warm = main.temperature.value_or(planning::temperature_assumed);
    add("main.temperature", "temperature of the pipe", main.temperature.has_value(), warm, 20.0, 150.0);
  }
  const Pressure surge = main.surge.value_or(rules.pressure.surge_assumed.value);
  add("main.surge", "surge over the line pressure", main.surge.has_value(), surge, 0.0, 400.0);
  return facts;
}

std::vector<Fact> nearby_facts(const Job& job, UnitSystem system) {
  constexpr double reach = 240.0;  // in: beyond what any clearance asks
  std::vector<Fact> facts;
  bool joint_listed = false;
  if (job.nearby) {
    for (std::size_t i = 0; i < job.nearby->size(); ++i) {
      const Nearby& thing = (*job.nearby)[i];
      joint_listed |= is_joint(thing.what);
      const double along = thing.along.base();
      // Toward the tap and away from it, on its own side.
      facts.push_back(gauged(nearby_path(i), nearby_names[static_cast<std::size_t>(thing.what)], true,
                             Measure(thing.along, Kind::distance), along < 0 ? std::min(-reach, along) : 0.0,
                             along < 0 ? 0.0 : std::max(reach, along), system));
    }
  }
  if (!joint_listed) {
    facts.push_back(gauged("nearby", "nearest joint", false, Measure(Length::from_base(reach), Kind::distance), 0.0,
                           reach, system));
  }
  return facts;
}

std::vector<Fact> service_facts(const Plan& plan, const Rules& rules, UnitSystem system) {
  const ServiceFacts& service = plan.job.service;
  std::vector<Fact> facts;
  facts.push_back(service_size_fact(*service.size));
  const auto rating = [&](std::string path, std::string_view name, const std::optional<Pressure>& given,
                          Pressure rule) {
    const Pressure value = given.value_or(rule);
    facts.push_back(
        gauged(std::move(path), name, given.has_value(), value, 1.0, std::max(400.0, value.base()), system));
  };
  if (plan.method.kind != Method::sleeve) {
    rating("service.stop_rating", "rating of the corporation stop", service.stop_rating,
           rules.pressure.stop_rating.value);
  }
  if (plan.method.kind != Method::direct) {
    rating("service.saddle_rating", "rating of the saddle or sleeve", service.saddle_rating,
           rules.pressure.saddle_rating.value);
  }
  return facts;
}

}  // namespace

Outcome outcome_of(const Plan& plan) {
  Outcome outcome{plan.verdict, plan.method.kind, plan.method.count, std::nullopt, {}};
  if (plan.method.count > 1) outcome.tap = plan.method.tap;
  for (const Finding& finding : plan.findings) {
    if (finding.severity >= Severity::hold) outcome.hindrances.push_back(finding.code);
  }
  std::sort(outcome.hindrances.begin(), outcome.hindrances.end());
  outcome.hindrances.erase(std::unique(outcome.hindrances.begin(), outcome.hindrances.end()), outcome.hindrances.end());
  return outcome;
}

Job with_fact(Job job, std::string_view path, const FactValue& value) {
  if (path == "service.size") {
    const auto* size = std::get_if<NominalSize>(&value);
    if (size == nullptr) throw std::invalid_argument("what_if: the service's size is a nominal size");
    job.service.size = *size;
    return job;
  }
  const Measure measure = measure_of(value);
  const Pressure pressure = Pressure::from_base(measure.base());
  const Length length = Length::from_base(measure.base());
  if (path == "main.pressure") job.main.pressure = pressure;
  else if (path == "main.surge") job.main.surge = pressure;
  else if (path == "main.wall") job.main.wall = length;
  else if (path == "main.od") job.main.od = length;
  else if (path == "main.circumference") job.main.circumference = length;
  else if (path == "main.temperature") job.main.temperature = Temperature::fahrenheit(measure.base());
  else if (path == "service.stop_rating") job.service.stop_rating = pressure;
  else if (path == "service.saddle_rating") job.service.saddle_rating = pressure;
  else if (path == "nearby") set_new_joint(job, length);
  else {
    const std::size_t count = job.nearby ? job.nearby->size() : 0;
    for (std::size_t i = 0; i < count; ++i) {
      if (path == nearby_path(i)) {
        (*job.nearby)[i].along = length;
        return job;
      }
    }
    throw std::invalid_argument("what_if: no such fact");
  }
  return job;
}

std::vector<WhatIf> what_if(const Job& job, const Planner& planner, UnitSystem system) {
  const Rules& rules = planner.rules();
  const Plan base = planner.plan(job);
  const Search search(job, planner);
  std::vector<WhatIf> result;
  for (const auto& facts :
       {main_facts(base, rules, system), nearby_facts(job, system), service_facts(base, rules, system)}) {
    for (const Fact& fact : facts) result.push_back(search(fact));
  }
  return result;
}

}  // namespace mainbore
