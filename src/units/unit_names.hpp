// What the units of a kind may be called, for those who describe what can be written.
#pragma once

#include <string_view>
#include <vector>

#include "mainbore/measure.hpp"

namespace mainbore {

// Every name parse_measure takes as a unit of the kind, in lower case: any case is read. Empty for threads, turns and
// ratios, which have none to convert.
[[nodiscard]] std::vector<std::string_view> unit_names(Kind kind);

}  // namespace mainbore
