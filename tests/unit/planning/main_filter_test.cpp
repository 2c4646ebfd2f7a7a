// Rows for mains of a class, a wall, an inside diameter or a year, and what counts where that is not known.
#include <algorithm>
#include <array>
#include <string>

#include "mainbore/finding_words.hpp"
#include "rules/tap_limits.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Job cast_iron_16(const std::string& class_name) {
  Job job = sound_job();
  job.main.material = Material::cast_iron;
  job.main.size = NominalSize::inches(16);
  job.main.class_name = class_name;
  job.main.rating = 150.0 * units::psi;
  return job;
}

// A member that some text could have.
std::string random_criterion(WholeJobs& random) {
  const std::string inches = std::to_string(1 + random.below(40)) + " in\"";
  const std::string year = std::to_string(1880 + random.below(150));
  switch (random.below(9)) {
    case 0:
      return "\"bore_from\": \"" + inches;
    case 1:
      return "\"bore_to\": \"" + inches;
    case 2:
      return "\"bore_above\": \"" + inches;
    case 3:
      return "\"bore_below\": \"" + inches;
    case 4:
      return "\"laid_from\": " + year;
    case 5:
      return "\"laid_to\": " + year;
    case 6:
      return "\"wall_below\": \"0." + std::to_string(2 + random.below(8)) + " in\"";
    case 7:
      return "\"main_from\": \"" + inches;
    default:
      return "\"class\": \"DR 18\"";
  }
}

}  // namespace

// Cast iron of 1908, 16 in: outside and inside diameter of class A 17.40 and 16.20, of class B 17.40 and 16.00.
TEST_CASE("a text that speaks of the inside diameter is asked of the class, not of the nominal size") {
  const Rules over_16 = rules_of(R"({"main": {"not_tapped": [{"bore_above": "16 in", "why": "Trunk mains"}]}})");
  CHECK(has(plan_under(cast_iron_16("Class A"), over_16), FindingCode::main_not_tapped));
  CHECK_FALSE(has(plan_under(cast_iron_16("Class B"), over_16), FindingCode::main_not_tapped));
  CHECK_FALSE(has(plan_under(cast_iron_16("Class B"), over_16), FindingCode::main_perhaps_not_tapped));
  // Which of them it is nobody knows: held, not stopped.
  const Plan unknown = plan_under(cast_iron_16(""), over_16);
  CHECK(has(unknown, FindingCode::main_perhaps_not_tapped));
  CHECK(unknown.verdict != Verdict::go);
  const Rules from_16 = rules_of(R"({"main": {"not_tapped": [{"bore_from": "16 in", "why": "Trunk mains"}]}})");
  CHECK(has(plan_under(cast_iron_16("Class B"), from_16), FindingCode::main_not_tapped));
}

TEST_CASE("a row that forbids counts where it may be for the main, one that permits only where it surely is") {
  Job job = sound_job();
  const Rules cap = rules_of(R"({"main": {"at_most": [{"laid_to": 1970, "largest": "3/4 in", "reference": "S 3"}]}})");
  job.main.installed = 1990;
  CHECK(plan_under(job, cap).method.tap == NominalSize::inches(1));
  job.main.installed.reset();
  const Plan unsure = plan_under(job, cap);
  CHECK(unsure.method.tap != NominalSize::inches(1));
  const RejectedMethod* const direct = rejection(unsure, Method::direct);
  REQUIRE(direct != nullptr);
  CHECK(detail_of(direct->why, UnitSystem::us).find("main.installed") != std::string::npos);

  const Rules permission = rules_of(R"({"direct": {"largest_first": [
    {"material": "ductile iron", "laid_from": 1970, "largest": "1-1/2 in", "reason": "thick walls were bought since"},
    {"material": "ductile iron", "largest": "3/4 in"}]}})");
  job.main.installed = 1990;
  CHECK(plan_under(job, permission).method.kind == Method::direct);
  job.main.installed = 1960;
  CHECK(plan_under(job, permission).method.kind != Method::direct);
  job.main.installed.reset();
  CHECK(plan_under(job, permission).method.kind != Method::direct);
}

TEST_CASE("seasons, specifications and caps ask the same of a main as permissions do") {
  Job job = sound_job();
  job.date = "2026-01-15";
  job.main.installed = 1990;
  const Rules season = rules_of(R"({"main": {"closed_season": [{"laid_to": 1960, "from": "11-01", "to": "04-01"}]}})");
  CHECK_FALSE(has(plan_under(job, season), FindingCode::season_closed));
  job.main.installed.reset();
  CHECK(has(plan_under(job, season), FindingCode::season_closed));

  job.service.method = Method::saddle;
  const Rules words = rules_of(R"({"saddle": {"specification": [{"wall_below": "0.30 in", "text": "wide band"}]}})");
  const Plan thin = plan_under(job, words);
  REQUIRE(thin.method.specification != nullptr);
  CHECK(thin.method.specification->text == "wide band");
  job.main.class_name = "CL 56";
  CHECK(plan_under(job, words).method.specification == nullptr);
}

