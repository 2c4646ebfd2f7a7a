// The main of a job, as the rows of rules ask about it.
#pragma once

#include <string_view>

#include "planning/checks.hpp"
#include "rules/tap_limits.hpp"

namespace mainbore::planning {

// A year is as the record has it; readings count with what the instrument may be off.
[[nodiscard]] rules::MainInQuestion main_in_question(const Context& context, const ResolvedMain& main);

// The path of the fact to be given so that it is known whether a row is for the main.
[[nodiscard]] std::string_view fact_that_settles(rules::AsksOf what);

}  // namespace mainbore::planning
