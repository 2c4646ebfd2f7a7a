// What towns have printed, written as rules files, and the answers their codes give.
#include <algorithm>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
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

Job job_of(const ReferenceRow& row) {
  Job job = sound_job();
  job.main.material = material_named(row.text("main_material"));
  job.main.size = NominalSize::inches(row.number("main_size"));
  job.main.class_name = row.text("class");
  job.service.size = NominalSize::inches(row.number("tap"));
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

// That the refusal rests on the town's own text.
bool rests_on_the_town(const Plan& plan, std::string_view code) {
  const auto& rejected = plan.method.rejected;
  const auto found = std::find_if(rejected.begin(), rejected.end(),
                                  [&](const RejectedMethod& r) { return name_of(r.why.code) == code; });
  if (found == rejected.end()) return false;
  return std::any_of(found->why.basis.begin(), found->why.basis.end(), [](const Basis* basis) {
    return basis != nullptr && basis->utility && basis->reference != nullptr && !basis->reference->empty();
  });
}

}  // namespace

TEST_CASE("a plan under a town's rules gives the answer its code gives") {
  const ReferenceTable table("municipal_answers.csv");
  REQUIRE(table.rows().size() > 50);
  for (const ReferenceRow& row : table.rows()) {
    const std::string expected = row.text("expected_method");
    const Rules rules = rules_of(row.text("rule_file"));
    const Plan made = plan(job_of(row), Catalog::builtin(), rules);
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
    if (code.ends_with("over-maximum") || code.ends_with("not-allowed")) CHECK(rests_on_the_town(made, code));
  }
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
    CHECK(plan(job, Catalog::builtin(), rules).location.shift == Length());
    job.nearby->front().along = least - 0.5 * units::inch;
    const Plan moved = plan(job, Catalog::builtin(), rules);
    CHECK(moved.location.shift / units::inch == Catch::Approx(-0.5));
  }
}
