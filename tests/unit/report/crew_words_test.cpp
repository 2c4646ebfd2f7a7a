// What a crew is told, over any job: what a step uses is on the truck, and every number can be held against a tape, a gauge
// or a watch.
#include <algorithm>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "mainbore/report.hpp"
#include "mainbore/sheet.hpp"
#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "support/one_line.hpp"
#include "support/plain_numbers.hpp"
#include "unit/planning/whole_jobs.hpp"
#include "unit/report/example_plans.hpp"
#include "words/tables.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

void loads_what_steps_use(const Plan& plan) {
  std::set<std::string_view> used;
  for (const auto& steps : {procedure(plan, UnitSystem::us), contingencies(plan, UnitSystem::us)}) {
    for (const Step& step : steps) used.insert(step.uses.begin(), step.uses.end());
  }
  std::set<std::string_view> loaded;
  for (const LoadItem& item : load_list(plan, UnitSystem::us)) CHECK(loaded.insert(item.key).second);
  CHECK(used == loaded);
}

// The words a person sees.
std::string without_markup(const std::string& page) {
  std::string text;
  bool inside = false;
  for (std::size_t i = page.find("<body>"); i < page.size(); ++i) {
    if (page[i] == '<') inside = true;
    if (!inside) text += page[i];
    if (page[i] == '>') {
      inside = false;
      text += ' ';
    }
  }
  return text;
}

void can_be_gauged(const std::string& text) {
  static const std::regex unreadable(R"(\d\.\d+ (ft|min|psi|mi)\b(?!/)|\btons?\b)");
  std::smatch found;
  if (!std::regex_search(text, found, unreadable)) return;
  const auto at = static_cast<std::size_t>(found.position());
  FAIL_CHECK("cannot be gauged: ..." << text.substr(at > 60 ? at - 60 : 0, 120));
}

void crew_can_gauge(const Plan& plan) {
  can_be_gauged(
      text_report(plan, {.units = UnitSystem::us, .why = false, .steps = true, .materials = true, .width = 200}));
  can_be_gauged(without_markup(plain_numbers(sheet_html(plan, UnitSystem::us))));
}

}  // namespace

TEST_CASE("what is loaded is what the steps use, in each example and in random jobs") {
  for (const Plan& plan : example_plans()) loads_what_steps_use(plan);
  WholeJobs random(41);
  for (int i = random_jobs(1000); i > 0; --i) loads_what_steps_use(plan_of(random.next()));
}

TEST_CASE("no crew is given a decimal of a foot, a minute or a psi, or a ton") {
  for (const Plan& plan : example_plans()) crew_can_gauge(plan);
  WholeJobs random(42);
  for (int i = random_jobs(400); i > 0; --i) crew_can_gauge(plan_of(random.next()));
}

namespace {

// What stands between the figures of a sentence, where it is long enough to be told from a name.
void add_pieces(std::vector<std::string>& pieces, std::string_view sentence) {
  std::string piece;
  for (const char c : std::string(sentence) + '|') {
    const bool mark = c == '{' || c == '}' || c == '[' || c == ']' || c == '|';
    if (!mark) {
      piece += c;
      continue;
    }
    if (piece.size() >= 14 && piece.find(' ', 1) < piece.size() - 1) pieces.push_back(piece);
    piece.clear();
  }
}

std::vector<std::string> english_pieces() {
  std::vector<std::string> pieces;
  for (const auto& row : words::english::steps()) add_pieces(pieces, row.words);
  for (const auto& row : words::english::load()) add_pieces(pieces, row.words);
  for (const auto& row : words::english::sheet()) add_pieces(pieces, row.words);
  for (const auto& row : words::english::drawings()) add_pieces(pieces, row.words);
  for (const auto& row : words::english::card()) add_pieces(pieces, row.words);
  for (const auto& row : words::english::finding_lines()) add_pieces(pieces, row.words);
  for (const auto& row : words::english::cautions()) add_pieces(pieces, row.words.text);
  for (const auto& row : words::english::findings()) {
    add_pieces(pieces, row.words.detail);
    add_pieces(pieces, row.words.fix);
  }
  return pieces;
}

}  // namespace

TEST_CASE("a Spanish plan and its sheet have no sentence in English") {
  const std::vector<std::string> pieces = english_pieces();
  const Audience spanish{UnitSystem::us, Language::spanish};
  std::vector<Plan> plans = example_plans();
  WholeJobs jobs(3);
  for (int i = 0; i < 60; ++i) plans.push_back(plan_of(jobs.next()));
  for (const Plan& plan : plans) {
    const std::string text =
        on_one_line(text_report(plan, {.language = Language::spanish, .why = false, .steps = true, .materials = true}));
    const std::string page = plain_numbers(sheet_html(plan, spanish));
    // The titles of publications stand last, on a screen, in the language they have.
    const std::string sheet = on_one_line(without_markup(page.substr(0, page.find("class=\"sources\""))));
    CHECK(sheet.find("sin revisar por cuadrilla") != std::string::npos);
    for (const std::string& piece : pieces) {
      INFO(piece);
      REQUIRE(text.find(piece) == std::string::npos);
      REQUIRE(sheet.find(piece) == std::string::npos);
    }
  }
}
