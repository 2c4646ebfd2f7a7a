// Quantities as people write them, and as we print them.
//
// A Measure is a number together with what it measures. Text becomes a Measure here and nowhere else, and a Measure
// becomes text here and nowhere else, so that one table of units serves reader and report.
//
// What may be written (case does not matter, the space before the unit may be left out):
//     8 in     1-1/4 in    3/4"     4 ft 6 in    4'6"    200 mm    1.2 m
//     82 psi   565 kPa     5.6 bar
//     18 gpm   1.1 L/s     50 degF  10 degC      40 lbf  30 ft-lbf  1.5 tsf  35 mph  24 h  2.5 ft/s  12 %
// A bare number is refused: nobody guesses a unit here.
//
//     const auto read = parse_measure("4 ft 6 in", Kind::distance);
//     read.value.base()                                -> 54 (inches)
//     parse_measure("82", Kind::pressure).fault        -> MeasureFault::no_unit
//     format_measure(Measure(82 * units::psi), UnitSystem::si)   -> "565 kPa"
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "mainbore/units.hpp"

namespace mainbore {

enum class UnitSystem : std::uint8_t { us, si };

// What a number measures. Two kinds may share a dimension and differ in the unit a crew reads them in: the wall of a
// pipe is a `length` (in, mm), the way to the next joint a `distance` (ft, m).
enum class Kind : std::uint8_t {
  length,       // in      | mm
  tape,         // in      | mm      (read off a tape: inches and sixteenths in text)
  distance,     // ft      | m       (feet and inches in text)
  pressure,     // psi     | kPa
  force,        // lbf     | N
  torque,       // ft-lbf  | N-m
  flow,         // gpm     | L/s
  volume,       // gal     | L
  earth,        // yd3     | m3
  velocity,     // ft/s    | m/s
  temperature,  // degF    | degC
  area,         // in2     | mm2
  line_load,    // lbf/in  | N/mm
  strength,     // tsf     | kPa     (unconfined compressive strength of soil)
  speed,        // mph     | km/h
  duration,     // min     | min     (seconds or whole minutes in text)
  time_span,    // h       | h
  percent,      // %       | %
  angle,        // deg     | deg
  threads,      // threads | threads
  turns,        // turns   | turns
  ratio,        // (none)
};
inline constexpr int kind_count = static_cast<int>(Kind::ratio) + 1;
// Threads and turns are counts, with a noun beside them.
[[nodiscard]] constexpr bool has_unit(Kind kind) {
  return kind != Kind::ratio && kind != Kind::threads && kind != Kind::turns;
}

class Measure {
 public:
  constexpr Measure() = default;
  constexpr Measure(double base, Kind kind) : base_(base), kind_(kind) {}
  // The everyday kind of each dimension; name the other (distance, earth, strength ...) when that is meant.
  constexpr Measure(Length v, Kind kind = Kind::length) : base_(v.base()), kind_(kind) {}  // NOLINT implicit by design
  constexpr Measure(Pressure v, Kind kind = Kind::pressure) : base_(v.base()), kind_(kind) {}  // NOLINT
  constexpr Measure(Force v) : base_(v.base()), kind_(Kind::force) {}                          // NOLINT
  constexpr Measure(Torque v) : base_(v.base()), kind_(Kind::torque) {}                        // NOLINT
  constexpr Measure(Flow v) : base_(v.base()), kind_(Kind::flow) {}                            // NOLINT
  constexpr Measure(Volume v, Kind kind = Kind::volume) : base_(v.base()), kind_(kind) {}      // NOLINT
  constexpr Measure(Velocity v, Kind kind = Kind::velocity) : base_(v.base()), kind_(kind) {}  // NOLINT
  constexpr Measure(Area v) : base_(v.base()), kind_(Kind::area) {}                            // NOLINT
  constexpr Measure(LineLoad v) : base_(v.base()), kind_(Kind::line_load) {}                   // NOLINT
  constexpr Measure(Time v, Kind kind = Kind::duration) : base_(v.base()), kind_(kind) {}      // NOLINT
  constexpr Measure(Temperature v) : base_(v.fahrenheit()), kind_(Kind::temperature) {}        // NOLINT

  // In the coherent base units of units.hpp; degrees Fahrenheit for a temperature, the plain number for a ratio.
  [[nodiscard]] constexpr double base() const { return base_; }
  [[nodiscard]] constexpr Kind kind() const { return kind_; }
  // The quantity itself, which is of its kind: measure.as<Pressure>().
  template <class Q>
  [[nodiscard]] constexpr Q as() const {
    return Q::from_base(base_);
  }

  friend constexpr bool operator==(const Measure&, const Measure&) = default;

