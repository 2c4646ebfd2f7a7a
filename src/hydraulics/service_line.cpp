#include "mainbore/hydraulics/service_line.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <variant>
#include <vector>

#include "hydraulics/hazen_williams_run.hpp"
#include "hydraulics/meter_table.hpp"
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
  if (line.meter) detail::require_meter(*line.meter);
  bool resists = line.meter.has_value();
  for (const ServiceSegment& segment : line.segments) {
    require(segment.bore > Length{}, "service line: a bore must be positive");
    require(segment.length >= Length{} && segment.equivalent_length >= Length{} && segment.k >= 0.0,
            "service line: a length or loss coefficient must not be negative");
    resists = resists || segment.length + segment.equivalent_length > Length{} || segment.k > 0.0;
  }
  require(resists, "service line: nothing resists the flow");
}

// What a segment costs. A solver asks for many flows: what does not depend on the flow is worked out once.
class Resistance {
 public:
  Resistance(const ServiceSegment& segment, const Water& water) : segment_(&segment), water_(&water) {
    if (const auto* smooth = std::get_if<HazenWilliams>(&segment.friction)) {
      smooth_.emplace(segment.bore, length(), smooth->c);
    }
  }
  [[nodiscard]] Pressure friction(Flow flow) const {
    if (smooth_) return smooth_->loss(flow);
    const Length roughness = std::get<DarcyWeisbach>(segment_->friction).roughness;
    return darcy_weisbach_loss(flow, segment_->bore, length(), roughness, *water_);
  }
  [[nodiscard]] Pressure fittings(Flow flow) const {
    if (segment_->k == 0.0) return {};
    return minor_loss(segment_->k, mean_velocity(flow, segment_->bore), water_->weight);
  }

 private:
  [[nodiscard]] Length length() const { return segment_->length + segment_->equivalent_length; }

  const ServiceSegment* segment_;
  const Water* water_;
  std::optional<detail::HazenWilliamsRun> smooth_;
};

// What the flow itself costs: zero at no flow and rising without bound. The line must have passed and outlive this.
class FlowLoss {
 public:
  explicit FlowLoss(const ServiceLine& line) : line_(line) {
    resistances_.reserve(line.segments.size());
    for (const ServiceSegment& segment : line.segments) resistances_.emplace_back(segment, line.water);
  }
  [[nodiscard]] Pressure at(Flow flow) const {
    Pressure loss;
    for (const Resistance& resistance : resistances_) {
      loss += resistance.friction(flow);
      loss += resistance.fittings(flow);
    }
    if (line_.meter) loss += detail::loss_of_checked_meter(*line_.meter, flow).loss;
    return loss;
  }

 private:
  const ServiceLine& line_;
  std::vector<Resistance> resistances_;
};

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
    const Resistance resistance(segment, line.water);
    losses.segments.push_back(
        {.velocity = velocity, .friction = resistance.friction(flow), .fittings = resistance.fittings(flow)});
    losses.friction += losses.segments.back().friction;
    losses.fittings += losses.segments.back().fittings;
    losses.greatest_velocity = std::max(losses.greatest_velocity, velocity);
  }
  if (line.meter) {
    const MeterLoss meter = detail::loss_of_checked_meter(*line.meter, flow);
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
  return supply - standing_loss(line) - FlowLoss(line).at(flow);
}

AvailableFlow flow_at_residual(const ServiceLine& line, Pressure supply, Pressure minimum_residual) {
  require_line(line);
  constexpr int greatest_iterations = 200;
  constexpr Pressure tolerance = 1e-8 * units::psi;

  const Pressure to_spend = supply - standing_loss(line) - minimum_residual;
  if (to_spend <= Pressure{}) return {{}, to_spend, 0, FlowStatus::none_available};

  const FlowLoss flow_loss(line);
  Length least_bore = line.segments.front().bore;
  for (const ServiceSegment& segment : line.segments) least_bore = std::min(least_bore, segment.bore);

  // `low` costs no more than there is to spend, `high` no less.
  Flow low;
  Flow high = flow_at_velocity(units::ft_per_s, least_bore);
  Pressure low_loss;
  Pressure high_loss = flow_loss.at(high);
  int iterations = 0;
  for (; high_loss < to_spend && iterations < greatest_iterations; ++iterations) {
    low = high;
    low_loss = high_loss;
    high = 2.0 * high;
    high_loss = flow_loss.at(high);
  }

  AvailableFlow best{low, to_spend - low_loss, iterations, FlowStatus::not_converged};
  bool halve = false;
  while (iterations < greatest_iterations) {
    ++iterations;
    const auto root = [](Pressure loss) { return std::sqrt(loss / units::psi); };
    const double step = halve ? 0.5 : (root(to_spend) - root(low_loss)) / (root(high_loss) - root(low_loss));
    const Flow width = high - low;
    const Flow flow = low + step * width;
    const Pressure loss = flow_loss.at(flow);
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
