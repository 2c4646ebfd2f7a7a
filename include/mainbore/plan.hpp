// A finished plan: what was decided, with the numbers a crew can hold a gauge against.
//
// Everything here is decided by planning; reports only print it. A plan of a Planner (planner.hpp) keeps the tables and
// rules that it points into.
#pragma once

#include <memory>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "mainbore/approved.hpp"
#include "mainbore/bounded_list.hpp"
#include "mainbore/calculation.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/cleaning_plan.hpp"
#include "mainbore/evidence.hpp"
#include "mainbore/finding.hpp"
#include "mainbore/job.hpp"
#include "mainbore/mechanics/bar_marks.hpp"
#include "mainbore/mechanics/boring.hpp"
#include "mainbore/mechanics/clamp.hpp"
#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/mechanics/makeup.hpp"
#include "mainbore/pit_plan.hpp"
#include "mainbore/rules.hpp"
#include "mainbore/service_plan.hpp"
#include "mainbore/settings.hpp"
#include "mainbore/stop_number.hpp"

namespace mainbore {

// A fact the job did not give, the safe value planned with, and what would remove the assumption.
struct Assumption {
  std::string_view path;  // "main.class"
  Detail value;
  std::string_view because;  // "the thinnest wall made in this size"
  std::string_view settle;   // "read the class cast or stencilled on the pipe, or gauge the wall"
};

enum class WallBasis : std::uint8_t { unknown, catalog, measured };

// One reading and the pipe it would mean.
struct ReadingMeans {
  Measure low;
  Measure high;
  const Pipe* pipe = nullptr;  // the first of those it means
  int also = 0;                // further pipes that read the same
};
// The one measurement that would tell the candidates apart.
struct SettlingReading {
  ReadingId id = ReadingId::circumference;
  std::vector<ReadingMeans> readings;
};

struct ResolvedMain {
  Material material = Material::ductile_iron;
  NominalSize size;
  std::vector<const Pipe*> candidates;  // every catalog pipe that fits what is known
  const Pipe* governing = nullptr;      // the worst of them, planned for
  std::optional<Length> od;             // planned with
  std::optional<Length> od_low;         // the range the pipe may measure and still be one of the candidates
  std::optional<Length> od_high;
  std::optional<Length> caliper_low;  // what a caliper may read on one of them, with its error
  std::optional<Length> caliper_high;
  std::optional<Length> od_least;      // the pipe really is no smaller: as measured less the instrument's error, or as
  std::optional<Length> od_greatest;   // the candidates may be; and no larger
  std::optional<Length> wall_nominal;  // of the governing pipe, or as measured
  std::optional<Length> wall_least;    // guaranteed: nominal less tolerance, or measured less the gauge's uncertainty
  WallBasis wall_basis = WallBasis::unknown;
  std::optional<Pressure> rating;           // least of the candidates, or the utility's own; derated for temperature
  std::optional<Pressure> greatest_rating;  // that a reading of the class or the utility's word could still prove
  std::string_view rated_as;                // the class whose rating that is; nothing where the utility rates the main
  const Basis* rating_basis = nullptr;
  Pressure surge_covered;         // on top of the rating, by the class of every candidate
  bool rating_unsettled = false;  // some candidate has no rating, and the utility gives none
  double temperature_factor = 1.0;
  std::vector<Assumption> assumed;
  std::optional<SettlingReading> settle;
};

struct RejectedMethod {
  Method kind = Method::none;
  int count = 1;
  NominalSize tap;
  Finding why;
};

// Several direct taps that would carry as much as the one planned, where the rules and the barrel allow them: what to put
// to the office where that one cannot be had. At best a hold, and never planned in its place.
struct SmallerTaps {
  int count = 1;
  NominalSize tap;  // of each
  Length spacing;   // from tap to tap along the main
  Length barrel;    // clear of joints, for all of them
};

struct ChosenMethod {
  Method kind = Method::none;
  int count = 1;                                        // taps; over one: a series of smaller taps of equal capacity
  NominalSize tap;                                      // of each
  std::optional<ThreadStandard> thread;                 // of the corporation stop's inlet
  std::optional<Length> hole;                           // cut in the main
  std::optional<Length> spacing;                        // of a series, from tap to tap along the main
  std::optional<double> section_left;                   // section modulus of the pipe as a beam, holed over whole
  const TapLimit* limit = nullptr;                      // the row of largest taps that decided for it
  const FittingSpecification* specification = nullptr;  // the utility's words on the saddle or sleeve
  BoundedList<const ApprovedItem*, approved_kind_count> fittings;  // of the approved list, at most one a kind
  std::vector<RejectedMethod> rejected;
  std::optional<SmallerTaps> smaller_taps;  // of a whole plan

