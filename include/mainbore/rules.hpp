// The rules in force: every number a utility could set differently.
//
// Defaults are data/rules/default.json; a utility's standard is laid over them (src/io/rules). Each rule knows what it
// rests on and whether the utility set it. Plain data, immutable while planning; must outlive the plans made under it.
#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/finding.hpp"
#include "mainbore/job.hpp"
#include "mainbore/material.hpp"
#include "mainbore/nominal_size.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

template <class T>
struct Rule {
  T value{};
  Basis basis;
};

// Which mains a row of a list is for. What its material and nominal size say is known of every main; whether class, series,
// wall, inside diameter or year fit may be open: src/rules/main_filter.hpp says how a row then counts.
struct MainFilter {
  MaterialList materials;                 // empty: any
  std::optional<NominalSize> main_from;   // smallest main the row covers, inclusive
  std::optional<NominalSize> main_to;     // largest, inclusive
  std::optional<NominalSize> main_above;  // only larger ones, as codes have it that say "over 16 inches"
  std::optional<NominalSize> main_below;  // only smaller ones
  std::vector<std::string> classes;       // as written; empty: any
  std::vector<const Pipe*> pipes;         // of the catalog that these mean, in order
  std::vector<std::string> series;        // catalog series ids; empty: any
  std::optional<Length> wall_from;        // the nominal wall is at least this
  std::optional<Length> wall_below;       // the nominal wall is thinner than this
  // Inside diameter: outside less two walls, as the standard has them; a lining is not taken off.
  std::optional<Length> bore_from;   // inclusive
  std::optional<Length> bore_to;     // inclusive
  std::optional<Length> bore_above;  // only wider ones
  std::optional<Length> bore_below;  // only narrower ones
  std::optional<int> laid_from;      // year in which the main was laid, inclusive
  std::optional<int> laid_to;        // inclusive

  [[nodiscard]] bool covers(Material material, NominalSize size) const {
    return (materials.empty() || materials.contains(material)) && !(main_from && size < *main_from) &&
           !(main_to && size > *main_to) && !(main_above && size <= *main_above) &&
           !(main_below && size >= *main_below);
  }
};

// The largest tap a kind of main may take: a row of a list of permissions, of caps, or of mains that are not tapped.
struct TapLimit : MainFilter {
  NominalSize largest;  // 0: no tap by this method
  std::string why;      // for a refusal: what is done instead
  std::string consent;  // of a permission: who must consent to each tap under it
  Basis basis;
};

// Rows in their order, with an index by material and size made once: however many there are, few are asked for a main.
class TapLimits {
 public:
  TapLimits() = default;
  explicit TapLimits(std::vector<TapLimit> rows);

  [[nodiscard]] auto begin() const { return rows_.begin(); }
  [[nodiscard]] auto end() const { return rows_.end(); }
  [[nodiscard]] std::size_t size() const { return rows_.size(); }
  [[nodiscard]] bool empty() const { return rows_.empty(); }
  [[nodiscard]] const TapLimit& operator[](std::size_t place) const { return rows_[place]; }
  // Places of the rows that may cover a main, in their order; each is still to be asked.
  [[nodiscard]] std::span<const std::uint32_t> near(Material material, NominalSize size) const;

 private:
  std::vector<TapLimit> rows_;
  std::vector<std::uint32_t> places_;  // of one step of size of one material after the other
  std::vector<std::uint32_t> starts_;  // where those of each begin in `places_`
};

// A day of any year.
struct YearDay {
  int month = 1;
  int day = 1;
  friend constexpr auto operator<=>(const YearDay&, const YearDay&) = default;
};

// Days on which mains are not tapped, both ends among them; from November to April runs over the new year.
struct ClosedSeason : MainFilter {
  YearDay from;
  YearDay to;
  std::string from_text;  // as reports print them: "1 November"
  std::string to_text;
  std::string why;  // or what may be done in it
  Basis basis;

  [[nodiscard]] constexpr bool holds_on(YearDay day) const {
    return from <= to ? from <= day && day <= to : from <= day || day <= to;
  }
};

// What a utility asks of a saddle or sleeve, in its own words. The first row that fits main and tap counts.
struct FittingSpecification : MainFilter {
  std::optional<NominalSize> tap_from;   // inclusive
  std::optional<NominalSize> tap_to;     // inclusive
  std::optional<NominalSize> tap_above;  // only larger ones
  std::string text;
  Basis basis;
};

// The smallest sizes for a number of dwellings; each row that holds counts.
struct SizesByDwellings {
  int from = 0;           // dwellings, inclusive
  std::optional<int> to;  // inclusive; nothing: however many
  std::optional<NominalSize> tap;
  std::optional<NominalSize> line;
  std::optional<NominalSize> meter;
  Basis basis;

