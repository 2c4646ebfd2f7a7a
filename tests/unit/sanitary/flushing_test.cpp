#include "mainbore/sanitary/flushing.hpp"

#include <array>
#include <stdexcept>

#include "mainbore/hydraulics/pipe.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "unit/hydraulics/tables.hpp"

using namespace mainbore;
using namespace mainbore::sanitary;

TEST_CASE("contents of pipes") {
  const test::ReferenceTable table("sanitary_pipe_contents.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const bool si = row.text("units") == "si";
    const Volume volume = hydraulics::pipe_volume(row.number("bore") * (si ? units::mm : units::inch),
                                                  row.number("length") * (si ? units::meter : units::foot));
    CHECK(volume / (si ? units::liter : units::gallon) == Approx(row.number("volume")).epsilon(table.tolerance()));
  }
}

TEST_CASE("contents and flushing flows of service tubing") {
  const test::ReferenceTable table("hydraulics_tubing_contents.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const FlushReach reach{row.number("id_in") * units::inch, 100 * units::foot};
    const auto agrees = [&](const std::string& column, double value) {
      INFO(column);
      CHECK(value == Approx(row.number(column)).margin(table.tolerance() * test::last_digit(row.text(column))));
    };
    for (const std::string speed : {"2.5", "3", "5", "8"}) {
      const Flushing flushing = flushing_at_velocity({&reach, 1}, std::stod(speed) * units::ft_per_s, 1);
      agrees("gpm_at_" + speed + "fps", flushing.flow / units::gpm);
      agrees("gal_per_100ft", flushing.line_volume / units::gallon);
    }
  }
}

TEST_CASE("flushing flows of mains in the field guide") {
  const test::ReferenceTable table("sanitary_flush_flow.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const FlushReach reach{row.number("bore_in") * units::inch, 100 * units::foot};
    for (const std::string speed : {"1", "2.5"}) {
      const Flow flow = flushing_at_velocity({&reach, 1}, std::stod(speed) * units::ft_per_s, 1).flow;
      CHECK(flow / units::gpm == Approx(row.number("gpm_at_" + speed + "_fps")).epsilon(table.tolerance()));
    }
  }
}

TEST_CASE("time to change the water") {
  const test::ReferenceTable table("sanitary_flush_time.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    for (const double bore : {0.5, 1.0, 2.0}) {
      const FlushReach reach{bore * units::inch, row.number("length_ft") * units::foot};
      const Flushing flushing =
          flushing_at_velocity({&reach, 1}, row.number("fps") * units::ft_per_s, row.number("changes"));
      CHECK(flushing.time / units::second == Approx(row.number("seconds")).margin(table.tolerance()));
    }
  }
}

TEST_CASE("a line of two bores is flushed for the wider one") {
  const std::array reaches{FlushReach{0.75 * units::inch, 20 * units::foot},
                           FlushReach{1.0 * units::inch, 40 * units::foot}};
  const Flushing flushing = flushing_at_velocity(reaches, 2.5 * units::ft_per_s, 3);
  CHECK(flushing.flow == hydraulics::flow_at_velocity(2.5 * units::ft_per_s, 1.0 * units::inch));
  const double gallons = 0.0408 * (0.75 * 0.75 * 20 + 40);
  CHECK(flushing.line_volume / units::gallon == Approx(gallons).epsilon(1e-4));
  CHECK(flushing.discharged / flushing.line_volume == Approx(3.0));
  CHECK(flushing.time / units::second == Approx(3 * (40 + 20 * 0.5625) / 2.5));
  const Flushing slow = flushing_at_flow(reaches, 0.5 * flushing.flow, 3);
  CHECK(slow.time / flushing.time == Approx(2.0));
  CHECK(slow.discharged == flushing.discharged);
}

TEST_CASE("flushing refuses what makes no sense") {
  const FlushReach reach{units::inch, units::foot};
  const FlushReach closed{{}, units::foot};
  CHECK_THROWS_AS(flushing_at_velocity({}, units::ft_per_s, 1), std::invalid_argument);
  CHECK_THROWS_AS(flushing_at_velocity({&closed, 1}, units::ft_per_s, 1), std::invalid_argument);
  CHECK_THROWS_AS(flushing_at_velocity({&reach, 1}, {}, 1), std::invalid_argument);
  CHECK_THROWS_AS(flushing_at_flow({&reach, 1}, units::gpm, -1), std::invalid_argument);
}
