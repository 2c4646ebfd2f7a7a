// Quantities with dimensions.
//
// A quantity is one double in a coherent inch-pound-second system (inch, pound-force, second), with its dimension in
// its type: a pressure times an area is a force, and a pressure plus a length does not compile. Because the base units
// are the ones the trade's tables are printed in, a wall read as 0.25 in is stored as exactly 0.25.
//
//     using namespace mainbore;
//     const Length   wall  = 0.25 * units::inch;
//     const Pressure line  = 90.0 * units::psi;
//     const Force    push  = line * (0.7854 * units::inch * units::inch);   // 70.7 lbf
//     const double   in_mm = wall / units::mm;                              // 6.35
//
// A nominal pipe size is NOT a length: see nominal_size.hpp. Text to quantity and back: see measure.hpp.
#pragma once

#include <cmath>
#include <compare>

namespace mainbore {

// A value of dimension length^L * force^F * time^T.
template <int L, int F, int T>
class Quantity {
 public:
  constexpr Quantity() = default;

  // The number in inches, pounds-force and seconds. Only tables of units and readers of text need these two.
  static constexpr Quantity from_base(double value) { return Quantity(value); }
  [[nodiscard]] constexpr double base() const { return value_; }

  constexpr auto operator<=>(const Quantity&) const = default;

  constexpr Quantity operator-() const { return Quantity(-value_); }
  constexpr Quantity& operator+=(Quantity other) {
    value_ += other.value_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    value_ -= other.value_;
    return *this;
  }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
  friend constexpr Quantity operator*(double k, Quantity q) { return Quantity(k * q.value_); }
  friend constexpr Quantity operator*(Quantity q, double k) { return Quantity(k * q.value_); }
  friend constexpr Quantity operator/(Quantity q, double k) { return Quantity(q.value_ / k); }

 private:
  explicit constexpr Quantity(double value) : value_(value) {}
  double value_ = 0.0;
};

namespace detail {
template <int L, int F, int T>
constexpr auto wrap(double value) {
  if constexpr (L == 0 && F == 0 && T == 0) {
    return value;
  } else {
    return Quantity<L, F, T>::from_base(value);
  }
}
}  // namespace detail

template <int L1, int F1, int T1, int L2, int F2, int T2>
constexpr auto operator*(Quantity<L1, F1, T1> a, Quantity<L2, F2, T2> b) {
  return detail::wrap<L1 + L2, F1 + F2, T1 + T2>(a.base() * b.base());
}
template <int L1, int F1, int T1, int L2, int F2, int T2>
constexpr auto operator/(Quantity<L1, F1, T1> a, Quantity<L2, F2, T2> b) {
  return detail::wrap<L1 - L2, F1 - F2, T1 - T2>(a.base() / b.base());
}
template <int L, int F, int T>
constexpr auto operator/(double k, Quantity<L, F, T> q) {
  return detail::wrap<-L, -F, -T>(k / q.base());
}

// Square root of a quantity whose exponents are even: sqrt(area) is a length.
template <int L, int F, int T>
requires(L % 2 == 0 && F % 2 == 0 && T % 2 == 0) auto sqrt(Quantity<L, F, T> q) {
  return detail::wrap<L / 2, F / 2, T / 2>(std::sqrt(q.base()));
}
template <int L, int F, int T>
constexpr Quantity<L, F, T> abs(Quantity<L, F, T> q) {
  return q.base() < 0 ? -q : q;
}

using Length = Quantity<1, 0, 0>;
using Area = Quantity<2, 0, 0>;
using Volume = Quantity<3, 0, 0>;
using SecondMoment = Quantity<4, 0, 0>;    // second moment of area
using InverseLength = Quantity<-1, 0, 0>;  // threads per inch
using Force = Quantity<0, 1, 0>;
using Pressure = Quantity<-2, 1, 0>;  // also stress and modulus
using Torque = Quantity<1, 1, 0>;
using LineLoad = Quantity<-1, 1, 0>;    // force per unit length
using UnitWeight = Quantity<-3, 1, 0>;  // weight per unit volume
using Time = Quantity<0, 0, 1>;
using Velocity = Quantity<1, 0, -1>;
using Acceleration = Quantity<1, 0, -2>;
using Flow = Quantity<3, 0, -1>;
using KinematicViscosity = Quantity<2, 0, -1>;
using Density = Quantity<-4, 1, 2>;  // mass per unit volume, as force * time^2 / length^4

// One of each unit. Multiply to make a quantity, divide by it to read one.
namespace units {
inline constexpr Length inch = Length::from_base(1.0);
inline constexpr Length foot = 12.0 * inch;
inline constexpr Length mm = inch / 25.4;  // exact by definition of the inch
inline constexpr Length meter = 1000.0 * mm;
inline constexpr Area in2 = inch * inch;
inline constexpr Volume in3 = inch * inch * inch;
inline constexpr Volume ft3 = foot * foot * foot;
inline constexpr Volume yd3 = 27.0 * ft3;
inline constexpr Volume gallon = 231.0 * in3;  // US liquid gallon, exact
inline constexpr Volume liter = 1.0e6 * (mm * mm * mm);
inline constexpr Volume m3 = 1000.0 * liter;
inline constexpr Force lbf = Force::from_base(1.0);
inline constexpr Force newton = lbf / 4.4482216152605;  // exact by definition of the pound-force
inline constexpr Pressure psi = lbf / in2;
inline constexpr Pressure kpa = newton * 1000.0 / (meter * meter);
inline constexpr Pressure tsf = 2000.0 * lbf / (foot * foot);  // US short ton per square foot
inline constexpr Torque in_lbf = inch * lbf;
inline constexpr Torque ft_lbf = foot * lbf;
inline constexpr Torque newton_meter = newton * meter;
inline constexpr Time second = Time::from_base(1.0);
inline constexpr Time minute = 60.0 * second;
inline constexpr Time hour = 60.0 * minute;
inline constexpr Velocity ft_per_s = foot / second;
inline constexpr Velocity m_per_s = meter / second;
inline constexpr Velocity mph = 5280.0 * foot / hour;
inline constexpr Acceleration standard_gravity = 9.80665 * meter / (second * second);
inline constexpr Flow gpm = gallon / minute;
inline constexpr Flow liter_per_s = liter / second;
inline constexpr UnitWeight lbf_per_ft3 = lbf / ft3;
inline constexpr LineLoad lbf_per_in = lbf / inch;
inline constexpr Density slug_per_ft3 = lbf * second * second / (ft3 * foot);
inline constexpr InverseLength per_inch = 1.0 / inch;
}  // namespace units

// A temperature is a point on a scale, not a multiple of a unit, so it is a type of its own.
class Temperature {
 public:
  constexpr Temperature() = default;
  static constexpr Temperature fahrenheit(double degrees) { return Temperature(degrees); }
  static constexpr Temperature celsius(double degrees) { return Temperature(degrees * 1.8 + 32.0); }
  [[nodiscard]] constexpr double fahrenheit() const { return fahrenheit_; }
  [[nodiscard]] constexpr double celsius() const { return (fahrenheit_ - 32.0) / 1.8; }
  constexpr auto operator<=>(const Temperature&) const = default;

 private:
  explicit constexpr Temperature(double degrees) : fahrenheit_(degrees) {}
  double fahrenheit_ = 0.0;
};

}  // namespace mainbore
