#include <algorithm>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "mainbore/plan.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"

using namespace mainbore;

namespace {

RulesFile load(const std::vector<std::string>& texts) {
  std::vector<RuleText> files;
  for (std::size_t i = 0; i < texts.size(); ++i) files.push_back({"own" + std::to_string(i + 1) + ".json", texts[i]});
  return load_rules(Catalog::builtin(), files);
}
Rules sound(const std::vector<std::string>& texts) {
  RulesFile read = load(texts);
  for (const Diagnostic& d : read.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  REQUIRE(read.rules);
  return std::move(*read.rules);
}
// The one diagnostic of a file, as "code pointer: message | help".
std::string fault(const std::string& text) {
  const RulesFile read = load({text});
  CHECK_FALSE(read.rules);
  if (read.diagnostics.size() != 1) {
    for (const Diagnostic& d : read.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
    CHECK(read.diagnostics.size() == 1);
    if (read.diagnostics.empty()) return "";
  }
  const Diagnostic& d = read.diagnostics.front();
  return std::string(d.code) + ' ' + d.pointer + ": " + d.message + (d.help.empty() ? "" : " | " + d.help);
}
const Clearance* clearance(const Rules& rules, NearbyThing what) {
  const auto found = std::find_if(rules.place.clearances.begin(), rules.place.clearances.end(),
                                  [&](const Clearance& c) { return c.what == what; });
  return found == rules.place.clearances.end() ? nullptr : &*found;
}

using Catch::Matchers::StartsWith;

}  // namespace

TEST_CASE("a file replaces what it names and leaves the rest") {
  const Rules defaults = sound({});
  const Rules rules = sound({R"({"name": "Fern Hollow Water",
                                "pressure": {"stop_rating": {"value": "150 psi", "reason": "no other is stocked"}}})"});
  CHECK(rules.name == "Fern Hollow Water");
  CHECK(rules.pressure.stop_rating.value / units::psi == Catch::Approx(150));
  CHECK(rules.pressure.stop_rating.basis.utility);
  REQUIRE(rules.pressure.stop_rating.basis.reference != nullptr);
  CHECK(*rules.pressure.stop_rating.basis.reference == "Fern Hollow Water");
  CHECK(*rules.pressure.stop_rating.basis.reason == "no other is stocked");
  CHECK(*rules.pressure.stop_rating.basis.file == "own1.json");
  CHECK(rules.pressure.stop_rating.basis.source == nullptr);

  CHECK(rules.pressure.saddle_rating.value == defaults.pressure.saddle_rating.value);
  CHECK_FALSE(rules.pressure.saddle_rating.basis.utility);
  CHECK(rules.direct.largest.size() == defaults.direct.largest.size());
}

TEST_CASE("a rule may say which document it is from") {
  const Rules rules = sound({R"({"name": "Fern Hollow Water", "place": {
    "farthest_shift": {"value": "10 ft", "reference": "Fern Hollow Standard 7", "reason": "long lots"},
    "stagger_within": {"value": 700, "unit": "mm"}}})"});
  CHECK(rules.place.farthest_shift.value / units::foot == Catch::Approx(10));
  CHECK(*rules.place.farthest_shift.basis.reference == "Fern Hollow Standard 7");
  CHECK(rules.place.stagger_within.value / units::mm == Catch::Approx(700));
  CHECK(*rules.place.stagger_within.basis.reference == "Fern Hollow Water");
}

TEST_CASE("a utility may adopt a default as its own") {
  const Rules rules = sound({R"({"pressure": {"wet_tap_limit": {"reference": "Standard 3"}}})"});
  CHECK(rules.pressure.wet_tap_limit.value == sound({}).pressure.wet_tap_limit.value);
  CHECK(rules.pressure.wet_tap_limit.basis.utility);
  CHECK(*rules.pressure.wet_tap_limit.basis.reference == "Standard 3");
}

TEST_CASE("without a name the file's own stands for it") {
  const Rules rules = sound({R"({"pressure": {"wet_tap_limit": "120 psi"}})"});
  CHECK(rules.name == "own1.json");
  CHECK(*rules.pressure.wet_tap_limit.basis.reference == "own1.json");
}

TEST_CASE("files are laid over each other in order") {
  const Rules rules = sound({R"({"name": "County", "pressure": {"wet_tap_limit": "120 psi", "stop_rating": "90 psi"}})",
                             R"({"name": "Town", "pressure": {"wet_tap_limit": "100 psi"}})"});
  CHECK(rules.name == "County + Town");
  CHECK(rules.pressure.wet_tap_limit.value / units::psi == Catch::Approx(100));
  CHECK(*rules.pressure.wet_tap_limit.basis.reference == "Town");
  CHECK(*rules.pressure.stop_rating.basis.reference == "County");
}

TEST_CASE("references stay where bases point when the rules move") {
  RulesFile read = load({R"({"name": "Town", "pressure": {"wet_tap_limit": "100 psi"}})"});
  REQUIRE(read.rules);
  const Rules moved = std::move(*read.rules);
  const auto kept = std::find_if(moved.references.begin(), moved.references.end(), [&](const std::string& text) {
    return &text == moved.pressure.wet_tap_limit.basis.reference;
  });
  REQUIRE(kept != moved.references.end());
  CHECK(*kept == "Town");
}

TEST_CASE("a list of largest taps is replaced whole") {
  const Rules rules = sound({R"({"name": "Town", "direct": {"largest": [
    {"material": ["D.I.P.", "cast iron"], "class": "C151 PC 350", "series": "di-pressure-class", "main_from": "6 in",
     "main_to": "DN 300", "wall_from": "0.25 in", "largest": "3/4 in", "reference": "Standard 4.1"},
    {"largest": "none", "why": "use a saddle"}]}})"});
  REQUIRE(rules.direct.largest.size() == 2);
  const TapLimit& row = rules.direct.largest[0];
  CHECK(row.materials == MaterialList{Material::ductile_iron, Material::cast_iron});
  CHECK(row.classes == std::vector<std::string>{"C151 PC 350"});
  CHECK_FALSE(row.pipes.empty());
  CHECK(row.series == std::vector<std::string>{"di-pressure-class"});
  CHECK(row.main_from == NominalSize::inches(6));
  CHECK(row.main_to == NominalSize::inches(12));
  CHECK(*row.wall_from / units::inch == Catch::Approx(0.25));
  CHECK(row.largest == NominalSize::inches(0.75));
  CHECK(row.basis.utility);
  CHECK(*row.basis.reference == "Standard 4.1");
  CHECK(rules.direct.largest[rules.direct.largest.size() - 1].largest == NominalSize());
  CHECK(rules.direct.largest[rules.direct.largest.size() - 1].why == "use a saddle");
  CHECK(*rules.direct.largest[rules.direct.largest.size() - 1].basis.reference == "Town");
  CHECK(rules.saddle.largest.size() == sound({}).saddle.largest.size());

  CHECK(sound({R"({"direct": {"largest": []}})"}).direct.largest.empty());
}