 private:
  double base_ = 0.0;
  Kind kind_ = Kind::ratio;
};

enum class MeasureFault : std::uint8_t {
  none,
  empty,         // nothing there
  not_a_number,  // does not start with a number
  no_unit,       // a bare number
  unknown_unit,  // a unit nobody knows
  wrong_unit,    // a unit of something else: psi for a length
  out_of_range,  // a number no machine can hold, infinite, a fraction over zero, or "1-0/4"
  trailing,      // something left over behind the unit
  two_numbers,   // "118/70 psi": a fraction that is none, or of something that is not read in fractions
};

struct ParsedMeasure {
  Measure value;
  MeasureFault fault = MeasureFault::none;
  [[nodiscard]] explicit operator bool() const { return fault == MeasureFault::none; }
};

// Reads one quantity of the given kind. Never throws, allocates nothing. Values are rounded to 12 significant digits in
// base units, so that 203.2 mm and 8 in are the same number.
[[nodiscard]] ParsedMeasure parse_measure(std::string_view text, Kind kind);

// The same from a number and a unit given apart, as {"value": 82, "unit": "psi"} or a column headed "[psi]".
[[nodiscard]] ParsedMeasure parse_measure(double value, std::string_view unit, Kind kind);

// What to write instead, for an error message: "a pressure with its unit, such as \"82 psi\" or \"565 kPa\"".
[[nodiscard]] std::string expected_text(Kind kind);
// What is wrong, for an error message: "\"82\" has no unit".
[[nodiscard]] std::string describe(MeasureFault fault, std::string_view text);

// The number in the unit shown, rounded to what a crew can read, and the unit's name.
struct Shown {
  double value = 0.0;
  std::string_view unit;
  int decimals = 0;
};
[[nodiscard]] Shown shown(Measure measure, UnitSystem system);
// The same of a bound: what must be reached is rounded up, what must not be passed down. 90 psi is 621 kPa, and at most
// 620 kPa. A value that stands on a step but for the noise of conversion stays there.
enum class Toward : std::uint8_t { less, more };
[[nodiscard]] Shown shown(Measure measure, UnitSystem system, Toward toward);
// The same to so many significant digits. Five are for a calculation that somebody follows by hand: what is worked out from
// figures so printed agrees with what is printed of the result.
inline constexpr int calculation_digits = 5;
[[nodiscard]] Shown shown_in_calculation(Measure measure, UnitSystem system, int digits = calculation_digits);
// Both bounds of one range, each rounded inward; with more places where no step of the unit shown lies between them.
struct ShownRange {
  Shown least;
  Shown most;
};
[[nodiscard]] ShownRange shown_between(Measure least, Measure most, UnitSystem system);
// "0.25 in", "82 psi", "4 ft 6 in", "42 s"; no trailing zeros; a ratio has no unit. A flow over 100 gpm is rounded to the
// gallon, a distance to the quarter inch, a bound of one to the inch; a time to the second, from two minutes on to the
// minute: data keeps `shown`.
[[nodiscard]] std::string format_measure(Measure measure, UnitSystem system);
[[nodiscard]] std::string format_measure(Measure measure, UnitSystem system, Toward toward);
// Both bounds of a range as text, each inside the range as above: "21-3/8 in" and "21-15/16 in".
struct BoundTexts {
  std::string least;
  std::string most;
};
[[nodiscard]] BoundTexts bound_texts(Measure least, Measure most, UnitSystem system);
// "21-3/8 in to 21-15/16 in".
[[nodiscard]] std::string format_between(Measure least, Measure most, UnitSystem system);
void append_measure(std::string& out, Measure measure, UnitSystem system);
void append_measure(std::string& out, Measure measure, UnitSystem system, Toward toward);

// Lengths as they are read on site, for text alone: what must be reached is rounded up, what is there down.
[[nodiscard]] std::string on_rule(Length length, UnitSystem system, Toward toward);  // sixteenths of an inch | mm
[[nodiscard]] std::string on_tape(Length length, UnitSystem system, Toward toward);  // feet and inches | centimeters
[[nodiscard]] std::string on_gauge(Pressure pressure, UnitSystem system);            // nearest psi | kPa
[[nodiscard]] std::string on_gauge(Pressure pressure, UnitSystem system, Toward toward);
[[nodiscard]] std::string on_caliper(Length length, UnitSystem system);  // nearest 0.01 in, 6.625 in as it is | 0.1 mm
// Set out by pacing, for what no tape is laid to: whole feet | half meters, rounded up.
[[nodiscard]] std::string by_paces(Length length, UnitSystem system);
// A force that was worked out, for text alone: two digits, rounded up. No formula of a drill or a clamp is truer.
[[nodiscard]] std::string in_round_figures(Force force, UnitSystem system);  // "2300 lbf" | N
// A heap of earth as a truck carries it, two digits, rounded up: tons of 2000 lb, or tonnes.
[[nodiscard]] std::string by_the_truck(Force weight, UnitSystem system);  // "51 tons" | t

// A number rounded to `decimals` places, without trailing zeros and without a negative zero. Locale-free.
void append_number(std::string& out, double value, int decimals);
// Turns of a bar, a feed or a wrench in quarters: "3-3/4 turns", "1 turn".
[[nodiscard]] std::string in_quarter_turns(double turns);
[[nodiscard]] std::string in_quarter_turns(double turns, Toward toward);
// A number in whole and sixteenths, as a rule or a tape is read: "3/4", "21-3/4", "-1/2". Rounded to the nearest sixteenth.
void append_sixteenths(std::string& out, double value);

}  // namespace mainbore
