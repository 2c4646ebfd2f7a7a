// The marks on the bar in words. A mark whose length nobody has given is asked for, with the sum to do.
#include <array>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"

namespace mainbore {
namespace {

constexpr std::string_view blank = "____ in";
constexpr std::string_view blank_si = "____ mm";

class MarkList {
 public:
  MarkList(const Plan& plan, UnitSystem system) : plan_(plan), marks_(*plan.marks), system_(system) {}

  std::vector<BarMark> all() && {
    drawn_back();
    const bool direct = plan_.method.kind == Method::direct;
    add("touch", direct ? "tool touches" : "teeth touch", "made at the pipe");
    through();
    if (direct) {
      catches();
      stop_tapping();
    }
    never_past();
    // Into a dry main the stop goes by hand.
    if (direct && plan_.job.main.pressurised.value_or(true)) stop_touches();
    return std::move(list_);
  }

 private:
  // Signs run on, so that no method skips one; the stop's own touch has a letter.
  void add(std::string_view key, std::string_view name, Words where) {
    constexpr std::array<std::string_view, 6> signs = {"0", "1", "2", "3", "4", "5"};
    list_.push_back({key, signs[list_.size()], name, std::move(where)});
  }
  [[nodiscard]] std::string unknown() const { return std::string(system_ == UnitSystem::us ? blank : blank_si); }
  [[nodiscard]] std::string up(Length length) const { return on_rule(length, system_, Toward::more); }
  [[nodiscard]] std::string down(Length length) const { return on_rule(length, system_, Toward::less); }
  // What the feed is turned for a length, on the same side of it.
  [[nodiscard]] std::string fed(Length length, Toward toward) const {
    if (!marks_.feed_pitch || !(*marks_.feed_pitch > Length())) return {};
    return " (" + in_quarter_turns(length / *marks_.feed_pitch, toward) + " of feed)";
  }

  [[nodiscard]] Length keep_off() const { return plan_.rules == nullptr ? Length() : plan_.rules->tool_clearance.value; }

  // No mark is made beyond the one that is never passed.
  [[nodiscard]] bool past_limit(Length at) const { return !marks_.limit || at > *marks_.limit; }

  void drawn_back() {
    const Method kind = plan_.method.kind;
    std::string text;
    if (marks_.clear) text = "at least " + up(*marks_.clear) + " back of 1" + fed(*marks_.clear, Toward::more);
    else if (kind == Method::direct && marks_.drawn_back) text = down(*marks_.drawn_back) + " back of 1, valve tried by hand";
    else if (kind == Method::direct) text = unknown() + " back of 1, valve tried by hand";
    else if (kind == Method::saddle) text = unknown() + " back of 1: saddle + stop, by tape";
    else text = unknown() + " back of 1: sleeve + valve, by tape";
    add("drawn-back", kind == Method::direct   ? "bar back, valve swings"
                      : kind == Method::saddle ? "bar back, clear of stop plug"
                                               : "bar back, clear of valve",
        std::move(text));
  }

  void through() {
    if (!marks_.at) {
      add("through", "breakthrough", unknown() + " past 1: the wall, gauged");
      return;
    }
    const Length early = marks_.at->breakthrough;
    std::string text = "from " + down(early) + " past 1";
    if (marks_.at->full_width && !past_limit(*marks_.at->full_width)) {
      text += "; hole full at " + up(*marks_.at->full_width) + fed(*marks_.at->full_width, Toward::more);
    }
    add("through", "breakthrough", std::move(text));
  }

  void catches() {
    const auto& lead = plan_.job.tool.lead;
    add("tap-catches", "tap catches",
        lead && marks_.at && past_limit(*lead) ? "none: this tool is too long; see the hold"
        : lead ? down(*lead) + " past 1" + fed(*lead, Toward::less) : unknown() + " past 1: tool's point to first thread");
  }

  void stop_tapping() {
    std::string text;
    if (marks_.at && marks_.at->stop_tapping && past_limit(*marks_.at->stop_tapping)) {
      text = "none: this tool is too long; see the hold";
    } else if (marks_.by_trial) {
      text = down(*plan_.job.service.trial.depth) + " past 1, found by trial";
    } else if (marks_.at && marks_.at->stop_tapping) {
      text = down(*marks_.at->stop_tapping) + " past 1";
    } else if (marks_.tap_depth) {
      text = "mark 3 + " + down(*marks_.tap_depth);
    } else {
      text = unknown() + " past 1, by the trial piece";
    }
    // The thread draws the tap in from mark 3 on, wherever the depth is counted from.
    if (!text.starts_with("none") && !marks_.by_trial && marks_.tap_turns) text += ", " + in_quarter_turns(*marks_.tap_turns, Toward::less) + " of the bar after 3";
    add("stop-tapping", "STOP TAPPING", std::move(text));
  }

  void never_past() {
    std::string text = marks_.limit ? down(*marks_.limit) + " past 1" : unknown() + " past 1: wall and bore, less " + up(keep_off());
    const bool pilot = plan_.method.kind != Method::direct && !plan_.job.tool.lead;
    if (pilot) text += ", less the pilot";
    add("far-wall", "NEVER PAST: far wall", std::move(text));
  }

  void stop_touches() {
    std::string text = unknown() + " past 1: tool less stop on its tool";
    if (marks_.at && marks_.at->stop_touches) {
      const Length at = *marks_.at->stop_touches;
      if (past_limit(at)) text = "none: past mark 5; see the hold";
      else text = at < Length() ? up(-at) + " back of 1" : down(at) + " past 1";
    }
    list_.push_back({"stop-touches", "S", "stop touches the hole", std::move(text)});
  }

  const Plan& plan_;
  const MarksPlan& marks_;
  UnitSystem system_;
  std::vector<BarMark> list_;
};

}  // namespace

std::vector<BarMark> bar_marks(const Plan& plan, UnitSystem system) {
  if (plan.verdict == Verdict::no_go || !plan.marks) return {};
  return MarkList(plan, system).all();
}

std::string makeup_in_words(const Plan& plan) {
  if (plan.verdict == Verdict::no_go || plan.method.kind != Method::direct) return {};
  const auto showing = [](double threads) {
    std::string text;
    append_number(text, threads, 1);
    return text + (threads == 1.0 ? " thread" : " threads") + " left showing";
  };
  const TrialFacts& trial = plan.job.service.trial;
  if (trial.wrench_turns && trial.threads_showing) {
    return (trial.hand_turns ? in_quarter_turns(*trial.hand_turns) + " by hand, then " : std::string()) +
           in_quarter_turns(*trial.wrench_turns) + " by wrench; " + showing(*trial.threads_showing);
  }
  if (plan.makeup) {
    return in_quarter_turns(plan.makeup->makeup.hand_tight_turns) + " by hand, then " +
           in_quarter_turns(plan.makeup->wrench_turns) + " by wrench; " + showing(plan.makeup->threads_showing);
  }
  return "by trial: ____ hand, ____ wrench, ____ showing";
}

}  // namespace mainbore
