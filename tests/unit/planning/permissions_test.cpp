// Caps lower what is permitted; what the defaults close opens by a named person's consent alone.
#include <string>

#include "mainbore/finding_words.hpp"
#include "mainbore/rule_fields.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Job job_in(Material material, double size, double tap) {
  Job job = sound_job();
  job.main.material = material;
  job.main.size = NominalSize::inches(size);
  job.main.class_name.clear();
  job.main.rating = 150.0 * units::psi;
  job.main.wall = 0.75 * units::inch;
  job.service.size = NominalSize::inches(tap);
  return job;
}

std::string size_words(NominalSize size) { return '"' + size.label() + " in\""; }

// Rows of a list, for random mains; permissions with a reason, so that looser ones read.
std::string random_rows(WholeJobs& random, const std::string& more) {
  std::string rows;
  for (std::size_t left = 1 + random.below(4); left > 0; --left) {
    rows += rows.empty() ? "{" : ", {";
    const auto material = static_cast<Material>(random.below(material_count));
    const bool any_material = !random.chance(60);
    if (!any_material) rows += "\"material\": \"" + std::string(name_of(material)) + "\", ";
    if (random.chance(40)) rows += "\"main_above\": \"" + std::to_string(2 + random.below(20)) + " in\", ";
    if ((any_material || material == Material::pvc) && random.chance(20)) rows += R"("class": "DR 18", )";
    if (random.chance(20)) rows += R"("wall_from": "0.3 in", )";
    const NominalSize largest = NominalSize::inches(random.one_of(std::array{0.0, 0.625, 0.75, 1.0, 1.5, 2.0, 4.0}));
    rows += largest == NominalSize() ? std::string(R"("largest": "none", "why": "by town rule")")
                                     : "\"largest\": " + size_words(largest);
    rows += more + "}";
  }
  return rows;
}

}  // namespace

TEST_CASE("no tap larger than an inch is one row, and opens nothing") {
  const Rules rules =
      rules_of(R"({"main": {"at_most": [{"main_above": "6 in", "largest": "1 in", "reference": "Code 7"}]}})");
  const Plan iron = plan_under(sound_job(), rules);
  CHECK(iron.verdict == plan_of(sound_job()).verdict);
  CHECK(iron.method.kind == Method::direct);
  for (const Material closed : {Material::asbestos_cement, Material::steel}) {
    CHECK(plan_under(job_in(closed, 8, 1), rules).method.kind != Method::direct);
  }
  Job larger = sound_job();
  larger.service.size = NominalSize::inches(1.5);
  const Plan several = plan_under(larger, rules);
  CHECK(several.method.kind == Method::direct);
  CHECK(several.method.count > 1);
  CHECK(several.method.tap == NominalSize::inches(1));
  const RejectedMethod* const saddle = rejection(several, Method::saddle);
  REQUIRE(saddle != nullptr);
  CHECK(saddle->why.code == FindingCode::saddle_over_maximum);
  CHECK(decided_in_words(saddle->why) == "By the utility's rule: Code 7.");
}

TEST_CASE("each way of tapping has a cap of its own") {
  const auto method_under = [](const std::string& list, double tap) {
    Job job = sound_job();
    job.service.size = NominalSize::inches(tap);
    const Rules rules = rules_of(R"({")" + list + R"(": {"at_most": [{"largest": "3/4 in"}]}})");
    return plan_under(job, rules).method.kind;
  };
  CHECK(method_under("direct", 1) == Method::saddle);
  CHECK(method_under("direct", 0.75) == Method::direct);
  CHECK(method_under("saddle", 1.5) == Method::direct);  // several
  Job job = sound_job();
  job.main.size = NominalSize::inches(12);
  job.service.size = NominalSize::inches(3);
  const Plan usual = plan_of(job);
  INFO(name_of(usual.method.kind) << usual.method.count);
  REQUIRE(usual.method.kind == Method::sleeve);
  const Rules tees = rules_of(R"({"sleeve": {"at_most": [{"largest": "none", "why": "cut in a tee"}]}})");
  const Plan none = plan_under(job, tees);
  CHECK(none.verdict == Verdict::no_go);
  REQUIRE(rejection(none, Method::sleeve) != nullptr);
  CHECK(rejection(none, Method::sleeve)->why.code == FindingCode::sleeve_not_allowed);
}

TEST_CASE("a series keeps to its own cap") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(1.25);
  const std::string saddles = R"("saddle": {"largest": [{"largest": "none", "why": "no saddles"}]})";
  const Rules usual = rules_of("{" + saddles + "}");
  REQUIRE(plan_under(job, usual).method.tap == NominalSize::inches(1));
  const Rules smaller = rules_of("{" + saddles + R"(, "several": {"at_most": [{"largest": "3/4 in"}]}})");
  const Plan small = plan_under(job, smaller);
  CHECK(small.method.count > 1);
  CHECK(small.method.tap == NominalSize::inches(0.75));
  const Rules single =
      rules_of("{" + saddles + R"(, "several": {"at_most": [{"largest": "none", "why": "one tap a lot"}]}})");
  const Plan none = plan_under(job, single);
  CHECK(none.method.count == 1);
  const auto series = std::find_if(none.method.rejected.begin(), none.method.rejected.end(),
                                   [](const RejectedMethod& rejected) { return rejected.count > 1; });
  REQUIRE(series != none.method.rejected.end());
  CHECK(series->why.code == FindingCode::several_over_maximum);
}

