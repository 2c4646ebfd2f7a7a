#include "mainbore/mechanics/trial_taps.hpp"

#include <algorithm>
#include <limits>
#include <random>

#include "mainbore/catalog.hpp"
#include "support/approx.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

namespace {

constexpr InverseLength fourteen = 14.0 * units::per_inch;

NominalSize size_named(const std::string& label) {
  for (const double inches : {0.125, 0.25, 0.375, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0}) {
    if (NominalSize::inches(inches).label() == label) return NominalSize::inches(inches);
  }
  throw std::invalid_argument("no such size: " + label);
}

bool has(const TrialResult& result, TrialDoubt doubt) {
  return std::find(result.doubts.begin(), result.doubts.end(), doubt) != result.doubts.end();
}

// Trials as a perfect crew with a perfect thread would have them: c and n are the same in each.
TrialTap perfect(double depth_turns, double wrench, double c = 12.0, double n = 8.0) {
  const double hand = depth_turns - c;
  return {depth_turns / 14.0 * units::inch, hand, wrench, n - hand - wrench};
}

}  // namespace

TEST_CASE("a trial of a standard thread leads to the depth that its make-up has") {
  // The reference gives the stop of the tap past gauge for each wanted make-up; a trial made for one of them must lead
  // to the depth of every other.
  const test::ReferenceTable table("mechanics_makeup.csv");
  int compared = 0;
  for (const auto& from : table.rows()) {
    const TapThread* thread = Catalog::builtin().thread(ThreadStandard::npt, size_named(from.text("size")));
    REQUIRE(thread != nullptr);
    for (const auto& to : table.rows()) {
      if (to.text("size") != from.text("size")) continue;
      INFO(from.where() << " to " << to.where());
      const TrialTap trial{from.number("delta") * units::inch, std::nullopt, from.number("wrench_turns"),
                           from.number("showing")};
      const auto result =
          trial_taps({&trial, 1}, thread->form.threads_per_inch, {to.number("wrench_turns"), to.number("showing")});
      CHECK(result.mark / units::inch == Approx(to.number("delta")).margin(2 * table.tolerance()));
      ++compared;
    }
  }
  CHECK(compared > 20);
}

TEST_CASE("perfect trials agree whatever depths they were tapped to") {
  std::mt19937_64 random(11);
  for (int i = 0; i < 500; ++i) {
    std::vector<TrialTap> trials;
    for (int k = 0; k < 3; ++k) {
      trials.push_back(perfect(15.5 + static_cast<double>(random() % 100) / 100.0, static_cast<double>(random() % 4)));
    }
    // h* = 8 - 2 - 2 = 4, so d* = 16 turns.
    const auto result = trial_taps(trials, fourteen, {2.0, 2.0});
    CHECK(result.mark / units::inch == Approx(16.0 / 14.0));
    CHECK(result.spread_turns == Approx(0.0).margin(1e-9));
    REQUIRE(result.hand_turns);
    CHECK(*result.hand_turns == Approx(4.0));
    CHECK(result.settled());
    CHECK(result.further_trials == 0);
  }
}

TEST_CASE("a turn more wanted by wrench or showing is a turn less of the tap") {
  const std::vector<TrialTap> trials = {perfect(16, 2), perfect(16, 2), perfect(16.25, 2)};
  const Length mark = trial_taps(trials, fourteen, {2.0, 2.0}).mark;
  CHECK((mark - trial_taps(trials, fourteen, {3.0, 2.0}).mark) / units::inch == Approx(1.0 / 14.0));
  CHECK((mark - trial_taps(trials, fourteen, {2.0, 2.5}).mark) / units::inch == Approx(0.5 / 14.0));
}