  [[nodiscard]] constexpr bool is_for(int dwellings) const { return dwellings >= from && (!to || dwellings <= *to); }
};

// What a utility says of a method, a step or a caution, beside the program's words.
struct OwnWords {
  std::string_view id;  // of own_words_ids() (rule_fields.hpp)
  std::string text;
  Basis basis;
};

// A rule that a utility set looser than a safety default, or otherwise where neither way is the stricter. Of a list of largest taps: for these mains.
struct LooserRule {
  std::string_view path;
  Detail usual;  // nothing: none by default
  Detail set;
  const TapLimit* row = nullptr;
  std::optional<Material> material;
  std::optional<NominalSize> main_from;
  std::optional<NominalSize> main_to;
  std::vector<const Pipe*> pipes;
  Basis basis;
};

// Clearance a tap keeps from one kind of thing, center to center or to the face, along the main.
struct Clearance {
  NearbyThing what = NearbyThing::joint;
  Rule<Length> least;
};

// What a file of rules says it is: the members that say so may all be left out but the name, which is then its file's.
struct RulesDocument {
  std::string name;
  std::string title;
  std::string edition;
  std::string date;
  std::string approver;
};

// The rules, a struct a group, named as in a file: `rules.direct.required_threads` is "direct.required_threads".
//
// `largest` are permissions, of which the first row that fits the main decides: a utility can put its exceptions first. A
// main that no row fits takes no tap by that method without the engineer. `at_most` are caps, of which each row that fits
// counts: they lower what is permitted, and permit nothing. Clearances stand by what is kept clear of ("place.clearances.tap").

// Mains that take no tap, or not on some day, or none above a size by whatever method.
struct MainRules {
  TapLimits not_tapped;  // every row allows none
  std::vector<ClosedSeason> closed_season;
  TapLimits at_most;                             // by any method
  Rule<std::optional<Temperature>> coldest_air;  // in which a main is tapped
};

// A tap made straight into the wall.
struct DirectRules {
  TapLimits largest;
  TapLimits largest_by_default;  // under a utility's own: what these close opens by consent alone
  TapLimits at_most;
  Rule<double> required_threads;  // complete threads in the wall
  Rule<double> marginal_threads;  // within this of the requirement: say so
  Rule<double> hole_ratio;        // greatest hole over outside diameter
  Rule<ThreadStandard> default_thread;
  Rule<double> wrench_turns;                  // make-up wanted
  Rule<double> threads_showing;               // of the made-up stop
  Rule<double> strip_effectiveness;           // of a short thread's shear area
  Rule<Temperature> plastic_wet_tap_coldest;  // pipe temperature window for a wet tap in PVC
  Rule<Temperature> plastic_wet_tap_warmest;
  Rule<Temperature> plastic_dry_tap_coldest;  // and for a dry one
  Rule<Temperature> plastic_dry_tap_warmest;
};

// A tap through a service saddle.
struct SaddleRules {
  TapLimits largest;
  TapLimits largest_by_default;
  TapLimits at_most;
  std::vector<FittingSpecification> specification;
  Rule<double> hole_ratio;    // the same under a saddle
  Rule<double> section_left;  // least section modulus left in the pipe as a beam
};

// A tap through a tapping sleeve.
struct SleeveRules {
  TapLimits largest;
  TapLimits largest_by_default;
  TapLimits at_most;
  std::vector<FittingSpecification> specification;
  Rule<double> hole_ratio;     // greatest outlet over outside diameter
  Rule<NominalSize> smallest;  // smallest outlet with which a sleeve is made
};

// Several taps that stand for one larger.
struct SeveralRules {
  TapLimits at_most;                     // of each tap of the series
  Rule<double> equal_capacity_exponent;  // by which several small taps equal one larger
  Rule<double> most_taps;                // of the series
};

// Ratings of what nobody has read, surge, and what the customer gets.
struct PressureRules {
  Rule<Pressure> stop_rating;  // of a corporation stop whose mark nobody has read
  Rule<Pressure> saddle_rating;
  Rule<Pressure> wet_tap_limit;                      // whatever the equipment allows
  Rule<Pressure> surge_assumed;                      // recurring, where none is given
  Rule<Pressure> iron_surge_allowance;               // already inside the class of iron
  Rule<double> fitting_surge_factor;                 // stop, saddle, machine: total for a moment over the rating
  Rule<Pressure> asbestos_cement_surge_allowance;    // inside the class of asbestos cement
  Rule<double> plastic_recurring_surge_factor;       // recurring surge: total over the derated rating
  Rule<double> polyethylene_recurring_surge_factor;  // of polyethylene, which tires less
  Rule<double> plastic_surge_factor;                 // occasional surge: total over the derated rating
  Rule<Pressure> regulator_above;                    // customer side
};

