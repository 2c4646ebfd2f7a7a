#include "cli/record_command.hpp"

#include <iostream>
#include <memory>
#include <optional>
#include <utility>

#include "cli/ledger_file.hpp"
#include "cli/result_writer.hpp"
#include "cli/tool_values.hpp"
#include "interview/readings_asked.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/ledger.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/readings_file.hpp"
#include "mainbore/tap_record.hpp"
#include "report/card.hpp"
#include "text/foreign.hpp"
#include "words/asking.hpp"

namespace mainbore::cli {
namespace {

constexpr const char* try_help = "\ntry: mainbore record --help";

void require_sense(const RecordRequest& request) {
  const bool whole_ledger = !request.exported.empty() || !request.tools.empty();
  if (!request.exported.empty() && !request.tools.empty()) throw Stop(exit_usage, "give --export or --tools, not both");
  if (whole_ledger && (!request.job.empty() || !request.settings.empty() || !request.append.empty())) {
    throw Stop(exit_usage,
               std::string("--export and --tools take a ledger alone, without job and readings") + try_help);
  }
  if (request.append == "-") throw Stop(exit_usage, "--append takes the name of a file");
  if (!request.order.empty() && request.exported.empty()) throw Stop(exit_usage, "--order goes with --export");
  const std::string& format = request.format;
  const bool fits = !request.exported.empty() ? format != "text" : format != "csv" && format != "geojson";
  if (!fits) {
    throw Stop(exit_usage, request.exported.empty() ? "--format csv and geojson go with --export"
                                                    : "--export writes json, csv or geojson");
  }
  if (!whole_ledger && request.job.empty()) {
    throw Stop(exit_usage, std::string("no job: name the job file the crew worked by") + try_help);
  }
}

struct LedgerText {
  std::string text;
  Ledger ledger;
};

// An unfinished line at the end is another writer's, or was never acknowledged.
void open_ledger(const std::string& path, const Catalog& catalog, LedgerText& read, Console& console) {
  read.text = read_text(path, longest_ledger, console);
  if (read.text.size() > longest_ledger) throw Stop(exit_unreadable, shown_name(path) + " is too long for a ledger");
  read.ledger = read_ledger(read.text, shown_name(path), catalog);
  stop_on(read.ledger.diagnostics, "nothing is written", console);
  if (read.ledger.torn)
    console.err << "mainbore: " << shown_name(path) << ": its last record is not finished, and is left out\n";
}

ExitStatus export_ledger(const RecordRequest& request, const Catalog& catalog, UnitSystem units, Console& console) {
  LedgerText read;
  open_ledger(request.exported, catalog, read, console);
  const auto entries = read.ledger.latest(request.order);
  if (entries.empty() && !request.order.empty()) {
    throw Stop(exit_no_input,
               "no record of order " + text::quoted(request.order) + " in " + shown_name(request.exported));
  }
  write_result(request.format == "csv"       ? ledger_to_csv(entries, units)
               : request.format == "geojson" ? ledger_to_geojson(entries, units)
                                             : ledger_to_json(entries),
               console);
  return exit_go;
}

ExitStatus tell_tools(const RecordRequest& request, const Catalog& catalog, UnitSystem units, Console& console) {
  LedgerText read;
  open_ledger(request.tools, catalog, read, console);
  const ToolHistory history = tool_history(read.ledger.latest());
  write_result(request.format == "json" ? tool_history_to_json(history, units, JsonStyle::pretty)
                                        : tool_history_text(history, units),
               console);
  return exit_go;
}

Readings readings_of(const RecordRequest& request, const Job& job, const Planner& planner, Audience crew,
                     Console& console) {
  const Catalog& catalog = planner.catalog();
  std::vector<Setting> settings = settings_of(request.settings, "NAME=VALUE, such as --set wall=\"0.28 in\"");
  if (request.readings.empty() && settings.empty()) {
    if (!console.environment.in_is_terminal || !console.environment.err_is_terminal || request.job == "-") {
      throw Stop(exit_usage,
                 std::string("no readings: name a file, - for standard input, or give them with --set") + try_help);
    }
    auto asked = interview::ask_readings(console.in, console.err, planner.plan(job), crew, catalog);
    if (!asked) throw Stop(exit_stopped, std::string(say(words::AskWord::stopped_readings, crew.language)));
    settings = *std::move(asked);
  }
  ReadingsFile read;
  if (request.readings.empty()) {
    read = readings_from_settings(settings, catalog);
  } else {
    const std::string text = read_text(request.readings, longest_readings, console);
    read = read_readings(text, shown_name(request.readings), catalog, settings);
  }
  stop_on(read.diagnostics, "nothing is recorded", console);
  return *std::move(read.readings);
}

// The ledger and JSON have the words of a record in English, whatever its page is in.
std::string translated_text(const Job& job, const Readings& readings, const Planner& planner, Audience crew,
                            const FromSettings& from) {
  return record_text(tap_record(job, readings, planner, crew), crew) + '\n' +
         report::translation_line(from, crew.language) + '\n';
}

ExitStatus status_of(const TapRecord& record) {
  if (record.verdict() == Verdict::no_go) return exit_no_go;
  return record.is_void() || !record.is_complete() ? exit_hold : exit_go;
}

void require_one_order(const Job& job, const Readings& readings, bool appended) {
  const std::string_view order = readings.text(RecordKey::order);
  if (!order.empty() && !job.id.empty() && order != job.id) {
    throw Stop(exit_unreadable,
               "the readings are of order " + text::quoted(order) + ", and the job is " + text::quoted(job.id));
  }
  if (appended && order.empty() && job.id.empty()) {
    throw Stop(exit_unreadable,
               "a ledger tells taps by their work order: give the job its id, or the readings their order");
  }
}

}  // namespace

ExitStatus record_command(const RecordRequest& request, Console& console) {
  require_sense(request);
  const std::shared_ptr<const Catalog> tables = open_catalog(request.data, console);
  const Catalog& catalog = *tables;
  SettingsInForce in_force(request.settings_file, UsersOwn::read, catalog, console);
  const UnitSystem units = in_force.units(request.units);
  const bool translated = request.format != "json" && request.exported.empty() && request.tools.empty();
  const Language language = in_force.language(request.language, translated);
  if (!request.exported.empty()) return export_ledger(request, catalog, units, console);
  if (!request.tools.empty()) return tell_tools(request, catalog, units, console);

  const Planner planner = in_force.planner(tables, request.rules, request.approved, console);
  const std::string text = read_text(request.job, longest_job, console);
  JobFile read = read_job(text, shown_name(request.job), catalog);
  stop_on(read.diagnostics, "nothing is recorded", console);
  FromSettings from = in_force.taken();
  lay_settings_under(*read.job, in_force.file(), from);
  const Readings readings = readings_of(request, *read.job, planner, {units, language}, console);
  require_one_order(*read.job, readings, !request.append.empty());
  const TapRecord record = tap_record(*read.job, readings, planner, units);

  // Whether there is a place for both is known before either is written.
  std::optional<LedgerFile> ledger;
  if (!request.append.empty()) ledger.emplace(request.append, record, catalog, console);
  ResultWriter result(console);
  if (ledger) {
    const int revision = ledger->append(units);
    ledger.reset();
    console.err << "mainbore: appended to " << shown_name(request.append);
    if (revision > 1) console.err << " as correction " << revision - 1 << "; the first record stays";
    console.err << '\n';
  }
  result.write(request.format == "json" ? record_to_json(record, units, JsonStyle::pretty)
               : language == Language::english
                   ? record_text(record, units)
                   : translated_text(*read.job, readings, planner, {units, language}, from));
  result.finish();
  return status_of(record);
}

}  // namespace mainbore::cli
