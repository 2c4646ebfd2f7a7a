// The one place that knows the options, and the only one that pays for the option library.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>

#include "cli/console.hpp"
#include "cli/explain_command.hpp"
#include "cli/plan_command.hpp"
#include "cli/run.hpp"
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
    "  mainbore explain pressure.over-feed-limit\n";

constexpr const char* plan_help =
    "Plans one job.\n"
    "\n"
    "  mainbore plan job.json\n"
    "  mainbore plan job.json --set main.pressure=\"565 kPa\" --units si\n"
    "  mainbore plan - --format json --rules district.json < job.json\n"
    "\n"
    "Exit status: 0 go, 1 no-go, 3 hold, 2 a job that cannot be read, 64 wrong usage,\n"
    "66 cannot open the input, 74 cannot write.\n";

constexpr const char* explain_help =
    "Says what a code of a finding or an error means.\n"
    "\n"
    "  mainbore explain direct.few-threads\n"
    "  mainbore explain --list\n";

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
  command.add_option("--format", request.format, "text or json (default text)")
      ->type_name("FORMAT")
      ->check(CLI::IsMember({"text", "json"}).description(""));
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
  CLI::App program(program_help, "mainbore");
  program.require_subcommand(1);
  program.formatter(std::make_shared<HelpPage>());
  program.set_help_flag("-h,--help", "this page");
  program.set_version_flag("--version", version_text, "version of the program and edition of its tables");
  CLI::App* const plan_app = program.add_subcommand("plan", plan_help);
  add_plan_options(*plan_app, plan);
  CLI::App* const explain_app = program.add_subcommand("explain", explain_help);
  explain_app->add_option("CODE", explain.code, "a code, such as direct.few-threads")->type_name("");
  explain_app->add_flag("--list", explain.list, "every code with its title");

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
