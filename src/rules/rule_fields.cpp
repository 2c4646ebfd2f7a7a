// The table of rules: where each stands in the file, what it measures, what it can be.
#include "mainbore/rule_fields.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <type_traits>

namespace mainbore {
namespace {

// In base units (units.hpp).
constexpr double foot = units::foot.base();
constexpr double hour = units::hour.base();
constexpr double gallon = units::gallon.base();
constexpr double gpm = units::gpm.base();
constexpr double tsf = units::tsf.base();

// Whether a rule guards life and pipe, or only comfort and habit.
constexpr bool safety = true;
constexpr bool comfort = false;

constexpr std::array fields = {
    RuleField{"main.coldest_air", rule_at<&Rules::main, &MainRules::coldest_air>, Kind::temperature, -60, 100,
              "coldest air in which a main is tapped; unset by default", Stricter::higher, comfort},

    RuleField{"direct.required_threads", rule_at<&Rules::direct, &DirectRules::required_threads>, Kind::threads, 0.5,
              10, "complete threads that the wall must hold for a direct tap", Stricter::higher, safety},
    RuleField{"direct.marginal_threads", rule_at<&Rules::direct, &DirectRules::marginal_threads>, Kind::threads, 0, 2,
              "a count that clears the requirement by less than this is called marginal", Stricter::higher, comfort},
    RuleField{"direct.hole_ratio", rule_at<&Rules::direct, &DirectRules::hole_ratio>, Kind::ratio, 0.05, 0.9,
              "greatest hole of a direct tap over the outside diameter of the main", Stricter::lower, safety},
    RuleField{"direct.default_thread", rule_at<&Rules::direct, &DirectRules::default_thread>, Kind::ratio, 0, 0,
              "inlet thread of corporation stops where a job names none", Stricter::neither, safety},
    RuleField{"direct.wrench_turns", rule_at<&Rules::direct, &DirectRules::wrench_turns>, Kind::turns, 0, 5,
              "turns by wrench after hand-tight that make the joint", Stricter::neither, comfort},
    RuleField{"direct.threads_showing", rule_at<&Rules::direct, &DirectRules::threads_showing>, Kind::threads, 0, 10,
              "threads of a made-up stop left outside the wall", Stricter::neither, comfort},
    RuleField{"direct.strip_effectiveness", rule_at<&Rules::direct, &DirectRules::strip_effectiveness>, Kind::ratio,
              0.05, 1, "share of the shear area that a short thread is counted to carry with", Stricter::lower,
              comfort},
    RuleField{"direct.plastic_wet_tap_coldest", rule_at<&Rules::direct, &DirectRules::plastic_wet_tap_coldest>,
              Kind::temperature, 0, 140, "coldest pipe wall for a wet tap in plastic", Stricter::higher, safety},
    RuleField{"direct.plastic_wet_tap_warmest", rule_at<&Rules::direct, &DirectRules::plastic_wet_tap_warmest>,
              Kind::temperature, 0, 140, "warmest pipe wall for a wet tap in plastic", Stricter::lower, safety},
    RuleField{"direct.plastic_dry_tap_coldest", rule_at<&Rules::direct, &DirectRules::plastic_dry_tap_coldest>,
              Kind::temperature, -40, 140, "coldest pipe wall for a dry tap in plastic", Stricter::higher, safety},
    RuleField{"direct.plastic_dry_tap_warmest", rule_at<&Rules::direct, &DirectRules::plastic_dry_tap_warmest>,
              Kind::temperature, 0, 140, "warmest pipe wall for a dry tap in plastic", Stricter::lower, safety},

    RuleField{"saddle.hole_ratio", rule_at<&Rules::saddle, &SaddleRules::hole_ratio>, Kind::ratio, 0.05, 0.9,
              "greatest hole under a saddle over the outside diameter of the main", Stricter::lower, safety},
    RuleField{"saddle.section_left", rule_at<&Rules::saddle, &SaddleRules::section_left>, Kind::ratio, 0.1, 1,
              "least section modulus of the holed pipe as a beam over that of the whole pipe", Stricter::higher,
              safety},

    RuleField{"sleeve.hole_ratio", rule_at<&Rules::sleeve, &SleeveRules::hole_ratio>, Kind::ratio, 0.05, 1,
              "greatest outlet of a sleeve over the outside diameter of the main", Stricter::lower, safety},
    RuleField{"sleeve.smallest", rule_at<&Rules::sleeve, &SleeveRules::smallest>, Kind::length, 0.5, 12,
              "smallest outlet with which a tapping sleeve is made", Stricter::higher, comfort},

    RuleField{"several.equal_capacity_exponent", rule_at<&Rules::several, &SeveralRules::equal_capacity_exponent>,
              Kind::ratio, 2, 3, "exponent by which several small taps equal one larger", Stricter::higher, comfort},
    RuleField{"several.most_taps", rule_at<&Rules::several, &SeveralRules::most_taps>, Kind::ratio, 1, 20,
              "most taps of a series that stands for one larger", Stricter::lower, comfort, true},

    RuleField{"pressure.stop_rating", rule_at<&Rules::pressure, &PressureRules::stop_rating>, Kind::pressure, 20, 1000,
              "working pressure of a corporation stop whose mark nobody has read", Stricter::lower, safety},
    RuleField{"pressure.saddle_rating", rule_at<&Rules::pressure, &PressureRules::saddle_rating>, Kind::pressure, 20,
              1000, "working pressure of a saddle or sleeve whose mark nobody has read", Stricter::lower, safety},
    RuleField{"pressure.wet_tap_limit", rule_at<&Rules::pressure, &PressureRules::wet_tap_limit>, Kind::pressure, 0,
              1000, "line pressure above which no main is tapped, whatever the equipment allows", Stricter::lower,
              safety},
    RuleField{"pressure.surge_assumed", rule_at<&Rules::pressure, &PressureRules::surge_assumed>, Kind::pressure, 0,
              500, "recurring surge over the static pressure where a job gives none", Stricter::higher, safety},
    RuleField{"pressure.iron_surge_allowance", rule_at<&Rules::pressure, &PressureRules::iron_surge_allowance>,
              Kind::pressure, 0, 500, "surge that the class of iron already covers", Stricter::lower, safety},
    RuleField{"pressure.fitting_surge_factor", rule_at<&Rules::pressure, &PressureRules::fitting_surge_factor>,
              Kind::ratio, 1, 3, "greatest total of line and surge over the rating of stop, saddle or machine",
              Stricter::lower, safety},
    RuleField{"pressure.asbestos_cement_surge_allowance",
              rule_at<&Rules::pressure, &PressureRules::asbestos_cement_surge_allowance>, Kind::pressure, 0, 500,
              "surge that the class of asbestos cement is counted to cover on top of its rating", Stricter::lower,
              safety},
    RuleField{"pressure.plastic_recurring_surge_factor",
              rule_at<&Rules::pressure, &PressureRules::plastic_recurring_surge_factor>, Kind::ratio, 0.5, 3,
              "greatest total of line and recurring surge over the derated rating of PVC or PVCO", Stricter::lower,
              safety},
    RuleField{"pressure.polyethylene_recurring_surge_factor",
              rule_at<&Rules::pressure, &PressureRules::polyethylene_recurring_surge_factor>, Kind::ratio, 0.5, 3,
              "greatest total of line and recurring surge over the derated rating of polyethylene", Stricter::lower,
              safety},
    RuleField{"pressure.plastic_surge_factor", rule_at<&Rules::pressure, &PressureRules::plastic_surge_factor>,
              Kind::ratio, 1, 3, "greatest total of an occasional surge over the derated rating of plastic pipe",
              Stricter::lower, safety},
    RuleField{"pressure.regulator_above", rule_at<&Rules::pressure, &PressureRules::regulator_above>, Kind::pressure,
              20, 500, "pressure at the customer above which a regulator is asked for", Stricter::lower, comfort},

    RuleField{"place.farthest_shift", rule_at<&Rules::place, &PlaceRules::farthest_shift>, Kind::distance, 0,
              100 * foot, "how far along the main a tap may be moved to find its place", Stricter::neither, comfort},
    RuleField{"place.stagger_within", rule_at<&Rules::place, &PlaceRules::stagger_within>, Kind::distance, 0, 20 * foot,
              "taps nearer to each other than this stand at different clock positions", Stricter::higher, safety},
    RuleField{"place.stagger_apart", rule_at<&Rules::place, &PlaceRules::stagger_apart>, Kind::angle, 1, 90,
              "least angle round the pipe between two such taps", Stricter::higher, safety},
    RuleField{"place.default_clock", rule_at<&Rules::place, &PlaceRules::default_clock>, Kind::ratio, 0, 0,
              "place round the pipe where a job names none", Stricter::neither, comfort},
    RuleField{"place.lowest_elevation", rule_at<&Rules::place, &PlaceRules::lowest_elevation>, Kind::angle, -90, 90,
              "lowest place round the pipe, as an angle above the horizontal", Stricter::higher, comfort},
    RuleField{"place.highest_elevation", rule_at<&Rules::place, &PlaceRules::highest_elevation>, Kind::angle, -90, 90,
              "highest place round the pipe, as an angle above the horizontal", Stricter::lower, comfort},

    RuleField{"place.least_cover", rule_at<&Rules::place, &PlaceRules::least_cover>, Kind::distance, 0, 30 * foot,
              "least cover over a main that is tapped; unset by default", Stricter::higher, comfort},
    RuleField{"place.greatest_cover", rule_at<&Rules::place, &PlaceRules::greatest_cover>, Kind::distance, 0, 60 * foot,
              "greatest cover over a main that is tapped; unset by default", Stricter::lower, comfort},

    RuleField{"measuring.od_uncertainty", rule_at<&Rules::measuring, &MeasuringRules::od_uncertainty>, Kind::length, 0,
              1, "how far an outside diameter taken by caliper may be off", Stricter::neither, safety},
    RuleField{"measuring.circumference_uncertainty",
              rule_at<&Rules::measuring, &MeasuringRules::circumference_uncertainty>, Kind::length, 0, 2,
              "how far a circumference taken by tape may be off", Stricter::neither, safety},
    RuleField{"measuring.wall_uncertainty", rule_at<&Rules::measuring, &MeasuringRules::wall_uncertainty>, Kind::length,
              0, 0.25, "how far a wall taken by gauge may be off", Stricter::higher, safety},

    RuleField{"machine.push_caution", rule_at<&Rules::machine, &MachineRules::push_caution>, Kind::force, 1, 500,
              "push of the line on a hand-held bar from which a caution is given", Stricter::lower, safety},
    RuleField{"machine.push_limit", rule_at<&Rules::machine, &MachineRules::push_limit>, Kind::force, 1, 500,
              "push of the line on a bar that hands do not hold", Stricter::lower, safety},
    RuleField{"machine.ovality_caution", rule_at<&Rules::machine, &MachineRules::ovality_caution>, Kind::ratio, 0, 0.3,
              "squeeze of plastic pipe out of round by the chain from which a caution is given", Stricter::lower,
              safety},
    RuleField{"machine.ovality_limit", rule_at<&Rules::machine, &MachineRules::ovality_limit>, Kind::ratio, 0, 0.3,
              "greatest squeeze of plastic pipe out of round by the chain", Stricter::lower, safety},
    RuleField{"machine.chain_bearing", rule_at<&Rules::machine, &MachineRules::chain_bearing>, Kind::length, 0.25, 24,
              "length of plastic pipe that shares the chain's squeeze", Stricter::lower, safety},
    RuleField{"machine.gasket_factor", rule_at<&Rules::machine, &MachineRules::gasket_factor>, Kind::ratio, 0, 3,
              "factor m of the seal under the machine saddle", Stricter::higher, safety},
    RuleField{"machine.gasket_width", rule_at<&Rules::machine, &MachineRules::gasket_width>, Kind::length, 0, 2,
              "width of the ring on which the gasket under the machine saddle is pressed", Stricter::higher, safety},
    RuleField{"machine.gasket_land", rule_at<&Rules::machine, &MachineRules::gasket_land>, Kind::length, 0, 2,
              "sound pipe between the hole and the circle that the gasket seals on", Stricter::higher, safety},
    RuleField{"machine.stud_stress", rule_at<&Rules::machine, &MachineRules::stud_stress>, Kind::pressure, 1000, 100000,
              "greatest tension of a chain stud over its full section", Stricter::lower, safety},
    RuleField{"machine.tool_clearance", rule_at<&Rules::machine, &MachineRules::tool_clearance>, Kind::length, 0, 12,
              "clearance of the tap's point from the far wall", Stricter::higher, safety},

    RuleField{"drilling.feed", rule_at<&Rules::drilling, &DrillingRules::feed>, Kind::length, 0.001, 0.05,
              "advance of the drill per turn", Stricter::higher, safety},
    RuleField{"drilling.work_factor", rule_at<&Rules::drilling, &DrillingRules::work_factor>, Kind::ratio, 1000, 100000,
              "work material factor Kd of the handbook drilling method", Stricter::higher, safety},
    RuleField{"drilling.iron_factor", rule_at<&Rules::drilling, &DrillingRules::iron_factor>, Kind::ratio, 0.2, 5,
              "material factor K of the cast-iron drilling method", Stricter::higher, safety},
    RuleField{"drilling.clearance", rule_at<&Rules::drilling, &DrillingRules::clearance>, Kind::length, 0, 2,
              "travel of the drill beyond full breakthrough", Stricter::higher, comfort},
    RuleField{"drilling.shell_cutter_thrust", rule_at<&Rules::drilling, &DrillingRules::shell_cutter_thrust>,
              Kind::force, 0, 500, "feed force of a shell cutter in plastic pipe", Stricter::higher, safety},

    RuleField{"water.velocity_caution", rule_at<&Rules::water, &WaterRules::velocity_caution>, Kind::velocity, 1 * foot,
              30 * foot, "speed of the water in the service from which a caution is given", Stricter::lower, comfort},
    RuleField{"water.velocity_limit", rule_at<&Rules::water, &WaterRules::velocity_limit>, Kind::velocity, 1 * foot,
              30 * foot, "greatest speed of the water in the service", Stricter::lower, comfort},
    RuleField{"water.tap_velocity_limit", rule_at<&Rules::water, &WaterRules::tap_velocity_limit>, Kind::velocity,
              1 * foot, 60 * foot, "greatest speed of the water in the tap and its corporation stop", Stricter::lower,
              comfort},
    RuleField{"water.system_least", rule_at<&Rules::water, &WaterRules::system_least>, Kind::pressure, 0, 60,
              "pressure of the main under which a caution is given", Stricter::higher, comfort},
    RuleField{"water.least_residual", rule_at<&Rules::water, &WaterRules::least_residual>, Kind::pressure, 0, 150,
              "least pressure behind the meter at the demand", Stricter::higher, safety},
    RuleField{"water.meter_share", rule_at<&Rules::water, &WaterRules::meter_share>, Kind::ratio, 0.1, 1,
              "share of a meter's greatest flow that the demand may take", Stricter::lower, comfort},
    RuleField{"water.meter_continuous_share", rule_at<&Rules::water, &WaterRules::meter_continuous_share>, Kind::ratio,
              0.1, 1, "share of a meter's greatest flow that it may pass without pause", Stricter::lower, comfort},
    RuleField{"water.smallest_line", rule_at<&Rules::water, &WaterRules::smallest_line>, Kind::length, 0.5, 2,
              "smallest service that may be laid", Stricter::higher, comfort},
    RuleField{"water.smallest_tap", rule_at<&Rules::water, &WaterRules::smallest_tap>, Kind::length, 0.25, 12,
              "smallest tap that the utility makes; unset by default", Stricter::higher, comfort},
    RuleField{"water.line_over_tap_least", rule_at<&Rules::water, &WaterRules::line_over_tap_least>, Kind::length, 0, 2,
              "least by which the service pipe is larger than the tap; unset by default", Stricter::higher, comfort},
    RuleField{"water.line_over_tap_most", rule_at<&Rules::water, &WaterRules::line_over_tap_most>, Kind::length, 0, 2,
              "most by which the service pipe is larger than the tap; unset by default", Stricter::lower, comfort},
    RuleField{"water.most_premises", rule_at<&Rules::water, &WaterRules::most_premises>, Kind::ratio, 1, 1000,
              "most premises that one tap may serve; unset by default", Stricter::lower, comfort, true},
    RuleField{"water.equal_runs_exponent", rule_at<&Rules::water, &WaterRules::equal_runs_exponent>, Kind::ratio, 2, 3,
              "exponent by which several runs of small pipe equal one larger", Stricter::higher, comfort},
    RuleField{"water.sprinkler_single", rule_at<&Rules::water, &WaterRules::sprinkler_single>, Kind::flow, 1 * gpm,
              200 * gpm, "flow of one dwelling sprinkler alone", Stricter::higher, safety},
    RuleField{"water.sprinkler_of_two", rule_at<&Rules::water, &WaterRules::sprinkler_of_two>, Kind::flow, 1 * gpm,
              200 * gpm, "flow of each of two dwelling sprinklers together", Stricter::higher, safety},
    RuleField{"water.sprinkler_shared", rule_at<&Rules::water, &WaterRules::sprinkler_shared>, Kind::flow, 0, 200 * gpm,
              "allowance for domestic use on pipe that sprinklers share", Stricter::higher, safety},

    RuleField{"line.least_cover", rule_at<&Rules::line, &LineRules::least_cover>, Kind::distance, 0, 30 * foot,
              "least cover over the service line; unset by default", Stricter::higher, comfort},
    RuleField{"line.from_gas", rule_at<&Rules::line, &LineRules::from_gas>, Kind::distance, 0, 50 * foot,
              "least way from the service line to a gas line, level, edge to edge; unset by default", Stricter::higher,
              comfort},
    RuleField{"line.from_electric", rule_at<&Rules::line, &LineRules::from_electric>, Kind::distance, 0, 50 * foot,
              "the same to an electric line; unset by default", Stricter::higher, comfort},
    RuleField{"line.from_sewer", rule_at<&Rules::line, &LineRules::from_sewer>, Kind::distance, 0, 50 * foot,
              "the same to a sewer or drain; unset by default", Stricter::higher, comfort},
    RuleField{"line.usual_from_gas", rule_at<&Rules::line, &LineRules::usual_from_gas>, Kind::distance, 0, 50 * foot,
              "way to a gas line under which a caution is given, where none is asked", Stricter::higher, comfort},
    RuleField{"line.usual_from_electric", rule_at<&Rules::line, &LineRules::usual_from_electric>, Kind::distance, 0,
              50 * foot, "the same to an electric line", Stricter::higher, comfort},
    RuleField{"line.usual_from_sewer", rule_at<&Rules::line, &LineRules::usual_from_sewer>, Kind::distance, 0,
              50 * foot, "the same to a sewer or drain", Stricter::higher, comfort},

    RuleField{"cleaning.swab_percent", rule_at<&Rules::cleaning, &CleaningRules::swab_percent>, Kind::percent, 0.05, 5,
              "strength of the solution for swabbing cutter, stop and pipe", Stricter::higher, safety},
    RuleField{"cleaning.solution", rule_at<&Rules::cleaning, &CleaningRules::solution>, Kind::volume, 1, 100 * gallon,
              "solution mixed where a job asks for no other amount", Stricter::neither, comfort},
    RuleField{"cleaning.flush_velocity", rule_at<&Rules::cleaning, &CleaningRules::flush_velocity>, Kind::velocity,
              0.5 * foot, 15 * foot, "speed in the service that carries dirt and chips out", Stricter::higher, comfort},
    RuleField{"cleaning.flush_velocity_least", rule_at<&Rules::cleaning, &CleaningRules::flush_velocity_least>,
              Kind::velocity, 0.5 * foot, 15 * foot, "speed below which a flush only rinses", Stricter::higher,
              comfort},
    RuleField{"cleaning.flush_changes", rule_at<&Rules::cleaning, &CleaningRules::flush_changes>, Kind::ratio, 1, 20,
              "times the water in the service is changed", Stricter::higher, comfort},
    RuleField{"cleaning.flush_chlorine", rule_at<&Rules::cleaning, &CleaningRules::flush_chlorine>, Kind::ratio, 0, 50,
              "most chlorine in the flush water, mg/L", Stricter::lower, safety},
    RuleField{"cleaning.dechlorination_excess", rule_at<&Rules::cleaning, &CleaningRules::dechlorination_excess>,
              Kind::ratio, 0, 1, "agent given over the exact dose", Stricter::higher, comfort},
    RuleField{"cleaning.lead_percent", rule_at<&Rules::cleaning, &CleaningRules::lead_percent>, Kind::percent, 0, 8,
              "most lead, averaged over wetted surfaces", Stricter::lower, safety},
    RuleField{"cleaning.sample_above", rule_at<&Rules::cleaning, &CleaningRules::sample_above>, Kind::length, 0.5, 12,
              "services larger than this are chlorinated as mains and sampled", Stricter::lower, safety},

    RuleField{"pit.room_along", rule_at<&Rules::pit, &PitRules::room_along>, Kind::distance, 2 * foot, 30 * foot,
              "bottom of the pit along the main: machine, chain and a person beside it", Stricter::higher, safety},
    RuleField{"pit.room_machine_side", rule_at<&Rules::pit, &PitRules::room_machine_side>, Kind::distance, 0.5 * foot,
              20 * foot, "from the main to the wall on the side of the machine", Stricter::higher, safety},
    RuleField{"pit.room_far_side", rule_at<&Rules::pit, &PitRules::room_far_side>, Kind::distance, 0.5 * foot,
              20 * foot, "from the main to the other wall", Stricter::higher, safety},
    RuleField{"pit.room_below", rule_at<&Rules::pit, &PitRules::room_below>, Kind::distance, 0.25 * foot, 5 * foot,
              "clear under the main", Stricter::higher, safety},
    RuleField{"pit.protective_system_depth", rule_at<&Rules::pit, &PitRules::protective_system_depth>, Kind::distance,
              2 * foot, 20 * foot, "depth from which a protective system is required", Stricter::lower, safety},
    RuleField{"pit.egress_depth", rule_at<&Rules::pit, &PitRules::egress_depth>, Kind::distance, 2 * foot, 20 * foot,
              "depth from which a ladder or other way out is required", Stricter::lower, safety},
    RuleField{"pit.egress_travel", rule_at<&Rules::pit, &PitRules::egress_travel>, Kind::distance, 3 * foot, 100 * foot,
              "farthest way to a ladder", Stricter::lower, safety},
    RuleField{"pit.ladder_extension", rule_at<&Rules::pit, &PitRules::ladder_extension>, Kind::distance, 0, 10 * foot,
              "side rails of a ladder above the edge", Stricter::higher, safety},
    RuleField{"pit.atmosphere_depth", rule_at<&Rules::pit, &PitRules::atmosphere_depth>, Kind::distance, 2 * foot,
              20 * foot, "depth beyond which the air is tested where bad air is to be expected", Stricter::lower,
              safety},
    RuleField{"pit.engineer_depth", rule_at<&Rules::pit, &PitRules::engineer_depth>, Kind::distance, 4 * foot,
              50 * foot, "depth beyond which an engineer designs the protective system", Stricter::lower, safety},
    RuleField{"pit.short_term_depth", rule_at<&Rules::pit, &PitRules::short_term_depth>, Kind::distance, 2 * foot,
              20 * foot, "depth down to which Type A soil may stand at the short-term slope", Stricter::lower, safety},
    RuleField{"pit.short_term_open", rule_at<&Rules::pit, &PitRules::short_term_open>, Kind::time_span, 1 * hour,
              72 * hour, "time that Type A soil may stand at the short-term slope", Stricter::lower, safety},
    RuleField{"pit.spoil_setback", rule_at<&Rules::pit, &PitRules::spoil_setback>, Kind::distance, 0.5 * foot,
              30 * foot, "least way from the edge to the spoil", Stricter::higher, safety},
    RuleField{"pit.guardrail_depth", rule_at<&Rules::pit, &PitRules::guardrail_depth>, Kind::distance, 2 * foot,
              20 * foot, "depth from which a crossing has guard rails", Stricter::lower, safety},
    RuleField{"pit.type_a_least", rule_at<&Rules::pit, &PitRules::type_a_least>, Kind::strength, 0.5 * tsf, 6 * tsf,
              "least unconfined strength of Type A soil", Stricter::neither, safety},
    RuleField{"pit.type_c_most", rule_at<&Rules::pit, &PitRules::type_c_most>, Kind::strength, 0.05 * tsf, 3 * tsf,
              "greatest unconfined strength of Type C soil", Stricter::higher, safety},
    RuleField{"pit.slope_stable_rock", rule_at<&Rules::pit, &PitRules::slope_stable_rock>, Kind::ratio, 0, 5,
              "steepest slope in stable rock, run to one of rise", Stricter::higher, safety},
    RuleField{"pit.slope_type_a", rule_at<&Rules::pit, &PitRules::slope_type_a>, Kind::ratio, 0, 5,
              "steepest slope in Type A soil, run to one of rise", Stricter::higher, safety},
    RuleField{"pit.slope_type_a_short", rule_at<&Rules::pit, &PitRules::slope_type_a_short>, Kind::ratio, 0, 5,
              "the same for the short term", Stricter::higher, safety},
    RuleField{"pit.slope_type_b", rule_at<&Rules::pit, &PitRules::slope_type_b>, Kind::ratio, 0, 5,
              "steepest slope in Type B soil, run to one of rise", Stricter::higher, safety},
    RuleField{"pit.slope_type_c", rule_at<&Rules::pit, &PitRules::slope_type_c>, Kind::ratio, 0, 5,
              "steepest slope in Type C soil, run to one of rise", Stricter::higher, safety},
    RuleField{"pit.slope_distress", rule_at<&Rules::pit, &PitRules::slope_distress>, Kind::ratio, 0, 5,
              "run added to one of rise where the ground shows distress", Stricter::higher, safety},
    RuleField{"pit.vertical_lower", rule_at<&Rules::pit, &PitRules::vertical_lower>, Kind::distance, 0, 5 * foot,
              "most of the wall that may stand upright below the slope in Type A soil", Stricter::lower, safety},
    RuleField{"pit.vertical_lower_depth", rule_at<&Rules::pit, &PitRules::vertical_lower_depth>, Kind::distance, 0,
              12 * foot, "depth down to which the slope above an upright part keeps the run of Type A soil",
              Stricter::lower, safety},
    RuleField{"pit.vertical_lower_slope", rule_at<&Rules::pit, &PitRules::vertical_lower_slope>, Kind::ratio, 0, 5,
              "slope above an upright part in a deeper pit, down to the short-term depth", Stricter::higher, safety},
    RuleField{"pit.bench_first", rule_at<&Rules::pit, &PitRules::bench_first>, Kind::distance, 0, 10 * foot,
              "highest first bench", Stricter::lower, safety},
    RuleField{"pit.bench_later_a", rule_at<&Rules::pit, &PitRules::bench_later_a>, Kind::distance, 0, 10 * foot,
              "highest bench above the first in Type A soil", Stricter::lower, safety},
    RuleField{"pit.bench_later_b", rule_at<&Rules::pit, &PitRules::bench_later_b>, Kind::distance, 0, 10 * foot,
              "highest bench above the first in cohesive Type B soil", Stricter::lower, safety},
    RuleField{"pit.shield_above", rule_at<&Rules::pit, &PitRules::shield_above>, Kind::length, 0, 60,
              "shield above the foot of a slope over it", Stricter::higher, safety},
    RuleField{"pit.shield_below", rule_at<&Rules::pit, &PitRules::shield_below>, Kind::distance, 0, 5 * foot,
              "most that may be dug below the bottom of a shield", Stricter::lower, safety},
    RuleField{"pit.swell_sand", rule_at<&Rules::pit, &PitRules::swell_sand>, Kind::ratio, 0, 1,
              "gain in volume of dug sand or gravel", Stricter::neither, comfort},
    RuleField{"pit.swell_earth", rule_at<&Rules::pit, &PitRules::swell_earth>, Kind::ratio, 0, 1,
              "gain in volume of dug common earth", Stricter::neither, comfort},
    RuleField{"pit.swell_clay", rule_at<&Rules::pit, &PitRules::swell_clay>, Kind::ratio, 0, 1,
              "gain in volume of dug clay", Stricter::neither, comfort},
    RuleField{"pit.swell_rock", rule_at<&Rules::pit, &PitRules::swell_rock>, Kind::ratio, 0, 1.5,
              "gain in volume of broken rock", Stricter::neither, comfort},
    RuleField{"pit.repose", rule_at<&Rules::pit, &PitRules::repose>, Kind::ratio, 0.5, 5,
              "run to one of rise at which spoil comes to rest", Stricter::neither, comfort},
    RuleField{"pit.tolerance_margin", rule_at<&Rules::pit, &PitRules::tolerance_margin>, Kind::length, 6, 60,
              "dug by hand to each side of a marked line", Stricter::higher, safety},
    RuleField{"pit.notice_days", rule_at<&Rules::pit, &PitRules::notice_days>, Kind::ratio, 0, 30,
              "working days between the call to the locate center and the first digging", Stricter::higher, safety},
    RuleField{"pit.sewer_apart", rule_at<&Rules::pit, &PitRules::sewer_apart>, Kind::distance, 0, 50 * foot,
              "least way from a water line to a sewer beside it", Stricter::higher, safety},
    RuleField{"pit.sewer_below", rule_at<&Rules::pit, &PitRules::sewer_below>, Kind::length, 0, 120,
              "least way down from a water line to a sewer nearer than that", Stricter::higher, safety},
};

constexpr std::array permissions = {
    PermissionField{"direct.largest", "direct.largest_first", rule_at<&Rules::direct, &DirectRules::largest>,
                    rule_at<&Rules::direct, &DirectRules::largest_by_default>,
                    "largest direct tap; the first row that fits the main decides"},
    PermissionField{"saddle.largest", "saddle.largest_first", rule_at<&Rules::saddle, &SaddleRules::largest>,
                    rule_at<&Rules::saddle, &SaddleRules::largest_by_default>,
                    "largest tap through a saddle; the first row that fits decides"},
    PermissionField{"sleeve.largest", "sleeve.largest_first", rule_at<&Rules::sleeve, &SleeveRules::largest>,
                    rule_at<&Rules::sleeve, &SleeveRules::largest_by_default>,
                    "largest tap through a sleeve; the first row that fits decides"},
};

constexpr std::array caps = {
    CapField{"main.at_most", rule_at<&Rules::main, &MainRules::at_most>,
             "cap on any tap in a main, by whatever method; each row that fits counts"},
    CapField{"direct.at_most", rule_at<&Rules::direct, &DirectRules::at_most>,
             "cap on a direct tap; each row that fits counts"},
    CapField{"saddle.at_most", rule_at<&Rules::saddle, &SaddleRules::at_most>,
             "cap on a tap through a saddle; each row that fits counts"},
    CapField{"several.at_most", rule_at<&Rules::several, &SeveralRules::at_most>,
             "cap on each of several taps that stand for one larger; each row that fits counts"},
    CapField{"sleeve.at_most", rule_at<&Rules::sleeve, &SleeveRules::at_most>,
             "cap on a tap through a sleeve; each row that fits counts"},
};

constexpr std::array specifications = {
    SpecificationField{"saddle.specification", rule_at<&Rules::saddle, &SaddleRules::specification>,
                       "what a saddle must be, in the utility's words; the first row that fits main and tap counts"},
    SpecificationField{"sleeve.specification", rule_at<&Rules::sleeve, &SleeveRules::specification>,
                       "what a sleeve must be, in the utility's words; the first row that fits main and tap counts"},
};

constexpr std::array documents = {
    DocumentLine{"name", &RulesDocument::name, "whose rules these are"},
    DocumentLine{"title", &RulesDocument::title, "title of the standard that they are taken from"},
    DocumentLine{"edition", &RulesDocument::edition, "its edition"},
    DocumentLine{"date", &RulesDocument::date, "date from which it is in force"},
    DocumentLine{"approver", &RulesDocument::approver, "who approved it"},
};

// A lower end, and the upper end it may not pass.
constexpr std::array ends = {
    RuleEnds{"direct.plastic_wet_tap_coldest", "direct.plastic_wet_tap_warmest"},
    RuleEnds{"direct.plastic_dry_tap_coldest", "direct.plastic_dry_tap_warmest"},
    RuleEnds{"pressure.plastic_recurring_surge_factor", "pressure.plastic_surge_factor"},
    RuleEnds{"machine.push_caution", "machine.push_limit"},
    RuleEnds{"machine.ovality_caution", "machine.ovality_limit"},
    RuleEnds{"place.lowest_elevation", "place.highest_elevation"},
    RuleEnds{"place.least_cover", "place.greatest_cover"},
    RuleEnds{"water.line_over_tap_least", "water.line_over_tap_most"},
    RuleEnds{"water.velocity_caution", "water.velocity_limit"},
    RuleEnds{"cleaning.flush_velocity_least", "cleaning.flush_velocity"},
    RuleEnds{"pit.type_c_most", "pit.type_a_least", false},
    RuleEnds{"pit.protective_system_depth", "pit.engineer_depth"},
    RuleEnds{"pit.short_term_depth", "pit.engineer_depth"},
    RuleEnds{"pit.vertical_lower_depth", "pit.short_term_depth"},
    RuleEnds{"pit.slope_stable_rock", "pit.slope_type_a_short"},
    RuleEnds{"pit.slope_type_a_short", "pit.slope_type_a"},
    RuleEnds{"pit.slope_type_a", "pit.slope_type_b"},
    RuleEnds{"pit.slope_type_b", "pit.slope_type_c"},
};

}  // namespace

std::span<const RuleField> rule_fields() { return fields; }
std::span<const PermissionField> permission_fields() { return permissions; }
std::span<const DocumentLine> document_lines() { return documents; }
const DocumentLine* document_line(std::string_view key) {
  const auto* const found =
      std::find_if(documents.begin(), documents.end(), [&](const auto& line) { return line.key == key; });
  return found == documents.end() ? nullptr : found;
}
std::span<const CapField> cap_fields() { return caps; }
std::span<const SpecificationField> specification_fields() { return specifications; }
std::span<const RuleEnds> rule_ends() { return ends; }

Detail value_of(const Rules& rules, const RuleField& field) {
  return std::visit(
      [&]<class T>(const RuleTarget<Rule<T>>& target) -> Detail {
        const T& value = target.in(rules).value;
        if constexpr (std::is_same_v<T, std::optional<Length>>) {
          return value ? Detail(Measure(*value, field.kind)) : Detail();
        } else if constexpr (std::is_same_v<T, std::optional<Temperature>>) {
          return value ? Detail(Measure(*value)) : Detail();
        } else if constexpr (std::is_same_v<T, std::optional<double>>) {
          return value ? Detail(Measure(*value, field.kind)) : Detail();
        } else if constexpr (std::is_same_v<T, std::optional<NominalSize>>) {
          return value ? Detail(*value) : Detail();
        } else if constexpr (std::is_same_v<T, ThreadStandard>) {
          return name_of(value);
        } else if constexpr (std::is_same_v<T, ClockPosition> || std::is_same_v<T, NominalSize>) {
          return value;
        } else if constexpr (std::is_same_v<T, double>) {
          return Measure(value, field.kind);
        } else if constexpr (std::is_same_v<T, Temperature>) {
          return Measure(value);
        } else {
          return Measure(value.base(), field.kind);
        }
      },
      field.target);
}

std::optional<double> number_of(const Detail& value) {
  if (const auto* measure = std::get_if<Measure>(&value)) return measure->base();
  if (const auto* size = std::get_if<NominalSize>(&value)) return size->number();
  return std::nullopt;
}

const Basis& basis_of(const Rules& rules, const RuleField& field) {
  return std::visit([&](const auto& target) -> const Basis& { return target.in(rules).basis; }, field.target);
}

bool may_be_unset(const RuleField& field) {
  return std::visit(
      []<class T>(const RuleTarget<Rule<T>>&) {
        return std::is_same_v<T, std::optional<Length>> || std::is_same_v<T, std::optional<NominalSize>> ||
               std::is_same_v<T, std::optional<Temperature>> || std::is_same_v<T, std::optional<double>>;
      },
      field.target);
}

std::string_view clearance_path(NearbyThing what) {
  static const auto paths = [] {
    std::array<std::string, nearby_names.size()> all;
    for (std::size_t i = 0; i < all.size(); ++i) {
      all[i] = std::string(clearances_path) + '.' + std::string(nearby_names[i]);
    }
    return all;
  }();
  return paths[static_cast<std::size_t>(what)];
}

}  // namespace mainbore
