// The numbers under the verdict: each doubt as a reading for the trench.
//
// Together they are a promise. Whatever is read, as long as all of it lies inside the numbers, a plan made with those
// readings taps in the same way and holds or stops for nothing that this plan does not say already. What each check
// allows by itself is therefore only where the search begins: warm plastic bears less than cold, and a surge or a
// smaller pipe takes its share too. The plan is made again with every reading at its worst end, and an end that goes too
// far is drawn back toward what the job says of it.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

constexpr double pi = std::numbers::pi;
constexpr Length sixteenth = 0.0625 * units::inch;

// The most the gauge may show when tapping, by each limit alone. A pipe or fitting that is over its rating already is a
// hold of its own: lowering the line for an hour is no cure for it, and raising it is none either.
std::optional<Pressure> pressure_to_read(const Context& context) {
  std::optional<Pressure> least;
  if (!context.pressurised()) return least;
  for (const PressureLimit& limit : context.plan.pressure.limits) {
    const bool for_good = limit.link == PressureLink::pipe || limit.link == PressureLink::corporation_stop ||
                          limit.link == PressureLink::saddle;
    const Pressure most = for_good ? std::max(limit.limit, context.line()) : limit.limit;
    if (!least || most < *least) least = most;
  }
  return least;
}

std::optional<Length> wall_to_read(const Context& context) {
  const Plan& plan = context.plan;
  if (plan.method.kind != Method::direct) return std::nullopt;
  if (plan.engagement && plan.engagement->judged && plan.engagement->wall_needed) {
    return wall_reading_for(*plan.engagement->wall_needed, context.rules);
  }
  return class_wall_reading(plan.main.governing, context.rules);
}

// What a tape may read round the pipe planned for, in whole marks. Where other candidates are so much larger or smaller
// that no pipe at all reads what lies between, theirs are left out: such a reading tells of another pipe.
struct TapeRange {
  Length low;
  Length high;
};

std::optional<TapeRange> tape_to_read(const Context& context) {
  const ResolvedMain& main = context.plan.main;
  std::vector<TapeRange> ranges;
  ranges.reserve(main.candidates.size());
  for (const Pipe* pipe : main.candidates) {
    if (!pipe->od) continue;
    const LengthRange range = tape_range(*pipe, context.rules);
    ranges.push_back({range.low, range.high});
  }
  if (ranges.empty()) return std::nullopt;
  std::sort(ranges.begin(), ranges.end(), [](const TapeRange& a, const TapeRange& b) { return a.low < b.low; });
  TapeRange joined = ranges.front();
  for (const TapeRange& range : ranges) {
    if (range.low > joined.high) {
      if (!over(pi * *main.od, joined.high)) break;
      joined = range;
    }
    joined.high = std::max(joined.high, range.high);
  }
  return TapeRange{std::ceil(joined.low / sixteenth - 1e-6) * sixteenth,
                   std::floor(joined.high / sixteenth + 1e-6) * sixteenth};
}

// One end of one reading, in base units.
struct End {
  void (*enter)(Job&, double) = nullptr;
  double home = 0.0;  // what the job says of it, or the planner takes it to be
  double end = 0.0;   // how far it may go
  double step = 1.0;  // of the gauge
};

void enter_pressure(Job& job, double psi) { job.main.pressure = Pressure::from_base(psi); }
void enter_wall(Job& job, double inches) { job.main.wall = Length::from_base(inches); }
void enter_tape(Job& job, double inches) { job.main.circumference = Length::from_base(inches); }
void enter_temperature(Job& job, double degrees) { job.main.temperature = Temperature::fahrenheit(degrees); }

class Search {
 public:
  Search(const Context& context, const Findings& method) : context_(context), job_(context.plan.job) {
    for (const Findings* findings : {&context.common, &method}) {
      for (const Finding& finding : findings->list()) {
        if (finding.severity >= Severity::hold) said_.push_back(&finding);
      }
    }
  }

  // Draws ends back until all of them together give no other answer. The first stand longest.
  void settle(std::vector<End>& ends) {
    if (holds_good(ends)) return;
    std::vector<End> box;
    for (const End& end : ends) {
      box.push_back(end);
      box.back().end = end.home;
    }
    refused_ = !holds_good(box);
    for (std::size_t i = 0; i < ends.size(); ++i) {
      box[i].end = ends[i].end;
      if (holds_good(box)) continue;
      box[i].end = draw_back(box, i);
    }
    ends = std::move(box);
  }

 private:
  // The tape has two ends of its own, and one of them is entered at a time.
  [[nodiscard]] bool holds_good(const std::vector<End>& ends) {
    int tapes = 0;
    for (const End& end : ends) tapes += end.enter == enter_tape ? 1 : 0;
    for (int entered = 0; entered < std::max(tapes, 1); ++entered) {
      int tape = 0;
      for (const End& end : ends) {
        if (end.enter != enter_tape || tape++ == entered) end.enter(job_, end.end);
      }
      if (!bears_out()) return false;
    }
    return true;
  }

