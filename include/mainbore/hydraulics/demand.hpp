// How much water a service must carry: from fixtures to a peak flow.
//
// Fixtures are counted in water-supply fixture units, a weight for how much and how often each one draws. A code's
// demand curve turns the sum into the flow that is exceeded about one per cent of the time (Hunter's method, National
// Bureau of Standards BMS 65, 1940). A code's fixture units belong with the same code's curve: at 10 units the curves
// of two American codes read 14.6 and 8 gpm, because their fixture units differ as well.
//
//   Q_domestic = curve(sum of count x units) + continuous draws (hose bibbs, sprinklers for lawns, cooling)
//   Q_service  = the greater of Q_domestic and Q_sprinklers
//
// Example, International Plumbing Code, Appendix E: two bathroom groups (3.6 each), a kitchen sink, a dishwasher and a
// clothes washer (1.4 each) are 11.4 units; the flush-tank curve reads 15.4 gpm at 11 and 16.0 at 12, so 15.64 gpm.
#pragma once

#include <span>

#include "mainbore/units.hpp"

namespace mainbore::hydraulics {

// Some number of one kind of fixture, each of `units_each` fixture units.
struct FixtureGroup {
  double units_each = 0.0;
  int count = 0;
};

// Sum of count x units. Throws std::invalid_argument when a count or a unit value is negative.
[[nodiscard]] double total_fixture_units(std::span<const FixtureGroup> fixtures);

// One row of a demand curve.
struct DemandPoint {
  double fixture_units = 0.0;
  Flow flow;
};

// A demand curve, looked over once: two rows at least, fixture units increasing from row to row; std::invalid_argument
// otherwise. The rows are not copied: they must outlive this.
class FixtureCurve {
 public:
  FixtureCurve(std::span<const DemandPoint> rows);  // NOLINT implicit by design
  [[nodiscard]] std::span<const DemandPoint> rows() const { return rows_; }

 private:
  std::span<const DemandPoint> rows_;
};

enum class CurveCoverage {
  within,  // read inside the table
  below,   // fewer units than the first row: the first row's flow is kept, since one fixture already draws it
  above,   // more units than the last row: the last straight line is drawn on, and over-states a curve that flattens
};

struct FixtureDemand {
  Flow flow;
  CurveCoverage coverage = CurveCoverage::within;
};

// The peak flow for a number of fixture units, by straight lines between the rows of `curve`. No units, no flow.
// Throws std::invalid_argument when the units are negative.
[[nodiscard]] FixtureDemand fixture_demand(double fixture_units, const FixtureCurve& curve);

// Fixtures by the curve, plus what runs continuously and so adds without any allowance for chance.
[[nodiscard]] Flow domestic_demand(double fixture_units, const FixtureCurve& curve, Flow continuous);

// The flows a dwelling sprinkler is listed for: alone, and each of two together.
struct SprinklerFlows {
  Flow single_head;
  Flow each_of_two;
};

// The greater of one head and two heads, plus the allowance for domestic use on a pipe that sprinklers share with
// other dwellings (NFPA 13D adds such an allowance; pass zero for a pipe that serves one dwelling).
[[nodiscard]] Flow sprinkler_demand(const SprinklerFlows& flows, Flow shared_pipe_allowance);

// What the service is sized for: domestic use and sprinklers are not taken at the same time, beyond the allowance that
// is already in the sprinkler demand.
[[nodiscard]] Flow service_demand(Flow domestic, Flow sprinklers);

}  // namespace mainbore::hydraulics
