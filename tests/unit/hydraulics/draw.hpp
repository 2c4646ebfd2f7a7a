// Repeatable arbitrary numbers for property tests: the generator's raw output, so that every standard library draws the
// same ones.
#pragma once

#include <cmath>
#include <cstdint>
#include <random>

namespace mainbore::test {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}

  double uniform(double low, double high) {
    const double unit = static_cast<double>(engine_() >> 11) * 0x1.0p-53;
    return low + unit * (high - low);
  }
  // Each decade as likely as the next.
  double logarithmic(double low, double high) { return std::exp(uniform(std::log(low), std::log(high))); }
  bool coin() { return (engine_() >> 63) != 0; }

 private:
  std::mt19937_64 engine_;
};

}  // namespace mainbore::test