TEST_CASE("clearances are changed one by one, and none is taken away without a word") {
  const Rules rules = sound({R"({"place": {"clearances": {"tap": "36 in", "gas_line": "2 ft",
                                  "hydrant": {"value": "0 ft", "reason": "no hydrant stands on these mains"}}}})"});
  CHECK(clearance(rules, NearbyThing::tap)->least.value / units::inch == Catch::Approx(36));
  CHECK(clearance(rules, NearbyThing::tap)->least.basis.utility);
  REQUIRE(clearance(rules, NearbyThing::gas_line) != nullptr);
  CHECK(clearance(rules, NearbyThing::gas_line)->least.value / units::inch == Catch::Approx(24));
  CHECK(clearance(rules, NearbyThing::hydrant)->least.value == Length());
  CHECK_THAT(fault(R"({"place": {"clearances": {"hydrant": null}}})"),
             StartsWith("rules.wrong-type /place/clearances/hydrant: null would take the clearance away"));
  CHECK_FALSE(clearance(rules, NearbyThing::joint)->least.basis.utility);
}

TEST_CASE("numbers without a dimension are plain, and a share may be a percentage") {
  CHECK(sound({R"({"direct": {"required_threads": 3}})"}).direct.required_threads.value == Catch::Approx(3));
  CHECK(sound({R"({"direct": {"required_threads": "2.5 threads"}})"}).direct.required_threads.value ==
        Catch::Approx(2.5));
  CHECK(sound({R"({"direct": {"hole_ratio": "30 %"}})"}).direct.hole_ratio.value == Catch::Approx(0.3));
  CHECK(sound({R"({"place": {"default_clock": "10:30"}})"}).place.default_clock.value.minutes == 630);
  CHECK(sound({R"({"direct": {"default_thread": {"value": "npt", "reason": "x"}}})"}).direct.default_thread.value ==
        ThreadStandard::npt);
  CHECK(sound({R"({"direct": {"plastic_wet_tap_warmest": "30 degC"}})"})
            .direct.plastic_wet_tap_warmest.value.fahrenheit() == Catch::Approx(86));
}

