// mainbore plan: one job -> the plan.
#pragma once

#include <string>
#include <vector>

#include "cli/console.hpp"
#include "cli/settings_option.hpp"

namespace mainbore::cli {

struct PlanRequest {
  std::string job;                    // file, "-", or empty
  std::vector<std::string> settings;  // PATH=VALUE
  std::string format = "text";
  bool why = false;        // text: behind the card, what it rests on
  bool materials = false;  // what to load
  bool steps = false;      // the order of work
  bool full = false;       // all of it
  bool what_if = false;    // how far each fact may move before the verdict changes
  std::string units;       // empty: the settings', else us
  std::string language;    // empty: the settings', else English
  std::vector<std::string> rules;
  std::string approved;
  std::string data;
  SettingsRequest settings_file;
};

// Exit status by the verdict. Throws Stop.
[[nodiscard]] ExitStatus plan_command(const PlanRequest& request, Console& console);

}  // namespace mainbore::cli
