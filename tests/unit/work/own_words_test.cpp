// The utility's own words stand beside the program's, wherever those are printed, and never in their place.
#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "mainbore/plan_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/sheet.hpp"
#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "support/plain_numbers.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/jobs.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

std::string in_one_line(const std::string& text) {
  std::string line;
  for (const char c : text) {
    if (c != '\n' && c != ' ') line += c;
    else if (!line.empty() && line.back() != ' ') line += ' ';
  }
  return line;
}
std::size_t times(const std::string& text, std::string_view part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE("each step and each caution of a plan has an id that a utility may have words on, and there are no others") {
  const auto known = own_words_ids();
  CHECK(std::is_sorted(known.begin(), known.end()));
  std::set<std::string_view> met;
  const auto take = [&](std::string_view id) {
    INFO(id);
    CHECK(std::binary_search(known.begin(), known.end(), id));
    met.insert(*std::find(known.begin(), known.end(), id));
  };
  WholeJobs random(71);
  for (int i = 0; i < 4000; ++i) {
    Job job = random.next();
    if (random.chance(50)) job.main.encased = true;
    const Plan plan = plan_of(job);
    if (plan.method.kind != Method::none) take(words_id_of(plan.method));
    for (const Caution& caution : cautions(plan, UnitSystem::us)) take(caution.code);
    for (const Step& step : procedure(plan, UnitSystem::us)) take(step.id);
    for (const Step& step : contingencies(plan, UnitSystem::us)) take(step.id);
  }
  Job large = sound_job();
  large.service.size = NominalSize::inches(1.5);
  const Rules no_saddles = rules_of(R"({"saddle": {"largest": []}, "sleeve": {"largest": []}})");
  const Plan series = plan_under(large, no_saddles);
  take(words_id_of(series.method));
  for (const Step& step : procedure(series, UnitSystem::us)) take(step.id);
  for (const std::string_view id : known) {
    if (id == "prepare.fittings") continue;  // with a list of approved fittings alone
    INFO(id);
    CHECK(met.contains(id));
  }
}

TEST_CASE("each id is in the page on rules") {
  std::ifstream in(std::string(MAINBORE_SOURCE_DIR) + "/docs/rules.md", std::ios::binary);
  const std::string page{std::istreambuf_iterator<char>(in), {}};
  for (const std::string_view id : own_words_ids()) {
    INFO(id);
    CHECK(page.find('`' + std::string(id) + '`') != std::string::npos);
  }
}

TEST_CASE("a utility's words stand on every page, escaped, and take nothing away") {
  const std::string words = "Two <b>men</b> & \\\"one\\\" spotter";
  const Rules rules = rules_of(R"({"words": {"caution.eyes": ")" + words + R"(", "prepare.people": ")" + words +
                               R"(", "trouble.jams": ")" + words + R"(", "caution.who-decides": ")" + words +
                               R"(", "method.direct": {"text": ")" + words + R"(", "reference": "Standard 7"}}})");
  const Plan plain = plan_of(sound_job());
  const Plan own = plan_under(sound_job(), rules);
  CHECK(own.verdict == plain.verdict);
  const std::string said = "The utility: Two <b>men</b> & \"one\" spotter";
  const std::string text = in_one_line(text_report(own));
  CHECK(times(text, said) >= 4);
  const std::string html = plain_numbers(sheet_html(own, UnitSystem::us));
  CHECK(times(html, "<b>men</b>") == 0);
  CHECK(times(html, "The utility: Two &lt;b&gt;men&lt;/b&gt; &amp; ") >= 4);
  const std::string json = plan_to_json(own, UnitSystem::us, JsonStyle::compact);
  CHECK(times(json, R"("utility_words":"Two <b>men</b> & \"one\" spotter")") == 5);
  // Every caution and step is still there, word for word.
  const auto before = cautions(plain, UnitSystem::us);
  const auto after = cautions(own, UnitSystem::us);
  REQUIRE(before.size() == after.size());
  for (std::size_t i = 0; i < before.size(); ++i) {
    CHECK(before[i].text == after[i].text);
    CHECK(in_one_line(text_report(own)).find(in_one_line(std::string(before[i].text.view()))) != std::string::npos);
  }
  CHECK(times(json, "utility_words") == 5);
  CHECK(times(plan_to_json(plain, UnitSystem::us, JsonStyle::compact), "utility_words") == 0);
}

TEST_CASE("words on what there is no such step of are refused with the nearest, and null takes words away") {
  const std::vector<RuleText> wrong = {{"own.json", R"({"words": {"caution.eye": "x"}})"}};
  const RulesFile read = load_rules(Catalog::builtin(), wrong);
  REQUIRE(read.diagnostics.size() == 1);
  CHECK(read.diagnostics[0].code == "rules.unknown-key");
  CHECK(read.diagnostics[0].help.find("caution.eyes") != std::string::npos);
  const std::vector<RuleText> two = {{"one.json", R"({"words": {"caution.eyes": "Shields", "set.stop": "By two"}})"},
                                     {"two.json", R"({"words": {"caution.eyes": null, "set.stop": "By one"}})"}};
  const RulesFile laid = load_rules(Catalog::builtin(), two);
  REQUIRE(laid.rules);
  CHECK(own_words(*laid.rules, "caution.eyes") == nullptr);
  CHECK(own_words(*laid.rules, "set.stop")->text == "By one");
  for (const std::string& text :
       {std::string(R"({"words": {"set.stop": ""}})"), std::string(R"({"words": {"set.stop": {}}})"),
        R"({"words": {"set.stop": ")" + std::string(301, 'x') + "\"}}"}) {
    CHECK_FALSE(load_rules(Catalog::builtin(), std::vector<RuleText>{{"own.json", text}}).rules);
  }
}