TEST_CASE("an unknown key is refused with the nearest known one") {
  CHECK_THAT(
      fault(R"({"pressures": {}})"),
      StartsWith("rules.unknown-key /pressures: \"pressures\" is not a group of rules | did you mean \"pressure\"?"));
  CHECK_THAT(
      fault(R"({"direct": {"requird_threads": 3}})"),
      StartsWith("rules.unknown-key /direct/requird_threads: \"requird_threads\" is not a rule of \"direct\" | did you "
                 "mean \"required_threads\"?"));
  CHECK(fault(R"({"direct": {"stop_rating": "100 psi"}})") ==
        "rules.unknown-key /direct/stop_rating: \"stop_rating\" is not a rule of \"direct\" | it belongs under "
        "\"pressure\"");
  CHECK_THAT(
      fault(R"({"direct": {"required_threads": {"value": 3, "reson": "clay"}}})"),
      StartsWith("rules.unknown-key /direct/required_threads/reson: \"reson\" is not part of a rule | did you mean "
                 "\"reason\"?"));
  CHECK_THAT(
      fault(R"({"place": {"clearances": {"joints": "2 ft"}}})"),
      StartsWith(
          "rules.unknown-key /place/clearances/joints: \"joints\" is not a thing to keep clear of | did you mean "
          "\"joint\"?"));
  // A utility's file does not say how the defaults were had.
  CHECK_THAT(fault(R"({"direct": {"required_threads": {"value": 3, "how": "published"}}})"),
             StartsWith("rules.unknown-key /direct/required_threads/how"));
}

TEST_CASE("a wrong unit and a value that cannot be are refused") {
  CHECK_THAT(fault(R"({"pressure": {"stop_rating": 150}})"),
             StartsWith("rules.wrong-quantity /pressure/stop_rating: \"150\" has no unit | write \"150 psi\""));
  CHECK_THAT(fault(R"({"pressure": {"stop_rating": "18 in"}})"),
             StartsWith("rules.wrong-quantity /pressure/stop_rating: \"18 in\" has the unit of something else"));
  CHECK_THAT(fault(R"({"pressure": {"stop_rating": "15000 psi"}})"),
             StartsWith("rules.out-of-range /pressure/stop_rating: \"15000 psi\" is out of range | from 20 psi"));
  CHECK_THAT(fault(R"({"direct": {"hole_ratio": 1.2}})"),
             StartsWith("rules.out-of-range /direct/hole_ratio: \"1.2\" is out of range"));
  CHECK_THAT(fault(R"({"machine": {"ovality_limit": true}})"), StartsWith("rules.wrong-type /machine/ovality_limit"));
  CHECK_THAT(fault(R"({"direct": {"default_thread": "NPTX"}})"),
             StartsWith("rules.unknown-value /direct/default_thread"));
  CHECK_THAT(fault(R"({"place": {"default_clock": "13:00"}})"), StartsWith("rules.unknown-value /place/default_clock"));
  CHECK_THAT(fault(R"({"place": {"farthest_shift": "-2 ft"}})"),
             StartsWith("rules.out-of-range /place/farthest_shift"));
}

