// The tables of each language, and that they are complete. Each language is a namespace with the same functions.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "mainbore/finding_words.hpp"
#include "words/asking.hpp"
#include "words/card.hpp"
#include "words/cautions.hpp"
#include "words/drawings.hpp"
#include "words/load.hpp"
#include "words/questions.hpp"
#include "words/record.hpp"
#include "words/sheet.hpp"
#include "words/sheet_boxes.hpp"
#include "words/steps.hpp"

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

constexpr bool is_empty(const CautionText& words) { return words.brief.empty() || words.text.empty(); }
constexpr bool is_empty(const QuestionText& words) { return words.ask.empty(); }

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

// Of an enum that ends in `end`.
template <typename Id, typename Words>
using TableOf = std::array<Row<Id, Words>, static_cast<std::size_t>(Id::end)>;
using CardTable = TableOf<CardWord, std::string_view>;
using CautionTable = TableOf<CautionWord, CautionText>;
using StepTable = TableOf<StepWord, std::string_view>;
using LoadTable = TableOf<LoadWord, std::string_view>;
using SheetTable = TableOf<SheetWord, std::string_view>;
using DrawingTable = TableOf<DrawingWord, std::string_view>;
using BoxTable = TableOf<BoxWord, std::string_view>;
using RecordTable = TableOf<RecordWord, std::string_view>;
using AskTable = TableOf<AskWord, std::string_view>;
using QuestionTable = TableOf<QuestionWord, QuestionText>;

namespace english {
const FindingTable<FindingText>& findings();
const FindingTable<std::string_view>& finding_lines();
const FindingTable<std::string_view>& finding_blanks();
const CardTable& card();
const CautionTable& cautions();
const StepTable& steps();
const LoadTable& load();
const SheetTable& sheet();
const DrawingTable& drawings();
const BoxTable& sheet_boxes();
const AskTable& asking();
const RecordTable& record();
const AnswerWords& answers();
const QuestionTable& questions();
// What a crew calls a fact of a job; where it has no name for it, the path.
std::string_view fact(std::string_view path);
}  // namespace english

namespace spanish {
const FindingTable<FindingText>& findings();
const FindingTable<std::string_view>& finding_lines();
const FindingTable<std::string_view>& finding_blanks();
const CardTable& card();
const CautionTable& cautions();
const StepTable& steps();
const LoadTable& load();
const SheetTable& sheet();
const DrawingTable& drawings();
const BoxTable& sheet_boxes();
const AskTable& asking();
const RecordTable& record();
const AnswerWords& answers();
const QuestionTable& questions();
// The term of a table or a rule in Spanish; where none is known, the term itself.
std::string_view term(std::string_view english);
}  // namespace spanish

}  // namespace mainbore::words
