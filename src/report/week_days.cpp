#include "report/week_days.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "job/month_names.hpp"
#include "text/digit.hpp"

namespace mainbore::report {
namespace {

using text::is_digit;
constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
constexpr bool is_letter(char c) { return lower(c) >= 'a' && lower(c) <= 'z'; }

struct Part {
  int number = -1;  // else a month's name
  int month = 0;
  std::size_t digits = 0;
};

// "May", "jan", "SEPT": by the first letters, three at the least.
int month_named(std::string_view word) {
  const auto alike = [](char a, char b) { return lower(a) == lower(b); };
  if (word.size() < 3) return 0;
  for (std::size_t i = 0; i < month_names.size(); ++i) {
    const std::string_view name = month_names[i].substr(0, word.size());
    if (std::equal(word.begin(), word.end(), name.begin(), name.end(), alike)) return static_cast<int>(i) + 1;
  }
  return 0;
}

// The first three numbers and names; a time behind them is no part of the day.
std::vector<Part> parts_of(std::string_view text) {
  std::vector<Part> parts;
  for (std::size_t at = 0; at < text.size() && parts.size() < 3;) {
    const std::size_t begin = at;
    Part part;
    if (is_digit(text[at])) {
      part.number = 0;
      for (; at < text.size() && is_digit(text[at]) && at - begin < 5; ++at)
        part.number = 10 * part.number + (text[at] - '0');
      part.digits = at - begin;
    } else if (is_letter(text[at])) {
      while (at < text.size() && is_letter(text[at])) ++at;
      part.month = month_named(text.substr(begin, at - begin));
      if (part.month == 0) continue;  // the name of a day, "th"
    } else {
      ++at;
      continue;
    }
    parts.push_back(part);
  }
  return parts;
}

}  // namespace

std::optional<CalendarDay> day_written(std::string_view text) {
  const std::vector<Part> parts = parts_of(text);
  if (parts.size() < 3) return std::nullopt;
  CalendarDay day;
  const auto [a, b, c] = std::array{parts[0], parts[1], parts[2]};
  if (a.month == 0 && b.month == 0 && c.month == 0 && a.digits == 4) day = {a.number, b.number, c.number};
  else if (a.month > 0 && b.number >= 0 && c.digits == 4) day = {c.number, a.month, b.number};
  else if (b.month > 0 && a.number >= 0 && c.digits == 4) day = {c.number, b.month, a.number};
  else if (a.number > 12 && b.number >= 0 && c.digits == 4) day = {c.number, b.number, a.number};
  else if (a.number >= 0 && b.number >= 0 && c.digits == 4) day = {c.number, a.number, b.number};
  else return std::nullopt;
  return day.exists() ? std::optional(day) : std::nullopt;
}

std::string day_key(std::string_view text) {
  const auto day = day_written(text);
  if (!day) return text.empty() ? std::string() : '~' + std::string(text);
  const auto two = [](int number) { return (number < 10 ? "0" : "") + std::to_string(number); };
  std::string year = std::to_string(day->year);
  year.insert(0, 4 - std::min<std::size_t>(4, year.size()), '0');
  return year + '-' + two(day->month) + '-' + two(day->day);
}

std::string day_shown(std::string_view text) { return day_written(text) ? day_key(text) : std::string(text); }

std::string crew_key(std::string_view crew) {
  std::string key;
  for (const char c : crew) {
    if (c == ' ' && (key.empty() || key.back() == ' ')) continue;
    key += lower(c);
  }
  while (key.ends_with(' ')) key.pop_back();
  return key;
}

}  // namespace mainbore::report
