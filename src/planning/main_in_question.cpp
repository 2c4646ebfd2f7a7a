#include "planning/main_in_question.hpp"

#include <array>
#include <numbers>

namespace mainbore::planning {

rules::MainInQuestion main_in_question(const Context& context, const ResolvedMain& main) {
  const MainFacts& facts = context.job().main;
  const Rules& rules = context.rules;
  rules::MainInQuestion question{main.material, main.size, main.candidates, {}};
  question.known.laid = facts.installed;
  const auto reading = [](Length value, Length error) { return rules::Span{value - error, value + error}; };
  if (main.wall_basis == WallBasis::measured && main.wall_nominal) {
    question.known.wall = reading(*main.wall_nominal, rules.measuring.wall_uncertainty.value);
  }
  if (facts.od) {
    question.known.od = reading(*facts.od, rules.measuring.od_uncertainty.value);
  } else if (facts.circumference) {
    question.known.od = reading((1.0 / std::numbers::pi) * *facts.circumference,
                                (1.0 / std::numbers::pi) * rules.measuring.circumference_uncertainty.value);
  }
  return question;
}

std::string_view fact_that_settles(rules::AsksOf what) {
  constexpr std::array<std::string_view, 4> paths = {"main.class", "main.wall", "main.od and main.wall",
                                                     "main.installed"};
  return paths[static_cast<std::size_t>(what)];
}

}  // namespace mainbore::planning