TEST_CASE("no rule can be taken away") {
  CHECK_THAT(fault(R"({"pressure": {"stop_rating": null}})"),
             StartsWith("rules.wrong-type /pressure/stop_rating: null"));
  CHECK_THAT(fault(R"({"pressure": {"stop_rating": {"reason": "x"}}})"),
             StartsWith("rules.missing /pressure/stop_rating"));
  CHECK_THAT(fault(R"({"pressure": null})"), StartsWith("rules.wrong-type /pressure"));
  CHECK_THAT(fault(R"({"direct": {"largest": null}})"), StartsWith("rules.wrong-type /direct/largest"));
}

TEST_CASE("a row of largest taps must be whole") {
  const auto row = [](const std::string& text) { return fault(R"({"saddle": {"largest": [)" + text + "]}}"); };
  CHECK_THAT(row(R"({"material": "PVC"})"),
             StartsWith("rules.missing /saddle/largest/0: a row without its largest tap"));
  CHECK_THAT(row(R"({"largest": "none"})"), StartsWith("rules.missing /saddle/largest/0: a row that allows no tap"));
  CHECK_THAT(row(R"({"largest": "1"})"),
             StartsWith("rules.wrong-quantity /saddle/largest/0/largest: \"1\" has no unit"));
  CHECK_THAT(row(R"({"largest": "1 in", "material": ["PVC", "iron"]})"),
             StartsWith("rules.unknown-value /saddle/largest/0/material/1: \"iron\""));
  CHECK_THAT(
      row(R"({"largest": "1 in", "series": "pvc-c90"})"),
      StartsWith("rules.unknown-value /saddle/largest/0/series: \"pvc-c90\" is not a known series of pipe | did you "
                 "mean \"pvc-c900\"?"));
  CHECK_THAT(row(R"({"largest": "1 in", "main_from": "12 in", "main_to": "6 in"})"),
             StartsWith("rules.contradiction /saddle/largest/0"));
  CHECK_THAT(row("7"), StartsWith("rules.wrong-type /saddle/largest/0: a number"));
}

TEST_CASE("two rules that exclude each other are refused at the one that was set") {
  CHECK_THAT(fault(R"({"machine": {"push_caution": {"value": "60 lbf", "reason": "strong backs"}}})"),
             StartsWith("rules.contradiction /machine/push_caution"));
  CHECK_THAT(fault(R"({"machine": {"push_limit": "30 lbf"}})"), StartsWith("rules.contradiction /machine/push_limit"));
  CHECK(sound({R"({"machine": {"push_limit": "30 lbf", "push_caution": "20 lbf"}})"}).machine.push_limit.value /
            units::lbf ==
        Catch::Approx(30));
  CHECK_THAT(
      fault(R"({"direct": {"plastic_wet_tap_coldest": "95 degF"}})"),
      StartsWith("rules.contradiction /direct/plastic_wet_tap_coldest: direct.plastic_wet_tap_coldest lies above "
                 "direct.plastic_wet_tap_warmest | set direct.plastic_wet_tap_warmest to match; it is 90 degF"));
  CHECK_THAT(fault(R"({"direct": {"plastic_dry_tap_warmest": "-10 degF"}})"),
             StartsWith("rules.out-of-range /direct/plastic_dry_tap_warmest"));
  CHECK_THAT(fault(R"({"direct": {"plastic_dry_tap_coldest": "101 degF"}})"),
             StartsWith("rules.contradiction /direct/plastic_dry_tap_coldest"));
  CHECK_THAT(fault(R"({"pressure": {"plastic_surge_factor": 0.9}})"),
             StartsWith("rules.out-of-range /pressure/plastic_surge_factor"));
  CHECK_THAT(fault(R"({"pressure": {"plastic_recurring_surge_factor": {"value": 1.7, "reason": "short pipe"}}})"),
             StartsWith("rules.contradiction /pressure/plastic_recurring_surge_factor"));
  CHECK_THAT(fault(R"({"place": {"least_cover": "6 ft", "greatest_cover": "5 ft"}})"),
             StartsWith("rules.contradiction /place/least_cover"));
  CHECK_THAT(fault(R"({"place": {"default_clock": "4:00"}})"), StartsWith("rules.contradiction /place/default_clock"));
  CHECK_THAT(fault(R"({"place": {"lowest_elevation": "50 deg"}})"),
             StartsWith("rules.contradiction /place/lowest_elevation: place.default_clock lies below"));
  CHECK_THAT(fault(R"({"pit": {"engineer_depth": "4 ft", "protective_system_depth": "4 ft", "short_term_depth": "6 ft",
                               "vertical_lower_depth": "4 ft"}})"),
             StartsWith("rules.contradiction /pit/short_term_depth"));
}

