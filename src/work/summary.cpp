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

std::string Summary::sentence() const {
  std::string text = work;
  if (!why.empty()) (text += ": ").append(why);
  if (!once.empty()) (text += ", ").append(once);
  return text + ".";
}

std::string Summary::whole() const { return std::string(verdict) + ": " + sentence(); }

Summary summary_of(const Plan& plan, UnitSystem system) {
  Summary summary;
  const bool wet = plan.job.main.pressurised.value_or(true);
  const std::string at = wet ? " at " + on_a_gauge(plan.job.main.pressure.value_or(plan.pressure.line), system)
                             : std::string(", drained");
  if (plan.verdict == Verdict::no_go || plan.method.kind == Method::none) {
    summary.verdict = "No-go";
    if (plan.job.service.size) summary.work = plan.job.service.size->label() + " in service, ";
    summary.work += main_in_words(plan) + at;
    const auto stop = std::find_if(plan.findings.begin(), plan.findings.end(),
                                   [](const Finding& finding) { return finding.severity == Severity::stop; });
    if (stop != plan.findings.end()) summary.why = text_of(stop->code).title;
    return summary;
  }
  summary.verdict = plan.verdict == Verdict::hold ? "Hold" : "Go";
  summary.work = work_in_words(plan) + at;
  if (plan.verdict == Verdict::hold) {
    const auto holds = std::count_if(plan.findings.begin(), plan.findings.end(),
                                     [](const Finding& finding) { return finding.severity == Severity::hold; });
    summary.once = "once " + std::to_string(holds) + (holds == 1 ? " hold is cleared" : " holds are cleared");
  }
  return summary;
}

}  // namespace mainbore
