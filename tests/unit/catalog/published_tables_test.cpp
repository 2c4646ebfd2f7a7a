// The program's own tables against the published ones, which are kept apart from them.
#include <algorithm>
#include <string>

#include "catalog/class_meaning.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/measure.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using test::ReferenceRow;
using test::ReferenceTable;

namespace {

NominalSize size_of(const ReferenceRow& row) {
  const ParsedMeasure read = parse_measure(row.text("size"), Kind::ratio);
  REQUIRE(read);
  return NominalSize::inches(read.value.base());
}

const Pipe* find(std::string_view series, Material material, NominalSize size, std::string_view class_name) {
  for (const Pipe& pipe : Catalog::builtin().pipes(material, size)) {
    if (pipe.series->id == series && pipe.class_name == class_name) return &pipe;
  }
  return nullptr;
}

// Rows of the table that the catalog has; each is compared in whatever columns it gives.
int compare(const char* file, std::string_view series, Material material, const char* class_column = "class") {
  const ReferenceTable table(file);
  const double tolerance = table.tolerance() + 1e-9;
  const auto gives = [&](const ReferenceRow& row, const char* column) {
    try {
      return row.has(column);
    } catch (const std::exception&) {
      return false;
    }
  };
  int compared = 0;
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    const Pipe* const pipe = find(series, material, size_of(row), row.text(class_column));
    if (pipe == nullptr) continue;
    ++compared;
    if (gives(row, "od_in")) CHECK(*pipe->od / units::inch == Catch::Approx(row.number("od_in")).margin(tolerance));
    if (gives(row, "wall_in"))
      CHECK(*pipe->wall / units::inch == Catch::Approx(row.number("wall_in")).margin(tolerance));
    if (gives(row, "id_in")) {
      const double bore = (*pipe->od - 2.0 * *pipe->wall) / units::inch;
      CHECK(bore == Catch::Approx(row.number("id_in")).margin(tolerance));
    }
    if (gives(row, "dr")) CHECK(*pipe->dr == Catch::Approx(row.number("dr")));
    if (gives(row, "rating_psi"))
      CHECK(*pipe->rating / units::psi == Catch::Approx(row.number("rating_psi")).margin(0.5));
  }
  return compared;
}

// psi that a stop of 1 ft/s raises, by dimension ratio.
double surge_per_foot_a_second(double dr) {
  const ReferenceTable surges("pvc_surge.csv");
  for (const ReferenceRow& row : surges.rows()) {
    if (row.number("dr") == dr) return row.number("surge_psi");
  }
  FAIL("no surge is published for DR " << dr);
  return 0.0;
}

int rows_of(const char* file) { return static_cast<int>(ReferenceTable(file).rows().size()); }

}  // namespace

TEST_CASE("ductile iron has the published diameters and walls") {
  const char* const by_pressure = "catalog_ductile_iron_pressure_class.csv";
  CHECK(compare(by_pressure, "di-pressure-class", Material::ductile_iron) == rows_of(by_pressure));
  const char* const by_thickness = "catalog_ductile_iron_thickness_class.csv";
  CHECK(compare(by_thickness, "di-thickness-class", Material::ductile_iron) == rows_of(by_thickness));
}

TEST_CASE("pit-cast iron has the published diameters and bores") {
  const char* const file = "catalog_cast_iron_1908.csv";
  CHECK(compare(file, "ci-pit-cast", Material::cast_iron) == rows_of(file));
}

TEST_CASE("PVC has the published diameters, walls and ratings") {
  CHECK(compare("catalog_pvc_c900.csv", "pvc-c900", Material::pvc) == rows_of("catalog_pvc_c900.csv"));
  CHECK(compare("catalog_pvc_ips.csv", "pvc-ips", Material::pvc) == rows_of("catalog_pvc_ips.csv"));

  const ReferenceTable ratings("catalog_pvc_c900_pressure.csv");
  for (const ReferenceRow& row : ratings.rows()) {
    INFO(row.where());
    int seen = 0;
    for (const Pipe& pipe : Catalog::builtin().pipes()) {
      if (pipe.series->id != "pvc-c900" || pipe.class_name != row.text("class")) continue;
      ++seen;
      CHECK(*pipe.rating / units::psi == Catch::Approx(row.number("rating_psi")).margin(ratings.tolerance()));
      // The same pipe before 2007, in the sizes that had a class then.
      if (row.has("old_class") && pipe.size <= NominalSize::inches(12)) {
        CHECK(means_pipe(Catalog::builtin().read_class("Class " + row.text("old_class"), Material::pvc), pipe));
        REQUIRE(pipe.earlier);
        CHECK(pipe.earlier->class_name == "Class " + row.text("old_class"));
        CHECK(pipe.earlier->rating / units::psi == Catch::Approx(row.number("old_class")));
        // The old class covers the surge of 2 ft/s stopped at once.
        CHECK(pipe.earlier->surge / units::psi <= 2.0 * surge_per_foot_a_second(*pipe.dr));
        CHECK(pipe.earlier->surge / units::psi > 2.0 * surge_per_foot_a_second(*pipe.dr) - 1.0);
      } else {
        CHECK_FALSE(pipe.earlier);
      }
    }
    CHECK(seen > 0);
  }
}

TEST_CASE("copper has the published diameters and walls in the sizes listed as mains") {
  CHECK(compare("catalog_copper_tube.csv", "copper-b88", Material::copper, "type") >= 8);
}

TEST_CASE("PVC is derated as published") {
  const ReferenceTable table("catalog_pvc_temperature.csv");
  const auto& curve = Catalog::builtin().facts(Material::pvc).temperature_factors;
  REQUIRE(curve.size() == table.rows().size());
  for (std::size_t i = 0; i < curve.size(); ++i) {
    CHECK(curve[i].x == Catch::Approx(table.rows()[i].number("temperature_degF")));
    CHECK(curve[i].y == Catch::Approx(table.rows()[i].number("factor")).margin(table.tolerance()));
  }
}
