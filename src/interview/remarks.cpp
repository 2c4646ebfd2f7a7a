#include "interview/remarks.hpp"

#include <algorithm>
#include <array>

#include "mainbore/finding_words.hpp"

namespace mainbore::interview {
namespace {

// Those that rest on an answer, and neither on one that is still to come nor on what stands in for it below.
constexpr std::array told_at_once = {
    FindingCode::identity_not_water,
    FindingCode::identity_unknown,
    FindingCode::main_not_in_catalogue,
    FindingCode::main_class_not_made,
    FindingCode::main_year_contradicts,
    FindingCode::main_od_contradicts,
    FindingCode::main_readings_disagree,
    FindingCode::main_wall_impossible,
    FindingCode::main_condition_poor,
    FindingCode::main_curved,
    FindingCode::main_temperature_outside,
    FindingCode::service_not_smaller,
    FindingCode::service_fixture_unknown,
    FindingCode::main_not_yet_laid,
    FindingCode::main_freezing,
    FindingCode::main_class_word,
};

}  // namespace

std::vector<std::string> remarks(Job job, const Planner& planner, Language language) {
  std::vector<std::string> told;
  if (!job.main.material || !job.main.size) return told;
  if (!job.main.pressure) job.main.pressure = 1.0 * units::psi;
  if (!job.service.size) job.service.size = NominalSize::inches(0.25);  // smaller than any main
  // What is half answered is no fact yet.
  job.machine = {};
  job.nearby.reset();
  const Plan made = planner.plan(std::move(job));
  for (const Finding& finding : made.findings) {
    if (std::find(told_at_once.begin(), told_at_once.end(), finding.code) == told_at_once.end()) continue;
    const Audience crew(UnitSystem::us, language);
    told.push_back(detail_of(finding, crew) + ' ' + fix_of(finding, crew));
  }
  return told;
}

}  // namespace mainbore::interview
