// Calculations: each number that decides, with the formula and the figures that it was worked out from.
//
// Planning writes a calculation down where it makes it, beside the evidence: nothing is worked out a second time, and the
// calculation sheet prints `Plan::calculations`. Of a verdict alone none are written down. What goes in stands in the order
// of the formula's symbols (formulas.hpp).
//
//     for (const Calculation& one : plan.calculations) std::cout << text_of(one.formula).title << '\n';
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "mainbore/evidence.hpp"
#include "mainbore/formulas.hpp"

namespace mainbore {

// A figure that goes in: from where, or by which other calculation of the same plan.
struct CalculationInput {
  Detail value;
  std::optional<Formula> worked_out;
  From from = From::table;
  Basis basis;
};

struct CalculationLimit {
  Measure value;
  bool is_least = false;  // the result must reach it
  std::optional<Formula> worked_out;
  From from = From::rule;
  Basis basis;
};

struct Calculation {
  PlanPart part = PlanPart::tap;
  Formula formula = Formula::tap_size;
  Detail of;  // which of several: "corporation stop", "least wall"
  std::vector<CalculationInput> inputs;
  Measure result;
  std::optional<CalculationLimit> limit;
  bool refused = false;  // of a method that was not taken, and why

  // Result over limit; of a least limit, limit over result: over 1 it is not met. Nothing where either is zero.
  [[nodiscard]] std::optional<double> utilization() const {
    if (!limit) return std::nullopt;
    const double above = limit->is_least ? limit->value.base() : result.base();
    const double below = limit->is_least ? result.base() : limit->value.base();
    if (!(below > 0.0)) return std::nullopt;
    return above / below;
  }
};

}  // namespace mainbore
