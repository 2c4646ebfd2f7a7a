// The one place that knows the options, and the only one that pays for the option library.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>

#include "cli/batch_command.hpp"
#include "cli/console.hpp"
#include "cli/drytap_command.hpp"
#include "cli/explain_command.hpp"
#include "cli/identify_command.hpp"
#include "cli/plan_command.hpp"
#include "cli/run.hpp"
#include "cli/schema_command.hpp"
#include "cli/table_command.hpp"
#include "io/nearest.hpp"

namespace mainbore::cli {
namespace {

constexpr const char* program_version = "mainbore " MAINBORE_VERSION;  // set by the build

constexpr const char* program_help =
    "Plans service taps on pressurised water mains: go, hold or no-go, with the numbers.\n"
    "\n"
    "  mainbore plan job.json\n"
    "  mainbore plan --set main.material=\"ductile iron\" --set main.size=\"8 in\" \\\n"
    "                --set main.pressure=\"82 psi\" --set service.size=\"1 in\"\n"
    "  mainbore batch week.csv\n"
    "  mainbore explain pressure.over-feed-limit\n";

constexpr const char* plan_help =
    "Plans one job.\n"
    "\n"
    "  mainbore plan job.json\n"
    "  mainbore plan job.json --set main.pressure=\"565 kPa\" --units si\n"
    "  mainbore plan - --format json --rules district.json < job.json\n"
    "  mainbore plan job.json --format html -o sheet.html\n"
    "\n"
    "Exit status: 0 go, 1 no-go, 3 hold, 2 a job that cannot be read, 64 wrong usage,\n"
    "66 cannot open the input, 74 cannot write.\n";

constexpr const char* batch_help =
    "Plans many orders: a record for each, or the report of a week.\n"
    "\n"
    "  mainbore batch week.csv\n"
    "  mainbore batch export.csv --map map.json --columns\n"
    "  dispatch | mainbore batch - --format ndjson --jobs 4 --fail-on no-go | gate\n"
    "\n"
    "Exit status: the worst of the orders: 2 cannot be read, 1 no-go, 3 hold, 0 go (see --fail-on);\n"
    "64 wrong usage, 66 cannot open the input, 74 cannot write.\n";

constexpr const char* explain_help =
    "Says what a code of a finding or an error means.\n"
    "\n"
    "  mainbore explain direct.few-threads\n"
    "  mainbore explain --list\n";

constexpr const char* identify_help =
    "Lists the mains that fit what was measured on a bare pipe.\n"
    "\n"
    "  mainbore identify --circumference \"21-3/4 in\"\n"
    "  mainbore identify --circumference \"21-3/4 in\" --wall \"0.31 in\" --magnet yes --installed 1962\n"
    "  mainbore identify --od \"175 mm\" --units si --format json\n"
    "\n"
    "It is a list of what the pipe may be, never of what it is or carries.\n"
    "Exit status: 0 something fits, 1 nothing does, 64 wrong usage.\n";

constexpr const char* drytap_help =
    "Works out the depth to tap to from trial taps in scrap of the same pipe.\n"
    "\n"
    "  mainbore drytap --threads 12 --trial \"depth=1.5 in, hand=4, wrench=2, showing=3\" \\\n"
    "                  --trial \"depth=1.58 in, hand=5, wrench=2, showing=2\"\n"
    "\n"
    "Depths count from one mark throughout. Exit status: 0 settled, 3 another trial is needed, 64 wrong usage.\n";

constexpr const char* table_help =
    "The largest taps by main, size and class, under the rules in force.\n"
    "\n"
    "  mainbore table\n"
    "  mainbore table --material PVC --rules district.json\n"
    "  mainbore table --machine job.json --format html -o table.html\n";

constexpr const char* schema_help =
    "Writes the JSON Schema (draft-07) of a job, of a utility's rules or of a plan.\n"
    "\n"
    "  mainbore schema job\n"
    "  mainbore schema rules -o rules.schema.json\n";

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

// What every command that plans takes: units, rules, tables, and where the result goes.
template <class Request>
void add_shared_options(CLI::App& command, Request& request) {
  command.add_option("--units", request.units, "of the result: us (in, ft, psi) or si (mm, m, kPa);\ndefault us")
      ->type_name("SYSTEM")
      ->check(CLI::IsMember({"us", "si"}).description(""));
  command
      .add_option("--rules", request.rules,
                  "a utility's own rules (JSON), laid over the defaults;\nrepeatable, in order")
      ->type_name("FILE")
      ->allow_extra_args(false);
  command.add_option("--data", request.data, "tables to use in place of those built in")->type_name("DIR");
  command.add_option("-o,--output", request.output, "write the result there, not to standard output")
      ->type_name("FILE");
}

void add_plan_options(CLI::App& command, PlanRequest& request) {
  // Lists of one value an option, so that what follows on the line is never swallowed.
  command.add_option("JOB", request.job, "job file (JSON), or - for standard input")->type_name("");
  command
      .add_option("--set", request.settings,
                  "one fact by its path, over the file's; repeatable:\n"
                  "main.size=\"8 in\"  nearby[0].along=\"4 ft\"  nearby=none\n"
                  "units: in, ft, mm, m, psi, kPa, bar, degF, degC")
      ->type_name("PATH=VALUE")
      ->allow_extra_args(false);
  command.add_option("--format", request.format, "text, json or html: the field sheet (default text)")
      ->type_name("FORMAT")
      ->check(CLI::IsMember({"text", "json", "html"}).description(""));
  command.add_flag("--materials", request.materials, "with text: what to load");
  command.add_flag("--steps", request.steps, "with text: the order of work, and what to do when it goes wrong");
  command.add_flag("--what-if", request.what_if,
                   "how far each fact may move before the verdict changes; with text behind the\n"
                   "plan, with json in its place");
  add_shared_options(command, request);
}

void add_batch_options(CLI::App& command, BatchRequest& request) {
  command.add_option("ORDERS", request.orders, "files of orders, or - for standard input")->type_name("");
  const auto one_of = [](std::vector<std::string> words) { return CLI::IsMember(std::move(words)).description(""); };
  command
      .add_option("--in", request.in,
                  "how the orders are written: csv, ndjson (a JSON object a line)\n"
                  "or json (an array); default: by the file's name, else its first byte")
      ->type_name("FORMAT")
      ->check(one_of({"csv", "ndjson", "json"}));
  command
      .add_option("--format", request.format,
                  "text (the report of a week), html (the same with field sheets),\n"
                  "ndjson or csv (a record an order); default text")
      ->type_name("FORMAT")
      ->check(one_of({"text", "ndjson", "csv", "html"}));
  command.add_flag("--full", request.full, "with ndjson: the whole plan of each order");
  command.add_flag("--decisions", request.decisions,
                   "with ndjson: the plan without its words, load and steps; faster");
  command
      .add_option("--map", request.map, "which column of an export is which fact (JSON); see docs/orders.md")
      ->type_name("FILE");
  command.add_flag("--columns", request.columns, "show what each column was read as, and plan nothing");
  command
      .add_option("--delimiter", request.delimiter, "between cells: comma, tab or semicolon;\ndefault: found")
      ->type_name("WORD")
      ->check(one_of({"comma", "tab", "semicolon", ",", ";", "\t"}));
  command.add_flag("--no-rows", request.no_rows,
                   "records without row and line: the same in any piece of a file");
  command
      .add_option("--fail-on", request.fail_on,
                  "lets the exit status tell only of orders as bad as this or worse:\n"
                  "hold (the default), no-go, unreadable, never")
      ->type_name("WORST")
      ->check(one_of({"hold", "no-go", "unreadable", "never"}));
  command.add_option("--jobs", request.jobs, "threads; 0: as many as there are cores; default 1")
      ->type_name("N")
      ->check(CLI::Range(0, 256).description(""));
  add_shared_options(command, request);
}

void add_tool_options(CLI::App& command, ToolRequest& request, std::vector<std::string> formats) {
  std::string known = formats.front();
  for (std::size_t i = 1; i < formats.size(); ++i) known += (i + 1 < formats.size() ? ", " : " or ") + formats[i];
  command.add_option("--format", request.format, known + " (default text)")
      ->type_name("FORMAT")
      ->check(CLI::IsMember(std::move(formats)).description(""));
  add_shared_options(command, request);
}

void add_identify_options(CLI::App& command, IdentifyRequest& request) {
  command.add_option("--circumference", request.circumference, "by tape round the cleaned pipe (in, ft, mm)")
      ->type_name("LENGTH");
  command.add_option("--od", request.od, "outside diameter, by calliper (in, mm)")->type_name("LENGTH");
  command.add_option("--wall", request.wall, "wall, by gauge (in, mm)")->type_name("LENGTH");
  command.add_option("--installed", request.installed, "year laid, by the record")->type_name("YEAR");
  command.add_option("--magnet", request.magnet, "does a magnet stick: yes or no")->type_name("ANSWER");
  command.add_option("--sound", request.sound, "of a light blow: ring or dull")->type_name("SOUND");
  command.add_option("--joint", request.joint, "push-on, mechanical, flanged, \"caulked bell\",\n\"sleeve coupling\" ...")
      ->type_name("STYLE");
  command.add_option("--carries", request.carries, "what it was proved to carry by two means: water ...")
      ->type_name("WHAT");
  add_tool_options(command, request, {"text", "json"});
}

void add_drytap_options(CLI::App& command, DrytapRequest& request) {
  command
      .add_option("--trial", request.trials,
                  "one trial; repeatable: depth (in, mm), turns by hand\n(may be left out) and by wrench, threads showing")
      ->type_name("TRIAL")
      ->allow_extra_args(false);
  command.add_option("--threads", request.threads_per_inch, "threads per inch, counted on the stop")->type_name("NUMBER");
  command.add_option("--wrench", request.wrench, "turns by wrench wanted; default by the rules")->type_name("TURNS");
  command.add_option("--showing", request.showing, "threads to be left showing; default by the rules")
      ->type_name("THREADS");
  command.add_option("--least", request.least, "trials that must agree (default 3)")->type_name("NUMBER");
  add_tool_options(command, request, {"text", "json"});
}

void add_table_options(CLI::App& command, TableRequest& request) {
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
  add_tool_options(command, request, {"text", "csv", "json", "html"});
}

void add_schema_options(CLI::App& command, SchemaRequest& request) {
  command.add_option("WHAT", request.what, "job, rules or plan")->type_name("");
  command.add_option("--data", request.data, "tables to use in place of those built in")->type_name("DIR");
  command.add_option("-o,--output", request.output, "write the result there, not to standard output")
      ->type_name("FILE");
}

std::vector<std::string_view> names_of_commands(const CLI::App& program) {
  std::vector<std::string_view> names;
  for (const CLI::App* command : program.get_subcommands([](const CLI::App*) { return true; })) {
    names.push_back(command->get_name());
  }
  return names;
}

std::string with_suggestion(std::string message, std::string_view word, std::span<const std::string_view> known) {
  if (const auto near = io::nearest(word, known)) message += ": did you mean \"" + std::string(*near) + "\"?";
  return message;
}

// The first word that no option takes, where a command should stand and does not.
void require_known_command(const CLI::App& program, std::span<const std::string> arguments) {
  const auto word = std::find_if(arguments.begin(), arguments.end(), [](const auto& a) { return !a.starts_with('-'); });
  const std::vector<std::string_view> commands = names_of_commands(program);
  if (arguments.empty()) throw Stop(exit_usage, "no command\n\n" + program.help());
  if (word != arguments.begin()) return;
  if (std::find(commands.begin(), commands.end(), *word) != commands.end()) return;
  throw Stop(exit_usage, with_suggestion("unknown command \"" + *word + '"', *word, commands) +
                             "\ncommands: " + io::listed(commands));
}

[[noreturn]] void refuse(CLI::App& program, const CLI::ParseError& error) {
  const std::vector<CLI::App*> chosen = program.get_subcommands();
  const CLI::App& command = chosen.empty() ? program : *chosen.front();
  const std::string try_help =
      "\ntry: " + (chosen.empty() ? std::string("mainbore") : "mainbore " + command.get_name()) + " --help";
  std::vector<std::string> left = program.remaining(true);
  const bool about_words = dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr ||
                           dynamic_cast<const CLI::RequiredError*>(&error) != nullptr;
  if (!about_words || left.empty()) {
    throw Stop(exit_usage, error.what() + try_help);
  }
  std::vector<std::string> names;
  for (const CLI::Option* option : command.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  }
  const std::vector<std::string_view> known(names.begin(), names.end());
  const std::string word = left.front().substr(0, left.front().find('='));
  if (!word.starts_with('-')) throw Stop(exit_usage, "one argument too many: \"" + word + '"' + try_help);
  throw Stop(exit_usage, with_suggestion("unknown option \"" + word + '"', word, known) + try_help);
}

ExitStatus dispatch(std::span<const std::string> arguments, Console& console) {
  PlanRequest plan;
  ExplainRequest explain;
  IdentifyRequest identify;
  DrytapRequest drytap;
  TableRequest table;
  CLI::App program(program_help, "mainbore");
  program.require_subcommand(1);
  program.formatter(std::make_shared<HelpPage>());
  program.set_help_flag("-h,--help", "this page");
  program.set_version_flag("--version", version_text, "version of the program and edition of its tables");
  CLI::App* const plan_app = program.add_subcommand("plan", plan_help);
  add_plan_options(*plan_app, plan);
  BatchRequest batch;
  CLI::App* const batch_app = program.add_subcommand("batch", batch_help);
  add_batch_options(*batch_app, batch);
  CLI::App* const explain_app = program.add_subcommand("explain", explain_help);
  explain_app->add_option("CODE", explain.code, "a code, such as direct.few-threads")->type_name("");
  explain_app->add_flag("--list", explain.list, "every code with its title");

  CLI::App* const identify_app = program.add_subcommand("identify", identify_help);
  add_identify_options(*identify_app, identify);
  CLI::App* const drytap_app = program.add_subcommand("drytap", drytap_help);
  add_drytap_options(*drytap_app, drytap);
  CLI::App* const table_app = program.add_subcommand("table", table_help);
  add_table_options(*table_app, table);
  SchemaRequest schema;
  CLI::App* const schema_app = program.add_subcommand("schema", schema_help);
  add_schema_options(*schema_app, schema);

  require_known_command(program, arguments);
  try {
    program.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::CallForHelp&) {
    write_result(program.help(), "", console);
    return exit_go;
  } catch (const CLI::CallForVersion& version) {
    write_result(std::string(version.what()) + '\n', "", console);
    return exit_go;
  } catch (const CLI::ParseError& error) {
    refuse(program, error);
  }
  if (batch_app->parsed()) return batch_command(batch, console);
  if (identify_app->parsed()) return identify_command(identify, console);
  if (drytap_app->parsed()) return drytap_command(drytap, console);
  if (table_app->parsed()) return table_command(table, console);
  if (schema_app->parsed()) return schema_command(schema, console);
  return plan_app->parsed() ? plan_command(plan, console) : explain_command(explain, console);
}

}  // namespace

int run(std::span<const std::string> arguments, std::istream& in, std::ostream& out, std::ostream& err,
        const Environment& environment) {
  Console console{in, out, err, environment};
  try {
    return dispatch(arguments, console);
  } catch (const Stop& stop) {
    const std::string_view message = stop.what();
    if (!message.empty()) err << "mainbore: " << message << '\n';
    return stop.status();
  } catch (const std::exception& fault) {
    err << "mainbore: internal error: " << fault.what() << '\n';
    return exit_internal;
  }
}

}  // namespace mainbore::cli
