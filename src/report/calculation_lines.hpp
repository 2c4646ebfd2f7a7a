// The calculations of a plan in words and figures, for the pages that print them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "mainbore/plan.hpp"

namespace mainbore::report {

struct CalculationFigure {
  std::string symbol;
  std::string value;  // "8.99 in"
  std::string what;
  std::string source;  // "line 4", "given by the job", "AWWA C151/A21.51-17 (published)"
};

struct CalculationLine {
  int number = 0;
  PlanPart part = PlanPart::tap;
  std::string title;
  std::string_view id;
  std::string formula;
  std::string figures;  // the formula with them
  std::string result;   // "n = 3.4371 threads"
  std::string limit;    // "at least 2 threads"; empty: none
  std::string limit_source;
  std::string utilization;  // "0.5819"; empty: none
  bool met = true;
  std::vector<CalculationFigure> with;
};
[[nodiscard]] std::vector<CalculationLine> calculation_lines(const Plan& plan, UnitSystem system);
[[nodiscard]] std::string_view name_of(PlanPart part);

// A stop number and where it comes from.
struct StopNumberLine {
  std::string what;
  std::string bounds;
  std::string by;  // "lines 12 and 13"
};
[[nodiscard]] std::vector<StopNumberLine> stop_number_lines(const Plan& plan, UnitSystem system);

// What stops or holds the plan, and what else a finding compares that no calculation does.
struct OtherLimit {
  std::string what;
  std::string_view code;
  std::string_view severity;
  std::string value;  // empty where the limit alone is known
  std::string limit;  // empty where it compares nothing
};
[[nodiscard]] std::vector<OtherLimit> other_limits(const Plan& plan, UnitSystem system);

// Order, place, day, rules, fingerprint: what a filed sheet is found by.
struct HeadLine {
  std::string_view label;
  std::string text;
};
[[nodiscard]] std::vector<HeadLine> calculation_head(const Plan& plan);

}  // namespace mainbore::report
