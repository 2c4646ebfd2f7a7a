// Sentences in every language: each with the same figures, well formed, and none left out.
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/stop_number.hpp"
#include "mainbore/work.hpp"
#include "report/text_page.hpp"
#include "support/catch.hpp"
#include "words/fill.hpp"
#include "words/findings.hpp"
#include "words/tables.hpp"
#include "words/terms.hpp"

namespace mainbore {
namespace {

using words::figures_in;

void check_form(std::string_view sentence) {
  INFO(sentence);
  int depth = 0;
  for (const char c : sentence) {
    if (c == '[') ++depth;
    if (c == ']') CHECK(--depth >= 0);
    if (c == '|') CHECK(depth > 0);
  }
  CHECK(depth == 0);
}

void check_pair(std::string_view english, std::string_view other) {
  INFO(english << "\n" << other);
  CHECK(figures_in(english) == figures_in(other));
  check_form(english);
  check_form(other);
}

}  // namespace

TEST_CASE("the findings of every language have the same figures") {
  const auto& english = words::english::findings();
  const auto& spanish = words::spanish::findings();
  for (std::size_t i = 0; i < english.size(); ++i) {
    check_pair(english[i].words.detail, spanish[i].words.detail);
    check_pair(english[i].words.fix, spanish[i].words.fix);
    CHECK(english[i].words.title != spanish[i].words.title);
    check_pair(words::english::finding_lines()[i].words, words::spanish::finding_lines()[i].words);
    CHECK(figures_in(words::spanish::finding_blanks()[i].words).empty());
  }
}

TEST_CASE("the card and the cautions of every language have the same figures") {
  for (std::size_t i = 0; i < words::english::card().size(); ++i) {
    check_pair(words::english::card()[i].words, words::spanish::card()[i].words);
  }
  for (std::size_t i = 0; i < words::english::cautions().size(); ++i) {
    const words::CautionText& english = words::english::cautions()[i].words;
    const words::CautionText& spanish = words::spanish::cautions()[i].words;
    check_pair(english.text, spanish.text);
    CHECK(figures_in(english.brief).empty());
    CHECK(figures_in(spanish.brief).empty());
    INFO(spanish.brief);
    CHECK(report::columns(spanish.brief) <= 37);
  }
}

TEST_CASE("the order of work and the load list of every language have the same figures") {
  for (std::size_t i = 0; i < words::english::steps().size(); ++i)
    check_pair(words::english::steps()[i].words, words::spanish::steps()[i].words);
  for (std::size_t i = 0; i < words::english::load().size(); ++i)
    check_pair(words::english::load()[i].words, words::spanish::load()[i].words);
}

TEST_CASE("the sheet and its drawings of every language have the same figures") {
  for (std::size_t i = 0; i < words::english::sheet().size(); ++i)
    check_pair(words::english::sheet()[i].words, words::spanish::sheet()[i].words);
  for (std::size_t i = 0; i < words::english::drawings().size(); ++i)
    check_pair(words::english::drawings()[i].words, words::spanish::drawings()[i].words);
  for (const RecordField& field : record_fields()) CHECK(words::term(field.label, Language::spanish) != field.label);
}

TEST_CASE("the questions and the asking of every language have the same figures") {
  for (std::size_t i = 0; i < words::english::questions().size(); ++i) {
    const words::QuestionText& english = words::english::questions()[i].words;
    const words::QuestionText& spanish = words::spanish::questions()[i].words;
    INFO(spanish.ask);
    CHECK(english.ask != spanish.ask);
    CHECK(english.more.empty() == spanish.more.empty());
    CHECK(spanish.ask.ends_with("?"));
    CHECK(spanish.ask.find("\u00bf") != std::string_view::npos);
  }
  for (std::size_t i = 0; i < words::english::asking().size(); ++i)
    check_pair(words::english::asking()[i].words, words::spanish::asking()[i].words);
  for (std::size_t i = 0; i < words::english::record().size(); ++i)
    check_pair(words::english::record()[i].words, words::spanish::record()[i].words);
}

TEST_CASE("a figure that is not known takes the other words, or is said to be unknown") {
  CHECK(words::filled("at {a}", {{"a", "5 in"}}) == "at 5 in");
  CHECK(words::filled("at {a}", {{"a", ""}}) == "at (not known)");
  CHECK(words::filled("a {a}", {}, Language::spanish) == "a (sin dato)");
  CHECK(words::filled("[at {a}|near] it", {{"a", "5 in"}}) == "at 5 in it");
  CHECK(words::filled("[at {a}|near] it", {}) == "near it");
  CHECK(words::filled("[{a}[, {b}|]|none]", {{"a", "1"}}) == "1");
  CHECK(words::filled("[{a}[, {b}|]|none]", {{"a", "1"}, {"b", "2"}}) == "1, 2");
}

TEST_CASE("every material, and everything near a tap, has a Spanish term") {
  for (const std::string_view name : material_names) {
    if (name == "PVC" || name == "PVCO") continue;
    CHECK(words::term(name, Language::spanish) != name);
  }
  for (const std::string_view name : nearby_names) CHECK(words::term(name, Language::spanish) != name);
  CHECK(words::term("steel", Language::english) == "steel");
  CHECK(words::term("Ashby Vale", Language::spanish) == "Ashby Vale");
}

}  // namespace mainbore
