// What must hold for every pipe and thread, over pseudo-random ones.

#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

#include "mainbore/mechanics/boring.hpp"
#include "mainbore/mechanics/clamp.hpp"
#include "mainbore/mechanics/engagement.hpp"
#include "mainbore/mechanics/section.hpp"
#include "npt.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

namespace {

// The generator's raw bits, so that every standard library draws the same cases.
class Draw {
 public:
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(bits_() >> 11) * 0x1p-53);
  }
  // Anything a double can be, the troublesome values often.
  double absurd() {
    constexpr double kInf = std::numeric_limits<double>::infinity();
    static constexpr std::array kOdd{0.0,
                                     -0.0,
                                     kInf,
                                     -kInf,
                                     std::numeric_limits<double>::quiet_NaN(),
                                     1e-320,
                                     1e-300,
                                     1e-20,
                                     1e-8,
                                     0.25,
                                     1.0,
                                     1.315,
                                     1.0 + 1e-15,
                                     6.9,
                                     -1.0,
                                     1e15,
                                     1e154,
                                     1e300,
                                     std::numeric_limits<double>::max()};
    return bits_() % 4 == 0 ? std::pow(10.0, between(-12, 12)) : kOdd[bits_() % kOdd.size()];
  }

 private:
  std::mt19937_64 bits_{20240229};
};

ThreadForm thread_of(double major, double tpi, double taper = 1.0 / 16) {
  return {major * units::inch, tpi * units::per_inch, taper};
}

bool has_nan(const Engagement& e) {
  return std::isnan(e.drop.base()) || std::isnan(e.complete_ring_length.base()) || std::isnan(e.complete_threads) ||
         std::isnan(e.axial_along.base()) || std::isnan(e.axial_transverse.base()) || std::isnan(e.mean_axial.base());
}

}  // namespace

TEST_CASE("a thinner wall, a bigger thread or a smaller pipe never holds more threads") {
  Draw draw;
  for (int i = 0; i < 20'000; ++i) {
    const double od = draw.between(2, 70);
    const double wall = draw.between(0.05, 0.45) * od / 2;
    const double major = draw.between(0.4, 1.2 * od);
    const double tpi = draw.between(8, 27);
    const auto count = [&](double o, double w, double m) {
      return engagement({o * units::inch, w * units::inch}, thread_of(m, tpi)).complete_threads;
    };
    INFO("od " << od << " wall " << wall << " major " << major);
    const double here = count(od, wall, major);
    REQUIRE(count(od, wall * draw.between(0.3, 1), major) <= here);
    REQUIRE(count(od, wall, major * draw.between(1, 2)) <= here);
    REQUIRE(count(od * draw.between(wall * 2 / od, 1), wall, major) <= here);
  }
}

TEST_CASE("the wall needed gives just the threads asked for") {
  Draw draw;
  int solved = 0;
  for (int i = 0; i < 20'000; ++i) {
    const double od = draw.between(2, 70);
    const ThreadForm thread = thread_of(draw.between(0.4, 5), draw.between(8, 27));
    const double threads = draw.between(0.01, 8);
    const auto wall = wall_needed(od * units::inch, thread, threads);
    if (!wall) continue;
    ++solved;
    REQUIRE(engagement({od * units::inch, *wall}, thread).complete_threads == Approx(threads).epsilon(1e-9));
  }
  CHECK(solved > 10'000);
}

TEST_CASE("a taper of 1 in 16 adds under 0.001 in of ring, but for wide holes in small pipe") {
  for (const char* size : {"1/2", "3/4", "1", "1-1/4", "1-1/2", "2"}) {
    const TaperThread thread = test::npt(size);
    for (double od = 3.96; od < 66; od *= 1.07) {
      const double r = thread.major / units::inch / 2;
      const double first_order = r * r * r / 32 / (2 * (od / 2) * (od / 2));
      if (r > 0.4 * od / 2) continue;
      INFO(size << " in " << od);
      const Barrel pipe{od * units::inch, 0.12 * od * units::inch};
      const Length gain =
          taper_engagement(pipe, thread).complete_ring_length - engagement(pipe, thread).complete_ring_length;
      CHECK(gain >= Length{});
      CHECK(gain / units::inch == Approx(first_order).epsilon(0.13));
      if (first_order < 0.00095) CHECK(gain / units::inch < 0.001);
    }
  }
}

TEST_CASE("a parallel thread is a taper thread of no taper") {
  Draw draw;
  for (int i = 0; i < 1'000; ++i) {
    const Barrel pipe{draw.between(2, 70) * units::inch, draw.between(0.1, 0.9) * units::inch};
    const ThreadForm thread = thread_of(draw.between(0.4, 4), 11.5, 0.0);
    REQUIRE(taper_engagement(pipe, thread).drop / units::inch ==
            Approx(engagement(pipe, thread).drop / units::inch).epsilon(1e-12));
  }
}

TEST_CASE("more hole, less section") {
  Draw draw;
  for (int i = 0; i < 5'000; ++i) {
    const double od = draw.between(2, 70);
    const Barrel pipe{od * units::inch, draw.between(0.005, 0.45) * od * units::inch};
    const double hole = draw.between(0, 0.5) * od;
    const auto smaller = net_section(pipe, hole * units::inch);
    const auto larger = net_section(pipe, hole * 1.05 * units::inch);
    REQUIRE(smaller);
    REQUIRE(larger);
    REQUIRE(larger->area_ratio <= smaller->area_ratio);
    REQUIRE(larger->modulus_ratio <= smaller->modulus_ratio);
    REQUIRE(larger->modulus_ratio >= 0.0);
    REQUIRE(smaller->modulus_ratio <= 1.0 + 1e-12);
  }
}

TEST_CASE("nothing that can be asked has NaN for an answer") {
  Draw draw;
  for (int i = 0; i < 200'000; ++i) {
    const Length od = draw.absurd() * units::inch;
    const Barrel pipe{od, draw.absurd() * units::inch};
    const double major = draw.absurd();
    const ThreadForm thread = thread_of(major, draw.absurd(), draw.absurd());
    INFO("od " << od.base() << " wall " << pipe.wall.base() << " major " << major << " tpi "
               << thread.threads_per_inch.base() << " taper " << thread.taper);
    REQUIRE_FALSE(has_nan(engagement(pipe, thread)));
    REQUIRE_FALSE(has_nan(taper_engagement(pipe, thread)));

    const auto drop = sagitta(od, thread.major);
    REQUIRE_FALSE((drop && std::isnan(drop->base())));
    const auto wall = wall_needed(od, thread, draw.absurd());
    REQUIRE_FALSE((wall && std::isnan(wall->base())));
    const auto net = net_section(pipe, thread.major);
    REQUIRE_FALSE(
        (net && (std::isnan(net->area_ratio) || std::isnan(net->modulus_ratio) || std::isnan(net->axis_shift.base()))));
    const auto stroke = drill_stroke(pipe, thread.major, Angle::degrees(118), draw.absurd() * units::inch);
    REQUIRE_FALSE((stroke && std::isnan(stroke->base())));
    const auto path = chain_path(od, draw.absurd() * units::inch, {pipe.wall, draw.absurd() * units::inch});
    REQUIRE_FALSE((path && (std::isnan(path->length.base()) || std::isnan(path->free_leg.base()) ||
                            std::isnan(path->wrap.radians()) || std::isnan(path->leg.radians()))));
  }
}
