// The table of questions against the table of facts.
#include "interview/questions.hpp"

#include <set>

#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::interview;

namespace {

const words::QuestionText& text_of(const Question& question) {
  return words::question_text(question.words, Language::english);
}

}  // namespace

TEST_CASE("every question asks for a fact of the field table, and none twice") {
  std::set<std::string_view> asked;
  for (const Section& section : sections()) {
    INFO(say(section.title, Language::english));
    REQUIRE_FALSE(section.questions.empty());
    for (std::size_t i = 0; i < section.questions.size(); ++i) {
      const Question& question = section.questions[i];
      const words::QuestionText& asks = text_of(question);
      INFO(asks.ask);
      CHECK(asks.ask.ends_with("?"));
      if (question.opens_section()) {
        CHECK(i == 0);
        CHECK_FALSE(text_of(question).more.empty());
        continue;
      }
      REQUIRE(question.field() != nullptr);
      CHECK(asked.insert(question.path).second);
      CHECK((question.path.find("[]") != std::string_view::npos) == !section.list.empty());
    }
    if (!section.list.empty()) CHECK(section.questions.front().opens_section());
  }
}

TEST_CASE("a fact that a plan needs is asked for, and the question says how to find it") {
  for (const io::JobField& field : io::job_fields()) {
    if (field.need == io::Need::optional) continue;
    INFO(field.path);
    bool asked = false;
    for (const Section& section : sections()) {
      for (const Question& question : section.questions) {
        if (question.path != field.path) continue;
        asked = true;
        if (section.list.empty() && !section.left_out) CHECK_FALSE(text_of(question).more.empty());
        if (field.path.find("[]") != std::string_view::npos || field.need == io::Need::machine_figures) {
          CHECK(section.left_out);
        }
      }
    }
    CHECK(asked);
  }
}

// Whoever adds a fact decides whether it is asked for.
TEST_CASE("the facts that nobody is asked for are these") {
  std::set<std::string_view> silent;
  for (const io::JobField& field : io::job_fields()) silent.insert(field.path);
  for (const Section& section : sections()) {
    for (const Question& question : section.questions) silent.erase(question.path);
  }
  const std::set<std::string_view> expected = {"main.pressurized", "service.line.friction", "service.line.c",
                                               "machine.profile"};
  CHECK(silent == expected);
}
