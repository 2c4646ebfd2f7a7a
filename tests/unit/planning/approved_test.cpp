// A plan that chooses from the approved list.
#include "mainbore/approved.hpp"

#include <memory>
#include <string>

#include "mainbore/finding_words.hpp"
#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/planning/jobs.hpp"
#include "unit/planning/random_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Plan plan_with(const Job& job, ApprovedList list, PlanDepth depth = PlanDepth::whole) {
  return Planner(builtin_catalog(), *load_rules(Catalog::builtin()).rules,
                 std::make_shared<const ApprovedList>(std::move(list)))
      .plan(job, depth);
}

ApprovedItem stop(double size = 1.0, ThreadStandard thread = ThreadStandard::awwa_taper) {
  ApprovedItem item;
  item.kind = ApprovedKind::stop;
  item.label = item.stock = "12-004";
  item.size = NominalSize::inches(size);
  item.thread = thread;
  return item;
}
ApprovedItem saddle(double from, double to, Material main = Material::ductile_iron, double size = 1.0) {
  ApprovedItem item;
  item.kind = ApprovedKind::saddle;
  item.label = item.stock = "41-117";
  item.main = {main};
  item.od_from = from * units::inch;
  item.od_to = to * units::inch;
  item.size = NominalSize::inches(size);
  return item;
}

Job listed_saddle_job() {
  Job job = sound_job();
  job.main.material = Material::ductile_iron;
  job.main.size = NominalSize::inches(8);
  job.main.class_name = "PC 350";
  job.service.size = NominalSize::inches(1);
  job.service.method = Method::saddle;
  job.service.stop_rating.reset();
  job.service.saddle_rating.reset();
  job.main.pressure = 80.0 * units::psi;
  return job;
}

std::string says(const Plan& plan, FindingCode code) {
  const Finding* const finding = find(plan, code);
  return finding == nullptr ? std::string() : detail_of(*finding, UnitSystem::us);
}

// Any list at all.
ApprovedList random_list(RandomJobs& random, const Job& job) {
  ApprovedList list;
  const std::size_t count = random.below(7);
  constexpr std::array sizes = {0.625, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0};
  for (std::size_t i = 0; i < count; ++i) {
    ApprovedItem item;
    item.kind = static_cast<ApprovedKind>(random.below(approved_kind_count));
    item.label = item.stock = std::to_string(i);
    item.size = random.chance(70) ? *job.service.size : NominalSize::inches(sizes[random.below(sizes.size())]);
    if (random.chance(50)) item.rating = random.real(20, 400) * units::psi;
    if (random.chance(50) || item.kind == ApprovedKind::chain) item.length = random.real(0.5, 60) * units::inch;
    if (item.kind == ApprovedKind::stop || item.kind == ApprovedKind::tap || random.chance(20)) {
      item.thread = static_cast<ThreadStandard>(random.below(3));
    }
    if (item.kind == ApprovedKind::saddle || item.kind == ApprovedKind::sleeve || random.chance(30)) {
      item.main = {random.chance(80) ? *job.main.material : Material::pvc};
    }
    if (item.kind == ApprovedKind::saddle || item.kind == ApprovedKind::sleeve || item.kind == ApprovedKind::seat) {
      item.od_from = job.main.size->number() * random.real(0.5, 1.2) * units::inch;
      item.od_to = *item.od_from + random.real(0, 1) * job.main.size->number() * units::inch;
    }
    if (item.kind == ApprovedKind::cutter && random.chance(50)) item.diameter = random.real(0.3, 8) * units::inch;
    list.items.push_back(std::move(item));
  }
  return list;
}

}  // namespace

