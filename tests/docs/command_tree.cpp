#include "command_tree.hpp"

#include <algorithm>
#include <stdexcept>

#include "cli/options.hpp"

namespace mainbore::docs {
namespace {

OptionFacts option_facts(const CLI::Option& option) {
  OptionFacts facts;
  for (const std::string& name : option.get_snames()) facts.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) facts.names.push_back("--" + name);
  facts.help = option.get_description();
  if (option.get_items_expected_max() == 0) return facts;
  facts.value = option.get_type_name();
  facts.repeatable = option.get_items_expected_max() > 1;
  // Shells take lists apart at blanks.
  if (facts.value.empty() || facts.value.find_first_of(" \n'\"") != std::string::npos) {
    throw std::runtime_error(facts.names.back() + ": its value needs a name of one word, not \"" + facts.value + '"');
  }
  return facts;
}

CommandFacts command_facts(const CLI::App& command, const std::string& above) {
  CommandFacts facts;
  facts.name = command.get_name();
  facts.path = above.empty() ? facts.name : above + ' ' + facts.name;
  facts.about = command.get_description();
  for (const CLI::Option* option : command.get_options()) {
    if (option->get_group().empty()) continue;  // hidden
    if (option->nonpositional()) {
      facts.options.push_back(option_facts(*option));
    } else {
      facts.operands.push_back(
          {option->get_single_name(), option->get_description(), option->get_items_expected_max() > 1});
    }
  }
  for (const CLI::App* below : command.get_subcommands([](const CLI::App*) { return true; })) {
    if (!below->get_group().empty()) facts.commands.push_back(command_facts(*below, facts.path));
  }
  return facts;
}

void append_all(std::vector<const CommandFacts*>& out, const CommandFacts& top) {
  out.push_back(&top);
  for (const CommandFacts& command : top.commands) append_all(out, command);
}

}  // namespace

std::string CommandFacts::summary() const {
  std::string line = about.substr(0, about.find('\n'));
  if (line.ends_with('.')) line.pop_back();
  return line;
}

CommandFacts command_tree() {
  cli::Requests requests;
  return command_facts(*cli::command_parser(requests), "");
}

std::vector<const CommandFacts*> all_commands(const CommandFacts& top) {
  std::vector<const CommandFacts*> out;
  append_all(out, top);
  return out;
}

std::string on_one_line(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

std::string short_help(const OptionFacts& option) {
  const std::string help = on_one_line(option.help);
  return help.substr(0, help.find("; "));
}

}  // namespace mainbore::docs
