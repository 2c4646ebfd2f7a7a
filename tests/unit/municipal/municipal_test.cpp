// What towns have printed, written as rules files, and the answers their codes give.
#include <algorithm>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/reference_table.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Rules rules_of(const std::string& name) {
  std::ifstream in(std::string(MAINBORE_SOURCE_DIR) + "/tests/rules_files/" + name + ".json", std::ios::binary);
  REQUIRE(in);
  const std::vector<RuleText> files = {{name + ".json", std::string(std::istreambuf_iterator<char>(in), {})}};
  RulesFile read = load_rules(Catalog::builtin(), files);
  for (const Diagnostic& d : read.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  REQUIRE(read.rules);
  return std::move(*read.rules);
}

// As much as any of them asks.
void tell_of_the_service(Job& job) {
  job.main.cover = 90.0 * units::inch;
  job.service.line.cover = 90.0 * units::inch;
  job.service.line.gas = 60.0 * units::inch;
  job.service.line.sewer = 60.0 * units::inch;
}

Job job_of(const ReferenceRow& row) {
  Job job = sound_job();
  job.main.material = material_named(row.text("main_material"));
  job.main.size = NominalSize::inches(row.number("main_size"));
  job.main.class_name = row.text("class");
  job.service.size = NominalSize::inches(row.number("tap"));
  tell_of_the_service(job);
  return job;
}

// As a code of ordinances would put it.
std::string method_of(const Plan& plan) {
  return plan.method.count > 1 ? "several" : std::string(name_of(plan.method.kind));
}

// Whether a code says why some method was refused, or stands among the findings.
bool says(const Plan& plan, std::string_view code) {
  const auto& rejected = plan.method.rejected;
  return std::any_of(rejected.begin(), rejected.end(),
                     [&](const RejectedMethod& r) { return name_of(r.why.code) == code; }) ||
         std::any_of(plan.findings.begin(), plan.findings.end(),
                     [&](const Finding& f) { return name_of(f.code) == code; });
}

// That what the code says rests on the town's own text.
bool rests_on_the_town(const Plan& plan, std::string_view code) {
  const auto by_the_town = [&](const Finding& finding) {
    const DecidedBy decided = decided_by(finding);
    return name_of(finding.code) == code && decided.by == Decided::by_utility && decided.rule->reference != nullptr &&
           !decided.rule->reference->empty();
  };
  const auto& rejected = plan.method.rejected;
  return std::any_of(rejected.begin(), rejected.end(), [&](const RejectedMethod& r) { return by_the_town(r.why); }) ||
         std::any_of(plan.findings.begin(), plan.findings.end(), by_the_town);
}

// Each row of a table, under the rules of the text that it is from.
template <class Visit>
void each_row(const std::string& name, Visit visit) {
  const ReferenceTable table(name);
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    visit(row, rules_of(row.text("rule_file")));
  }
}

}  // namespace

TEST_CASE("a plan under a town's rules gives the answer its code gives") {
  const ReferenceTable table("municipal_answers.csv");
  REQUIRE(table.rows().size() > 50);
  for (const ReferenceRow& row : table.rows()) {
    const std::string expected = row.text("expected_method");
    const Rules rules = rules_of(row.text("rule_file"));
    const Plan made = plan_under(job_of(row), rules);
    INFO(row.where() << ": " << row.text("rule_file") << ", " << row.text("main_size") << " in "
                     << row.text("main_material") << ", tap of " << row.text("tap") << " in: " << method_of(made)
                     << ", " << name_of(made.verdict));
    if (expected == "consent") {
      CHECK(made.verdict != Verdict::go);
    } else if (expected == "silent") {
      CHECK(method_of(made) != "direct");
    } else {
      CHECK(method_of(made) == expected);
    }
    if (!row.has("expected_code")) continue;
    const std::string& code = row.text("expected_code");
    for (const RejectedMethod& r : made.method.rejected) UNSCOPED_INFO(name_of(r.kind) << ": " << name_of(r.why.code));
    CHECK(says(made, code));
    if (code.ends_with("over-maximum") || code.ends_with("not-allowed") || code == "main.not-tapped")
      CHECK(rests_on_the_town(made, code));
  }
}