TEST_CASE("the second file may contradict the first, and is refused where it does") {
  const RulesFile read = load({R"({"place": {"least_cover": "6 ft"}})", R"({"place": {"greatest_cover": "5 ft"}})"});
  REQUIRE(read.diagnostics.size() == 1);
  CHECK(read.diagnostics.front().file == "own2.json");
  CHECK(read.diagnostics.front().pointer == "/place/greatest_cover");
}

TEST_CASE("a row that an earlier row leaves nothing to decide is refused") {
  const auto list = [](const std::string& rows) { return fault(R"({"direct": {"largest": [)" + rows + "]}}"); };
  CHECK_THAT(
      list(R"({"material": ["ductile iron", "cast iron"], "main_from": "6 in", "largest": "3/4 in"},
                     {"material": "ductile iron", "main_from": "8 in", "main_to": "12 in", "largest": "1 in"})"),
      StartsWith("rules.contradiction /direct/largest/1: row 1 is for all of these mains, stands first, and says "
                 "3/4 in"));
  CHECK_THAT(list(R"({"main_above": "4 in", "largest": "none", "why": "use a saddle"},
                     {"material": "ductile iron", "main_above": "6 in", "largest": "3/4 in"})"),
             StartsWith("rules.contradiction /direct/largest/1"));
  // The exception before the rule, a row that reaches farther, and a repeated word are in order.
  sound({R"({"direct": {"largest": [
    {"material": "ductile iron", "main_from": "8 in", "main_to": "10 in", "largest": "1 in"},
    {"material": "ductile iron", "main_from": "6 in", "largest": "3/4 in"},
    {"material": "ductile iron", "main_from": "4 in", "largest": "5/8 in"},
    {"material": "ductile iron", "main_from": "12 in", "largest": "3/4 in"}]}})"});
  // A row may stand before the defaults and leave them nothing.
  sound({R"({"direct": {"largest_first": [{"largest": "none", "why": "saddles alone"}]}})"});
}

TEST_CASE("sizes of a row that leave no main are refused") {
  const auto row = [](const std::string& text) { return fault(R"({"direct": {"largest": [{)" + text + "}]}}"); };
  CHECK_THAT(row(R"("main_above": "6 in", "main_to": "6 in", "largest": "5/8 in")"),
             StartsWith("rules.contradiction /direct/largest/0: main_to leaves nothing over main_above"));
  CHECK_THAT(row(R"("main_above": "6 in", "main_below": "6 in", "largest": "5/8 in")"),
             StartsWith("rules.contradiction /direct/largest/0: main_below"));
  CHECK_THAT(row(R"("main_from": "6 in", "main_below": "6 in", "largest": "5/8 in")"),
             StartsWith("rules.contradiction /direct/largest/0: main_below"));
}

TEST_CASE("the smallest tap and a largest tap below it exclude each other") {
  CHECK_THAT(fault(R"({"water": {"smallest_tap": "3/4 in"},
                       "direct": {"largest": [{"material": "ductile iron", "largest": "5/8 in"}]}})"),
             StartsWith("rules.contradiction /direct/largest/0: the largest tap of 5/8 in lies below"));
  const RulesFile read = load({R"({"direct": {"largest": [{"material": "ductile iron", "largest": "5/8 in"}]}})",
                               R"({"water": {"smallest_tap": "3/4 in"}})"});
  REQUIRE(read.diagnostics.size() == 1);
  CHECK(read.diagnostics.front().pointer == "/water/smallest_tap");
  sound({R"({"water": {"smallest_tap": "3/4 in"},
             "direct": {"largest": [{"material": "ductile iron", "largest": "3/4 in"}]}})"});
}

