#include <algorithm>
#include <set>

#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "unit/work/sample_plans.hpp"

namespace mainbore {
namespace {

using test::sample_plan;

const Caution* caution(const std::vector<Caution>& list, std::string_view code) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const Caution& c) { return c.code == code; });
  return found == list.end() ? nullptr : &*found;
}
bool warns(const Plan& plan, std::string_view code) { return caution(cautions(plan, UnitSystem::us), code) != nullptr; }

}  // namespace

TEST_CASE("some cautions go with every job, whatever the verdict") {
  for (const Verdict verdict : {Verdict::go, Verdict::hold, Verdict::no_go}) {
    for (std::size_t m = 0; m < material_count; ++m) {
      const Plan plan = sample_plan({.material = static_cast<Material>(m), .verdict = verdict});
      const auto list = cautions(plan, UnitSystem::us);
      for (const auto code : {"caution.who-decides", "caution.identify", "caution.other-lines", "caution.shut-off",
                              "caution.out-of-line", "caution.read-zero", "caution.trapped-air", "caution.not-alone",
                              "caution.pit", "caution.wet-electric", "caution.lead"}) {
        INFO(code);
        CHECK(caution(list, code) != nullptr);
      }
      std::set<std::string_view> codes;
      for (const Caution& one : list) {
        CHECK(codes.insert(one.code).second);
        CHECK_FALSE(one.text.empty());
      }
    }
  }
}

TEST_CASE("other cautions go with the material") {
  CHECK(warns(sample_plan({.material = Material::ductile_iron}), "caution.bond"));
  CHECK_FALSE(warns(sample_plan({.material = Material::pvc}), "caution.bond"));
  CHECK(warns(sample_plan({.material = Material::pvc}), "caution.blanket"));
  CHECK(warns(sample_plan({.material = Material::pvc}), "caution.static"));
  CHECK(warns(sample_plan({.material = Material::polyethylene}), "caution.static"));
  CHECK(warns(sample_plan({.material = Material::pvc}), "caution.coupon"));
  CHECK(warns(sample_plan({.material = Material::asbestos_cement}), "caution.asbestos"));
  CHECK_FALSE(warns(sample_plan({.material = Material::steel}), "caution.asbestos"));
  CHECK(warns(sample_plan({.material = Material::cast_iron}), "caution.brittle"));
  CHECK(warns(sample_plan({.material = Material::concrete_cylinder}), "caution.wire"));
}

TEST_CASE("other cautions go with the job") {
  Plan plan = sample_plan();
  CHECK_FALSE(warns(plan, "caution.poor-wall"));
  CHECK_FALSE(warns(plan, "caution.encasement"));
  CHECK_FALSE(warns(plan, "caution.powered"));
  CHECK_FALSE(warns(plan, "caution.prove-empty"));
  plan.job.main.condition = Condition::pitted;
  plan.job.main.encased = true;
  plan.job.main.pressurized = false;
  plan.setup.feed = Feed::powered;
  CHECK(warns(plan, "caution.poor-wall"));
  CHECK(warns(plan, "caution.encasement"));
  CHECK(warns(plan, "caution.powered"));
  CHECK(warns(plan, "caution.prove-empty"));
}

TEST_CASE("the push of the water on the hole is worked out for the job") {
  // 82 psi on a bore of 1.315 in: 82 * pi/4 * 1.729 = 111.4 lbf, told in two digits.
  const auto list = cautions(sample_plan(), UnitSystem::us);
  CHECK(caution(list, "caution.out-of-line")->text.view().find("a 1.315 in hole with 120 lbf") != std::string::npos);
  // 5 ft of cover over a 6.9 in pipe.
  CHECK(caution(list, "caution.pit")->text.view().find("at least 5 ft 7 in down") != std::string::npos);
}

}  // namespace mainbore