TEST_CASE("when another trial is needed") {
  const MakeupGoal wanted{2.0, 2.0};
  SECTION("too few") {
    const std::vector<TrialTap> two = {perfect(16, 2), perfect(16, 2)};
    const auto result = trial_taps(two, fourteen, wanted);
    CHECK(result.doubts == std::vector{TrialDoubt::too_few});
    CHECK(result.further_trials == 1);
    CHECK_FALSE(trial_taps(two, fourteen, wanted, {2, 0.5, 1.0}).further_trials > 0);
  }
  SECTION("exactly half a turn apart agrees, a little more does not") {
    std::vector<TrialTap> trials = {perfect(16, 2), perfect(16, 2), perfect(16, 2)};
    trials[2].hand_turns.reset();
    trials[2].threads_showing += 0.5;
    CHECK(trial_taps(trials, fourteen, wanted).settled());
    trials[2].threads_showing += 0.01;
    const auto result = trial_taps(trials, fourteen, wanted);
    CHECK(has(result, TrialDoubt::do_not_agree));
    CHECK(has(result, TrialDoubt::too_few));
    CHECK(result.stray == std::vector<std::size_t>{2});
    CHECK(result.mark / units::inch == Approx(16.0 / 14.0));
  }
  SECTION("one stray among four is left out; two among five are a doubt") {
    std::vector<TrialTap> trials(4, perfect(16, 2));
    trials[1].threads_showing += 2.0;
    const auto one = trial_taps(trials, fourteen, wanted);
    CHECK(one.settled());
    CHECK(one.stray == std::vector<std::size_t>{1});
    trials.push_back(trials[1]);
    CHECK(has(trial_taps(trials, fourteen, wanted), TrialDoubt::do_not_agree));
  }
  SECTION("the mark lies where nobody has tapped") {
    const std::vector<TrialTap> trials(3, perfect(18, 2));
    const auto result = trial_taps(trials, fourteen, wanted);
    CHECK(result.doubts == std::vector{TrialDoubt::outside_tried});
    CHECK(result.turns_from_last == Approx(-2.0));
    CHECK(result.further_trials == 1);
  }
  SECTION("a wrong pitch shows when trials went to different depths") {
    // Counted as 14, in truth 11.5: the turns by hand do not follow the depth.
    std::vector<TrialTap> trials = {perfect(14.5, 2), perfect(16, 2), perfect(17.5, 2)};
    for (TrialTap& trial : trials) trial.depth = trial.depth * (14.0 / 11.5);
    const auto result = trial_taps(trials, fourteen, wanted, {3, 0.5, 3.0});
    CHECK_FALSE(result.settled());
  }
  SECTION("miscounted turns by hand") {
    std::vector<TrialTap> trials(3, perfect(16, 2));
    *trials[0].hand_turns += 1.0;
    CHECK(trial_taps(trials, fourteen, wanted).doubts == std::vector{TrialDoubt::hand_turns_differ});
  }
  SECTION("more is wanted than the stop has") {
    const std::vector<TrialTap> trials(3, perfect(13, 2));
    CHECK(has(trial_taps(trials, fourteen, {4.0, 5.0}), TrialDoubt::thread_too_short));
  }
}

TEST_CASE("trial taps that are none are refused") {
  const TrialTap good = perfect(16, 2);
  TrialTap bad = good;
  CHECK_THROWS_AS(trial_taps({}, fourteen, {2, 2}), std::invalid_argument);
  CHECK_THROWS_AS(trial_taps({&good, 1}, InverseLength(), {2, 2}), std::invalid_argument);
  CHECK_THROWS_AS(trial_taps({&good, 1}, fourteen, {-1, 2}), std::invalid_argument);
  CHECK_THROWS_AS(trial_taps({&good, 1}, fourteen, {2, 2}, {0, 0.5, 1.0}), std::invalid_argument);
  bad.wrench_turns = -0.5;
  CHECK_THROWS_AS(trial_taps({&bad, 1}, fourteen, {2, 2}), std::invalid_argument);
  bad = good;
  bad.depth = std::numeric_limits<double>::quiet_NaN() * units::inch;
  CHECK_THROWS_AS(trial_taps({&bad, 1}, fourteen, {2, 2}), std::invalid_argument);
}
