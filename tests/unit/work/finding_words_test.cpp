#include "mainbore/finding_words.hpp"

#include <algorithm>
#include <set>
#include <string>

#include "support/catch.hpp"
#include "unit/work/sample_plans.hpp"

namespace mainbore {
namespace {

Finding full(FindingCode code) {
  Finding finding = test::finding(code, Severity::hold);
  finding.value = Measure(82.0 * units::psi);
  finding.limit = Measure(80.0 * units::psi);
  finding.details = {std::string_view("alpha"), std::string_view("beta"), std::string_view("gamma"),
                     std::string_view("delta")};
  return finding;
}

FindingCode code_at(std::size_t i) { return static_cast<FindingCode>(i); }

}  // namespace

TEST_CASE("every finding has a title, a detail, a way forward and a why") {
  std::set<std::string_view> titles;
  for (std::size_t i = 0; i < finding_codes.size(); ++i) {
    INFO(finding_codes[i]);
    const FindingText& text = text_of(code_at(i));
    CHECK(titles.insert(text.title).second);
    CHECK(text.title.size() < 60);
    CHECK(text.title.find_first_of("{}[].") == std::string_view::npos);
    CHECK(text.detail.back() != ' ');
    CHECK_FALSE(text.fix.empty());
    CHECK(text.about.size() > 40);
    CHECK(text.about.find_first_of("{}[]") == std::string_view::npos);
  }
}

TEST_CASE("what to do is said of every code, with names where a plan has figures") {
  for (std::size_t i = 0; i < finding_codes.size(); ++i) {
    INFO(finding_codes[i]);
    const std::string fix = fix_in_general(code_at(i));
    CHECK_FALSE(fix.empty());
    CHECK(fix.find_first_of("{}[]|") == std::string::npos);
    CHECK(fix.find("not known)") == std::string::npos);
  }
  CHECK(fix_in_general(FindingCode::pressure_over_feed_limit).starts_with("Have the main lowered to <limit> or less"));
}

TEST_CASE("templates are well formed") {
  for (std::size_t i = 0; i < finding_codes.size(); ++i) {
    INFO(finding_codes[i]);
    for (const std::string_view text : {text_of(code_at(i)).detail, text_of(code_at(i)).fix}) {
      int depth = 0;
      for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] == '[') ++depth;
        if (text[at] == ']') CHECK(--depth >= 0);
        if (text[at] == '|') CHECK(depth > 0);
        if (text[at] != '{') continue;
        std::string_view name = text.substr(at + 1, text.find('}', at) - at - 1);
        INFO(name);
        if (name.ends_with('+') || name.ends_with('-')) name.remove_suffix(1);  // a figure that must be reached
        const bool known = name == "value" || name == "limit" || name == "margin" ||
                           (name.size() == 1 && name.front() >= '0' && name.front() <= '3') || reading_named(name);
        CHECK(known);
      }
      CHECK(depth == 0);
    }
  }
}

TEST_CASE("sentences are whole with everything known and with nothing known") {
  for (std::size_t i = 0; i < finding_codes.size(); ++i) {
    const Finding known = full(code_at(i));
    const Finding empty = test::finding(code_at(i), Severity::hold);
    for (const Finding* finding : {&known, &empty}) {
      for (const std::string& text : {detail_of(*finding, UnitSystem::us), fix_of(*finding, UnitSystem::si)}) {
        INFO(finding_codes[i] << ": " << text);
        CHECK(text.find_first_of("{}[]|") == std::string::npos);
        CHECK(text.find("  ") == std::string::npos);
        CHECK(text.find(" .") == std::string::npos);
        CHECK(text.find(" ,") == std::string::npos);
        CHECK(text.back() == '.');
        const bool capital = !(text.front() >= 'a' && text.front() <= 'z');
        CHECK(capital);
      }
    }
    CHECK(detail_of(known, UnitSystem::us).find("(not known)") == std::string::npos);
    CHECK(fix_of(known, UnitSystem::us).find("(not known)") == std::string::npos);
  }
}

