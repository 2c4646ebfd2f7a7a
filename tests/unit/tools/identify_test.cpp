#include "mainbore/identify.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <numbers>
#include <set>

#include "mainbore/catalog_error.hpp"
#include "support/approx.hpp"
#include "support/plan_under.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

constexpr double pi = std::numbers::pi;

const FieldTests& field_tests() {
  static const FieldTests tests = load_field_tests(Catalog::builtin());
  return tests;
}

Identification identified(const PipeReadings& readings) {
  static const Planner planner = planner_under(default_rules());
  return identify(readings, planner, field_tests());
}

// As a tape with sixteenths is read round the pipe.
PipeReadings by_tape(Length od) {
  PipeReadings readings;
  readings.circumference = std::round(pi * od.base() * 16.0) / 16.0 * units::inch;
  return readings;
}

bool lists(const Identification& found, const Pipe& pipe) {
  for (const PossiblePipe& fit : found.fits) {
    for (const PossibleClass& one : fit.classes) {
      if (one.pipe == &pipe) return true;
    }
  }
  return false;
}

std::set<std::pair<Material, NominalSize>> kinds(const Identification& found) {
  std::set<std::pair<Material, NominalSize>> result;
  for (const PossiblePipe& fit : found.fits) result.emplace(fit.series->material, fit.size);
  return result;
}

}  // namespace

TEST_CASE("a tape read to a sixteenth always finds the true pipe") {
  // Thousands of classes have a few hundred readings between them.
  std::map<double, Identification> by_reading;
  const auto found_by = [&](const PipeReadings& readings) -> const Identification& {
    const double inches = readings.circumference->base();
    const auto known = by_reading.find(inches);
    return known != by_reading.end() ? known->second : by_reading.emplace(inches, identified(readings)).first->second;
  };
  int read = 0;
  int unique = 0;
  int unique_with_magnet = 0;
  std::set<std::tuple<Material, NominalSize, Length>> seen;
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    if (!pipe.od) continue;
    INFO(pipe.series->id << " " << pipe.size.label() << " " << pipe.class_name);
    // Also at the ends of its own tolerance.
    for (const Length od : {*pipe.od, *pipe.od - pipe.od_minus, *pipe.od + pipe.od_plus}) {
      REQUIRE(lists(found_by(by_tape(od)), pipe));
    }
    if (!seen.emplace(pipe.series->material, pipe.size, *pipe.od).second) continue;
    PipeReadings readings = by_tape(*pipe.od);
    ++read;
    unique += kinds(found_by(readings)).size() == 1 ? 1 : 0;
    readings.magnet = field_tests().of(pipe.series->material).magnet;
    const Identification with_magnet = identified(readings);
    REQUIRE(lists(with_magnet, pipe));
    unique_with_magnet += kinds(with_magnet).size() == 1 ? 1 : 0;
  }
  // How often a tape alone, and a tape with a magnet, settles material and size.
  CHECK(read == 176);
  CHECK(unique == 62);
  CHECK(unique_with_magnet == 80);
}

TEST_CASE("everything true of a pipe keeps it first, with nothing against it") {
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    if (!pipe.od || !pipe.wall) continue;
    INFO(pipe.series->id << " " << pipe.size.label() << " " << pipe.class_name);
    PipeReadings readings = by_tape(*pipe.od);
    readings.od = *pipe.od;
    readings.wall = *pipe.wall;
    readings.installed = pipe.series->laid_from.value_or(pipe.series->laid_to.value_or(1960));
    readings.magnet = field_tests().of(pipe.series->material).magnet;
    readings.sound = field_tests().of(pipe.series->material).sound;
    const auto& joints = field_tests().of(pipe.series->material).joints;
    if (!joints.empty()) readings.joint = joints.front();
    const Identification found = identified(readings);
    REQUIRE_FALSE(found.fits.empty());
    CHECK(found.fits.front().misgivings == 0);
    bool clean = false;
    for (const PossiblePipe& fit : found.fits) {
      for (const PossibleClass& one : fit.classes) clean |= one.pipe == &pipe && one.against.empty();
    }
    CHECK(clean);
  }
}

TEST_CASE("6.90 in outside is a 6-inch pipe of many kinds, and the magnet halves them") {
  PipeReadings readings = by_tape(6.90 * units::inch);
  CHECK(kinds(identified(readings)) ==
        std::set<std::pair<Material, NominalSize>>{{Material::ductile_iron, NominalSize::inches(6)},
                                                   {Material::cast_iron, NominalSize::inches(6)},
                                                   {Material::pvc, NominalSize::inches(6)},
                                                   {Material::pvco, NominalSize::inches(6)},
                                                   {Material::polyethylene, NominalSize::inches(6)}});
  REQUIRE_FALSE(identified(readings).next.empty());
  CHECK(identified(readings).next.front().what == NextReading::magnet);
  readings.magnet = true;
  for (const PossiblePipe& fit : identified(readings).fits) CHECK(is_metallic(fit.series->material));
  readings.magnet = false;
  const Identification plastic = identified(readings);
  for (const PossiblePipe& fit : plastic.fits) CHECK(is_plastic(fit.series->material));
  for (const NextStep& step : plastic.next) CHECK(step.what != NextReading::magnet);
}

