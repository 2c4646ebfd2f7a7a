#include "shell_lists.hpp"

namespace mainbore::docs {

std::string replaced(std::string text, std::string_view what, std::string_view with) {
  for (std::size_t at = 0; (at = text.find(what, at)) != std::string::npos; at += with.size()) {
    text.replace(at, what.size(), with);
  }
  return text;
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string out;
  for (const std::string& word : words) {
    if (&word != &words.front()) out += between;
    out += word;
  }
  return out;
}

std::string in_shell_quotes(std::string_view text) { return '\'' + replaced(std::string(text), "'", "'\\''") + '\''; }

std::vector<std::string> all_quoted(const std::vector<std::string>& words) {
  std::vector<std::string> out;
  for (const std::string& word : words) out.push_back(in_shell_quotes(word));
  return out;
}

std::vector<std::string> names_of(const std::vector<OptionValue>& values, ValueKind kind) {
  std::vector<std::string> names;
  for (const OptionValue& value : values) {
    if (value.kind == kind) names.push_back(value.name);
  }
  return names;
}

}  // namespace mainbore::docs
