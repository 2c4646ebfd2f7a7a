#include "cli/settings_option.hpp"

#include <filesystem>

#include "mainbore/approved_file.hpp"
#include "mainbore/settings_file.hpp"

namespace mainbore::cli {
namespace {

namespace fs = std::filesystem;

// By the XDG base directory specification: a path that is not absolute is passed over. Nothing where there is no file; a
// link that leads nowhere is one, and cannot be opened: rules in it must not be lost silently.
std::optional<std::string> users_own_file(const Environment& environment) {
  fs::path folder = environment.config_home;
  if (!folder.is_absolute()) {
    const fs::path home = environment.home;
    if (!home.is_absolute()) return std::nullopt;
    folder = home / ".config";
  }
  const fs::path file = folder / "mainbore" / "settings.json";
  std::error_code error;
  if (fs::symlink_status(file, error).type() == fs::file_type::not_found) return std::nullopt;
  return file.string();
}

}  // namespace

SettingsInForce::SettingsInForce(const SettingsRequest& request, UsersOwn own, const Catalog& catalog, Console& console)
    : own_(own) {
  if (request.file && request.none) throw Stop(exit_usage, "give --settings or --no-settings, not both");
  std::optional<std::string> path = request.file;
  if (!path && own == UsersOwn::read && !request.none) path = users_own_file(console.environment);
  if (!path) return;
  std::string text;
  try {
    text = read_text(*path, longest_settings, console);
  } catch (const Stop& stop) {
    throw Stop(stop.status(), std::string(stop.what()) + '\n' + way_forward());
  }
  SettingsFile read = read_settings(text, shown_name(*path), catalog);
  stop_on(read.diagnostics, "these settings are not used\n" + way_forward(), console);
  settings_ = *std::move(read.settings);
  from_.file = settings_.file;
  folder_ = fs::path(*path).parent_path().string();
}

std::string SettingsInForce::way_forward() const {
  return own_ == UsersOwn::read ? "fix the settings file, or run with --no-settings"
                                : "fix the settings file, or leave out --settings";
}

UnitSystem SettingsInForce::units(const std::string& asked) {
  std::optional<UnitSystem> system;
  if (!asked.empty()) system = asked == "si" ? UnitSystem::si : UnitSystem::us;
  return units_in_force(settings_, system, from_);
}

Language SettingsInForce::language(const std::string& asked, bool translated) {
  return language_in_force(settings_, asked.empty() ? std::nullopt : language_named(asked), translated, from_);
}

Rules SettingsInForce::rules(const Catalog& catalog, const std::vector<std::string>& files, Console& console) {
  if (settings_.rules.empty()) return open_rules(catalog, files, console);
  std::vector<std::string> all;
  for (const std::string& name : settings_.rules) {
    all.push_back((fs::path(folder_) / name).string());
    from_.taken.push_back({"rules", name});
  }
  all.insert(all.end(), files.begin(), files.end());
  try {
    return open_rules(catalog, all, console);
  } catch (const Stop& stop) {
    throw Stop(stop.status(),
               std::string(stop.what()) + "\nsome of the rules are named by " + settings_.file + '\n' + way_forward());
  }
}

std::shared_ptr<const ApprovedList> SettingsInForce::approved(const std::string& asked, const Catalog& catalog,
                                                              Console& console) {
  std::string path = asked;
  if (asked.empty() && !settings_.approved.empty()) {
    path = (fs::path(folder_) / settings_.approved).string();
    from_.taken.push_back({"approved", settings_.approved});
  } else if (!settings_.approved.empty()) {
    from_.set_aside.emplace_back("approved");
  }
  if (path.empty()) return nullptr;
  ApprovedFile read = read_approved(read_text(path, longest_approved, console), shown_name(path), catalog);
  stop_on(read.diagnostics, "nothing is chosen from half a list", console);
  return std::make_shared<const ApprovedList>(*std::move(read.list));
}

Planner SettingsInForce::planner(std::shared_ptr<const Catalog> tables, const std::vector<std::string>& rules_files,
                                 const std::string& approved_file, Console& console) {
  Rules own = rules(*tables, rules_files, console);  // before the list: a plan names them in this order
  std::shared_ptr<const ApprovedList> list = approved(approved_file, *tables, console);
  return {std::move(tables), std::move(own), std::move(list)};
}

}  // namespace mainbore::cli
