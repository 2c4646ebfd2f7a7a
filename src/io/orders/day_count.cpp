#include "io/orders/day_count.hpp"

#include <charconv>
#include <chrono>
#include <cmath>

#include "io/text/text_scan.hpp"

namespace mainbore::io {
namespace {

constexpr double seconds_of_a_day = 86400;

std::string two(unsigned number) { return (number < 10 ? "0" : "") + std::to_string(number); }

}  // namespace

bool is_dated(const JobField& field) { return field.path == "date" || field.path == "main.installed"; }

bool is_count_of_days(std::string_view unit) { return unit == "ms" || unit == "s"; }

std::optional<std::string> day_of_count(std::string_view cell, std::string_view unit) {
  double count = 0;
  const char* const end = cell.data() + cell.size();
  const auto [rest, fault] = std::from_chars(cell.data(), end, count);
  if (fault != std::errc() || rest != end) return std::nullopt;
  const double days = std::floor((unit == "ms" ? count / 1000 : count) / seconds_of_a_day);
  constexpr double hundred_thousand = 1e5;  // days: far beyond the years below, and no more than an int holds
  if (!(std::fabs(days) < hundred_thousand) || days == 0 || days == -1) return std::nullopt;
  const std::chrono::year_month_day day{std::chrono::sys_days(std::chrono::days(static_cast<int>(days)))};
  const int year = static_cast<int>(day.year());
  if (year < 1800 || year > 2100) return std::nullopt;
  return std::to_string(year) + '-' + two(static_cast<unsigned>(day.month())) + '-' +
         two(static_cast<unsigned>(day.day()));
}

bool looks_like_count(std::string_view cell) {
  const std::string_view digits = cell.starts_with('-') ? cell.substr(1) : cell;
  if (digits.find_first_not_of("0123456789") != std::string_view::npos) return false;
  // Of fewer digits it may be a day written without marks, of 12 and of 14 a day and its time.
  return digits.size() == 13 || (cell.starts_with('-') && digits.size() >= 9);
}

}  // namespace mainbore::io
