#include "completions.hpp"
#include "shell_lists.hpp"

namespace mainbore::docs {
namespace {

constexpr std::string_view fish_functions = R"fish(
# Whether the line stands behind a command, and none of the names that follow "flag" or "value" has been used.
# A name just before the cursor that takes a value has yet to get it.
function __mainbore_at
    set -l path mainbore
    set -l given (commandline -opc)
    set -e given[1]
    for word in $given
        contains -- "$path $word" $__mainbore_commands
        and set path "$path $word"
    end
    test "$path" = "$argv[1]"
    or return 1
    test "$argv[2]" = value
    and set -e given[-1]
    for name in $argv[3..-1]
        contains -- $name (string replace -r '=.*' '' -- $given)
        and return 1
    end
    return 0
end

complete -c mainbore -f
)fish";

std::string fish_quoted(std::string_view text) {
  return '\'' + replaced(replaced(std::string(text), "\\", "\\\\"), "'", "\\'") + '\'';
}

std::vector<std::string> fish_quoted(const std::vector<std::string>& words) {
  std::vector<std::string> out;
  for (const std::string& word : words) out.push_back(fish_quoted(word));
  return out;
}

class Lines {
 public:
  explicit Lines(std::vector<OptionValue> values) : values_(std::move(values)) {}

  [[nodiscard]] std::string of(const CommandFacts& command) const {
    std::string out = '\n' + ("# " + command.path) + '\n';
    for (const CommandFacts& below : command.commands) {
      out += begin(command) + " -a " + below.name + " -d " + fish_quoted(below.summary()) + '\n';
    }
    std::string place;
    for (const OperandFacts& operand : command.operands) {
      const std::string seen = command.operands.size() > 1 ? seen_word_of(operand.name) : "";
      out += begin(command, place + (seen.empty() ? "" : "; and not " + seen)) + offered(operand.name) + " -d " +
             fish_quoted(operand.name) + '\n';
      if (!seen.empty()) place += "; and " + seen;
    }
    for (const OptionFacts& option : command.options) out += of(command, option);
    return out;
  }

 private:
  static std::string begin(const CommandFacts& command, const std::string& unless_used = "") {
    const std::string condition = "__mainbore_at \"" + command.path + '"' + unless_used;
    return "complete -c mainbore -n " + fish_quoted(condition);
  }

  // True once a word of this operand has been given; empty where it has no words of its own.
  [[nodiscard]] std::string seen_word_of(const std::string& name) const {
    for (const OptionValue& value : values_) {
      if (value.name == name && value.kind == ValueKind::words)
        return "__fish_seen_subcommand_from " + joined(value.words);
    }
    return "";
  }

  [[nodiscard]] std::string of(const CommandFacts& command, const OptionFacts& option) const {
    const std::string used = (option.value.empty() ? " flag " : " value ") + joined(option.names);
    std::string out = begin(command, option.repeatable ? "" : used);
    for (const std::string& name : option.names) {
      out += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
    }
    if (!option.value.empty()) out += " -r" + offered(option.value);
    return out + " -d " + fish_quoted(short_help(option)) + '\n';
  }

  [[nodiscard]] std::string offered(const std::string& name) const {
    for (const OptionValue& value : values_) {
      if (value.name == name && value.kind == ValueKind::file) return " -F";
    }
    const std::string shown = name.find('|') == std::string::npos ? name : replaced(name, "|", " ");
    if (shown != name) return " -f -a " + fish_quoted(shown);
    return " -f -a '(__mainbore_values " + name + ")'";
  }

  std::vector<OptionValue> values_;
};

}  // namespace

std::string fish_completion(const CommandFacts& program) {
  const std::vector<OptionValue> values = option_values(program);
  std::string out = "# Completion of mainbore for fish.\n" + std::string(made_by) + "\nset -g __mainbore_commands";
  for (const CommandFacts* command : all_commands(program)) out += " \\\n    " + fish_quoted(command->path);
  out += "\n\n# What stands for a value, a line each.\nfunction __mainbore_values\n    switch $argv[1]\n";
  for (const OptionValue& value : values) {
    if (value.kind == ValueKind::directory) {
      out += "        case " + value.name + "\n            __fish_complete_directories (commandline -ct)\n";
    } else if (value.kind == ValueKind::words) {
      out += "        case " + fish_quoted(value.name) + "\n            printf '%s\\n' \\\n                " +
             joined(fish_quoted(value.words), " \\\n                ") + '\n';
    }
  }
  out += "    end\nend\n" + std::string(fish_functions);
  const Lines lines(values);
  for (const CommandFacts* command : all_commands(program)) out += lines.of(*command);
  return out;
}

}  // namespace mainbore::docs
