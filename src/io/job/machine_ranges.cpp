#include "io/job/machine_ranges.hpp"

#include <memory>

#include "io/job/job_fields.hpp"
#include "mainbore/job.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {

std::optional<std::string> machine_out_of_range(const Catalog& catalog) {
  for (const MachineProfile& machine : catalog.machines()) {
    Job job;
    job.machine.given = std::shared_ptr<const MachineProfile>(std::shared_ptr<void>(), &machine);
    for (const JobField& field : job_fields()) {
      if (!field.path.starts_with("machine.")) continue;
      if (const auto problem = beyond(field, field.load(job, 0, field.kind))) {
        return "machines.json: machine " + text::quoted(machine.id) + ": " + std::string(field.path.substr(8)) + ": " +
               problem->message + "; " + problem->help;
      }
    }
  }
  return std::nullopt;
}

}  // namespace mainbore::io
