#include <string>
#include <utility>
#include <vector>

#include "mainbore/catalog.hpp"
#include "support/catch.hpp"

using namespace mainbore;

namespace {

std::string standard_names(const ClassWords& read) {
  std::string text;
  for (const std::uint8_t standard : read.standards) text += Catalog::builtin().standards()[standard] + ' ';
  return text;
}

constexpr ClassWord figure(ClassMark mark, double value) { return {mark, static_cast<int>(value * 1000 + 0.5)}; }

}  // namespace

TEST_CASE("a class is read word by word, however it is spelt") {
  for (const char* const text : {"DR 18", "dr18", "DR-18", "C900 DR 18", "C900DR18", "C-900 DR18", "AWWA C900-DR18",
                                 "PVC DR18", "SDR 18", "sdr_18", "C900-16 DR 18", "C900-2007, DR 18", "C900-07/DR18"}) {
    INFO(text);
    const ClassWords read = Catalog::builtin().read_class(text, Material::pvc);
    CHECK(read.stray.view() == "");
    REQUIRE(read.words.size() == 1);
    CHECK(read.words[0] == figure(ClassMark::dimension_ratio, 18));
  }
  for (const char* const text : {"PC 350", "pc350", "Pressure Class 350", "C151 PC 350", "DIP PC350", "DIPC350",
                                 "ANSI/AWWA C151/A21.51 PC 350", "ductile iron pressure class 350", "PC-350 MJ"}) {
    INFO(text);
    const ClassWords read = Catalog::builtin().read_class(text, Material::ductile_iron);
    CHECK(read.stray.view() == "");
    REQUIRE(read.words.size() == 1);
    CHECK(read.words[0] == figure(ClassMark::pressure_class, 350));
  }
  const auto words = [](std::string_view text, Material material) {
    const ClassWords read = Catalog::builtin().read_class(text, material);
    INFO(text);
    CHECK(read.stray.empty());
    return std::vector(read.words.begin(), read.words.end());
  };
  using Words = std::vector<ClassWord>;
  CHECK(words("Special Thickness Class 52", Material::ductile_iron) == Words{figure(ClassMark::thickness_class, 52)});
  CHECK(words("cl.52", Material::ductile_iron) == Words{figure(ClassMark::class_number, 52)});
  CHECK(words("Class B", Material::cast_iron) == Words{{ClassMark::letter, 2}});
  CHECK(words("DR 18 (235 psi)", Material::pvc) ==
        Words{figure(ClassMark::dimension_ratio, 18), figure(ClassMark::number, 235)});
  CHECK(words("DIPS DR 11 PE4710", Material::polyethylene) ==
        Words{figure(ClassMark::dimension_ratio, 11), figure(ClassMark::resin, 4710)});
  CHECK(words("HDPE 4710 SDR 32.5", Material::polyethylene) ==
        Words{figure(ClassMark::resin, 4710), figure(ClassMark::dimension_ratio, 32.5)});
  CHECK(words(".250 wall", Material::steel) == Words{figure(ClassMark::number, 0.25)});
  CHECK(words("standard weight", Material::steel) == Words{{ClassMark::standard_weight, 0}});
  CHECK(words("Type K", Material::copper) == Words{{ClassMark::letter, 11}});
  CHECK(words("150 psi", Material::asbestos_cement) == Words{figure(ClassMark::number, 150)});
}

TEST_CASE("standards and families of diameters are read apart from the class") {
  CHECK(standard_names(Catalog::builtin().read_class("ANSI/AWWA C151/A21.51-17", Material::ductile_iron)) ==
        "c151 a2151 ");
  CHECK(standard_names(Catalog::builtin().read_class("ASME B36.10M", Material::steel)) == "b3610m ");
  CHECK(standard_names(Catalog::builtin().read_class("1908 Class A", Material::cast_iron)) == "1908 ");
  CHECK(standard_names(Catalog::builtin().read_class("C900/C905 DR 18", Material::pvc)) == "c900 c905 ");
  CHECK(Catalog::builtin().read_class("IPS SDR 21", Material::pvc).family == OdFamily::iron_pipe_size);
  CHECK(Catalog::builtin().read_class("iron pipe size", Material::pvc).family == OdFamily::iron_pipe_size);
  CHECK(Catalog::builtin().read_class("DIOD DR 11", Material::polyethylene).family == OdFamily::cast_iron);
  CHECK(Catalog::builtin().read_class("AWWA", Material::pvc).names_standard());
  CHECK_FALSE(Catalog::builtin().read_class("DR 18", Material::pvc).names_standard());
}

TEST_CASE("a word that is not understood is told, and of which pipe it is") {
  struct Case {
    const char* text;
    Material material;
    const char* stray;
    std::optional<Material> of;
  };
  const std::vector<Case> cases = {
      {"C909 PC 235", Material::pvc, "C909", Material::pvco},
      {"C906 DR 18", Material::pvc, "C906", Material::polyethylene},
      {"C900 DR 18", Material::ductile_iron, "C900", Material::pvc},
      {"PC 350 ductile iron", Material::pvc, "ductile iron", Material::ductile_iron},
      {"C-150", Material::asbestos_cement, "C-150", Material::ductile_iron},
      {"DR 18 blue", Material::pvc, "blue", std::nullopt},
      {"PN 16", Material::pvc, "PN", std::nullopt},
      {"Class", Material::pvc, "Class", std::nullopt},
      {"pressure 150", Material::pvc, "pressure", std::nullopt},
      {"DR 18 und mehr", Material::pvc, "und", std::nullopt},
      {"schedule eighty", Material::steel, "schedule", std::nullopt},
      {"IPS CIOD", Material::pvc, "CIOD", std::nullopt},
      {"<script>alert(1)</script>", Material::pvc, "script", std::nullopt},
      {"PC 350 supercalifragilistic", Material::ductile_iron, "supercalifrag..", std::nullopt},
  };
  for (const Case& one : cases) {
    INFO(one.text);
    const ClassWords read = Catalog::builtin().read_class(one.text, one.material);
    CHECK(read.stray.view() == one.stray);
    CHECK(read.stray_of == one.of);
  }
  CHECK_FALSE(Catalog::builtin().read_class(std::string(70, 'a'), Material::pvc).stray.empty());
  CHECK_FALSE(Catalog::builtin().read_class(std::string(60, '1') + " 2", Material::pvc).stray.empty());
  CHECK_FALSE(Catalog::builtin().read_class("1 2 3 4 5 6 7 8", Material::pvc).stray.empty());
}

TEST_CASE("nothing is read from nothing") {
  for (const char* const text : {"", " -/ ", "..."}) {
    INFO(text);
    const ClassWords read = Catalog::builtin().read_class(text, Material::pvc);
    CHECK(read.empty());
    CHECK(read.stray.empty());
  }
}

TEST_CASE("every spelling of a class in the tables has the pipe's own words") {
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    if (pipe.class_name.empty()) continue;
    INFO(pipe.series->id << ' ' << pipe.size.label() << ' ' << pipe.class_name);
    CHECK_FALSE(pipe.names.empty());
    CHECK(Catalog::builtin().read_class(pipe.class_name, pipe.series->material).stray.empty());
    CHECK(Catalog::builtin().read_class(pipe.series->standard, pipe.series->material).stray.empty());
  }
}
