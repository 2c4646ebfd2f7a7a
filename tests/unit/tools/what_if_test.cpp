#include "mainbore/what_if.hpp"

#include <algorithm>

#include "support/approx.hpp"
#include "support/plan_under.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

std::vector<WhatIf> asked(const Job& job, UnitSystem system = UnitSystem::us) {
  return what_if(job, planner_under(default_rules()), system);
}

const WhatIf& fact(const std::vector<WhatIf>& facts, std::string_view path) {
  const auto found = std::find_if(facts.begin(), facts.end(), [&](const WhatIf& f) { return f.path == path; });
  if (found == facts.end()) throw std::invalid_argument("no such fact: " + std::string(path));
  return *found;
}

Outcome outcome_with(const Job& job, const std::string& path, const FactValue& value) {
  return outcome_of(plan_of(with_fact(job, path, value)));
}

double base(const FactValue& value) { return std::get<Measure>(value).base(); }

// The edge between two outcomes, by halving real numbers, not gauge readings. `other` differs from the outcome at
// `same`.
double edge_between(const Job& job, const std::string& path, Kind kind, double same, double other) {
  const Outcome here = outcome_with(job, path, Measure(same, kind));
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (same + other);
    (outcome_with(job, path, Measure(middle, kind)) == here ? same : other) = middle;
  }
  return other;
}

std::vector<Job> jobs() {
  std::vector<Job> list(6, sound_job());
  list[1].main.wall = 0.27 * units::inch;
  list[1].service.thread = ThreadStandard::npt;
  list[1].main.surge.reset();
  list[1].service.stop_rating.reset();
  list[2].main.material = Material::pvc;
  list[2].main.size = NominalSize::inches(6);
  list[2].main.class_name = "C900 DR 18";
  list[2].main.pressure = 120.3 * units::psi;
  list[3].main.pressure = 110 * units::psi;
  list[3].service.stop_rating.reset();
  list[3].nearby = {Nearby{NearbyThing::joint, -30.0 * units::inch, {}, {}},
                    Nearby{NearbyThing::tap, 3.7 * units::foot, {}, {}}};
  list[4] = Job();
  list[4].main.material = Material::cast_iron;
  list[4].main.size = NominalSize::inches(6);
  list[4].main.pressure = 60 * units::psi;
  list[4].service.size = NominalSize::inches(0.75);
  list[5].main.circumference = 28.4375 * units::inch;
  list[5].main.od = 9.05 * units::inch;
  list[5].service.size = NominalSize::inches(2);
  list[5].main.condition = Condition::pitted;
  return list;
}

}  // namespace

TEST_CASE("each bound lies between two neighboring readings and is met by halving from outside") {
  int bounds = 0;
  for (const Job& job : jobs()) {
    for (const WhatIf& f : asked(job)) {
      REQUIRE(f.at == outcome_with(job, f.path, f.value));
      for (const auto* side : {&f.down, &f.up}) {
        for (std::size_t i = 0; i < side->size(); ++i) {
          const Bound& bound = (*side)[i];
          INFO(f.path << " bound " << i << (side == &f.down ? " down" : " up"));
          const Outcome before = outcome_with(job, f.path, bound.holds_to);
          const Outcome after = outcome_with(job, f.path, bound.changes_at);
          REQUIRE(after == bound.then);
          if (i == 0) REQUIRE(before == f.at);
          else REQUIRE(before.verdict == f.at.verdict);
          REQUIRE(after != f.at);
          ++bounds;
          if (f.path == "service.size") continue;
          const Kind kind = std::get<Measure>(f.value).kind();
          const double edge = edge_between(job, f.path, kind, base(bound.holds_to), base(bound.changes_at));
          CHECK(edge >= std::min(base(bound.holds_to), base(bound.changes_at)) - 1e-9);
          CHECK(edge <= std::max(base(bound.holds_to), base(bound.changes_at)) + 1e-9);
          // No change nearer than this one: every reading a sixtieth of the way between is as the value.
          if (i == 0) {
            for (int step = 1; step < 60; ++step) {
              const double between = base(f.value) + (base(bound.holds_to) - base(f.value)) * step / 60.0;
              REQUIRE(outcome_with(job, f.path, Measure(between, kind)) == f.at);
            }
          }
        }
        if (side->empty()) {
          const FactValue& end = side == &f.down ? f.least : f.greatest;
          CHECK(outcome_with(job, f.path, end) == f.at);
        } else if (side->size() == 1 && side->front().then.verdict == f.at.verdict && f.path != "service.size") {
          // The verdict was looked for to the end of the range.
          const FactValue& end = side == &f.down ? f.least : f.greatest;
          CHECK(outcome_with(job, f.path, end).verdict == f.at.verdict);
        }
      }
    }
  }
  CHECK(bounds > 40);
}

