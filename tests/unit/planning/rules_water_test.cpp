// What a utility asks of line, tap, stop and meter, and the smallest sleeve.
#include <string>

#include "mainbore/finding_words.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Job job_with_demand(double gpm, double line) {
  Job job = sound_job();
  job.service.line.material = Tubing::copper_k;
  job.service.line.length = 40.0 * units::foot;
  job.service.line.size = NominalSize::inches(line);
  job.service.demand.flow = gpm * units::gpm;
  return job;
}

}  // namespace

TEST_CASE("a service line under the least size holds, with or without a demand") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(0.625);
  job.service.line.size = NominalSize::inches(0.625);
  CHECK(find(plan_of(job), FindingCode::service_line_small) != nullptr);
  CHECK(plan_of(job).verdict != Verdict::go);
  job.service.line.size = NominalSize::inches(0.75);
  CHECK(find(plan_of(job), FindingCode::service_line_small) == nullptr);
}

// 75 gpm through a round hole of 1 in: 0.408531 x 75 / 1^2 = 30.64 ft/s; of 1-1/2 in 13.62 ft/s.
TEST_CASE("75 gpm runs too fast through a 1 in tap, and the plan says what would do") {
  const Plan plan = plan_of(job_with_demand(75, 2));
  const Finding* const fast = find(plan, FindingCode::service_tap_too_fast);
  REQUIRE(fast != nullptr);
  CHECK(fast->severity == Severity::hold);
  REQUIRE(fast->value);
  CHECK(fast->value->base() / units::foot.base() == Catch::Approx(30.64).margin(0.02));
  REQUIRE(std::get_if<NominalSize>(&fast->details[2]) != nullptr);
  CHECK(std::get<NominalSize>(fast->details[2]) == NominalSize::inches(1.5));
  CHECK(plan.verdict == Verdict::hold);
  REQUIRE(plan.service);
  REQUIRE(plan.service->smallest_tap);
  CHECK(*plan.service->smallest_tap >= NominalSize::inches(1.5));
  CHECK(find(plan_of(job_with_demand(30, 2)), FindingCode::service_tap_too_fast) == nullptr);
}

TEST_CASE("a meter that the peak takes nearly whole is said, with the next that would do") {
  Job job = job_with_demand(48, 1.5);
  job.service.meter = NominalSize::inches(1);  // 50 gpm at most
  const Plan plan = plan_of(job);
  const Finding* const share = find(plan, FindingCode::service_meter_share);
  REQUIRE(share != nullptr);
  CHECK(share->severity == Severity::caution);
  REQUIRE(std::get_if<NominalSize>(&share->details[1]) != nullptr);
  CHECK(std::get<NominalSize>(share->details[1]) > NominalSize::inches(1));
  job.service.demand.flow = 38.0 * units::gpm;
  CHECK(find(plan_of(job), FindingCode::service_meter_share) == nullptr);
}

TEST_CASE("a stop an eighth smaller than the pipe, or of its size, is a rule") {
  const Rules eighth = rules_of(R"({"water": {"line_over_tap_least": "1/8 in"}})");
  const Rules same = rules_of(R"({"water": {"line_over_tap_least": "0 in", "line_over_tap_most": "0 in"}})");
  Job job = sound_job();
  job.service.line.size = NominalSize::inches(1);
  CHECK(find(plan_under(job, eighth), FindingCode::service_line_against_tap) != nullptr);
  CHECK(find(plan_under(job, same), FindingCode::service_line_against_tap) == nullptr);
  job.service.line.size = NominalSize::inches(1.25);
  CHECK(find(plan_under(job, eighth), FindingCode::service_line_against_tap) == nullptr);
  CHECK(find(plan_under(job, same), FindingCode::service_line_against_tap) != nullptr);
  job.service.line.size.reset();
  CHECK(plan_under(job, eighth).verdict == Verdict::hold);
}

TEST_CASE("no sleeve is offered with an outlet that is not made") {
  Job job = sound_job();
  job.service.size = NominalSize::inches(0.75);
  job.service.method = Method::sleeve;
  const Plan small = plan_of(job);
  CHECK(small.method.kind != Method::sleeve);
  const RejectedMethod* const sleeve = rejection(small, Method::sleeve);
  REQUIRE(sleeve != nullptr);
  CHECK(sleeve->why.code == FindingCode::sleeve_too_small);
  job.service.size = NominalSize::inches(2);
  CHECK(plan_of(job).method.kind == Method::sleeve);
  // A third of the main: 9.05 in of outside diameter takes 2 in, not 4 in.
  const Rules third = rules_of(R"({"sleeve": {"hole_ratio": "33.3 %"}})");
  CHECK(plan_under(job, third).method.kind == Method::sleeve);
  job.service.size = NominalSize::inches(4);
  CHECK(plan_of(job).method.kind == Method::sleeve);
  CHECK(plan_under(job, third).method.kind != Method::sleeve);
}

TEST_CASE("above a cap with a name a tap waits for that consent, and a main so named likewise") {
  const Rules cap = rules_of(R"({"main": {"at_most": [{"largest": "3/4 in", "consent": "the commissioner"}]}})");
  Job job = sound_job();
  const Plan plan = plan_under(job, cap);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(plan.method.kind == Method::direct);
  CHECK(plan.method.tap == NominalSize::inches(1));
  const Finding* const asked = find(plan, FindingCode::rules_consent);
  REQUIRE(asked != nullptr);
  CHECK(detail_of(*asked, UnitSystem::us).find("the commissioner") != std::string::npos);
  job.service.size = NominalSize::inches(0.75);
  CHECK(find(plan_under(job, cap), FindingCode::rules_consent) == nullptr);
  const Rules trunk = rules_of(R"({"main": {"not_tapped": [{"main_from": "6 in", "why": "Trunk mains",
    "consent": "the engineer, after a study"}]}})");
  CHECK(plan_under(job, trunk).verdict == Verdict::hold);
  CHECK(find(plan_under(job, trunk), FindingCode::rules_consent) != nullptr);
}
