// How strong a solution is, by weight of chlorine in water.
//
// The trade reads strong solutions in per cent and weak ones in milligrams a litre, and takes 1 % as 10,000 mg/L: a
// litre of dilute solution weighs a kilogram. Stock of 5 to 15 % is denser than that, so it holds a little more
// chlorine than its per cent says, which is the safe side when disinfecting.
//
//     Concentration::percent(1.0) == Concentration::mg_per_litre(10000.0)
#pragma once

#include <compare>

namespace mainbore::sanitary {

class Concentration {
 public:
  constexpr Concentration() = default;
  static constexpr Concentration percent(double value) { return Concentration(value * 10000.0); }
  static constexpr Concentration mg_per_litre(double value) { return Concentration(value); }

  [[nodiscard]] constexpr double percent() const { return mg_per_litre_ / 10000.0; }
  [[nodiscard]] constexpr double mg_per_litre() const { return mg_per_litre_; }
  [[nodiscard]] constexpr double fraction() const { return mg_per_litre_ / 1.0e6; }

  constexpr auto operator<=>(const Concentration&) const = default;

 private:
  explicit constexpr Concentration(double mg_per_litre) : mg_per_litre_(mg_per_litre) {}
  double mg_per_litre_ = 0.0;
};

constexpr double operator/(Concentration a, Concentration b) { return a.mg_per_litre() / b.mg_per_litre(); }

}  // namespace mainbore::sanitary