// Along the main, round it, and under how much cover.
struct PlaceRules {
  std::vector<Clearance> clearances;
  Rule<Length> farthest_shift;  // how far a tap may be moved to find its place
  Rule<Length> stagger_within;  // taps nearer than this stand at different clock positions
  Rule<double> stagger_apart;   // degrees round the pipe between such taps, at least
  Rule<ClockPosition> default_clock;
  Rule<double> lowest_elevation;  // degrees above horizontal: lowest place on the pipe
  Rule<double> highest_elevation;
  Rule<std::optional<Length>> least_cover;  // over a main that is tapped
  Rule<std::optional<Length>> greatest_cover;
};

// By how much a reading at the pipe may be off.
struct MeasuringRules {
  Rule<Length> od_uncertainty;             // caliper
  Rule<Length> circumference_uncertainty;  // tape
  Rule<Length> wall_uncertainty;           // gauge
};

// Hands, chain and gasket.
struct MachineRules {
  Rule<Force> push_caution;  // on a bar held by hand
  Rule<Force> push_limit;
  Rule<double> ovality_caution;
  Rule<double> ovality_limit;
  Rule<Length> chain_bearing;   // length of plastic pipe that shares the chain's squeeze
  Rule<double> gasket_factor;   // m, of the seal under the machine saddle
  Rule<Length> gasket_width;    // of the ring that the seal is pressed on
  Rule<Length> gasket_land;     // sound pipe between the hole and the sealing circle
  Rule<Pressure> stud_stress;   // tension over the stud's full section
  Rule<Length> tool_clearance;  // tap tip to the far wall
};

// Cutting, for the force the clamp must hold.
struct DrillingRules {
  Rule<Length> feed;                // per turn, by ratchet and feed screw
  Rule<double> work_factor;         // Kd of the handbook method (mechanics/boring.hpp)
  Rule<double> iron_factor;         // K of the cast-iron method
  Rule<Length> clearance;           // past breakthrough
  Rule<Force> shell_cutter_thrust;  // of a shell cutter in plastic
};

// Water for the customer.
struct WaterRules {
  Rule<Velocity> velocity_caution;                  // speed of the water in the service from which a caution is given
  Rule<Velocity> velocity_limit;                    // greatest speed of the water in the service
  Rule<Velocity> tap_velocity_limit;                // and in the tap and its corporation stop, which are short
  Rule<Pressure> system_least;                      // least pressure of a distribution system
  Rule<Pressure> least_residual;                    // least pressure behind the meter at the demand
  Rule<double> meter_share;                         // share of a meter's greatest flow that the demand may take
  Rule<double> meter_continuous_share;              // share of a meter's greatest flow that it may pass without pause
  Rule<NominalSize> smallest_line;                  // smallest service that may be laid
  Rule<std::optional<NominalSize>> smallest_tap;    // that the utility makes
  Rule<std::optional<Length>> line_over_tap_least;  // by how much the service pipe is larger than the tap
  Rule<std::optional<Length>> line_over_tap_most;
  std::vector<SizesByDwellings> by_dwellings;
  Rule<std::optional<double>> most_premises;  // that one tap may serve
  Rule<double> equal_runs_exponent;           // exponent by which several runs of small pipe equal one larger
  Rule<Flow> sprinkler_single;                // flow of one dwelling sprinkler alone
  Rule<Flow> sprinkler_of_two;                // flow of each of two dwelling sprinklers together
  Rule<Flow> sprinkler_shared;                // allowance for domestic use on pipe that sprinklers share
};

// The service line in the ground. What is usual gives a caution where the utility asks for no distance, which is unset by
// default.
struct LineRules {
  Rule<std::optional<Length>> least_cover;
  Rule<std::optional<Length>> from_gas;  // least way to a gas line, level, edge to edge
  Rule<std::optional<Length>> from_electric;
  Rule<std::optional<Length>> from_sewer;
  Rule<Length> usual_from_gas;
  Rule<Length> usual_from_electric;
  Rule<Length> usual_from_sewer;
};

// Disinfection, flushing, and lead in what touches the water.
struct CleaningRules {
  Rule<double> swab_percent;            // strength of the solution for swabbing cutter, stop and pipe
  Rule<Volume> solution;                // mixed where a job asks for no other amount
  Rule<Velocity> flush_velocity;        // speed in the service that carries dirt and chips out
  Rule<Velocity> flush_velocity_least;  // speed below which a flush only rinses
  Rule<double> flush_changes;           // times the water in the service is changed
  Rule<double> flush_chlorine;          // most chlorine in the flush water, mg/L
  Rule<double> dechlorination_excess;   // agent given over the exact dose
  Rule<double> lead_percent;            // most lead, averaged over wetted surfaces
  Rule<NominalSize> sample_above;       // services larger than this are chlorinated as mains and sampled
};

