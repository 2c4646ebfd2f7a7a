// The plan as JSON: what scripts rely on. Paths only grow; `format` is raised if one ever changes its meaning.
//
// A quantity is always {"value", "unit"}, in the units asked for; a nominal size is always in nominal inches, because it
// is a name. What is not known is left out, never null. The same plan gives the same bytes.
//
//     {"format": 1, "job": {...}, "verdict": "hold", "summary": "...", "main": {...}, "method": {...}, ...}
#pragma once

#include <cstdint>
#include <string>

#include "mainbore/job_file.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/plan.hpp"

namespace mainbore {

inline constexpr int plan_format = 1;

// How much of it is written. `decisions` is what a script decides by, without the words a crew works by: it leaves out
// materials, procedure, contingencies, record, title, detail and fix of findings, and of cautions all but the code, and
// is written several times as fast. Whatever it has is the same, and stands under the same paths.
enum class PlanScope : std::uint8_t { whole, decisions };

// `compact` is one line without a line end, for newline-delimited output; `pretty` ends its last line.
[[nodiscard]] std::string plan_to_json(const Plan& plan, UnitSystem system, JsonStyle style);
// The same behind what `out` already holds, for writing many.
void append_plan_json(std::string& out, const Plan& plan, UnitSystem system, JsonStyle style,
                      PlanScope scope = PlanScope::whole);

}  // namespace mainbore
