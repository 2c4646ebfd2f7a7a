// The interview, held over strings.
#include <array>
#include <random>
#include <set>

#include "mainbore/plan.hpp"
#include "report/text_page.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/interview/person.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

const Replies four_facts = {{"What is the main made of?", "DI"},
                            {"nominal size of the main?", "8 in"},
                            {"highest pressure", "82 psi"},
                            {"nominal size of the service?", "1 in"}};

Replies with(Replies more, const Replies& base = four_facts) {
  more.insert(more.end(), base.begin(), base.end());
  return more;
}

Job job_of(const Interviewed& told) {
  const std::string text = settings_to_json(told.facts.value(), Catalog::builtin());
  JobFile read = read_job(text, "job.json", Catalog::builtin());
  for (const Diagnostic& d : read.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  REQUIRE(read.job);
  return *std::move(read.job);
}

}  // namespace

TEST_CASE("Enter to everything tells nothing, and says what must be found out") {
  const Interviewed told = interviewed({});
  REQUIRE(told.facts);
  CHECK(told.facts->empty());
  CHECK(told.heard_of("main.material, main.size, main.pressure, service.size"));
  const std::string closing = interview::closing_words(*told.facts, "job.json");
  CHECK(closing.find("4 facts are still to be found out") != std::string::npos);
  CHECK(closing.find("mainbore identify") != std::string::npos);
  CHECK(closing.find("--set service.size=\"...\"") != std::string::npos);
}

TEST_CASE("don't know is an answer to every question, in any spelling of it") {
  for (const std::string spelling :
       {"don't know", "Dont know", "don\u2019t know", "\"don't know\"", "UNKNOWN", "no idea"}) {
    const Interviewed told = interviewed({}, spelling);
    REQUIRE(told.facts);
    REQUIRE(told.facts->size() == 1);  // the one fact for which a job has a word
    CHECK(told.fact("main.carries") == "unknown");
  }
  // Where every section is gone through.
  const Interviewed told = interviewed({{"yes or no [", "yes"}}, "don't know");
  REQUIRE(told.facts);
}

TEST_CASE("nothing but plain short lines is written") {
  const Interviewed told =
      interviewed(with({{"dug up", "?"}, {"dug up", ""}, {"Where is the tap wanted?", "M\u00fchlgasse 3"}}));
  CHECK(told.heard.find('\x1b') == std::string::npos);
  CHECK(told.heard.find('\r') == std::string::npos);
  std::istringstream lines(
      interviewed(with({{"dug up", "yes"}, {"cover the pit", "yes"}, {"gets enough", "yes"}})).heard);
  for (std::string line; std::getline(lines, line);) {
    INFO(line);
    CHECK(report::columns(line) <= 80);
  }
}

TEST_CASE("a whole job is told, section by section") {
  const Interviewed told = interviewed(with({{"Work order number?", "AV-1041"},
                                             {"class or dimension ratio", "PC 350"},
                                             {"proved to carry", "drinking water"},
                                             {"top of the main below", "4 ft 6 in"},
                                             {"dug up", "y"},
                                             {"bare pipe look", "sound"},
                                             {"wrapped in polyethylene", "no"},
                                             {"Has somebody looked", "yes"},
                                             {"What is there?", "bell"},
                                             {"What else is there?", "tap"},
                                             {"What else is there?", ""},
                                             {"How far along the main", "7 ft"},
                                             {"How far along the main", "-5 ft"},
                                             {"Where around the pipe is it?", "3"},
                                             {"maker's figures", "yes"},
                                             {"call the machine", "Crew 2's hand machine"},
                                             {"smallest tap", "1/2 in"},
                                             {"And the largest?", "1 in"},
                                             {"fed by hand?", "100 psi"},
                                             {"body and gaskets", "150 psi"},
                                             {"diameter of the boring bar", "1.25 in"},
                                             {"chlorine is on the truck", "yes"},
                                             {"by its label", "12.5 %"},
                                             {"crew should know", "the dog is friendly"}}));
  REQUIRE(told.facts);
  const Job job = job_of(told);
  CHECK(job.id == "AV-1041");
  CHECK(job.main.material == Material::ductile_iron);
  CHECK(job.main.carries == Carries::water);
  CHECK(job.main.encased == false);
  REQUIRE(job.nearby);
  REQUIRE(job.nearby->size() == 2);
  CHECK(job.nearby->at(1).what == NearbyThing::tap);
  CHECK(job.nearby->at(1).along == -5.0 * units::foot);
  CHECK(job.nearby->at(1).clock == ClockPosition{180});
  REQUIRE(job.machine.given);
  CHECK(job.machine.given->title == "Crew 2's hand machine");
  CHECK(job.sanitary.stock == 12.5);
  CHECK(job.note == "the dog is friendly");
  CHECK(told.heard_of("taken as ductile iron"));
  CHECK(told.heard_of("the tables have for this main: "));
  CHECK(interview::closing_words(*told.facts, "job.json") == "next: mainbore plan job.json\n");
}

