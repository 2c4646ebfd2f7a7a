#include "completions.hpp"
#include "shell_lists.hpp"

namespace mainbore::docs {
namespace {

constexpr std::string_view bash_functions = R"bash(
# What an option named takes: "-" for nothing.
_mainbore_option() {
  local option
  local -a facts
  for option in "${options[@]}"; do
    read -ra facts <<< "$option"
    [[ " ${facts[*]:2} " == *" $1 "* ]] && value=${facts[1]}
  done
}

# The options that may stand here: not those given before, but for the repeatable.
_mainbore_open_options() {
  local option name
  local -a facts
  for option in "${options[@]}"; do
    read -ra facts <<< "$option"
    if [[ ${facts[0]} == once ]]; then
      for name in "${facts[@]:2}"; do [[ " ${given[*]} " == *" $name "* ]] && continue 2; done
    fi
    words+=("${facts[@]:2}")
  done
}

# The words that begin as what is typed does. The shell replaces only what stands behind the last '=' or ':'.
_mainbore_offer() {
  local typed=$1 kept=$2 quote='' word
  case $typed in
    [\"\']*) quote=${typed:0:1} typed=${typed:1} ;;
    *) typed=${typed//\\/} ;;
  esac
  for word in "${words[@]}"; do
    [[ $word == "$typed"* && $word != "$kept" ]] || continue
    word=${word#"$kept"}
    [[ $quote ]] || word=${word// /\\ }
    COMPREPLY+=("$word")
  done
  [[ ${COMPREPLY[0]} == *= ]] && compopt -o nospace 2> /dev/null
}

_mainbore() {
  local path=mainbore commands='' value='' kind=none token i last operand=0
  local -a operands options line=() given=() words=()
  COMPREPLY=()
  for ((i = 1; i <= COMP_CWORD; ++i)); do  # --set=a.b is one word to the program and three to the shell
    token=${COMP_WORDS[i]}
    if ((${#line[@]})) && [[ $token == [=:] || ${COMP_WORDS[i - 1]} == [=:] ]]; then
      line[-1]+=$token
    else
      line+=("$token")
    fi
  done
  last=${line[-1]}

  _mainbore_command "$path"
  for token in "${line[@]:0:${#line[@]}-1}"; do
    if [[ $value && $value != - ]]; then
      value=
    elif [[ $token == -?* ]]; then
      given+=("${token%%=*}")
      [[ $token == *=* ]] || _mainbore_option "$token"
    elif [[ " $commands " == *" $token "* ]]; then
      path+=" $token"
      _mainbore_command "$path"
    else
      ((++operand))
    fi
    [[ $value == - ]] && value=
  done

  if [[ ${COMP_WORDS[COMP_CWORD - 1]} == [\<\>]* ]]; then
    kind=file
  elif [[ $value ]]; then
    _mainbore_values "$value"
  elif [[ $last == --*=* ]]; then
    _mainbore_option "${last%%=*}"
    last=${last#*=}
    _mainbore_values "$value"
  elif [[ $last == -* ]]; then
    _mainbore_open_options
  elif [[ $commands ]]; then
    ((operand)) || read -ra words <<< "$commands"
  else
    i=$((${#operands[@]} - 1))
    ((operand > i && i >= 0)) && [[ ${operands[i]} == *... ]] && operand=$i
    value=${operands[operand]%...}
    if [[ $value ]]; then _mainbore_values "$value"; else _mainbore_open_options; fi
  fi

  # What is not offered here is left to the shell: names of files, or nothing.
  [[ $kind == file ]] || compopt +o default 2> /dev/null
  [[ $kind == directory ]] && compopt -o dirnames 2> /dev/null
  token=${COMP_WORDS[COMP_CWORD]}
  [[ $token == [=:] ]] && token=
  _mainbore_offer "$last" "${last%"$token"}"
}

complete -o default -F _mainbore mainbore
)bash";

std::string command_case(const CommandFacts& command) {
  std::string out = "    " + in_shell_quotes(command.path) + ")\n";
  std::vector<std::string> names;
  for (const CommandFacts& below : command.commands) names.push_back(below.name);
  if (!names.empty()) out += "      commands=" + in_shell_quotes(joined(names)) + '\n';
  std::vector<std::string> operands;
  for (const OperandFacts& operand : command.operands) {
    operands.push_back(in_shell_quotes(operand.name + (operand.repeatable ? "..." : "")));
  }
  if (!operands.empty()) out += "      operands=(" + joined(operands) + ")\n";
  out += "      options=(\n";
  for (const OptionFacts& option : command.options) {
    out += "        " +
           in_shell_quotes(std::string(option.repeatable ? "many " : "once ") +
                           (option.value.empty() ? "-" : option.value) + ' ' + joined(option.names)) +
           '\n';
  }
  return out + "      )\n      ;;\n";
}

std::string kind_case(const std::vector<OptionValue>& values, ValueKind kind, const std::string& word) {
  const std::vector<std::string> names = names_of(values, kind);
  return names.empty() ? "" : "    " + joined(all_quoted(names), " | ") + ") kind=" + word + " ;;\n";
}

}  // namespace

std::string bash_completion(const CommandFacts& program) {
  std::string out = "# Completion of mainbore for bash.\n" + std::string(made_by) + R"bash(
# What stands behind a command: its commands, its operands, its options as "once|many VALUE NAME...".
_mainbore_command() {
  commands='' operands=() options=()
  case $1 in
)bash";
  for (const CommandFacts* command : all_commands(program)) out += command_case(*command);
  out += R"bash(  esac
}

# What stands for a value: words, or the kind of file.
_mainbore_values() {
  case $1 in
    *'|'*) IFS='|' read -ra words <<< "$1" ;;
)bash";
  const std::vector<OptionValue> values = option_values(program);
  out += kind_case(values, ValueKind::file, "file") + kind_case(values, ValueKind::directory, "directory");
  for (const OptionValue& value : values) {
    if (value.kind != ValueKind::words) continue;
    out += "    " + in_shell_quotes(value.name) + ")\n      words=(\n        " +
           joined(all_quoted(value.words), "\n        ") + "\n      )\n      ;;\n";
  }
  return out + "  esac\n}\n" + std::string(bash_functions);
}

}  // namespace mainbore::docs
