#include "mainbore/hydraulics/service_line.hpp"

#include <algorithm>
#include <stdexcept>

#include "mainbore/hydraulics/friction.hpp"
#include "mainbore/hydraulics/pipe.hpp"
#include "support/approx.hpp"
#include "support/catch.hpp"
#include "unit/hydraulics/draw.hpp"
#include "unit/hydraulics/tables.hpp"

using namespace mainbore;
using namespace mainbore::hydraulics;
using test::ft2_per_s;
using test::trade_weight;

namespace {

ServiceSegment hazen_williams_segment(double bore_in, double length_ft, double c, double k = 0.0) {
  return {.bore = bore_in * units::inch, .length = length_ft * units::foot, .k = k, .friction = HazenWilliams{c}};
}

// A line anywhere in the range the solver is stated for.
ServiceLine arbitrary_line(test::Draw& draw, const Meter& meter) {
  ServiceLine line;
  const int segments = 1 + static_cast<int>(draw.uniform(0, 3));
  for (int i = 0; i < segments; ++i) {
    ServiceSegment segment{.bore = draw.logarithmic(0.4, 4.0) * units::inch,
                           .length = draw.logarithmic(1.0, 5000.0) * units::foot,
                           .equivalent_length = draw.uniform(0.0, 40.0) * units::foot,
                           .k = draw.uniform(0.0, 12.0)};
    if (draw.coin()) {
      segment.friction = HazenWilliams{draw.uniform(80, 150)};
    } else {
      segment.friction = DarcyWeisbach{draw.logarithmic(0.001, 0.3) * units::mm};
    }
    line.segments.push_back(segment);
  }
  if (draw.coin()) line.meter = meter;
  line.rise = draw.uniform(-20.0, 20.0) * units::foot;
  line.device_loss = draw.coin() ? draw.uniform(0.0, 12.0) * units::psi : Pressure{};
  line.water = {trade_weight, draw.uniform(1.0e-5, 1.95e-5) * ft2_per_s};
  return line;
}

}  // namespace

TEST_CASE("whole service lines, worked by hand") {
  const test::ReferenceTable table("hydraulics_service_lines.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    const auto meter = test::meter_table(row.text("meter"));
    ServiceLine line;
    line.segments = {{.bore = row.number("bore_in") * units::inch,
                      .length = row.number("length_ft") * units::foot,
                      .equivalent_length = row.number("equivalent_ft") * units::foot,
                      .friction = HazenWilliams{row.number("c")}}};
    line.meter = Meter{meter, meter.back().flow};
    line.rise = row.number("rise_ft") * units::foot;
    line.water.weight = trade_weight;
    const Flow flow = row.number("gpm") * units::gpm;
    const Pressure supply = row.number("main_psi") * units::psi;

    const ServiceLosses losses = losses_at(line, flow);
    const double close = table.tolerance();
    CHECK(losses.friction / units::psi == Approx(row.number("friction_psi")).margin(close));
    CHECK(losses.elevation / units::psi == Approx(row.number("elevation_psi")).margin(close));
    CHECK(losses.meter / units::psi == Approx(row.number("meter_psi")).margin(close));
    CHECK(losses.fittings == Pressure{});
    CHECK_FALSE(losses.meter_over_safe_maximum);
    CHECK(residual_at(line, supply, flow) / units::psi == Approx(row.number("residual_psi")).margin(close));
    CHECK((supply - losses.total) / units::psi == Approx(row.number("residual_psi")).margin(close));

    // And back: the flow that leaves that residual is the flow.
    const AvailableFlow back = flow_at_residual(line, supply, residual_at(line, supply, flow));
    CHECK(back.status == FlowStatus::converged);
    CHECK(back.flow / flow == Approx(1.0).epsilon(1e-8));
  }
}