TEST_CASE("a number without its unit is offered with the usual one, and Enter takes it") {
  const Interviewed told = interviewed({{"nominal size of the main?", "8"},
                                        {"nominal size of the main?", ""},
                                        {"highest pressure", "82"},
                                        {"highest pressure", ""}});
  REQUIRE(told.facts);
  CHECK(told.heard_of("[8 in?] > "));
  CHECK(told.heard_of("[82 psi?] > "));
  CHECK(told.fact("main.size") == "8 in");
  CHECK(told.fact("main.pressure") == "82 psi");
}

TEST_CASE("a wrong answer is refused with what is allowed, and asked again") {
  const Interviewed told = interviewed({{"What is the main made of?", "ductile irn"},
                                        {"What is the main made of?", "ductile iron"},
                                        {"nominal size of the main?", "8"},
                                        {"nominal size of the main?", "\"8 in\""},
                                        {"highest pressure", "82"},
                                        {"highest pressure", "8 ft"},
                                        {"highest pressure", "82 psi"},
                                        {"was it laid", "1650"},
                                        {"was it laid", "1994"},
                                        {"Where is the tap wanted?", "\x1b[31mred"},
                                        {"Where is the tap wanted?", "\xff"},
                                        {"Where is the tap wanted?", "Mill Lane"},
                                        {"dug up", "perhaps"},
                                        {"dug up", "yes"},
                                        {"wrapped in polyethylene", "maybe"},
                                        {"wrapped in polyethylene", "Y"}});
  REQUIRE(told.facts);
  CHECK(told.heard_of("did you mean \"ductile iron\"?"));
  CHECK(told.heard_of("write \"8 in\""));
  CHECK(told.heard_of("write \"82 psi\" or \"82 kPa\""));
  CHECK(told.heard_of("from 1800 to 2100"));
  CHECK(told.heard_of("\"perhaps\" is neither yes nor no"));
  CHECK(told.heard_of("\"maybe\" is neither yes nor no"));
  CHECK(told.heard.find('\x1b') == std::string::npos);
  CHECK(told.fact("main.size") == "8 in");
  CHECK(told.fact("main.pressure") == "82 psi");
  CHECK(told.fact("place") == "Mill Lane");
  CHECK(told.fact("main.encased") == "yes");
}

TEST_CASE("an answer is checked together with those before it") {
  const Interviewed told = interviewed({{"maker's figures", "yes"},
                                        {"call the machine", "ours"},
                                        {"What is the smallest tap", "1 in"},
                                        {"And the largest?", "1/2 in"},
                                        {"And the largest?", "2 in"},
                                        {"fed by hand?", "100 psi"},
                                        {"body and gaskets", "150 psi"},
                                        {"diameter of the boring bar", "1.25 in"}});
  REQUIRE(told.facts);
  CHECK(told.heard_of("the smallest tap is above the largest"));
  CHECK(told.fact("machine.largest_tap") == "2 in");
}

