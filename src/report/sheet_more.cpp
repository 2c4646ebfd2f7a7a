// What a field sheet shows on a screen alone: what the plan rests on.
#include <algorithm>
#include <cmath>

#include "mainbore/evidence.hpp"
#include "mainbore/measure.hpp"
#include "report/figures/figure.hpp"
#include "report/figures/figures.hpp"
#include "report/mixing.hpp"
#include "report/settings_words.hpp"
#include "report/sheet_page.hpp"
#include "words/card.hpp"
#include "words/fill.hpp"
#include "work/filled_words.hpp"

namespace mainbore::report {

using words::SheetWord;

void Sheet::more() {
  out_.start("section", {{"class", "more"}}).line();
  in_full(Severity::stop, said(SheetWord::stops_in_full));
  in_full(Severity::hold, said(SheetWord::holds_in_full));
  found();
  load();
  // What has no translation stands last, and is said to have none.
  if (audience_.language != Language::english)
    out_.element("p", say(words::CardWord::english_from_here, audience_.language)).line();
  out_.start("div", {{"lang", "en"}}).line();
  assumed();
  numbers_of_this_job();
  if (!no_go()) drawings();
  sources();
  out_.end().line();
  out_.end().line();
}

std::string Sheet::with_figures(std::string_view text, const Finding& finding) const {
  return filled_words(text, finding, audience_, plan_.stop_numbers);
}

std::string Sheet::detail_with_whose(const Finding& finding) const {
  std::string detail = with_figures(text_of(finding.code, audience_.language).detail, finding);
  if (plan_.rules == nullptr || !plan_.rules->has_own()) return detail;
  if (audience_.language != Language::english) return detail;
  const std::string whose = decided_in_words(finding);
  return whose.empty() ? detail : detail + " " + whose;
}

void Sheet::in_full(Severity severity, std::string_view title) {
  auto list = of(severity);
  if (list.empty()) return;
  const bool holds = severity == Severity::hold;
  if (holds) {
    std::stable_partition(list.begin(), list.end(),
                          [](const Finding* finding) { return clears_by(finding->code) == Clears::office; });
  }
  heading(title);
  int count = 0;
  for (const Finding* finding : list) {
    std::string text = words::sentence_case(std::string(text_of(finding->code, audience_.language).title));
    if (holds) {
      text = std::to_string(++count) + ". " + text +
             std::string(said(clears_by(finding->code) == Clears::office ? SheetWord::of_office : SheetWord::of_pipe));
    }
    out_.element("h3", text);
    out_.element("p", detail_with_whose(*finding))
        .element("p", with_figures(text_of(finding->code, audience_.language).fix, *finding))
        .line();
  }
}

void Sheet::found() {
  const auto warnings = of(Severity::caution);
  const auto notes = of(Severity::note);
  if (warnings.empty() && notes.empty()) return;
  heading(SheetWord::found, SheetWord::found_beside);
  out_.start("ul", {{"class", "plain"}}).line();
  for (const auto* const list : {&warnings, &notes}) {
    for (const Finding* finding : *list) {
      out_.element("li", detail_with_whose(*finding) + " " +
                             with_figures(text_of(finding->code, audience_.language).fix, *finding))
          .line();
    }
  }
  out_.end().line();
}

void Sheet::assumed() {
  if (plan_.main.assumed.empty()) return;
  heading("Assumed", "a reading takes the place of each");
  out_.start("ul", {{"class", "plain"}}).line();
  for (const Assumption& assumption : plan_.main.assumed) {
    const AssumedWords said = assumed_words(assumption, audience_.units);
    std::string text = words::sentence_case(said.fact);
    if (!said.value.empty()) text += ": " + said.value;
    if (!assumption.because.empty()) text += ", " + std::string(assumption.because);
    text += ".";
    if (!assumption.settle.empty()) text += " " + words::sentence_case(std::string(assumption.settle)) + ".";
    out_.element("li", text).line();
  }
  out_.end().line();
}

std::vector<Sheet::Fact> Sheet::facts() const {
  std::vector<Fact> list;
  if (no_go()) return list;
  const auto add = [&](std::string label, std::string text) { list.push_back({std::move(label), std::move(text)}); };
  const ChosenMethod& method = plan_.method;
  const Setup& setup = plan_.setup;
  std::string main = plan_.main.size.label() + " in " + std::string(name_of(plan_.main.material));
  if (plan_.main.governing != nullptr && !plan_.main.governing->class_name.empty()) {
    main += plan_.main.candidates.size() > 1 ? ", worst case " : ", ";
    main += plan_.main.governing->class_name;
  }
  add("Main", main);
  if (method.thread)
    add("Thread, tool and stop alike", std::string(name_of(*method.thread)) + " " + method.tap.label() + " in");
  if (method.specification != nullptr) {
    add(method.kind == Method::sleeve ? "Sleeve, as the utility asks" : "Saddle, as the utility asks",
        method.specification->text);
  }
  if (setup.machine != nullptr && method.kind != Method::sleeve) {
    add("Machine, feed", setup.machine->title + ", " + std::string(name_of(setup.feed)));
  }
  if (method.kind == Method::direct && setup.clamp) {
    add("Hold the machine down with", in_round_figures(setup.clamp->force, audience_));
    if (setup.clamp->stud_torque) add("Stud torque, dry", show(setup.clamp->stud_torque->usual));
  }
  const auto far = [&](Length length) { return on_tape(length, audience_, Toward::more); };
  if (plan_.excavation) {
    const PitPlan& pit = *plan_.excavation;
    add("Pit, bottom", far(pit.pit.along) + " along by " + far(pit.pit.across) + ", " + far(pit.pit.depth) + " deep");
    if (pit.pit.slope > 0.0)
      add("Walls sloped", plain(pit.pit.slope, 2) + " to 1, " + std::string(name_of(pit.soil.type)));
    if (pit.bank_otherwise) {
      const auto dug = [&](Volume volume) {
        return plain(std::ceil(shown(Measure(volume, Kind::earth), audience_).value), 0) + " " +
               std::string(shown(Measure(volume, Kind::earth), audience_).unit);
      };
      const bool sloped = pit.pit.slope > 0.0;
      add("To be dug", dug(pit.bank) + (sloped ? " sloped; " : " shielded; ") + dug(*pit.bank_otherwise) +
                           (sloped ? " with a shield" : " sloped"));
    }
    add("Spoil back from the edge", far(pit.setback));
  }
  if (plan_.cleaning) {
    const SwabMix& swab = plan_.cleaning->swab;
    if (swab.liquid) {
      add("Swab with",
          plain(swab.wanted.percent(), 2) + " % solution, of the stock " + mixing_of(swab, audience_.units).each);
    }
    if (plan_.cleaning->flush)
      add("Flush", format_measure(Measure(plan_.cleaning->flush->full.flow), audience_, Toward::more) + " for " +
                       format_measure(Measure(plan_.cleaning->flush->full.time), audience_, Toward::more));
  }
  if (plan_.service)
    add("Left behind the meter",
        on_gauge(plan_.service->residual_least, audience_, Toward::less) + " at " + show(plan_.service->demand.flow));
  return list;
}

void Sheet::numbers_of_this_job() {
  const std::vector<Fact> list = facts();
  if (list.empty()) return;
  heading("Numbers of this job");
  out_.start("dl", {{"class", "rows"}}).line();
  for (const Fact& fact : list) {
    out_.start("div").element("dt", fact.label).text(" ").element("dd", fact.text).end().line();
  }
  out_.end().line();
}

void Sheet::drawings() {
  out_.start("div", {{"class", "figures"}}).line();
  if (moved_or_near()) write_section_figure(out_, plan_, audience_.units, prefix_);
  else write_along_figure(out_, plan_, audience_.units, prefix_);
  write_threads_figure(out_, plan_, audience_, prefix_);
  write_pit_figure(out_, plan_, audience_, prefix_);
  write_profile_figure(out_, plan_, audience_, prefix_);
  out_.end().line();
}

void Sheet::load() {
  const auto list = load_list(plan_, audience_);
  if (list.empty()) return;
  heading(SheetWord::load, SheetWord::load_beside);
  out_.start("ul", {{"class", "plain"}}).line();
  for (const LoadItem& thing : list) {
    const std::string name =
        (thing.quantity > 1 ? std::to_string(thing.quantity) + " " : std::string()).append(thing.item);
    out_.start("li").element("b", name).text((thing.size.empty() ? std::string() : ", " + thing.size) + ". ");
    if (thing.aboard) out_.text(aboard_in_words(thing, audience_.language) + ' ');
    out_.text(thing.check).end().line();
  }
  out_.end().line();
}

void Sheet::sources() {
  struct Resting {
    std::string name;
    bool recalled;  // some of it
  };
  std::vector<Resting> list;
  for (const Evidence& item : plan_.evidence) {
    const Basis& basis = item.basis;
    if (!basis.utility && basis.source == nullptr) continue;
    std::string name = "The utility's own rule";
    if (basis.utility && basis.reference != nullptr) name += ", " + *basis.reference;
    if (!basis.utility) name = basis.source->brief;
    const auto known = std::find_if(list.begin(), list.end(), [&](const Resting& r) { return r.name == name; });
    if (known == list.end()) list.push_back({name, is_recalled(item)});
    else known->recalled = known->recalled || is_recalled(item);
  }
  if (list.empty()) return;
  std::string text;
  for (const Resting& resting : list)
    text += (text.empty() ? "" : "; ") + resting.name +
            (resting.recalled ? " (" + std::string(check_this_value) + ")" : "");
  heading("Numbers rest on");
  out_.element("p", text + ".").line();
}

}  // namespace mainbore::report
