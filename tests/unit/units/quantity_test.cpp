#include <type_traits>

#include "mainbore/units.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using Catch::Approx;

static_assert(std::is_same_v<decltype(Pressure() * Area()), Force>);
static_assert(std::is_same_v<decltype(Force() * Length()), Torque>);
static_assert(std::is_same_v<decltype(Flow() / Area()), Velocity>);
static_assert(std::is_same_v<decltype(Length() / Length()), double>);
static_assert(std::is_same_v<decltype(1.0 / Length()), InverseLength>);
static_assert(std::is_same_v<decltype(sqrt(Area())), Length>);
static_assert(sizeof(Length) == sizeof(double));

TEST_CASE("table values stay exactly as printed") {
  CHECK((0.25 * units::inch).base() == 0.25);
  CHECK((90.0 * units::psi).base() == 90.0);
}

// NIST SP 811 (2008), appendix B: the conversion factors, to the digits it prints.
TEST_CASE("conversions agree with NIST SP 811") {
  CHECK(units::inch / units::mm == Approx(25.4).epsilon(1e-12));
  CHECK(units::foot / units::meter == Approx(0.3048).epsilon(1e-12));
  CHECK(units::psi / units::kpa == Approx(6.894757).epsilon(1e-7));
  CHECK(units::lbf / units::newton == Approx(4.448222).epsilon(1e-7));
  CHECK(units::ft_lbf / units::newton_meter == Approx(1.355818).epsilon(1e-7));
  CHECK(units::gallon / units::liter == Approx(3.785412).epsilon(1e-7));
  CHECK(units::gpm / units::liter_per_s == Approx(6.309020e-2).epsilon(1e-7));
  CHECK(units::yd3 / units::m3 == Approx(0.7645549).epsilon(1e-7));
  CHECK(units::tsf / units::kpa == Approx(95.76052).epsilon(1e-7));
  CHECK(units::mph / units::m_per_s == Approx(0.44704).epsilon(1e-12));
  CHECK(units::standard_gravity / (units::foot / (units::second * units::second)) == Approx(32.17405).epsilon(1e-7));
}

TEST_CASE("a temperature is a point on a scale") {
  CHECK(Temperature::celsius(0).fahrenheit() == 32.0);
  CHECK(Temperature::fahrenheit(212).celsius() == Approx(100.0));
  CHECK(Temperature::celsius(-40) == Temperature::fahrenheit(-40));
}