TEST_CASE("what the planner would object to is said while the card is still in hand") {
  const Interviewed told = interviewed(with({{"class or dimension ratio", "PC 999"}, {"proved to carry", "gas"}}));
  REQUIRE(told.facts);
  CHECK(told.heard_of(" * "));
  CHECK(told.fact("main.class") == "PC 999");  // it is for the plan to judge
  const auto times = [&](std::string_view text) {
    std::size_t count = 0;
    for (std::size_t at = 0; (at = told.heard.find(text, at)) != std::string::npos; ++at) ++count;
    return count;
  };
  CHECK(times("  * ") == 2);  // each once
  CHECK_FALSE(interviewed(four_facts).heard_of(" * "));
}

TEST_CASE("a question that does not apply is not asked") {
  const Replies bare = with({{"dug up", "yes"}});
  CHECK_FALSE(interviewed(bare).heard_of("How warm is the pipe wall?"));
  CHECK(interviewed(bare).heard_of("wrapped in polyethylene film?"));
  const Interviewed plastic = interviewed({{"dug up", "yes"}, {"made of", "PVC"}});
  CHECK(plastic.heard_of("How warm is the pipe wall?"));
  CHECK_FALSE(plastic.heard_of("wrapped in polyethylene film?"));
  CHECK_FALSE(interviewed({}).heard_of("How does the bare pipe look?"));
}

TEST_CASE("what only a utility's rules ask for is asked where they do, and leaves none of their holds") {
  const std::vector<std::pair<std::string, std::string>> asked = {
      {"How cold will the air", "40 degF"},   {"How many dwellings", "2"},
      {"How many lots or buildings", "1"},    {"nominal size of the service line?", "1-1/4 in"},
      {"the service line lie,", "5 ft 6 in"}, {"the nearest gas line?", "4 ft"},
      {"nearest electric line?", "4 ft"},     {"nearest sewer or drain?", "12 ft"}};
  const Rules rules = rules_of(
      R"({"main": {"coldest_air": "20 degF"},
          "line": {"least_cover": "5 ft", "from_gas": "3 ft", "from_electric": "3 ft", "from_sewer": "10 ft"},
          "water": {"by_dwellings": [{"dwellings_from": 1, "tap": "3/4 in", "line": "1-1/4 in"}], "most_premises": 1}})");
  const auto of_the_utility = [&](const Interviewed& told) {
    std::set<FindingCode> codes;
    for (const Finding& finding : planner_under(rules).plan(job_of(told)).findings) {
      switch (finding.code) {
        case FindingCode::main_air_unknown:
        case FindingCode::service_dwellings_unknown:
        case FindingCode::service_premises_unknown:
        case FindingCode::service_dwellings_size:
        case FindingCode::service_cover_unknown:
        case FindingCode::service_line_near_unknown:
          codes.insert(finding.code);
          break;
        default:
          break;
      }
    }
    return codes;
  };
  const Interviewed told = interviewed(with(asked), "", Language::english, rules);
  CHECK(of_the_utility(told).empty());
  CHECK(of_the_utility(interviewed(four_facts, "", Language::english, rules)).size() == 6 - 1);
  const Interviewed by_default = interviewed(four_facts);
  for (const auto& [question, answer] : asked) {
    INFO(question);
    CHECK(told.heard_of(question));
    CHECK(by_default.heard_of(question) == (question.find("size of the service line") != std::string::npos));
  }
}

