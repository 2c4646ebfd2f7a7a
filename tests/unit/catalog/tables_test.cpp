// What must hold of every table, and what the catalog answers.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "catalog/class_meaning.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/catalog_error.hpp"
#include "support/catch.hpp"

using namespace mainbore;

namespace {

const Catalog& catalog() { return Catalog::builtin(); }
NominalSize inches(double nominal) { return NominalSize::inches(nominal); }
std::vector<TubeSize> every_tube() {
  std::vector<TubeSize> all;
  for (const auto& sizes : catalog().service_tables().tubes) all.insert(all.end(), sizes.begin(), sizes.end());
  return all;
}

}  // namespace

TEST_CASE("a changed number in data/ is a deliberate one") {
  // When a table was meant to change, so does this: the edition and hash that every plan prints.
  CHECK(catalog().edition() == "2026.11");
  CHECK(catalog().hash() == "58496fae17da3ce2");
}

TEST_CASE("every number has a source and says how it was had") {
  const auto has_source = [](const Basis& basis) { return basis.source != nullptr && !basis.utility; };
  std::set<const PipeSeries*> series;
  for (const Pipe& pipe : catalog().pipes()) series.insert(pipe.series);
  CHECK(series.size() >= 14);
  for (const PipeSeries* one : series) {
    INFO(one->id);
    CHECK(has_source(one->laid_basis));
    for (const Basis& basis : one->provenance) CHECK(has_source(basis));
    if (one->rerated) CHECK(has_source(one->earlier_basis));
  }
  for (const Pipe& pipe : catalog().pipes()) {
    if (pipe.plausible) CHECK(has_source(pipe.series->plausible_basis));
  }
  for (const TubeSize& tube : every_tube()) {
    if (tube.rating) CHECK(has_source(tube.rating_basis));
  }
  for (std::size_t i = 0; i < material_count; ++i) {
    const MaterialFacts& facts = catalog().facts(static_cast<Material>(i));
    INFO(material_names[i]);
    if (facts.tensile_strength || facts.shear_strength || facts.modulus) CHECK(has_source(facts.basis));
    if (!facts.temperature_factors.empty()) CHECK(has_source(facts.temperature_basis));
  }
  for (const MachineProfile& machine : catalog().machines()) CHECK(has_source(machine.basis));
  for (const ThreadStandard standard : {ThreadStandard::awwa_taper, ThreadStandard::npt, ThreadStandard::iso7}) {
    CHECK(has_source(catalog().thread(standard, inches(1))->basis));
  }
}

TEST_CASE("recalled numbers do not pass as published") {
  const auto pipes = catalog().pipes(Material::cast_iron, inches(6));
  bool spun = false;
  for (const Pipe& pipe : pipes) {
    if (pipe.series->id != "ci-spun") continue;
    spun = true;
    CHECK(pipe.how_of(PipeColumn::wall) == How::memory);
  }
  CHECK(spun);
  CHECK(catalog().thread(ThreadStandard::awwa_taper, inches(0.75))->basis.how == How::memory);
  CHECK(catalog().thread(ThreadStandard::npt, inches(0.75))->basis.how == How::published);
  for (const TubeSize& tube : every_tube()) {
    const bool tubing =
        tube.tubing == Tubing::polyethylene || tube.tubing == Tubing::pex || tube.tubing == Tubing::cpvc;
    if (tube.rating) CHECK((tube.rating_basis.how == How::memory) == tubing);
  }
}

TEST_CASE("every pipe could be one") {
  std::set<std::tuple<std::string, NominalSize, std::string>> seen;
  for (const Pipe& pipe : catalog().pipes()) {
    INFO(pipe.series->id << ' ' << pipe.size.label() << ' ' << pipe.class_name);
    CHECK(seen.emplace(pipe.series->id, pipe.size, pipe.class_name).second);
    if (pipe.od && pipe.wall) CHECK(2.0 * *pipe.wall < *pipe.od);
    if (pipe.wall) CHECK(pipe.wall_minus < *pipe.wall);
    if (!pipe.class_name.empty()) CHECK_FALSE(pipe.names.empty());
  }
  CHECK(seen.size() > 900);
}

TEST_CASE("the name of a class means its pipe, and no other of its series and size") {
  for (const Pipe& pipe : catalog().pipes()) {
    const ClassWords words = catalog().read_class(pipe.class_name, pipe.series->material);
    CHECK(means_pipe(words, pipe));
    if (words.words.empty()) continue;
    for (const Pipe& other : catalog().pipes(pipe.series->material, pipe.size)) {
      if (other.series != pipe.series || &other == &pipe) continue;
      INFO(pipe.series->id << ' ' << pipe.size.label() << ": " << pipe.class_name << " and " << other.class_name);
      CHECK_FALSE(means_pipe(words, other));
    }
  }
}

TEST_CASE("a higher class of one series and size is not thinner") {
  for (const Pipe& pipe : catalog().pipes()) {
    for (const Pipe& other : catalog().pipes(pipe.series->material, pipe.size)) {
      if (other.series != pipe.series || !pipe.rating || !other.rating || !pipe.wall || !other.wall) continue;
      if (pipe.series->material == Material::polyethylene) continue;  // two resins of one wall
      INFO(pipe.series->id << ' ' << pipe.size.label() << ' ' << pipe.class_name << ' ' << other.class_name);
      if (*other.rating > *pipe.rating) CHECK(*other.wall >= *pipe.wall);
    }
  }
}

