#include "mainbore/sanitary/lead_content.hpp"

#include <array>
#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::sanitary;

TEST_CASE("lead averaged over wetted area") {
  const std::array parts{WettedPart{Concentration::percent(0.0), 60 * units::in2},
                         WettedPart{Concentration::percent(0.25), 30 * units::in2},
                         WettedPart{Concentration::percent(1.5), 10 * units::in2}};
  CHECK(weighted_lead_average(parts).percent() == Approx(0.225));
  CHECK(weighted_lead_average(std::span(parts).last(2)).percent() == Approx((0.25 * 30 + 1.5 * 10) / 40));
  CHECK_THROWS_AS(weighted_lead_average({}), std::invalid_argument);
  CHECK_THROWS_AS(weighted_lead_average(std::array{WettedPart{Concentration::percent(1), -units::in2}}),
                  std::invalid_argument);
}
