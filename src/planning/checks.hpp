// The stages of planning, and what they share.
//
// Each stage takes values and returns one; what it finds, assumes and counts on goes into the Said it is given. Nothing that
// a stage reads is changed by a later one: plan_job() puts them in order, and a call that comes too early does not compile.
#pragma once

#include <algorithm>
#include <cmath>
#include <memory_resource>
#include <numbers>
#include <optional>
#include <vector>

#include "mainbore/plan.hpp"
#include "mainbore/planner.hpp"
#include "planning/recorder.hpp"
#include "units/tolerance.hpp"

namespace mainbore::planning {

struct LaidLine;
struct PipesOnRecord;

using mainbore::over;

// Of a pipe that nobody has put a thermometer to: plastics are rated at it, and buried mains are seldom warmer.
inline constexpr Temperature temperature_assumed = Temperature::fahrenheit(73.0);

// The ice point of water, by the definition of the scale (ITS-90; ASTM E344): nothing that a utility could set otherwise.
inline constexpr Temperature freezing = Temperature::fahrenheit(32.0);

// Says the numbers of a finding where it is made.
class FindingBuilder {
 public:
  explicit FindingBuilder(Finding& finding) : finding_(finding) {}
  FindingBuilder& value(Measure v) {
    finding_.value = v;
    return *this;
  }
  FindingBuilder& at_most(Measure v) {
    finding_.limit = v;
    return *this;
  }
  FindingBuilder& at_least(Measure v) {
    finding_.limit = v;
    finding_.limit_is_least = true;
    return *this;
  }
  FindingBuilder& with(Detail a, Detail b = {}, Detail c = {}, Detail d = {}) {
    finding_.details = {a, b, c, d};
    return *this;
  }
  FindingBuilder& basis(const Basis& first) {
    finding_.basis[0] = &first;
    return *this;
  }
  FindingBuilder& basis(const Basis& first, const Basis& second) {
    finding_.basis[0] = &first;
    finding_.basis[1] = &second;
    return *this;
  }

 private:
  Finding& finding_;
};

// A growing list of findings. Methods are tried on lists of their own; the chosen one's is kept.
class Findings {
 public:
  explicit Findings(std::pmr::memory_resource& memory) : list_(&memory) { list_.reserve(8); }
  FindingBuilder add(FindingCode code, Severity severity) {
    Finding& finding = list_.emplace_back();
    finding.code = code;
    finding.severity = severity;
    worst_ = std::max(worst_, severity);
    return FindingBuilder(finding);
  }
  // A finding made for something else, as it bears on this.
  void add(const Finding& finding, Severity severity) {
    list_.push_back(finding);
    list_.back().severity = severity;
    worst_ = std::max(worst_, severity);
  }
  [[nodiscard]] Severity worst() const { return worst_; }
  [[nodiscard]] const std::pmr::vector<Finding>& list() const { return list_; }
  [[nodiscard]] const Finding* first(Severity severity) const {
    for (const Finding& finding : list_) {
      if (finding.severity == severity) return &finding;
    }
    return nullptr;
  }

 private:
  std::pmr::vector<Finding> list_;
  Severity worst_ = Severity::note;
};

[[nodiscard]] constexpr Verdict verdict_of(Severity worst) {
  return worst == Severity::stop ? Verdict::no_go : worst == Severity::hold ? Verdict::hold : Verdict::go;
}

// What every stage may read.
struct Context {
  const Catalog& catalog;
  const Rules& rules;
  const Job& given;
  std::pmr::memory_resource& memory;  // of lists that live no longer than the planning
  PlanDepth depth = PlanDepth::whole;
  const ApprovedList* approved = nullptr;  // null: none is named, and nothing is chosen

  [[nodiscard]] const Job& job() const { return given; }
  [[nodiscard]] Material material() const { return *given.main.material; }
  [[nodiscard]] NominalSize size() const { return *given.main.size; }
  [[nodiscard]] NominalSize asked() const { return *given.service.size; }
  [[nodiscard]] Pressure line() const { return *given.main.pressure; }
  // Whether what decides nothing is to be worked out too; and whether each calculation is to be written down.
  [[nodiscard]] bool whole() const { return depth != PlanDepth::verdict; }
  [[nodiscard]] bool calculates() const { return depth == PlanDepth::whole; }
  [[nodiscard]] bool pressurized() const { return given.main.is_pressurized(); }
};

// What a stage says beside its value.
struct Said {
  explicit Said(const Context& context)
      : findings(context.memory), assumed(&context.memory), taken(context.depth), whole(context.whole()) {}

