#include <charconv>
#include <chrono>

#include "mainbore/job.hpp"

namespace mainbore {

bool CalendarDay::exists() const {
  return std::chrono::year_month_day(std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                                     std::chrono::day(static_cast<unsigned>(day)))
      .ok();
}

std::optional<CalendarDay> day_in(std::string_view text) {
  if (text.size() < 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  if (text.size() > 10 && text[10] != ' ' && text[10] != 'T') return std::nullopt;
  const auto number = [&](std::size_t at, std::size_t length) {
    int value = 0;
    const char* const end = text.data() + at + length;
    const auto [rest, error] = std::from_chars(text.data() + at, end, value);
    return error == std::errc() && rest == end ? value : -1;
  };
  const CalendarDay day{number(0, 4), number(5, 2), number(8, 2)};
  if (day.year < 0 || day.month < 0 || day.day < 0) return std::nullopt;
  return day;
}

}  // namespace mainbore
