// Any bytes at all as a job: a job or diagnostics, never both, never neither; the fast reader accepts nothing that the full
// one does not, and reads the same; a job that reads can be planned and written, and what is written reads back.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "io/fast/fast_job.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules_file.hpp"

namespace {

using namespace mainbore;

void require(bool holds) {
  if (!holds) std::abort();
}

std::string json(const Job& job) { return job_to_json(job, UnitSystem::us, JsonStyle::compact); }

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Planner planner(*load_rules(Catalog::builtin()).rules);
  static io::FastJobReader fast(Catalog::builtin());
  std::string text(reinterpret_cast<const char*>(data), size);
  const JobFile read = read_job(text, "job.json", Catalog::builtin());
  require(read.job.has_value() == read.diagnostics.empty());
  for (const Diagnostic& told : read.diagnostics) require(!format_diagnostic(told).empty());

  text.resize(size + io::FastJobReader::room_behind, '"');
  if (const Job* const job = fast.read(std::string_view(text).substr(0, size))) {
    require(read.job.has_value());
    require(json(*job) == json(*read.job));
  }
  if (!read.job) return 0;

  const std::string written = json(*read.job);
  const JobFile again = read_job(written, "written.json", Catalog::builtin());
  require(again.job.has_value());
  const Plan made = planner.plan(*read.job);
  require(!plan_to_json(made, UnitSystem::us, JsonStyle::compact).empty());
  return 0;
}
