#include "report/calculation_lines.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "mainbore/calculation.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/fingerprint.hpp"
#include "mainbore/work.hpp"

namespace mainbore::report {
namespace {

std::string in_figures(Measure measure, UnitSystem system) {
  const Shown display = shown_in_calculation(measure, system);
  std::string text;
  append_number(text, display.value, display.decimals);
  if (!display.unit.empty()) (text += ' ') += display.unit;
  return text;
}

std::string in_figures(const Detail& value, UnitSystem system) {
  if (const auto* measure = std::get_if<Measure>(&value)) return in_figures(*measure, system);
  if (const auto* whole = std::get_if<int>(&value)) return std::to_string(*whole);
  return {};
}

std::string how_in_words(const Basis& basis) {
  if (basis.how == How::memory) return std::string(check_this_value);
  return std::string(name_of(basis.how));
}

std::string source_in_words(From from, const Basis& basis) {
  if (basis.utility)
    return "the utility's rule" + (basis.reference != nullptr ? ": " + *basis.reference : std::string());
  if (from == From::measured) return "measured at the pipe";
  if (basis.how == How::stated_in_settings) return "given by the settings file";
  std::string text = from == From::assumed ? "assumed; " : from == From::rule ? "rule; " : "";
  if (basis.source == nullptr) {
    if (basis.how == How::stated) return from == From::assumed ? "assumed from the job" : "given by the job";
    if (basis.how == How::derived) return text + "as planned";
    return text + how_in_words(basis);
  }
  return text + basis.source->brief + " (" + how_in_words(basis) + ")";
}

// Whether a number, a bracket or a sign may follow a name without a space.
bool in_name(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; }

// The formula with figures in the place of its symbols; one that is raised to a power, or negative, in brackets.
std::string with_figures(std::string_view formula, const std::vector<CalculationFigure>& figures) {
  std::string out;
  for (std::size_t i = 0; i < formula.size();) {
    if (!in_name(formula[i]) || std::isdigit(static_cast<unsigned char>(formula[i])) != 0) {
      const bool number = std::isdigit(static_cast<unsigned char>(formula[i])) != 0;
      do out += formula[i++];
      while (number && i < formula.size() &&
             (std::isdigit(static_cast<unsigned char>(formula[i])) != 0 || formula[i] == '.'));
      continue;
    }
    std::size_t end = i;
    while (end < formula.size() && in_name(formula[end])) ++end;
    const std::string_view name = formula.substr(i, end - i);
    const auto figure =
        std::find_if(figures.begin(), figures.end(), [&](const CalculationFigure& f) { return f.symbol == name; });
    if (figure == figures.end()) out += name;
    else if ((end < formula.size() && formula[end] == '^') || figure->value.starts_with('-'))
      out += "(" + figure->value + ")";
    else out += figure->value;
    i = end;
  }
  return out;
}

// "n" of "R = D / 2; n = t / p".
std::string_view result_symbol(std::string_view formula) {
  if (const auto last = formula.rfind("; "); last != std::string_view::npos) formula.remove_prefix(last + 2);
  return formula.substr(0, formula.find(' '));
}

// The line that gives this value: the nearest one above, else the first below.
std::string line_of(const Plan& plan, int number, Formula formula, const Detail& value) {
  int found = 0;
  const auto* measure = std::get_if<Measure>(&value);
  for (std::size_t i = 0; i < plan.calculations.size(); ++i) {
    const Calculation& one = plan.calculations[i];
    const int here = static_cast<int>(i) + 1;
    if (here >= number && found > 0) break;
    if (here != number && one.formula == formula && measure != nullptr && one.result.base() == measure->base())
      found = here;
  }
  if (found > 0) return "line " + std::to_string(found);
  return "by [" + std::string(text_of(formula).id) + "]";
}

std::string bound_in_words(const CalculationLimit& limit, UnitSystem system) {
  return (limit.is_least ? "at least " : "at most ") + in_figures(limit.value, system);
}

CalculationLine line(const Plan& plan, const Calculation& made, int number, UnitSystem system) {
  const FormulaText& text = text_of(made.formula);
  CalculationLine out;
  out.number = number;
  out.part = made.part;
  out.title = text.title;
  if (const auto* of = std::get_if<std::string_view>(&made.of)) (out.title += ": ") += *of;
  out.id = text.id;
  out.formula = text.text;
  for (std::size_t i = 0; i < made.inputs.size(); ++i) {
    const CalculationInput& input = made.inputs[i];
    out.with.push_back({std::string(text.symbols[i].name), in_figures(input.value, system),
                        std::string(text.symbols[i].what),
                        input.worked_out ? line_of(plan, number, *input.worked_out, input.value)
                                         : source_in_words(input.from, input.basis)});
  }
  out.figures = with_figures(text.text, out.with);
  out.result = std::string(result_symbol(text.text)) + " = " + in_figures(made.result, system);
  if (!made.limit) return out;
  out.limit = bound_in_words(*made.limit, system);
  out.limit_source = made.limit->worked_out ? line_of(plan, number, *made.limit->worked_out, made.limit->value)
                                            : source_in_words(made.limit->from, made.limit->basis);
  if (const auto share = made.utilization()) {
    out.utilization = in_figures(Measure(*share, Kind::ratio), system);
    out.met = !(*share > 1.0 + 1e-6);
  }
  return out;
}

}  // namespace

std::string_view name_of(PlanPart part) {
  switch (part) {
    case PlanPart::pipe:
      return "Pipe";
    case PlanPart::tap:
      return "Tap";
    case PlanPart::pressure:
      return "Pressure";
    case PlanPart::machine:
      return "Machine and marks on the bar";
    case PlanPart::place:
      return "Place";
    case PlanPart::readings:
      return "Bounds of the stop numbers";
    case PlanPart::service:
      return "Water for the customer";
    case PlanPart::cleaning:
      return "Cleaning";
    case PlanPart::pit:
      return "Pit";
    case PlanPart::findings:
      return "Findings";
    case PlanPart::rejected:
      return "What other ways were refused for";
  }
  return {};
}

std::vector<CalculationLine> calculation_lines(const Plan& plan, UnitSystem system) {
  std::vector<CalculationLine> lines;
  lines.reserve(plan.calculations.size());
  for (const Calculation& made : plan.calculations)
    lines.push_back(line(plan, made, static_cast<int>(lines.size()) + 1, system));
  return lines;
}

std::vector<StopNumberLine> stop_number_lines(const Plan& plan, UnitSystem system) {
  std::vector<StopNumberLine> lines;
  for (const StopNumber& reading : plan.stop_numbers) {
    std::string by;
    for (std::size_t i = 0; i < plan.calculations.size(); ++i) {
      const Calculation& made = plan.calculations[i];
      const auto* of = std::get_if<std::string_view>(&made.of);
      if (made.part != PlanPart::readings || of == nullptr || *of != name_of(reading.id)) continue;
      by += (by.empty() ? "line " : ", ") + std::to_string(i + 1);
    }
    const bool by_rule = reading.id == ReadingId::joint_distance;
    if (by_rule) by = "the rule";
    if (by.empty()) by = "drawn in by planning again with every reading at its worst end";
    lines.push_back({std::string(words_of(reading.id)), bounds_in_words(reading, system), std::move(by)});
  }
  return lines;
}

std::vector<OtherLimit> other_limits(const Plan& plan, UnitSystem system) {
  std::vector<OtherLimit> list;
  for (const Finding& finding : plan.findings) {
    const bool decides = finding.severity >= Severity::hold;
    if (!finding.limit && !decides) continue;
    const bool told = std::any_of(plan.calculations.begin(), plan.calculations.end(), [&](const Calculation& made) {
      const bool as_limit = finding.limit && made.limit && made.limit->value.base() == finding.limit->base();
      return as_limit && (!finding.value || made.result.base() == finding.value->base());
    });
    if (told && !decides) continue;
    OtherLimit one{std::string(text_of(finding.code).title), name_of(finding.code), name_of(finding.severity), {}, {}};
    if (finding.value) one.value = format_measure(*finding.value, system);
    const Toward inward = finding.limit_is_least ? Toward::more : Toward::less;
    if (finding.limit)
      one.limit = (finding.limit_is_least ? "at least " : "at most ") + format_measure(*finding.limit, system, inward);
    list.push_back(std::move(one));
  }
  return list;
}

std::vector<HeadLine> calculation_head(const Plan& plan) {
  std::vector<HeadLine> lines;
  const auto put = [&](std::string_view label, const std::string& text) {
    if (!text.empty()) lines.push_back({label, text});
  };
  put("Order", plan.job.id);
  put("Place", plan.job.place);
  put("Planned for", plan.job.date);
  if (plan.rules != nullptr) put("Rules", plan.rules->name);
  if (plan.rules != nullptr) {
    for (const RulesDocument& document : plan.rules->documents) {
      std::string text = document.name;
      for (const std::string& part : {document.title, document.edition, document.date, document.approver}) {
        if (!part.empty()) text += "; " + part;
      }
      put("Rule file", text);
    }
  }
  const Fingerprint print = fingerprint_of(plan);
  put("Fingerprint", print.plan);
  put("Made by", "mainbore " + print.program + ", tables " + print.tables);
  put("Rules and job", print.rules + ", " + print.job);
  return lines;
}

}  // namespace mainbore::report
