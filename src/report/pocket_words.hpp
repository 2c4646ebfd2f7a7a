// Words that the pocket table and the list of pipes that fit have in common.
#pragma once

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "mainbore/pocket_table.hpp"

namespace mainbore::report {

// "PC 350", "TC 50 to TC 56"; empty where the series knows no classes.
[[nodiscard]] std::string class_words(const Pipe& first, const Pipe& last);
// "1 in", "1 in after a hold (wall not measured), else 5/8 in", "none (direct tap not allowed)".
[[nodiscard]] std::string tap_words(const PocketTap& tap);
// The same taps, for the same reasons.
[[nodiscard]] bool same_answer(const PocketCell& a, const PocketCell& b);

// The table as cells of text, the same for every way of printing it.
inline constexpr std::size_t pocket_columns = 8;
using PocketRow = std::array<std::string, pocket_columns>;
struct PocketBlock {
  std::string title;  // of the series
  std::vector<PocketRow> rows;
};
struct PocketSheet {
  std::string title;
  std::vector<std::string> conditions;
  PocketRow headings;  // with units
  std::vector<PocketBlock> blocks;
  std::vector<std::pair<std::string, std::string>> marks;  // those used, and what they mean
};
[[nodiscard]] PocketSheet pocket_sheet(const PocketTable& table, UnitSystem system);

}  // namespace mainbore::report
