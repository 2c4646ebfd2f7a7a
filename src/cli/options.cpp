#include "cli/options.hpp"

#include <algorithm>
#include <utility>

#include "cli/help_text.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/version.hpp"

namespace mainbore::cli {
namespace {

constexpr const char* program_version = "mainbore " MAINBORE_VERSION;

// A command's page begins with its examples; in the list of commands its first line is enough.
class HelpPage : public CLI::Formatter {
 public:
  std::string make_subcommand(const CLI::App* command) const override {
    const std::string description = command->get_description();
    std::string line = "  " + command->get_name();
    line.resize(std::max<std::size_t>(line.size() + 2, 13), ' ');
    return line + description.substr(0, description.find('\n')) + '\n';
  }
};

std::string version_text() {
  const Catalog& catalog = Catalog::builtin();
  return std::string(program_version) + "\ndata edition " + catalog.edition() + ", hash " + catalog.hash();
}

// The words an option takes stand in its place on the help page ("us|si"), and shells offer what stands there. `unsaid`
// are further spellings.
void takes_one_of(CLI::Option* option, std::vector<std::string> words, const std::vector<std::string>& unsaid = {}) {
  option->type_name(CLI::detail::join(words, "|"));
  words.insert(words.end(), unsaid.begin(), unsaid.end());
  option->check(CLI::IsMember(std::move(words)).description(""));
}

using Output = std::optional<std::string>;

void add_output_option(CLI::App& command, Output& output) {
  command.add_option("-o,--output", output, "write the result there, not to standard output")->type_name("FILE");
}

// What every command that plans takes: units, rules, tables, and where the result goes.
template <class Request>
void add_shared_options(CLI::App& command, Request& request, Output& output) {
  takes_one_of(
      command.add_option("--units", request.units,
                         "of the result: us (in, ft, psi) or si (mm, m, kPa);\ndefault: by the settings, else us"),
      {"us", "si"});
  command
      .add_option("--rules", request.rules,
                  "a utility's own rules (JSON), laid over the defaults;\nrepeatable, in order")
      ->type_name("FILE")
      ->allow_extra_args(false);
  command.add_option("--data", request.data, "tables to use in place of those built in")->type_name("DIR");
  add_output_option(command, output);
}

void add_language_option(CLI::App& command, std::string& language) {
  takes_one_of(command.add_option("--language", language,
                                  "of what a crew reads, text and html: en (English) or es (Spanish);\n"
                                  "what stays English says so. Default: by the settings, else en"),
               {"en", "es"});
}

// `own`: without these options the user's own file is read.
void add_settings_options(CLI::App& command, SettingsRequest& request, UsersOwn own) {
  command
      .add_option("--settings", request.file,
                  own == UsersOwn::read ? "machine, rules, units and crew said once for every job (JSON), in place of\n"
                                          "$XDG_CONFIG_HOME/mainbore/settings.json; the job and this line come first"
                                        : "machine, rules, units and crew said once for every order (JSON); your own\n"
                                          "settings file is not read: output depends on the arguments alone")
      ->type_name("FILE");
  if (own == UsersOwn::never) return;
  command.add_flag("--no-settings", request.none, "no settings file is read");
}

void add_approved_option(CLI::App& command, std::string& file) {
  command
      .add_option(
          "--approved", file,
          "the utility's approved fittings (JSON or CSV), which plans choose from;\ndefault: those of the settings")
      ->type_name("FILE");
}

void add_plan_options(CLI::App& command, PlanRequest& request, Output& output) {
  // Lists of one value an option, so that what follows on the line is never swallowed.
  command.add_option("JOB", request.job, "job file (JSON), or - for standard input")->type_name("");
  command
      .add_option("--set", request.settings,
                  "one fact by its path, over the file's; repeat it for each fact:\n"
                  "main.size=\"8 in\"  nearby[0].along=\"4 ft\"  nearby=none\n"
                  "units: in, ft, mm, m, psi, kPa, bar, degF, degC")
      ->type_name("PATH=VALUE")
      ->allow_extra_args(false);
  takes_one_of(command.add_option("--format", request.format,
                                  "of the result; html is the field sheet; calc and calc-html\nare the calculation "
                                  "sheet that an engineer files; default text"),
               {"text", "json", "html", "calc", "calc-html"});
  command.add_flag("--why", request.why, "with text, behind the card: what it rests on, and what was not checked");
  command.add_flag("--materials", request.materials, "with text, behind the card: what to load");
  command.add_flag("--steps", request.steps,
                   "with text, behind the card: the order of work, and what to do when it\ngoes wrong");
  command.add_flag("--full", request.full, "with text: the card and all of these");
  command.add_flag("--what-if", request.what_if,
                   "how far each fact may move before the verdict changes; with text behind the\n"
                   "plan, with json in its place");
  add_language_option(command, request.language);
  add_approved_option(command, request.approved);
  add_shared_options(command, request, output);
  add_settings_options(command, request.settings_file, UsersOwn::read);
}

void add_batch_options(CLI::App& command, BatchRequest& request, Output& output) {
  command.add_option("ORDERS", request.orders, "files of orders, or - for standard input")->type_name("");
  takes_one_of(command.add_option("--in", request.in,
                                  "how the orders are written: csv, ndjson (a JSON object a line),\n"
                                  "json (an array) or geojson (features, a collection or a sequence);\n"
                                  "default: by the file's name, else its first bytes"),
               {"csv", "ndjson", "json", "geojson"});
  takes_one_of(command.add_option("--format", request.format,
                                  "text (the report of a week), html (the same with field sheets),\n"
                                  "ndjson or csv (a record an order), geojson (the features of GeoJSON\n"
                                  "given back with their verdicts); default text"),
               {"text", "ndjson", "csv", "html", "geojson"});
  command
      .add_option("--sheets", request.sheets,
                  "with text or html: a field sheet an order, named by its id, into this folder,\n"
                  "with an index")
      ->type_name("DIR");
  takes_one_of(command.add_option("--language", request.language,
                                  "of the field sheets, with --sheets or html: en (English) or es (Spanish);\n"
                                  "the report is in English"),
               {"en", "es"});
  command
      .add_option("--days", request.days,
                  "with text or html: the days whose load list is wanted, the first and the last\n"
                  "with .. between, or one; default all, unless they are more than two weeks of days")
      ->type_name("DAYS");
  command.add_flag("--full", request.full, "with ndjson: the whole plan of each order");
  command.add_flag("--decisions", request.decisions, "with ndjson: the plan without its words, load and steps; faster");
  command.add_option("--map", request.map, "which column, member or property is which fact (JSON); see docs/orders.md")
      ->type_name("FILE");
  command
      .add_option("--keep", request.keep,
                  "columns, members or properties of the orders that the records carry on,\n"
                  "with commas between, or all; with ndjson, csv and geojson")
      ->type_name("COLUMNS|all")
      ->allow_extra_args(false);
  command.add_flag("--columns", request.columns, "only show what each column was read as; nothing is planned");
  command.add_flag("--all", request.all, "with --columns: every value that was not understood, with its count");
  takes_one_of(command.add_option("--delimiter", request.delimiter, "between cells; default: found"),
               {"comma", "tab", "semicolon"}, {",", ";", "\t"});
  command.add_flag("--no-rows", request.no_rows, "records without row and line: the same in any piece of a file");
  takes_one_of(command.add_option("--fail-on", request.fail_on,
                                  "exit 0 unless an order is this bad or worse (office:\n"
                                  "a hold that the office clears); default hold"),
               {"hold", "office", "no-go", "unreadable", "never"});
  command.add_option("--jobs", request.jobs, "threads; 0: as many as there are cores; default 1")
      ->type_name("N")
      ->check(CLI::Range(0, 256).description(""));
  add_approved_option(command, request.approved);
  add_shared_options(command, request, output);
  add_settings_options(command, request.settings_file, UsersOwn::never);
}

void add_tool_options(CLI::App& command, ToolRequest& request, Output& output, std::vector<std::string> formats) {
  takes_one_of(command.add_option("--format", request.format, "of the result; default text"), std::move(formats));
  add_shared_options(command, request, output);
  add_settings_options(command, request.settings_file, UsersOwn::read);
}

void add_identify_options(CLI::App& command, IdentifyRequest& request, Output& output) {
  command.add_option("--circumference", request.circumference, "by tape round the cleaned pipe (in, ft, mm)")
      ->type_name("LENGTH");
  command.add_option("--od", request.od, "outside diameter, by caliper (in, mm)")->type_name("LENGTH");
  command.add_option("--wall", request.wall, "wall, by gauge (in, mm)")->type_name("LENGTH");
  command.add_option("--installed", request.installed, "year laid, by the record")->type_name("YEAR");
  command.add_option("--magnet", request.magnet, "does a magnet stick")->type_name("yes|no");
  command.add_option("--sound", request.sound, "of a light blow")->type_name("ring|dull");
  command
      .add_option("--joint", request.joint, "push-on, mechanical, flanged, \"caulked bell\",\n\"sleeve coupling\" ...")
      ->type_name("STYLE");
  command.add_option("--carries", request.carries, "what it was proved to carry by two means: water ...")
      ->type_name("CONTENT");
  add_tool_options(command, request, output, {"text", "json"});
}

void add_trial_options(CLI::App& command, TrialRequest& request, Output& output) {
  command
      .add_option(
          "--trial", request.trials,
          "one trial; repeatable: depth (in, mm), turns by hand\n(may be left out) and by wrench, threads showing")
      ->type_name("TRIAL")
      ->allow_extra_args(false);
  command.add_option("--threads", request.threads_per_inch, "threads per inch, counted on the stop")
      ->type_name("NUMBER");
  command.add_option("--wrench", request.wrench, "turns by wrench wanted; default by the rules")->type_name("TURNS");
  command.add_option("--showing", request.showing, "threads to be left showing; default by the rules")
      ->type_name("THREADS");
  command.add_option("--least", request.least, "trials that must agree (default 3)")->type_name("NUMBER");
  add_tool_options(command, request, output, {"text", "json"});
}

void add_table_options(CLI::App& command, TableRequest& request, Output& output) {
  command.add_option("--material", request.materials, "of the main; repeatable; default all")
      ->type_name("MATERIAL")
      ->allow_extra_args(false);
  command.add_option("--from", request.from, "smallest main (default 4 in)")->type_name("SIZE");
  command.add_option("--to", request.to, "largest main (default 12 in)")->type_name("SIZE");
  command.add_flag("--all-sizes", request.all_sizes, "mains of every size");
  command.add_option("--thread", request.thread, "of the stop's inlet: \"AWWA taper\", NPT or \"ISO 7-1\"")
      ->type_name("THREAD");
  command.add_option("--pressure", request.pressure, "of the line (psi, kPa, bar); default 40 psi")
      ->type_name("PRESSURE");
  command.add_option("--machine", request.machine, "a job file (JSON) whose machine is meant")->type_name("JOB");
  add_tool_options(command, request, output, {"text", "csv", "json", "html"});
}

void add_rules_options(CLI::App& command, RulesRequest& request, Output& output) {
  command.add_option("ACTION", request.action, "check FILE..., show [PATH...] or diff SET SET")->type_name("");
  command.add_option("SET", request.words, "a file of rules; \"default\"; to show, the path of a rule")->type_name("");
  add_tool_options(command, request, output, {"text", "json"});
}

void add_explain_options(CLI::App& command, ExplainRequest& request) {
  command.add_option("CODE", request.code, "a code, such as direct.few-threads")->type_name("");
  command.add_flag("--list", request.list, "every code with its title");
}

void add_schema_options(CLI::App& command, SchemaRequest& request, Output& output) {
  command.add_option("WHAT", request.what, "job, rules, plan, map, machine, settings, verdict, record or approved")
      ->type_name("");
  command.add_option("--data", request.data, "tables to use in place of those built in")->type_name("DIR");
  add_output_option(command, output);
}

void add_record_options(CLI::App& command, RecordRequest& request, Output& output) {
  command.add_option("JOB", request.job, "the job file (JSON) that the crew worked by, or -")->type_name("");
  command
      .add_option("READINGS", request.readings,
                  "what was read (JSON), or -; without it, on a terminal, it is asked for")
      ->type_name("");
  command
      .add_option("--set", request.settings,
                  "one reading by its name, over the file's; once for each:\n"
                  "wall=\"0.28 in\"  tie_1=\"12 ft 6 in\"  holds.CODE.found=...  deviations.clock=...")
      ->type_name("NAME=VALUE")
      ->allow_extra_args(false);
  command
      .add_option("--append", request.append,
                  "also add the record to this ledger (JSON lines); made where it is not there")
      ->type_name("LEDGER");
  command.add_option("--export", request.exported, "write out a ledger: the last record of each tap")
      ->type_name("LEDGER");
  command.add_option("--order", request.order, "with --export: the taps of this work order alone")->type_name("ORDER");
  command
      .add_option("--tools", request.tools, "count the holes of each tool in a ledger, and list the depths tapped to")
      ->type_name("LEDGER");
  takes_one_of(command.add_option("--format", request.format,
                                  "of a record and of tools text or json, default text;\n"
                                  "of an export json, csv or geojson, default json"),
               {"text", "json", "csv", "geojson"});
  add_language_option(command, request.language);
  add_approved_option(command, request.approved);
  add_shared_options(command, request, output);
  add_settings_options(command, request.settings_file, UsersOwn::read);
}

void add_new_options(CLI::App& command, NewRequest& request) {
  command.add_option("JOB", request.job, "the job file (JSON) to write")->type_name("");
  command.add_flag("--replace", request.replace, "also over a file that is there already");
  add_language_option(command, request.language);
  add_settings_options(command, request.settings_file, UsersOwn::read);
}

}  // namespace

std::unique_ptr<CLI::App> command_parser(Requests& requests) {
  auto program = std::make_unique<CLI::App>(program_help, "mainbore");
  program->require_subcommand(1);
  program->formatter(std::make_shared<HelpPage>());
  program->set_help_flag("-h,--help", "this page");
  program->set_version_flag("--version", version_text, "version of the program and edition of its tables");
  add_plan_options(*program->add_subcommand("plan", plan_help), requests.plan, requests.output);
  add_batch_options(*program->add_subcommand("batch", batch_help), requests.batch, requests.output);
  add_explain_options(*program->add_subcommand("explain", explain_help), requests.explain);
  add_identify_options(*program->add_subcommand("identify", identify_help), requests.identify, requests.output);
  // Its name of before is taken as well, and shown nowhere.
  add_trial_options(*program->add_subcommand("trial", trial_help)->alias("drytap"), requests.trial, requests.output);
  add_table_options(*program->add_subcommand("table", table_help), requests.table, requests.output);
  add_rules_options(*program->add_subcommand("rules", rules_help), requests.rules, requests.output);
  add_schema_options(*program->add_subcommand("schema", schema_help), requests.schema, requests.output);
  add_record_options(*program->add_subcommand("record", record_help), requests.record, requests.output);
  add_new_options(*program->add_subcommand("new", new_help), requests.new_job);
  return program;
}

}  // namespace mainbore::cli
