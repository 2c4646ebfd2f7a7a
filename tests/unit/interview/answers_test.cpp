// What is kept of the answers, and what of it becomes a fact.
#include "interview/answers.hpp"

#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::interview;

namespace {

// The place of a question by its path; of the one that opens a section by the section's title.
Place place_of(std::string_view name, std::size_t element = 0) {
  for (std::size_t s = 0; s < sections().size(); ++s) {
    const Section& section = sections()[s];
    for (std::size_t q = 0; q < section.questions.size(); ++q) {
      const Question& question = section.questions[q];
      if (question.opens_section() ? say(section.title, Language::english) == name : question.path == name)
        return {s, element, q};
    }
  }
  throw std::runtime_error("no such question");
}

Answer value(std::string text) { return {Answer::Kind::value, std::move(text)}; }
const Answer open{Answer::Kind::not_known, {}};
const Answer no_more{Answer::Kind::nothing_more, {}};

std::string paths(const std::vector<Setting>& facts) {
  std::string text;
  for (const Setting& fact : facts) text += fact.path + '=' + fact.value + ' ';
  return text;
}

}  // namespace

TEST_CASE("facts come in the order of the questions, whatever the order of the answers") {
  Answers answers(Catalog::builtin());
  answers.put(place_of("service.size"), value("1 in"));
  answers.put(place_of("main.size"), value("8 in"));
  answers.put(place_of("main.class"), open);
  CHECK(paths(answers.facts()) == "main.size=8 in service.size=1 in ");
  CHECK(paths(answers.facts(place_of("service.size"))) == "main.size=8 in ");
  CHECK(answers.job().main.size == NominalSize::inches(8));
}

TEST_CASE("a list ends where there is nothing more, and what was answered behind it is forgotten") {
  Answers answers(Catalog::builtin());
  answers.put(place_of("nearby[].what", 0), value("bell"));
  answers.put(place_of("nearby[].along", 0), value("7 ft"));
  answers.put(place_of("nearby[].what", 1), value("tap"));
  answers.put(place_of("nearby[].along", 1), value("9 ft"));
  CHECK(answers.facts().size() == 4);
  answers.put(place_of("nearby[].what", 1), no_more);
  CHECK_FALSE(answers.goes_on(place_of("nearby[].what", 1)));
  answers.drop_rest(place_of("nearby[].what", 1));
  CHECK(paths(answers.facts()) == "nearby[0].what=bell nearby[0].along=7 ft ");
  answers.put(place_of("nearby[].what", 0), no_more);
  answers.drop_rest(place_of("nearby[].what", 0));
  CHECK(paths(answers.facts()) == "nearby=none ");
}

TEST_CASE("of facts that stand or fall together none is told when one is not known") {
  Answers answers(Catalog::builtin());
  answers.put(place_of("nearby[].what", 0), value("bell"));
  answers.put(place_of("nearby[].along", 0), open);
  CHECK(answers.facts().empty());
  answers.put(place_of("machine.title"), value("ours"));
  answers.put(place_of("machine.bar_travel"), open);  // this one may be left out
  CHECK(answers.facts().size() == 1);
  answers.put(place_of("machine.body_rating"), open);
  CHECK(answers.facts().empty());
}

TEST_CASE("what is still to be found is what no plan can do without") {
  std::vector<std::string_view> open_paths;
  for (const Question* question : still_to_find({{"main.size", "8 in", ""}})) open_paths.push_back(question->path);
  CHECK(open_paths == std::vector<std::string_view>{"main.material", "main.pressure", "service.size"});
}