TEST_CASE("looser than a safety default needs a reason in the file") {
  CHECK(fault(R"({"pressure": {"stop_rating": "101 psi"}})") ==
        "rules.looser-without-reason /pressure/stop_rating: pressure.stop_rating: 101 psi is looser than the default, "
        "100 psi | say why: { \"value\": \"101 psi\", \"reason\": \"...\" }");
  CHECK_THAT(fault(R"({"pressure": {"stop_rating": {"value": "150 psi", "reason": ""}}})"),
             StartsWith("rules.looser-without-reason"));
  CHECK_THAT(fault(R"({"pressure": {"stop_rating": {"value": "150 psi", "reason": "  "}}})"),
             StartsWith("rules.looser-without-reason"));
  CHECK_THAT(fault(R"({"direct": {"required_threads": 1.5}})"), StartsWith("rules.looser-without-reason"));
  CHECK_THAT(fault(R"({"place": {"clearances": {"joint": "12 in"}}})"),
             StartsWith("rules.looser-without-reason /place/clearances/joint"));
  sound({R"({"pressure": {"stop_rating": "100 psi"}})"});  // as the default
  sound({R"({"direct": {"required_threads": 4}})"});       // stricter
  sound({R"({"water": {"velocity_limit": "10 ft/s"}})"});  // guards comfort
  sound({R"({"direct": {"threads_showing": 3}})"});        // a matter of habit
  // Where neither way is the stricter, a reason is asked for either way.
  CHECK(fault(R"({"measuring": {"od_uncertainty": "0.01 in"}})") ==
        "rules.looser-without-reason /measuring/od_uncertainty: measuring.od_uncertainty: 0.01 in is neither stricter "
        "nor "
        "looser than the default, 0.03 in | say why: { \"value\": \"0.01 in\", \"reason\": \"...\" }");
  CHECK_THAT(fault(R"({"measuring": {"od_uncertainty": "1 in"}})"), StartsWith("rules.looser-without-reason"));
  const Rules rules = sound({R"({"pressure": {"stop_rating": {"value": "150 psi", "reason": "stocked"}}})"});
  REQUIRE(rules.looser.size() == 1);
  CHECK(rules.looser.front().path == "pressure.stop_rating");
  CHECK(*rules.looser.front().basis.reason == "stocked");
}

TEST_CASE("a row looser than the defaults for any main needs a reason, and one that is not does not") {
  const auto list = [](const std::string& row) { return R"({"direct": {"largest": [)" + row + "]}}"; };
  CHECK(fault(list(R"({"material": "ductile iron", "largest": "1 in"})")) ==
        "rules.looser-without-reason /direct/largest/0: direct.largest: 1 in on ductile iron of 3 to 4 in is looser "
        "than the default, 3/4 in | say why in the row: \"reason\": \"...\"");
  CHECK_THAT(fault(list(R"({"material": "polyethylene", "largest": "3/4 in"})")),
             StartsWith("rules.looser-without-reason"));
  sound({list(R"({"material": "ductile iron", "main_from": "6 in", "largest": "1 in"})")});
  sound({list(R"({"material": "ductile iron", "largest": "1 in", "reason": "tried for forty years"})")});
  CHECK(sound({list("")}).looser.empty());
}

TEST_CASE("the reason is asked of the file that loosens, whatever was laid before it") {
  const std::string county = R"({"pressure": {"stop_rating": {"value": "150 psi", "reason": "stocked"}}})";
  const RulesFile read = load({county, R"({"pressure": {"stop_rating": "120 psi"}})"});
  REQUIRE(read.diagnostics.size() == 1);
  CHECK(read.diagnostics.front().file == "own2.json");
  sound({county, R"({"name": "Town", "pressure": {"wet_tap_limit": "100 psi"}})"});
  CHECK(sound({county, R"({"pressure": {"stop_rating": "90 psi"}})"}).looser.empty());
}

TEST_CASE("rows may stand before the list in force, and files go on being laid") {
  const Rules defaults = sound({});
  const std::string first = R"({"direct": {"largest_first": [
    {"material": "PVC", "largest": "none", "why": "saddles alone", "reference": "Standard 4.3"}]}})";
  const Rules rules = sound({first});
  REQUIRE(rules.direct.largest.size() == defaults.direct.largest.size() + 1);
  CHECK(rules.direct.largest[0].why == "saddles alone");
  CHECK(rules.direct.largest[0].basis.utility);
  CHECK_FALSE(rules.direct.largest[1].basis.utility);
  // The list behind them is replaced, and they stay; they are replaced, and the list stays.
  const Rules both = sound({first, R"({"direct": {"largest": [{"material": "cast iron", "largest": "3/4 in",
                                                              "reason": "every size"}]}})"});
  REQUIRE(both.direct.largest.size() == 2);
  CHECK(both.direct.largest[0].why == "saddles alone");
  CHECK(sound({first, R"({"direct": {"largest_first": []}})"}).direct.largest.size() == defaults.direct.largest.size());
}

