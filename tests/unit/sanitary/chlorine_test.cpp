#include <stdexcept>

#include "mainbore/sanitary/dechlorination.hpp"
#include "mainbore/sanitary/dilution.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::sanitary;

namespace {

constexpr Volume fl_oz = units::gallon / 128.0;
constexpr Force ounce = units::lbf / 16.0;
constexpr Concentration one_percent = Concentration::percent(1.0);

}  // namespace

TEST_CASE("one per cent is ten thousand milligrams a litre") {
  STATIC_REQUIRE(Concentration::percent(1.0) == Concentration::mg_per_liter(10000.0));
  CHECK(Concentration::mg_per_liter(50).percent() == Approx(0.005));
}

TEST_CASE("a liquid whose label gives the salt by weight is weighed out") {
  const test::ReferenceTable table("sanitary_hypochlorite_weight.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Volume water = row.number("gallons") * units::gallon;
    const Concentration dose = Concentration::mg_per_liter(row.number("mg_per_litre"));
    const Concentration salt = Concentration::percent(row.number("hypochlorite_percent"));
    CHECK(hypochlorite_weight(water, dose, salt) / units::lbf ==
          Approx(row.number("liquid_lb")).margin(table.tolerance()));
  }
}

TEST_CASE("one per cent solution from each liquid stock") {
  const test::ReferenceTable table("sanitary_dilution.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Concentration stock = Concentration::percent(row.number("stock_percent"));
    CHECK(water_parts(stock, one_percent) == Approx(row.number("water_parts")).margin(1e-9));
    const Dilution mix = dilute(units::gallon, stock, one_percent);
    CHECK(mix.stock / fl_oz == Approx(row.number("fl_oz_per_gallon")).margin(table.tolerance()));
    CHECK((mix.stock + mix.water) / units::gallon == Approx(1.0));
    CHECK(mixed_strength(mix.stock, stock, mix.water).percent() == Approx(1.0));
  }
  // 3.5 % to 0.5 % is six parts of water; two gallons of 1 % from 8.25 % are 31 and 225 fl oz.
  CHECK(water_parts(Concentration::percent(3.5), Concentration::percent(0.5)) == Approx(6.0));
  const Dilution two_gallons = dilute(2 * units::gallon, Concentration::percent(8.25), one_percent);
  CHECK(two_gallons.stock / fl_oz == Approx(31).margin(0.05));
  CHECK(two_gallons.water / fl_oz == Approx(225).margin(0.05));
}

TEST_CASE("the field guide's recipes come out near one per cent") {
  // One pound of 65 % calcium hypochlorite, or 3 liters of 10 % sodium hypochlorite, in 8 gallons.
  const Volume water = 8 * units::gallon;
  CHECK(0.65 * units::lbf / chlorine_weight(water, one_percent) == Approx(0.97).margin(0.015));
  CHECK(mixed_strength(3 * units::liter, Concentration::percent(10), water).percent() == Approx(0.90).margin(0.005));
}

TEST_CASE("one per cent solution from dry product") {
  const test::ReferenceTable table("sanitary_dry_product.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Force product =
        dry_product_weight(units::gallon, one_percent, Concentration::percent(row.number("available_percent")));
    CHECK(product / ounce == Approx(row.number("ounces_per_gallon")).margin(table.tolerance()));
  }
  // 14.2 g of 35 % product in a liter is 0.5 % (published); a liter weighs a kilogram within 0.1 %.
  const Force product = dry_product_weight(units::liter, Concentration::percent(0.5), Concentration::percent(35));
  CHECK(product / (9.80665e-3 * units::newton) == Approx(14.2).epsilon(0.01));
}

TEST_CASE("dosing a volume with liquid chlorine") {
  const test::ReferenceTable table("sanitary_liquid_dose.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Volume volume = row.number("gallons") * units::gallon;
    const Concentration dose = Concentration::mg_per_liter(row.number("mg_per_litre"));
    const Dilution mix = dilute(volume, Concentration::percent(row.number("stock_percent")), dose);
    CHECK(mix.stock / fl_oz == Approx(row.number("stock_fl_oz")).epsilon(table.tolerance()));
    if (row.has("chlorine_lb")) {
      CHECK(chlorine_weight(volume, dose) / units::lbf == Approx(row.number("chlorine_lb")).epsilon(table.tolerance()));
    }
  }
}

TEST_CASE("dechlorination against both columns of the field guide") {
  const test::ReferenceTable table("sanitary_dechlorination.csv");
  const Concentration one = Concentration::mg_per_liter(1);
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const double ratio = row.number("mg_per_mg_chlorine");
    const Force us = dechlorination_weight(100000 * units::gallon, one, ratio);
    const Force si = dechlorination_weight(100 * units::m3, one, ratio);
    CHECK(us / units::lbf == Approx(row.number("lb_per_100000_gal_per_mg_l")).margin(table.tolerance()));
    CHECK(si / (9.80665 * units::newton) == Approx(row.number("kg_per_100_m3_per_mg_l")).margin(table.tolerance()));
    CHECK(dechlorination_weight(units::gallon, one, ratio, 0.10) / dechlorination_weight(units::gallon, one, ratio) ==
          Approx(1.10));
  }
}

TEST_CASE("chlorine arithmetic refuses what makes no sense") {
  const Concentration half = Concentration::percent(0.5);
  CHECK_THROWS_AS(dilute(units::gallon, half, one_percent), std::invalid_argument);
  CHECK_THROWS_AS(dilute(-units::gallon, one_percent, half), std::invalid_argument);
  CHECK_THROWS_AS(water_parts(one_percent, {}), std::invalid_argument);
  CHECK_THROWS_AS(mixed_strength({}, one_percent, {}), std::invalid_argument);
  CHECK_THROWS_AS(dry_product_weight(units::gallon, half, {}), std::invalid_argument);
  CHECK_THROWS_AS(dry_product_weight(units::gallon, half, Concentration::percent(101)), std::invalid_argument);
  CHECK_THROWS_AS(dechlorination_weight(units::gallon, half, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(dechlorination_weight(-units::gallon, half, 1.0), std::invalid_argument);
}
