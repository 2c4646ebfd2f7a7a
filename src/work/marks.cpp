// The marks on the bar in words. A mark whose length nobody has given is asked for, with the sum to do.
#include <array>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"
#include "words/card.hpp"
#include "work/spoken.hpp"

namespace mainbore {
namespace {

using words::CardWord;
using Figures = std::initializer_list<words::Figure>;

constexpr std::string_view blank = "____ in";
constexpr std::string_view blank_si = "____ mm";

class MarkList {
 public:
  MarkList(const Plan& plan, Audience audience) : plan_(plan), marks_(*plan.marks), audience_(audience) {}

  std::vector<BarMark> all() && {
    drawn_back();
    const bool direct = plan_.method.kind == Method::direct;
    add("touch", direct ? CardWord::tool_touches : CardWord::teeth_touch,
        Words::standing(say(CardWord::made_at_pipe, audience_.language)));
    through();
    if (direct) {
      catches();
      stop_tapping();
    }
    never_past();
    // Into a dry main the stop goes by hand.
    if (direct && plan_.job.main.is_pressurized()) stop_touches();
    return std::move(list_);
  }

 private:
  // Signs run on, so that no method skips one; the stop's own touch has a letter.
  void add(std::string_view key, CardWord name, Words where) {
    constexpr std::array<std::string_view, 6> signs = {"0", "1", "2", "3", "4", "5"};
    list_.push_back({key, signs[list_.size()], say(name, audience_.language), std::move(where)});
  }
  [[nodiscard]] std::string said(CardWord word, Figures figures) const {
    return say(word, audience_.language, figures);
  }
  [[nodiscard]] std::string unknown() const {
    return std::string(audience_.units == UnitSystem::us ? blank : blank_si);
  }
  [[nodiscard]] std::string up(Length length) const { return on_rule(length, audience_, Toward::more); }
  [[nodiscard]] std::string down(Length length) const { return on_rule(length, audience_, Toward::less); }
  // What the feed is turned for a length, on the same side of it.
  [[nodiscard]] std::string fed(Length length, Toward toward) const {
    if (!marks_.feed_pitch || !(*marks_.feed_pitch > Length())) return {};
    return turns_in_words(length / *marks_.feed_pitch, audience_.language, toward);
  }

  [[nodiscard]] Length keep_off() const {
    return plan_.rules == nullptr ? Length() : plan_.rules->machine.tool_clearance.value;
  }

  void drawn_back() {
    const Method kind = plan_.method.kind;
    add("drawn-back",
        kind == Method::direct   ? CardWord::back_of_machine_valve
        : kind == Method::saddle ? CardWord::back_of_stop
                                 : CardWord::back_of_tapping_valve,
        how_far_back(kind));
  }
  [[nodiscard]] std::string how_far_back(Method kind) const {
    if (marks_.clear) {
      return said(CardWord::back_at_least,
                  {{"length", up(*marks_.clear)}, {"turns", fed(*marks_.clear, Toward::more)}});
    }
    if (kind == Method::direct) {
      return said(CardWord::back_tried, {{"length", marks_.drawn_back ? down(*marks_.drawn_back) : unknown()}});
    }
    return said(kind == Method::saddle ? CardWord::back_by_saddle : CardWord::back_by_sleeve, {{"length", unknown()}});
  }

  void through() {
    if (!marks_.at) {
      add("through", CardWord::breakthrough, said(CardWord::past_gauged, {{"length", unknown()}}));
      return;
    }
    std::string full;
    std::string turns;
    if (marks_.at->full_width && !marks_.past_limit(*marks_.at->full_width)) {
      full = up(*marks_.at->full_width);
      turns = fed(*marks_.at->full_width, Toward::more);
    }
    add("through", CardWord::breakthrough,
        said(CardWord::past_full, {{"length", down(marks_.at->breakthrough)}, {"full", full}, {"turns", turns}}));
  }

