// The pocket table: what each main of the catalog may take under the rules in force.
//
// Nothing here has an opinion of its own. Every cell is what the planner decides for pocket_job(): the catalog's pipe of
// that size and class, proved to carry water, seen sound, straight, cool, nothing near, stop and saddle of ample
// rating, at a stated low line pressure. A tap stands in the table when the plan does it by the method asked; the largest
// such tap is listed. The taps tried are those of corporation stops, 5/8 to 2 in.
//
// A `go` needs nothing more than that job's facts; a `hold` needs the reading that its code asks for (old iron: the
// wall gauged at the tap; a thread that only fits a wall at its nominal). Where the largest tap is a hold, the largest
// go stands beside it.
//
// The table is no permission: pressure, condition, place and what the pipe carries are judged by the plan of the job.
//
//     const PocketTable table = pocket_table(planner, {.materials = {Material::ductile_iron}});
//     std::cout << pocket_table_text(table, UnitSystem::us);          // tool_report.hpp
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/finding.hpp"
#include "mainbore/job.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules.hpp"

namespace mainbore {

// Tried from the largest down.
inline constexpr std::array pocket_taps = {NominalSize::inches(2),    NominalSize::inches(1.5),
                                           NominalSize::inches(1.25), NominalSize::inches(1),
                                           NominalSize::inches(0.75), NominalSize::inches(0.625)};

struct PocketOptions {
  std::vector<Material> materials = {};                // empty: every one
  std::optional<NominalSize> main_from = {};           // smallest main, inclusive
  std::optional<NominalSize> main_to = {};             // largest, inclusive
  std::optional<ThreadStandard> thread = {};           // of the stop's inlet; absent: the rules' default
  std::shared_ptr<const MachineProfile> machine = {};  // absent: no machine's limit counts, and no chain is worked out
  std::optional<Length> wall = {};    // as gauged on the pipe at hand; absent: only tabulated walls count
  Pressure line = 40.0 * units::psi;  // below the lowest rating in the catalog
};

// The largest tap by one method. Both absent: none.
struct PocketTap {
  std::optional<NominalSize> go;    // with nothing more to find out
  std::optional<NominalSize> held;  // larger than `go`, once the hold is cleared
  std::optional<FindingCode> hold;  // the first of `held`'s holds
  std::optional<Finding> refused;   // why not even the smallest, where both are absent
  bool recalled = false;            // rests on a rule that was recalled, not read
  [[nodiscard]] std::optional<NominalSize> largest() const { return held ? held : go; }
};

struct PocketCell {
  const Pipe* pipe = nullptr;
  PocketTap direct;
  PocketTap saddle;
  // Of the largest direct tap, go or held:
  std::optional<double> threads_nominal;  // complete threads in the tabulated wall
  std::optional<double> threads_least;    // and in the least wall a sound pipe may have
  std::optional<Length> wall_needed;      // for the threads the rules ask
  bool threads_recalled = false;          // counted by dimensions of the thread that were recalled, not read
  bool threads_judged = false;            // false: because they are, a maximum judges
  std::optional<Length> od;               // that a service saddle, or the machine's for a direct tap, must fit
  // Of the machine's chain, for a direct tap; on a service saddle the machine stands on the stop.
  std::optional<Length> chain_needed;
  int chain_extensions = 0;
};

struct PocketTable {
  PocketOptions options;
  ThreadStandard thread = ThreadStandard::awwa_taper;  // used
  std::vector<PocketCell> cells;                       // in catalog order
  const Catalog* catalog = nullptr;
  const Rules* rules = nullptr;
  std::shared_ptr<const void> keeps;  // both
  FromSettings from_settings;         // by whoever laid it
};

// The job behind a cell.
[[nodiscard]] Job pocket_job(const Pipe& pipe, NominalSize tap, Method method, const PocketOptions& options);

// One cell. Pure; `pipe` must be the catalog's.
[[nodiscard]] PocketCell pocket_cell(const Pipe& pipe, const Planner& planner, const PocketOptions& options);

[[nodiscard]] PocketTable pocket_table(const Planner& planner, PocketOptions options = {});

// Neighbouring classes of one series and size whose answers and diameters are the same, as a reader wants them on one
// line; by material, series and size. The weakest class stands for the threads: `governing` has the least complete
// threads.
struct PocketLine {
  const PocketCell* first = nullptr;
  const PocketCell* last = nullptr;
  const PocketCell* governing = nullptr;
};
[[nodiscard]] std::vector<PocketLine> pocket_lines(const PocketTable& table);

}  // namespace mainbore
