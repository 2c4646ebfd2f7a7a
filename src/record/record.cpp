#include "words/record.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "mainbore/measure.hpp"
#include "mainbore/mechanics/trial_taps.hpp"
#include "mainbore/report.hpp"
#include "mainbore/tap_record.hpp"
#include "mainbore/work.hpp"
#include "words/terms.hpp"

namespace mainbore {
namespace {

using enum RecordKey;
using words::RecordWord;

std::string show(Measure measure, UnitSystem units) { return format_measure(measure, units); }

template <std::size_t N>
std::optional<std::size_t> place_of(std::string_view word, const std::array<std::string_view, N>& words) {
  const auto* const found = std::find(words.begin(), words.end(), word);
  return found == words.end() ? std::nullopt : std::optional(static_cast<std::size_t>(found - words.begin()));
}

// What was read at the pipe in place of what the order says. A pressure lowered for the tap is no pressure of the main:
// only a higher one counts.
Job with_readings(Job job, const Readings& readings) {
  MainFacts& main = job.main;
  const auto length = [&](std::optional<Length>& fact, RecordKey key) {
    if (const auto read = readings.measure(key)) fact = read->as<Length>();
  };
  if (const auto read = readings.measure(line_pressure)) {
    const Pressure pressure = Pressure::from_base(read->base());
    if (!main.pressure || *main.pressure < pressure) main.pressure = pressure;
  }
  if (const auto read = readings.measure(surge)) main.surge = Pressure::from_base(read->base());
  if (const auto read = readings.measure(pipe_temperature)) main.temperature = Temperature::fahrenheit(read->base());
  if (const auto read = readings.measure(air_temperature)) job.air_temperature = Temperature::fahrenheit(read->base());
  length(main.od, od);
  length(main.circumference, circumference);
  length(main.wall, wall);
  length(main.cover, cover);
  length(job.service.trial.depth, tap_depth);  // what was tapped to is held against pipe and tool as a trial is
  if (const auto read = readings.text(pipe_class); !read.empty()) main.class_name = read;
  if (const auto read = place_of(readings.text(condition), condition_names))
    main.condition = static_cast<Condition>(*read);
  if (const auto* at = std::get_if<ClockPosition>(&readings.at(clock))) job.service.clock = *at;
  if (const auto read = place_of(readings.text(method), method_names)) job.service.method = static_cast<Method>(*read);
  return job;
}

// By the bounds as they are printed: whoever holds the sheet against a gauge has no others.
Judged judged(const StopNumber& stop_number, std::optional<Measure> value, UnitSystem units) {
  if (!value) return Judged::unread;
  const BoundTexts bounds = printed_bounds(stop_number, units);
  const auto number_of = [&](const std::string& bound) {
    return parse_measure(bound, stop_number.kind()).value.base();
  };
  const double read = value->base();
  constexpr double noise = 1e-9;  // of conversion
  const auto below = [&](double bound) { return read < bound - noise * std::max(1.0, std::fabs(bound)); };
  const auto above = [&](double bound) { return read > bound + noise * std::max(1.0, std::fabs(bound)); };
  if (!bounds.least.empty() && below(number_of(bounds.least))) return Judged::outside;
  if (!bounds.most.empty() && above(number_of(bounds.most))) return Judged::outside;
  return Judged::inside;
}

const RecordEntry* entry_read_for(ReadingId id) {
  for (const RecordEntry& entry : record_entries()) {
    if (entry.reading == id) return &entry;
  }
  return nullptr;
}

bool has(const Plan& plan, FindingCode code, Severity severity) {
  return std::any_of(plan.findings.begin(), plan.findings.end(),
                     [&](const Finding& finding) { return finding.code == code && finding.severity == severity; });
}

int rank(Verdict verdict) { return verdict == Verdict::go ? 0 : verdict == Verdict::hold ? 1 : 2; }

class RecordMaker {
 public:
  RecordMaker(const Job& job, const Readings& readings, const Planner& planner, Audience audience)
      : audience_(audience), units_(audience.units), language_(audience.language) {
    record_.readings = readings;
    record_.planned = planner.plan(job);
    record_.found = planner.plan(with_readings(job, readings));
  }

  TapRecord make() && {
    judge();
    judge_makeup();
    compare();
    holds();
    deviations();
    missing();
    return std::move(record_);
  }

 private:
  [[nodiscard]] const Readings& read() const { return record_.readings; }

  void judge() {
    for (const StopNumber& reading : record_.planned.stop_numbers) {
      JudgedReading& one = record_.judged.emplace_back();
      one.stop_number = reading;
      if (const RecordEntry* entry = entry_read_for(reading.id)) one.value = read().measure(entry->key);
      one.judged = judged(reading, one.value, units_);
      if (one.judged != Judged::outside) continue;
      record_.because.push_back({"stop-number", say(RecordWord::outside, language_,
                                                    {{"number", words_of(reading.id, language_)},
                                                     {"value", value_in_words(one, units_)},
                                                     {"bounds", bounds_in_words(reading, audience_)}})});
    }
  }

