#include <algorithm>
#include <cmath>

#include "mainbore/finding_words.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "words/card.hpp"
#include "words/terms.hpp"

namespace mainbore {
namespace {

using words::CardWord;

std::string main_in_words(const Plan& plan, Language language) {
  return say(
      CardWord::main, language,
      {{"size", plan.main.size.label() + " in"}, {"material", words::term(name_of(plan.main.material), language)}});
}

// As a gauge is read: whole psi or kPa, rather too many.
std::string on_a_gauge(Pressure pressure, UnitSystem system) {
  const Shown exact = shown(Measure(pressure), system);
  std::string text;
  append_number(text, std::ceil(exact.value - 1e-6), 0);
  return (text += ' ').append(exact.unit);
}

// "1 in direct tap in the ...", "3 direct taps, 3/4 in each, in the ..."
CardWord work_of(const ChosenMethod& method) {
  const bool several = method.count > 1;
  switch (method.kind) {
    case Method::direct:
      return several ? CardWord::direct_taps : CardWord::direct_tap;
    case Method::saddle:
      return several ? CardWord::saddle_taps : CardWord::saddle_tap;
    case Method::sleeve:
    case Method::none:
      break;
  }
  return CardWord::sleeve_tap;
}

}  // namespace

std::string Summary::sentence() const {
  std::string text = work;
  if (!why.empty()) (text += ": ").append(why);
  if (!once.empty()) (text += ", ").append(once);
  return text + ".";
}

std::string Summary::whole() const { return std::string(verdict) + ": " + sentence(); }

Summary summary_of(const Plan& plan, Audience audience) {
  const Language language = audience.language;
  Summary summary;
  const std::string main = main_in_words(plan, language);
  const bool wet = plan.job.main.is_pressurized();
  const std::string at =
      wet ? say(CardWord::at_pressure, language,
                {{"pressure", on_a_gauge(plan.job.main.pressure.value_or(plan.pressure.line), audience)}})
          : std::string(say(CardWord::drained, language));
  if (plan.verdict == Verdict::no_go || plan.method.kind == Method::none) {
    summary.verdict = "No-go";
    const std::string size = plan.job.service.size ? plan.job.service.size->label() + " in" : std::string();
    summary.work = say(CardWord::service, language, {{"size", size}, {"main", main}}) + at;
    const auto stop = std::find_if(plan.findings.begin(), plan.findings.end(),
                                   [](const Finding& finding) { return finding.severity == Severity::stop; });
    if (stop != plan.findings.end()) summary.why = text_of(stop->code, language).title;
    return summary;
  }
  summary.verdict = plan.verdict == Verdict::hold ? "Hold" : "Go";
  const std::string count = std::to_string(plan.method.count);
  const std::string size = plan.method.tap.label() + " in";
  summary.work = say(work_of(plan.method), language, {{"count", count}, {"size", size}, {"main", main}}) + at;
  if (plan.verdict == Verdict::hold) {
    const auto holds = std::count_if(plan.findings.begin(), plan.findings.end(),
                                     [](const Finding& finding) { return finding.severity == Severity::hold; });
    summary.once = say(holds == 1 ? CardWord::one_hold : CardWord::holds, language, {{"count", std::to_string(holds)}});
  }
  return summary;
}

}  // namespace mainbore