TEST_CASE("what the answers before make matter is asked") {
  const auto hears = [](const Replies& answers, std::string_view question) {
    return interviewed(with(answers)).heard_of(question);
  };
  CHECK(interviewed({{"made of?", "PVC"}}).heard_of("What standard was the pipe made to"));
  CHECK(interviewed({{"made of?", "PVC"}}).heard_of("on rare occasions"));
  CHECK(interviewed({{"nominal size of the main?", "200 mm"}}).heard_of("What standard was the pipe made to"));
  CHECK_FALSE(hears({}, "What standard was the pipe made to"));
  CHECK_FALSE(hears({}, "on rare occasions"));
  CHECK(hears({{"top of the main below", "0 ft"}}, "Was that 0 measured?"));
  CHECK_FALSE(hears({{"top of the main below", "5 ft"}}, "Was that 0 measured?"));
  CHECK(hears({{"dug up", "yes"}}, "by caliper?"));
  CHECK_FALSE(hears({{"dug up", "yes"}, {"a tape read around", "28.4 in"}}, "by caliper?"));
  CHECK(hears({}, "Have trial taps been made"));
  CHECK_FALSE(hears({{"How is the tap to be made?", "saddle"}}, "Have trial taps been made"));
  const Replies trial = {{"Have trial taps been made", "yes"}};
  CHECK_FALSE(hears(trial, "left showing?"));
  CHECK(hears({trial.front(), {"What depth did they find", "1.5 in"}}, "left showing?"));
  const Replies water = {{"gets enough", "yes"}};
  CHECK_FALSE(hears({water.front(), {"service line made of?", "copper type K"}}, "printed on the tubing?"));
  CHECK(hears({water.front(), {"service line made of?", "PEX SDR 9"}}, "printed on the tubing?"));
}

TEST_CASE("back returns, keeps what was answered, and forgets what no longer applies") {
  std::string lines = "\n\n\n\nPVC\n6 in\n\n\n\n\n\n\n\n\nyes\nsound\n\n\n\n60 degF\n";  // to the question of the bend
  for (int i = 0; i < 16; ++i) lines += "back\n";                                        // to that of the material
  lines += "DI\n";
  for (int i = 0; i < 60; ++i) lines += '\n';
  std::istringstream in(lines);
  std::ostringstream out;
  const auto facts = interview::interview(in, out, "job.json", planner_under(default_rules()));
  REQUIRE(facts);
  CHECK(out.str().find("[60 degF] > ") != std::string::npos);
  CHECK(out.str().find("[PVC] > ") != std::string::npos);
  const Interviewed told{facts, out.str()};
  CHECK(told.fact("main.material") == "DI");
  CHECK(told.fact("main.size") == "6 in");
  CHECK(told.fact("main.condition") == "sound");
  CHECK(told.fact("main.temperature") == "-");
}

TEST_CASE("back at the first question asks it again") {
  const Interviewed told = interviewed({{"Work order", "back"}, {"Work order", "7"}});
  REQUIRE(told.facts);
  CHECK(told.heard_of("This is the first question."));
  CHECK(told.fact("id") == "7");
}

TEST_CASE("back from the end, and then another answer") {
  const Interviewed told = interviewed(
      {{"Write it to", "back"}, {"Write it to", "yes"}, {"crew should know", "first"}, {"crew should know", "second"}});
  REQUIRE(told.facts);
  CHECK(told.fact("note") == "second");
  CHECK(told.heard_of("[first] > "));
}

TEST_CASE("stop, no, the end of the input and half a line tell nothing") {
  CHECK_FALSE(interviewed({{"made of", "stop"}}).facts);
  CHECK_FALSE(interviewed({{"made of", "(end)"}}).facts);
  CHECK_FALSE(interviewed({{"Write it to", "stop"}}).facts);
  CHECK_FALSE(interviewed({{"Write it to", "no"}}).facts);
  CHECK_FALSE(interviewed({{"Write it to", "(end)"}}).facts);
  CHECK(interviewed({{"Write it to", "perhaps"}, {"Write it to", "y"}}).heard_of("is none of these"));
  std::istringstream half("AV-1\nhalf a line");
  std::ostringstream out;
  CHECK_FALSE(interview::interview(half, out, "job.json", planner_under(default_rules())));
}

