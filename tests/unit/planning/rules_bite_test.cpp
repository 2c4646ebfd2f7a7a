// Every rule bites, and in the direction that its table says.
#include <algorithm>
#include <string>
#include <vector>

#include "mainbore/job_file.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rule_fields.hpp"
#include "rules/conflicts.hpp"
#include "rules/tap_limits.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Rules fresh_rules() { return std::move(*load_rules(Catalog::builtin()).rules); }

// A rule set to a number, in base units; false where it has none.
bool set_number(Rules& rules, const RuleField& field, double base) {
  return std::visit(
      [&]<class T>(const RuleTarget<Rule<T>>& target) {
        T& value = target.in(rules).value;
        if constexpr (std::is_same_v<T, double> || std::is_same_v<T, std::optional<double>>) value = base;
        else if constexpr (std::is_same_v<T, Temperature> || std::is_same_v<T, std::optional<Temperature>>)
          value = Temperature::fahrenheit(base);
        else if constexpr (std::is_same_v<T, NominalSize> || std::is_same_v<T, std::optional<NominalSize>>)
          value = NominalSize::inches(base);
        else if constexpr (std::is_same_v<T, std::optional<Length>>) value = Length::from_base(base);
        else if constexpr (std::is_same_v<T, ThreadStandard> || std::is_same_v<T, ClockPosition>) return false;
        else value = T::from_base(base);
        return true;
      },
      field.target);
}

std::optional<double> number_in(const Rules& rules, const RuleField& field) {
  return number_of(value_of(rules, field));
}

// From the rule as it stands toward one end of its range: a little, or anywhere.
double moved(WholeJobs& random, double from, double end) {
  const double share = random.chance(50) ? random.real(0, 1) : random.real(0, 0.1);
  return from + share * (end - from);
}

std::string told(const Plan& plan) {
  std::string text(name_of(plan.verdict));
  text += ' ';
  text += name_of(plan.method.kind);
  for (const Finding& finding : plan.findings) {
    if (finding.severity >= Severity::hold) text += ' ' + std::string(name_of(finding.code));
  }
  for (const RejectedMethod& rejected : plan.method.rejected) {
    text += " (" + std::string(name_of(rejected.kind)) + ": " + std::string(name_of(rejected.why.code)) + ')';
  }
  return text;
}

std::string words_of(const Job& job) { return job_to_json(job, UnitSystem::us, JsonStyle::compact); }

}  // namespace

TEST_CASE("a rule moved the way called stricter never betters a verdict") {
  WholeJobs random(31);
  Rules rules = fresh_rules();
  const int jobs = random_jobs(400);
  for (const RuleField& field : rule_fields()) {
    if (field.stricter == Stricter::neither) continue;
    for (int i = 0; i < jobs; ++i) {
      const Job job = random.next();
      const auto usual = number_in(rules, field);
      // From the default, or from wherever a utility may have it.
      const double start = usual && random.chance(50) ? *usual : random.real(field.least, field.greatest);
      const double stricter = moved(random, start, field.stricter == Stricter::higher ? field.greatest : field.least);
      const auto plan_at = [&](double value) -> std::optional<Plan> {
        set_number(rules, field, value);
        if (!rules::conflicts(rules).empty()) return std::nullopt;  // would not be read
        return plan_under(job, rules);
      };
      const auto before = plan_at(start);
      const auto after = plan_at(stricter);
      if (before && after && after->verdict < before->verdict) {
        UNSCOPED_INFO(field.path << " from " << start << " to " << stricter << "\n"
                                 << told(*before) << "\n"
                                 << told(*after));
        UNSCOPED_INFO(words_of(job));
        CHECK(after->verdict >= before->verdict);
        break;
      }
      if (usual) set_number(rules, field, *usual);
      else rules = fresh_rules();
    }
  }
}

