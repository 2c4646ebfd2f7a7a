// Taper pipe threads by formula.
//
// ASME B1.20.1 (NPT), with D the pipe's outside diameter, n threads per inch, p = 1/n and taper 1 in 16 on diameter:
//     E0 = D - (0.05 D + 1.1 in) p     pitch diameter at the small end of the external thread
//     E1 = E0 + L1/16                  pitch diameter at the gauge (hand-tight) plane
//     L2 = (0.80 D + 6.8 in) p         effective length of the external thread
//     V  = 3.47 p                      vanish threads beyond it
//     h  = 0.800 p                     greatest height of the truncated thread
// The standard tabulates L1; it does not follow from a formula, so it is an argument. Every figure of the standard's
// table from 1/8 to 4 is met to 0.00001 in.
//
// ISO 7-1 (R, Rc), with d the major diameter in the gauge plane:
//     h = 0.640327 p;  pitch diameter in the gauge plane = d - h;  taper 1 in 16;  55 degree Whitworth form
//
//     const TaperThread t = npt_thread(1.050 * units::inch, 14.0 * units::per_inch, 0.339 * units::inch);   // 3/4 NPT
//     t.pitch_gauge / units::inch                                                                           // 0.98887
#pragma once

#include "mainbore/units.hpp"

namespace mainbore::mechanics {

// What decides how many turns a wall can hold. Enough for engagement.hpp, and all that is known of some threads.
struct ThreadForm {
  Length major;                    // largest diameter the thread cuts in the hole, at the outer face
  InverseLength threads_per_inch;  // n
  double taper = 0.0;              // diameter lost per unit of depth: 1/16 for NPT and R, 0 for a parallel thread

  [[nodiscard]] constexpr Length pitch() const { return 1.0 / threads_per_inch; }
};

// A thread whose make-up can be worked out.
struct TaperThread : ThreadForm {
  Length pitch_small_end;      // E0
  Length pitch_gauge;          // E1
  Length gauge_length;         // L1: engagement by hand of a standard external thread in a standard hole
  Length effective_length;     // L2: L1 and what is left for the wrench
  Length vanish_length;        // V: imperfect threads beyond L2; zero where the standard states none (ISO 7-1)
  Length thread_height;        // h
  double flank_tangent = 0.0;  // tangent of half the thread angle: 0.57735 for 60 degrees, 0.52057 for 55

  // Major diameter in the gauge plane. It is a few thousandths under `major` for NPT, and is `major` for ISO 7-1.
  [[nodiscard]] constexpr Length major_at_gauge() const { return pitch_gauge + thread_height; }
  // K0: minor diameter at the small end, which the hole drilled before the tap should come close to.
  [[nodiscard]] constexpr Length minor_small_end() const { return pitch_small_end - thread_height; }
};

// ASME B1.20.1. Throws std::invalid_argument unless all three are finite and positive.
TaperThread npt_thread(Length pipe_outside_diameter, InverseLength threads_per_inch, Length gauge_length);

// ISO 7-1. `useful_length` is the least useful thread length for the nominal gauge length; the standard tabulates it
// and the gauge length. Throws std::invalid_argument unless all four are finite and positive.
TaperThread iso7_thread(Length gauge_plane_major, InverseLength threads_per_inch, Length gauge_length,
                        Length useful_length);

// How deep the end of a tap lies under the outer face when the tap stands at gauge: L1 + projection. The projection is
// how far the tap's small end stands out of the L1 ring gauge (ASME B94.9; about +/-1/16 in to 3/4, +/-3/32 from 1).
constexpr Length tap_tip_depth_at_gauge(const TaperThread& thread, Length projection) {
  return thread.gauge_length + projection;
}

}  // namespace mainbore::mechanics