TEST_CASE("rules that no default asks for are unset until a file sets them, and again when it says null") {
  const Rules defaults = sound({});
  CHECK_FALSE(defaults.place.least_cover.value);
  CHECK_FALSE(defaults.water.smallest_tap.value);
  CHECK(defaults.main.not_tapped.empty());
  CHECK(defaults.main.closed_season.empty());
  const Rules rules = sound({R"({"place": {"least_cover": "1.8 m"}, "water": {"smallest_tap": {"value": "3/4 in"}}})"});
  CHECK(*rules.place.least_cover.value / units::foot == Catch::Approx(1.8 / 0.3048));
  CHECK(rules.water.smallest_tap.value == NominalSize::inches(0.75));
  CHECK_FALSE(
      sound({R"({"place": {"least_cover": "6 ft"}})", R"({"place": {"least_cover": null}})"}).place.least_cover.value);
  CHECK_THAT(fault(R"({"place": {"least_cover": {"reference": "Standard 3"}}})"),
             StartsWith("rules.missing /place/least_cover: a rule without a value"));
  CHECK_THAT(fault(R"({"place": {"least_cover": "82 psi"}})"), StartsWith("rules.wrong-quantity /place/least_cover"));
}

TEST_CASE("seasons, mains left alone and words on fittings are read whole") {
  const Rules rules = sound({R"({"main": {
    "closed_season": [{"material": "cast iron", "main_from": "6 in", "from": "11-01", "to": "04-01", "why": "cold iron"}],
    "not_tapped": [{"main_above": "16 in", "class": "PC 250", "why": "trunk mains"}]},
    "saddle": {"specification": [{"tap_above": "1 in", "text": "double strap", "reference": "Standard 5"}]}})"});
  REQUIRE(rules.main.closed_season.size() == 1);
  CHECK(rules.main.closed_season.front().from == YearDay{11, 1});
  CHECK(rules.main.closed_season.front().to_text == "1 April");
  CHECK(rules.main.closed_season.front().covers(Material::cast_iron, NominalSize::inches(6)));
  CHECK_FALSE(rules.main.closed_season.front().covers(Material::cast_iron, NominalSize::inches(4)));
  REQUIRE(rules.main.not_tapped.size() == 1);
  CHECK_FALSE(rules.main.not_tapped[0].covers(Material::pvc, NominalSize::inches(16)));
  CHECK(rules.main.not_tapped[0].covers(Material::pvc, NominalSize::inches(18)));
  REQUIRE(rules.saddle.specification.size() == 1);
  CHECK(*rules.saddle.specification.front().basis.reference == "Standard 5");

  CHECK_THAT(fault(R"({"main": {"closed_season": [{"from": "11-31", "to": "04-01"}]}})"),
             StartsWith("rules.unknown-value /main/closed_season/0/from: \"11-31\" is no day of the year"));
  CHECK_THAT(fault(R"({"main": {"closed_season": [{"from": "1 Nov", "to": "04-01"}]}})"),
             StartsWith("rules.unknown-value /main/closed_season/0/from"));
  CHECK_THAT(fault(R"({"main": {"closed_season": [{"from": "11-01"}]}})"),
             StartsWith("rules.missing /main/closed_season/0: a closed season without its first or last day"));
  CHECK_THAT(fault(R"({"main": {"not_tapped": [{"main_above": "16 in"}]}})"),
             StartsWith("rules.missing /main/not_tapped/0"));
  CHECK_THAT(fault(R"({"main": {"not_tapped": [{"main_above": "16 in", "why": "trunk", "largest": "1 in"}]}})"),
             StartsWith("rules.unknown-key /main/not_tapped/0/largest"));
  CHECK_THAT(fault(R"({"saddle": {"specification": [{"material": "PVC"}]}})"),
             StartsWith("rules.missing /saddle/specification/0: a specification without a word"));
  CHECK_THAT(fault(R"({"saddle": {"specification": "double strap"}})"),
             StartsWith("rules.wrong-type /saddle/specification: a text where a list should stand"));
}

