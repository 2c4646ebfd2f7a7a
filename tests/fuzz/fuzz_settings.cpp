// Any bytes at all as a settings file: settings or diagnostics, never both, never neither; settings that read can be laid
// under a job, and what they say is listed.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "mainbore/job_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/settings_file.hpp"

namespace {

using namespace mainbore;

void require(bool holds) {
  if (!holds) std::abort();
}

constexpr std::string_view bare_job =
    R"({"main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"}, "service": {"size": "1 in"}})";

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Planner planner(*load_rules(Catalog::builtin()).rules);
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const SettingsFile read = read_settings(text, "settings.json", Catalog::builtin());
  require(read.settings.has_value() == read.diagnostics.empty());
  for (const Diagnostic& told : read.diagnostics) require(!format_diagnostic(told).empty());
  if (!read.settings) return 0;

  Job job = *read_job(bare_job, "job.json", Catalog::builtin()).job;
  FromSettings from;
  from.file = read.settings->file;
  lay_settings_under(job, *read.settings, from);
  require(from.set_aside.empty());
  require(from.taken.size() == read.settings->machine_facts.size() + (job.crew.empty() ? 0 : 1));
  Plan made = planner.plan(job);
  made.from_settings = std::move(from);
  require(!plan_to_json(made, UnitSystem::us, JsonStyle::compact).empty());
  require(text_report(made).find("FROM SETTINGS") != std::string::npos);
  return 0;
}
