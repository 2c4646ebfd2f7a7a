// How strong a solution is, by weight of chlorine in water.
//
// The trade reads strong solutions in per cent and weak ones in milligrams a liter, and takes 1 % as 10,000 mg/L: a
// liter of dilute solution weighs a kilogram. Stock of 5 to 15 % is denser than that, so it holds a little more
// chlorine than its per cent says, which is the safe side when disinfecting.
//
//     Concentration::percent(1.0) == Concentration::mg_per_liter(10000.0)
#pragma once

#include <compare>

namespace mainbore::sanitary {

class Concentration {
 public:
  constexpr Concentration() = default;
  static constexpr Concentration percent(double value) { return Concentration(value * 10000.0); }
  static constexpr Concentration mg_per_liter(double value) { return Concentration(value); }

  [[nodiscard]] constexpr double percent() const { return mg_per_liter_ / 10000.0; }
  [[nodiscard]] constexpr double mg_per_liter() const { return mg_per_liter_; }
  [[nodiscard]] constexpr double fraction() const { return mg_per_liter_ / 1.0e6; }

  constexpr auto operator<=>(const Concentration&) const = default;

 private:
  explicit constexpr Concentration(double mg_per_liter) : mg_per_liter_(mg_per_liter) {}
  double mg_per_liter_ = 0.0;
};

constexpr double operator/(Concentration a, Concentration b) { return a.mg_per_liter() / b.mg_per_liter(); }

}  // namespace mainbore::sanitary