  void catches() {
    const auto& lead = plan_.job.tool.lead;
    std::string where;
    if (lead && marks_.at && marks_.past_limit(*lead)) where = say(CardWord::tool_too_long, audience_.language);
    else if (lead) where = said(CardWord::past_fed, {{"length", down(*lead)}, {"turns", fed(*lead, Toward::less)}});
    else where = said(CardWord::past_lead, {{"length", unknown()}});
    add("tap-catches", CardWord::tap_catches, std::move(where));
  }

  void stop_tapping() {
    // The thread draws the tap in from mark 3 on, wherever the depth is counted from.
    std::string turns;
    if (!marks_.by_trial && marks_.tap_turns)
      turns = turns_in_words(*marks_.tap_turns, audience_.language, Toward::less);
    std::string text;
    if (marks_.at && marks_.at->stop_tapping && marks_.past_limit(*marks_.at->stop_tapping)) {
      text = say(CardWord::tool_too_long, audience_.language);
    } else if (marks_.by_trial) {
      text = said(CardWord::past_by_trial, {{"length", down(*plan_.job.service.trial.depth)}});
    } else if (marks_.at && marks_.at->stop_tapping) {
      text = said(CardWord::past_turned, {{"length", down(*marks_.at->stop_tapping)}, {"turns", turns}});
    } else if (marks_.tap_depth) {
      text = said(CardWord::past_catching, {{"length", down(*marks_.tap_depth)}, {"turns", turns}});
    } else {
      text = said(CardWord::past_by_piece, {{"length", unknown()}, {"turns", turns}});
    }
    add("stop-tapping", CardWord::stop_tapping, std::move(text));
  }

  void never_past() {
    std::string text = marks_.limit ? said(CardWord::past, {{"length", down(*marks_.limit)}})
                                    : said(CardWord::past_less, {{"length", unknown()}, {"clearance", up(keep_off())}});
    const bool pilot = plan_.method.kind != Method::direct && !plan_.job.tool.lead;
    if (pilot) text += say(CardWord::less_the_pilot, audience_.language);
    add("far-wall", CardWord::never_past, std::move(text));
  }

  void stop_touches() {
    std::string text;
    if (marks_.at && marks_.at->stop_touches) {
      const Length at = *marks_.at->stop_touches;
      if (marks_.past_limit(at)) text = say(CardWord::past_never, audience_.language);
      else
        text =
            at < Length() ? said(CardWord::back, {{"length", up(-at)}}) : said(CardWord::past, {{"length", down(at)}});
    } else {
      text = said(CardWord::past_less_stop, {{"length", unknown()}});
    }
    list_.push_back({"stop-touches", "S", say(CardWord::stop_touches, audience_.language), std::move(text)});
  }

  const Plan& plan_;
  const MarksPlan& marks_;
  Audience audience_;
  std::vector<BarMark> list_;
};

std::string makeup_words(std::optional<double> hand, double wrench, double showing, Language language) {
  const std::string by_hand = hand ? turns_in_words(*hand, language) : std::string();
  const std::string by_wrench = turns_in_words(wrench, language);
  std::string left;
  append_number(left, showing, 1);
  return say(showing == 1.0 ? CardWord::makeup_one : CardWord::makeup_is, language,
             {{"hand", by_hand}, {"wrench", by_wrench}, {"showing", left}});
}

}  // namespace

std::vector<BarMark> bar_marks(const Plan& plan, Audience audience) {
  if (plan.verdict == Verdict::no_go || !plan.marks) return {};
  return MarkList(plan, audience).all();
}

std::string makeup_in_words(const Plan& plan, Language language) {
  if (plan.verdict == Verdict::no_go || plan.method.kind != Method::direct) return {};
  const TrialFacts& trial = plan.job.service.trial;
  const bool off = plan.finding(FindingCode::makeup_trial_off) != nullptr;
  if (trial.wrench_turns && trial.threads_showing && !off) {
    return makeup_words(trial.hand_turns, *trial.wrench_turns, *trial.threads_showing, language);
  }
  if (plan.makeup) {
    return makeup_words(plan.makeup->makeup.hand_tight_turns, plan.makeup->wrench_turns, plan.makeup->threads_showing,
                        language);
  }
  return std::string(say(CardWord::makeup_by_trial, language));
}

}  // namespace mainbore
