// What a plan rests on: one list, from which every reader prints.
//
// Each item is a value the plan was made with, where it came from, the source and how it was had. Text, sheet and JSON name
// the same sources because all of them print this list; whatever is only recalled is told to each in the same words.
//
//     for (const Evidence& item : evidence_of(plan)) std::cout << words_of(item) << ": " << name_of(item.basis.how) << '\n';
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "mainbore/finding.hpp"
#include "mainbore/plan.hpp"

namespace mainbore {

// Where a value came from: the job, a reading at the pipe, the tables, a rule, or the safe side.
enum class From : std::uint8_t { given, measured, table, rule, assumed };
inline constexpr std::array<std::string_view, 5> from_names = {"given", "measured", "table", "rule", "assumed"};
[[nodiscard]] constexpr std::string_view name_of(From from) { return from_names[static_cast<std::size_t>(from)]; }

struct Evidence {
  std::string_view what;               // "wall tolerance"; empty where a finding rests on it
  std::optional<FindingCode> finding;  // that rests on it
  Detail value;                        // nothing where it is no one number
  From from = From::table;
  Basis basis;
};

// In the order of the plan: the pipe, the tap, the pressures, the readings, the rest of the work, the findings. An item is
// there once. Of a verdict alone it is not complete.
[[nodiscard]] std::vector<Evidence> evidence_of(const Plan& plan);

// "wall tolerance", or the title of the finding.
[[nodiscard]] std::string_view words_of(const Evidence& item);

// Said wherever a value that is recalled, and not read, is told of.
inline constexpr std::string_view check_this_value = "recalled: check this value";
[[nodiscard]] inline bool is_recalled(const Evidence& item) {
  return !item.basis.utility && item.basis.how == How::memory;
}

}  // namespace mainbore