TEST_CASE("where a town opens what the defaults close, its own size comes out, held for consent") {
  const ReferenceTable table("municipal_answers.csv");
  int opened = 0;
  for (const ReferenceRow& row : table.rows()) {
    const std::string expected = row.text("expected_method");
    if (expected != "direct" && expected != "saddle" && expected != "sleeve") continue;
    const Rules rules = rules_of(row.text("rule_file"));
    const Plan made = plan_under(job_of(row), rules);
    if (!says(made, "rules.consent-unnamed") && !says(made, "rules.consent")) continue;
    INFO(row.where() << ": " << row.text("rule_file"));
    ++opened;
    CHECK(made.verdict == Verdict::hold);
    CHECK(method_of(made) == expected);
    CHECK(made.method.tap == NominalSize::inches(row.number("tap")));
  }
  UNSCOPED_INFO("opened: " << opened);
  CHECK(opened > 0);
}

TEST_CASE("a tap stands as far from things as the town's code says, and no farther") {
  const ReferenceTable table("municipal_spacing.csv");
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    const auto* const thing = std::find(nearby_names.begin(), nearby_names.end(), row.text("thing"));
    REQUIRE(thing != nearby_names.end());
    const Rules rules = rules_of(row.text("rule_file"));
    const Length least = row.number("least_in") * units::inch;
    Job job = sound_job();
    job.nearby = {Nearby{static_cast<NearbyThing>(thing - nearby_names.begin()), least, {}, {}}};
    CHECK(plan_under(job, rules).location.shift == Length());
    job.nearby->front().along = least - 0.5 * units::inch;
    const Plan moved = plan_under(job, rules);
    CHECK(moved.location.shift / units::inch == Catch::Approx(-0.5));
  }
}

TEST_CASE("main or service lies as deep as the town's code asks, to the inch") {
  each_row("municipal_cover.csv", [](const ReferenceRow& row, const Rules& rules) {
    const Length least = row.number("least_in") * units::inch;
    Job job = sound_job();
    tell_of_the_service(job);
    job.date = "2026-07-15";
    const bool of_main = row.text("of") == "main";
    std::optional<Length>& cover = of_main ? job.main.cover : job.service.line.cover;
    const std::string code = of_main ? "place.cover" : "service.cover";
    cover = least + 0.01 * units::inch;
    CHECK_FALSE(says(plan_under(job, rules), code));
    cover = least - 0.5 * units::inch;
    const Plan shallow = plan_under(job, rules);
    CHECK(says(shallow, code));
    CHECK(rests_on_the_town(shallow, code));
    CHECK(shallow.verdict != Verdict::go);
    cover.reset();
    const Plan unknown = plan_under(job, rules);
    CHECK(says(unknown, code + "-unknown"));
    CHECK(unknown.verdict != Verdict::go);
  });
}

TEST_CASE("a service stays as far from other lines as the town's code says") {
  each_row("municipal_separation.csv", [](const ReferenceRow& row, const Rules& rules) {
    const Length least = row.number("least_in") * units::inch;
    Job job = sound_job();
    tell_of_the_service(job);
    std::optional<Length>& way = row.text("thing") == "gas" ? job.service.line.gas : job.service.line.sewer;
    way = least;
    CHECK_FALSE(says(plan_under(job, rules), "service.line-near"));
    way = least - 0.5 * units::inch;
    CHECK(rests_on_the_town(plan_under(job, rules), "service.line-near"));
    way.reset();
    CHECK(says(plan_under(job, rules), "service.line-near-unknown"));
  });
}

