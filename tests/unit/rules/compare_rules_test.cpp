// Two sets of rules side by side, and the rules in force in words.
#include <algorithm>
#include <string>
#include <vector>

#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_compare.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/rules_report.hpp"
#include "support/catch.hpp"
#include "support/rules_of.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

// Each difference as "path [mains]: change before -> after".
std::vector<std::string> lines_of(const Rules& before, const Rules& after) {
  std::vector<std::string> lines;
  for (const RuleDifference& one : compare_rules(Catalog::builtin(), before, after)) {
    const std::string mains = mains_in_words(one);
    const auto side = [&](const Detail& value, const RuleRow& row) {
      const std::string words = rule_in_words(value, mains.empty() ? row : RuleRow(), UnitSystem::us);
      return words.empty() ? std::string("-") : words;
    };
    lines.push_back(std::string(one.path) + (mains.empty() ? "" : " [" + mains + "]") + ": " +
                    std::string(name_of(one.change)) + ' ' + side(one.before, one.row_before) + " -> " +
                    side(one.after, one.row_after));
  }
  return lines;
}
std::vector<std::string> against_defaults(const std::string& text) { return lines_of(rules_of(""), rules_of(text)); }

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("equal sets do not differ") { CHECK(against_defaults("").empty()); }

TEST_CASE("a number is stricter by its own way of being so") {
  CHECK(against_defaults(R"({"direct": {"required_threads": 3}})") ==
        Lines{"direct.required_threads: stricter 2 threads -> 3 threads"});
  CHECK(against_defaults(R"({"pressure": {"stop_rating": "80 psi"}})") ==
        Lines{"pressure.stop_rating: stricter 100 psi -> 80 psi"});
  CHECK(against_defaults(R"({"pressure": {"stop_rating": {"value": "120 psi", "reason": "x"}}})") ==
        Lines{"pressure.stop_rating: looser 100 psi -> 120 psi"});
  CHECK(against_defaults(R"({"place": {"clearances": {"tap": "24 in"}}})") ==
        Lines{"place.clearances.tap: stricter 1 ft 6 in -> 2 ft"});
  CHECK(against_defaults(R"({"direct": {"threads_showing": 3}})") ==
        Lines{"direct.threads_showing: other 2 threads -> 3 threads"});
  CHECK(against_defaults(R"({"direct": {"default_thread": {"value": "NPT", "reason": "x"}}})") ==
        Lines{"direct.default_thread: other AWWA taper -> NPT"});
  CHECK(against_defaults(R"({"pressure": {"stop_rating": "100 psi"}})") ==
        Lines{"pressure.stop_rating: same 100 psi -> 100 psi"});
  CHECK(against_defaults(R"({"place": {"least_cover": "6 ft"}})") == Lines{"place.least_cover: stricter - -> 6 ft"});
  CHECK(lines_of(rules_of(R"({"place": {"least_cover": "6 ft"}})"), rules_of("")) ==
        Lines{"place.least_cover: looser 6 ft -> -"});
}

TEST_CASE("lists of largest taps are compared by what they say of mains") {
  CHECK(against_defaults(R"({"saddle": {"largest_first": [{"material": "PVC", "main_from": "6 in", "main_to": "8 in",
                                                          "largest": "1 in"}]}})") ==
        Lines{"saddle.largest [PVC of 6 to 8 in]: stricter 2 in -> 1 in"});
  CHECK(against_defaults(R"({"direct": {"largest_first": [{"material": "cast iron", "main_to": "3 in",
                                                          "largest": "1 in", "reason": "x"}]}})") ==
        Lines{"direct.largest [cast iron of 3 in]: looser 3/4 in -> 1 in"});
  // Only some classes of a size.
  CHECK(against_defaults(R"({"direct": {"largest_first": [{"material": "ductile iron", "class": "PC 250",
                                                          "main_from": "14 in", "main_to": "14 in",
                                                          "largest": "1 in"}]}})") ==
        Lines{"direct.largest [ductile iron of 14 in, such as PC 250]: stricter 1-1/4 in -> 1 in"});
}

TEST_CASE("a main left alone takes no tap by any method") {
  const auto lines = against_defaults(R"({"main": {"not_tapped": [{"main_above": "48 in", "why": "trunk mains"}]}})");
  CHECK(lines.front() == "main.not_tapped: stricter - -> mains over 48 in: none; trunk mains");
  CHECK(lines.size() == 1);  // once, and not by each method again
  // The other way round each method opens, and a default that is set looser asks for its reason.
  const auto opened =
      lines_of(rules_of(R"({"main": {"not_tapped": [{"main_above": "48 in", "why": "trunk mains"}]}})"), rules_of(""));
  CHECK(std::count(opened.begin(), opened.end(), "direct.largest [ductile iron of 54 to 64 in]: looser - -> 2 in") ==
        1);
}

TEST_CASE("what is in force is listed once, by group") {
  const Rules rules = rules_of(R"({"main": {"closed_season": [{"from": "12-01", "to": "02-29"}]}})");
  const std::vector<RuleInForce> list = list_rules(rules);
  std::vector<std::string> groups;
  for (const RuleInForce& rule : list) {
    const std::string group(rule.path.substr(0, rule.path.find('.')));
    if (groups.empty() || groups.back() != group) groups.push_back(group);
    CHECK_FALSE(rule.help.empty());
  }
  std::vector<std::string> sorted = groups;
  std::sort(sorted.begin(), sorted.end());
  CHECK(std::adjacent_find(sorted.begin(), sorted.end()) == sorted.end());
  const auto season =
      std::find_if(list.begin(), list.end(), [](const RuleInForce& r) { return r.path == closed_season_path; });
  REQUIRE(season != list.end());
  CHECK(rule_in_words(season->value, season->row, UnitSystem::us) == "any main: from 1 December to 29 February");
}

TEST_CASE("a text of rules keeps to its width and tells a default from a utility's own") {
  const Rules rules = rules_of(R"({"name": "Fern Hollow Water", "pressure": {
    "stop_rating": {"value": "150 psi", "reference": "Standard 3", "reason": "no other is stocked"}}})");
  const auto differences = compare_rules(Catalog::builtin(), rules_of(""), rules);
  const std::string check = rules_check_text(rules, differences, UnitSystem::us);
  CHECK(check.find("1 rule set") != std::string::npos);
  CHECK(check.find("LOOSER") != std::string::npos);
  CHECK(check.find("Reason: no other is stocked.") != std::string::npos);
  for (const std::string& text : {check, rules_show_text(rules, list_rules(rules), UnitSystem::si, 60)}) {
    for (std::size_t begin = 0; begin < text.size();) {
      const std::size_t end = text.find('\n', begin);
      REQUIRE(end - begin <= 80);
      begin = end + 1;
    }
  }
  const std::string shown = rules_show_text(rules, list_rules(rules), UnitSystem::si);
  CHECK(shown.find("pressure.stop_rating: 1034 kPa") != std::string::npos);
  CHECK(shown.find("Standard 3 (own.json)") != std::string::npos);
}
