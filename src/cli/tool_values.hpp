// Values of options that are quantities or words, read or refused with what may be written.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cli/settings_option.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/nominal_size.hpp"

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
[[nodiscard]] std::optional<Measure> quantity_of(const std::string& option, const std::string& text, Kind kind);
[[nodiscard]] std::optional<NominalSize> size_of(const std::string& option, const std::string& text);
// The place of the word among the known ones.
[[nodiscard]] std::optional<std::size_t> word_of(const std::string& option, const std::string& text,
                                                 std::span<const std::string_view> known);

}  // namespace mainbore::cli
