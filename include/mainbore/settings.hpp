// Settings: what is the same for every job of one truck or office, said once: its own machine, the utility's rules, the
// units of results, the crew.
//
// A job and the command line come first; settings stand only where they say nothing. A machine is taken whole or not at
// all: a job that says anything of its machine takes none of the settings'. A fact taken from settings is stated, not
// assumed. Whatever is taken is listed with the answer.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "mainbore/job.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/nominal_size.hpp"

namespace mainbore {

using SettingValue = std::variant<std::string, Measure, NominalSize, int>;
struct SettingTaken {
  std::string path;  // "machine.chain_length", "crew", "units", "rules" (once a file)
  SettingValue value;
};

// What an answer took from a settings file.
struct FromSettings {
  std::string file;  // as it was named; empty: there was none
  std::vector<SettingTaken> taken;
  std::vector<std::string> set_aside;  // "machine", "crew", "units": the job or the command line says otherwise

  [[nodiscard]] bool any() const { return !file.empty(); }
};

struct Settings {
  std::string file;  // as it was named; empty: there is none
  MachineFacts machine;
  std::vector<SettingTaken> machine_facts;  // the same, one by one
  std::string crew;
  std::optional<UnitSystem> units;
  std::vector<std::string> rules;  // files as written, seen from the settings file's folder; laid in this order
};

// Lays machine and crew under the job, and adds to `from` what was taken and what was set aside.
void lay_settings_under(Job& job, const Settings& settings, FromSettings& from);

}  // namespace mainbore
