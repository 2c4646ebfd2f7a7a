#include "cli/tool_values.hpp"

#include <algorithm>

#include "cli/console.hpp"
#include "io/text/nearest.hpp"
#include "mainbore/rule_fields.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {

std::optional<io::FieldValue> fact_of(const std::string& option, const std::string& text, std::string_view path,
                                      const Catalog& catalog) {
  if (text.empty()) return std::nullopt;
  auto read = io::read_value(*io::find_field(path)->field, text, catalog);
  if (const auto* const problem = std::get_if<io::Problem>(&read)) {
    throw Stop(exit_usage, option + ": " + problem->message + (problem->help.empty() ? "" : '\n' + problem->help));
  }
  return std::get<io::FieldValue>(std::move(read));
}

std::optional<double> rule_of(const std::string& option, const std::string& text, std::string_view path) {
  const auto fields = rule_fields();
  const auto field = std::find_if(fields.begin(), fields.end(), [&](const RuleField& one) { return one.path == path; });
  return number_of(option, text, field->least, field->greatest);
}

std::optional<double> number_of(const std::string& option, const std::string& text, double least, double most) {
  if (text.empty()) return std::nullopt;
  const ParsedMeasure read = parse_measure(text, Kind::ratio);
  if (read && read.value.base() >= least && read.value.base() <= most) return read.value.base();
  std::string range;
  append_number(range, least, 1);
  range += " to ";
  append_number(range, most, 1);
  throw Stop(exit_usage, option + " takes a number from " + range + "; found " + text::quoted(text));
}

std::optional<std::size_t> word_of(const std::string& option, const std::string& text,
                                   std::span<const std::string_view> known) {
  if (text.empty()) return std::nullopt;
  const auto found = std::find(known.begin(), known.end(), text);
  if (found != known.end()) return static_cast<std::size_t>(found - known.begin());
  std::string message = option + ": unknown word " + text::quoted(text);
  if (const auto near = io::nearest(text, known)) message += ": did you mean \"" + std::string(*near) + "\"?";
  throw Stop(exit_usage, message + "\none of: " + io::listed(known));
}

std::vector<Setting> settings_of(const std::vector<std::string>& arguments, std::string_view takes) {
  std::vector<Setting> settings;
  for (const std::string& argument : arguments) {
    const std::size_t equals = argument.find('=');
    if (equals == std::string::npos || equals == 0) {
      throw Stop(exit_usage, "--set takes " + std::string(takes) + "; found " + text::quoted(argument));
    }
    settings.push_back({argument.substr(0, equals), argument.substr(equals + 1), ""});
  }
  return settings;
}

}  // namespace mainbore::cli