TEST_CASE("two segments in a row against a network solver") {
  // EPANET 2.3, run C: 40 ft of 0.745 in bore at C 130 and K 1.5, then 60 ft of 0.875 in at C 150 and K 2, 12 gpm from
  // a head of 150 ft to a node 10 ft up: 45.253493 psi at 0.4333 psi/ft, with losses of 23.099382 and 12.461446 ft.
  ServiceLine line;
  line.segments = {hazen_williams_segment(0.745, 40, 130, 1.5), hazen_williams_segment(0.875, 60, 150, 2)};
  line.rise = 10 * units::foot;
  line.water.weight = 0.4333 * units::psi / units::foot;
  const Pressure supply = pressure_of_head(150 * units::foot, line.water.weight);
  const ServiceLosses losses = losses_at(line, 12 * units::gpm);
  const auto loss_ft = [&](std::size_t i) {
    return head_of_pressure(losses.segments[i].friction + losses.segments[i].fittings, line.water.weight) / units::foot;
  };
  CHECK(loss_ft(0) == Approx(23.099382).epsilon(0.005));
  CHECK(loss_ft(1) == Approx(12.461446).epsilon(0.005));
  CHECK(losses.greatest_velocity / units::ft_per_s == Approx(8.831988).epsilon(1e-4));
  CHECK(losses.segments[1].velocity / units::ft_per_s == Approx(6.402578).epsilon(1e-4));
  CHECK(residual_at(line, supply, 12 * units::gpm) / units::psi == Approx(45.253493).margin(0.1));
}

TEST_CASE("the flow a pipe passes against a published capacity table") {
  const test::ReferenceTable table("hydraulics_pipe_capacity.csv");
  for (const auto& row : table.rows()) {
    INFO(row.where());
    ServiceLine line;
    line.segments = {hazen_williams_segment(row.number("bore_in"), row.number("length_ft"), 116)};
    line.water.weight = trade_weight;
    const AvailableFlow found = flow_at_residual(line, row.number("psi") * units::psi, {});
    CHECK(found.status == FlowStatus::converged);
    CHECK(found.flow / units::gpm == Approx(row.number("gpm")).epsilon(table.tolerance()));
  }
}

TEST_CASE("the flow by formula and by the solver's steps are one") {
  const auto points = test::meter_table("1");
  ServiceLine line;
  line.segments = {hazen_williams_segment(0.745, 60.0, 130), hazen_williams_segment(0.995, 100.0, 130)};
  line.water.weight = trade_weight;
  for (const double psi : {0.01, 1.0, 40.0, 300.0}) {
    const AvailableFlow by_formula = flow_at_residual(line, psi * units::psi, {});
    CHECK(by_formula.iterations == 0);
    CHECK(by_formula.status == FlowStatus::converged);
    CHECK(abs(residual_at(line, psi * units::psi, by_formula.flow)) <= 1e-10 * units::psi);
    ServiceLine two_materials = line;  // all but alike, and no formula gives its flow
    two_materials.segments.back().friction = HazenWilliams{130.0 * (1.0 + 1e-12)};
    const AvailableFlow by_steps = flow_at_residual(two_materials, psi * units::psi, {});
    CHECK(by_steps.iterations > 0);
    CHECK(by_formula.flow / by_steps.flow == Approx(1.0).epsilon(1e-6));
    ServiceLine metered = line;
    metered.meter = Meter{points, points.back().flow};
    CHECK(flow_at_residual(metered, psi * units::psi, {}).flow < by_formula.flow);
  }
}

TEST_CASE("the solver converges everywhere in its range") {
  const auto points = test::meter_table("1");
  test::Draw draw(1887);
  int most_iterations = 0;
  for (int i = 0; i < 3000; ++i) {
    const ServiceLine line = arbitrary_line(draw, {points, points.back().flow});
    const Pressure supply = draw.logarithmic(1.0, 300.0) * units::psi;
    const Pressure minimum = draw.coin() ? draw.uniform(0.0, 1.0) * supply : Pressure{};
    const AvailableFlow found = flow_at_residual(line, supply, minimum);
    INFO("draw " << i << ": " << found.iterations << " iterations, error " << found.residual_error / units::psi);
    most_iterations = std::max(most_iterations, found.iterations);
    if (found.status == FlowStatus::none_available) {
      CHECK(residual_at(line, supply, {}) <= minimum);
      CHECK(found.flow == Flow{});
      continue;
    }
    REQUIRE(found.status == FlowStatus::converged);
    const Pressure residual = residual_at(line, supply, found.flow);
    CHECK(abs(residual - minimum) <= 1.1e-8 * units::psi);
    CHECK(abs(residual - minimum - found.residual_error) <= 1e-10 * units::psi);
    CHECK(((supply - losses_at(line, found.flow).total) - residual) / units::psi == Approx(0.0).margin(1e-9));
  }
  CHECK(most_iterations <= 25);  // 10 on average
  CHECK(most_iterations > 0);
}

