// A whole service line: what pressure is left at a flow, and what flow leaves a given pressure.
//
//   residual = supply - sum(friction + fittings) - meter - devices - w z
//
//   w: weight of water   z: rise from the main to where the residual is wanted (negative when it falls)
//
// This is the balance plumbing codes write for sizing a service (International Plumbing Code E103; International
// Residential Code P2904.6.2). It is a balance of static pressures: the speed head in the last segment, at most half a
// psi at 8 ft/s, is left out as the codes leave it out.
//
// Example: 60 psi in the main, 20 gpm through 100 ft of one-inch Type K copper (bore 0.995 in, C 130) with stops worth
// 16 ft of pipe, 10 ft of rise and a one-inch meter that takes 2.2 psi:
//
//     ServiceLine line;
//     line.segments = {{.bore = 0.995 * inch, .length = 100 * foot, .equivalent_length = 16 * foot,
//                       .friction = HazenWilliams{130}}};
//     line.meter = Meter{table, 50 * gpm};
//     line.rise = 10 * foot;
//     line.water.weight = 0.433 * psi / foot;
//     residual_at(line, 60 * psi, 20 * gpm) / psi;                             // 36.69
//
// Every function throws std::invalid_argument when the line has no segment, a bore, C or weight of water is not
// positive, a length, roughness, K or device loss is negative, or nothing in the line resists flow at all.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "mainbore/hydraulics/minor_loss.hpp"
#include "mainbore/hydraulics/water.hpp"
#include "mainbore/units.hpp"

namespace mainbore::hydraulics {

struct HazenWilliams {
  double c = 0.0;
};
struct DarcyWeisbach {
  Length roughness;
};
using FrictionLaw = std::variant<HazenWilliams, DarcyWeisbach>;

// A run of one bore. A fitting is counted either in `equivalent_length` or in `k`.
struct ServiceSegment {
  Length bore;
  Length length;
  Length equivalent_length = {};  // added to the length
  double k = 0.0;                 // sum of loss coefficients, on this bore
  FrictionLaw friction = {};
};

struct ServiceLine {
  std::vector<ServiceSegment> segments;  // from the main onward
  std::optional<Meter> meter = {};
  Pressure device_loss = {};  // what a regulator, backflow preventer or softener takes at any flow
  Length rise = {};
  Water water = {};  // the viscosity may stay zero when no segment uses Darcy-Weisbach
};

struct SegmentLoss {
  Velocity velocity;
  Pressure friction;  // over the length and the equivalent length
  Pressure fittings;  // by K
};

struct ServiceLosses {
  std::vector<SegmentLoss> segments;
  Pressure friction;
  Pressure fittings;
  Pressure meter;
  Pressure devices;
  Pressure elevation;  // negative when the line falls
  Pressure total;
  Velocity greatest_velocity;
  bool meter_over_safe_maximum = false;
};

// Where the pressure goes at a flow. A negative flow throws std::invalid_argument.
[[nodiscard]] ServiceLosses losses_at(const ServiceLine& line, Flow flow);

// What is left of `supply` at a flow; negative when the line cannot pass that flow.
[[nodiscard]] Pressure residual_at(const ServiceLine& line, Pressure supply, Flow flow);

enum class FlowStatus {
  converged,
  none_available,  // the residual is below the minimum before any water flows; the flow is zero
  not_converged,   // not met within the bounds below; the flow is the best found
};

struct AvailableFlow {
  Flow flow;
  Pressure residual_error;  // residual at `flow` less the minimum asked for
  int iterations = 0;
  FlowStatus status = FlowStatus::converged;
};

// The flow at which the residual falls to `minimum_residual`.
//
// A line without a meter whose segments have one C, and whose fittings count as lengths, has it by formula: the loss is
// a factor times Q^1.852. Otherwise the root is bracketed first: from above by what that formula would give without the
// meter, else by doubling. Then each step takes the straight line through the square roots of the losses at the two
// ends, which is nearly exact because losses go nearly with the square of the flow, and halves the bracket instead after
// any step that did not. It ends when the residual is met within 1e-8 psi, within 200 steps of both kinds. Tested over
// bores 0.4 to 4 in, lengths 1 to 5000 ft and supplies 1 to 300 psi, by both friction laws.
//
// The flow rises with the supply, every bore and C, and falls with every length, roughness, K, rise, device loss and
// with the minimum asked for.
[[nodiscard]] AvailableFlow flow_at_residual(const ServiceLine& line, Pressure supply, Pressure minimum_residual);

}  // namespace mainbore::hydraulics
