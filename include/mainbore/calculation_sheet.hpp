// The calculation sheet: what an engineer files with a tap.
//
// For each number that decides: the formula in symbols, the same with the figures, the result, its limit, the utilization
// (result over limit; of a least limit, limit over result: over 1 it is not met), and of each figure where it is from and how
// it was had. Then the stop numbers with the line that each comes from, findings with a limit of their own, what was not
// checked, the cautions, and lines to sign. Nothing is worked out here: it is Plan::calculations, printed to five significant
// digits, so that what is worked out by hand from the figures agrees with the result. The formulas can be read by a
// program (formulas.hpp), and a line can be taken apart by its words:
//
//       7. Complete threads in the wall: least wall [threads-in-wall]
//          formula  R = D / 2; ...; n = max(t - u, 0 in) / p
//          figures  R = 8.99 in / 2; ...
//          result   n = 3.4371 threads
//          limit    at least 2 threads; utilization 0.5819
//          with     D = 8.99 in: outside diameter; AWWA C151/A21.51-17 (published)
//
// In English. The same plan gives the same bytes.
//
//     std::cout << calculation_sheet_text(planner.plan(job), UnitSystem::us);
#pragma once

#include <string>

#include "mainbore/measure.hpp"
#include "mainbore/plan.hpp"

namespace mainbore {

// `width`: 40 to 200 columns.
[[nodiscard]] std::string calculation_sheet_text(const Plan& plan, UnitSystem system, int width = 80);
// One self-contained page, without script.
[[nodiscard]] std::string calculation_sheet_html(const Plan& plan, UnitSystem system);

}  // namespace mainbore
