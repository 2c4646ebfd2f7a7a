// Findings: what a check has to say.
//
// A finding is data: a stable code, a severity, the numbers, what it rests on. Its words (title, detail, what to do) are
// made from the code and the numbers by finding_words.hpp, so that planning never handles text and every reader sees the same
// sentence. Codes only grow; scripts rely on them.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <variant>

#include "mainbore/catalog.hpp"
#include "mainbore/job.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/nominal_size.hpp"

namespace mainbore {

enum class Verdict : std::uint8_t { go, hold, no_go };
[[nodiscard]] constexpr std::string_view name_of(Verdict v) {
  return v == Verdict::go ? "go" : v == Verdict::hold ? "hold" : "no-go";
}

// `stop` forces no-go, or rejects the one method it was found against.
enum class Severity : std::uint8_t { note, caution, hold, stop };
inline constexpr std::array<std::string_view, 4> severity_names = {"note", "caution", "hold", "stop"};
[[nodiscard]] constexpr std::string_view name_of(Severity s) { return severity_names[static_cast<std::size_t>(s)]; }

// MAINBORE_FINDING(enumerator, "code")
#define MAINBORE_FINDINGS(X) \
  X(identity_not_water, "identity.not-water") \
  X(identity_unknown, "identity.unknown") \
  X(identity_unconfirmed, "identity.unconfirmed") \
  X(main_not_in_catalogue, "main.not-in-catalogue") \
  X(main_class_unknown, "main.class-unknown") \
  X(main_class_not_made, "main.class-not-made") \
  X(main_class_word, "main.class-word") \
  X(main_by_recollection, "main.by-recollection") \
  X(main_size_metric, "main.size-metric") \
  X(main_year_contradicts, "main.year-contradicts") \
  X(main_not_yet_laid, "main.not-yet-laid") \
  X(main_od_contradicts, "main.od-contradicts") \
  X(main_od_unsettled, "main.od-unsettled") \
  X(main_od_unknown, "main.od-unknown") \
  X(main_readings_disagree, "main.readings-disagree") \
  X(main_wall_impossible, "main.wall-impossible") \
  X(main_wall_thin, "main.wall-thin") \
  X(main_wall_unmeasured, "main.wall-unmeasured") \
  X(main_condition_unseen, "main.condition-unseen") \
  X(main_condition_pitted, "main.condition-pitted") \
  X(main_condition_poor, "main.condition-poor") \
  X(main_encased, "main.encased") \
  X(main_curved, "main.curved") \
  X(main_curve_unknown, "main.curve-unknown") \
  X(main_temperature_outside, "main.temperature-outside") \
  X(main_temperature_unmeasured, "main.temperature-unmeasured") \
  X(main_freezing, "main.freezing") \
  X(service_not_smaller, "service.not-smaller") \
  X(direct_not_allowed, "direct.not-allowed") \
  X(direct_over_maximum, "direct.over-maximum") \
  X(direct_no_rule, "direct.no-rule") \
  X(direct_few_threads, "direct.few-threads") \
  X(direct_thin_wall, "direct.thin-wall") \
  X(direct_marginal_threads, "direct.marginal-threads") \
  X(direct_recalled_thread, "direct.recalled-thread") \
  X(direct_thread_unknown, "direct.thread-unknown") \
  X(direct_wrong_thread, "direct.wrong-thread") \
  X(direct_hole_too_large, "direct.hole-too-large") \
  X(direct_wall_unknown, "direct.wall-unknown") \
  X(saddle_not_allowed, "saddle.not-allowed") \
  X(saddle_over_maximum, "saddle.over-maximum") \
  X(saddle_no_rule, "saddle.no-rule") \
  X(saddle_hole_too_large, "saddle.hole-too-large") \
  X(saddle_by_engineer, "saddle.by-engineer") \
  X(section_too_little_left, "section.too-little-left") \
  X(several_need_room, "several.need-room") \
  X(several_no_room, "several.no-room") \
  X(several_too_many, "several.too-many") \
  X(several_not_taken, "several.not-taken") \
  X(sleeve_not_allowed, "sleeve.not-allowed") \
  X(sleeve_over_maximum, "sleeve.over-maximum") \
  X(sleeve_no_rule, "sleeve.no-rule") \
  X(sleeve_to_be_chosen, "sleeve.to-be-chosen") \
  X(method_not_as_asked, "method.not-as-asked") \
  X(method_none, "method.none") \
  X(pressure_over_pipe_rating, "pressure.over-pipe-rating") \
  X(pressure_over_feed_limit, "pressure.over-feed-limit") \
  X(pressure_over_machine_rating, "pressure.over-machine-rating") \
  X(pressure_over_stop_rating, "pressure.over-stop-rating") \
  X(pressure_over_saddle_rating, "pressure.over-saddle-rating") \
  X(pressure_over_wet_tap_limit, "pressure.over-wet-tap-limit") \
  X(pressure_surge_over_rating, "pressure.surge-over-rating") \
  X(pressure_surge_over_fitting, "pressure.surge-over-fitting") \
  X(pressure_rating_unknown, "pressure.rating-unknown") \
  X(pressure_too_warm, "pressure.too-warm") \
  X(pressure_needs_regulator, "pressure.needs-regulator") \
  X(pressure_low_over_line, "pressure.low-over-line") \
  X(pressure_system_low, "pressure.system-low") \
  X(machine_unspecified, "machine.unspecified") \
  X(machine_wrong_size, "machine.wrong-size") \
  X(machine_no_powered_feed, "machine.no-powered-feed") \
  X(machine_figures_missing, "machine.figures-missing") \
  X(machine_no_saddle, "machine.no-saddle") \
  X(machine_gasket_small, "machine.gasket-small") \
  X(machine_figures_wrong, "machine.figures-wrong") \
  X(machine_stud_overloaded, "machine.stud-overloaded") \
  X(machine_chain_short, "machine.chain-short") \
  X(machine_travel_short, "machine.travel-short") \
  X(machine_reach_unknown, "machine.reach-unknown") \
  X(machine_valve_not_clear, "machine.valve-not-clear") \
  X(machine_tool_strikes_far_wall, "machine.tool-strikes-far-wall") \
  X(machine_push_by_hand, "machine.push-by-hand") \
  X(machine_chain_ovals_pipe, "machine.chain-ovals-pipe") \
  X(makeup_by_trial, "makeup.by-trial") \
  X(makeup_trial_off, "makeup.trial-off") \
  X(place_not_looked, "place.not-looked") \
  X(place_moved, "place.moved") \
  X(place_no_room, "place.no-room") \
  X(place_clock, "place.clock") \
  X(place_stagger, "place.stagger") \
  X(place_defect_near, "place.defect-near") \
  X(place_other_line, "place.other-line") \
  X(value_recalled, "value.recalled") \
  X(service_size_not_made, "service.size-not-made") \
  X(service_not_tabulated, "service.not-tabulated") \
  X(service_existing_lead, "service.existing-lead") \
  X(service_existing_galvanized, "service.existing-galvanized") \
  X(service_not_checked, "service.not-checked") \
  X(service_code_unnamed, "service.code-unnamed") \
  X(service_fixture_unknown, "service.fixture-unknown") \
  X(service_curve_unread, "service.curve-unread") \
  X(service_starved, "service.starved") \
  X(service_too_high, "service.too-high") \
  X(service_too_fast, "service.too-fast") \
  X(service_meter_over, "service.meter-over") \
  X(service_meter_continuous, "service.meter-continuous") \
  X(service_line_small, "service.line-small") \
  X(clean_stock_too_weak, "clean.stock-too-weak") \
  X(clean_cannot_scour, "clean.cannot-scour") \
  X(clean_as_main, "clean.as-main") \
  X(pit_not_checked, "pit.not-checked") \
  X(pit_not_located, "pit.not-located") \
  X(pit_soil_not_type_a, "pit.soil-not-type-a") \
  X(pit_claimed_undisturbed, "pit.claimed-undisturbed") \
  X(pit_not_examined, "pit.not-examined") \
  X(pit_protective_system, "pit.protective-system") \
  X(pit_engineer, "pit.engineer") \
  X(pit_distress, "pit.distress") \
  X(pit_water, "pit.water") \
  X(pit_egress, "pit.egress") \
  X(pit_atmosphere, "pit.atmosphere") \
  X(pit_guardrail, "pit.guardrail") \
  X(pit_spoil_too_near, "pit.spoil-too-near") \
  X(pit_sewer_near, "pit.sewer-near") \
  X(pit_main_hangs, "pit.main-hangs") \
  X(main_not_tapped, "main.not-tapped") \
  X(main_perhaps_not_tapped, "main.perhaps-not-tapped") \
  X(season_closed, "season.closed") \
  X(season_date_unknown, "season.date-unknown") \
  X(place_cover, "place.cover") \
  X(place_cover_unknown, "place.cover-unknown") \
  X(service_tap_small, "service.tap-small") \
  X(rules_looser, "rules.looser") \
  X(pressure_over_line_rating, "pressure.over-line-rating") \
  X(order_fact_unread, "order.fact-unread") \
  X(rules_consent, "rules.consent") \
  X(rules_consent_unnamed, "rules.consent-unnamed") \
  X(several_over_maximum, "several.over-maximum") \
  X(service_tap_too_fast, "service.tap-too-fast") \
  X(service_meter_share, "service.meter-share") \
  X(service_line_against_tap, "service.line-against-tap") \
  X(sleeve_too_small, "sleeve.too-small") \
  X(sleeve_hole_too_large, "sleeve.hole-too-large") \
  X(approved_none_fits, "approved.none-fits") \
  X(approved_no_tool_fits, "approved.no-tool-fits") \
  X(service_cover, "service.cover") \
  X(service_cover_unknown, "service.cover-unknown") \
  X(service_line_near, "service.line-near") \
  X(service_line_near_unknown, "service.line-near-unknown") \
  X(service_line_close, "service.line-close") \
  X(main_air_cold, "main.air-cold") \
  X(main_air_unknown, "main.air-unknown") \
  X(service_dwellings_size, "service.dwellings-size") \
  X(service_dwellings_unknown, "service.dwellings-unknown") \
  X(service_dwellings_unlisted, "service.dwellings-unlisted") \
  X(service_premises, "service.premises") \
  X(service_premises_unknown, "service.premises-unknown")

enum class FindingCode : std::uint8_t {
#define MAINBORE_FINDING(name, code) name,
  MAINBORE_FINDINGS(MAINBORE_FINDING)
#undef MAINBORE_FINDING
};

inline constexpr std::array finding_codes = {
#define MAINBORE_FINDING(name, code) std::string_view(code),
    MAINBORE_FINDINGS(MAINBORE_FINDING)
#undef MAINBORE_FINDING
};

[[nodiscard]] constexpr std::string_view name_of(FindingCode code) {
  return finding_codes[static_cast<std::size_t>(code)];
}
[[nodiscard]] std::optional<FindingCode> finding_named(std::string_view code);

// A number or a name that a finding's words need. Text points into the catalog, the rules or a literal.
using Detail = std::variant<std::monostate, Measure, NominalSize, std::string_view, int, ClockPosition, ShortText>;

struct Finding {
  FindingCode code = FindingCode::method_none;
  Severity severity = Severity::note;
  std::optional<Measure> value;   // what was found
  std::optional<Measure> limit;   // what is allowed
  std::array<Detail, 4> details;  // {0} to {3} of the wording
  std::array<const Basis*, 3> basis{};

  // How far inside the limit the value lies, negative when outside: for a least limit set `limit_is_least`.
  bool limit_is_least = false;
  [[nodiscard]] std::optional<Measure> margin() const {
    if (!value || !limit) return std::nullopt;
    const double gap = limit->base() - value->base();
    return Measure(limit_is_least ? -gap : gap, value->kind());
  }
};

}  // namespace mainbore
