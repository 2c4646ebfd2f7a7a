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
#include "words/fill.hpp"
#include "words/terms.hpp"
#include "work/filled_words.hpp"

namespace mainbore::report {

using words::SheetWord;

void Sheet::more() {
  out_.start("section", {{"class", "more"}}).line();
  in_full(Severity::stop, said(SheetWord::stops_in_full));
  in_full(Severity::hold, said(SheetWord::holds_in_full));
  found();
  load();
  assumed();
  numbers_of_this_job();
  if (!no_go()) drawings();
  sources();
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
      text.insert(0, std::to_string(++count) + ". ");
      text += said(clears_by(finding->code) == Clears::office ? SheetWord::of_office : SheetWord::of_pipe);
    }
    out_.element("h3", text);
    out_.prose_element("p", detail_with_whose(*finding))
        .prose_element("p", with_figures(text_of(finding->code, audience_.language).fix, *finding))
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
      out_.prose_element("li", detail_with_whose(*finding) + " " +
                                   with_figures(text_of(finding->code, audience_.language).fix, *finding))
          .line();
    }
  }
  out_.end().line();
}

void Sheet::assumed() {
  if (plan_.main.assumed.empty()) return;
  heading(SheetWord::assumed, SheetWord::assumed_beside);
  out_.start("ul", {{"class", "plain"}}).line();
  const auto in_language = [&](std::string_view text) { return std::string(words::term(text, audience_.language)); };
  for (const Assumption& assumption : plan_.main.assumed) {
    const AssumedWords parts = assumed_words(assumption, audience_);
    std::string text = words::sentence_case(parts.fact);
    if (!parts.value.empty()) text += ": " + parts.value;
    if (!assumption.because.empty()) text += ", " + in_language(assumption.because);
    text += ".";
    if (!assumption.settle.empty()) text += " " + words::sentence_case(in_language(assumption.settle)) + ".";
    out_.prose_element("li", text).line();
  }
  out_.end().line();
}

std::string Sheet::main_in_words() const {
  const bool known = plan_.main.governing != nullptr && !plan_.main.governing->class_name.empty();
  const std::string class_name = known ? std::string(plan_.main.governing->class_name) : std::string();
  const bool several = plan_.main.candidates.size() > 1;
  return said(SheetWord::main_is, {{"size", plan_.main.size.label() + " in"},
                                   {"material", words::term(name_of(plan_.main.material), audience_.language)},
                                   {"class", several ? std::string_view() : class_name},
                                   {"worst", several ? class_name : std::string_view()}});
}

void Sheet::facts_of_machine(std::vector<Fact>& list) const {
  const ChosenMethod& method = plan_.method;
  const Setup& setup = plan_.setup;
  const auto add = [&](SheetWord label, std::string text) { list.push_back({said(label), std::move(text)}); };
  if (method.thread)
    add(SheetWord::fact_thread, std::string(name_of(*method.thread)) + " " + method.tap.label() + " in");
  if (method.specification != nullptr) {
    add(method.kind == Method::sleeve ? SheetWord::fact_sleeve : SheetWord::fact_saddle, method.specification->text);
  }
  if (setup.machine != nullptr && method.kind != Method::sleeve) {
    add(SheetWord::fact_machine, std::string(words::term(setup.machine->title, audience_.language)) + ", " +
                                     std::string(words::term(name_of(setup.feed), audience_.language)));
  }
  if (method.kind == Method::direct && setup.clamp) {
    add(SheetWord::fact_hold_down, in_round_figures(setup.clamp->force, audience_));
    if (setup.clamp->stud_torque) add(SheetWord::fact_torque, show(setup.clamp->stud_torque->usual));
  }
}

