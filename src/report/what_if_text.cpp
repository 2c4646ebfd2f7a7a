#include "mainbore/finding_words.hpp"
#include "mainbore/tool_report.hpp"
#include "report/text_page.hpp"

namespace mainbore {
namespace {

std::string value_text(const FactValue& value, UnitSystem system) {
  if (const auto* size = std::get_if<NominalSize>(&value)) return size->label() + " in";
  const Measure& measure = std::get<Measure>(value);
  // Along a main a crew reads inches off the tape, not hundredths of a foot.
  if (measure.kind() == Kind::distance && system == UnitSystem::us) {
    return format_measure(Measure(measure.base(), Kind::tape), system);
  }
  return format_measure(measure, system);
}

std::string titles_of(const std::vector<FindingCode>& codes) {
  constexpr std::size_t most = 2;
  std::string text;
  for (std::size_t i = 0; i < codes.size() && i < most; ++i) {
    if (i > 0) text += ", ";
    text += text_of(codes[i]).title;
  }
  if (codes.size() > most) text += " and " + std::to_string(codes.size() - most) + " more";
  return text;
}

std::string method_text(const Outcome& outcome) {
  if (outcome.method == Method::direct) {
    return outcome.count > 1 ? std::to_string(outcome.count) + " smaller direct taps" : "a direct tap";
  }
  if (outcome.method == Method::saddle) return "a saddle";
  return outcome.method == Method::sleeve ? "a sleeve" : "no method";
}

std::string bound_text(const WhatIf& fact, const Bound& bound, bool up, UnitSystem system) {
  const std::string verdict(name_of(bound.then.verdict));
  std::string text = up ? "Up to " : "Down to ";
  text += value_text(bound.holds_to, system) + "; at " + value_text(bound.changes_at, system) + ' ';
  if (bound.effect == Effect::better) {
    text += bound.then.verdict == fact.at.verdict ? "less in the way" : verdict;
    if (!bound.leaves.empty()) text += ", without " + titles_of(bound.leaves);
  } else {
    text += bound.effect == Effect::other ? verdict + ", by " + method_text(bound.then) : verdict;
    if (!bound.arrives.empty()) text += ": " + titles_of(bound.arrives);
  }
  return text + '.';
}

}  // namespace

std::string what_if_text(std::span<const WhatIf> facts, UnitSystem system, int width) {
  report::TextPage page(width, false);
  page.title("How far each number may move before the answer changes, all else as it is");
  for (const WhatIf& fact : facts) {
    std::string text;
    if (fact.path == "nearby") {
      text = "None listed.";
    } else {
      text = value_text(fact.value, system) +
             (fact.given ? "." : " assumed; read so, " + std::string(name_of(fact.at.verdict)) + ".");
    }
    for (const Bound& bound : fact.down) text += ' ' + bound_text(fact, bound, false, system);
    for (const Bound& bound : fact.up) text += ' ' + bound_text(fact, bound, true, system);
    if (fact.down.empty() && fact.up.empty()) {
      text += " No change from " + value_text(fact.least, system) + " to " + value_text(fact.greatest, system) + '.';
    }
    page.field(fact.name, text, 34);
  }
  return std::move(page).take();
}

}  // namespace mainbore