TEST_CASE("all problems are reported at once, each at its line") {
  const RulesFile read =
      load({"{\n  \"pressure\": {\n    \"stop_rating\": 150,\n    \"saddle_rating\": \"18 in\"\n  },\n"
            "  \"pase\": {}\n}\n"});
  REQUIRE(read.diagnostics.size() == 3);
  CHECK(read.diagnostics[0].line == 3);
  CHECK(read.diagnostics[0].column == 20);
  CHECK(read.diagnostics[1].line == 4);
  CHECK(read.diagnostics[2].line == 6);
  CHECK(read.diagnostics[2].file == "own1.json");
}

TEST_CASE("a text that is no rules file is refused and not read further") {
  CHECK_THAT(fault("[]"), StartsWith("rules.wrong-type : a list where the rules should stand"));
  CHECK_THAT(fault("{\"pressure\": {\"stop_rating\": \"150 psi\",}}"), StartsWith("json.syntax"));
  CHECK_THAT(fault(""), StartsWith("json.syntax"));
  CHECK_THAT(fault("{\"name\": \"\xFF\"}"), StartsWith("json.encoding"));
  CHECK_THAT(fault(R"({"name": "a", "name": "b"})"), StartsWith("rules.duplicate-key /name"));
  CHECK_THAT(fault("{\"name\": \"red \\u001b[31m\"}"), StartsWith("rules.unknown-value /name"));
  CHECK(sound({"\xEF\xBB\xBF{\"name\": \"Town\"}\r\n"}).name == "Town");
}

TEST_CASE("every code of a rules diagnostic is explained") {
  for (const DiagnosticText& text : rules_diagnostic_texts()) {
    CHECK(text.code.starts_with("rules."));
    CHECK_FALSE(text.about.empty());
  }
}

TEST_CASE("the example of an invented district loads") {
  std::ifstream in(std::string(MAINBORE_SOURCE_DIR) + "/examples/rules/ashby_vale.json", std::ios::binary);
  REQUIRE(in);
  const Rules rules = sound({std::string(std::istreambuf_iterator<char>(in), {})});
  CHECK(rules.name == "Ashby Vale Water District");
  CHECK(rules.direct.required_threads.value == Catch::Approx(3));
  CHECK(*rules.direct.required_threads.basis.reference == "Ashby Vale Standard 4.1");
  CHECK(*rules.pressure.wet_tap_limit.basis.reference == "Ashby Vale Water District");
  for (const LooserRule& rule : rules.looser) CHECK(rule.basis.reason != nullptr);
}

TEST_CASE("a list has as many rows as a utility writes") {
  std::string rows;
  for (int year = 0; year < 400; ++year) {
    rows += R"({"material": "PVC", "series": "pvc-c900", "class": "DR 18", "wall_from": "0.)" +
            std::to_string(999 - year) + R"( in", "largest": "3/4 in", "reason": "kept apart"},)";
  }
  rows += R"({"material": "ductile iron", "largest": "3/4 in", "reference": "the last row", "reason": "x"})";
  const RulesFile read =
      load_rules(Catalog::builtin(), std::vector<RuleText>{{"own.json", R"({"direct": {"largest": [)" + rows + "]}}"}});
  for (const Diagnostic& d : read.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  REQUIRE(read.rules);
  REQUIRE(read.rules->direct.largest.size() == 401);
  Job job;
  job.main.material = Material::ductile_iron;
  job.main.size = NominalSize::inches(8);
  job.main.pressure = 60.0 * units::psi;
  job.service.size = NominalSize::inches(0.75);
  job.service.method = Method::direct;
  const Plan made = test::plan_under(job, *read.rules);
  REQUIRE(made.method.kind == Method::direct);
  REQUIRE(made.method.limit != nullptr);
  CHECK(*made.method.limit->basis.reference == "the last row");
}
