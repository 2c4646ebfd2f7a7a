#include "mainbore/finding_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "mainbore/report.hpp"
#include "mainbore/work.hpp"
#include "words/fill.hpp"
#include "words/findings.hpp"
#include "words/terms.hpp"
#include "work/filled_words.hpp"
#include "work/spoken.hpp"

namespace mainbore {
namespace {

// A gauge is read to the whole psi or kPa.
enum class Pressures : std::uint8_t { as_known, whole };

// A finding's figures, by the names that its sentences have for them.
class FindingFigures : public words::Figures {
 public:
  FindingFigures(const Finding& finding, Audience audience, StopNumbers readings, Pressures pressures)
      : finding_(finding), readings_(readings), audience_(audience), pressures_(pressures) {}

  bool append(std::string& out, std::string_view name) const override {
    std::optional<Toward> toward;
    if (name.ends_with('+')) toward = Toward::more;
    if (name.ends_with('-')) toward = Toward::less;
    if (toward) name.remove_suffix(1);
    if (name == "value") return finding_.value && append_worked_out(out, *finding_.value, toward);
    if (name == "limit") {
      return append_optional(out, finding_.limit, finding_.limit_is_least ? Toward::more : Toward::less);
    }
    if (name == "margin") {
      // The words around it say over or under.
      auto margin = finding_.margin();
      if (margin) margin = Measure(std::fabs(margin->base()), margin->kind());
      return append_optional(out, margin, toward);
    }
    if (name.front() >= 'a' && name.front() <= 'z') return append_reading(out, name);
    const std::size_t before = out.size();
    const Detail& detail = finding_.details[static_cast<std::size_t>(name.front() - '0')];
    if (const auto* const measure = std::get_if<Measure>(&detail)) return append_worked_out(out, *measure, toward);
    append_detail(out, detail, audience_);
    return out.size() != before;
  }

 private:
  bool append_reading(std::string& out, std::string_view id) const {
    for (const StopNumber& reading : readings_) {
      if (name_of(reading.id) != id) continue;
      out += bare_bounds(reading, audience_);
      return true;
    }
    return false;
  }

  // A force is never a fact of the job, and a pressure that is rounded one way is for a gauge.
  bool append_worked_out(std::string& out, const Measure& measure, std::optional<Toward> toward) const {
    if (measure.kind() == Kind::force) out += in_round_figures(measure.as<Force>(), audience_);
    else if (measure.kind() == Kind::pressure && toward) out += on_gauge(measure.as<Pressure>(), audience_, *toward);
    else return append_optional(out, measure, toward);
    return true;
  }

  bool append_optional(std::string& out, const std::optional<Measure>& measure, std::optional<Toward> toward) const {
    if (!measure) return false;
    if (pressures_ == Pressures::whole && measure->kind() == Kind::pressure) {
      const Pressure pressure = measure->as<Pressure>();
      out += toward ? on_gauge(pressure, audience_, *toward) : on_gauge(pressure, audience_);
    } else {
      append_in_words(out, *measure, audience_, toward);
    }
    return true;
  }

  const Finding& finding_;
  StopNumbers readings_;
  Audience audience_;
  Pressures pressures_;
};

// Of a code in general: each figure by its name.
class FigureNames : public words::Figures {
 public:
  bool append(std::string& out, std::string_view name) const override {
    out += name.front() >= '0' && name.front() <= '9' ? "<figure>" : '<' + std::string(name) + '>';
    return false;
  }
};

std::string fill(std::string_view text, const Finding& finding, Audience audience, StopNumbers readings,
                 Pressures pressures = Pressures::as_known) {
  const FindingFigures figures(finding, audience, readings, pressures);
  // A sentence may start with a name out of the tables.
  return words::sentence_case(words::filled(text, figures, audience.language));
}

}  // namespace

std::optional<FindingCode> finding_named(std::string_view code) {
  const auto found = std::find(finding_codes.begin(), finding_codes.end(), code);
  if (found == finding_codes.end()) return std::nullopt;
  return static_cast<FindingCode>(found - finding_codes.begin());
}

std::string filled_words(std::string_view text, const Finding& finding, Audience audience, StopNumbers readings) {
  return fill(text, finding, audience, readings, Pressures::whole);
}

const FindingText& text_of(FindingCode code, Language language) { return words::finding_text(code, language); }

std::string_view reading_for(FindingCode code, Language language) { return words::finding_blank(code, language); }

std::string detail_of(const Finding& finding, Audience audience, StopNumbers readings) {
  return fill(text_of(finding.code, audience.language).detail, finding, audience, readings);
}

std::string fix_of(const Finding& finding, Audience audience, StopNumbers readings) {
  return fill(text_of(finding.code, audience.language).fix, finding, audience, readings);
}

std::string fix_in_general(FindingCode code) {
  return words::sentence_case(words::filled(text_of(code).fix, FigureNames()));
}

DecidedBy decided_by(const Finding& finding) {
  DecidedBy decided;
  for (const Basis* basis : finding.basis) {
    if (basis == nullptr || !basis->rule) continue;
    if (basis->utility) return {Decided::by_utility, basis};
    if (decided.rule == nullptr) decided = {Decided::by_default, basis};
  }
  return decided;
}

std::string decided_in_words(const Finding& finding) {
  const DecidedBy decided = decided_by(finding);
  if (decided.by == Decided::by_no_rule) return {};
  if (decided.by == Decided::by_default) return "By a default rule.";
  std::string text = "By the utility's rule";
  if (decided.rule->reference != nullptr) text += ": " + *decided.rule->reference;
  // The reason of a looser rule stands in its own finding.
  if (decided.rule->reason != nullptr && finding.code != FindingCode::rules_looser) {
    text += " (" + *decided.rule->reason + ")";
  }
  return text + ".";
}

void append_detail(std::string& out, const Detail& detail, Audience audience) {
  struct Append {
    std::string& out;
    Audience audience;
    void operator()(std::monostate) const {}
    void operator()(const Measure& measure) const { append_in_words(out, measure, audience); }
    void operator()(NominalSize size) const { out += size.label() + " in"; }
    void operator()(std::string_view text) const { out += words::term(text, audience.language); }
    void operator()(const ShortText& word) const { out += word.view(); }
    void operator()(int number) const { out += std::to_string(number); }
    void operator()(ClockPosition clock) const { out += clock.label(); }
  };
  std::visit(Append{out, audience}, detail);
}

}  // namespace mainbore
