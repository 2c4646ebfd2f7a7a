// What was taken from a settings file, in words.
#pragma once

#include <string>
#include <vector>

#include "mainbore/settings.hpp"

namespace mainbore::report {

struct SettingsWords {
  std::string label;  // "Machine"
  std::string text;   // "title Truck 4; largest tap 1 in"
};
// One entry a member of the file, the file itself first; none where there was no settings file.
[[nodiscard]] std::vector<SettingsWords> settings_words(const FromSettings& from, UnitSystem system);

// The same in one line, the machine by its name alone: "machine Truck 4; crew North yard (/home/crew/settings.json)".
// Empty where there was no settings file.
[[nodiscard]] std::string settings_line(const FromSettings& from, Language language = Language::english);

}  // namespace mainbore::report
