#include "mainbore/mechanics/taper_thread.hpp"

#include <cmath>
#include <numbers>

#include "precondition.hpp"

namespace mainbore::mechanics {
namespace {

constexpr double kPipeTaper = 1.0 / 16.0;  // on diameter, the same in both standards

}  // namespace

TaperThread npt_thread(Length pipe_outside_diameter, InverseLength threads_per_inch, Length gauge_length) {
  require(is_positive(pipe_outside_diameter) && is_positive(threads_per_inch) && is_positive(gauge_length),
          "npt_thread: diameter, threads per inch and gauge length must be positive");
  const Length d = pipe_outside_diameter;
  TaperThread thread;
  thread.major = d;
  thread.threads_per_inch = threads_per_inch;
  thread.taper = kPipeTaper;
  // The standard multiplies a number of pitches, itself linear in the diameter in inches, by the pitch.
  thread.pitch_small_end = d - (0.05 * (d / units::inch) + 1.1) * thread.pitch();
  thread.pitch_gauge = thread.pitch_small_end + kPipeTaper * gauge_length;
  thread.gauge_length = gauge_length;
  thread.effective_length = (0.80 * (d / units::inch) + 6.8) * thread.pitch();
  thread.vanish_length = 3.47 * thread.pitch();
  thread.thread_height = 0.800 * thread.pitch();
  thread.flank_tangent = 1.0 / std::numbers::sqrt3;
  return thread;
}

TaperThread iso7_thread(Length gauge_plane_major, InverseLength threads_per_inch, Length gauge_length,
                        Length useful_length) {
  require(is_positive(gauge_plane_major) && is_positive(threads_per_inch) && is_positive(gauge_length) &&
              is_positive(useful_length),
          "iso7_thread: diameter, threads per inch and lengths must be positive");
  TaperThread thread;
  thread.major = gauge_plane_major;
  thread.threads_per_inch = threads_per_inch;
  thread.taper = kPipeTaper;
  thread.thread_height = 0.640327 * thread.pitch();
  thread.pitch_gauge = gauge_plane_major - thread.thread_height;
  thread.pitch_small_end = thread.pitch_gauge - kPipeTaper * gauge_length;
  thread.gauge_length = gauge_length;
  thread.effective_length = useful_length;
  thread.flank_tangent = std::tan(27.5 * std::numbers::pi / 180.0);
  return thread;
}

}  // namespace mainbore::mechanics