// The pit, its walls, spoil, and what lies near it.
struct PitRules {
  Rule<Length> room_along;               // bottom of the pit along the main
  Rule<Length> room_machine_side;        // from the main to the wall on the side of the machine
  Rule<Length> room_far_side;            // from the main to the other wall
  Rule<Length> room_below;               // clear under the main
  Rule<Length> protective_system_depth;  // depth from which a protective system is required
  Rule<Length> egress_depth;             // depth from which a ladder or other way out is required
  Rule<Length> egress_travel;            // farthest way to a ladder
  Rule<Length> ladder_extension;         // side rails of a ladder above the edge
  Rule<Length> atmosphere_depth;         // depth beyond which the air is tested where bad air is to be expected
  Rule<Length> engineer_depth;           // depth beyond which an engineer designs the protective system
  Rule<Length> short_term_depth;         // depth down to which Type A soil may stand at the short-term slope
  Rule<Time> short_term_open;            // time that Type A soil may stand at the short-term slope
  Rule<Length> spoil_setback;            // least way from the edge to the spoil
  Rule<Length> guardrail_depth;          // depth from which a crossing has guard rails
  Rule<Pressure> type_a_least;           // least unconfined strength of Type A soil
  Rule<Pressure> type_c_most;            // greatest unconfined strength of Type C soil
  Rule<double> slope_stable_rock;        // steepest slope in stable rock, run to one of rise
  Rule<double> slope_type_a;             // steepest slope in Type A soil, run to one of rise
  Rule<double> slope_type_a_short;       // the same for the short term
  Rule<double> slope_type_b;             // steepest slope in Type B soil, run to one of rise
  Rule<double> slope_type_c;             // steepest slope in Type C soil, run to one of rise
  Rule<double> slope_distress;           // run added to one of rise where the ground shows distress
  Rule<Length> vertical_lower;           // most of the wall that may stand upright below the slope in Type A soil
  Rule<Length> vertical_lower_depth;     // pit to which the slope above it is that of Type A
  Rule<double> vertical_lower_slope;     // slope above it in a deeper pit
  Rule<Length> bench_first;              // highest first bench
  Rule<Length> bench_later_a;            // highest bench above the first in Type A soil
  Rule<Length> bench_later_b;            // highest bench above the first in cohesive Type B soil
  Rule<Length> shield_above;             // shield above the foot of a slope over it
  Rule<Length> shield_below;             // most that may be dug below the bottom of a shield
  Rule<double> swell_sand;               // gain in volume of dug sand or gravel
  Rule<double> swell_earth;              // gain in volume of dug common earth
  Rule<double> swell_clay;               // gain in volume of dug clay
  Rule<double> swell_rock;               // gain in volume of broken rock
  Rule<double> repose;                   // run to one of rise at which spoil comes to rest
  Rule<Length> tolerance_margin;         // dug by hand to each side of a marked line
  Rule<double> notice_days;              // working days between the call and the first digging
  Rule<Length> sewer_apart;              // least way from a water line to a sewer beside it
  Rule<Length> sewer_below;              // least way down from a water line to a sewer nearer than that
};

struct Rules {
  Rules() = default;
  // Bases point into `references`: rules move, and are never copied.
  Rules(Rules&&) = default;
  Rules& operator=(Rules&&) = default;

  std::string name;
  std::vector<RulesDocument> documents;  // the utility's, in the order in which they are laid over the defaults

  MainRules main;
  DirectRules direct;
  SaddleRules saddle;
  SleeveRules sleeve;
  SeveralRules several;
  PressureRules pressure;
  PlaceRules place;
  MeasuringRules measuring;
  MachineRules machine;
  DrillingRules drilling;
  WaterRules water;
  LineRules line;
  CleaningRules cleaning;
  PitRules pit;

  std::vector<OwnWords> words;  // by id

  // Those that needed a reason, worked out once when the files are read.
  std::vector<LooserRule> looser;

  // Whether a utility has set any of them.
  [[nodiscard]] bool has_own() const { return !references.empty(); }

  // Text of utility references, reasons and files that bases point at: a deque, so that they stay where they are.
  std::deque<std::string> references;
};

// The clearance from a thing; null where no rule asks for any. A job that says "joint" may mean bell or plain end: of one the
// largest counts, and of those of bell and plain end by default only while the distance to a joint is the default too.
[[nodiscard]] const Clearance* clearance_from(const Rules& rules, NearbyThing what);

// What the utility says of a method, step or caution; null where it says nothing.
[[nodiscard]] const OwnWords* own_words(const Rules& rules, std::string_view id);

}  // namespace mainbore