TEST_CASE("soft evidence moves a pipe down and never out") {
  PipeReadings readings = by_tape(6.90 * units::inch);
  const auto all = kinds(identified(readings));
  readings.installed = 1910;
  readings.sound = Sound::dull;
  readings.joint = JointStyle::fused;
  const Identification found = identified(readings);
  CHECK(kinds(found) == all);
  for (std::size_t i = 1; i < found.fits.size(); ++i) CHECK(found.fits[i - 1].misgivings <= found.fits[i].misgivings);
  // Rusted to half, or half as thick again as made: still listed, with what speaks against it.
  readings = by_tape(6.90 * units::inch);
  readings.wall = 0.12 * units::inch;
  CHECK(kinds(identified(readings)).count({Material::ductile_iron, NominalSize::inches(6)}) == 1);
  readings.wall = 0.70 * units::inch;
  const Identification thick = identified(readings);
  CHECK(kinds(thick) == all);
  for (const PossiblePipe& fit : thick.fits) {
    if (fit.series->material == Material::ductile_iron) CHECK(fit.misgivings > 0);
  }
}

TEST_CASE("what nothing fits is said, with the neighbors on both sides") {
  PipeReadings readings;
  readings.circumference = 25.0 * units::inch;  // 7.96 in
  const Identification found = identified(readings);
  CHECK(found.fits.empty());
  CHECK(found.next.empty());
  REQUIRE(found.nearest.size() == 2);
  CHECK(found.nearest[0].gap > Length());
  CHECK(found.nearest[1].gap < Length());
  CHECK(found.nearest[0].pipe->size == NominalSize::inches(6));
  CHECK(found.nearest[1].pipe->size == NominalSize::inches(8));
  // Pipes without tabulated diameters stay possible, and are named.
  CHECK(found.not_judged.size() == 2);
  readings.magnet = false;
  CHECK(identified(readings).not_judged.size() == 2);
  readings.magnet = true;  // asbestos cement is out, concrete on a steel cylinder is not
  REQUIRE(identified(readings).not_judged.size() == 1);
  CHECK(identified(readings).not_judged.front()->material == Material::concrete_cylinder);
}

TEST_CASE("tape and caliper that disagree fit nothing") {
  PipeReadings readings = by_tape(6.90 * units::inch);
  readings.od = 6.96 * units::inch;
  CHECK_FALSE(identified(readings).readings_disagree);
  readings.od = 7.10 * units::inch;
  const Identification found = identified(readings);
  CHECK(found.readings_disagree);
  CHECK(found.fits.empty());
  CHECK(found.nearest.empty());
  bool said = false;
  for (const auto warning : identify_warnings(found)) said |= warning.find("disagree") != std::string_view::npos;
  CHECK(said);
}

TEST_CASE("no answer comes without its warnings, and none allows a tap") {
  PipeReadings readings = by_tape(6.90 * units::inch);
  for (const auto& carries : {std::optional<Carries>(), std::optional(Carries::unknown), std::optional(Carries::gas),
                              std::optional(Carries::water)}) {
    readings.carries = carries;
    const Identification found = identified(readings);
    const auto warnings = identify_warnings(found);
    const bool forbidden = warnings.front().find("Do not tap") != std::string_view::npos;
    CHECK(forbidden == (carries != Carries::water));
    CHECK(found.water_proved == (carries == Carries::water));
    bool color = false;
    for (const auto warning : warnings) color |= warning.find("color prove nothing") != std::string_view::npos;
    CHECK(color);
  }
}

TEST_CASE("what a fit would allow is the pocket table's answer, with the wall read") {
  PipeReadings readings = by_tape(6.90 * units::inch);
  readings.wall = 0.50 * units::inch;
  PocketOptions options;
  options.wall = readings.wall;
  for (const PossiblePipe& fit : identified(readings).fits) {
    for (const PossibleClass& one : fit.classes) {
      const PocketCell cell = pocket_cell(*one.pipe, planner_under(default_rules()), options);
      CHECK(one.allows.direct.largest() == cell.direct.largest());
      CHECK(one.allows.saddle.largest() == cell.saddle.largest());
      if (fit.series->id == "ci-pit-cast") CHECK(one.allows.direct.go == NominalSize::inches(1));
    }
  }
}

TEST_CASE("identify refuses readings that are none") {
  CHECK_THROWS_AS(identified({}), std::invalid_argument);
  PipeReadings readings;
  readings.wall = 0.3 * units::inch;
  CHECK_THROWS_AS(identified(readings), std::invalid_argument);
  readings.od = Length();
  CHECK_THROWS_AS(identified(readings), std::invalid_argument);
}

TEST_CASE("faulty field tests are refused") {
  namespace fs = std::filesystem;
  const fs::path data = fs::path(MAINBORE_SOURCE_DIR) / "data";
  const auto with = [&](const std::string& from, const std::string& to) {
    DataFiles files;
    for (const auto& entry : fs::recursive_directory_iterator(data)) {
      if (entry.path().extension() != ".json") continue;
      std::ifstream in(entry.path(), std::ios::binary);
      files[fs::relative(entry.path(), data).generic_string()] = std::string(std::istreambuf_iterator<char>(in), {});
    }
    std::string& text = files["field_tests.json"];
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
    return files;
  };
  const auto load = [](const DataFiles& files) {
    const Catalog catalog(files);
    return load_field_tests(catalog).of(Material::pvc).magnet;
  };
  CHECK(load(with("note", "note")) == false);
  CHECK_THROWS_AS(load(with("\"cast iron\": \"sticks\"", "\"cast irn\": \"sticks\"")), CatalogError);
  CHECK_THROWS_AS(load(with("\"cast iron\": \"sticks\",", "")), CatalogError);
  CHECK_THROWS_AS(load(with("\"sticks\"", "\"clings\"")), CatalogError);
  CHECK_THROWS_AS(load(with("\"common-practice\"", "\"hearsay\"")), CatalogError);
  CHECK_THROWS_AS(load(with("\"fused\"", "\"glued\"")), CatalogError);
}