  // Does the job as read now leave the way of tapping as it was?
  [[nodiscard]] bool bears_out() {
    Plan plan;
    plan.job = std::move(job_);
    std::array<std::byte, 16 * 1024> room;
    std::pmr::monotonic_buffer_resource memory(room.data(), room.size());
    Context trial{context_.catalog, context_.rules, plan, memory, PlanDepth::verdict};
    judge_main(trial);
    const bool good = nothing_new(trial.common) && nothing_new(judge_method(trial, context_.plan.method));
    job_ = std::move(plan.job);
    return good;
  }

  [[nodiscard]] bool nothing_new(const Findings& findings) const {
    return std::all_of(findings.list().begin(), findings.list().end(), [&](const Finding& finding) {
      if (finding.severity < Severity::hold) return true;
      if (finding.severity == Severity::stop && !refused_) return false;
      return std::any_of(said_.begin(), said_.end(), [&](const Finding* said) {
        return said->code == finding.code && !over(excess(finding), excess(*said));
      });
    });
  }

  // How far a value lies outside its limit, in base units; of a limit alone, which is asked for, how much it asks.
  static double excess(const Finding& finding) {
    if (!finding.limit) return 0.0;
    const double value = finding.value ? finding.value->base() : 0.0;
    return finding.limit_is_least ? finding.limit->base() - value : value - finding.limit->base();
  }

  // By halves, to the last mark of the gauge that still holds good; to where it began if none does. Marks are counted
  // outward, whichever way that is.
  [[nodiscard]] double draw_back(std::vector<End> box, std::size_t index) {
    End& moved = box[index];
    const double mark = moved.end > moved.home ? moved.step : -moved.step;
    long good = std::lround(std::ceil(moved.home / mark - 1e-6)) - 1;
    long bad = std::lround(std::ceil(moved.end / mark - 1e-6));
    const long home = good;
    while (bad - good > 1) {
      const long middle = good + (bad - good) / 2;
      moved.end = static_cast<double>(middle) * mark;
      (holds_good(box) ? good : bad) = middle;
    }
    return good == home ? moved.home : static_cast<double>(good) * mark;
  }

  const Context& context_;
  Job job_;                           // every trial enters all readings, so that nothing is left in it of another
  std::vector<const Finding*> said_;  // what holds the plan: the same may be said of a reading, but not more of it
  bool refused_ = false;              // what the plan holds for the readings expected settle for the worse: no number mends it
};

}  // namespace

void write_readings(Context& context, const Findings& method) {
  Plan& plan = context.plan;
  const ResolvedMain& main = plan.main;
  const MainFacts& facts = context.job().main;
  const Rules& rules = context.rules;
  if (plan.method.kind == Method::none) return;

  std::vector<End> ends;
  ends.reserve(5);
  const auto add = [&ends](void (*enter)(Job&, double), double home, double end, double step) {
    ends.push_back({enter, home, end, step});
    return ends.size() - 1;
  };
  std::optional<std::size_t> warmest, wall, least_tape, greatest_tape, pressure;
  const TemperatureWindow window = tapping_window(context);
  const double coldest = window.coldest->value.fahrenheit();
  if (is_plastic(main.material) && plan.method.kind != Method::sleeve) {
    const double limit = window.warmest->value.fahrenheit();
    const double home = facts.temperature.value_or(temperature_assumed).fahrenheit();
    warmest = add(enter_temperature, std::clamp(home, coldest, limit), limit, 1.0);
  }
  if (const auto limit = wall_to_read(context)) {
    wall = add(enter_wall, std::max(main.wall_nominal.value_or(*limit), *limit).base(), limit->base(), 0.01);
  }
  if (const auto tape = tape_to_read(context)) {
    const Length expected = facts.circumference.value_or(pi * *main.od);
    const double home = std::clamp(std::round(expected / sixteenth) * sixteenth, tape->low, tape->high).base();
    least_tape = add(enter_tape, home, tape->low.base(), sixteenth.base());
    greatest_tape = add(enter_tape, home, tape->high.base(), sixteenth.base());
  }
  if (const auto limit = pressure_to_read(context)) {
    pressure = add(enter_pressure, std::min(context.line(), *limit).base(), limit->base(), 1.0);
  }
  Search(context, method).settle(ends);

  std::vector<Reading>& readings = plan.readings;
  const auto length = [&ends](std::size_t index) { return Length::from_base(ends[index].end); };
  if (pressure) {
    readings.push_back({ReadingId::line_pressure, std::nullopt, Measure(Pressure::from_base(ends[*pressure].end))});
  }
  if (wall) readings.push_back({ReadingId::wall, Measure(length(*wall)), std::nullopt});
  if (least_tape) {
    readings.push_back({ReadingId::circumference, Measure(length(*least_tape), Kind::tape),
                        Measure(length(*greatest_tape), Kind::tape)});
  }
  if (warmest) {
    readings.push_back({ReadingId::pipe_temperature, Measure(Temperature::fahrenheit(coldest)),
                        Measure(Temperature::fahrenheit(ends[*warmest].end))});
  }
  for (const Clearance& clearance : rules.clearances) {
    if (clearance.what != NearbyThing::joint || !(clearance.least.value > Length())) continue;
    readings.push_back({ReadingId::joint_distance, Measure(clearance.least.value, Kind::length), std::nullopt});
  }
}

}  // namespace mainbore::planning