TEST_CASE("a row with any criterion that forbids, lowers or asks betters no verdict") {
  WholeJobs random(61);
  for (int file = 0; file < random_jobs(60); ++file) {
    const std::string criterion = random_criterion(random);
    const std::string largest = random.chance(50) ? R"("largest": "3/4 in")" : R"("largest": "none", "why": "by rule")";
    const std::string text =
        random.chance(50) ? R"({"main": {"not_tapped": [{)" + criterion + R"(, "why": "by rule"}]}})"
        : random.chance(50)
            ? R"({"main": {"at_most": [{)" + criterion + ", " + largest + "}]}}"
            : R"({"main": {"closed_season": [{)" + criterion + R"(, "from": "11-01", "to": "04-01"}]}})";
    const Rules own = rules_of(text);
    for (int i = 0; i < 25; ++i) {
      const Job job = random.next();
      INFO(text << ' ' << name_of(*job.main.material) << ' ' << job.main.size->label());
      REQUIRE(plan_under(job, own).verdict >= plan_of(job).verdict);
    }
  }
}

// Permissions of many kinds stand before the defaults; of what a row asks, the job says now more, now less.
TEST_CASE("a main of which less is known is permitted no more") {
  WholeJobs random(62);
  int differ = 0;
  for (int file = 0; file < random_jobs(40); ++file) {
    std::string rows;
    for (int row = 0; row < 3; ++row) {
      const NominalSize largest = NominalSize::inches(random.one_of(std::array{0.75, 1.0, 1.5, 2.0}));
      rows += (rows.empty() ? "{" : ", {") + std::string(random.chance(50) ? "\"laid_from\": " : "\"laid_to\": ") +
              std::to_string(1900 + random.below(100)) + ", \"largest\": \"" + largest.label() +
              " in\", \"reason\": \"by town rule\"}";
    }
    rows += R"(, {"largest": "3/4 in", "reason": "by town rule"})";
    // A row to which an earlier one leaves nothing is refused.
    RulesFile read =
        load_rules(Catalog::builtin(), std::vector<RuleText>{{"own", R"({"direct": {"largest": [)" + rows + "]}}"}});
    if (!read.rules) continue;
    const Rules own = std::move(*read.rules);
    for (int year = 1890; year < 2010; ++year) {
      const auto size = NominalSize::inches(8);
      const rules::Deciding known =
          rules::deciding_row(own.direct.largest, Material::steel, size, nullptr, {.od = {}, .wall = {}, .laid = year});
      const rules::Deciding open = rules::deciding_row(own.direct.largest, Material::steel, size, nullptr);
      REQUIRE(known.row != nullptr);
      REQUIRE(open.row != nullptr);
      INFO(rows << ", " << year);
      REQUIRE(open.row->largest <= known.row->largest);
      differ += open.row->largest < known.row->largest;
    }
  }
  CHECK(differ > 0);
}

// Where no row asks which pipe it is, one is asked for all; that may not show.
TEST_CASE("a ruling over several pipes is that of the one which is allowed least") {
  const Catalog& catalog = Catalog::builtin();
  const Rules own = rules_of(R"({"direct": {"largest_first": [
    {"material": "PVC", "class": "DR 18", "largest": "5/8 in", "reason": "by town rule"},
    {"material": "steel", "largest": "3/4 in", "consent": "the district engineer", "reason": "by town rule"}]}})");
  const Rules usual = rules_of("");
  for (const Rules* const under : {&usual, &own}) {
    const rules::MethodLists direct{
        under->direct.largest, under->direct.largest_by_default, {&under->main.at_most, &under->direct.at_most}};
    for (std::size_t m = 0; m < material_count; ++m) {
      for (const double inches : {4.0, 6.0, 8.0, 12.0, 16.0, 24.0}) {
        const auto material = static_cast<Material>(m);
        const NominalSize size = NominalSize::inches(inches);
        std::vector<const Pipe*> pipes;
        for (const Pipe& pipe : catalog.pipes(material, size)) pipes.push_back(&pipe);
        const rules::Ruling all = rules::ruling({material, size, pipes, {}}, direct);
        bool none = false;
        bool consent = false;
        std::optional<NominalSize> least;
        for (const Pipe* const& pipe : pipes) {
          const rules::Ruling one = rules::ruling({material, size, std::span(&pipe, 1), {}}, direct);
          none = none || one.none;
          consent = consent || one.by_consent != nullptr;
          if (one.permission != nullptr)
            least = std::min(least.value_or(one.permission->largest), one.permission->largest);
        }
        if (pipes.empty()) continue;
        INFO(name_of(material) << ' ' << size.label());
        CHECK(all.none == none);
        CHECK((all.by_consent != nullptr) == consent);
        CHECK((all.permission != nullptr) == least.has_value());
        if (least) CHECK(all.permission->largest == *least);
      }
    }
  }
}
