#include "cli/plan_command.hpp"

#include <memory>
#include <optional>
#include <utility>

#include "cli/result_writer.hpp"
#include "cli/tool_values.hpp"
#include "mainbore/calculation_sheet.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/sheet.hpp"
#include "mainbore/tool_file.hpp"
#include "mainbore/tool_report.hpp"
#include "mainbore/what_if.hpp"
#include "words/card.hpp"

namespace mainbore::cli {
namespace {

// The file named; else what is piped in, unless --set alone says what there is to plan.
std::optional<std::string> input_of(const PlanRequest& request, const Console& console) {
  if (!request.job.empty()) return request.job;
  if (!request.settings.empty()) return std::nullopt;
  if (console.environment.in_is_terminal) {
    throw Stop(exit_usage,
               "no job: name a file, - for standard input, or give the facts with --set\n"
               "try: mainbore plan --help");
  }
  return "-";
}

}  // namespace

ExitStatus plan_command(const PlanRequest& request, Console& console) {
  if (request.format.starts_with("calc") && request.language == name_of(Language::spanish)) {
    throw Stop(
        exit_usage,
        "the calculation sheet is in English alone: leave out --language, or ask for the card with --format text");
  }
  const std::vector<Setting> settings = settings_of(request.settings, "PATH=VALUE, such as --set main.size=\"8 in\"");
  const std::optional<std::string> input = input_of(request, console);
  const std::shared_ptr<const Catalog> tables = open_catalog(request.data, console);
  const Catalog& catalog = *tables;
  SettingsInForce in_force(request.settings_file, UsersOwn::read, catalog, console);
  const UnitSystem units = in_force.units(request.units);
  const bool translated = request.format == "text" || request.format == "html";
  const Language language = in_force.language(request.language, translated);
  const Planner planner = in_force.planner(tables, request.rules, request.approved, console);

  JobFile read;
  if (input) {
    const std::string text = read_text(*input, longest_job, console);
    read = read_job(text, shown_name(*input), catalog, settings);
  } else {
    read = job_from_settings(settings, catalog);
  }
  stop_on(read.diagnostics, "no plan is made", console);

  FromSettings from = in_force.taken();
  lay_settings_under(*read.job, in_force.file(), from);
  Plan plan = planner.plan(*std::move(read.job));
  plan.from_settings = std::move(from);
  std::string result;
  if (request.format == "html") {
    result = sheet_html(plan, {units, language});
  } else if (request.format == "calc") {
    result = calculation_sheet_text(plan, units);
  } else if (request.format == "calc-html") {
    result = calculation_sheet_html(plan, units);
  } else if (request.format == "json") {
    result = request.what_if
                 ? what_if_to_json(what_if(plan.job, planner, units), units, JsonStyle::pretty, plan.from_settings)
                 : plan_to_json(plan, units, JsonStyle::pretty);
  } else {
    TextOptions options;
    options.units = units;
    options.language = language;
    options.why = request.why || request.full;
    options.materials = request.materials || request.full;
    options.steps = request.steps || request.full;
    if (console.output.empty() && console.environment.out_columns > 0) options.width = console.environment.out_columns;
    options.color = console.output.empty() && console.environment.out_is_terminal && !console.environment.no_color;
    result = text_report(plan, options);
    if (request.what_if && language != Language::english) {
      result.append("\n").append(say(words::CardWord::english_from_here, language)).append("\n");
    }
    if (request.what_if) result += '\n' + what_if_text(what_if(plan.job, planner, units), units);
  }
  write_result(result, console);
  return exit_status(plan.verdict);
}

}  // namespace mainbore::cli
