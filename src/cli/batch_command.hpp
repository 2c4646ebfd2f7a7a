// mainbore batch: many orders -> a record each, or the report of a week.
#pragma once

#include <string>
#include <vector>

#include "cli/console.hpp"
#include "cli/settings_option.hpp"

namespace mainbore::cli {

struct BatchRequest {
  std::vector<std::string> orders;  // files, or "-"
  std::string in;                   // csv, ndjson, json, geojson; empty: by the file's name, else by its first byte
  std::string format = "text";
  bool full = false;
  bool decisions = false;
  std::string map;
  std::vector<std::string> keep;
  std::string delimiter;
  bool columns = false;
  bool all = false;
  std::string sheets;    // a folder
  std::string language;  // of the sheets
  std::string days;      // of the report's lists by day: one, or the first and the last
  bool no_rows = false;
  std::string fail_on;
  int jobs = 1;
  std::string units;  // empty: the settings', else us
  std::vector<std::string> rules;
  std::string approved;
  std::string data;
  SettingsRequest settings_file;
};

// Exit status by the worst of the orders. Throws Stop.
[[nodiscard]] ExitStatus batch_command(const BatchRequest& request, Console& console);

}  // namespace mainbore::cli
