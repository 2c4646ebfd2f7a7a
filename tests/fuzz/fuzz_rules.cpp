// Any bytes at all as a utility's rules: rules or diagnostics, never both, never neither; rules that read can be
// listed, compared and planned under, and nothing looser than a safety default is without its reason.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <vector>

#include "mainbore/job_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/rules_report.hpp"

namespace {

using namespace mainbore;

void require(bool holds) {
  if (!holds) std::abort();
}

Job some_job() {
  Job job;
  job.main.material = Material::ductile_iron;
  job.main.size = NominalSize::inches(8);
  job.main.pressure = 70.0 * units::psi;
  job.service.size = NominalSize::inches(1);
  job.date = "2026-05-04";
  return job;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Catalog& catalog = Catalog::builtin();
  static const RulesFile usual = load_rules(catalog);
  const std::vector<RuleText> files = {{"own.json", std::string(reinterpret_cast<const char*>(data), size)}};
  RulesFile read = load_rules(catalog, files);
  require(read.rules.has_value() == read.diagnostics.empty());
  for (const Diagnostic& told : read.diagnostics) require(!format_diagnostic(told).empty());
  if (!read.rules) return 0;

  const auto differences = compare_rules(catalog, *usual.rules, *read.rules);
  for (const RuleDifference& one : differences) {
    const bool loose = one.change == RuleChange::looser && one.safety;
    require(!loose || (one.after_basis != nullptr && one.after_basis->reason != nullptr));
  }
  require(!rules_check_text(*read.rules, differences, UnitSystem::us).empty());
  require(!rules_check_to_json(*read.rules, differences, UnitSystem::si, JsonStyle::compact).empty());
  require(!rules_show_text(*read.rules, list_rules(*read.rules), UnitSystem::si).empty());
  const Plan made = Planner(*std::move(read.rules)).plan(some_job());
  require(!plan_to_json(made, UnitSystem::us, JsonStyle::compact).empty());
  require(!text_report(made, {}).empty());
  return 0;
}
