// The table of rules: where each stands in the file, what it measures, what it can be.
#include <array>

#include "mainbore/rules_file.hpp"

namespace mainbore {
namespace {

constexpr double foot = 12.0;  // inches

constexpr std::array fields = {
    RuleField{"direct.required_threads", &Rules::required_threads, Kind::threads, 0.5, 10,
              "complete threads that the wall must hold for a direct tap"},
    RuleField{"direct.marginal_threads", &Rules::marginal_threads, Kind::threads, 0, 2,
              "a count that clears the requirement by less than this is called marginal"},
    RuleField{"direct.hole_ratio", &Rules::hole_ratio_direct, Kind::ratio, 0.05, 0.9,
              "greatest hole of a direct tap over the outside diameter of the main"},
    RuleField{"direct.default_thread", &Rules::default_thread, Kind::ratio, 0, 0,
              "inlet thread of corporation stops where a job names none"},
    RuleField{"direct.wrench_turns", &Rules::wrench_turns, Kind::turns, 0, 5,
              "turns by wrench after hand-tight that make the joint"},
    RuleField{"direct.threads_showing", &Rules::threads_showing, Kind::threads, 0, 10,
              "threads of a made-up stop left outside the wall"},
    RuleField{"direct.strip_effectiveness", &Rules::strip_effectiveness, Kind::ratio, 0.05, 1,
              "share of the shear area that a short thread is counted to carry with"},
    RuleField{"direct.plastic_wet_tap_coldest", &Rules::plastic_wet_tap_coldest, Kind::temperature, 0, 140,
              "coldest pipe wall for a wet direct tap in PVC"},
    RuleField{"direct.plastic_wet_tap_warmest", &Rules::plastic_wet_tap_warmest, Kind::temperature, 0, 140,
              "warmest pipe wall for a wet direct tap in PVC"},

    RuleField{"saddle.hole_ratio", &Rules::hole_ratio_saddle, Kind::ratio, 0.05, 0.9,
              "greatest hole under a saddle over the outside diameter of the main"},
    RuleField{"saddle.section_left", &Rules::section_left, Kind::ratio, 0.1, 1,
              "least section modulus of the holed pipe as a beam over that of the whole pipe"},

    RuleField{"several.equal_capacity_exponent", &Rules::equal_capacity_exponent, Kind::ratio, 2, 3,
              "exponent by which several small taps equal one larger"},
    RuleField{"several.most_taps", &Rules::most_taps, Kind::ratio, 1, 20,
              "most taps of a series that stands for one larger"},

    RuleField{"pressure.stop_rating", &Rules::stop_rating, Kind::pressure, 20, 1000,
              "working pressure of a corporation stop whose mark nobody has read"},
    RuleField{"pressure.saddle_rating", &Rules::saddle_rating, Kind::pressure, 20, 1000,
              "working pressure of a saddle or sleeve whose mark nobody has read"},
    RuleField{"pressure.wet_tap_limit", &Rules::wet_tap_limit, Kind::pressure, 0, 1000,
              "line pressure above which no main is tapped, whatever the equipment allows"},
    RuleField{"pressure.surge_assumed", &Rules::surge_assumed, Kind::pressure, 0, 500,
              "recurring surge over the static pressure where a job gives none"},
    RuleField{"pressure.iron_surge_allowance", &Rules::iron_surge_allowance, Kind::pressure, 0, 500,
              "surge that the class of ductile iron already covers"},
    RuleField{"pressure.plastic_surge_factor", &Rules::plastic_surge_factor, Kind::ratio, 1, 3,
              "greatest total of an occasional surge over the derated rating of plastic pipe"},
    RuleField{"pressure.regulator_above", &Rules::regulator_above, Kind::pressure, 20, 500,
              "pressure at the customer above which a regulator is asked for"},

    RuleField{"place.farthest_shift", &Rules::farthest_shift, Kind::distance, 0, 100 * foot,
              "how far along the main a tap may be moved to find its place"},
    RuleField{"place.stagger_within", &Rules::stagger_within, Kind::distance, 0, 20 * foot,
              "taps nearer to each other than this stand at different clock positions"},
    RuleField{"place.default_clock", &Rules::default_clock, Kind::ratio, 0, 0,
              "place round the pipe where a job names none"},
    RuleField{"place.lowest_elevation", &Rules::lowest_elevation, Kind::angle, -90, 90,
              "lowest place round the pipe, as an angle above the horizontal"},
    RuleField{"place.highest_elevation", &Rules::highest_elevation, Kind::angle, -90, 90,
              "highest place round the pipe, as an angle above the horizontal"},

    RuleField{"measuring.od_uncertainty", &Rules::od_uncertainty, Kind::length, 0, 1,
              "how far an outside diameter taken by calliper may be off"},
    RuleField{"measuring.circumference_uncertainty", &Rules::circumference_uncertainty, Kind::length, 0, 2,
              "how far a circumference taken by tape may be off"},
    RuleField{"measuring.wall_uncertainty", &Rules::wall_uncertainty, Kind::length, 0, 0.25,
              "how far a wall taken by gauge may be off"},

    RuleField{"machine.push_caution", &Rules::push_caution, Kind::force, 1, 500,
              "push of the line on a hand-held bar from which a caution is given"},
    RuleField{"machine.push_limit", &Rules::push_limit, Kind::force, 1, 500,
              "push of the line on a bar that hands do not hold"},
    RuleField{"machine.ovality_caution", &Rules::ovality_caution, Kind::ratio, 0, 0.3,
              "squeeze of plastic pipe out of round by the chain from which a caution is given"},
    RuleField{"machine.ovality_limit", &Rules::ovality_limit, Kind::ratio, 0, 0.3,
              "greatest squeeze of plastic pipe out of round by the chain"},
    RuleField{"machine.chain_bearing", &Rules::chain_bearing, Kind::length, 0.25, 24,
              "length of plastic pipe that shares the chain's squeeze"},
    RuleField{"machine.gasket_factor", &Rules::gasket_factor, Kind::ratio, 0, 3,
              "factor m of the seal under the machine saddle"},
    RuleField{"machine.tool_clearance", &Rules::tool_clearance, Kind::length, 0, 12,
              "clearance of the tap's point from the far wall"},

    RuleField{"drilling.feed", &Rules::drill_feed, Kind::length, 0.001, 0.05, "advance of the drill per turn"},
    RuleField{"drilling.work_factor", &Rules::drill_work_factor, Kind::ratio, 1000, 100000,
              "work material factor Kd of the handbook drilling method"},
    RuleField{"drilling.iron_factor", &Rules::drill_iron_factor, Kind::ratio, 0.2, 5,
              "material factor K of the cast-iron drilling method"},
    RuleField{"drilling.clearance", &Rules::drill_clearance, Kind::length, 0, 2,
              "travel of the drill beyond full breakthrough"},
};

constexpr std::array tap_limits = {
    TapLimitField{"direct.largest", &Rules::direct, "largest direct tap; the first row that fits the main decides"},
    TapLimitField{"saddle.largest", &Rules::saddle, "largest tap through a saddle; the first row that fits decides"},
    TapLimitField{"sleeve.largest", &Rules::sleeve, "largest tap through a sleeve; the first row that fits decides"},
};

constexpr std::array codes = {
    DiagnosticText{"rules.duplicate-key", "a rule given twice",
                   "Of two equal keys neither counts: keep the right one."},
    DiagnosticText{
        "rules.unknown-key", "a key that is no rule",
        "A misspelt key would silently leave the default in force, so it is an error, with the nearest known "
        "key."},
    DiagnosticText{"rules.unknown-value", "a word that is not one of those known",
                   "The value must be one of the words listed. The nearest is offered but never taken."},
    DiagnosticText{
        "rules.wrong-type", "a value of the wrong kind",
        "A rule is its value or an object with the value; a list of largest taps is a list of objects. A null "
        "would take the rule away, and no rule can be missing."},
    DiagnosticText{"rules.wrong-quantity", "not a quantity of the right kind",
                   "Nobody guesses a unit here: write the number and its unit, such as \"18 in\" or \"150 psi\"."},
    DiagnosticText{
        "rules.out-of-range", "a value that cannot be",
        "The value lies outside what a rule of this kind can sensibly be: mostly a slip of the decimal point "
        "or the unit."},
    DiagnosticText{"rules.contradiction", "two rules that cannot both be",
                   "A caution level above its limit, or a lower end above its upper end."},
    DiagnosticText{
        "rules.missing", "a value that is required",
        "An object for a rule needs its value or its reference; a row of largest taps needs its largest tap, "
        "and where that is none, what is done instead."},
};

}  // namespace

std::span<const RuleField> rule_fields() { return fields; }
std::span<const TapLimitField> tap_limit_fields() { return tap_limits; }
std::span<const DiagnosticText> rules_diagnostic_texts() { return codes; }

}  // namespace mainbore
