// One list of sources: text, sheet and JSON tell the same, and whatever a finding rests on is in it.
#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "mainbore/evidence.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/sheet.hpp"
#include "support/catch.hpp"
#include "unit/planning/random_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

std::string in_one_line(std::string text) {
  std::string out;
  for (const char c : text) {
    const char plain = c == '\n' ? ' ' : c;
    if (plain != ' ' || out.empty() || out.back() != ' ') out += plain;
  }
  return out;
}

// As a page writes it.
std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '&') out += "&amp;";
    else if (c == '<') out += "&lt;";
    else if (c == '>') out += "&gt;";
    else if (c == '"') out += "&quot;";
    else out += c;
  }
  return out;
}

void three_readers_tell_the_same(const Plan& plan) {
  const std::vector<Evidence> evidence = evidence_of(plan);
  const std::string text = in_one_line(text_report(plan, {.width = 200}));
  const std::string sheet = sheet_html(plan, UnitSystem::us);
  const auto json = nlohmann::json::parse(plan_to_json(plan, UnitSystem::us, JsonStyle::compact));
  std::set<std::string> ids;
  bool recalled = false;
  for (const Evidence& item : evidence) {
    recalled = recalled || is_recalled(item);
    if (item.basis.source == nullptr) continue;
    ids.insert(item.basis.source->id);
    if (item.basis.utility) continue;
    const std::string& title = item.basis.source->title;
    INFO(words_of(item) << ": " << title);
    CHECK(text.find(title.substr(1)) != std::string::npos);
    CHECK(sheet.find(escaped(title.substr(0, title.find_first_of(",;")))) != std::string::npos);
  }
  std::set<std::string> named;
  for (const auto& [id, source] : json["sources"].items()) named.insert(id);
  CHECK(named == ids);
  CHECK(json["evidence"].size() == evidence.size());
  for (const std::string_view reader : {std::string_view(text), std::string_view(sheet)}) {
    CHECK((reader.find(check_this_value) != std::string_view::npos) == recalled);
  }
}

void findings_are_in_it(const Plan& plan) {
  const std::vector<Evidence> evidence = evidence_of(plan);
  for (const Finding& finding : plan.findings) {
    for (const Basis* basis : finding.basis) {
      if (basis == nullptr) continue;
      INFO(name_of(finding.code));
      CHECK(std::any_of(evidence.begin(), evidence.end(), [&](const Evidence& item) {
        return item.finding == finding.code && item.basis.source == basis->source && item.basis.how == basis->how;
      }));
    }
  }
}

}  // namespace

TEST_CASE("text, sheet and JSON name the same sources") {
  RandomJobs random(23);
  const int jobs = random_jobs(300);
  for (int i = 0; i < jobs; ++i) {
    const Plan plan = plan_of(i % 2 == 0 ? telling_job(random) : half_read_job(random));
    three_readers_tell_the_same(plan);
    findings_are_in_it(plan);
  }
}

TEST_CASE("a recalled tolerance that decides is not told as published") {
  Job job = sound_job();
  const Plan plan = plan_of(job);
  const auto evidence = evidence_of(plan);
  const auto found = std::find_if(evidence.begin(), evidence.end(),
                                  [](const Evidence& item) { return item.what == "wall tolerance"; });
  REQUIRE(found != evidence.end());
  CHECK(found->basis.how == plan.main.governing->series->basis_of(PipeColumn::wall_minus).how);
}
