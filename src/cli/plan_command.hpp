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
  bool materials = false;             // text: what to load as well
  bool steps = false;                 // text: the order of work as well
  bool what_if = false;               // how far each fact may move before the verdict changes
  std::string units;                  // empty: the settings', else us
  std::vector<std::string> rules;
  std::string data;
  SettingsRequest settings_file;
};

// Exit status by the verdict. Throws Stop.
[[nodiscard]] ExitStatus plan_command(const PlanRequest& request, Console& console);

}  // namespace mainbore::cli
