#include "option_values.hpp"

#include <algorithm>
#include <map>

#include "io/job/job_fields.hpp"
#include "mainbore/approved_file.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/field_tests.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/order_file.hpp"
#include "mainbore/readings_file.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/schema.hpp"
#include "mainbore/settings_file.hpp"

namespace mainbore::docs {
namespace {

template <class Names>
std::vector<std::string> words_of(const Names& names) {
  return {names.begin(), names.end()};
}

std::vector<std::string> job_paths() {
  std::vector<std::string> paths;
  for (const io::JobField& field : io::job_fields()) paths.push_back(field.path_at(0) + '=');
  return paths;
}

std::vector<std::string> reading_names() {
  std::vector<std::string> names;
  for (const RecordEntry& entry : record_entries()) names.push_back(std::string(entry.name) + '=');
  return names;
}

std::vector<std::string> codes() {
  std::vector<std::string> all = words_of(finding_codes);
  for (const std::span<const DiagnosticText> some :
       {diagnostic_texts(), rules_diagnostic_texts(), order_diagnostic_texts(), settings_diagnostic_texts(),
        record_diagnostic_texts(), approved_diagnostic_texts()}) {
    for (const DiagnosticText& text : some) all.emplace_back(text.code);
  }
  return all;
}

const std::map<std::string_view, std::vector<std::string>>& known_words() {
  static const std::map<std::string_view, std::vector<std::string>> known = {
      {"ACTION", {"check", "show", "diff"}},  {"CODE", codes()},
      {"CONTENT", words_of(carries_names)},   {"MATERIAL", words_of(material_names)},
      {"NAME=VALUE", reading_names()},        {"PATH=VALUE", job_paths()},
      {"STYLE", words_of(joint_style_names)}, {"THREAD", words_of(thread_standard_names)},
      {"WHAT", words_of(schema_names)},
  };
  return known;
}

// An operand is a file unless it is known to be something else.
OptionValue value_named(const std::string& name, bool is_operand) {
  const auto words = known_words().find(name);
  if (words != known_words().end()) return {name, ValueKind::words, words->second};
  if (name == "DIR") return {name, ValueKind::directory, {}};
  const bool is_file = is_operand || name == "FILE" || name == "JOB" || name == "LEDGER";
  return {name, is_file ? ValueKind::file : ValueKind::free, {}};
}

}  // namespace

std::vector<OptionValue> option_values(const CommandFacts& program) {
  std::map<std::string, OptionValue> values;
  for (const CommandFacts* command : all_commands(program)) {
    for (const OptionFacts& option : command->options) {
      if (option.value.empty() || option.value.find('|') != std::string::npos) continue;
      values.emplace(option.value, value_named(option.value, false));
    }
    for (const OperandFacts& operand : command->operands) values[operand.name] = value_named(operand.name, true);
  }
  std::vector<OptionValue> out;
  for (auto& [name, value] : values) {
    if (value.kind != ValueKind::free) out.push_back(std::move(value));
  }
  return out;
}

}  // namespace mainbore::docs
