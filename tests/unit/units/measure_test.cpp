#include "mainbore/measure.hpp"

#include <cmath>
#include <random>
#include <string>

#include "support/catch.hpp"

using namespace mainbore;
using Catch::Approx;

namespace {

double base(const char* text, Kind kind) {
  const ParsedMeasure read = parse_measure(text, kind);
  INFO(text << ": " << describe(read.fault, text));
  REQUIRE(read);
  return read.value.base();
}

MeasureFault fault(std::string_view text, Kind kind) { return parse_measure(text, kind).fault; }

}  // namespace

TEST_CASE("quantities are read as people write them") {
  CHECK(base("8 in", Kind::length) == 8.0);
  CHECK(base("1-1/4 in", Kind::length) == 1.25);
  CHECK(base("1 1/4 in", Kind::length) == 1.25);
  CHECK(base("3/4\"", Kind::length) == 0.75);
  CHECK(base(" .25IN ", Kind::length) == 0.25);
  CHECK(base("4 ft 6 in", Kind::distance) == 54.0);
  CHECK(base("4'6\"", Kind::distance) == 54.0);
  CHECK(base("4' 6-1/2\"", Kind::distance) == 54.5);
  CHECK(base("-3 ft", Kind::distance) == -36.0);
  CHECK(base("-3 ft 6 in", Kind::distance) == -42.0);
  CHECK(base("203.2 mm", Kind::length) == 8.0);
  CHECK(base("82 psi", Kind::pressure) == 82.0);
  CHECK(base("565.3700 kPa", Kind::pressure) == Approx(82.0).epsilon(1e-5));
  CHECK(base("10 degC", Kind::temperature) == 50.0);
  CHECK(base("50 \xC2\xB0"
             "F",
             Kind::temperature) == 50.0);
  CHECK(base("18 gpm", Kind::flow) == Approx(69.3));
  CHECK(base("1.5 tsf", Kind::strength) == Approx(20.8333).epsilon(1e-4));
  CHECK(base("2 threads", Kind::threads) == 2.0);
  CHECK(base("2", Kind::threads) == 2.0);
}

TEST_CASE("what cannot be read says why, and nobody guesses a unit") {
  CHECK(fault("82", Kind::pressure) == MeasureFault::no_unit);
  CHECK(fault("", Kind::pressure) == MeasureFault::empty);
  CHECK(fault("eighty psi", Kind::pressure) == MeasureFault::not_a_number);
  CHECK(fault("82 psia", Kind::pressure) == MeasureFault::unknown_unit);
  CHECK(fault("82 psi", Kind::length) == MeasureFault::wrong_unit);
  CHECK(fault("1e999 psi", Kind::pressure) == MeasureFault::out_of_range);
  CHECK(fault("1/0 in", Kind::length) == MeasureFault::out_of_range);
  CHECK(fault("nan in", Kind::length) == MeasureFault::not_a_number);
  CHECK(fault("inf in", Kind::length) == MeasureFault::not_a_number);
  CHECK(fault("4 ft 6 psi", Kind::length) == MeasureFault::trailing);
  CHECK(fault("8 in 3 ft", Kind::length) == MeasureFault::trailing);
  CHECK(fault("8 in or so", Kind::length) == MeasureFault::trailing);
  CHECK(fault("1-1/ in", Kind::length) != MeasureFault::none);
  CHECK(fault("1-0/4 in", Kind::length) == MeasureFault::out_of_range);
  CHECK(fault("1-4/4 in", Kind::length) == MeasureFault::out_of_range);
  // Static over residual pressure, or two sizes: nothing is divided that is no part of an inch.
  CHECK(fault("118/70 psi", Kind::pressure) == MeasureFault::two_numbers);
  CHECK(fault("70/118 psi", Kind::pressure) == MeasureFault::two_numbers);
  CHECK(fault("80-1/2 psi", Kind::pressure) == MeasureFault::two_numbers);
  CHECK(fault("16/2 in", Kind::length) == MeasureFault::two_numbers);
  CHECK(fault("8/8 in", Kind::length) == MeasureFault::two_numbers);
  CHECK(fault("9/3 ft", Kind::distance) == MeasureFault::two_numbers);
  CHECK(fault("3/4 ft", Kind::distance) == MeasureFault::none);
  CHECK(fault("3-1/2 turns", Kind::turns) == MeasureFault::none);
}

TEST_CASE("quantities are shown as a crew reads them") {
  CHECK(format_measure(Measure(0.25 * units::inch), UnitSystem::us) == "0.25 in");
  CHECK(format_measure(Measure(0.25 * units::inch), UnitSystem::si) == "6.4 mm");
  CHECK(format_measure(Measure(54.0 * units::inch, Kind::distance), UnitSystem::us) == "4 ft 6 in");
  CHECK(format_measure(Measure(55.6 * units::inch, Kind::distance), UnitSystem::us) == "4 ft 7-1/2 in");
  CHECK(format_measure(Measure(55.6 * units::inch, Kind::distance), UnitSystem::us, Toward::more) == "4 ft 8 in");
  CHECK(format_measure(Measure(-6.0 * units::inch, Kind::distance), UnitSystem::us) == "-6 in");
  CHECK(format_measure(Measure(0.7 * units::minute), UnitSystem::us) == "42 s");
  CHECK(format_measure(Measure(3.4 * units::minute), UnitSystem::us) == "3 min");
  CHECK(format_measure(Measure(3.4 * units::minute), UnitSystem::us, Toward::more) == "4 min");
  CHECK(on_gauge(82.6 * units::psi, UnitSystem::us) == "83 psi");
  CHECK(on_gauge(82.6 * units::psi, UnitSystem::us, Toward::less) == "82 psi");
  CHECK(on_gauge(90.0 * units::psi, UnitSystem::si, Toward::less) == "620 kPa");
  CHECK(format_measure(Measure(82.0 * units::psi), UnitSystem::us) == "82 psi");
  CHECK(format_measure(Measure(82.0 * units::psi), UnitSystem::si) == "565 kPa");
  CHECK(format_measure(Measure(Temperature::celsius(10)), UnitSystem::si) == "10 degC");
  CHECK(format_measure(Measure(-0.0001 * units::inch), UnitSystem::us) == "0 in");
  CHECK(format_measure(Measure(0.5, Kind::ratio), UnitSystem::us) == "0.5");
}

