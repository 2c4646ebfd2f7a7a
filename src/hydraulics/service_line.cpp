#include "mainbore/hydraulics/service_line.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "mainbore/hydraulics/friction.hpp"
#include "mainbore/hydraulics/pipe.hpp"

namespace mainbore::hydraulics {
namespace {

void require(bool condition, const char* message) {
  if (!condition) throw std::invalid_argument(message);
}

void require_line(const ServiceLine& line) {
  require(!line.segments.empty(), "service line: no segment");
  require(line.water.weight > UnitWeight{}, "service line: the weight of water must be positive");
  require(line.device_loss >= Pressure{}, "service line: the device loss must not be negative");
  bool resists = line.meter.has_value();
  for (const ServiceSegment& segment : line.segments) {
    require(segment.bore > Length{}, "service line: a bore must be positive");
    require(segment.length >= Length{} && segment.equivalent_length >= Length{} && segment.k >= 0.0,
            "service line: a length or loss coefficient must not be negative");
    resists = resists || segment.length + segment.equivalent_length > Length{} || segment.k > 0.0;
  }
  require(resists, "service line: nothing resists the flow");
}

Pressure friction_loss(const ServiceSegment& segment, const Water& water, Flow flow) {
  const Length length = segment.length + segment.equivalent_length;
  if (const auto* smooth = std::get_if<HazenWilliams>(&segment.friction)) {
    return hazen_williams_loss(flow, segment.bore, length, smooth->c);
  }
  return darcy_weisbach_loss(flow, segment.bore, length, std::get<DarcyWeisbach>(segment.friction).roughness, water);
}

// What the flow itself costs: zero at no flow and rising without bound.
Pressure flow_loss(const ServiceLine& line, Flow flow) {
  Pressure loss;
  for (const ServiceSegment& segment : line.segments) {
    loss += friction_loss(segment, line.water, flow);
    loss += minor_loss(segment.k, mean_velocity(flow, segment.bore), line.water.weight);
  }
  if (line.meter) loss += meter_loss(*line.meter, flow).loss;
  return loss;
}

// What the line costs before any water moves.
Pressure standing_loss(const ServiceLine& line) {
  return line.device_loss + pressure_of_head(line.rise, line.water.weight);
}

}  // namespace

ServiceLosses losses_at(const ServiceLine& line, Flow flow) {
  require_line(line);
  require(flow >= Flow{}, "losses_at: the flow must not be negative");
  ServiceLosses losses;
  losses.segments.reserve(line.segments.size());
  for (const ServiceSegment& segment : line.segments) {
    const Velocity velocity = mean_velocity(flow, segment.bore);
    losses.segments.push_back({.velocity = velocity,
                               .friction = friction_loss(segment, line.water, flow),
                               .fittings = minor_loss(segment.k, velocity, line.water.weight)});
    losses.friction += losses.segments.back().friction;
    losses.fittings += losses.segments.back().fittings;
    losses.greatest_velocity = std::max(losses.greatest_velocity, velocity);
  }
  if (line.meter) {
    const MeterLoss meter = meter_loss(*line.meter, flow);
    losses.meter = meter.loss;
    losses.meter_over_safe_maximum = meter.over_safe_maximum;
  }
  losses.devices = line.device_loss;
  losses.elevation = pressure_of_head(line.rise, line.water.weight);
  losses.total = losses.friction + losses.fittings + losses.meter + losses.devices + losses.elevation;
  return losses;
}

Pressure residual_at(const ServiceLine& line, Pressure supply, Flow flow) {
  require_line(line);
  require(flow >= Flow{}, "residual_at: the flow must not be negative");
  return supply - standing_loss(line) - flow_loss(line, flow);
}

AvailableFlow flow_at_residual(const ServiceLine& line, Pressure supply, Pressure minimum_residual) {
  require_line(line);
  constexpr int greatest_iterations = 200;
  constexpr Pressure tolerance = 1e-8 * units::psi;

  const Pressure to_spend = supply - standing_loss(line) - minimum_residual;
  if (to_spend <= Pressure{}) return {{}, to_spend, 0, FlowStatus::none_available};

  Length least_bore = line.segments.front().bore;
  for (const ServiceSegment& segment : line.segments) least_bore = std::min(least_bore, segment.bore);

  // `low` costs no more than there is to spend, `high` no less.
  Flow low;
  Flow high = flow_at_velocity(units::ft_per_s, least_bore);
  Pressure low_loss;
  Pressure high_loss = flow_loss(line, high);
  int iterations = 0;
  for (; high_loss < to_spend && iterations < greatest_iterations; ++iterations) {
    low = high;
    low_loss = high_loss;
    high = 2.0 * high;
    high_loss = flow_loss(line, high);
  }

  AvailableFlow best{low, to_spend - low_loss, iterations, FlowStatus::not_converged};
  bool halve = false;
  while (iterations < greatest_iterations) {
    ++iterations;
    const auto root = [](Pressure loss) { return std::sqrt(loss / units::psi); };
    const double step = halve ? 0.5 : (root(to_spend) - root(low_loss)) / (root(high_loss) - root(low_loss));
    const Flow width = high - low;
    const Flow flow = low + step * width;
    const Pressure loss = flow_loss(line, flow);
    best = {flow, to_spend - loss, iterations, FlowStatus::converged};
    if (abs(best.residual_error) <= tolerance) return best;
    if (loss < to_spend) {
      low = flow;
      low_loss = loss;
    } else {
      high = flow;
      high_loss = loss;
    }
    halve = !halve && high - low > 0.5 * width;
  }
  best.status = FlowStatus::not_converged;
  return best;
}

}  // namespace mainbore::hydraulics
