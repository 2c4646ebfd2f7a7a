// Values of options that are quantities or words, read or refused with what may be written.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cli/settings_option.hpp"
#include "io/job/job_fields.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::cli {

// What every tool takes.
struct ToolRequest {
  std::string format = "text";
  std::string units;  // empty: the settings', else us
  std::vector<std::string> rules;
  std::string data;
  SettingsRequest settings_file;
};

// An empty text is an option that was not given. A fault is a Stop with exit_usage that names the option.

// An option that says what a fact of a job says, such as "main.od", is read as that fact is, and held to its range.
[[nodiscard]] std::optional<io::FieldValue> fact_of(const std::string& option, const std::string& text,
                                                    std::string_view path, const Catalog& catalog);
// A number in the place of a rule, such as "direct.wrench_turns".
[[nodiscard]] std::optional<double> rule_of(const std::string& option, const std::string& text, std::string_view path);
// A plain number: "2", "2.5", "2-1/2".
[[nodiscard]] std::optional<double> number_of(const std::string& option, const std::string& text, double least,
                                              double most);
// The place of the word among the known ones.
[[nodiscard]] std::optional<std::size_t> word_of(const std::string& option, const std::string& text,
                                                 std::span<const std::string_view> known);
// What --set says: "main.size=8 in". `takes` is how it is written, for whoever wrote it otherwise.
[[nodiscard]] std::vector<Setting> settings_of(const std::vector<std::string>& arguments, std::string_view takes);

}  // namespace mainbore::cli
