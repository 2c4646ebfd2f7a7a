// Marks on the bar, against figures worked out apart from the program from the drawing of a circle and a chord.
#include "mainbore/mechanics/bar_marks.hpp"

#include <stdexcept>

#include "support/approx.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::mechanics;

namespace {

constexpr Length in(double inches) { return inches * units::inch; }

PipeRange pipe(double od, double wall) { return {in(od), in(od), in(wall), in(wall), in(wall)}; }

BarTool cutter(double width, double point, double beyond) {
  BarTool tool;
  tool.width = in(width);
  tool.point = Angle::degrees(point);
  tool.beyond = in(beyond);
  return tool;
}

}  // namespace

TEST_CASE("where a hole is full width: the chord across the bore, the drill's point and what it is run past") {
  // t + [Ri - sqrt(Ri^2 - r^2)] + r / tan(phi) + c on a pocket calculator.
  struct Row {
    double od, wall, width, point, beyond, full;
  };
  for (const Row& row : {Row{6.90, 0.25, 1.0, 180, 0.0, 0.2893}, Row{9.05, 0.27, 29.0 / 32, 118, 0.0, 0.5665},
                         Row{13.20, 0.28, 1.5, 180, 0.05, 0.3747}, Row{4.80, 0.25, 45.0 / 64, 118, 0.05, 0.5402}}) {
    INFO(row.od << " in, " << row.width << " in cut");
    const BarMarks marks = bar_marks(pipe(row.od, row.wall), cutter(row.width, row.point, row.beyond));
    CHECK(marks.breakthrough / units::inch == Approx(row.wall));
    REQUIRE(marks.full_width);
    CHECK(*marks.full_width / units::inch == Approx(row.full).margin(0.0001));
    CHECK(marks.far_wall / units::inch == Approx(row.od - row.wall));
  }
}

TEST_CASE("what was measured on the tool makes the marks of its tap") {
  BarTool tool = cutter(1.14, 118, 0.05);
  CHECK_FALSE(bar_marks(pipe(9.05, 0.27), tool).catches);
  tool.tap_depth = in(1.08);
  CHECK_FALSE(bar_marks(pipe(9.05, 0.27), tool).stop_tapping);
  tool.lead = in(2.125);
  const BarMarks marks = bar_marks(pipe(9.05, 0.27), tool);
  CHECK(*marks.catches == in(2.125));
  CHECK(*marks.stop_tapping / units::inch == Approx(3.205));
  // A trial with the tool itself goes before what was worked out.
  tool.found_by_trial = in(3.25);
  CHECK(*bar_marks(pipe(9.05, 0.27), tool).stop_tapping == in(3.25));
}

TEST_CASE("the stop on the bar touches by as much later as its tool is shorter") {
  BarTool tool = cutter(1.14, 118, 0.05);
  tool.length = in(9.5);
  CHECK_FALSE(bar_marks(pipe(9.05, 0.27), tool).stop_touches);
  tool.insertion_length = in(7.25);
  CHECK(*bar_marks(pipe(9.05, 0.27), tool).stop_touches == in(2.25));
  CHECK(drawn_back_with(in(4.5), in(9.5), in(7.25)) == in(6.75));
  CHECK(drawn_back_with(in(4.5), in(7.25), in(9.5)) == in(2.25));
}

TEST_CASE("doubt about the pipe moves each mark to its safe side") {
  const PipeRange doubt{in(6.84), in(6.90), in(0.20), in(0.34), in(0.50)};
  const BarMarks marks = bar_marks(doubt, cutter(1.0, 180, 0.0));
  CHECK(marks.breakthrough == in(0.20));
  CHECK(*marks.full_width > *bar_marks(pipe(6.90, 0.25), cutter(1.0, 180, 0.0)).full_width);
  CHECK(marks.far_wall / units::inch == Approx(6.34));
}

TEST_CASE("lengths that cannot be are refused") {
  BarTool tool = cutter(1.0, 180, 0.0);
  CHECK_THROWS_AS(bar_marks(pipe(6.9, 0.0), tool), std::invalid_argument);
  CHECK_THROWS_AS(bar_marks(pipe(6.9, 3.5), tool), std::invalid_argument);
  CHECK_THROWS_AS(bar_marks(pipe(6.9, 0.25), cutter(0.0, 180, 0.0)), std::invalid_argument);
  tool.lead = in(-1);
  CHECK_THROWS_AS(bar_marks(pipe(6.9, 0.25), tool), std::invalid_argument);
  CHECK_FALSE(bar_marks(pipe(6.9, 0.25), cutter(6.5, 180, 0.0)).full_width);
}
