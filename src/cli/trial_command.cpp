#include "cli/trial_command.hpp"

#include <array>
#include <cmath>

#include "cli/result_writer.hpp"
#include "mainbore/tool_file.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {
namespace {

constexpr std::string_view trial_form =
    "\ngive a trial as \"depth=1.5 in, hand=4, wrench=2.5, showing=3\"; hand may be left out";

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

mechanics::TrialTap trial_of(const std::string& text, const Catalog& catalog) {
  constexpr std::array<std::string_view, 4> keys = {"depth", "hand", "wrench", "showing"};
  std::array<std::optional<std::string>, 4> values;
  for (std::string_view rest = text; !rest.empty();) {
    const std::size_t end = std::min(rest.find(','), rest.size());
    const std::string_view part = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    const std::size_t equals = part.find('=');
    if (equals == std::string_view::npos) {
      throw Stop(exit_usage, "--trial: " + text::quoted(part) + " has no =" + std::string(trial_form));
    }
    const auto key = word_of("--trial", std::string(trimmed(part.substr(0, equals))), keys);
    if (!key) throw Stop(exit_usage, "--trial: a value without a name" + std::string(trial_form));
    if (values[*key]) throw Stop(exit_usage, "--trial: " + std::string(keys[*key]) + " is given twice");
    values[*key] = trimmed(part.substr(equals + 1));
  }
  for (const std::size_t needed : {0U, 2U, 3U}) {
    if (!values[needed] || values[needed]->empty()) {
      throw Stop(exit_usage, "--trial: " + std::string(keys[needed]) + " is missing" + std::string(trial_form));
    }
  }
  const auto fact = [&](std::size_t key, std::string_view path) {
    return std::get<Measure>(fact_of("--trial " + std::string(keys[key]), *values[key], path, catalog).value());
  };
  mechanics::TrialTap trial;
  trial.depth = fact(0, "service.trial.depth").as<Length>();
  if (values[1] && !values[1]->empty()) trial.hand_turns = fact(1, "service.trial.hand_turns").base();
  trial.wrench_turns = fact(2, "service.trial.wrench_turns").base();
  trial.threads_showing = fact(3, "service.trial.threads_showing").base();
  return trial;
}

}  // namespace

ExitStatus trial_command(const TrialRequest& request, Console& console) {
  if (request.trials.empty()) {
    throw Stop(exit_usage,
               "no trial: give --trial \"depth=1.5 in, hand=4, wrench=2.5, showing=3\"\n"
               "try: mainbore trial --help");
  }
  if (request.threads_per_inch.empty()) {
    throw Stop(exit_usage, "--threads is missing: lay a rule along the stop's thread and count the threads in an inch");
  }
  const std::shared_ptr<const Catalog> tables = open_catalog(request.data, console);
  const Catalog& catalog = *tables;
  std::vector<mechanics::TrialTap> trials;
  for (const std::string& trial : request.trials) trials.push_back(trial_of(trial, catalog));
  SettingsInForce in_force(request.settings_file, UsersOwn::read, catalog, console);
  const UnitSystem units = in_force.units(request.units);
  const Rules rules = in_force.rules(catalog, request.rules, console);

  TrialSheet sheet;
  sheet.from_settings = in_force.taken();
  sheet.trials = trials;
  sheet.threads_per_inch =
      number_of("--threads", request.threads_per_inch, 1.0, 50.0).value() * mainbore::units::per_inch;
  sheet.wanted.wrench_turns =
      rule_of("--wrench", request.wrench, "direct.wrench_turns").value_or(rules.direct.wrench_turns.value);
  sheet.wanted.threads_showing =
      rule_of("--showing", request.showing, "direct.threads_showing").value_or(rules.direct.threads_showing.value);
  if (const auto least = number_of("--least", request.least, 1.0, 20.0)) {
    if (*least != std::floor(*least)) throw Stop(exit_usage, "--least takes a whole number of trials");
    sheet.limits.least_agreeing = static_cast<int>(*least);
  }
  sheet.result = mechanics::trial_taps(trials, sheet.threads_per_inch, sheet.wanted, sheet.limits);
  write_result(
      request.format == "json" ? trial_taps_to_json(sheet, units, JsonStyle::pretty) : trial_taps_text(sheet, units),
      console);
  return sheet.result.settled() ? exit_go : exit_hold;
}

}  // namespace mainbore::cli
