// Tubing, meters, demand curves and ground, against the published values.
#include <algorithm>
#include <cctype>
#include <string>
#include <utility>

#include "mainbore/hydraulics/demand.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

namespace {

const ServiceTables& tables() { return Catalog::builtin().service_tables(); }
NominalSize size_named(const std::string& text) {
  return NominalSize::inches(parse_measure(text, Kind::ratio).value.base());
}

}  // namespace

TEST_CASE("service tubing has the published diameters, walls and bores") {
  const ReferenceTable table("hydraulics_tubing_contents.csv");
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    const std::string& material = row.text("material");
    for (std::size_t i = 0; i < tubing_count; ++i) {
      const auto tubing = static_cast<Tubing>(i);
      const bool copper_k = tubing == Tubing::copper_k && material == "copper K";
      const bool copper_l = tubing == Tubing::copper_l && material == "copper L";
      const bool plastic = (tubing == Tubing::polyethylene || tubing == Tubing::pex) && material == "PE/PEX SDR9";
      if (!copper_k && !copper_l && !plastic) continue;
      const TubeSize* tube = tables().tube(tubing, size_named(row.text("nom_in")));
      REQUIRE(tube != nullptr);
      CHECK(tube->od / units::inch == Approx(row.number("od_in")));
      CHECK(tube->wall / units::inch == Approx(row.number("wall_in")));
      CHECK(tube->bore / units::inch == Approx(row.number("id_in")));
      CHECK(tube->bore_least <= tube->bore);
    }
  }
}

TEST_CASE("PVC of Schedule 40 and 80 has the published diameters and walls, and bears no more than it is rated for") {
  const ReferenceTable table("pvc_schedule_pipe.csv");
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    const TubeSize* tube =
        tables().tube(row.number("schedule") == 40.0 ? Tubing::pvc_40 : Tubing::pvc_80, size_named(row.text("size")));
    REQUIRE(tube != nullptr);
    CHECK(tube->od / units::mm == Approx(0.5 * (row.number("od_least_mm") + row.number("od_most_mm"))).margin(0.01));
    CHECK(tube->wall / units::mm == Approx(row.number("wall_least_mm")).margin(0.01));
    CHECK(tube->bore_least / units::mm == Approx(tube->od / units::mm - 2.0 * row.number("wall_most_mm")).margin(0.06));
    REQUIRE(tube->rating);
    CHECK(*tube->rating / units::psi <= row.number("psi"));
    CHECK(*tube->rating / units::psi >= row.number("psi") - 10.0);
  }
}

TEST_CASE("above the largest tabulated size a fitting counts as many diameters as that") {
  CHECK(tables().equivalent_length(LineFitting::curb_stop, NominalSize::inches(4))->base() ==
        Approx(2.0 * tables().equivalent_length(LineFitting::curb_stop, NominalSize::inches(2))->base()));
}

TEST_CASE("meters lose what the published table says, up to their greatest flow") {
  const ReferenceTable table("catalog_meter_loss.csv");
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    const MeterSize* meter = tables().meter(size_named(row.text("size")));
    REQUIRE(meter != nullptr);
    const auto lost = hydraulics::meter_loss(meter->meter(), row.number("flow_gpm") * units::gpm);
    CHECK(lost.loss / units::psi == Approx(row.number("loss_psi")).margin(table.tolerance()));
    CHECK_FALSE(lost.over_safe_maximum);
  }
  for (const auto& [size, gpm] : {std::pair("5/8", 20.0), {"3/4", 30.0}, {"1", 50.0}, {"1-1/2", 100.0}, {"2", 160.0}}) {
    CHECK(tables().meter(size_named(size))->safe_maximum / units::gpm == Approx(gpm));
  }
}

TEST_CASE("the curve of the International Plumbing Code is the published one") {
  const ReferenceTable table("hydraulics_demand_curve.csv");
  const DemandCurve& curve = tables().curves[static_cast<std::size_t>(PlumbingCode::ipc)];
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    const double units_wanted = row.number("wsfu");
    CHECK(hydraulics::fixture_demand(units_wanted, *curve.tank).flow / units::gpm ==
          Approx(row.number("gpm_flush_tank")).margin(table.tolerance()));
    if (row.has("gpm_flush_valve")) {
      CHECK(hydraulics::fixture_demand(units_wanted, *curve.valve).flow / units::gpm ==
            Approx(row.number("gpm_flush_valve")).margin(table.tolerance()));
    }
  }
}

TEST_CASE("fittings between the tabulated sizes take the next larger row") {
  const auto feet = [](LineFitting fitting, double size) {
    return *tables().equivalent_length(fitting, NominalSize::inches(size)) / units::foot;
  };
  CHECK(feet(LineFitting::corporation_stop, 1) == Approx(9));
  CHECK(feet(LineFitting::curb_stop, 0.75) == Approx(6));
  CHECK(feet(LineFitting::curb_stop, 1) == Approx(7));
  CHECK(feet(LineFitting::curb_stop, 2) == Approx(8));
  CHECK(feet(LineFitting::elbow, 0.625) == Approx(4.5));
}

TEST_CASE("fixtures stand by code and first letter, as they are looked up") {
  const auto& rows = Catalog::builtin().service_tables().fixtures;
  REQUIRE(rows.size() > 50);
  const auto place = [](const FixtureRow& row) { return std::pair(row.code, std::tolower(row.fixture[0])); };
  CHECK(std::is_sorted(rows.begin(), rows.end(),
                       [&](const FixtureRow& a, const FixtureRow& b) { return place(a) < place(b); }));
}

TEST_CASE("the default slopes are those of the published table") {
  const Rules rules = *load_rules(Catalog::builtin(), {}).rules;
  const ReferenceTable table("excavation_slopes.csv");
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    const std::string& soil = row.text("soil");
    const Rule<double>& rule = soil == "stable_rock"         ? rules.pit.slope_stable_rock
                               : soil == "type_a"            ? rules.pit.slope_type_a
                               : soil == "type_a_short_term" ? rules.pit.slope_type_a_short
                               : soil == "type_b"            ? rules.pit.slope_type_b
                                                             : rules.pit.slope_type_c;
    CHECK(rule.value == Approx(row.number("run")));
    CHECK(rule.basis.how == How::published);
  }
}

TEST_CASE("marks have the published colors") {
  CHECK(tables().color_of("potable water") == "blue");
  CHECK(tables().water_mark == "blue");
  CHECK(tables().color_of("gas") == "yellow");
  CHECK(tables().gas_mark == "yellow");
  CHECK(tables().color_of("sewer") == "green");
  CHECK(tables().color_of("steamship").empty());
}

TEST_CASE("recalled figures of the service tables say so") {
  CHECK(tables().friction_of(Tubing::pex).roughness_basis.how == How::memory);
  CHECK(tables().tube(Tubing::ductile_iron, NominalSize::inches(6))->basis.how == How::memory);
  CHECK(tables().tube(Tubing::black_steel, NominalSize::inches(6))->basis.how == How::memory);
  CHECK(tables().tube(Tubing::pvc_40, NominalSize::inches(10))->basis.how == How::memory);
  CHECK(tables().tube(Tubing::pvc_40, NominalSize::inches(4))->basis.how == How::published);
  CHECK(tables().tube(Tubing::polyethylene, NominalSize::inches(2))->basis.how == How::memory);
  CHECK(tables().tube(Tubing::copper_k, NominalSize::inches(1))->basis.how == How::published);
}
