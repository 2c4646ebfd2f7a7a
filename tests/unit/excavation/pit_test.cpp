#include "mainbore/excavation/pit.hpp"

#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::excavation;

namespace {

constexpr Length foot = units::foot;

// The dig summed layer by layer, each taken at its middle.
Volume volume_by_layers(const Pit& pit, int layers) {
  Volume sum;
  const Length thickness = pit.depth / layers;
  for (int i = 0; i < layers; ++i) {
    const Length spread = 2.0 * pit.slope * ((i + 0.5) * thickness);
    sum += (pit.along + spread) * (pit.across + spread) * thickness;
  }
  return sum;
}

}  // namespace

TEST_CASE("pits with four sloped faces") {
  const test::ReferenceTable table("excavation_pits.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Pit pit{row.number("along_ft") * foot, row.number("across_ft") * foot, row.number("depth_ft") * foot,
                  row.number("slope")};
    CHECK(pit_top(pit).along / foot == Approx(row.number("top_along_ft")));
    CHECK(pit_top(pit).across / foot == Approx(row.number("top_across_ft")));
    CHECK(pit_volume(pit) / units::ft3 == Approx(row.number("ft3")).margin(table.tolerance()));
    CHECK(pit_volume(pit) / units::yd3 == Approx(row.number("yd3")).margin(table.tolerance()));

    const Area bottom = pit.along * pit.across;
    const Area top = pit_top(pit).along * pit_top(pit).across;
    CHECK(pit.depth * (bottom + top) / 2.0 / units::ft3 == Approx(row.number("average_end_area_ft3")));
  }
}

TEST_CASE("the closed form is what the layers sum to") {
  for (const double slope : {0.0, 0.5, 0.75, 1.0, 1.5, 2.0}) {
    for (const double depth : {1.0, 4.5, 6.0, 12.0, 20.0}) {
      const Pit pit{6 * foot, 4.5 * foot, depth * foot, slope};
      INFO("slope " << slope << ", depth " << depth);
      CHECK(volume_by_layers(pit, 1000) / pit_volume(pit) == Approx(1.0).epsilon(1e-6));
    }
  }
}

TEST_CASE("trenches with vertical ends") {
  const test::ReferenceTable table("excavation_trenches.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Volume volume = trench_volume(row.number("length_ft") * foot, row.number("bottom_ft") * foot,
                                        row.number("depth_ft") * foot, row.number("slope"));
    CHECK(volume / units::ft3 == Approx(row.number("ft3")).margin(table.tolerance()));
    CHECK(volume / units::yd3 == Approx(row.number("yd3")).margin(table.tolerance()));
  }
}

TEST_CASE("swell") {
  const test::ReferenceTable table("excavation_swell.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const Volume loose = loose_volume(row.number("bank_yd3") * units::yd3, row.number("swell"));
    CHECK(loose / units::yd3 == Approx(row.number("loose_yd3")).margin(table.tolerance()));
  }
}

TEST_CASE("a pit sized round the main") {
  // 6-inch main of 6.90 in outside diameter under 4 ft of cover.
  const PitRoom room{
      .along = 6 * foot, .machine_side = 30 * units::inch, .far_side = 12 * units::inch, .below = 12 * units::inch};
  const Pit pit = size_pit(6.90 * units::inch, 4 * foot, room, 1.0);
  CHECK(pit.along == 6 * foot);
  CHECK(pit.across / units::inch == Approx(48.90));
  CHECK(pit.depth / units::inch == Approx(66.90));
  CHECK(pit.slope == 1.0);
  CHECK_THROWS_AS(size_pit({}, 4 * foot, room, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(size_pit(6.90 * units::inch, -foot, room, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(size_pit(6.90 * units::inch, foot, room, -1.0), std::invalid_argument);
}

TEST_CASE("the spoil pile holds the spoil") {
  const Volume loose = 990 * units::ft3;
  const Length length = 18 * foot;
  for (const double repose : {1.0, 1.5, 2.0}) {
    const SpoilPile pile = spoil_windrow(loose, length, repose);
    CHECK(pile.base * pile.height / 2.0 * length / loose == Approx(1.0));
    CHECK(pile.base / pile.height == Approx(2 * repose));
  }
  // 55 ft2 of section at 1.5:1: sqrt(55/1.5) = 6.055 ft high and 18.166 ft wide at the ground.
  const SpoilPile pile = spoil_windrow(loose, length, 1.5);
  CHECK(pile.height / foot == Approx(6.0553).margin(5e-5));
  CHECK(occupied_strip(16 * foot, 2 * foot, pile) / foot == Approx(8 + 2 + 18.166).margin(5e-4));
  CHECK_THROWS_AS(spoil_windrow(loose, {}, 1.5), std::invalid_argument);
  CHECK_THROWS_AS(spoil_windrow(loose, length, 0.0), std::invalid_argument);
}
