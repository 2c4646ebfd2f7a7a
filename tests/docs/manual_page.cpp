#include "manual_page.hpp"

#include <algorithm>
#include <cctype>

#include "cli/exit_status.hpp"
#include "cli/help_text.hpp"
#include "io/job/job_fields.hpp"
#include "mainbore/catalog.hpp"
#include "shell_lists.hpp"

namespace mainbore::docs {
namespace {

constexpr std::size_t example_width = 66;  // of 80, behind the indents

// Text for roff: marks of its own written out, a hyphen that is typed left as it is typed, quotes fit for arguments.
std::string roff(std::string text) {
  text = replaced(text, "\\", "\\e");
  text = replaced(text, "-", "\\-");
  text = replaced(text, "\"", "\\(dq");
  text = replaced(text, "'", "\\(aq");
  text = replaced(text, "^", "\\(ha");
  text = replaced(text, "`", "\\(ga");
  return replaced(text, "~", "\\(ti");
}

// A line of roff that begins with a word, never with a request.
std::string text_line(const std::string& text) { return (text.starts_with('.') ? "\\&" : "") + roff(text) + '\n'; }

std::string bold(const std::string& text) { return "\\fB" + roff(text) + "\\fR"; }
std::string italic(const std::string& text) { return "\\fI" + roff(text) + "\\fR"; }

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

// An example goes on, on the next line, before an option or a bar, as a shell reads it.
std::string folded(std::string line) {
  std::string out;
  while (line.size() > example_width) {
    const std::size_t option = line.rfind(" --", example_width - 2);
    const std::size_t bar = line.rfind(" | ", example_width - 2);
    const std::size_t at = std::max(option == std::string::npos ? 0 : option, bar == std::string::npos ? 0 : bar);
    if (at < 8) break;
    out += line.substr(0, at) + " \\\n";
    line = "    " + line.substr(at + 1);
  }
  return out + line;
}

// A line that goes on in the next, by a backslash at its end, is one.
std::vector<std::string> rejoined(const std::vector<std::string>& lines) {
  std::vector<std::string> out;
  bool goes_on = false;
  for (const std::string& line : lines) {
    if (goes_on) out.back() += line.substr(std::min(line.find_first_not_of(' '), line.size()));
    else out.push_back(line);
    goes_on = out.back().ends_with('\\');
    if (goes_on) out.back().pop_back();
  }
  return out;
}

// Paragraphs as they are filled, indented lines as they stand: the examples of a help page.
std::string body(const std::vector<std::string>& lines) {
  std::string out;
  bool literal = false;
  bool new_paragraph = false;
  for (const std::string& line : rejoined(lines)) {
    const bool indented = line.starts_with("  ");
    if (literal && !indented) out += ".fi\n.RE\n";
    if (!out.empty() && indented != literal && !line.empty()) out += ".PP\n";
    if (indented && !literal) out += ".RS 4\n.nf\n";
    if (indented) {
      for (const std::string& piece : lines_of(folded(line.substr(2)))) out += text_line(piece);
    } else if (!line.empty()) {
      if (new_paragraph && !out.empty() && !out.ends_with(".PP\n")) out += ".PP\n";
      out += text_line(line);
    }
    literal = indented;
    new_paragraph = line.empty();
  }
  return out + (literal ? ".fi\n.RE\n" : "");
}

// The help of an option: filled, but for lines of examples set apart by double blanks.
std::string help_lines(const std::string& help) {
  std::string out;
  bool apart = false;
  for (const std::string& line : lines_of(help)) {
    const bool example = line.find("  ") != std::string::npos;
    if (!out.empty() && (example || apart)) out += ".br\n";
    out += text_line(line);
    apart = example;
  }
  return out;
}

// The examples of the program: what its help page says behind the first line and the empty one below.
std::vector<std::string> examples_of(const CommandFacts& program) {
  const std::vector<std::string> lines = lines_of(program.about);
  const auto first =
      std::find_if(lines.begin() + 1, lines.end(), [](const std::string& line) { return !line.empty(); });
  return {first, lines.end()};
}

std::string option_entry(const OptionFacts& option) {
  std::string names;
  for (const std::string& name : option.names) names += (names.empty() ? "" : ", ") + bold(name);
  if (!option.value.empty()) names += ' ' + italic(option.value);
  return ".TP\n" + names + '\n' + help_lines(option.help);
}

bool is_of(const OptionFacts& option, const CommandFacts& command) {
  return std::any_of(command.options.begin(), command.options.end(),
                     [&](const OptionFacts& other) { return other.names == option.names; });
}

std::string usage_line(const CommandFacts& command) {
  std::string out = bold(command.path) + " [" + italic("options") + ']';
  for (const OperandFacts& operand : command.operands) {
    out += " [" + italic(operand.name) + (operand.repeatable ? " ..." : "") + ']';
  }
  return out;
}

// A command's own words, then its operands and options but for those that every command has.
std::string command_section(const CommandFacts& command, const CommandFacts& program) {
  std::string out = ".SS " + roff(command.path) + '\n' + body(lines_of(command.about));
  for (const OperandFacts& operand : command.operands) {
    out += ".TP\n" + italic(operand.name) + '\n' + help_lines(operand.help);
  }
  for (const OptionFacts& option : command.options) {
    if (!is_of(option, program)) out += option_entry(option);
  }
  return out;
}

std::string entries(const std::string& name, const std::string& meaning) {
  return ".TP\n" + bold(name) + '\n' + text_line(meaning);
}

std::string facts_section() {
  std::string out = ".SH FACTS OF A JOB\nEach may stand in a job file, behind\n" + bold("--set") +
                    "\nand at the head of a column of orders.\n";
  for (const io::JobField& field : io::job_fields()) {
    out += entries(std::string(field.path),
                   std::string(field.help) + (field.need == io::Need::always ? " (required)" : ""));
  }
  return out;
}

std::string exit_section() {
  std::string out = ".SH EXIT STATUS\nOf several orders, the worst: 2, then 1, then 3, then 0.\n";
  for (const cli::ExitMeaning& exit : cli::exit_meanings) out += entries(std::to_string(exit.status), exit.meaning);
  return out;
}

std::string environment_section() {
  std::string out = ".SH ENVIRONMENT\n";
  for (const cli::EnvironmentVariable& variable : cli::environment_variables)
    out += entries(variable.name, variable.meaning);
  return out;
}

std::string beginning(const CommandFacts& program) {
  std::string what = program.summary();
  what.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(what.front())));
  std::string out = ".\\\" Made from the program's tables by tests/docs/pages.cpp: not to be edited.\n";
  out += ".TH MAINBORE 1 \"\" \"mainbore, data edition " + Catalog::builtin().edition() + "\" \"User Commands\"\n";
  out += ".nh\n.ad l\n.SH NAME\nmainbore \\- " + roff(what) + "\n.SH SYNOPSIS\n";
  for (const CommandFacts* command : all_commands(program)) {
    if (command->commands.empty()) out += usage_line(*command) + "\n.br\n";
  }
  return out + bold("mainbore") + " [" + italic("command") + "] " + bold("--help") + "\n.br\n" +
         bold("mainbore --version") + '\n';
}

std::string description(const CommandFacts& program) {
  return ".SH DESCRIPTION\n" + body(lines_of(cli::manual_description)) + ".SS Examples\n" + body(examples_of(program));
}

}  // namespace

std::string manual_page(const CommandFacts& program, const std::vector<std::string>& pages) {
  std::string out = beginning(program) + description(program) + ".SH COMMANDS\n";
  for (const CommandFacts* command : all_commands(program)) {
    if (command != &program) out += command_section(*command, program);
  }
  out += ".SH OPTIONS\nOf the program itself; help may be asked of each command, too.\n";
  for (const OptionFacts& option : program.options) out += option_entry(option);
  out += facts_section() + exit_section() + environment_section();
  out += ".SH SEE ALSO\nEvery finding explains itself:\n" + bold("mainbore explain --list") +
         "\n.PP\nIn the folder docs of the source, at length: " + joined(pages, ", ") + ".\n";
  return out;
}

}  // namespace mainbore::docs
