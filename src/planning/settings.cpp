#include "mainbore/settings.hpp"

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

}  // namespace

void lay_settings_under(Job& job, const Settings& settings, FromSettings& from) {
  take_machine(job.machine, settings, from);
  if (settings.crew.empty()) return;
  if (!job.crew.empty()) {
    from.set_aside.emplace_back("crew");
    return;
  }
  job.crew = settings.crew;
  from.taken.push_back({"crew", settings.crew});
}

}  // namespace mainbore
