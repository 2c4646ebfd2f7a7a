#include "mainbore/fingerprint.hpp"

#include <nlohmann/json.hpp>
#include <string>

#include "mainbore/job_file.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/sheet.hpp"
#include "mainbore/version.hpp"
#include "support/catch.hpp"
#include "support/plain_numbers.hpp"

using namespace mainbore;

namespace {

Planner planner(const std::string& own = {}) {
  std::vector<RuleText> files;
  if (!own.empty()) files.push_back({"own.json", own});
  RulesFile read = load_rules(Catalog::builtin(), files);
  REQUIRE(read.rules);
  return Planner(*std::move(read.rules));
}

Plan plan(const std::string& job, const Planner& with = planner()) {
  JobFile read = read_job(job, "job.json", Catalog::builtin());
  REQUIRE(read.job);
  return with.plan(*std::move(read.job));
}

const std::string job_text =
    R"({"id": "AV-7", "main": {"material": "ductile iron", "size": "8 in", "pressure": "82 psi", "wall": "0.4 in"},
  "service": {"size": "1 in"}})";

}  // namespace

TEST_CASE("the same job in other units, in another order, has the same fingerprint") {
  const std::string other = R"({"service": {"size": "1 in"},
    "main": {"wall": {"value": 10.16, "unit": "mm"}, "pressure": "82 psi", "size": "8 in", "material": "DI"}, "id": "AV-7"})";
  const Fingerprint one = fingerprint_of(plan(job_text));
  CHECK(fingerprint_of(plan(other)).plan == one.plan);
  CHECK(one.plan.size() == 16);
  CHECK(one.program == MAINBORE_VERSION);
  CHECK(one.tables == Catalog::builtin().hash());
}

TEST_CASE("any fact of the job, its words too, moves the fingerprint of job and plan alone") {
  const Fingerprint one = fingerprint_of(plan(job_text));
  for (const auto& [from, to] :
       {std::pair("82 psi", "83 psi"), std::pair("AV-7", "AV-8"), std::pair("0.4 in", "0.41 in")}) {
    std::string changed = job_text;
    changed.replace(changed.find(from), std::string_view(from).size(), to);
    const Fingerprint other = fingerprint_of(plan(changed));
    CHECK(other.job != one.job);
    CHECK(other.plan != one.plan);
    CHECK(other.rules == one.rules);
  }
}

TEST_CASE("any rule, and whose it is, moves the fingerprint of rules and plan alone") {
  const std::string usual = R"({"name": "Ashby Vale", "pressure": {"wet_tap_limit": "150 psi"}})";
  const Fingerprint one = fingerprint_of(plan(job_text, planner(usual)));
  CHECK(one.rules != fingerprint_of(plan(job_text)).rules);
  for (const char* other :
       {R"({"name": "Ashby Vale", "pressure": {"wet_tap_limit": "149 psi"}})",
        R"({"name": "Ashby Vale", "pressure": {"wet_tap_limit": {"value": "150 psi", "reference": "4.1"}}})",
        R"({"name": "Other", "pressure": {"wet_tap_limit": "150 psi"}})"}) {
    const Fingerprint now = fingerprint_of(plan(job_text, planner(other)));
    CHECK(now.rules != one.rules);
    CHECK(now.job == one.job);
    CHECK(now.plan != one.plan);
  }
  CHECK(fingerprint_of(plan(job_text, planner(R"({"pressure": {"wet_tap_limit": "150 psi"}, "name": "Ashby Vale"})")))
            .plan == one.plan);
}

TEST_CASE("planners in turn each keep their own") {
  const Planner usual = planner();
  const Planner own = planner(R"({"name": "Ashby Vale", "pressure": {"wet_tap_limit": "150 psi"}})");
  const Plan a = plan(job_text, usual);
  const Plan b = plan(job_text, own);
  const std::string first = fingerprint_of(a).plan;
  const std::string second = fingerprint_of(b).plan;
  CHECK(first != second);
  CHECK(fingerprint_of(a).plan == first);
  CHECK(fingerprint_of(b).plan == second);
}

TEST_CASE("text, sheet and JSON print the same fingerprint, and the plan's own job has it too") {
  const Plan made = plan(job_text);
  const std::string print = fingerprint_of(made).plan;
  const auto json = nlohmann::json::parse(plan_to_json(made, UnitSystem::si, JsonStyle::pretty));
  CHECK(json["fingerprint"]["plan"] == print);
  CHECK(text_report(made).find(print) != std::string::npos);
  CHECK(test::plain_numbers(sheet_html(made, UnitSystem::us)).find(print) != std::string::npos);
  CHECK(fingerprint_of(plan(json["job"].dump())).plan == print);
}
