// mainbore new: asks for the facts of a job on a terminal, and writes the job file.
#pragma once

#include <string>

#include "cli/console.hpp"
#include "cli/settings_option.hpp"

namespace mainbore::cli {

struct NewRequest {
  std::string job;       // the file to write
  bool replace = false;  // a file that is there already
  std::string language;  // empty: the settings', else English
  SettingsRequest settings_file;
};

[[nodiscard]] ExitStatus new_command(const NewRequest& request, Console& console);

}  // namespace mainbore::cli
