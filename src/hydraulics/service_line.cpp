#include "mainbore/hydraulics/service_line.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <memory_resource>
#include <optional>
#include <stdexcept>
#include <variant>
#include <vector>

#include "hydraulics/hazen_williams.hpp"
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
    const auto* const smooth = std::get_if<HazenWilliams>(&segment.friction);
    require(smooth == nullptr || smooth->c > 0.0, "service line: C must be positive");
    resists = resists || segment.length + segment.equivalent_length > Length{} || segment.k > 0.0;
  }
  require(resists, "service line: nothing resists the flow");
}

// What the flow itself costs: zero at no flow and rising without bound. Powers are what takes the time here: that of a
// bore is worked out once, and that of the flow once for all segments of one C. The line must have passed, and outlive
// this.
class FlowLoss {
 public:
  explicit FlowLoss(const ServiceLine& line) : line_(line), bore_factors_(&memory_) {
    bore_factors_.reserve(line.segments.size());
    for (std::size_t i = 0; i < line.segments.size(); ++i) {
      const Length bore = line.segments[i].bore;
      const bool again = i > 0 && bore == line.segments[i - 1].bore;
      bore_factors_.push_back(again ? bore_factors_.back() : detail::bore_factor(bore));
    }
  }

  [[nodiscard]] SegmentLoss of_segment(std::size_t i, Flow flow) {
    const ServiceSegment& segment = line_.segments[i];
    const Velocity velocity = mean_velocity(flow, segment.bore);
    return {velocity, friction(i, flow), minor_loss(segment.k, velocity, line_.water.weight)};
  }

  [[nodiscard]] Pressure at(Flow flow) {
    Pressure loss;
    for (std::size_t i = 0; i < line_.segments.size(); ++i) {
      const ServiceSegment& segment = line_.segments[i];
      loss += friction(i, flow);
      if (segment.k > 0.0) loss += minor_loss(segment.k, mean_velocity(flow, segment.bore), line_.water.weight);
    }
    if (line_.meter) loss += meter_loss(*line_.meter, flow).loss;
    return loss;
  }

  // The flow at which friction alone costs that much, where a formula gives it: by one C, and no fitting counted by K.
  [[nodiscard]] std::optional<Flow> flow_by_friction(Pressure loss) const {
    const auto* const first = std::get_if<HazenWilliams>(&line_.segments.front().friction);
    if (first == nullptr) return std::nullopt;
    double feet = 0.0;  // of a pipe whose bore factor is 1
    for (std::size_t i = 0; i < line_.segments.size(); ++i) {
      const ServiceSegment& segment = line_.segments[i];
      const auto* const smooth = std::get_if<HazenWilliams>(&segment.friction);
      if (smooth == nullptr || smooth->c != first->c || segment.k > 0.0) return std::nullopt;
      feet += (segment.length + segment.equivalent_length) / units::foot / bore_factors_[i];
    }
    if (!(feet > 0.0)) return std::nullopt;
    return detail::flow_of_factor(loss / units::psi / feet, first->c);
  }

 private:
  [[nodiscard]] Pressure friction(std::size_t i, Flow flow) {
    const ServiceSegment& segment = line_.segments[i];
    const Length length = segment.length + segment.equivalent_length;
    if (const auto* const rough = std::get_if<DarcyWeisbach>(&segment.friction)) {
      return darcy_weisbach_loss(flow, segment.bore, length, rough->roughness, line_.water);
    }
    const double c = std::get<HazenWilliams>(segment.friction).c;
    if (flow != flow_ || c != c_) {
      flow_ = flow;
      c_ = c;
      flow_factor_ = detail::flow_factor(flow, c);
    }
    return flow_factor_ / bore_factors_[i] * (length / units::foot) * units::psi;
  }

  const ServiceLine& line_;
  std::array<std::byte, 8 * sizeof(double)> room_;  // more than most lines need
  std::pmr::monotonic_buffer_resource memory_{room_.data(), room_.size()};
  std::pmr::vector<double> bore_factors_;  // by segment
  double flow_factor_ = 0.0;               // of the last flow and C
  Flow flow_;
  double c_ = 0.0;
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
  FlowLoss flow_loss(line);
  for (std::size_t i = 0; i < line.segments.size(); ++i) {
    const SegmentLoss& segment = losses.segments.emplace_back(flow_loss.of_segment(i, flow));
    losses.friction += segment.friction;
    losses.fittings += segment.fittings;
    losses.greatest_velocity = std::max(losses.greatest_velocity, segment.velocity);
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
  return supply - standing_loss(line) - FlowLoss(line).at(flow);
}

AvailableFlow flow_at_residual(const ServiceLine& line, Pressure supply, Pressure minimum_residual) {
  require_line(line);
  constexpr int greatest_iterations = 200;
  constexpr Pressure tolerance = 1e-8 * units::psi;

  const Pressure to_spend = supply - standing_loss(line) - minimum_residual;
  if (to_spend <= Pressure{}) return {{}, to_spend, 0, FlowStatus::none_available};

  FlowLoss flow_loss(line);
  // Without a meter that is the answer; with one it passes less.
  const std::optional<Flow> by_friction = flow_loss.flow_by_friction(to_spend);
  if (by_friction && !line.meter) {
    return {*by_friction, to_spend - flow_loss.at(*by_friction), 0, FlowStatus::converged};
  }
  Length least_bore = line.segments.front().bore;
  for (const ServiceSegment& segment : line.segments) least_bore = std::min(least_bore, segment.bore);

  // `low` costs no more than there is to spend, `high` no less.
  Flow low;
  Flow high = by_friction.value_or(flow_at_velocity(units::ft_per_s, least_bore));
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