  void assume(const Assumption& assumption) {
    if (whole) assumed.push_back(assumption);
  }
  // What an earlier stage says.
  void add(const Said& earlier) {
    for (const Finding& finding : earlier.findings.list()) findings.add(finding, finding.severity);
    if (!whole) return;
    assumed.insert(assumed.end(), earlier.assumed.begin(), earlier.assumed.end());
    taken.add(earlier.taken);
  }

  Findings findings;
  std::pmr::vector<Assumption> assumed;
  Recorder taken;
  bool whole;
};

// What the main says to a tap, whatever the method.
struct JudgedMain {
  explicit JudgedMain(const Context& context) : said(context) {}

  ResolvedMain main;
  PressureChain pressure;  // its line and the pipe's own link
  Location location;       // along the main
  Said said;
};

[[nodiscard]] std::optional<Length> thickest_reading_of(const std::vector<const Pipe*>& pipes);

// What the stages behind that may read.
struct Site : Context {
  Site(const Context& context, const PipesOnRecord& pipes, const JudgedMain& judged)
      : Context(context),
        record(pipes),
        main(judged.main),
        pressure(judged.pressure),
        location(judged.location),
        findings(judged.said.findings),
        thickest_listed(thickest_reading_of(judged.main.candidates)) {}

  const PipesOnRecord& record;
  const ResolvedMain& main;
  const PressureChain& pressure;
  const Location& location;
  const Findings& findings;
  const std::optional<Length> thickest_listed;  // that a gauge may read on any candidate: each method asks
};

// Where round the pipe a way of tapping stands, and what is to be said of that.
struct PlaceRound {
  ClockPosition clock;
  ClockPosition other_clock;       // of every second tap of a series
  std::string_view because;        // where the job names no clock
  std::optional<Finding> outside;  // the place wanted lies outside the rule
  std::optional<Finding> in_line;  // or in line with another tap
};
// The clear place nearest to the one that the job or the method asks for. `shift` is the place along the main.
[[nodiscard]] PlaceRound place_round(const Job& job, const Rules& rules, Length shift, Method method, int taps);

// What is known of stop and saddle: by the job, else by the approved items that were chosen.
struct FittingFacts {
  template <class T>
  struct Fact {
    std::optional<T> value;
    const Basis* basis = &stated_in_job;
  };
  Fact<Pressure> stop_rating;
  Fact<Pressure> saddle_rating;
  Fact<Length> stop_length;
  Fact<Length> saddle_height;
};

// One way of doing the job, with everything it needs: what it cuts, the pressures and the machine it goes with. Methods
// are compared whole, so that a saddle tap is chosen where the chain for a direct one is too short.
struct Candidate {
  explicit Candidate(const Context& context) : said(context) {}

  ChosenMethod method;  // `rejected` stays empty until the choice is made
  std::optional<ThreadsInWall> engagement;
  std::optional<MakeupPlan> makeup;
  PlaceRound place;
  FittingFacts fitting;
  PressureChain pressure;
  Setup setup;
  Said said;