TEST_CASE("the flow available moves the right way with every argument") {
  const auto points = test::meter_table("1");
  const Meter meter{points, points.back().flow};
  test::Draw draw(31);
  for (int i = 0; i < 400; ++i) {
    ServiceLine line = arbitrary_line(draw, meter);
    const Pressure supply = draw.uniform(40.0, 300.0) * units::psi;
    const Pressure minimum = draw.uniform(0.0, 10.0) * units::psi;
    const AvailableFlow before = flow_at_residual(line, supply, minimum);
    if (before.status != FlowStatus::converged) continue;
    INFO("draw " << i);
    // Flows of a line that one change does not touch at all differ by what the solver leaves.
    const Flow slack = 1e-6 * before.flow;
    const auto flow_of = [&](const ServiceLine& changed) { return flow_at_residual(changed, supply, minimum).flow; };

    CHECK(flow_at_residual(line, 1.1 * supply, minimum).flow > before.flow);
    CHECK(flow_at_residual(line, supply, minimum + units::psi).flow < before.flow);
    const auto with_rise = [&] {
      ServiceLine changed = line;
      changed.rise += 2 * units::foot;
      return changed;
    }();
    CHECK(flow_of(with_rise) < before.flow);
    for (std::size_t s = 0; s < line.segments.size(); ++s) {
      const auto changed = [&](auto change) {
        ServiceLine copy = line;
        change(copy.segments[s]);
        return flow_of(copy);
      };
      CHECK(changed([](ServiceSegment& g) { g.bore = 1.1 * g.bore; }) >= before.flow - slack);
      CHECK(changed([](ServiceSegment& g) { g.length = 1.2 * g.length; }) <= before.flow + slack);
      CHECK(changed([](ServiceSegment& g) { g.equivalent_length += 10 * units::foot; }) <= before.flow + slack);
      CHECK(changed([](ServiceSegment& g) { g.k += 2.0; }) <= before.flow + slack);
      if (std::holds_alternative<HazenWilliams>(line.segments[s].friction)) {
        CHECK(changed([](ServiceSegment& g) { std::get<HazenWilliams>(g.friction).c += 10; }) >= before.flow - slack);
      } else {
        CHECK(changed([](ServiceSegment& g) {
                auto& roughness = std::get<DarcyWeisbach>(g.friction).roughness;
                roughness = 2.0 * roughness;
              }) <= before.flow + slack);
      }
    }
  }
}

TEST_CASE("no pressure to spend gives no flow and says so") {
  ServiceLine line;
  line.segments = {hazen_williams_segment(1, 50, 130)};
  line.rise = 100 * units::foot;
  line.water.weight = trade_weight;
  const AvailableFlow found = flow_at_residual(line, 40 * units::psi, 8 * units::psi);
  CHECK(found.status == FlowStatus::none_available);
  CHECK(found.flow == Flow{});
  CHECK(found.residual_error / units::psi == Approx(40 - 43.3 - 8));
  CHECK(residual_at(line, 40 * units::psi, {}) < Pressure{});
}

TEST_CASE("a tap of no length still resists by its entrance") {
  ServiceLine line;
  line.segments = {hazen_williams_segment(0.75, 0, 130, 0.5)};
  line.water.weight = trade_weight;
  const AvailableFlow found = flow_at_residual(line, 60 * units::psi, {});
  CHECK(found.status == FlowStatus::converged);
  CHECK(minor_loss(0.5, mean_velocity(found.flow, 0.75 * units::inch), trade_weight) / units::psi == Approx(60.0));
}

TEST_CASE("a service line refuses what makes no sense") {
  ServiceLine line;
  line.water.weight = trade_weight;
  CHECK_THROWS_AS(losses_at(line, units::gpm), std::invalid_argument);  // no segment
  line.segments = {hazen_williams_segment(1, 0, 130)};
  CHECK_THROWS_AS(flow_at_residual(line, units::psi, {}), std::invalid_argument);  // nothing resists
  line.segments = {hazen_williams_segment(0, 10, 130)};
  CHECK_THROWS_AS(losses_at(line, units::gpm), std::invalid_argument);
  line.segments = {hazen_williams_segment(1, 10, 0)};
  CHECK_THROWS_AS(losses_at(line, units::gpm), std::invalid_argument);
  line.segments = {hazen_williams_segment(1, 10, 130, -1)};
  CHECK_THROWS_AS(losses_at(line, units::gpm), std::invalid_argument);
  line.segments = {hazen_williams_segment(1, 10, 130)};
  CHECK_THROWS_AS(losses_at(line, -units::gpm), std::invalid_argument);
  line.water.weight = {};
  CHECK_THROWS_AS(losses_at(line, units::gpm), std::invalid_argument);
}
