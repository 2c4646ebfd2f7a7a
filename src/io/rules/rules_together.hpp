// The rules of a file judged together with all they are laid over: two that cannot both be, rows that decide nothing, rules
// looser than a safety default without a word why.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string_view>
#include <vector>

#include "io/text/source_text.hpp"
#include "mainbore/rules.hpp"

namespace mainbore::io {

inline constexpr std::uint32_t untouched = 0;

// What a file sets, and where it says so.
struct SetByFile {
  std::map<std::string_view, std::uint32_t> rules;
  std::array<std::vector<std::uint32_t>, 3> rows;  // by permission_fields(): of each row in force, or `untouched`
};

// A fault, and the node of the file that it is told at.
struct FaultAt {
  std::uint32_t node = 0;
  Problem problem;
};

// Told where the file touched either.
[[nodiscard]] std::vector<FaultAt> conflicting_rules(const Rules& rules, const SetByFile& set);
// Rows of this file that an earlier row leaves nothing to decide, or that allow less than the smallest tap.
[[nodiscard]] std::vector<FaultAt> rows_in_vain(const Rules& rules, const SetByFile& set);
// Rules looser than those that are `usual`. `rows_read`: false where a row was misread, and may be for other mains than it says.
[[nodiscard]] std::vector<FaultAt> looser_without_reason(const Catalog& catalog, const Rules& usual, const Rules& rules,
                                                         const SetByFile& set, bool rows_read);
// Those that gave one.
[[nodiscard]] std::vector<LooserRule> looser_rules(const Catalog& catalog, const Rules& usual, const Rules& rules);

}  // namespace mainbore::io
