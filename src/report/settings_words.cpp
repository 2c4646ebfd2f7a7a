#include "report/settings_words.hpp"

#include <algorithm>
#include <string_view>

#include "report/text_page.hpp"

namespace mainbore::report {
namespace {

constexpr std::string_view machine = "machine.";

std::string value_in_words(const SettingValue& value, UnitSystem system) {
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  if (const auto* measure = std::get_if<Measure>(&value)) return format_measure(*measure, system);
  if (const auto* size = std::get_if<NominalSize>(&value)) return size->label() + " in";
  return std::to_string(std::get<int>(value));
}

// Text of the taken facts under one path, or of those that begin with it where it ends in a dot.
std::string joined(const FromSettings& from, std::string_view path, UnitSystem system) {
  std::string text;
  for (const SettingTaken& fact : from.taken) {
    if (!fact.path.starts_with(path)) continue;
    if (!text.empty()) text += "; ";
    std::string key = fact.path.substr(path.size());
    std::replace(key.begin(), key.end(), '_', ' ');
    if (!key.empty()) text += key + ' ';
    text += value_in_words(fact.value, system);
  }
  return text;
}

std::string name_of_machine(const FromSettings& from) {
  for (const std::string_view path : {"machine.title", "machine.profile"}) {
    if (std::string name = joined(from, path, UnitSystem::us); !name.empty()) return name;
  }
  return joined(from, machine, UnitSystem::us);
}

std::string set_aside(const FromSettings& from) {
  std::string text;
  for (const std::string& member : from.set_aside) text += (text.empty() ? "" : ", ") + member;
  return text;
}

}  // namespace

std::vector<SettingsWords> settings_words(const FromSettings& from, UnitSystem system) {
  std::vector<SettingsWords> words;
  if (!from.any()) return words;
  const auto add = [&](std::string label, std::string text) {
    if (!text.empty()) words.push_back({std::move(label), std::move(text)});
  };
  add("File", from.file);
  add("Units", joined(from, "units", system));
  add("Rules", joined(from, "rules", system));
  add("Machine", joined(from, machine, system));
  add("Crew", joined(from, "crew", system));
  if (from.taken.empty()) add("Taken", "nothing");
  if (!from.set_aside.empty()) add("Not taken", set_aside(from) + ": the job or the command line says otherwise");
  return words;
}

std::string settings_line(const FromSettings& from) {
  if (!from.any()) return {};
  std::string text;
  const auto add = [&](std::string_view label, const std::string& value) {
    if (!value.empty()) text += (text.empty() ? "" : "; ") + std::string(label) + ' ' + value;
  };
  add("units", joined(from, "units", UnitSystem::us));
  add("rules", joined(from, "rules", UnitSystem::us));
  add("machine", name_of_machine(from));
  add("crew", joined(from, "crew", UnitSystem::us));
  if (text.empty()) text = "nothing taken";
  if (!from.set_aside.empty()) text += "; not taken: " + set_aside(from);
  return printable(text + " (" + from.file + ')');
}

}  // namespace mainbore::report
