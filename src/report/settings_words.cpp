#include "report/settings_words.hpp"

#include <algorithm>
#include <string_view>

#include "report/text_page.hpp"
#include "words/terms.hpp"

namespace mainbore::report {
namespace {

constexpr std::string_view machine = "machine.";
constexpr std::string_view service = "service.";

std::string value_in_words(const SettingValue& value, UnitSystem system) {
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  if (const auto* measure = std::get_if<Measure>(&value)) return format_measure(*measure, system);
  if (const auto* size = std::get_if<NominalSize>(&value)) return size->label() + " in";
  return std::to_string(std::get<int>(value));
}

// The values taken under one path.
std::string values_of(const FromSettings& from, std::string_view path, UnitSystem system) {
  std::string text;
  for (const SettingTaken& fact : from.taken) {
    if (fact.path == path) text += (text.empty() ? "" : "; ") + value_in_words(fact.value, system);
  }
  return text;
}

std::string name_of_machine(const FromSettings& from) {
  std::string name = values_of(from, "machine.title", UnitSystem::us);
  return name.empty() ? values_of(from, "machine.profile", UnitSystem::us) : name;
}

// "Truck 4; smallest tap 1/2 in; ...": its name first.
std::string machine_in_words(const FromSettings& from, UnitSystem system) {
  std::string text = name_of_machine(from);
  for (const SettingTaken& fact : from.taken) {
    if (!fact.path.starts_with(machine) || fact.path == "machine.title" || fact.path == "machine.profile") continue;
    std::string key = fact.path.substr(machine.size());
    std::replace(key.begin(), key.end(), '_', ' ');
    text += (text.empty() ? "" : "; ") + key + ' ' + value_in_words(fact.value, system);
  }
  return text;
}

// "saddle height 2 in; stop length 3.5 in"
std::string fittings_in_words(const FromSettings& from, UnitSystem system) {
  std::string text;
  for (const SettingTaken& fact : from.taken) {
    if (!fact.path.starts_with(service)) continue;
    std::string key = fact.path.substr(service.size());
    std::replace(key.begin(), key.end(), '_', ' ');
    text += (text.empty() ? "" : "; ") + key + ' ' + value_in_words(fact.value, system);
  }
  return text;
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
  add("Units", values_of(from, "units", system));
  add("Language", values_of(from, "language", system));
  add("Translation reviewed by", values_of(from, translation_reviewed_by, system));
  add("Rules", values_of(from, "rules", system));
  add("Approved fittings", values_of(from, "approved", system));
  add("Machine", machine_in_words(from, system));
  add("Fittings", fittings_in_words(from, system));
  add("Crew", values_of(from, "crew", system));
  if (from.taken.empty()) add("Taken", "nothing");
  if (!from.set_aside.empty()) add("Not taken", set_aside(from) + ": the job or the command line says otherwise");
  return words;
}

std::string settings_line(const FromSettings& from, Language language) {
  if (!from.any()) return {};
  std::string text;
  const auto add = [&](std::string_view label, const std::string& value) {
    if (!value.empty()) text += (text.empty() ? "" : "; ") + std::string(words::term(label, language)) + ' ' + value;
  };
  add("units", values_of(from, "units", UnitSystem::us));
  add("rules", values_of(from, "rules", UnitSystem::us));
  const std::string name = name_of_machine(from);
  add("machine", name.empty() ? machine_in_words(from, UnitSystem::us) : name);
  add("crew", values_of(from, "crew", UnitSystem::us));
  if (text.empty()) text = words::term("nothing taken", language);
  if (!from.set_aside.empty()) text += "; " + std::string(words::term("not taken", language)) + ": " + set_aside(from);
  return printable(text + " (" + from.file + ')');
}

}  // namespace mainbore::report
