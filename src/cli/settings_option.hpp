// The settings file of a command: which one, and what of it the command takes.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "cli/console.hpp"
#include "mainbore/approved.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/settings.hpp"

namespace mainbore::cli {

struct SettingsRequest {
  std::optional<std::string> file;  // --settings
  bool none = false;                // --no-settings
};

// Whether a command without --settings reads the user's own file. A batch does not: its output depends on its arguments
// alone.
enum class UsersOwn : bool { never, read };

class SettingsInForce {
 public:
  // Reads and checks the file. Throws Stop where it cannot be opened or read; nothing is done under half of it.
  SettingsInForce(const SettingsRequest& request, UsersOwn own, const Catalog& catalog, Console& console);

  // The system asked for on the command line, else that of the settings, else us.
  [[nodiscard]] UnitSystem units(const std::string& asked);
  // The language asked for on the command line, else that of the settings, else English. What is not `translated` is English.
  [[nodiscard]] Language language(const std::string& asked, bool translated);
  // The default rules, those of the settings over them, and the files of the command line over these.
  [[nodiscard]] Rules rules(const Catalog& catalog, const std::vector<std::string>& files, Console& console);
  // The same with the approved fittings of the command line, else those of the settings, else none.
  [[nodiscard]] Planner planner(std::shared_ptr<const Catalog> tables, const std::vector<std::string>& rules_files,
                                const std::string& approved_file, Console& console);

  [[nodiscard]] const Settings& file() const { return settings_; }
  // What the calls above took; the command adds what else it takes.
  [[nodiscard]] const FromSettings& taken() const { return from_; }

 private:
  [[nodiscard]] std::shared_ptr<const ApprovedList> approved(const std::string& asked, const Catalog& catalog,
                                                             Console& console);
  [[nodiscard]] std::string way_forward() const;

  UsersOwn own_;
  Settings settings_;
  std::string folder_;  // that rules are seen from
  FromSettings from_;
};

}  // namespace mainbore::cli
