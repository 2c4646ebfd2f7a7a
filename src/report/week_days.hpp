// Days and crews of orders as a report puts them together: however they are written, one day is one day.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "mainbore/job.hpp"

namespace mainbore::report {

// 2026-05-04, 2026/5/4 with a time behind or without, 4 May 2026, May 4, 2026, 5/4/2026. Of the last the month comes
// first, as Americans write it, unless the first number can be no month. Nothing where it is no day of the calendar.
[[nodiscard]] std::optional<CalendarDay> day_written(std::string_view text);

// What days are sorted and told apart by: "2026-05-04", and the text itself where it names no day, behind all days.
[[nodiscard]] std::string day_key(std::string_view text);
// Whether such a key is of a day.
[[nodiscard]] inline bool names_day(std::string_view key) { return !key.empty() && key.front() != '~'; }
// As the report writes it.
[[nodiscard]] std::string day_shown(std::string_view text);

// Without case, and with one space where there are several.
[[nodiscard]] std::string crew_key(std::string_view crew);

}  // namespace mainbore::report
