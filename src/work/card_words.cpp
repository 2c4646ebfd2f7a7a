// What the card says of a finding, in a line, and who can clear it.
#include <array>

#include "mainbore/wording.hpp"
#include "work/filled_words.hpp"

namespace mainbore {
namespace {

using enum FindingCode;
using enum Clears;

struct Line {
  FindingCode code;
  Clears clears;
  // For a hold, an order that ends in what to write down; else what to know. Placeholders as in wording.cpp.
  std::string_view text;
};

// In the order of MAINBORE_FINDINGS.
constexpr std::array<Line, finding_codes.size()> lines = {{
    {identity_not_water, office, "Not drinking water: {0}. Do not tap; call its owner"},
    {identity_unknown, office, "Have the utility identify the pipe by two means"},
    {identity_unconfirmed, site, "Prove it is the water main by two means"},
    {main_not_in_catalogue, office, "Not in the tables: diameter, wall and rating"},
    {main_class_unknown, site, "Read the class on the barrel"},
    {main_class_not_made, site, "Class on the card was never made; read the barrel"},
    {main_class_word, site, "Class says {0}: read the class on the barrel"},
    {main_by_recollection, site, "Pipe told by recollection: read class on barrel"},
    {main_size_metric, site, "DN {0} is no US size: measure the circumference"},
    {main_year_contradicts, site, "Year does not fit the pipe; look at the barrel"},
    {main_not_yet_laid, office, "Main laid after the day of the tap; correct it"},
    {main_od_contradicts, site, "Diameter is not this pipe's; measure again"},
    {main_od_unsettled, site, "Measure the circumference; it picks the saddle"},
    {main_od_unknown, site, "Measure the circumference, then plan again"},
    {main_readings_disagree, site, "Caliper and tape disagree; measure again"},
    {main_wall_impossible, site, "Wall reading cannot be right; gauge again"},
    {main_wall_thin, site, "Wall is thin[; tap only where it reads {limit}|]"},
    {main_wall_unmeasured, site, "Gauge the wall at the tap[: at least {limit}|]"},
    {main_condition_unseen, site, "Look all round the pipe: sound, pitted or poor"},
    {main_condition_pitted, site, "Pitted: find sound wall under the whole seat"},
    {main_condition_poor, office, "Poor pipe: not tapped under pressure here"},
    {main_encased, site, "Film on the main: tape it, tap through, mend it"},
    {main_curved, site, "Bent pipe: move to a straight length, or a saddle"},
    {main_curve_unknown, site, "Lay a string along it: straight or bent"},
    {main_temperature_outside, site, "Pipe at {value}: tap only from {0} to {1}"},
    {main_temperature_unmeasured, site, "Read the pipe's temperature: {0} to {1}"},
    {main_freezing, site, "Pipe below freezing; do not cut, warm the pit"},
    {service_not_smaller, office, "Service as large as the main: engineer's choice"},
    {direct_not_allowed, office, "No direct tap in {0}"},
    {direct_over_maximum, office, "{0} is over the largest direct tap, {1}"},
    {direct_no_rule, office, "No rule for a direct tap here"},
    {direct_few_threads, office, "Too few threads: {value}, {limit} required"},
    {direct_thin_wall, site, "Gauge the wall at the tap: at least {1+}"},
    {direct_marginal_threads, site, "Threads just enough: sharp tap, saddle on truck"},
    {direct_recalled_thread, office, "Thread size recalled: check it on the stop"},
    {direct_thread_unknown, office, "Thread not in the tables; check the stop"},
    {direct_wrong_thread, office, "{0} is the wrong thread for this main"},
    {direct_hole_too_large, office, "Hole too large for this pipe"},
    {direct_wall_unknown, site, "Gauge the wall at the tap[: at least {limit}|]"},
    {saddle_not_allowed, office, "No saddle on {0}"},
    {saddle_over_maximum, office, "{0} is over the largest saddle tap, {1}"},
    {saddle_no_rule, office, "No rule for a saddle here"},
    {saddle_hole_too_large, office, "Hole too large for a saddle here"},
    {saddle_by_engineer, office, "Engineer's word on the saddle for this main"},
    {section_too_little_left, office, "Too little of the pipe left beside the hole"},
    {several_need_room, site, "Measure clear barrel for the taps: {limit}"},
    {several_no_room, office, "No room for several taps: {limit} needed"},
    {several_too_many, office, "Too many taps would be needed: {0}"},
    {several_not_taken, office, "Several small taps not offered"},
    {sleeve_not_allowed, office, "No sleeve on {0}"},
    {sleeve_over_maximum, office, "{0} is over the largest sleeve outlet, {1}"},
    {sleeve_no_rule, office, "No rule for a sleeve here"},
    {sleeve_to_be_chosen, office, "Choose and order the sleeve by measured diameter"},
    {method_not_as_asked, office, "{1}, not {0} as asked: tell who wrote it"},
    {method_none, office, "No method passes"},
    {pressure_over_pipe_rating, office, "Line over the pipe's rating of {limit}"},
    {pressure_over_feed_limit, office, "Lower the main to {limit}, or powered feed"},
    {pressure_over_machine_rating, office, "Lower the main to {limit}, or another machine"},
    {pressure_over_stop_rating, office, "Stop marked for at least {value+}"},
    {pressure_over_saddle_rating, office, "Saddle marked for at least {value+}"},
    {pressure_over_wet_tap_limit, office, "Lower the main to {limit} for the tap"},
    {pressure_surge_over_rating, office, "Ask what surge this main sees; {limit} allowed"},
    {pressure_surge_over_fitting, office, "{1} marked for {2+}, or learn the surge"},
    {pressure_rating_unknown, office, "Get the main's rating from the utility"},
    {pressure_too_warm, site, "Pipe too warm to hold pressure; shade and cool it"},
    {pressure_needs_regulator, office, "House needs a regulator: over {limit}"},
    {pressure_low_over_line, office, "Lowest pressure is above the highest; correct it"},
    {machine_unspecified, office, "Check pressure limits in the machine's papers"},
    {machine_wrong_size, office, "Machine for {0} taps; this one takes {1} to {2}"},
    {machine_no_powered_feed, office, "Powered feed asked for; this machine has none"},
    {machine_figures_missing, office, "Give the machine's missing figures"},
    {machine_no_saddle, office, "Machine saddle for {value} pipe"},
    {machine_gasket_small, office, "Seal hardly wider than the hole: {limit} needed"},
    {machine_figures_wrong, office, "Check {0}: it cannot be {value}"},
    {machine_stud_overloaded, office, "Studs too weak: thicker, or lower the line"},
    {machine_chain_short, office, "Chain of {limit}: extensions in all: {0}"},
    {machine_travel_short, office, "Machine with {limit} of bar travel"},
    {machine_reach_unknown, office, "Measure in the yard if the bar reaches through"},
    {machine_valve_not_clear, office, "Valve cannot shut behind the {0}"},
    {machine_tool_strikes_far_wall, office, "Shorter tool: {limit} clear of the far wall"},
    {machine_push_by_hand, site, "Line pushes the bar with {value}: hold it by screw"},
    {machine_chain_ovals_pipe, office, "Wide strap, not bare chain: it squeezes the pipe"},
    {makeup_by_trial, office, "Depth of tap and make-up by a trial piece"},
    {place_not_looked, site, "Look for joints and taps: {limit} clear"},
    {place_moved, site, "Moved {value} to clear {0}: measure there"},
    {place_no_room, office, "No clear place within {0}; another length"},
    {place_clock, office, "Place round the pipe outside the rule; use {0}"},
    {place_stagger, site, "A tap {0} away stands in line; turn this one"},
    {place_defect_near, site, "{0} near, {1} away: watch it while working"},
    {place_other_line, site, "{0} near, {1} away: find it by hand"},
    {value_recalled, office, "Check this value: {0}"},
    {service_size_not_made, office, "No {0} stop is made; read the size on the stop"},
    {service_not_tabulated, office, "{1} of {0}: in no table; read the size on it"},
    {service_existing_lead, office, "Old lead service: utility's word before it moves"},
    {service_existing_galvanized, office, "Old galvanized service: utility's word first"},
    {service_not_checked, office, "Water for the customer not worked out"},
    {service_code_unnamed, office, "Name the plumbing code of the fixture units"},
    {service_fixture_unknown, office, "Fixture number {1} is not in the code"},
    {service_curve_unread, office, "Give the peak flow; no demand curve covers it"},
    {service_starved, office, "Customer gets {value}; {limit} wanted"},
    {service_too_fast, office, "Water too fast in the service: {value}"},
    {service_meter_over, office, "Demand {value} over the meter's {limit}"},
    {service_meter_continuous, office, "Meter run hard without pause: {value}"},
    {service_line_small, office, "Service under the least size, {1}"},
    {clean_stock_too_weak, office, "Chlorine stock weaker than {limit}: fresh stock"},
    {clean_cannot_scour, site, "Flush before the meter; line too small to scour"},
    {clean_as_main, site, "Fill with chlorine, hold and sample, as a main"},
    {pit_not_checked, office, "Part of the pit not worked out"},
    {pit_not_located, office, "Locate ticket valid and all marks read"},
    {pit_soil_not_type_a, site, "Soil is planned as {0}, not Type A"},
    {pit_claimed_undisturbed, site, "How the main came there without a trench"},
    {pit_not_examined, site, "Competent person looks for signs of a cave-in"},
    {pit_protective_system, site, "Slope or shield the pit"},
    {pit_engineer, office, "Engineer designs the pit: deeper than {limit}"},
    {pit_distress, site, "Ground is moving: out, cut back or shield"},
    {pit_water, site, "Water in the pit: pump, and treat as Type C"},
    {pit_egress, site, "Ladder within {0} of anybody"},
    {pit_atmosphere, site, "Test the air: oxygen and gas"},
    {pit_guardrail, site, "Guard rails on the walkway"},
    {pit_spoil_too_near, site, "Move the spoil back: {limit}"},
    {pit_sewer_near, office, "Sewer {value} away: {limit}, or {0} below"},
    {pit_main_hangs, site, "Support the main: {0} hangs {1} from the tap"},
    {main_not_tapped, office, "The utility does not tap this main"},
    {main_perhaps_not_tapped, site, "Read the class: some of these are not tapped"},
    {season_closed, office, "Closed season {0} to {1}: leave in writing"},
    {season_date_unknown, office, "Give the day: no taps from {0} to {1}"},
    {place_cover, site, "Cover {value}, rule {limit}: ask the utility"},
    {place_cover_unknown, site, "Measure the cover: rule {limit}"},
    {service_tap_small, office, "Tap under the utility's smallest, {1}"},
    {rules_looser, office, "Utility's rule is looser than the default: {0}"},
    {pressure_over_line_rating, office, "Service tubing marked for at least {value+}"},
    {order_fact_unread, office, "Cannot be read on the order: {0}[, {1}|]"},
    {rules_consent, office, "Who takes a looser rule on: {0}"},
    {rules_consent_unnamed, office, "Looser rule without a name: {0}"},
    {several_over_maximum, office, "Taps of {0} are over the largest, {1}"},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].code != static_cast<FindingCode>(i)) return false;
  }
  return true;
}
static_assert(in_order(), "each finding has its line, in the order of MAINBORE_FINDINGS");

}  // namespace

Clears clears_by(FindingCode code) { return lines[static_cast<std::size_t>(code)].clears; }

std::string line_of(const Finding& finding, UnitSystem system, ReadingList readings) {
  return filled_words(lines[static_cast<std::size_t>(finding.code)].text, finding, system, readings);
}

std::string stop_of(const Finding& finding, UnitSystem system, ReadingList readings) {
  const FindingText& text = text_of(finding.code);
  return filled_words(text.detail, finding, system, readings) + ' ' + filled_words(text.fix, finding, system, readings);
}

}  // namespace mainbore
