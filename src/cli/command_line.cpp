// From the words of a command line to the command they ask for.
#include <algorithm>
#include <iostream>
#include <memory>

#include "cli/console.hpp"
#include "cli/options.hpp"
#include "cli/result_writer.hpp"
#include "cli/run.hpp"
#include "cli/visible_stream.hpp"
#include "io/text/nearest.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {
namespace {

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
  const auto known = program.get_subcommands([&](const CLI::App* command) { return command->check_name(*word); });
  if (!known.empty()) return;
  throw Stop(exit_usage, with_suggestion("unknown command " + text::quoted(*word), *word, commands) +
                             "\ncommands: " + io::listed(commands));
}

// As far as a line was read that is wrong.
std::string output_of(const CLI::App& program) {
  for (const CLI::App* command : program.get_subcommands()) {
    const CLI::Option* const output = command->get_option_no_throw("--output");
    if (output != nullptr && !output->results().empty()) return output->results().back();
  }
  return {};
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
    throw Stop(exit_usage, text::visible(error.what()) + try_help);
  }
  std::vector<std::string> names;
  for (const CLI::Option* option : command.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  }
  const std::vector<std::string_view> known(names.begin(), names.end());
  const std::string word = left.front().substr(0, left.front().find('='));
  if (!word.starts_with('-')) throw Stop(exit_usage, "one argument too many: " + text::quoted(word) + try_help);
  throw Stop(exit_usage, with_suggestion("unknown option " + text::quoted(word), word, known) + try_help);
}

// A value that is empty is a variable of a script that was not set: to go on as if nothing had been asked for would plan
// another job, under other rules.
void refuse_nothing(const CLI::App& command) {
  for (const CLI::Option* option : command.get_options()) {
    const std::vector<std::string> values = option->results();
    if (std::none_of(values.begin(), values.end(), [](const std::string& value) { return value.empty(); })) continue;
    throw Stop(exit_usage,
               option->get_name() + " is given with nothing in it\ntry: mainbore " + command.get_name() + " --help");
  }
}

// Whoever reads it first leaves nothing to the other.
void refuse_input_twice(const CLI::App& command) {
  std::ptrdiff_t times = 0;
  for (const CLI::Option* option : command.get_options()) {
    const std::string kind = option->get_type_name();
    const bool read = (kind == "FILE" && !option->check_lname("output")) || kind == "JOB" || option->get_positional();
    const std::vector<std::string> values = option->results();
    if (read) times += std::count(values.begin(), values.end(), "-");
  }
  if (times > 1) throw Stop(exit_usage, "standard input, -, cannot be two things: put one of them into a file");
}

ExitStatus run_command(const std::string& name, const Requests& requests, Console& console) {
  if (name == "plan") return plan_command(requests.plan, console);
  if (name == "batch") return batch_command(requests.batch, console);
  if (name == "explain") return explain_command(requests.explain, console);
  if (name == "identify") return identify_command(requests.identify, console);
  if (name == "trial") return trial_command(requests.trial, console);
  if (name == "rules") return rules_command(requests.rules, console);
  if (name == "table") return table_command(requests.table, console);
  if (name == "record") return record_command(requests.record, console);
  if (name == "new") return new_command(requests.new_job, console);
  return schema_command(requests.schema, console);
}

ExitStatus dispatch(std::span<const std::string> arguments, Console& console) {
  Requests requests;
  const std::unique_ptr<CLI::App> program = command_parser(requests);
  require_known_command(*program, arguments);
  try {
    program->parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::CallForHelp&) {
    write_result(program->help(), console);
    return exit_go;
  } catch (const CLI::CallForVersion& version) {
    write_result(std::string(version.what()) + '\n', console);
    return exit_go;
  } catch (const CLI::ParseError& error) {
    console.output = output_of(*program);
    refuse(*program, error);
  }
  console.output = requests.output.value_or("");
  const CLI::App& command = *program->get_subcommands().front();
  refuse_nothing(command);
  refuse_input_twice(command);
  return run_command(command.get_name(), requests, console);
}

}  // namespace

int run(std::span<const std::string> arguments, std::istream& in, std::ostream& out, std::ostream& raw_err,
        const Environment& environment) {
  VisibleStream err(raw_err);
  Console console{in, out, err, raw_err, environment};
  // Whoever opens the file after a failed run must not take an old result for the new one.
  const auto failed = [&](ExitStatus status, const std::string& message) {
    if (!message.empty()) err << "mainbore: " << message << '\n';
    if (const std::string unchanged = unchanged_output(console.output); !unchanged.empty()) {
      err << "mainbore: " << unchanged << '\n';
    }
    return status;
  };
  try {
    return dispatch(arguments, console);
  } catch (const Stop& stop) {
    return failed(stop.status(), stop.what());
  } catch (const std::exception& fault) {
    return failed(exit_internal, std::string("internal error: ") + fault.what());
  }
}

}  // namespace mainbore::cli