TEST_CASE("air is as cold as a text allows, and no colder") {
  each_row("municipal_air.csv", [](const ReferenceRow& row, const Rules& rules) {
    Job job = sound_job();
    job.air_temperature = Temperature::celsius(row.number("air_c"));
    CHECK(says(plan_under(job, rules), "main.air-cold") == (row.text("cold") == "yes"));
  });
}

TEST_CASE("a tap stands as high round the pipe as the town's code says") {
  each_row("municipal_position.csv", [](const ReferenceRow& row, const Rules& rules) {
    Job job = sound_job();
    tell_of_the_service(job);
    job.service.clock = ClockPosition{static_cast<int>(row.number("clock"))};
    CHECK(job.service.clock->elevation_degrees() == row.number("elevation_degrees"));
    CHECK(says(plan_under(job, rules), "place.clock") == (row.text("accepted") == "no"));
  });
}

TEST_CASE("what a town says of a step stands in its words") {
  each_row("municipal_words.csv", [](const ReferenceRow& row, const Rules& rules) {
    const OwnWords* const own = own_words(rules, row.text("id"));
    REQUIRE(own != nullptr);
    CHECK(own->text.find(row.text("has")) != std::string::npos);
  });
}

TEST_CASE("a season closed by the town's code holds the days in it and a job without a day") {
  each_row("municipal_season.csv", [](const ReferenceRow& row, const Rules& rules) {
    Job job = sound_job();
    tell_of_the_service(job);
    job.date = row.has("date") ? row.text("date") : "";
    const Plan made = plan_under(job, rules);
    const std::string expected = row.text("expected");
    CHECK(says(made, "season.closed") == (expected == "closed"));
    CHECK(says(made, "season.date-unknown") == (expected == "asked"));
    if (expected != "open") CHECK(made.verdict == Verdict::hold);
  });
}

TEST_CASE("what the town asks of a saddle or sleeve goes with the plan") {
  each_row("municipal_specifications.csv", [](const ReferenceRow& row, const Rules& rules) {
    Job job = job_of(row);
    if (row.text("main_material") == "cast iron") job.service.method = Method::saddle;
    const Plan made = plan_under(job, rules);
    INFO(method_of(made));
    if (!row.has("has")) {
      CHECK(made.method.specification == nullptr);
      return;
    }
    REQUIRE(made.method.specification != nullptr);
    CHECK(made.method.specification->text.find(row.text("has")) != std::string::npos);
  });
}

TEST_CASE("every town's file reads, and each rule looser than a safety default has its reason") {
  for (const char* const name : {"r01_boone",           "r02_claremont",
                                 "r03_stronghurst",     "r04_plankinton",
                                 "r06_bremen",          "r07_heyworth",
                                 "r08_decatur",         "r09_cleveland",
                                 "r10_waukee",          "r11_wiggins",
                                 "r12_lorain",          "r13_albuquerque",
                                 "r14_winthrop_harbor", "r15_south_bend",
                                 "r16_east_greenbush",  "r17_elbow_lake",
                                 "r18_georgian_bluffs", "r19_amboy",
                                 "r20_grand_blanc",     "r21_pvc_down_under",
                                 "r22_eden_valley",     "r23_flanagan",
                                 "r24_gardner",         "r25_bloomington",
                                 "r26_granite_falls",   "r27_vermillion",
                                 "r28_palos_park",      "r29_grove_city",
                                 "r30_trotwood",        "r31_new_whiteland",
                                 "r32_bedford",         "r33_decatur_in",
                                 "r34_lafayette",       "r35_lorain_curb_stop",
                                 "r36_republic",        "r37_sewer_separation",
                                 "r40_severn_trent",    "r41_thames_water",
                                 "r42_lambton_shores",  "r43_pvc_association",
                                 "r44_pvc_research",    "r45_matamata_piako",
                                 "r46_operator_text"}) {
    INFO(name);
    for (const LooserRule& rule : rules_of(name).looser) {
      INFO(rule.path);
      REQUIRE(rule.basis.reason != nullptr);
      CHECK_FALSE(rule.basis.reason->empty());
    }
  }
}