  // The item of this kind that was chosen; none without an approved list, or where none fits.
  [[nodiscard]] const ApprovedItem* fitting(ApprovedKind of) const {
    for (const ApprovedItem* item : fittings) {
      if (item->kind == of) return item;
    }
    return nullptr;
  }
};

struct ThreadsInWall {
  mechanics::Engagement at_nominal;
  std::optional<mechanics::Engagement> at_least;
  double required = 0.0;
  std::optional<Length> wall_needed;
  std::optional<Length> margin;     // least wall less wall needed
  bool judged = false;              // false: shown as a note, a published maximum judged
  std::optional<Force> strip_load;  // against the pressure's end load
  std::optional<Force> end_load;
};

struct MakeupPlan {
  mechanics::Makeup makeup;
  double wrench_turns = 0.0;
  double threads_showing = 0.0;
  std::optional<Length> tip_depth;  // tap point below the outer surface
  std::optional<Length> far_wall_clearance;
  std::optional<Length> protrusion;  // stop's end inside the bore
};

enum class PressureLink : std::uint8_t { pipe, feed, machine, corporation_stop, saddle, wet_tap_rule };
inline constexpr std::array<std::string_view, 6> pressure_link_names = {
    "pipe rating", "feed limit", "machine rating", "corporation stop", "saddle or sleeve", "wet-tap rule"};
[[nodiscard]] constexpr std::string_view name_of(PressureLink link) {
  return pressure_link_names[static_cast<std::size_t>(link)];
}
struct PressureLimit {
  PressureLink link = PressureLink::pipe;
  Pressure limit;
  const Basis* basis = nullptr;
};
struct PressureChain {
  Pressure line;
  std::optional<Pressure> surge;
  BoundedList<PressureLimit, pressure_link_names.size()> limits;  // every link, in the order water meets them
  std::optional<PressureLimit> governed_by;
  std::optional<Pressure> reduce_to;  // when the line is over a limit that lowering the main can meet
};

struct ChainPlan {
  Length needed;
  Length available;  // base chain and the extensions used
  int extensions = 0;
  double leg_degrees = 0.0;
};
struct ClampPlan {
  Force force;                   // toward the pipe, to hold and seal
  std::optional<Force> tension;  // in each leg of the chain
  std::optional<mechanics::StudTorque> stud_torque;
  std::optional<double> ovality;  // plastic only, upper bound
};
struct Setup {
  const MachineProfile* machine = nullptr;
  Feed feed = Feed::hand;
  std::optional<Length> saddle_od;  // the outside diameter its machine saddle must seat on
  std::optional<ChainPlan> chain;
  std::optional<ClampPlan> clamp;
  Force push;                          // of the line on the boring bar
  std::optional<Length> drill;         // the diameter drilled
  bool drill_is_bound = false;         // not the thread's own drill: the hole over the threads, which none passes
  std::optional<Length> drill_stroke;  // first touch to full breakthrough
  Force cut_thrust;                    // of the tool on the pipe, with which the clamp is worked
  std::optional<Length> travel_needed;
  std::optional<mechanics::DrillLoadRange> drill_load;
};

// Where the bar stands, as feed past the touch of its tool (mechanics/bar_marks.hpp). What is absent is measured by the crew.
struct MarksPlan {
  std::optional<mechanics::BarMarks> at;  // where pipe and wall are known
  std::optional<Length> limit;            // never fed past: the far wall less the rule's clearance
  std::optional<Length> tap_depth;        // from where the tap catches to where it stops
  std::optional<double> tap_turns;        // the same, in turns of the bar
  bool by_trial = false;                  // where to stop was found with this pair of tool and stop
  std::optional<Length> drawn_back;       // the tool's end over the pipe, the bar fully back
  std::optional<Length> stop_drawn_back;  // and of the stop on its insertion tool
  std::optional<Length> clear;            // at least so far back before valve or stop is shut
  std::optional<Length> feed_pitch;       // of one turn of the feed

  // Whether a mark so far past the touch is never made: beyond the limit, or no limit is known.
  [[nodiscard]] bool past_limit(Length mark) const { return !limit || mark > *limit; }
};

struct Clearing {
  NearbyThing what = NearbyThing::joint;
  Length along;  // where it is, from the asked place
  Length kept;   // distance from the planned place
  Length least;  // asked by the rule
};
struct Location {
  Length shift;  // planned place from the asked one; + and - as in the job
  ClockPosition clock;
  ClockPosition other_clock;  // of every second tap of a series
  std::vector<Clearing> clearings;
};

struct Plan {
  Plan() = default;
  explicit Plan(Job&& planned) : job(std::move(planned)) {}

  Job job;
  Verdict verdict = Verdict::no_go;
  ResolvedMain main;
  ChosenMethod method;
  std::optional<ThreadsInWall> engagement;
  std::optional<MakeupPlan> makeup;
  PressureChain pressure;
  Setup setup;
  std::optional<MarksPlan> marks;  // of whatever is cut, where the plan is whole
  Location location;
  std::optional<OpenHole> open_hole;   // of a wet tap whose hole is known
  std::optional<ServicePlan> service;  // the rest only where the job gives facts for it
  std::optional<CleaningPlan> cleaning;
  std::optional<PitPlan> excavation;
  std::vector<StopNumber> stop_numbers;  // each id once, in the order they are printed
  std::vector<Finding> findings;         // gravest first, then in the order of the checks
  // The first of this code; nullptr: none.
  [[nodiscard]] const Finding* finding(FindingCode code) const {
    for (const Finding& one : findings) {
      if (one.code == code) return &one;
    }
    return nullptr;
  }
  std::vector<Evidence> evidence;         // what it was made with, part by part; of a whole plan
  std::vector<Calculation> calculations;  // what decides and how it was worked out, part by part; of a whole plan
  FromSettings from_settings;  // what of the job, the rules and the units it was made with; by whoever laid it
  const Rules* rules = nullptr;
  const Catalog* catalog = nullptr;
  const ApprovedList* approved = nullptr;  // what its fittings were chosen from; none: nothing was
  std::shared_ptr<const void> keeps;       // all of them, and whatever of them the plan points at

  // The stop number of that name; none where the plan has none.
  [[nodiscard]] const StopNumber* stop_number(ReadingId id) const {
    for (const StopNumber& one : stop_numbers) {
      if (one.id == id) return &one;
    }
    return nullptr;
  }
};

// The parts of the work that a plan was not asked to look at, because the job has no facts for them: what is missing, and
// the paths that would give it.
struct NotChecked {
  std::string_view what;  // "water for the customer"
  std::string give;       // "service.line.length, service.demand.flow or .fixture_units with .code"
};
[[nodiscard]] std::vector<NotChecked> not_checked(const Plan& plan);

}  // namespace mainbore
