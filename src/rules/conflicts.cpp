#include "rules/conflicts.hpp"

#include <algorithm>

#include "mainbore/rule_fields.hpp"

namespace mainbore::rules {
namespace {

const RuleField& field_at(std::string_view path) {
  const auto fields = rule_fields();
  return *std::find_if(fields.begin(), fields.end(), [&](const RuleField& field) { return field.path == path; });
}

}  // namespace

std::vector<RuleConflict> conflicts(const Rules& rules) {
  std::vector<RuleConflict> found;
  for (const RuleEnds& ends : rule_ends()) {
    const auto lower = number_of(value_of(rules, field_at(ends.lower)));
    const auto upper = number_of(value_of(rules, field_at(ends.upper)));
    if (!lower || !upper) continue;
    if (*upper < *lower) found.push_back({ends.lower, ends.upper, Clash::above});
    else if (!ends.may_meet && *upper == *lower) found.push_back({ends.lower, ends.upper, Clash::equal});
  }
  constexpr std::string_view clock = "place.default_clock";
  const double elevation = rules.place.default_clock.value.elevation_degrees();
  if (elevation < rules.place.lowest_elevation.value) {
    found.push_back({clock, "place.lowest_elevation", Clash::below});
  } else if (elevation > rules.place.highest_elevation.value) {
    found.push_back({clock, "place.highest_elevation", Clash::above});
  }
  return found;
}

bool leaves_nothing_to(const TapLimit& earlier, const TapLimit& later) {
  const auto holds_all = [](const auto& few, const auto& many) {
    return many.empty() || (!few.empty() && std::all_of(few.begin(), few.end(), [&](const auto& one) {
             return std::find(many.begin(), many.end(), one) != many.end();
           }));
  };
  // An end that the earlier row does not set bounds nothing.
  const auto no_lower = [](const auto& first, const auto& second) { return !first || (second && *second >= *first); };
  const auto no_higher = [](const auto& first, const auto& second) { return !first || (second && *second <= *first); };
  return holds_all(later.materials, earlier.materials) && holds_all(later.pipes, earlier.pipes) &&
         holds_all(later.series, earlier.series) && no_lower(earlier.main_from, later.main_from) &&
         no_lower(earlier.main_above, later.main_above) && no_higher(earlier.main_to, later.main_to) &&
         no_higher(earlier.main_below, later.main_below) && no_lower(earlier.wall_from, later.wall_from) &&
         no_higher(earlier.wall_below, later.wall_below) && no_lower(earlier.bore_from, later.bore_from) &&
         no_higher(earlier.bore_to, later.bore_to) && no_lower(earlier.bore_above, later.bore_above) &&
         no_higher(earlier.bore_below, later.bore_below) && no_lower(earlier.laid_from, later.laid_from) &&
         no_higher(earlier.laid_to, later.laid_to);
}

}  // namespace mainbore::rules
