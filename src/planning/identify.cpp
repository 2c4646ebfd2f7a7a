#include "mainbore/identify.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "planning/candidates.hpp"

namespace mainbore {
namespace {

using planning::over;
using std::numbers::pi;
// Walls are tabulated at nominal or at least; castings and extrusions run over. Above this it is worth a word.
constexpr double thick = 1.15;

struct Interval {
  Length low;
  Length high;
};

void require_readings(const PipeReadings& readings) {
  if (!readings.circumference && !readings.od) {
    throw std::invalid_argument("identify: a circumference or an outside diameter is needed");
  }
  for (const auto& length : {readings.circumference, readings.od, readings.wall}) {
    if (length && !(std::isfinite(length->base()) && *length > Length())) {
      throw std::invalid_argument("identify: a length read must be positive");
    }
  }
}

// The diameters that the readings leave open, tape and caliper together.
void measure_diameter(Identification& found, const Rules& rules) {
  const PipeReadings& readings = found.readings;
  std::optional<Interval> range;
  if (readings.circumference) {
    found.od = *readings.circumference / pi;
    const Length tape = rules.measuring.circumference_uncertainty.value / pi;
    range = {found.od - tape, found.od + tape};
  }
  if (readings.od) {
    found.od = *readings.od;
    const Length caliper = rules.measuring.od_uncertainty.value;
    const Interval by_caliper{found.od - caliper, found.od + caliper};
    if (range) {
      range = {std::max(range->low, by_caliper.low), std::min(range->high, by_caliper.high)};
      found.readings_disagree = over(range->low, range->high);
    } else {
      range = by_caliper;
    }
  }
  found.od_low = range->low;
  found.od_high = range->high;
}

bool fits_diameter(const Pipe& pipe, const Identification& found) {
  const planning::LengthRange range = planning::diameter_range(pipe);
  return !over(range.low, found.od_high) && !over(found.od_low, range.high);
}

bool ruled_out(const PipeReadings& readings, const MaterialTests& tests) {
  return readings.magnet && tests.magnet && *readings.magnet != *tests.magnet;
}

std::vector<Misgiving> misgivings(const Pipe& pipe, const PipeReadings& readings, const MaterialTests& tests,
                                  const Rules& rules) {
  std::vector<Misgiving> against;
  if (readings.wall && pipe.wall) {
    const Length gauge = rules.measuring.wall_uncertainty.value;
    if (over(*pipe.wall - pipe.wall_minus, *readings.wall + gauge)) {
      against.push_back(Misgiving::wall_reads_thin);
    } else if (over(*readings.wall - gauge, thick * *pipe.wall)) {
      against.push_back(Misgiving::wall_reads_thick);
    }
  }
  if (readings.installed && !planning::laid_in(*pipe.series, *readings.installed))
    against.push_back(Misgiving::not_laid_then);
  if (readings.sound && tests.sound && *readings.sound != *tests.sound) against.push_back(Misgiving::sounds_otherwise);
  if (readings.joint && std::find(tests.joints.begin(), tests.joints.end(), *readings.joint) == tests.joints.end()) {
    against.push_back(Misgiving::joint_unusual);
  }
  return against;
}

PossiblePipe& group_of(std::vector<PossiblePipe>& fits, const Pipe& pipe) {
  const auto same = std::find_if(fits.begin(), fits.end(), [&](const PossiblePipe& group) {
    return group.series == pipe.series && group.size == pipe.size;
  });
  if (same != fits.end()) return *same;
  PossiblePipe& group = fits.emplace_back();
  group.series = pipe.series;
  group.size = pipe.size;
  return group;
}

void find_fits(Identification& found, const Planner& planner, const FieldTests& tests, const PocketOptions& options) {
  const Rules& rules = planner.rules();
  for (const Pipe& pipe : planner.catalog().pipes()) {
    const MaterialTests& test = tests.of(pipe.series->material);
    if (!pipe.od) {
      auto& series = found.not_judged;
      const bool listed = std::find(series.begin(), series.end(), pipe.series) != series.end();
      if (!listed && !(found.readings.magnet && test.magnet && *found.readings.magnet != *test.magnet)) {
        series.push_back(pipe.series);
      }
      continue;
    }
    if (found.readings_disagree || !fits_diameter(pipe, found) || ruled_out(found.readings, test)) continue;
    PossiblePipe& group = group_of(found.fits, pipe);
    PossibleClass one{&pipe, misgivings(pipe, found.readings, test, rules), pocket_cell(pipe, planner, options)};
    const Length gap = abs(found.od - *pipe.od);
    const bool first = group.classes.empty();
    group.gap = first ? gap : std::min(group.gap, gap);
    group.misgivings = first ? one.against.size() : std::min(group.misgivings, one.against.size());
    group.classes.push_back(std::move(one));
  }
  std::stable_sort(found.fits.begin(), found.fits.end(), [](const PossiblePipe& a, const PossiblePipe& b) {
    return a.misgivings != b.misgivings ? a.misgivings < b.misgivings : a.gap < b.gap;
  });
}

// The pipes on either side of a reading that nothing fits.
void find_nearest(Identification& found, const Catalog& catalog) {
  std::optional<NearMiss> below;
  std::optional<NearMiss> above;
  for (const Pipe& pipe : catalog.pipes()) {
    if (!pipe.od) continue;
    const Length over_it = found.od - (*pipe.od + pipe.od_plus);
    const Length under_it = found.od - (*pipe.od - pipe.od_minus);
    if (over_it > Length() && (!below || over_it < below->gap)) below = {&pipe, over_it};
    if (under_it < Length() && (!above || under_it > above->gap)) above = {&pipe, under_it};
  }
  if (below) found.nearest.push_back(*below);
  if (above) found.nearest.push_back(*above);
}

// Puts the place under its answer.
void put_answer(NextStep& step, std::string_view answer, std::size_t place) {
  const auto same = std::find_if(step.answers.begin(), step.answers.end(),
                                 [&](const NextAnswer& known) { return known.answer == answer; });
  NextAnswer& entry = same != step.answers.end() ? *same : step.answers.emplace_back();
  entry.answer = answer;
  entry.fits.push_back(place);
}

// A step is worth taking when two pipes would answer it differently.
void keep_if_it_splits(Identification& found, NextStep step) {
  const bool differs = std::any_of(step.answers.begin(), step.answers.end(),
                                   [&](const NextAnswer& answer) { return answer.fits != step.answers.front().fits; });
  if (step.answers.size() > 1 && differs) found.next.push_back(std::move(step));
}

NextStep wall_step(const std::vector<PossiblePipe>& fits, const Rules& rules) {
  NextStep step{NextReading::wall, {}};
  for (std::size_t i = 0; i < fits.size(); ++i) {
    NextAnswer answer;
    for (const PossibleClass& one : fits[i].classes) {
      if (!one.pipe->wall) continue;
      // As far as nothing would speak against the class: see misgivings().
      const Length gauge = rules.measuring.wall_uncertainty.value;
      const Measure low(std::max(*one.pipe->wall - one.pipe->wall_minus - gauge, Length()));
      const Measure high(thick * *one.pipe->wall + gauge);
      if (!answer.low || low.base() < answer.low->base()) answer.low = low;
      if (!answer.high || high.base() > answer.high->base()) answer.high = high;
    }
    if (!answer.low) continue;
    answer.fits.push_back(i);
    step.answers.push_back(answer);
  }
  return step;
}

NextStep year_step(const std::vector<PossiblePipe>& fits) {
  NextStep step{NextReading::year, {}};
  for (std::size_t i = 0; i < fits.size(); ++i) {
    const PipeSeries& series = *fits[i].series;
    const auto same = std::find_if(step.answers.begin(), step.answers.end(), [&](const NextAnswer& known) {
      return known.from == series.laid_from && known.to == series.laid_to;
    });
    NextAnswer& answer = same != step.answers.end() ? *same : step.answers.emplace_back();
    answer.from = series.laid_from;
    answer.to = series.laid_to;
    answer.fits.push_back(i);
  }
  return step;
}

void find_next(Identification& found, const Rules& rules, const FieldTests& tests) {
  const PipeReadings& readings = found.readings;
  NextStep magnet{NextReading::magnet, {}};
  NextStep sound{NextReading::sound, {}};
  NextStep joint{NextReading::joint, {}};
  for (std::size_t i = 0; i < found.fits.size(); ++i) {
    const MaterialTests& test = tests.of(found.fits[i].series->material);
    if (test.magnet) put_answer(magnet, *test.magnet ? "sticks" : "does not stick", i);
    if (test.sound) put_answer(sound, name_of(*test.sound), i);
    for (const JointStyle style : test.joints) put_answer(joint, name_of(style), i);
  }
  if (!readings.magnet) keep_if_it_splits(found, std::move(magnet));
  if (!readings.wall) keep_if_it_splits(found, wall_step(found.fits, rules));
  if (!readings.installed) keep_if_it_splits(found, year_step(found.fits));
  if (!readings.joint) keep_if_it_splits(found, std::move(joint));
  if (!readings.sound) keep_if_it_splits(found, std::move(sound));
}

}  // namespace

Identification identify(const PipeReadings& readings, const Planner& planner, const FieldTests& tests,
                        const PocketOptions& options) {
  const Catalog& catalog = planner.catalog();
  const Rules& rules = planner.rules();
  require_readings(readings);
  Identification found;
  found.readings = readings;
  found.water_proved = readings.carries == Carries::water;
  measure_diameter(found, rules);
  PocketOptions with_wall = options;
  with_wall.wall = readings.wall;
  find_fits(found, planner, tests, with_wall);
  if (found.fits.empty() && !found.readings_disagree) find_nearest(found, catalog);
  find_next(found, rules, tests);
  return found;
}

std::vector<std::string_view> identify_warnings(const Identification& found) {
  std::vector<std::string_view> warnings;
  const auto& carries = found.readings.carries;
  if (carries && *carries != Carries::water && *carries != Carries::unknown) {
    warnings.emplace_back("This pipe is said to carry something other than drinking water. Do not tap it.");
  } else if (!found.water_proved) {
    warnings.emplace_back(
        "Nobody has proved that this pipe carries drinking water. Do not tap it until two independent means say so, "
        "such as its record and a signal or sound from a known hydrant or valve.");
  }
  warnings.emplace_back(
      "Size, material and color prove nothing about what is inside: gas, sewage and reclaimed water run in the same "
      "pipes.");
  warnings.emplace_back(
      "This is a list of what the pipe may be, not of what it is. It knows only the pipes tabulated here; what is not "
      "on "
      "it has to be settled by the utility.");
  if (found.readings_disagree) {
    warnings.emplace_back(
        "Tape and caliper disagree by more than both may be wrong. Clean the pipe and measure again.");
  }
  return warnings;
}

}  // namespace mainbore
