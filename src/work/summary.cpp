#include <algorithm>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "mainbore/wording.hpp"

namespace mainbore {
namespace {

std::string main_in_words(const Plan& plan) {
  return plan.main.size.label() + " in " + std::string(name_of(plan.main.material)) + " main";
}

// As a gauge is read: whole psi or kPa, rather too many.
std::string on_a_gauge(Pressure pressure, UnitSystem system) {
  const Shown exact = shown(Measure(pressure), system);
  std::string text;
  append_number(text, std::ceil(exact.value - 1e-6), 0);
  return (text += ' ').append(exact.unit);
}

// "1 in direct tap in a ...", "3 direct taps of 3/4 in in a ..."
std::string work_in_words(const Plan& plan) {
  const ChosenMethod& method = plan.method;
  const std::string size = method.tap.label() + " in";
  std::string text;
  switch (method.kind) {
    case Method::direct:
      text =
          method.count > 1 ? std::to_string(method.count) + " direct taps, " + size + " each," : size + " direct tap";
      text += " in the ";
      break;
    case Method::saddle:
      text = method.count > 1 ? std::to_string(method.count) + " saddle taps, " + size + " each,"
                              : size + " tap through a saddle";
      text += " on the ";
      break;
    case Method::sleeve:
      text = size + " outlet through a tapping sleeve on the ";
      break;
    case Method::none:
      break;
  }
  return text + main_in_words(plan);
}

}  // namespace

std::string summary_of(const Plan& plan, UnitSystem system) {
  const bool wet = plan.job.main.pressurised.value_or(true);
  const std::string at = wet ? " at " + on_a_gauge(plan.job.main.pressure.value_or(plan.pressure.line), system)
                             : std::string(", drained");
  if (plan.verdict == Verdict::no_go || plan.method.kind == Method::none) {
    std::string text = "No-go: ";
    if (plan.job.service.size) text += plan.job.service.size->label() + " in service, ";
    text += main_in_words(plan) + at;
    const auto stop = std::find_if(plan.findings.begin(), plan.findings.end(),
                                   [](const Finding& finding) { return finding.severity == Severity::stop; });
    if (stop != plan.findings.end()) (text += ": ").append(text_of(stop->code).title);
    return text + ".";
  }
  const auto holds = std::count_if(plan.findings.begin(), plan.findings.end(),
                                   [](const Finding& finding) { return finding.severity == Severity::hold; });
  std::string text = (plan.verdict == Verdict::hold ? "Hold: " : "Go: ") + work_in_words(plan) + at;
  if (plan.verdict == Verdict::hold) {
    text += ", once " + std::to_string(holds) + (holds == 1 ? " hold is cleared" : " holds are cleared");
  }
  return text + ".";
}

std::string_view reading_for(FindingCode code) {
  using enum FindingCode;
  switch (code) {
    case identity_unconfirmed:
    case identity_unknown:
      return "Proved by (two means)";
    case main_class_unknown:
    case main_class_not_made:
    case main_class_word:
      return "Class on the barrel";
    case main_year_contradicts:
    case main_not_yet_laid:
      return "Read on the barrel";
    case main_curve_unknown:
      return "Straight, or bent";
    case main_od_contradicts:
    case main_od_unknown:
    case main_not_in_catalogue:
    case sleeve_to_be_chosen:
    case main_readings_disagree:
      return "Outside diameter";
    case main_od_unsettled:
    case main_size_metric:
      return "Circumference";
    case main_wall_impossible:
    case main_wall_thin:
    case main_wall_unmeasured:
    case direct_wall_unknown:
    case direct_thin_wall:
      return "Least wall";
    case main_temperature_outside:
    case main_temperature_unmeasured:
    case main_freezing:
    case pressure_too_warm:
      return "Pipe temperature";
    case pressure_over_feed_limit:
    case pressure_over_machine_rating:
    case pressure_over_wet_tap_limit:
    case pressure_low_over_line:
      return "Line at the gauge";
    case pressure_over_stop_rating:
      return "Rating on the stop";
    case pressure_over_saddle_rating:
      return "Rating on the saddle";
    case pressure_over_line_rating:
      return "Rating on the tubing";
    case order_fact_unread:
      return "Meant, and by whom";
    case pressure_over_pipe_rating:
    case pressure_rating_unknown:
      return "Rating of the pipe";
    case pressure_surge_over_rating:
      return "Surge of this main";
    case pressure_surge_over_fitting:
      return "Rating on the fitting";
    case several_need_room:
      return "Clear barrel";
    case place_not_looked:
      return "Nearest thing";
    case place_moved:
    case place_no_room:
      return "Clear distance";
    case machine_unspecified:
      return "Limit in its papers";
    case machine_wrong_size:
    case machine_no_powered_feed:
      return "Machine brought";
    case machine_no_saddle:
      return "Saddle seats on";
    case machine_figures_wrong:
      return "Figure measured";
    case machine_figures_missing:
      return "Figures, or shown on";
    case machine_stud_overloaded:
      return "Studs brought";
    case machine_chain_ovals_pipe:
      return "Held with";
    case method_not_as_asked:
      return "Agreed with";
    case machine_chain_short:
      return "Chain, hook to hook";
    case machine_reach_unknown:
      return "Lengths measured";
    case machine_valve_not_clear:
      return "Valve shuts behind it";
    case place_stagger:
      return "Clock of that tap";
    case service_size_not_made:
    case service_not_tabulated:
      return "Size read";
    case machine_travel_short:
      return "Travel of the bar";
    case machine_tool_strikes_far_wall:
      return "Clear of the far wall";
    case main_condition_unseen:
    case main_condition_pitted:
      return "Condition seen";
    case service_starved:
    case service_too_fast:
    case service_meter_over:
      return "Line and meter set";
    case service_code_unnamed:
    case service_fixture_unknown:
    case service_curve_unread:
      return "Peak flow";
    case service_existing_lead:
    case service_existing_galvanized:
      return "Utility's word";
    case clean_stock_too_weak:
      return "Label of the stock";
    case pit_not_located:
      return "Ticket number";
    case pit_claimed_undisturbed:
    case pit_not_examined:
    case pit_distress:
    case pit_water:
      return "Looked at by";
    case pit_protective_system:
      return "Sloped or shielded";
    case pit_atmosphere:
      return "Oxygen and gas";
    case pit_spoil_too_near:
      return "Spoil from the edge";
    case season_closed:
    case season_date_unknown:
      return "Day, or leave by";
    case rules_consent:
    case rules_consent_unnamed:
      return "Consent by, on";
    case place_cover:
    case place_cover_unknown:
      return "Cover at the tap";
    case main_perhaps_not_tapped:
      return "Class on the barrel";
    case service_tap_small:
      return "Tap made";
    case pit_sewer_near:
      return "Sewer is away, below";
    case pit_engineer:
    case saddle_by_engineer:
    case place_clock:
      return "Engineer's word";
    default:
      return "Found";
  }
}

}  // namespace mainbore
