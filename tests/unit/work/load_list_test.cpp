#include <algorithm>
#include <set>

#include "mainbore/rules_file.hpp"
#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "unit/work/sample_plans.hpp"

namespace mainbore {
namespace {

using test::sample_plan;

const LoadItem* item(const std::vector<LoadItem>& list, std::string_view key) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const LoadItem& one) { return one.key == key; });
  return found == list.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a direct tap loads stop, tool, seat and chain") {
  const auto list = load_list(sample_plan(), UnitSystem::us);
  REQUIRE(item(list, "corporation-stop") != nullptr);
  CHECK(item(list, "corporation-stop")->size == "1 in");
  CHECK(item(list, "corporation-stop")->item == "Corporation stop, NPT inlet");
  CHECK(item(list, "combined-drill-and-tap")->size == "1 in NPT");
  CHECK(item(list, "machine-saddle")->size == "6.9 in OD");
  CHECK(item(list, "chain-extension")->quantity == 1);
  CHECK(item(list, "bonding-jumper") != nullptr);
  CHECK(item(list, "machine-gasket")->quantity == 1);
  CHECK(item(list, "spare-gasket")->quantity == 1);
  CHECK(item(list, "powered-feed") == nullptr);
  // Nobody has measured the pipe, so the clamp must suit all that it may be.
  CHECK(item(list, "repair-clamp")->size == "6 in main, 6.84 in to 6.96 in OD");
  CHECK(item(list, "service-saddle") == nullptr);
}

TEST_CASE("fittings that must be marked for more than usual, or pass the cutter, are things of their own on a list") {
  const Rules rules = *load_rules(Catalog::builtin()).rules;
  Plan plan = sample_plan();
  plan.rules = &rules;
  CHECK(item(load_list(plan, UnitSystem::us), "corporation-stop")->item == "Corporation stop, NPT inlet");
  plan.pressure.line = 118.0 * units::psi;
  CHECK(item(load_list(plan, UnitSystem::us), "corporation-stop")->item ==
        "Corporation stop, NPT inlet, marked 125 psi or more");
  plan.method.kind = Method::saddle;
  CHECK(item(load_list(plan, UnitSystem::us), "corporation-stop")->item ==
        "Corporation stop, full bore, NPT inlet, marked 125 psi or more");
  CHECK(item(load_list(plan, UnitSystem::us), "service-saddle")->item == "Service saddle");
  plan.pressure.line = 160.0 * units::psi;
  CHECK(item(load_list(plan, UnitSystem::us), "service-saddle")->item == "Service saddle, marked 175 psi or more");
}

TEST_CASE("what seats on the pipe is loaded for the measured diameter once there is one") {
  Plan plan = sample_plan();
  plan.job.main.od = 6.90 * units::inch;
  CHECK(item(load_list(plan, UnitSystem::us), "repair-clamp")->size == "6 in main, 6.9 in OD");
  CHECK(item(load_list(plan, UnitSystem::si), "repair-clamp")->size == "6 in main, 175.3 mm OD");
}

TEST_CASE("a saddle tap needs no chain, a sleeve no stop") {
  const auto saddle = load_list(sample_plan({.method = Method::saddle, .material = Material::pvc}), UnitSystem::us);
  CHECK(item(saddle, "service-saddle") != nullptr);
  CHECK(item(saddle, "chain") == nullptr);
  CHECK(item(saddle, "bonding-jumper") == nullptr);
  CHECK(item(saddle, "blanket") != nullptr);
  const auto sleeve = load_list(sample_plan({.method = Method::sleeve}), UnitSystem::us);
  CHECK(item(sleeve, "tapping-valve") != nullptr);
  CHECK(item(sleeve, "corporation-stop") == nullptr);
}

TEST_CASE("a powered feed is a thing of its own, so that one machine is listed once") {
  Plan plan = sample_plan();
  const std::string by_hand(item(load_list(plan, UnitSystem::us), "tapping-machine")->item.view());
  plan.setup.feed = Feed::powered;
  const auto list = load_list(plan, UnitSystem::us);
  CHECK(item(list, "powered-feed") != nullptr);
  CHECK(item(list, "tapping-machine")->item == by_hand);
}

TEST_CASE("several taps load several stops") {
  Plan plan = sample_plan();
  plan.method.count = 3;
  CHECK(item(load_list(plan, UnitSystem::us), "machine-gasket")->quantity == 3);
  CHECK(item(load_list(plan, UnitSystem::us), "spare-gasket")->quantity == 1);
  CHECK(item(load_list(plan, UnitSystem::us), "corporation-stop")->quantity == 3);
}

TEST_CASE("no key and size stands twice on a list") {
  for (const Method method : {Method::direct, Method::saddle, Method::sleeve}) {
    for (std::size_t m = 0; m < material_count; ++m) {
      const Plan plan = sample_plan({.method = method, .material = static_cast<Material>(m)});
      std::set<std::pair<std::string_view, std::string>> seen;
      for (const LoadItem& one : load_list(plan, UnitSystem::us)) {
        INFO(one.key);
        CHECK(seen.insert({one.key, one.size}).second);
        CHECK(one.quantity > 0);
        CHECK_FALSE(one.item.empty());
      }
    }
  }
}

TEST_CASE("a no-go loads nothing") {
  CHECK(load_list(sample_plan({.verdict = Verdict::no_go}), UnitSystem::us).empty());
}

}  // namespace mainbore
