#include "report/card.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "report/settings_words.hpp"
#include "words/card.hpp"
#include "words/terms.hpp"
#include "work/spoken.hpp"

namespace mainbore::report {
namespace {

using words::CardWord;
using words::sentence_case;

class CardWriter {
 public:
  CardWriter(const Plan& plan, Audience audience) : plan_(plan), audience_(audience) {
    card_.language = audience.language;
  }

  Card all() && {
    verdict();
    order();
    if (no_go()) stops();
    else {
      readings();
      setup();
      card_.marks = bar_marks(plan_, audience_);
      card_.makeup = makeup_in_words(plan_, audience_.language);
      in_short();
      bring();
    }
    holds();
    odd();
    for (const Caution& caution : cautions(plan_, audience_)) card_.cautions.push_back(caution.brief);
    card_.translation = translation_line(plan_.from_settings, audience_.language);
    return std::move(card_);
  }

 private:
  [[nodiscard]] std::string said(CardWord word) const { return std::string(say(word, audience_.language)); }
  [[nodiscard]] std::string said(CardWord word, std::initializer_list<words::Figure> figures) const {
    return say(word, audience_.language, figures);
  }
  [[nodiscard]] bool no_go() const { return plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none; }
  [[nodiscard]] bool wet() const { return plan_.job.main.is_pressurized(); }
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, audience_); }
  [[nodiscard]] std::string up(Length length) const { return on_rule(length, audience_, Toward::more); }
  [[nodiscard]] std::string down(Length length) const { return on_rule(length, audience_, Toward::less); }

  void verdict() {
    switch (plan_.verdict) {
      case Verdict::go:
        card_.verdict = said(CardWord::verdict_go);
        break;
      case Verdict::hold:
        card_.verdict = said(CardWord::verdict_hold);
        break;
      case Verdict::no_go:
        card_.verdict = said(CardWord::verdict_no_go);
        break;
    }
    // The verdict stands above; the rest of the sentence says for what.
    std::string what = sentence_case(summary_of(plan_, audience_).sentence());
    if (!no_go()) what += ' ' + where();
    card_.what.push_back(std::move(what));
  }

  [[nodiscard]] std::string where() const {
    const Location& place = plan_.location;
    const std::string other = plan_.method.count > 1 ? place.other_clock.label() : std::string();
    std::string shift;
    if (std::fabs(place.shift.base()) > 1e-9) shift = on_tape(abs(place.shift), audience_, Toward::more);
    return said(CardWord::where, {{"clock", place.clock.label()},
                                  {"other", other},
                                  {"shift", shift},
                                  {"way", place.shift > Length() ? "+" : "-"}});
  }

  void order() {
    const Job& job = plan_.job;
    for (const std::string* text : {&job.id, &job.place, &job.date, &job.crew}) {
      if (!text->empty()) card_.order.push_back(*text);
    }
  }

  void stops() {
    for (const Finding& finding : plan_.findings) {
      if (finding.severity != Severity::stop) continue;
      card_.stops.push_back(stop_of(finding, audience_, plan_.stop_numbers));
    }
  }

  void readings() {
    for (const StopNumber& reading : plan_.stop_numbers) {
      const std::string_view unit = shown(Measure(0.0, reading.kind()), audience_).unit;
      card_.readings.push_back({sentence_case(std::string(words_of(reading.id, audience_.language))),
                                bounds_in_words(reading, audience_), std::string(unit), reading.id});
    }
  }

  void holds() {
    for (const Clears clears : {Clears::office, Clears::site}) {
      for (const Finding& finding : plan_.findings) {
        if (finding.severity != Severity::hold || clears_by(finding.code) != clears) continue;
        CardHold& hold = card_.holds.emplace_back();
        hold.number = static_cast<int>(card_.holds.size());
        hold.code = finding.code;
        hold.clears = clears;
        hold.text = line_of(finding, audience_, plan_.stop_numbers);
        // A class is read as it is written and an approved item goes by its number, not in the unit of the limit.
        const bool in_words =
            finding.code == FindingCode::pressure_over_pipe_rating || finding.code == FindingCode::approved_none_fits;
        if (finding.limit && !in_words) hold.unit = shown(*finding.limit, audience_).unit;
      }
    }
  }

