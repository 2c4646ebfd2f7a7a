// Days as databases and map services count them: milliseconds or seconds since the first of January 1970, universal time.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "io/job/job_fields.hpp"

namespace mainbore::io {

// Whether a column of this fact may hold such a count, with "ms" or "s" as its unit.
[[nodiscard]] bool is_dated(const JobField& field);
[[nodiscard]] bool is_count_of_days(std::string_view unit);

// The day of a count: "284014800000" in "ms" is "1979-01-01". Nothing where the cell is no such count, and where it lies
// within a day of 1970 or outside the years 1800 to 2100, as a year written plainly does.
[[nodiscard]] std::optional<std::string> day_of_count(std::string_view cell, std::string_view unit);

// Whether a number without a unit is hardly anything but such a count.
[[nodiscard]] bool looks_like_count(std::string_view cell);

}  // namespace mainbore::io