TEST_CASE("the bounds of a known job are the rules' own numbers") {
  const auto facts = asked(sound_job());
  // Powered feed and wet-tap limit, 250 psi.
  const WhatIf& pressure = fact(facts, "main.pressure");
  REQUIRE(pressure.up.size() == 1);
  CHECK(base(pressure.up[0].holds_to) == 250.0);
  CHECK(base(pressure.up[0].changes_at) == 251.0);
  CHECK(pressure.up[0].effect == Effect::worse);
  CHECK(pressure.up[0].then.verdict == Verdict::hold);
  CHECK(pressure.down.empty());
  // A joint 24 in away is far enough, 23 in is not; nobody listed one.
  const WhatIf& joint = fact(facts, "nearby");
  CHECK_FALSE(joint.given);
  REQUIRE(joint.down.size() == 1);
  CHECK(base(joint.down[0].holds_to) == Approx(24.0));
  CHECK(base(joint.down[0].changes_at) == Approx(23.0));
  CHECK(joint.down[0].arrives == std::vector{FindingCode::place_moved});
  // A stop rated for less than the line.
  const WhatIf& stop = fact(facts, "service.stop_rating");
  REQUIRE(stop.down.size() == 1);
  CHECK(base(stop.down[0].holds_to) == 70.0);
  // Iron of pressure class 350 with 100 psi of surge in it, at 70 psi.
  CHECK(base(fact(facts, "main.surge").up.at(0).holds_to) == 380.0);
  // Direct to 1 in, saddle to 2 in, a sleeve to choose above.
  const WhatIf& size = fact(facts, "service.size");
  REQUIRE(size.up.size() == 2);
  CHECK(std::get<NominalSize>(size.up[0].holds_to) == NominalSize::inches(1));
  CHECK(size.up[0].then.method == Method::saddle);
  CHECK(size.up[0].effect == Effect::other);
  CHECK(std::get<NominalSize>(size.up[1].holds_to) == NominalSize::inches(2));
  CHECK(size.up[1].then.verdict == Verdict::hold);
}

TEST_CASE("a wall may thin to what the threads need") {
  Job job = sound_job();
  job.main.wall = 0.27 * units::inch;
  job.service.thread = ThreadStandard::npt;
  job.service.method = Method::direct;
  const auto facts = asked(job);
  const WhatIf& wall = fact(facts, "main.wall");
  CHECK(wall.given);
  const Plan plan = plan_of(job);
  REQUIRE(plan.engagement);
  const double needed =
      (*plan.engagement->wall_needed + default_rules().measuring.wall_uncertainty.value) / units::inch;
  REQUIRE_FALSE(wall.down.empty());
  CHECK(base(wall.down[0].holds_to) >= needed);
  CHECK(base(wall.down[0].holds_to) < needed + 0.01);
  CHECK(base(wall.down[0].changes_at) < needed);
}

TEST_CASE("a hold by one number says where it ends") {
  Job job = sound_job();
  job.main.pressure = 110 * units::psi;
  job.service.stop_rating.reset();  // 100 psi assumed
  const auto facts = asked(job);
  const WhatIf& pressure = fact(facts, "main.pressure");
  CHECK(pressure.at.verdict == Verdict::hold);
  REQUIRE(pressure.down.size() == 1);
  CHECK(base(pressure.down[0].changes_at) == 100.0);
  CHECK(pressure.down[0].effect == Effect::better);
  CHECK(pressure.down[0].then.verdict == Verdict::go);
  const WhatIf& stop = fact(facts, "service.stop_rating");
  CHECK_FALSE(stop.given);
  REQUIRE(stop.up.size() == 1);
  CHECK(base(stop.up[0].changes_at) == 110.0);
  CHECK(stop.up[0].leaves == std::vector{FindingCode::pressure_over_stop_rating});
}

TEST_CASE("metric readings are metric") {
  const auto facts = asked(sound_job(), UnitSystem::si);
  const Bound& up = fact(facts, "main.pressure").up.at(0);
  // 250 psi is 1723.7 kPa: the gauge has steps of 5.
  CHECK(shown(std::get<Measure>(up.holds_to), UnitSystem::si).value == 1720);
  CHECK(shown(std::get<Measure>(up.changes_at), UnitSystem::si).value == 1725);
}

TEST_CASE("what-if refuses what it does not know") {
  CHECK_THROWS_AS(what_if(Job(), planner_under(default_rules())), std::invalid_argument);
  CHECK_THROWS_AS(with_fact(sound_job(), "main.colour", Measure(1, Kind::length)), std::invalid_argument);
  CHECK_THROWS_AS(with_fact(sound_job(), "nearby[0].along", Measure(1, Kind::length)), std::invalid_argument);
  CHECK_THROWS_AS(with_fact(sound_job(), "service.size", Measure(1, Kind::length)), std::invalid_argument);
  CHECK_THROWS_AS(with_fact(sound_job(), "main.pressure", NominalSize::inches(1)), std::invalid_argument);
}
