#include "mainbore/hydraulics/demand.hpp"

#include <algorithm>
#include <stdexcept>

#include "hydraulics/table.hpp"

namespace mainbore::hydraulics {
namespace {

double units(const DemandPoint& row) { return row.fixture_units; }

}  // namespace

double total_fixture_units(std::span<const FixtureGroup> fixtures) {
  double total = 0.0;
  for (const FixtureGroup& group : fixtures) {
    if (group.count < 0 || group.units_each < 0.0) {
      throw std::invalid_argument("total_fixture_units: counts and units must not be negative");
    }
    total += group.count * group.units_each;
  }
  return total;
}

FixtureCurve::FixtureCurve(std::span<const DemandPoint> rows) : rows_(rows) {
  if (rows.size() < 2) throw std::invalid_argument("demand curve: it needs two rows");
  detail::require_increasing(rows, units, "demand curve: fixture units must increase from row to row");
}

FixtureDemand fixture_demand(double fixture_units, const FixtureCurve& curve) {
  const std::span<const DemandPoint> rows = curve.rows();
  if (fixture_units < 0.0) throw std::invalid_argument("fixture_demand: fixture units must not be negative");
  if (fixture_units == 0.0) return {};
  if (fixture_units < units(rows.front())) return {rows.front().flow, CurveCoverage::below};

  const std::size_t i = detail::row_before(rows, units, fixture_units);
  return {detail::on_line(fixture_units, units(rows[i]), rows[i].flow, units(rows[i + 1]), rows[i + 1].flow),
          fixture_units > units(rows.back()) ? CurveCoverage::above : CurveCoverage::within};
}

Flow domestic_demand(double fixture_units, const FixtureCurve& curve, Flow continuous) {
  return fixture_demand(fixture_units, curve).flow + continuous;
}

Flow sprinkler_demand(const SprinklerFlows& flows, Flow shared_pipe_allowance) {
  return std::max(flows.single_head, 2.0 * flows.each_of_two) + shared_pipe_allowance;
}

Flow service_demand(Flow domestic, Flow sprinklers) { return std::max(domestic, sprinklers); }

}  // namespace mainbore::hydraulics