TEST_CASE("pipes are found by material and size") {
  const auto six = catalog().pipes(Material::ductile_iron, inches(6));
  REQUIRE_FALSE(six.empty());
  for (const Pipe& pipe : six) {
    CHECK(pipe.series->material == Material::ductile_iron);
    CHECK(pipe.size == inches(6));
    CHECK(*pipe.od / units::inch == Catch::Approx(6.90));
  }
  std::size_t total = 0;
  for (std::size_t i = 0; i < material_count; ++i) {
    const auto material = static_cast<Material>(i);
    const auto sizes = catalog().sizes(material);
    CHECK_FALSE(sizes.empty());
    CHECK(std::is_sorted(sizes.begin(), sizes.end()));
    for (const NominalSize size : sizes) total += catalog().pipes(material, size).size();
  }
  CHECK(total == catalog().pipes().size());
  CHECK(catalog().pipes(Material::ductile_iron, inches(7)).empty());
}

TEST_CASE("a spelling on a work order means one material or says why not") {
  const auto means = [](std::string_view text) { return catalog().read_material(text).material; };
  for (const char* const text : {"ductile iron", "D.I.P.", "DIP", "Ductile-Iron", "di", "DUCTILE_IRON_PIPE"}) {
    INFO(text);
    CHECK(means(text) == Material::ductile_iron);
  }
  CHECK(means("A.C.") == Material::asbestos_cement);
  CHECK(means("PVC") == Material::pvc);
  CHECK(means("C909") == Material::pvco);
  for (std::size_t i = 0; i < material_count; ++i) CHECK(means(material_names[i]) == static_cast<Material>(i));

  CHECK_FALSE(means("iron"));
  CHECK_FALSE(catalog().read_material("iron").why_not.empty());
  CHECK(catalog().read_material("VCP").why_not == "not a water main: vitrified clay, a sewer");
  CHECK_FALSE(means("ductile irn"));  // near, but never taken
  CHECK(catalog().read_material("ductile irn").why_not.empty());
  CHECK_FALSE(means(""));
}

TEST_CASE("threads carry what can be known of them") {
  const TapThread* const npt = catalog().thread(ThreadStandard::npt, inches(0.75));
  REQUIRE(npt != nullptr);
  CHECK(npt->form.major / units::inch == Catch::Approx(1.050));
  CHECK(npt->geometry->pitch_gauge / units::inch == Catch::Approx(0.98887).margin(0.00001));
  CHECK(*npt->drill / units::inch == Catch::Approx(0.90625));
  CHECK(*npt->projection / units::inch == Catch::Approx(0.565));

  const TapThread* const iso = catalog().thread(ThreadStandard::iso7, inches(1));
  REQUIRE(iso != nullptr);
  CHECK(iso->form.major / units::mm == Catch::Approx(33.249));
  CHECK(iso->geometry->effective_length / units::mm == Catch::Approx(16.8));
  CHECK_FALSE(iso->projection);

  const TapThread* const corporation = catalog().thread(ThreadStandard::awwa_taper, inches(1));
  REQUIRE(corporation != nullptr);
  CHECK_FALSE(corporation->geometry);
  CHECK(corporation->form.major > npt->form.major);
  CHECK(catalog().thread(ThreadStandard::awwa_taper, inches(3)) == nullptr);
}

TEST_CASE("the machine nobody described is a cautious one") {
  const MachineProfile& machine = catalog().unspecified_machine();
  CHECK(machine.id == "unspecified");
  CHECK_FALSE(machine.maker_figures);
  CHECK(*machine.hand_limit / units::psi == Catch::Approx(90));
  CHECK_FALSE(machine.powered_limit);
  CHECK(machine.largest_tap == inches(1));
  CHECK_FALSE(machine.chain_length);
  CHECK(catalog().machine("unspecified") == &machine);
  CHECK(catalog().machine("Unspecified") == nullptr);
}

TEST_CASE("metric trade sizes name inch sizes") {
  CHECK(catalog().metric_size(200) == inches(8));
  CHECK(catalog().metric_size(20) == inches(0.75));
  CHECK(catalog().metric_size(75) == catalog().metric_size(80));
  CHECK_FALSE(catalog().metric_size(203.2));
}

TEST_CASE("a file that is not there is said to be") {
  CHECK(catalog().file("edition.json").find("edition") != std::string::npos);
  CHECK_THROWS_AS(catalog().file("nowhere.json"), CatalogError);
}

TEST_CASE("every source stands behind a number") {
  std::string others;
  const std::filesystem::path data = std::filesystem::path(MAINBORE_SOURCE_DIR) / "data";
  for (const auto& entry : std::filesystem::recursive_directory_iterator(data)) {
    if (entry.path().filename() == "sources.json") continue;
    if (entry.path().extension() != ".json") continue;
    std::ifstream in(entry.path(), std::ios::binary);
    others.append(std::istreambuf_iterator<char>(in), {});
  }
  for (const std::string_view list : {"sources.json", "rules/sources.json"}) {
    std::ifstream in(data / list, std::ios::binary);
    const auto sources = nlohmann::json::parse(in);
    for (const auto& source : sources.items()) {
      INFO(list << ' ' << source.key());
      CHECK(others.find('"' + source.key() + '"') != std::string::npos);
    }
  }
}