TEST_CASE("a rule that has no stricter way and asks for no reason betters no verdict") {
  WholeJobs random(33);
  Rules rules = fresh_rules();
  const int jobs = random_jobs(400);
  for (const RuleField& field : rule_fields()) {
    const auto usual = number_in(rules, field);
    if (field.stricter != Stricter::neither || field.safety) continue;
    for (int i = 0; i < jobs; ++i) {
      const Job job = random.next();
      const Plan before = plan_under(job, rules);
      if (field.path == "direct.default_thread") rules.direct.default_thread.value = ThreadStandard::npt;
      else if (field.path == "place.default_clock")
        rules.place.default_clock.value = ClockPosition{static_cast<int>(random.below(180))};
      else set_number(rules, field, moved(random, *usual, random.chance(50) ? field.greatest : field.least));
      if (rules::conflicts(rules).empty()) {
        const Plan after = plan_under(job, rules);
        if (after.verdict < before.verdict) {
          UNSCOPED_INFO(field.path << ' ' << number_in(rules, field).value_or(0.0) << "\n"
                                   << told(before) << "\n"
                                   << told(after));
          CHECK(after.verdict >= before.verdict);
          break;
        }
      }
      if (usual) set_number(rules, field, *usual);
      else rules = fresh_rules();
    }
    rules = fresh_rules();
  }
}

TEST_CASE("a stricter clearance never betters a verdict, and each changes some plan") {
  WholeJobs random(34);
  Rules rules = fresh_rules();
  for (std::size_t i = 0; i < rules.place.clearances.size(); ++i) {
    Length& least = rules.place.clearances[i].least.value;
    const Length usual = least;
    bool bites = false;
    for (int j = 0; j < random_jobs(400); ++j) {
      Job job = random.next();
      Nearby thing;
      thing.what = rules.place.clearances[i].what;
      thing.along = random.real(-60, 60) * units::inch;
      if (job.nearby) job.nearby->push_back(thing);
      least = random.chance(50) ? usual : random.real(0, 60) * units::inch;
      const Plan before = plan_under(job, rules);
      least = least + random.real(0.1, 30) * units::inch;
      const Plan after = plan_under(job, rules);
      INFO(clearance_path(rules.place.clearances[i].what) << "\n"
                                                          << told(before) << "\n"
                                                          << told(after) << words_of(job));
      REQUIRE(after.verdict >= before.verdict);
      bites = bites || after.location.shift != before.location.shift;
    }
    least = usual;
    INFO(clearance_path(rules.place.clearances[i].what));
    CHECK(bites);
  }
}

TEST_CASE("each row of largest taps by default decides for some main of the catalog") {
  const Rules& rules = default_rules();
  for (const PermissionField& field : permission_fields()) {
    const TapLimits& list = field.target.in(rules);
    std::vector<int> decides(list.size());
    const auto count = [&](Material material, NominalSize size, const Pipe* pipe) {
      const TapLimit* const row = rules::deciding_row(list, material, size, pipe).row;
      if (row != nullptr) ++decides[static_cast<std::size_t>(row - &list[0])];
    };
    for (const Pipe& pipe : Catalog::builtin().pipes()) count(pipe.series->material, pipe.size, &pipe);
    // A size between those of the tables, or a material whose pipes are measured one by one.
    for (std::size_t m = 0; m < material_count; ++m) {
      for (int size = 1; size < 80; ++size) count(static_cast<Material>(m), NominalSize::inches(size), nullptr);
    }
    for (std::size_t i = 0; i < decides.size(); ++i) {
      INFO(field.path << " row " << i + 1);
      CHECK(decides[i] > 0);
    }
  }
}

TEST_CASE("there is a plan that each rule changes") {
  WholeJobs random(32);
  Rules rules = fresh_rules();
  const int tries = random_jobs(16000);
  std::vector<Job> jobs;
  for (int i = 0; i < tries; ++i) jobs.push_back(random.next());
  const auto shown = [&](const Job& job) {
    const Plan made = plan_under(job, rules);
    return plan_to_json(made, UnitSystem::us, JsonStyle::compact) + text_report(made);
  };
  for (const RuleField& field : rule_fields()) {
    const auto usual = number_in(rules, field);
    bool bites = false;
    for (std::size_t i = 0; i < jobs.size() && !bites; ++i) {
      const std::string before = shown(jobs[i]);
      if (field.path == "direct.default_thread") rules.direct.default_thread.value = ThreadStandard::npt;
      else if (field.path == "place.default_clock") rules.place.default_clock.value = ClockPosition{120};
      else
        set_number(rules, field,
                   moved(random, usual.value_or(field.least), random.chance(50) ? field.greatest : field.least));
      bites = rules::conflicts(rules).empty() && shown(jobs[i]) != before;
      if (usual) set_number(rules, field, *usual);
      else rules = fresh_rules();
    }
    INFO(field.path);
    CHECK(bites);
  }
}
