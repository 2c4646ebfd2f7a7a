// What the report of a week may say of one order.

#include "mainbore/finding_words.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "mainbore/sheet.hpp"
#include "report/text_page.hpp"
#include "report/week.hpp"

namespace mainbore::report {
namespace {

std::string first_line(std::string_view text) { return std::string(text.substr(0, text.find('\n'))); }

// A help of one line; further lines are further hints.
WeekReason reason_of(const Diagnostic& told) {
  WeekReason reason;
  reason.what = told.pointer;
  reason.why = told.message;
  reason.fix = first_line(told.help);
  return reason;
}

// Between what the reading must lie; empty where the limit of the finding is of something else than the reading.
std::string bound_of(const Plan& plan, const Finding& finding, UnitSystem units) {
  using enum FindingCode;
  if (const auto id = reading_that_clears(finding.code)) {
    if (const StopNumber* reading = plan.stop_number(*id)) return bounds_in_words(*reading, units);
  }
  switch (finding.code) {
    case pressure_over_stop_rating:
    case pressure_over_saddle_rating:
    case pressure_over_pipe_rating:
    case pressure_over_line_rating:
      return finding.value ? "at least " + format_measure(*finding.value, units, Toward::more) : std::string();
    case pressure_over_feed_limit:
    case pressure_over_machine_rating:
    case pressure_over_wet_tap_limit:
    case main_temperature_outside:
    case main_wall_thin:
    case main_wall_unmeasured:
    case direct_thin_wall:
    case direct_wall_unknown:
    case several_need_room:
    case place_not_looked:
    case place_moved:
    case machine_chain_short:
    case machine_valve_not_clear:
    case machine_travel_short:
    case machine_tool_strikes_far_wall:
      if (!finding.limit) return {};
      if (finding.limit_is_least) return "at least " + format_measure(*finding.limit, units, Toward::more);
      return "at most " + format_measure(*finding.limit, units, Toward::less);
    default:
      return {};
  }
}

WeekReason reason_of(const Plan& plan, const Finding& finding, UnitSystem units) {
  WeekReason reason;
  reason.code = finding.code;
  reason.what = text_of(finding.code).title;
  reason.why = detail_of(finding, units, plan.stop_numbers);
  reason.fix = fix_of(finding, units, plan.stop_numbers);
  if (finding.severity != Severity::hold) return reason;
  reason.reading = reading_for(finding.code);
  reason.bound = bound_of(plan, finding, units);
  if (clears_by(finding.code) == Clears::site) return reason;
  reason.ask = question_of(finding, units, plan.stop_numbers);
  reason.whom = whom_to_ask(finding.code);
  return reason;
}

// Where no method passes, why each does not is the reason, and what the last one advises the way forward.
WeekReason reason_of_methods(const Plan& plan, const Finding& finding, UnitSystem units) {
  WeekReason reason = reason_of(plan, finding, units);
  const std::vector<RejectedMethod>& rejected = plan.method.rejected;
  if (rejected.empty()) return reason;
  reason.why.clear();
  for (const RejectedMethod& method : rejected) {
    if (!reason.why.empty()) reason.why += ' ';
    reason.why += method.count > 1                ? "Several taps"
                  : method.kind == Method::direct ? "Direct tap"
                  : method.kind == Method::saddle ? "Saddle"
                                                  : "Sleeve";
    reason.why += ": " + detail_of(method.why, units);
  }
  return reason;
}

// Things of which a yard may have one.
std::vector<std::string> scarce_things(const Plan& plan) {
  std::vector<std::string> things;
  if (plan.verdict == Verdict::no_go || plan.method.kind == Method::none) return things;
  if (plan.method.kind == Method::sleeve) {
    things.emplace_back("a machine for cutting through a sleeve");
    return things;
  }
  const Setup& setup = plan.setup;
  const bool over_hand = plan.finding(FindingCode::pressure_over_feed_limit) != nullptr;
  if (setup.feed == Feed::powered || over_hand) things.emplace_back("a powered feed");
  if (setup.machine != nullptr && setup.machine->maker_figures) things.push_back(setup.machine->title);
  return things;
}

}  // namespace

WeekOrder week_order(const OrderRecord& order, const Plan* plan, const WeekOrderOptions& options) {
  WeekOrder week;
  week.where = "row " + std::to_string(order.row) + ", line " + std::to_string(order.line);
  if (!options.file.empty()) week.where = std::string(options.file) + ", " + week.where;
  const std::string& id = plan == nullptr ? order.id : plan->job.id;
  week.name = id.empty() ? "row " + std::to_string(order.row) : printable(id);
  for (const Diagnostic& told : order.remarks) week.remarks.push_back(told.message);
  if (plan == nullptr) {
    week.end = WeekEnd::unreadable;
    for (const Diagnostic& told : order.diagnostics) week.reasons.push_back(reason_of(told));
    return week;
  }
  week.date = printable(plan->job.date);
  week.crew = printable(plan->job.crew);
  week.place = printable(plan->job.place);
  const auto who = waits_for(*plan);
  week.end = plan->verdict == Verdict::go ? WeekEnd::go
             : !who                       ? WeekEnd::no_go
             : *who == Clears::office     ? WeekEnd::office
                                          : WeekEnd::ready;
  if (week.end != WeekEnd::go) {
    // Verdict and holds have headings of their own.
    Summary summary = summary_of(*plan, options.units);
    week.summary = who ? std::move(summary.work) : summary.sentence();
    const Severity counts = who ? Severity::hold : Severity::stop;
    for (const Finding& finding : plan->findings) {
      if (finding.severity != counts) continue;
      week.reasons.push_back(finding.code == FindingCode::method_none ? reason_of_methods(*plan, finding, options.units)
                                                                      : reason_of(*plan, finding, options.units));
    }
  }
  week.load = load_list(*plan, options.units);
  week.scarce = scarce_things(*plan);
  if (options.sheets) {
    week.language = options.language;
    append_sheet_body(week.sheet, *plan, {options.units, options.language},
                      options.orders_before + static_cast<int>(order.row));
  }
  return week;
}

}  // namespace mainbore::report
