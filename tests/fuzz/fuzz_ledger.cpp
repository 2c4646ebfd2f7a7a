// Any bytes at all as a ledger, and as a readings file: lines are records, begun, or told; what reads can be exported, and
// readings that read make a record whose line reads back.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "mainbore/job_file.hpp"
#include "mainbore/ledger.hpp"
#include "mainbore/readings_file.hpp"
#include "mainbore/rules_file.hpp"

namespace {

using namespace mainbore;

void require(bool holds) {
  if (!holds) std::abort();
}

constexpr std::string_view bare_job =
    R"({"id": "AV-1", "main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"}, "service": {"size": "1 in"}})";

void try_ledger(std::string_view text) {
  const Ledger ledger = read_ledger(text, "ledger.ndjson", Catalog::builtin());
  require(ledger.whole <= text.size());
  for (const Diagnostic& told : ledger.diagnostics) require(!format_diagnostic(told).empty());
  const auto latest = ledger.latest();
  require(latest.size() <= ledger.entries.size());
  require(!ledger_to_json(latest).empty() && !ledger_to_csv(latest, UnitSystem::si).empty());
  require(!ledger_to_geojson(latest, UnitSystem::us).empty());
  require(!tool_history_text(tool_history(latest), UnitSystem::us).empty());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Planner planner(*load_rules(Catalog::builtin()).rules);
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try_ledger(text);
  const ReadingsFile read = read_readings(text, "readings.json", Catalog::builtin());
  require(read.readings.has_value() == read.diagnostics.empty());
  for (const Diagnostic& told : read.diagnostics) require(!format_diagnostic(told).empty());
  if (!read.readings) return 0;
  const Job job = *read_job(bare_job, "job.json", Catalog::builtin()).job;
  const TapRecord record = tap_record(job, *read.readings, planner, UnitSystem::us);
  require(!record_text(record, UnitSystem::us).empty());
  const std::string line = ledger_line(record, 1, UnitSystem::us);
  const Ledger back = read_ledger(line, "ledger.ndjson", Catalog::builtin());
  require(back.diagnostics.empty() && back.entries.size() == 1);
  return 0;
}
