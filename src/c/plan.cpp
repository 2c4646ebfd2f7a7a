#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "c/errors.hpp"
#include "c/planner.hpp"
#include "io/orders/verdict_record.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/sheet.hpp"

namespace mainbore::c {
namespace {

std::string verdict_line(const Plan& plan, UnitSystem units) {
  OrderRecord order;
  order.id = plan.job.id;
  io::RecordOptions record;
  record.units = units;
  record.rows = false;
  std::string text;
  const io::Decision decision = io::decision_of(plan, io::RecordShape::line, units);
  io::append_verdict_json(text, order, &decision, record);
  return text;
}

std::string card(const Plan& plan, UnitSystem units, Language language, bool full) {
  TextOptions options;
  options.units = units;
  options.language = language;
  options.why = options.steps = options.materials = full;
  return text_report(plan, options);
}

std::string text_of(const Plan& plan, const Asked& asked, UnitSystem units, Language language) {
  switch (asked.kind) {
    case MAINBORE_VERDICT:
      return verdict_line(plan, units);
    case MAINBORE_SHEET:
      return sheet_html(plan, {units, language});
    case MAINBORE_CARD:
    case MAINBORE_CARD_FULL:
      return card(plan, units, language, asked.kind == MAINBORE_CARD_FULL);
    default:
      break;
  }
  std::string text;
  append_plan_json(text, plan, units, asked.style,
                   asked.kind == MAINBORE_PLAN ? PlanScope::whole : PlanScope::decisions);
  return text;
}

int status_of(Verdict verdict) {
  return verdict == Verdict::go ? MAINBORE_GO : verdict == Verdict::hold ? MAINBORE_HOLD : MAINBORE_NO_GO;
}

int plan_text(const mainbore_planner& planner, std::string_view job, const Asked& asked, char** result) {
  JobFile read = read_job(job, "job", planner.planner.catalog());
  if (!read.job) {
    *result = handed_out(faults_to_json(read.diagnostics));
    return MAINBORE_UNREADABLE;
  }
  InForce taken = in_force(planner, asked);
  lay_settings_under(*read.job, planner.settings, taken.from);
  const PlanDepth depth = asked.kind == MAINBORE_VERDICT     ? PlanDepth::verdict
                          : asked.kind == MAINBORE_DECISIONS ? PlanDepth::decisions
                                                             : PlanDepth::whole;
  Plan plan = planner.planner.plan(*std::move(read.job), depth);
  plan.from_settings = std::move(taken.from);
  *result = handed_out(text_of(plan, asked, taken.units, taken.language));
  return *result == nullptr ? MAINBORE_INTERNAL : status_of(plan.verdict);
}

}  // namespace
}  // namespace mainbore::c

int mainbore_plan(const mainbore_planner* planner, const char* job, size_t size, unsigned what, char** result) {
  using namespace mainbore::c;
  if (result != nullptr) *result = nullptr;
  if (planner == nullptr || result == nullptr || (job == nullptr && size > 0)) {
    return refused(result, "planner, job and result must not be null");
  }
  const auto asked = asked_by(what);
  if (!asked) return refused(result, "what is asked for is not one of those that mainbore.h lists");
  return guarded(result, [&] { return plan_text(*planner, {size == 0 ? "" : job, size}, *asked, result); });
}
