#include <cmath>

#include "mainbore/tool_report.hpp"
#include "report/settings_words.hpp"
#include "report/text_page.hpp"

namespace mainbore {
namespace {

using mechanics::TrialDoubt;

std::string number(double value) { return format_measure(Measure(value, Kind::ratio), UnitSystem::us); }
std::string turns(double value) { return format_measure(Measure(value, Kind::turns), UnitSystem::us); }
std::string threads(double value) { return format_measure(Measure(value, Kind::threads), UnitSystem::us); }

std::string doubt_text(TrialDoubt doubt, const TrialSheet& sheet) {
  const mechanics::TrialLimits& limits = sheet.limits;
  switch (doubt) {
    case TrialDoubt::too_few:
      return "Only " + std::to_string(sheet.trials.size() - sheet.result.stray.size()) + " of at least " +
             std::to_string(limits.least_agreeing) + " trials agree. Tap the next one at the mark.";
    case TrialDoubt::do_not_agree:
      return "Trials lie more than " + turns(limits.spread) +
             " apart. Look for the slip: another stop or tap, chips under the tool, a miscount. Repeat.";
    case TrialDoubt::outside_tried:
      return "The mark lies more than " + turns(limits.reach) +
             " from every trial that agrees. Tap the next one at the mark.";
    case TrialDoubt::hand_turns_differ:
      return "The turns by hand do not fit the depths. Count the threads over an inch again, and the turns.";
    case TrialDoubt::thread_too_short:
      return "This stop has not thread enough for the turns wanted: nothing would go in by hand. Ask for less.";
  }
  return {};
}

}  // namespace

std::string trial_taps_text(const TrialSheet& sheet, UnitSystem system, int width) {
  const mechanics::TrialResult& result = sheet.result;
  const auto length = [&](Length value) { return format_measure(Measure(value), system); };
  report::TextPage page(width, false);
  page.title(result.settled() ? "Tap depth, settled by trial" : "Tap depth, not settled: another trial is needed");
  page.field("mark to tap to", length(result.mark));
  page.field("from the last trial", turns(std::fabs(result.turns_from_last)) +
                                        (result.turns_from_last < 0 ? " of the tap less" : " of the tap more"));
  page.field("spread", length(result.spread) + ", " + turns(result.spread_turns));
  page.field("wanted",
             turns(sheet.wanted.wrench_turns) + " by wrench, " + threads(sheet.wanted.threads_showing) + " showing");
  if (result.hand_turns) page.field("by hand, at the mark", turns(*result.hand_turns));
  page.field("threads", number(sheet.threads_per_inch / units::per_inch) + " an inch: one turn of the tap is " +
                            length(1.0 / sheet.threads_per_inch));
  for (const TrialDoubt doubt : result.doubts) page.paragraph(doubt_text(doubt, sheet), 2, "- ");
  if (result.further_trials > 0) {
    page.field("more trials", "at least " + std::to_string(result.further_trials) + ", at the mark");
  }
  page.heading("Trials");
  for (std::size_t i = 0; i < sheet.trials.size(); ++i) {
    const mechanics::TrialTap& trial = sheet.trials[i];
    std::string text = "depth " + length(trial.depth) + "; ";
    if (trial.hand_turns) text += "by hand " + number(*trial.hand_turns) + ", ";
    text += "by wrench " + number(trial.wrench_turns) + ", showing " + number(trial.threads_showing) + ": mark " +
            length(result.marks[i]);
    for (const std::size_t stray : result.stray) {
      if (stray == i) text += ". Left out: it does not agree";
    }
    page.paragraph(text + '.', 4, std::to_string(i + 1) + ".");
  }
  const auto settings = report::settings_words(sheet.from_settings, system);
  if (!settings.empty()) page.heading("From settings");
  for (const auto& [label, text] : settings) page.field(label, text);
  page.blank();
  page.paragraph(
      "The mark holds for this tool, this lot of stops and this pipe, measured from where the trials were measured. "
      "Try "
      "the stop by hand in the main before the wrench goes on.");
  return std::move(page).take();
}

}  // namespace mainbore