TEST_CASE("a permission opens what the defaults close by a named person's consent alone") {
  const std::string plain =
      R"({"direct": {"largest": [{"largest": "1 in", "reference": "Code 7", "reason": "as the code has it"}]}})";
  const std::string named =
      R"({"direct": {"largest": [{"largest": "1 in", "reference": "Code 7", "reason": "as the code has it",
                                                         "consent": "the distribution engineer"}]}})";
  for (const Material closed : {Material::asbestos_cement, Material::steel}) {
    Job job = job_in(closed, 8, 1);
    job.service.method = Method::direct;
    const Rules silent = rules_of(plain);
    const Plan unnamed = plan_under(job, silent);
    CHECK(unnamed.verdict == Verdict::hold);
    CHECK(has(unnamed, FindingCode::rules_consent_unnamed));
    const Rules naming = rules_of(named);
    const Plan by_consent = plan_under(job, naming);
    CHECK(by_consent.verdict == Verdict::hold);
    const Finding* const asked = find(by_consent, FindingCode::rules_consent);
    REQUIRE(asked != nullptr);
    CHECK(detail_of(*asked, UnitSystem::us).find("the distribution engineer") != std::string::npos);
    CHECK(decided_in_words(*asked) == "By the utility's rule: Code 7 (as the code has it).");
  }
  // What was open stays open, unless the row asks for consent.
  const Rules silent = rules_of(plain);
  const Rules naming = rules_of(named);
  CHECK_FALSE(has(plan_under(sound_job(), silent), FindingCode::rules_consent_unnamed));
  Job direct = sound_job();
  direct.service.method = Method::direct;
  const Plan asked = plan_under(direct, naming);
  CHECK(asked.verdict == Verdict::hold);
  CHECK(has(asked, FindingCode::rules_consent));
}

TEST_CASE("no random permission lets a tap go where the defaults close the main to the method") {
  WholeJobs random(41);
  const int sets = random_jobs(3000) / 30;
  int opened = 0;
  for (int i = 0; i < sets; ++i) {
    std::string text = "{";
    for (const std::string group : {"direct", "saddle", "sleeve"}) {
      text += (text.size() > 1 ? ", \"" : "\"") + group + R"(": {"largest_first": [)" +
              random_rows(random, R"(, "reason": "r")") + "]}";
    }
    // Rows that leave each other nothing to decide do not read.
    const RulesFile read = load_rules(Catalog::builtin(), std::vector<RuleText>{{"own.json", text + "}"}});
    if (!read.rules) continue;
    for (int j = 0; j < 30; ++j) {
      Job job = random.next();
      const Plan own = plan_under(job, *read.rules);
      if (own.method.kind == Method::none) continue;
      job.service.method = own.method.kind;
      job.service.size = own.method.tap;
      const Plan usual = plan_of(job);
      const RejectedMethod* const closed = rejection(usual, own.method.kind);
      const auto is = [&](FindingCode code) {
        return closed != nullptr && closed->count == 1 && closed->why.code == code;
      };
      if (!is(FindingCode::direct_not_allowed) && !is(FindingCode::direct_no_rule) &&
          !is(FindingCode::saddle_not_allowed) && !is(FindingCode::saddle_no_rule) &&
          !is(FindingCode::sleeve_not_allowed) && !is(FindingCode::sleeve_no_rule)) {
        continue;
      }
      INFO(text << "}\n" << name_of(*job.main.material) << ' ' << job.main.size->label() << ' ' << job.main.class_name);
      CHECK(own.verdict != Verdict::go);
      CHECK(has(own, FindingCode::rules_consent_unnamed));
      ++opened;
    }
  }
  CHECK(opened > 20);
}

TEST_CASE("neither a cap nor a consent ever betters a verdict") {
  WholeJobs random(42);
  const int sets = random_jobs(6000) / 30;
  int lowered = 0;
  for (int i = 0; i < sets; ++i) {
    const auto& caps = cap_fields();
    std::string text = "{";
    for (const CapField& cap : caps) {
      if (!random.chance(40)) continue;
      const std::string group(cap.path.substr(0, cap.path.find('.')));
      text += (text.size() > 1 ? ", \"" : "\"") + group + R"(": {"at_most": [)" + random_rows(random, "") + "]}";
    }
    const Rules rules = rules_of(text + "}");
    for (int j = 0; j < 30; ++j) {
      const Job job = random.next();
      const Plan usual = plan_of(job);
      const Plan capped = plan_under(job, rules);
      INFO(text << "}\n" << name_of(*job.main.material) << ' ' << job.main.size->label() << ' ' << job.main.class_name);
      REQUIRE(capped.verdict >= usual.verdict);
      lowered += capped.verdict > usual.verdict ? 1 : 0;
    }
  }
  CHECK(lowered > 100);
  const Rules open =
      rules_of(R"({"direct": {"largest_first": [{"material": "ductile iron", "largest": "1 in", "reason": "r"}]}})");
  const Rules asked = rules_of(
      R"({"direct": {"largest_first": [{"material": "ductile iron", "largest": "1 in", "reason": "r", "consent": "the engineer"}]}})");
  for (int j = 0; j < random_jobs(1000); ++j) {
    const Job job = random.next();
    REQUIRE(plan_under(job, asked).verdict >= plan_under(job, open).verdict);
  }
}