  void setup() {
    const Setup& setup = plan_.setup;
    const auto line = [&](CardWord label, std::string text) { card_.setup.push_back({said(label), std::move(text)}); };
    switch (plan_.method.kind) {
      case Method::direct: {
        if (setup.saddle_od) {
          line(CardWord::machine_seat,
               said(CardWord::seat_for, {{"diameter", on_caliper(*setup.saddle_od, audience_)}}));
        }
        if (setup.chain) line(CardWord::chain, chain(*setup.chain));
        if (setup.clamp && setup.clamp->stud_torque) {
          line(CardWord::stud_torque,
               said(CardWord::stud_torque_is, {{"torque", show(setup.clamp->stud_torque->usual)}}));
        }
        break;
      }
      case Method::saddle:
        line(CardWord::machine_seat, said(CardWord::seat_on_stop));
        if (plan_.method.hole) line(CardWord::cutter, said(CardWord::cutter_is, {{"hole", down(*plan_.method.hole)}}));
        break;
      case Method::sleeve:
        line(CardWord::machine_seat, said(CardWord::seat_on_valve));
        break;
      case Method::none:
        break;
    }
    // The tools stand on the load list.
    for (const ApprovedItem* item : plan_.method.fittings) {
      if (item->kind > ApprovedKind::sleeve) continue;
      const std::string_view kind = words::term(words_of(item->kind), audience_.language);
      card_.setup.push_back({sentence_case(std::string(kind)), approved_in_words(*item, audience_)});
    }
    const std::string push = wet() && setup.push > Force() ? in_round_figures(setup.push, audience_) : std::string();
    line(CardWord::feed,
         said(setup.feed == Feed::hand ? CardWord::feed_by_hand : CardWord::feed_powered, {{"push", push}}));
  }

  [[nodiscard]] std::string chain(const ChainPlan& chain) const {
    const CardWord word = chain.extensions == 0   ? CardWord::chain_no_extension
                          : chain.extensions == 1 ? CardWord::chain_one_extension
                                                  : CardWord::chain_extensions;
    return said(word, {{"needed", up(chain.needed)},
                       {"available", down(chain.available)},
                       {"count", std::to_string(chain.extensions)}});
  }

