#include "mainbore/hydraulics/minor_loss.hpp"

#include <stdexcept>

#include "hydraulics/table.hpp"
#include "mainbore/hydraulics/pipe.hpp"

namespace mainbore::hydraulics {
namespace {

// 1 - (d/D)^2, the part of the larger bore that the smaller one leaves uncovered.
double uncovered_share(Length small_bore, Length large_bore) {
  if (!(small_bore > Length{}) || small_bore > large_bore) {
    throw std::invalid_argument("a change of bore needs 0 < small bore <= large bore");
  }
  return 1.0 - bore_area(small_bore) / bore_area(large_bore);
}

}  // namespace

double measured_loss_coefficient(Flow flow, Pressure drop, Length bore, UnitWeight weight) {
  return drop / minor_loss(1.0, mean_velocity(flow, bore), weight);
}

double sudden_contraction_coefficient(Length small_bore, Length large_bore) {
  return 0.5 * uncovered_share(small_bore, large_bore);
}

double sudden_expansion_coefficient(Length small_bore, Length large_bore) {
  const double share = uncovered_share(small_bore, large_bore);
  return share * share;
}

Meter::Meter(std::span<const MeterPoint> table, Flow safe_maximum) : table_(table), safe_maximum_(safe_maximum) {
  if (table.empty() || !(table.front().flow > Flow{}) || table.front().loss < Pressure{}) {
    throw std::invalid_argument("meter: the table needs a first row with a positive flow and no negative loss");
  }
  for (std::size_t i = 1; i < table.size(); ++i) {
    if (!(table[i - 1].flow < table[i].flow) || table[i].loss < table[i - 1].loss) {
      throw std::invalid_argument("meter: flows must increase from row to row, and losses must not fall");
    }
  }
}

MeterLoss meter_loss(const Meter& meter, Flow flow) {
  if (flow < Flow{}) throw std::invalid_argument("meter_loss: the flow must not be negative");
  const std::span<const MeterPoint> table = meter.table();
  const auto flow_of = [](const MeterPoint& row) { return row.flow; };
  const MeterPoint& first = table.front();
  const MeterPoint& last = table.back();
  MeterLoss result{.loss = {}, .over_safe_maximum = flow > meter.safe_maximum()};
  if (flow <= first.flow) {
    result.loss = flow / first.flow * first.loss;
  } else if (flow >= last.flow) {
    const double ratio = flow / last.flow;
    result.loss = ratio * ratio * last.loss;
  } else {
    const std::size_t i = detail::row_before(table, flow_of, flow);
    result.loss = detail::on_line(flow, table[i].flow, table[i].loss, table[i + 1].flow, table[i + 1].loss);
  }
  return result;
}

}  // namespace mainbore::hydraulics
