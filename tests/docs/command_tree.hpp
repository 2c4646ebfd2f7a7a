// The commands of the program with their options, as its parser knows them.
#pragma once

#include <string>
#include <vector>

namespace mainbore::docs {

struct OptionFacts {
  std::vector<std::string> names;  // "-o", "--output"
  std::string value;               // "FILE", "us|si"; empty for a flag
  std::string help;                // in lines as on the help page
  bool repeatable = false;
};

// A word that is no option's: a file, a code.
struct OperandFacts {
  std::string name;
  std::string help;
  bool repeatable = false;
};

struct CommandFacts {
  std::string name;   // "plan"
  std::string path;   // "mainbore plan"
  std::string about;  // the first part of its help page
  std::vector<OptionFacts> options;
  std::vector<OperandFacts> operands;
  std::vector<CommandFacts> commands;

  // The first line of what its help page says, without a full stop.
  [[nodiscard]] std::string summary() const;
};

[[nodiscard]] CommandFacts command_tree();

// The command and all below it, in the order of the help pages.
[[nodiscard]] std::vector<const CommandFacts*> all_commands(const CommandFacts& top);

[[nodiscard]] std::string on_one_line(std::string text);

// What an option's help says first, short enough to stand beside it in a list.
[[nodiscard]] std::string short_help(const OptionFacts& option);

}  // namespace mainbore::docs
