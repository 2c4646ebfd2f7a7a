// What a shell may offer where an option's value or an operand stands.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "command_tree.hpp"

namespace mainbore::docs {

enum class ValueKind { free, file, directory, words };

struct OptionValue {
  std::string name;  // as on the help page: "FILE", "MATERIAL", "us|si"
  ValueKind kind = ValueKind::free;
  std::vector<std::string> words;
};

// Every name of a value that the help pages use, each once, but for those of which nothing can be said (a length, a
// year). A set of words with bars between them says itself what it takes.
[[nodiscard]] std::vector<OptionValue> option_values(const CommandFacts& program);

}  // namespace mainbore::docs
