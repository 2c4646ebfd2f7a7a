// The tables of each language, and that they are complete. Each language is a namespace with the same functions.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "mainbore/wording.hpp"

namespace mainbore::words {

template <typename Id, typename Words>
struct Row {
  Id id;
  Words words;
};

constexpr bool is_empty(std::string_view words) { return words.empty(); }
constexpr bool is_empty(const FindingText& words) {
  return words.title.empty() || words.detail.empty() || words.fix.empty();
}

// Each id of an enum once, in its order, each with words.
template <typename Id, typename Words, std::size_t N>
constexpr bool complete(const std::array<Row<Id, Words>, N>& table) {
  for (std::size_t i = 0; i < N; ++i) {
    if (table[i].id != static_cast<Id>(i) || is_empty(table[i].words)) return false;
  }
  return true;
}

template <typename Words>
using FindingTable = std::array<Row<FindingCode, Words>, finding_codes.size()>;

namespace english {
const FindingTable<FindingText>& findings();
const FindingTable<std::string_view>& finding_lines();
const FindingTable<std::string_view>& finding_blanks();
}  // namespace english

}  // namespace mainbore::words