void Sheet::facts_of_pit(std::vector<Fact>& list) const {
  if (!plan_.excavation) return;
  const PitPlan& pit = *plan_.excavation;
  const auto add = [&](SheetWord label, std::string text) { list.push_back({said(label), std::move(text)}); };
  const auto far = [&](Length length) { return on_tape(length, audience_, Toward::more); };
  add(SheetWord::fact_pit,
      said(SheetWord::pit_is,
           {{"along", far(pit.pit.along)}, {"across", far(pit.pit.across)}, {"depth", far(pit.pit.depth)}}));
  if (pit.pit.slope > 0.0) {
    add(SheetWord::fact_slope,
        said(SheetWord::slope_is,
             {{"run", plain(pit.pit.slope, 2)}, {"soil", words::term(name_of(pit.soil.type), audience_.language)}}));
  }
  if (pit.bank_otherwise) {
    const auto dug = [&](Volume volume) {
      const Shown exact = shown(Measure(volume, Kind::earth), audience_);
      return plain(std::ceil(exact.value), 0) + " " + std::string(exact.unit);
    };
    add(SheetWord::fact_dug, said(pit.pit.slope > 0.0 ? SheetWord::dug_sloped : SheetWord::dug_shielded,
                                  {{"bank", dug(pit.bank)}, {"other", dug(*pit.bank_otherwise)}}));
  }
  add(SheetWord::fact_spoil, far(pit.setback));
}

void Sheet::facts_of_water(std::vector<Fact>& list) const {
  const auto add = [&](SheetWord label, std::string text) { list.push_back({said(label), std::move(text)}); };
  if (plan_.cleaning) {
    const SwabMix& swab = plan_.cleaning->swab;
    if (swab.liquid) {
      add(SheetWord::fact_swab,
          said(audience_.units == UnitSystem::si ? SheetWord::swab_liter : SheetWord::swab_gallon,
               {{"percent", plain(swab.wanted.percent(), 2)}, {"amount", mixing_of(swab, audience_.units).amount}}));
    }
    if (const auto& flush = plan_.cleaning->flush) {
      add(SheetWord::fact_flush,
          said(SheetWord::flush_is, {{"flow", format_measure(Measure(flush->full.flow), audience_, Toward::more)},
                                     {"time", format_measure(Measure(flush->full.time), audience_, Toward::more)}}));
    }
  }
  if (plan_.service) {
    add(SheetWord::fact_left,
        said(SheetWord::left_is, {{"pressure", on_gauge(plan_.service->residual_least, audience_, Toward::less)},
                                  {"flow", show(plan_.service->demand.flow)}}));
  }
}

std::vector<Sheet::Fact> Sheet::facts() const {
  std::vector<Fact> list;
  if (no_go()) return list;
  list.push_back({said(SheetWord::fact_main), main_in_words()});
  facts_of_machine(list);
  facts_of_pit(list);
  facts_of_water(list);
  return list;
}

void Sheet::numbers_of_this_job() {
  const std::vector<Fact> list = facts();
  if (list.empty()) return;
  heading(SheetWord::numbers);
  out_.start("dl", {{"class", "rows"}}).line();
  for (const Fact& fact : list) {
    out_.start("div").element("dt", fact.label).text(" ").prose_element("dd", fact.text).end().line();
  }
  out_.end().line();
}

void Sheet::drawings() {
  out_.start("div", {{"class", "figures"}}).line();
  if (moved_or_near()) write_section_figure(out_, plan_, audience_, prefix_);
  else write_along_figure(out_, plan_, audience_, prefix_);
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
    out_.prose(thing.check).end().line();
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
    // The title of a publication stays in its own language.
    std::string name =
        basis.utility
            ? said(SheetWord::own_rule, {{"reference", basis.reference != nullptr ? std::string_view(*basis.reference)
                                                                                  : std::string_view()}})
            : basis.source->brief;
    const auto known = std::find_if(list.begin(), list.end(), [&](const Resting& r) { return r.name == name; });
    if (known == list.end()) list.push_back({name, is_recalled(item)});
    else known->recalled = known->recalled || is_recalled(item);
  }
  if (list.empty()) return;
  std::string text;
  for (const Resting& resting : list)
    text += (text.empty() ? "" : "; ") + resting.name +
            (resting.recalled ? " (" + std::string(said(SheetWord::from_memory)) + ")" : "");
  heading(SheetWord::sources);
  out_.element("p", text + ".", {{"class", "sources"}}).line();
}

}  // namespace mainbore::report