TEST_CASE("what lies near is told whole or not at all") {
  const Replies looked = {{"Has somebody looked", "yes"}};
  const auto json = [](const Interviewed& told) { return settings_to_json(told.facts.value(), Catalog::builtin()); };
  // Somebody looked, and does not know: the plan must hold.
  CHECK(json(interviewed(looked)) == "{}\n");
  CHECK(interviewed(looked).heard_of("the file says nothing of what is near"));
  CHECK(json(interviewed(with({{"What is there?", "nothing"}}, looked))) == "{\n  \"nearby\": []\n}\n");
  const Replies bell = with({{"What is there?", "bell"}, {"What else is there?", "nothing more"}}, looked);
  CHECK(json(interviewed(with({{"How far along the main", "7 ft"}}, bell))).find("\"7 ft\"") != std::string::npos);
  CHECK(json(interviewed(with({{"How far along the main", "don't know"}}, bell))) == "{}\n");
  const Replies and_more = {
      {"What is there?", "bell"}, {"How far along the main", "7 ft"}, {"What else is there?", "don't know"}};
  CHECK(json(interviewed(with(and_more, looked))) == "{}\n");
}

TEST_CASE("a machine of which a figure is not known is left out") {
  const Interviewed told = interviewed({{"maker's figures", "yes"}, {"call the machine", "ours"}});
  REQUIRE(told.facts);
  CHECK(told.facts->empty());
  CHECK(told.heard_of("holds until they are given"));
  CHECK_FALSE(told.heard_of("And the largest?"));  // no use in asking on
}

TEST_CASE("help says what is meant, and asks again") {
  const Interviewed told = interviewed({{"made of", "?"}, {"made of", "copper"}});
  REQUIRE(told.facts);
  CHECK(told.heard_of("main.material: What is the main made of?"));
  CHECK(told.heard_of("try a magnet"));
  CHECK(told.fact("main.material") == "copper");
}

TEST_CASE("the next command names the file as a shell takes it") {
  const std::vector<Setting> all = {{"main.material", "PVC", ""},
                                    {"main.size", "6 in", ""},
                                    {"main.pressure", "60 psi", ""},
                                    {"service.size", "1 in", ""}};
  CHECK(interview::closing_words(all, "a job's file.json") == "next: mainbore plan 'a job'\\''s file.json'\n");
  CHECK(interview::closing_words(all, "~/a.json") == "next: mainbore plan '~/a.json'\n");
}

TEST_CASE("whatever is answered, what comes of it reads back") {
  std::mt19937 random(20260504);
  constexpr std::array<const char*, 36> said = {
      "yes",     "no",      "",      "back",  "?",      "don't know", "8 in",   "1 in",    "PVC",
      "82 psi",  "60 degF", "5 ft",  "-5 ft", "sound",  "bell",       "tap",    "nothing", "1994",
      "direct",  "3:00",    "12 %",  "2 gal", "18 gpm", "3",          "35 mph", "24 h",    "IPC",
      "ductile", "B",       "\"x\"", "\xc3",  "\x1b[A", "DR 18",      "hand",   "none",    "1.5 tsf"};
  int finished = 0;
  for (int round = 0; round < 60; ++round) {
    std::string lines;
    for (int i = 0; i < 3000; ++i) {
      // Back is said less often, or nobody would ever come to the end.
      const char* line = said[random() % said.size()];
      if (std::string_view(line) == "back" && random() % 4 != 0) line = "";
      (lines += line) += '\n';
    }
    std::istringstream in(lines);
    std::ostringstream out;
    const auto facts = interview::interview(in, out, "job.json", planner_under(default_rules()));
    if (!facts) continue;
    ++finished;
    const std::string text = settings_to_json(*facts, Catalog::builtin());
    INFO(text);
    for (const Diagnostic& d : read_job(text, "job.json", Catalog::builtin()).diagnostics) {
      INFO(format_diagnostic(d));
      CHECK(d.code == "job.missing");
      CHECK((d.pointer == "/main/material" || d.pointer == "/main/size" || d.pointer == "/main/pressure" ||
             d.pointer == "/service/size"));
    }
  }
  CHECK(finished > 20);
}