TEST_CASE("a bound is shown so that it holds") {
  using enum Toward;
  CHECK(format_measure(Measure(90.0 * units::psi), UnitSystem::si, less) == "620 kPa");
  CHECK(format_measure(Measure(90.0 * units::psi), UnitSystem::us, less) == "90 psi");
  CHECK(format_measure(Measure(0.21 * units::inch), UnitSystem::si, more) == "5.4 mm");
  CHECK(format_measure(Measure(28.6875 * units::inch, Kind::tape), UnitSystem::si, less) == "728 mm");
  CHECK(format_measure(Measure(28.7 * units::inch, Kind::tape), UnitSystem::us, less) == "28-11/16 in");
  CHECK(format_measure(Measure(28.7 * units::inch, Kind::tape), UnitSystem::us, more) == "28-3/4 in");
  // 8 in, with the noise of having come by way of millimeters.
  CHECK(format_measure(Measure((203.2 + 1e-9) * units::mm), UnitSystem::us, more) == "8 in");
  const Measure mark(21.375 * units::inch, Kind::tape);
  CHECK(format_between(mark, mark, UnitSystem::us) == "21-3/8 in to 21-3/8 in");
  CHECK(format_between(mark, mark, UnitSystem::si) == "542.925 mm to 542.925 mm");  // 21.375 in of 25.4 mm
  CHECK(format_between(mark, Measure(21.4375 * units::inch, Kind::tape), UnitSystem::si) == "543 mm to 544 mm");
  CHECK(shown_between(mark, mark, UnitSystem::si).least.decimals == 3);
  std::mt19937_64 random(20261126);
  for (int i = 0; i < 2000; ++i) {
    const auto kind = static_cast<Kind>(random() % (static_cast<unsigned>(Kind::ratio)));
    const Measure bound(static_cast<double>(random() % 200000) / 100.0 / 7.0, kind);
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
      INFO(format_measure(bound, system, less) << " or " << format_measure(bound, system, more));
      const double noise = 1e-6 * (1.0 + bound.base());
      REQUIRE(parse_measure(format_measure(bound, system, less), kind).value.base() <= bound.base() + noise);
      REQUIRE(parse_measure(format_measure(bound, system, more), kind).value.base() >= bound.base() - noise);
    }
  }
}

TEST_CASE("what is shown can be read back, in either system") {
  std::mt19937_64 random(20261125);
  for (int i = 0; i < 2000; ++i) {
    const auto kind = static_cast<Kind>(random() % (static_cast<unsigned>(Kind::ratio)));
    const double value = static_cast<double>(random() % 200000) / 100.0;
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
      const Measure measure(value, kind);
      const std::string text = format_measure(measure, system);
      const ParsedMeasure read = parse_measure(text, kind);
      INFO(text);
      REQUIRE(read);
      REQUIRE(format_measure(read.value, system) == text);
    }
  }
}

TEST_CASE("no text makes the reader misbehave") {
  std::mt19937_64 random(7);
  const std::string alphabet = "0123456789./-+'\" \tinftpskPaebmgC%\xC2\xB0";
  for (int i = 0; i < 20000; ++i) {
    std::string text;
    for (auto n = random() % 12; n > 0; --n) text += alphabet[random() % alphabet.size()];
    for (int k = 0; k < kind_count; ++k) {
      const ParsedMeasure read = parse_measure(text, static_cast<Kind>(k));
      if (read) REQUIRE(std::isfinite(read.value.base()));
    }
  }
}

TEST_CASE("on site a length is read in whole steps, rounded to the safe side") {
  using enum Toward;
  CHECK(on_rule(1.133 * units::inch, UnitSystem::us, more) == "1-3/16 in");
  CHECK(on_rule(1.133 * units::inch, UnitSystem::us, less) == "1-1/8 in");
  CHECK(on_rule(1.25 * units::inch, UnitSystem::us, more) == "1-1/4 in");
  CHECK(on_rule(1.133 * units::inch, UnitSystem::si, more) == "29 mm");
  CHECK(on_tape(29.4 * units::inch, UnitSystem::us, less) == "2 ft 5 in");
  CHECK(on_tape(29.4 * units::inch, UnitSystem::us, more) == "2 ft 6 in");
  CHECK(on_tape(24.0 * units::inch, UnitSystem::us, more) == "2 ft");
  CHECK(on_tape(7.0 * units::inch, UnitSystem::us, less) == "7 in");
  CHECK(on_tape(Length(), UnitSystem::us, less) == "0 in");
  CHECK(on_tape(29.4 * units::inch, UnitSystem::si, less) == "0.74 m");
  CHECK(on_tape(29.4 * units::inch, UnitSystem::si, more) == "0.75 m");
  CHECK(on_caliper(6.923 * units::inch, UnitSystem::us) == "6.92 in");
  CHECK(on_caliper(6.625 * units::inch, UnitSystem::us) == "6.625 in");
  CHECK(on_caliper(6.9 * units::inch, UnitSystem::us) == "6.9 in");
  CHECK(on_caliper(6.9 * units::inch, UnitSystem::si) == "175.3 mm");
}