  [[nodiscard]] Verdict verdict() const { return verdict_of(said.findings.worst()); }
};

// The way that is taken, and those that were not.
struct Choice {
  Candidate chosen;
  std::vector<RejectedMethod> rejected;
  Recorder refusals;  // what the latter were refused for
};

// What a gauge must read so that a wall is surely there: it may flatter by its uncertainty, and reads to a hundredth.
[[nodiscard]] inline Length wall_reading_for(Length wall, const Rules& rules) {
  const Length hundredth = 0.01 * units::inch;
  return std::ceil((wall + rules.measuring.wall_uncertainty.value) / hundredth - 1e-6) * hundredth;
}

struct LengthRange {
  Length low;
  Length high;
};
// The ends are inside.
[[nodiscard]] inline bool within(Length value, const LengthRange& range) {
  return !over(range.low, value) && !over(value, range.high);
}
// What an instrument reads that may be wrong by `error` either way; as well what is so where it reads so.
[[nodiscard]] inline LengthRange widened(const LengthRange& range, Length error) {
  return {range.low - error, range.high + error};
}
// The outside diameters that a pipe of this row may have; it must be tabulated.
[[nodiscard]] inline LengthRange diameter_range(const Pipe& pipe) {
  return {*pipe.od - pipe.od_minus, *pipe.od + pipe.od_plus};
}
// And what a tape round it may read.
[[nodiscard]] inline LengthRange tape_range(const Pipe& pipe, const Rules& rules) {
  const LengthRange diameters = diameter_range(pipe);
  return widened({std::numbers::pi * diameters.low, std::numbers::pi * diameters.high},
                 rules.measuring.circumference_uncertainty.value);
}

// A tape is read in sixteenths: the marks inside.
[[nodiscard]] inline LengthRange whole_marks(const LengthRange& tape) {
  const Length sixteenth = 0.0625 * units::inch;
  return {std::ceil(tape.low / sixteenth - 1e-6) * sixteenth, std::floor(tape.high / sixteenth + 1e-6) * sixteenth};
}

// Castings run over their nominal wall, but not by half, and extruded pipe by an eighth: a thicker reading is of something
// else (lining, a dimension ratio, another class).
[[nodiscard]] inline Length thickest_over(Material material, Length wall) {
  return (is_plastic(material) ? 1.25 : 1.5) * wall;
}
[[nodiscard]] inline Length thickest_reading(const Pipe& pipe) {
  return thickest_over(pipe.series->material, *pipe.wall);
}

// What a gauge must read on a sound pipe of this class. Iron may be corroded, so the reading is asked for with the gauge's
// uncertainty on top; a plastic wall is as it was made, and the reading only tells which pipe it is.
[[nodiscard]] inline std::optional<Length> class_wall_reading(const Pipe* pipe, const Rules& rules) {
  if (pipe == nullptr || !pipe->wall) return std::nullopt;
  const Length least = *pipe->wall - pipe->wall_minus;
  if (!is_plastic(pipe->series->material)) return wall_reading_for(least, rules);
  const Length hundredth = 0.01 * units::inch;
  return std::floor(least / hundredth + 1e-6) * hundredth;
}

// The factor on a plastic's rating at this temperature; nothing where it may hold no pressure.
[[nodiscard]] std::optional<double> temperature_factor(const Context& context, const MaterialFacts& facts,
                                                       Temperature temperature);
// The surge of every day; where the job gives none, the usual allowance.
[[nodiscard]] inline Pressure recurring_surge(const Context& context) {
  return context.job().main.surge.value_or(context.rules.pressure.surge_assumed.value);
}
[[nodiscard]] inline Pressure greatest_surge(const Context& context) {
  return std::max(recurring_surge(context), context.job().main.occasional_surge.value_or(Pressure()));
}

// The temperatures of the pipe wall at which plastic is tapped, under pressure or dry.
struct TemperatureWindow {
  const Rule<Temperature>* coldest;
  const Rule<Temperature>* warmest;
};
[[nodiscard]] inline TemperatureWindow tapping_window(const Context& context) {
  const Rules& rules = context.rules;
  if (context.pressurized()) return {&rules.direct.plastic_wet_tap_coldest, &rules.direct.plastic_wet_tap_warmest};
  return {&rules.direct.plastic_dry_tap_coldest, &rules.direct.plastic_dry_tap_warmest};
}

// One job planned, by all the stages below.
[[nodiscard]] Plan plan_job(Job&& job, const Catalog& catalog, const Rules& rules, const ApprovedList* approved,
                            PlanDepth depth);

// Which pipes the record of the main leaves (candidates.hpp).
[[nodiscard]] PipesOnRecord pipes_on_record(const Context& context);
// Which pipe this is, and what of it can be relied on.
[[nodiscard]] ResolvedMain resolve_main(const Context& context, const PipesOnRecord& record, Said& said);
// Water, and nothing but; and what the pipe looks like.
void check_identity(const Context& context, Said& said);
// What only a utility's standard asks: mains not tapped, seasons, cover, the smallest tap.
void check_utility(const Context& context, const ResolvedMain& main, Said& said);
// The link of the pressure chain that every method shares: the pipe itself.
[[nodiscard]] PressureChain check_pipe_pressure(const Context& context, const ResolvedMain& main, Said& said);
// Where along the pipe, whatever the method; the clock is the method's.
[[nodiscard]] Location check_place(const Context& context, Said& said);
// All of the above, with what was said of the record.
[[nodiscard]] JudgedMain judge_main(const Context& context, const PipesOnRecord& record);

// Stop, saddle or sleeve out of the approved list, and what the job says of them itself. `among`: of a way that was planned
// before, the items that it was planned with.
using ApprovedItems = BoundedList<const ApprovedItem*, approved_kind_count>;
void choose_fittings(const Site& site, const ApprovedItems* among, Candidate& candidate);
// The tools, once the machine is set up.
void choose_tools(const Site& site, const ApprovedItems* among, Candidate& candidate);
// The links that depend on the method and the machine.
void check_equipment_pressure(const Site& site, Candidate& candidate);
// From the drill's first touch to full size through the wall; nothing for a shell cutter, whose stroke is its maker's.
[[nodiscard]] std::optional<Length> drill_stroke_for(const Site& site, Length drill, Length wall);
// How deep a direct tap's point goes below the pipe's surface; of a thread whose taps are not listed, as a tap of the next
// larger pipe thread.
[[nodiscard]] std::optional<Length> tap_depth_for(const Site& site, const Candidate& candidate);
// From the first touch of the tool that cuts this hole until it is full width, in the thickest wall that it may meet.
[[nodiscard]] std::optional<Length> stroke_through(const Site& site, Candidate& candidate, Length hole);
// The thickest wall that a gauge may read on the pipe planned for, which the tool must pass; nothing where nobody can say.
[[nodiscard]] std::optional<Length> thickest_wall(const Site& site);
// The far wall at its thickest, with its lining: no gauge was held to it. Nothing where no wall is known.
[[nodiscard]] std::optional<Length> farthest_wall(const Site& site);
// How far the end of a tool may go in the smallest pipe it can be, past the outside: to the far wall less the rule's clearance.
[[nodiscard]] std::optional<Length> far_wall_feed(const Site& site);
// Of a shell cutter the pilot goes ahead of the teeth; feed is counted from their touch.
[[nodiscard]] Length pilot_ahead(const Site& site, Method kind);
// A trial stops no sooner than this: the hole is through the least wall at full width, and the tap has caught.
[[nodiscard]] Length shallowest_trial(const Site& site, const Candidate& candidate);
// What is on the bar stops short of the far wall, by every length that is given.
void check_far_wall(const Site& site, Candidate& candidate);
// Machine saddle, chain, clamp, bar, and whether it reaches.
void check_machine(const Site& site, Candidate& candidate);
// The best of direct tap, saddle, several taps and sleeve.
[[nodiscard]] Choice choose_method(const Site& site);
// One way of tapping by itself, whatever else could be done; its findings.
[[nodiscard]] Findings judge_method(const Site& site, const ChosenMethod& method);

// What the hole lets out: nothing of a dry main, or where no hole is planned.
[[nodiscard]] std::optional<OpenHole> open_hole(const Context& context, const ChosenMethod& method, Recorder& taken);
// The marks on the bar; nothing where nothing is cut.
[[nodiscard]] std::optional<MarksPlan> bar_marks(const Site& site, const Candidate& chosen, Recorder& taken);
// The rest of the work, each only where the job gives facts for it. The service line is as laid_line.hpp has it.
[[nodiscard]] std::optional<ServicePlan> check_service(const Context& context, const std::optional<LaidLine>& laid,
                                                       Said& said);
// Plastic tubing holds less than a stop or a main may: a part of the above, asked again for each reading that is tried.
void check_line_rating(const Context& context, Said& said);
[[nodiscard]] std::optional<CleaningPlan> check_cleaning(const Context& context, const std::optional<LaidLine>& laid,
                                                         const std::optional<ServicePlan>& service, Said& said);
[[nodiscard]] std::optional<PitPlan> check_pit(const Site& site, const std::optional<OpenHole>& open, Said& said);
// Which of the rules that are looser than a safety default this plan relies on.
void tell_looser_rules(const Rules& rules, const Plan& plan, Said& said);
// The readings within which the choice stands: its stop numbers. `held`: what holds it beside its own findings.
[[nodiscard]] std::vector<StopNumber> stop_numbers(const Site& site, const Candidate& chosen, const Findings& held,
                                                   Recorder& taken);

}  // namespace mainbore::planning