  // As it was made; where that is not read, as it was planned.
  [[nodiscard]] bool is_direct() const {
    if (read().has(method)) return read().text(method) == name_of(Method::direct);
    return record_.planned.method.kind == Method::direct;
  }

  // What no reason mends: a taper thread that no wrench has drawn up does not seal.
  void judge_makeup() {
    const auto turns = read().measure(wrench_turns);
    if (!is_direct() || !turns || turns->base() >= mechanics::quarter_turn) return;
    record_.because.push_back({"makeup", std::string(say(RecordWord::by_hand_alone, language_))});
  }

  void compare() {
    const Plan& planned = record_.planned;
    const Plan& found = record_.found;
    if (planned.verdict == Verdict::no_go)
      record_.because.push_back({"no-go", std::string(say(RecordWord::was_no_go, language_))});
    const bool worse = rank(found.verdict) > rank(planned.verdict);
    for (const Finding& finding : found.findings) {
      if (finding.severity != Severity::stop && finding.severity != Severity::hold) continue;
      if (worse && !has(planned, finding.code, finding.severity)) {
        record_.because.push_back({name_of(finding.code), detail_of(finding, audience_, found.stop_numbers)});
      }
    }
    if (found.verdict == Verdict::no_go || planned.verdict == Verdict::no_go) return;
    const ChosenMethod& then = planned.method;
    const ChosenMethod& now = found.method;
    if (now.kind != then.kind || now.count != then.count || now.tap != then.tap) {
      record_.because.push_back(
          {"method", say(RecordWord::another_tap, language_, {{"work", summary_of(found, audience_).work}})});
      return;
    }
    for (const Finding& finding : planned.findings) {
      if (finding.severity == Severity::hold && !has(found, finding.code, Severity::hold))
        record_.settled.push_back(finding.code);
    }
  }

  [[nodiscard]] bool is_inside(ReadingId id) const {
    return std::any_of(record_.judged.begin(), record_.judged.end(), [&](const JudgedReading& one) {
      return one.stop_number.id == id && one.judged == Judged::inside;
    });
  }

  void holds() {
    if (record_.found.verdict == Verdict::no_go) return;
    for (const Finding& finding : record_.found.findings) {
      if (finding.severity != Severity::hold) continue;
      HoldLeft hold;
      hold.code = finding.code;
      // The others are planned with, and a hold that is left although its fact was read is not cleared by it.
      if (reading_that_clears(finding.code) == ReadingId::line_pressure && is_inside(ReadingId::line_pressure)) {
        hold.by_reading = ReadingId::line_pressure;
      }
      for (const HoldCleared& cleared : read().holds) {
        if (cleared.code != finding.code) continue;
        hold.found = cleared.found;
        hold.by = cleared.by;
      }
      record_.holds.push_back(std::move(hold));
    }
  }

  [[nodiscard]] std::string reason_for(std::string_view what) const {
    for (const DeviationReason& given : read().deviations) {
      if (given.what == what) return given.reason;
    }
    return {};
  }

  void deviation(const RecordEntry& entry, std::string planned) {
    deviation(entry, std::move(planned), written(entry, read().at(entry.key), units_));
  }
  void deviation(const RecordEntry& entry, std::string planned, std::string done) {
    record_.deviations.push_back(
        {std::string(entry.name), std::move(planned), std::move(done), reason_for(entry.name)});
  }

  void off_by_more(RecordKey key, std::optional<Measure> planned, double tolerance) {
    const auto done = read().measure(key);
    if (!planned || !done || std::fabs(planned->base() - done->base()) <= tolerance) return;
    deviation(entry_of(key), show(*planned, units_));
  }

  void deviations() {
    const Plan& planned = record_.planned;
    if (read().has(method) && read().text(method) != name_of(planned.method.kind)) {
      deviation(entry_of(method), std::string(name_of(planned.method.kind)));
    }
    clock_deviation();
    // A quarter turn and half a thread are what is told apart by eye, a sixteenth of an inch what a feed is read to.
    const TrialFacts& trial = planned.job.service.trial;
    const auto made_up = [&](RecordKey key, double MakeupPlan::*by_plan, const std::optional<double>& tried,
                             const Rule<double>& rule, double told_apart) {
      const std::optional<double> number = planned.makeup ? std::optional((*planned.makeup).*by_plan) : tried;
      if (number) return off_by_more(key, Measure(*number, Kind::ratio), told_apart + 1e-9);
      if (planned.method.kind != Method::direct) return;
      // A trial that is not in the job was held to what the rules want, within a turn (mechanics::TrialLimits).
      off_by_more(key, Measure(rule.value, Kind::ratio), mechanics::TrialLimits{}.reach + 1e-9);
    };
    const DirectRules& rules = planned.rules->direct;
    made_up(wrench_turns, &MakeupPlan::wrench_turns, trial.wrench_turns, rules.wrench_turns, mechanics::quarter_turn);
    made_up(threads_showing, &MakeupPlan::threads_showing, trial.threads_showing, rules.threads_showing, 0.5);
    if (planned.marks && planned.marks->at && planned.marks->at->stop_tapping) {
      off_by_more(tap_depth, Measure(*planned.marks->at->stop_tapping), 1.0 / 16.0 + 1e-9);
    }
    for (const JudgedReading& one : record_.judged) {
      if (one.judged != Judged::outside) continue;
      deviation(*entry_read_for(one.stop_number.id), bounds_in_words(one.stop_number, audience_),
                value_in_words(one, units_));
    }
    for (const DeviationReason& given : read().deviations) {
      const bool told = std::any_of(record_.deviations.begin(), record_.deviations.end(),
                                    [&](const Deviation& one) { return one.what == given.what; });
      if (!told) record_.deviations.push_back({given.what, "", "", given.reason});
    }
  }

