#include "words/findings.hpp"
#include "words/tables.hpp"
#include "words/terms.hpp"

namespace mainbore::words {
namespace {

// The row of an id, from the table of a language.
template <typename Table, typename Id>
const auto& words_of(const Table& (*english)(), const Table& (*spanish)(), Id id, Language language) {
  const Table& table = language == Language::spanish ? spanish() : english();
  return table[static_cast<std::size_t>(id)].words;
}

}  // namespace

const FindingText& finding_text(FindingCode code, Language language) {
  return words_of(english::findings, spanish::findings, code, language);
}

std::string_view finding_line(FindingCode code, Language language) {
  return words_of(english::finding_lines, spanish::finding_lines, code, language);
}

std::string_view finding_blank(FindingCode code, Language language) {
  return words_of(english::finding_blanks, spanish::finding_blanks, code, language);
}

std::string_view say(CardWord word, Language language) {
  return words_of(english::card, spanish::card, word, language);
}

std::string_view say(StepWord word, Language language) {
  return words_of(english::steps, spanish::steps, word, language);
}

std::string_view say(LoadWord word, Language language) {
  return words_of(english::load, spanish::load, word, language);
}

std::string_view say(SheetWord word, Language language) {
  return words_of(english::sheet, spanish::sheet, word, language);
}

std::string_view say(DrawingWord word, Language language) {
  return words_of(english::drawings, spanish::drawings, word, language);
}

const CautionText& caution_text(CautionWord word, Language language) {
  return words_of(english::cautions, spanish::cautions, word, language);
}

std::string_view say(BoxWord word, Language language) {
  return words_of(english::sheet_boxes, spanish::sheet_boxes, word, language);
}

std::string_view say(RecordWord word, Language language) {
  return words_of(english::record, spanish::record, word, language);
}

std::string_view say(AskWord word, Language language) {
  return words_of(english::asking, spanish::asking, word, language);
}

const QuestionText& question_text(QuestionWord word, Language language) {
  return words_of(english::questions, spanish::questions, word, language);
}

const AnswerWords& answer_words(Language language) {
  return language == Language::spanish ? spanish::answers() : english::answers();
}

std::string_view term(std::string_view english, Language language) {
  return language == Language::spanish ? spanish::term(english) : english;
}

std::string_view fact(std::string_view path, Language language) {
  return language == Language::spanish ? spanish::term(path) : english::fact(path);
}

}  // namespace mainbore::words