TEST_CASE("what a crew reads is quoted from the plan's stop numbers") {
  Finding finding = test::finding(FindingCode::pressure_over_feed_limit, Severity::hold);
  finding.value = Measure(95.0 * units::psi);
  finding.limit = Measure(90.0 * units::psi);
  finding.details[0] = std::string_view("hand");
  const std::vector<StopNumber> readings = {{ReadingId::line_pressure, std::nullopt, Measure(70.0 * units::psi)}};
  CHECK(fix_of(finding, UnitSystem::us, readings).find("lowered to 70 psi or less") != std::string::npos);
  CHECK(fix_of(finding, UnitSystem::us).find("lowered to 90 psi or less") != std::string::npos);
  CHECK(detail_of(finding, UnitSystem::us, readings) ==
        "The line is at 95 psi. This machine is fed by hand only up to 90 psi.");
}

TEST_CASE("numbers are filled in, in the units asked for") {
  Finding finding = test::finding(FindingCode::pressure_over_feed_limit, Severity::hold);
  finding.value = Measure(95.0 * units::psi);
  finding.limit = Measure(80.0 * units::psi);
  finding.details[0] = std::string_view("hand");
  CHECK(detail_of(finding, UnitSystem::us) == "The line is at 95 psi. This machine is fed by hand only up to 80 psi.");
  CHECK(detail_of(finding, UnitSystem::si) ==
        "The line is at 655 kPa. This machine is fed by hand only up to 551 kPa.");
}

TEST_CASE("a margin is printed without its sign") {
  Finding finding = test::finding(FindingCode::pressure_over_pipe_rating, Severity::stop);
  finding.value = Measure(180.0 * units::psi);
  finding.limit = Measure(150.0 * units::psi);
  finding.details[0] = std::string_view("DR 25");
  CHECK(detail_of(finding, UnitSystem::us) == "The line is at 180 psi. DR 25 pipe is rated 150 psi, over by 30 psi.");
}

TEST_CASE("what is not known drops out of the sentence") {
  Finding finding = test::finding(FindingCode::main_year_contradicts, Severity::hold);
  finding.details = {std::string_view("PVC"), 1948, 1955, std::monostate{}};
  CHECK(detail_of(finding, UnitSystem::us) == "The card says PVC laid in 1948. It was laid from 1955 on.");
  finding.details[3] = 1990;
  CHECK(detail_of(finding, UnitSystem::us) == "The card says PVC laid in 1948. It was laid from 1955 to 1990.");
  finding.details[2] = std::monostate{};
  CHECK(detail_of(finding, UnitSystem::us) == "The card says PVC laid in 1948. It was laid until 1990.");
}

TEST_CASE("an empty class name counts as not known") {
  Finding finding = test::finding(FindingCode::main_class_unknown, Severity::caution);
  finding.details = {std::string_view(), 3, std::monostate{}, std::monostate{}};
  CHECK(detail_of(finding, UnitSystem::us) == "3 listed pipes fit what is known. Planned for the weakest of them.");
}

TEST_CASE("codes are found by name") {
  for (std::size_t i = 0; i < finding_codes.size(); ++i) CHECK(finding_named(finding_codes[i]) == code_at(i));
  CHECK_FALSE(finding_named("pressure.over"));
  CHECK_FALSE(finding_named(""));
}

TEST_CASE("details read as the trade writes them") {
  const auto shown = [](const Detail& detail) {
    std::string text;
    append_detail(text, detail, UnitSystem::us);
    return text;
  };
  CHECK(shown(NominalSize::inches(1.25)) == "1-1/4 in");
  CHECK(shown(Measure(6.9 * units::inch)) == "6.9 in");
  CHECK(shown(1986) == "1986");
  CHECK(shown(std::monostate{}).empty());
}

}  // namespace mainbore
