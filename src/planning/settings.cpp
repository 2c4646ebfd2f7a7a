#include "mainbore/settings.hpp"

#include <memory>
#include <string>
#include <utility>

namespace mainbore {
namespace {

bool says_anything(const MachineFacts& machine) {
  return !machine.profile.empty() || machine.feed || machine.given || machine.extensions;
}

void take_machine(MachineFacts& machine, const Settings& settings, FromSettings& from) {
  if (settings.machine_facts.empty()) return;
  if (says_anything(machine)) {
    from.set_aside.emplace_back("machine");
    return;
  }
  machine = settings.machine;
  from.taken.insert(from.taken.end(), settings.machine_facts.begin(), settings.machine_facts.end());
}

void take_length(std::optional<Length>& fact, const std::optional<Length>& length, std::string_view path,
                 FromSettings& from) {
  if (fact || !length) return;
  fact = length;
  from.taken.push_back({std::string(path), Measure(*length)});
}

// An adapter is measured on the machine that it goes on.
void take_adapter(MachineFacts& machine, const FittingLengths& fitting, FromSettings& from) {
  if (!machine.given || machine.given->adapter_standoff || !fitting.adapter_standoff) return;
  auto with_adapter = std::make_shared<MachineProfile>(*machine.given);
  take_length(with_adapter->adapter_standoff, fitting.adapter_standoff, "machine.adapter_standoff", from);
  machine.given = std::move(with_adapter);
}

void take_fittings(Job& job, bool own_machine, const Settings& settings, FromSettings& from) {
  for (const FittingLengths& fitting : settings.fittings) {
    if (fitting.tap != job.service.size) continue;
    take_length(job.service.saddle_height, fitting.saddle_height, "service.saddle_height", from);
    take_length(job.service.stop_length, fitting.stop_length, "service.stop_length", from);
    if (!own_machine) take_adapter(job.machine, fitting, from);
  }
}

}  // namespace

void lay_settings_under(Job& job, const Settings& settings, FromSettings& from) {
  from.aboard = settings.aboard;
  const bool own_machine = says_anything(job.machine);
  take_machine(job.machine, settings, from);
  take_fittings(job, own_machine, settings, from);
  if (settings.crew.empty()) return;
  if (!job.crew.empty()) {
    from.set_aside.emplace_back("crew");
    return;
  }
  job.crew = settings.crew;
  from.taken.push_back({"crew", settings.crew});
}

UnitSystem units_in_force(const Settings& settings, std::optional<UnitSystem> asked, FromSettings& from) {
  if (settings.units && !asked) {
    from.taken.push_back({"units", *settings.units == UnitSystem::si ? "si" : "us"});
    return *settings.units;
  }
  if (settings.units) from.set_aside.emplace_back("units");
  return asked.value_or(UnitSystem::us);
}

Language language_in_force(const Settings& settings, std::optional<Language> asked, bool translated,
                           FromSettings& from) {
  Language language = asked.value_or(Language::english);
  if (settings.language && !asked && translated) {
    language = *settings.language;
    from.taken.push_back({"language", std::string(name_of(language))});
  } else if (settings.language) {
    from.set_aside.emplace_back("language");
  }
  if (language != Language::english && !settings.translation_reviewed_by.empty()) {
    from.taken.push_back({std::string(translation_reviewed_by), settings.translation_reviewed_by});
  }
  return language;
}

}  // namespace mainbore
