// The geometry of flow in a full round pipe.
//
//   A = pi d^2 / 4        V = Q / A        volume = A L
//
//   A: area   d: bore (inside diameter)   V: mean velocity   Q: flow   L: length
//
// In the trade's units V[ft/s] = 0.4085 Q[gpm] / d[in]^2, and a pipe holds 0.0408 d[in]^2 gallons per foot.
// The bore must be positive: a bore of zero gives an infinite velocity.
//
//     mean_velocity(20 * units::gpm, 0.995 * units::inch) / units::ft_per_s;   // 8.25, one-inch Type K copper
#pragma once

#include <numbers>

#include "mainbore/units.hpp"

namespace mainbore::hydraulics {

[[nodiscard]] constexpr Area bore_area(Length bore) { return std::numbers::pi / 4.0 * (bore * bore); }

[[nodiscard]] constexpr Velocity mean_velocity(Flow flow, Length bore) { return flow / bore_area(bore); }

[[nodiscard]] constexpr Flow flow_at_velocity(Velocity velocity, Length bore) { return velocity * bore_area(bore); }

[[nodiscard]] constexpr Volume pipe_volume(Length bore, Length length) { return bore_area(bore) * length; }

}  // namespace mainbore::hydraulics
