// mainbore record: readings judged, the finished tap as a record; a ledger of them.
#pragma once

#include <string>
#include <vector>

#include "cli/console.hpp"
#include "cli/settings_option.hpp"

namespace mainbore::cli {

struct RecordRequest {
  std::string job;                    // file, or "-"
  std::string readings;               // file, "-", or empty
  std::vector<std::string> settings;  // NAME=VALUE, over the file's
  std::string format;                 // empty: text; of an export json
  std::string append;                 // ledger to append to
  std::string exported;               // ledger to write out
  std::string tools;                  // ledger to count holes in
  std::string order;                  // of an export: this one alone
  std::string units;
  std::string language;  // of a record as text; empty: the settings', else English
  std::vector<std::string> rules;
  std::string approved;
  std::string data;
  SettingsRequest settings_file;
};

// Exit status 1 for a no-go, 3 where the sheet is void or something is missing, 0 for a complete record. Throws Stop.
[[nodiscard]] ExitStatus record_command(const RecordRequest& request, Console& console);

}  // namespace mainbore::cli