  void clock_deviation() {
    const auto* const at = std::get_if<ClockPosition>(&read().at(clock));
    if (at == nullptr || record_.planned.method.kind == Method::none) return;
    const auto apart = [&](ClockPosition planned) {
      const int minutes = std::abs(planned.minutes - at->minutes);
      return std::min(minutes, 720 - minutes);
    };
    constexpr int told_apart = 15;  // a quarter of an hour on the face: 7.5 degrees
    const Location& place = record_.planned.location;
    if (apart(place.clock) <= told_apart) return;
    if (record_.planned.method.count > 1 && apart(place.other_clock) <= told_apart) return;
    deviation(entry_of(clock), place.clock.label());
  }

  void miss(std::string name, std::string label) { record_.missing.push_back({std::move(name), std::move(label)}); }
  void miss(const RecordEntry& entry) {
    miss(std::string(entry.name), std::string(words::term(entry.label, language_)));
  }

  void missing() {
    const bool direct = is_direct();
    for (const RecordEntry& entry : record_entries()) {
      const bool stop_number = entry.reading && record_.planned.stop_number(*entry.reading) != nullptr;
      const bool needed =
          stop_number || entry.needed == Needed::always || (entry.needed == Needed::direct_tap && direct);
      if (needed && !read().has(entry.key)) miss(entry);
    }
    if (const LeakCheck said = record_.leak_check(); said == LeakCheck::leaks || said == LeakCheck::unsure) {
      miss(std::string(entry_of(leak_check).name),
           say(said == LeakCheck::leaks ? RecordWord::missing_tight : RecordWord::missing_plainly, language_,
               {{"read", read().text(leak_check)}}));
    }
    if (!read().has(od) && !read().has(circumference) &&
        record_.planned.stop_number(ReadingId::circumference) == nullptr) {
      miss("od", std::string(say(RecordWord::diameter_or_circumference, language_)));
    }
    if (read().has(longitude) != read().has(latitude)) {
      miss(entry_of(read().has(longitude) ? latitude : longitude));
    }
    for (const HoldLeft& hold : record_.holds) {
      if (hold.is_cleared()) continue;
      miss("holds." + std::string(name_of(hold.code)),
           say(RecordWord::missing_hold, language_, {{"hold", text_of(hold.code, language_).title}}));
    }
    for (const Deviation& one : record_.deviations) {
      if (one.reason.empty())
        miss("deviations." + one.what, say(RecordWord::missing_reason, language_,
                                           {{"what", one.what}, {"done", one.done}, {"planned", one.planned}}));
    }
  }

  TapRecord record_;
  Audience audience_;
  UnitSystem units_;
  Language language_;
};

}  // namespace

std::string value_in_words(const JudgedReading& reading, UnitSystem units) {
  std::string text = show(*reading.value, units);
  if (reading.judged != Judged::outside) return text;
  const BoundTexts bounds = printed_bounds(reading.stop_number, units);
  constexpr int most_digits = 10;
  for (int digits = calculation_digits; digits <= most_digits; ++digits) {
    if (text != bounds.least && text != bounds.most) return text;
    const Shown precise = shown_in_calculation(*reading.value, units, digits);
    text.clear();
    append_number(text, precise.value, precise.decimals);
    (text += ' ') += precise.unit;
  }
  return text;
}

bool TapRecord::is_outside() const {
  return std::any_of(judged.begin(), judged.end(),
                     [](const JudgedReading& one) { return one.judged == Judged::outside; });
}

Verdict TapRecord::verdict() const {
  if (planned.verdict == Verdict::no_go || found.verdict == Verdict::no_go) return Verdict::no_go;
  return is_void() || leak_check() == LeakCheck::leaks ? Verdict::hold : found.verdict;
}

TapRecord tap_record(const Job& job, const Readings& readings, const Planner& planner, Audience audience) {
  return RecordMaker(job, readings, planner, audience).make();
}

}  // namespace mainbore