TEST_CASE("a saddle tap takes saddle and stop from the approved list") {
  ApprovedItem wide = saddle(8.54, 9.40);
  wide.torque = 50.0 * units::ft_lbf;
  wide.rating = 200.0 * units::psi;
  wide.length = 2.0 * units::inch;
  const Plan plan = plan_with(listed_saddle_job(), {"a.csv", "", "", {saddle(6.6, 7.2), wide, stop()}});
  REQUIRE(plan.method.kind == Method::saddle);
  REQUIRE(plan.method.fitting(ApprovedKind::saddle) != nullptr);
  CHECK(plan.method.fitting(ApprovedKind::saddle)->torque);
  CHECK(plan.method.fitting(ApprovedKind::stop) != nullptr);
  CHECK_FALSE(find(plan, FindingCode::approved_none_fits));
  CHECK(approved_in_words(*plan.method.fitting(ApprovedKind::saddle), UnitSystem::us) ==
        "8.54 in to 9.4 in, stock 41-117, nuts 50 ft-lbf");
  bool named = false;
  for (const LoadItem& item : load_list(plan, UnitSystem::us))
    named |= item.key == "service-saddle" && item.stock == "41-117";
  CHECK(named);
  // Its rating is the office's word, and the mark is asked for all the same.
  bool from_list = false;
  for (const Evidence& item : plan.evidence)
    from_list |= item.what == Taken::saddle && item.from == From::approved_list;
  CHECK(from_list);
  bool asked = false;
  for (const Assumption& one : plan.main.assumed) asked |= one.path == "service.saddle_rating";
  CHECK(asked);
}

TEST_CASE("where no approved item fits, the office is asked and the nearest named") {
  const Plan plan = plan_with(listed_saddle_job(),
                              {"a.csv", "", "", {saddle(6.6, 7.2), saddle(8.54, 9.4, Material::pvc, 0.75), stop()}});
  REQUIRE(find(plan, FindingCode::approved_none_fits) != nullptr);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(clears_by(FindingCode::approved_none_fits) == Clears::office);
  CHECK(says(plan, FindingCode::approved_none_fits) ==
        "No saddle on the approved list fits. The nearest is 41-117; it lacks the diameter: 7.2 in where 9.11 in is "
        "needed.");
  const Plan without = plan_with(listed_saddle_job(), {"a.csv", "", "", {}});
  CHECK(says(without, FindingCode::approved_none_fits) == "No saddle on the approved list fits. The list has none.");
}

TEST_CASE("a rating on the list clears the hold on the usual rating, and a length that on the reach") {
  Job job = listed_saddle_job();
  job.main.pressure = 130.0 * units::psi;
  ApprovedItem strong = stop();
  strong.rating = 150.0 * units::psi;
  ApprovedItem wide = saddle(8.54, 9.40);
  wide.rating = 200.0 * units::psi;
  const Plan plain = plan_of(job);
  CHECK(find(plain, FindingCode::pressure_over_stop_rating) != nullptr);
  CHECK_FALSE(find(plan_with(job, {"a", "", "", {wide, strong}}), FindingCode::pressure_over_stop_rating));
  // A stop that is too weak is not chosen, and supplies nothing.
  strong.rating = 110.0 * units::psi;
  const Plan weak = plan_with(job, {"a", "", "", {wide, strong}});
  CHECK(find(weak, FindingCode::approved_none_fits) != nullptr);
  CHECK(find(weak, FindingCode::pressure_over_stop_rating) != nullptr);
  // What the job reads goes before the list.
  job.service.stop_rating = 90.0 * units::psi;
  strong.rating = 150.0 * units::psi;
  CHECK(find(plan_with(job, {"a", "", "", {wide, strong}}), FindingCode::pressure_over_stop_rating) != nullptr);
}

TEST_CASE("an approved list never betters a verdict but by ratings and lengths, and an item less never does") {
  RandomJobs random(77);
  int chosen = 0;
  for (int i = 0; i < 1500; ++i) {
    Job job = random.next();
    if (random.chance(50)) job.service.saddle_height.reset();
    if (random.chance(50)) job.service.stop_length.reset();
    const Verdict plain = plan_of(job).verdict;
    ApprovedList list = random_list(random, job);
    const Plan with = plan_with(job, list, PlanDepth::verdict);
    chosen += with.method.fittings.empty() ? 0 : 1;
    INFO(name_of(*job.main.material) << ' ' << job.main.size->label() << " tap " << job.service.size->label() << ", "
                                     << list.items.size() << " items, seed step " << i);
    if (plain == Verdict::no_go) REQUIRE(with.verdict == Verdict::no_go);
    ApprovedList bare = list;
    for (ApprovedItem& item : bare.items) {
      item.rating.reset();
      if (item.kind != ApprovedKind::chain) item.length.reset();
    }
    REQUIRE(plan_with(job, bare, PlanDepth::verdict).verdict >= plain);
    if (list.items.empty()) continue;
    list.items.erase(list.items.begin() + static_cast<std::ptrdiff_t>(random.below(list.items.size())));
    REQUIRE(plan_with(job, list, PlanDepth::verdict).verdict >= with.verdict);
  }
  CHECK(chosen > 100);
}
