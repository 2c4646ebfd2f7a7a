// Who can clear a finding, and the findings as a card says them.
#include <algorithm>
#include <array>

#include "mainbore/finding_words.hpp"
#include "mainbore/plan.hpp"
#include "words/findings.hpp"
#include "work/filled_words.hpp"

namespace mainbore {
namespace {

using enum FindingCode;
using enum Clears;

struct Row {
  FindingCode code;
  Clears clears;
};

// In the order of MAINBORE_FINDINGS.
constexpr std::array<Row, finding_codes.size()> rows = {{
    {identity_not_water, office},
    {identity_unknown, office},
    {identity_unconfirmed, site},
    {main_not_in_catalogue, office},
    {main_class_unknown, site},
    {main_class_not_made, site},
    {main_class_word, site},
    {main_by_recollection, site},
    {main_size_metric, site},
    {main_year_contradicts, site},
    {main_not_yet_laid, office},
    {main_od_contradicts, site},
    {main_od_unsettled, site},
    {main_od_unknown, site},
    {main_readings_disagree, site},
    {main_wall_impossible, site},
    {main_wall_thin, site},
    {main_wall_unmeasured, site},
    {main_condition_unseen, site},
    {main_condition_pitted, site},
    {main_condition_poor, office},
    {main_encased, site},
    {main_curved, site},
    {main_curve_unknown, site},
    {main_temperature_outside, site},
    {main_temperature_unmeasured, site},
    {main_freezing, site},
    {service_not_smaller, office},
    {direct_not_allowed, office},
    {direct_over_maximum, office},
    {direct_no_rule, office},
    {direct_few_threads, office},
    {direct_thin_wall, site},
    {direct_marginal_threads, site},
    {direct_recalled_thread, office},
    {direct_thread_unknown, office},
    {direct_wrong_thread, office},
    {direct_hole_too_large, office},
    {direct_wall_unknown, site},
    {saddle_not_allowed, office},
    {saddle_over_maximum, office},
    {saddle_no_rule, office},
    {saddle_hole_too_large, office},
    {saddle_by_engineer, office},
    {section_too_little_left, office},
    {several_need_room, site},
    {several_no_room, office},
    {several_too_many, office},
    {several_not_taken, office},
    {sleeve_not_allowed, office},
    {sleeve_over_maximum, office},
    {sleeve_no_rule, office},
    {sleeve_to_be_chosen, office},
    {method_not_as_asked, office},
    {method_none, office},
    {pressure_over_pipe_rating, office},
    {pressure_over_feed_limit, office},
    {pressure_over_machine_rating, office},
    {pressure_over_stop_rating, office},
    {pressure_over_saddle_rating, office},
    {pressure_over_wet_tap_limit, office},
    {pressure_surge_over_rating, office},
    {pressure_surge_over_fitting, office},
    {pressure_rating_unknown, office},
    {pressure_too_warm, site},
    {pressure_needs_regulator, office},
    {pressure_low_over_line, office},
    {pressure_system_low, office},
    {machine_unspecified, office},
    {machine_wrong_size, office},
    {machine_no_powered_feed, office},
    {machine_figures_missing, office},
    {machine_no_saddle, office},
    {machine_gasket_small, office},
    {machine_figures_wrong, office},
    {machine_stud_overloaded, office},
    {machine_chain_short, office},
    {machine_travel_short, office},
    {machine_reach_unknown, office},
    {machine_valve_not_clear, office},
    {machine_tool_strikes_far_wall, office},
    {machine_push_by_hand, site},
    {machine_chain_ovals_pipe, office},
    {makeup_by_trial, office},
    {makeup_trial_off, office},
    {place_not_looked, site},
    {place_moved, site},
    {place_no_room, office},
    {place_clock, office},
    {place_stagger, site},
    {place_defect_near, site},
    {place_other_line, site},
    {value_recalled, office},
    {service_size_not_made, office},
    {service_not_tabulated, office},
    {service_existing_lead, office},
    {service_existing_galvanized, office},
    {service_not_checked, office},
    {service_code_unnamed, office},
    {service_fixture_unknown, office},
    {service_curve_unread, office},
    {service_starved, office},
    {service_too_high, office},
    {service_too_fast, office},
    {service_meter_over, office},
    {service_meter_continuous, office},
    {service_line_small, office},
    {clean_stock_too_weak, office},
    {clean_cannot_scour, site},
    {clean_as_main, site},
    {pit_not_checked, office},
    {pit_not_located, office},
    {pit_soil_not_type_a, site},
    {pit_claimed_undisturbed, site},
    {pit_not_examined, site},
    {pit_protective_system, site},
    {pit_engineer, office},
    {pit_distress, site},
    {pit_water, site},
    {pit_egress, site},
    {pit_atmosphere, site},
    {pit_guardrail, site},
    {pit_spoil_too_near, site},
    {pit_sewer_near, office},
    {pit_main_hangs, site},
    {main_not_tapped, office},
    {main_perhaps_not_tapped, site},
    {season_closed, office},
    {season_date_unknown, office},
    {place_cover, office},
    {place_cover_unknown, site},
    {service_tap_small, office},
    {rules_looser, office},
    {pressure_over_line_rating, office},
    {order_fact_unread, office},
    {rules_consent, office},
    {rules_consent_unnamed, office},
    {several_over_maximum, office},
    {service_tap_too_fast, office},
    {service_meter_share, office},
    {service_line_against_tap, office},
    {sleeve_too_small, office},
    {sleeve_hole_too_large, office},
    {approved_none_fits, office},
    {approved_no_tool_fits, office},
    {service_cover, office},
    {service_cover_unknown, office},
    {service_line_near, office},
    {service_line_near_unknown, office},
    {service_line_close, office},
    {main_air_cold, site},
    {main_air_unknown, site},
    {service_dwellings_size, office},
    {service_dwellings_unknown, office},
    {service_dwellings_unlisted, office},
    {service_premises, office},
    {service_premises_unknown, office},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].code != static_cast<FindingCode>(i)) return false;
  }
  return true;
}
static_assert(in_order(), "each finding has its row, in the order of MAINBORE_FINDINGS");

}  // namespace

Clears clears_by(FindingCode code) { return rows[static_cast<std::size_t>(code)].clears; }

std::optional<Clears> waits_for(const Plan& plan) {
  if (plan.verdict != Verdict::hold) return std::nullopt;
  const bool of_office = std::any_of(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
    return finding.severity == Severity::hold && clears_by(finding.code) == Clears::office;
  });
  return of_office ? Clears::office : Clears::site;
}

std::string line_of(const Finding& finding, Audience audience, StopNumbers readings) {
  return filled_words(words::finding_line(finding.code, audience.language), finding, audience, readings);
}

std::string stop_of(const Finding& finding, Audience audience, StopNumbers readings) {
  const FindingText& text = text_of(finding.code, audience.language);
  return filled_words(text.detail, finding, audience, readings) + ' ' +
         filled_words(text.fix, finding, audience, readings);
}

}  // namespace mainbore
