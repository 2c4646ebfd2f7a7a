#include "completions.hpp"
#include "shell_lists.hpp"

namespace mainbore::docs {
namespace {

// A function a command: _mainbore_rules_check.
std::string function_of(const CommandFacts& command) {
  return '_' + replaced(replaced(command.path, " ", "_"), "-", "_");
}

std::string explained(const std::string& help) {
  std::string out = help;
  for (const char* mark : {"\\", ":", "[", "]"}) out = replaced(out, mark, std::string("\\") + mark);
  return out;
}

std::string value_of(const std::string& name) {
  return ':' + explained(name) + ":{_mainbore_values " + in_shell_quotes(name) + '}';
}

// '(-o --output)'{-o+,--output=}'[...]:FILE:...': one of several names, each shutting out the others.
std::string option_line(const OptionFacts& option) {
  std::vector<std::string> names;
  for (const std::string& name : option.names) {
    const bool is_long = name.starts_with("--");
    names.push_back(name + (option.value.empty() ? "" : is_long ? "=" : "+"));
  }
  std::string before;
  if (option.repeatable) before = "'*'";
  else if (names.size() > 1) before = in_shell_quotes('(' + joined(option.names) + ')');
  const std::string name = names.size() > 1 ? '{' + joined(names, ",") + '}' : names.front();
  return before + name +
         in_shell_quotes('[' + explained(short_help(option)) + ']' +
                         (option.value.empty() ? "" : value_of(option.value)));
}

std::string operand_lines(const CommandFacts& command) {
  std::string out;
  std::size_t place = 0;
  for (const OperandFacts& operand : command.operands) {
    ++place;
    out += " \\\n    " + in_shell_quotes((operand.repeatable ? "*" : std::to_string(place)) + value_of(operand.name));
  }
  return out;
}

std::string leaf_function(const CommandFacts& command) {
  std::string out = function_of(command) + "() {\n  _arguments";
  for (const OptionFacts& option : command.options) out += " \\\n    " + option_line(option);
  return out + operand_lines(command) + "\n}\n\n";
}

std::string group_function(const CommandFacts& command) {
  std::string out =
      function_of(command) + "() {\n  local curcontext=$curcontext state\n  local -a line commands\n  _arguments -C";
  for (const OptionFacts& option : command.options) out += " \\\n    " + option_line(option);
  out += " \\\n    '1:command:->command' \\\n    '*::argument:->arguments'\n";
  out += "  case $state in\n    (command)\n      commands=(\n";
  for (const CommandFacts& below : command.commands) {
    out += "        " + in_shell_quotes(below.name + ':' + replaced(below.summary(), ":", "\\:")) + '\n';
  }
  out += "      )\n      _describe -t commands command commands\n      ;;\n    (arguments)\n      case $line[1] in\n";
  for (const CommandFacts& below : command.commands)
    out += "        (" + below.name + ") " + function_of(below) + " ;;\n";
  return out + "      esac\n      ;;\n  esac\n}\n\n";
}

std::string values_function(const CommandFacts& program) {
  const std::vector<OptionValue> values = option_values(program);
  std::string out = "# What stands for a value.\n_mainbore_values() {\n  local -a words\n  case $1 in\n";
  out += "    (*'|'*) words=(${(s:|:)1}) ;;\n";
  const std::vector<std::string> files = all_quoted(names_of(values, ValueKind::file));
  if (!files.empty()) out += "    (" + joined(files, "|") + ") _files; return ;;\n";
  const std::vector<std::string> folders = all_quoted(names_of(values, ValueKind::directory));
  if (!folders.empty()) out += "    (" + joined(folders, "|") + ") _files -/; return ;;\n";
  for (const OptionValue& value : values) {
    if (value.kind != ValueKind::words) continue;
    out += "    (" + in_shell_quotes(value.name) + ")\n      words=(\n        " +
           joined(all_quoted(value.words), "\n        ") + "\n      )\n      ;;\n";
  }
  return out +
         "  esac\n"
         "  if (( ! $#words )); then _message \"$1\"\n"
         "  elif [[ $words[1] == *= ]]; then compadd -S '' -a words  # the value follows at once\n"
         "  else compadd -a words\n"
         "  fi\n}\n\n";
}

}  // namespace

std::string zsh_completion(const CommandFacts& program) {
  std::string out = "#compdef mainbore\n# Completion of mainbore for zsh.\n" + std::string(made_by) + '\n';
  out += values_function(program);
  for (const CommandFacts* command : all_commands(program)) {
    out += command->commands.empty() ? leaf_function(*command) : group_function(*command);
  }
  return out + "if [[ $funcstack[1] == _mainbore ]]; then _mainbore \"$@\"; else compdef _mainbore mainbore; fi\n";
}

}  // namespace mainbore::docs
