// Who clears a hold, and what the office asks.
#include "io/orders/verdict_record.hpp"
#include "mainbore/finding_words.hpp"
#include "support/catch.hpp"
#include "unit/planning/random_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

TEST_CASE("a hold says who has to clear it, and the office what to ask and whom") {
  RandomJobs random(20);
  std::size_t office = 0;
  std::size_t site = 0;
  for (int i = 0; i < random_jobs(1000); ++i) {
    const Plan made = plan_under(random.next(), default_rules());
    bool of_office = false;
    for (const Finding& finding : made.findings) {
      if (finding.severity != Severity::hold || clears_by(finding.code) != Clears::office) continue;
      of_office = true;
      const std::string question = question_of(finding, UnitSystem::us, made.stop_numbers);
      INFO(name_of(finding.code) << ": " << question);
      CHECK(question.find('?') != std::string::npos);
      CHECK(question.find_first_of("{}[]|") == std::string::npos);
      CHECK_FALSE(whom_to_ask(finding.code).empty());
    }
    const auto who = waits_for(made);
    CHECK(who.has_value() == (made.verdict == Verdict::hold));
    CHECK((who == Clears::office) == (of_office && made.verdict == Verdict::hold));
    if (who) ++(*who == Clears::office ? office : site);
    const std::string record = io::decision_of(made, io::RecordShape::line).text;
    CHECK((record.find("\"waits_for\":\"office\"") != std::string::npos) == (who == Clears::office));
    CHECK((record.find("\"waits_for\":\"site\"") != std::string::npos) == (who == Clears::site));
  }
  CHECK(office > 10);
  CHECK(site > 10);
}