  // The figures that make the tap, right under what it is.
  void in_short() {
    const bool direct = plan_.method.kind == Method::direct;
    std::string text;
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : "; ") + part; };
    if (plan_.setup.chain && direct) add(said(CardWord::short_chain, {{"length", up(plan_.setup.chain->needed)}}));
    for (const BarMark& mark : card_.marks) {
      if (mark.key == (direct ? "stop-tapping" : "through")) {
        add(said(direct ? CardWord::short_tapping : CardWord::short_through, {{"mark", mark.where.view()}}));
      }
    }
    if (plan_.makeup) add(said(CardWord::short_wrench, {{"turns", wrench_turns()}}));
    if (!text.empty()) card_.what.push_back(sentence_case(std::move(text)) + '.');
  }
  [[nodiscard]] std::string wrench_turns() const {
    return turns_in_words(plan_.makeup->wrench_turns, audience_.language);
  }

  // What the truck lacks, with what else aboard would do: before all that it has.
  void lacking(const std::vector<LoadItem>& list) {
    if (plan_.from_settings.aboard == nullptr) return;
    CardGroup things{said(CardWord::lacks_aboard), {}};
    for (const LoadItem& item : list) {
      if (item.lacking() == 0) continue;
      std::string name(words::term(item.key, audience_.language));
      if (audience_.language == Language::english) std::replace(name.begin(), name.end(), '-', ' ');
      if (item.quantity > 1) name.insert(0, std::to_string(item.lacking()) + " x ");
      if (!item.instead.empty()) name += " (" + item.instead + ")";
      things.things.push_back(std::move(name));
    }
    if (things.things.empty()) card_.odd.push_back(said(CardWord::all_aboard));
    else card_.bring.push_back(std::move(things));
  }

  void bring() {
    const auto list = load_list(plan_, audience_);
    lacking(list);
    for (std::size_t group = 0; group < load_group_names.size(); ++group) {
      constexpr std::array<CardWord, load_group_names.size()> labels = {CardWord::fit, CardWord::machine,
                                                                        CardWord::measure, CardWord::keep_safe};
      CardGroup things{said(labels[group]), {}};
      for (const LoadItem& item : list) {
        if (item.group != static_cast<LoadGroup>(group)) continue;
        std::string name(words::term(item.key, audience_.language));
        if (audience_.language == Language::english) std::replace(name.begin(), name.end(), '-', ' ');
        if (item.quantity > 1) name.insert(0, std::to_string(item.quantity) + " x ");
        // A thread or a size; a range of diameters stands with the set-up.
        constexpr std::size_t longest_size = 18;
        if (!item.size.empty() && columns(item.size) <= longest_size) name += ' ' + item.size;
        things.things.push_back(std::move(name));
      }
      if (!things.things.empty()) card_.bring.push_back(std::move(things));
    }
  }

  // What another part of the card says by its figures or its blanks.
  [[nodiscard]] static bool said_above(FindingCode code) {
    return code == FindingCode::makeup_by_trial || code == FindingCode::machine_push_by_hand ||
           code == FindingCode::direct_recalled_thread;
  }

  // Whether a line that says more asks for the same reading.
  [[nodiscard]] bool asked_otherwise(FindingCode code) const {
    using enum FindingCode;
    return code == main_class_unknown &&
           std::any_of(plan_.findings.begin(), plan_.findings.end(), [](const Finding& one) {
             return one.code == main_by_recollection || one.code == main_class_not_made ||
                    one.code == main_class_word || one.code == main_perhaps_not_tapped;
           });
  }

  [[nodiscard]] bool refused(Method method) const {
    const auto& list = plan_.method.rejected;
    return plan_.verdict == Verdict::hold && std::any_of(list.begin(), list.end(), [&](const RejectedMethod& reject) {
             return reject.kind == method && reject.count == 1;
           });
  }

  // The gravest first: where the page is short, the last give way.
  void odd() {
    const std::string own = utility_in_words(plan_, words_id_of(plan_.method), audience_.language);
    if (!own.empty()) card_.odd.push_back(own);
    found(Severity::caution);
    if (!plan_.job.note.empty()) card_.odd.push_back(said(CardWord::note, {{"note", plan_.job.note}}));
    found(Severity::note);
    for (const RejectedMethod& reject : plan_.method.rejected) {
      card_.odd.push_back(said(CardWord::not_method, {{"method", words::term(name_of(reject.kind), audience_.language)},
                                                      {"why", line_of(reject.why, audience_)}}));
    }
    if (const auto& smaller = plan_.method.smaller_taps; smaller && refused(Method::direct)) {
      card_.odd.push_back(said(CardWord::or_smaller,
                               {{"count", std::to_string(smaller->count)}, {"tap", smaller->tap.label() + " in"}}));
    }
    for (const Assumption& assumed : plan_.main.assumed) {
      if (assumed.because.empty()) continue;
      const AssumedWords parts = assumed_words(assumed, audience_);
      card_.odd.push_back(said(CardWord::assumed, {{"fact", parts.fact}, {"value", parts.value}}));
    }
    if (const std::string taken = settings_line(plan_.from_settings, audience_.language); !taken.empty())
      card_.odd.push_back(said(CardWord::from_settings, {{"taken", taken}}));
  }
  // What threatens people or pipe before what is to be compared with a document.
  void found(Severity severity) {
    std::vector<const Finding*> list;
    for (const Finding& finding : plan_.findings) {
      if (finding.severity == severity && !said_above(finding.code) && !asked_otherwise(finding.code))
        list.push_back(&finding);
    }
    std::stable_partition(list.begin(), list.end(),
                          [](const Finding* finding) { return finding->code == FindingCode::pit_protective_system; });
    std::stable_partition(list.begin(), list.end(),
                          [](const Finding* finding) { return finding->code != FindingCode::value_recalled; });
    for (const Finding* finding : list) {
      std::string line = line_of(*finding, audience_, plan_.stop_numbers);
      if (std::find(card_.odd.begin(), card_.odd.end(), line) == card_.odd.end()) card_.odd.push_back(std::move(line));
    }
  }

  const Plan& plan_;
  Audience audience_;
  Card card_;
};

}  // namespace

AssumedWords assumed_words(const Assumption& assumed, Audience audience) {
  AssumedWords words{std::string(words::fact(assumed.path, audience.language)), {}};
  std::replace_if(
      words.fact.begin(), words.fact.end(), [](char c) { return c == '.' || c == '_'; }, ' ');
  const auto* const measure = std::get_if<Measure>(&assumed.value);
  if (measure != nullptr && measure->kind() == Kind::pressure)
    words.value = on_gauge(measure->as<Pressure>(), audience);
  else append_detail(words.value, assumed.value, audience);
  return words;
}

std::string translation_line(const FromSettings& from, Language language) {
  if (language == Language::english) return {};
  for (const SettingTaken& taken : from.taken) {
    const auto* const name = std::get_if<std::string>(&taken.value);
    if (taken.path == translation_reviewed_by && name != nullptr) {
      return say(CardWord::translation_reviewed, language, {{"name", printable(*name)}});
    }
  }
  return std::string(say(CardWord::translation_unreviewed, language));
}

Card card_of(const Plan& plan, Audience audience) { return CardWriter(plan, audience).all(); }

}  // namespace mainbore::report
