// What is read can be planned under: rules with any values that a file may give, any number of them at once.
#include <string>

#include "mainbore/report.hpp"
#include "mainbore/rule_fields.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

// A value of a rule as text: anywhere in its range, at an end of it, or as another rule that it may not pass.
std::string value_text(WholeJobs& random, const RuleField& field) {
  double value = random.real(field.least, field.greatest);
  if (random.chance(20)) value = random.chance(50) ? field.least : field.greatest;
  for (const RuleEnds& ends : rule_ends()) {
    if (!random.chance(30) || (ends.lower != field.path && ends.upper != field.path)) continue;
    const std::string_view other = ends.lower == field.path ? ends.upper : ends.lower;
    const auto fields = rule_fields();
    const auto found = std::find_if(fields.begin(), fields.end(), [&](const RuleField& f) { return f.path == other; });
    value = number_of(value_of(default_rules(), *found)).value_or(value);
  }
  const bool size = std::holds_alternative<RuleTarget<Rule<NominalSize>>>(field.target) ||
                    std::holds_alternative<RuleTarget<Rule<std::optional<NominalSize>>>>(field.target);
  if (size) return '"' + NominalSize::inches(std::round(4.0 * value) / 4.0).label() + " in\"";
  const Shown display = shown(Measure(value, field.kind), UnitSystem::us);
  if (display.unit.empty() || field.kind == Kind::ratio) return std::to_string(value);
  return '"' + std::to_string(display.value) + ' ' + std::string(display.unit) + '"';
}

std::string random_file(WholeJobs& random) {
  std::string text = R"({"name": "random")";
  std::string_view group;
  std::string members;
  const auto close = [&] {
    if (!members.empty()) text += ", \"" + std::string(group) + "\": {" + members + "}";
    members.clear();
  };
  const unsigned share = static_cast<unsigned>(1 + random.below(12));
  // Fields of one group do not all stand together: group by group.
  std::vector<std::string_view> groups;
  for (const RuleField& field : rule_fields()) {
    const std::string_view own = field.path.substr(0, field.path.find('.'));
    if (std::find(groups.begin(), groups.end(), own) == groups.end()) groups.push_back(own);
  }
  for (const std::string_view one : groups) {
    group = one;
    for (const RuleField& field : rule_fields()) {
      if (field.path.substr(0, field.path.find('.')) != group || !random.chance(share)) continue;
      if (!number_of(value_of(default_rules(), field)) && !may_be_unset(field)) continue;  // a thread, a clock position
      members += (members.empty() ? "\"" : ", \"") + std::string(field.path.substr(group.size() + 1)) +
                 R"(": {"value": )" + value_text(random, field) + R"(, "reason": "tried"})";
    }
    close();
  }
  return text + "}";
}

}  // namespace

TEST_CASE("under rules that read, every job is planned and printed") {
  WholeJobs random(51);
  const int sets = random_jobs(6000) / 20;
  int readable = 0;
  for (int i = 0; i < sets; ++i) {
    const std::string text = random_file(random);
    const RulesFile read = load_rules(Catalog::builtin(), std::vector<RuleText>{{"own.json", text}});
    if (!read.rules) {
      for (const Diagnostic& told : read.diagnostics) {
        INFO(text << '\n' << format_diagnostic(told));
        CHECK((told.code == "rules.contradiction" || told.code == "rules.out-of-range"));
      }
      continue;
    }
    ++readable;
    for (int j = 0; j < 20; ++j) {
      const Job job = random.next();
      INFO(text);
      REQUIRE_NOTHROW(text_report(plan_under(job, *read.rules)));
    }
  }
  CHECK(readable > sets / 4);
}
