// The published tables: pipes, threads, materials, machines, and where every number came from.
//
// A catalog is loaded once and never changes. Everything a plan points at (pipe rows, machine profiles, sources)
// lives in it, so it must outlive the plans made with it. Row order is the order of the files under data/.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/class_words.hpp"
#include "mainbore/material.hpp"
#include "mainbore/mechanics/taper_thread.hpp"
#include "mainbore/nominal_size.hpp"
#include "mainbore/service_tables.hpp"
#include "mainbore/source.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

// A column of a pipe table that the planner relies on.
enum class PipeColumn : std::uint8_t { od, od_minus, od_plus, wall, wall_minus, rating };
inline constexpr std::size_t pipe_column_count = 6;

// A standard that a series is made to: a place in Catalog::standards(), and the least size that it covers.
struct StandardUse {
  std::uint8_t standard = 0;
  NominalSize from;
};

struct PipeSeries {
  std::string id;  // "di-pressure-class"
  Material material = Material::ductile_iron;
  std::string standard;              // "AWWA C151/A21.51"
  std::vector<StandardUse> made_to;  // the numbers in it as a work order writes them, and those of older standards
  std::string title;
  std::string basis;  // the outside-diameter family, in words
  OdFamily family = OdFamily::unnamed;
  std::optional<int> laid_from;  // the years in which such pipe was laid, where they bound anything
  std::optional<int> laid_to;
  Basis laid_basis;
  std::optional<int> rerated;  // the year of the edition that rated the same pipe anew, and higher
  Basis earlier_basis;         // of what it was rated before
  Basis plausible_basis;       // of the readings that its pipes can give
  Basis usual_basis;           // of the names that its pipes usually go by, though others may
  std::array<Basis, pipe_column_count> provenance;

  [[nodiscard]] const Basis& basis_of(PipeColumn column) const { return provenance[static_cast<std::size_t>(column)]; }
};

// What the same pipe was called and rated by the editions of its standard before the year it was rated anew.
struct EarlierClass {
  std::string class_name;        // "Class 150"
  std::vector<ClassWord> names;  // every word of its name
  Pressure rating;
  Pressure surge;  // that the class covers on top of its rating
};

// What a gauge or tape may read where no dimension is tabulated; beyond it the pipe is another one.
struct PlausibleReadings {
  Length od_from;
  Length od_to;
  Length wall_from;
  Length wall_to;
};

// One pipe of one class. Unknown dimensions are absent, never zero.
struct Pipe {
  const PipeSeries* series = nullptr;
  NominalSize size;
  std::string class_name;              // "PC 350", "DR 18"; empty where the series knows no classes
  std::vector<ClassWord> names;        // every word of every spelling of it
  std::vector<ClassWord> usual_names;  // that mean this pipe as a rule, but not by its standard
  std::optional<Length> od;            // nominal outside diameter
  Length od_minus;                     // how far below nominal the outside diameter may lie
  Length od_plus;                      // and above
  std::optional<Length> wall;          // the tabulated wall
  Length wall_minus;                   // how far below the tabulated wall a sound pipe may be
  std::optional<Pressure> rating;      // rated working pressure, at 73 degF for plastics
  std::optional<double> dr;            // dimension ratio
  std::optional<EarlierClass> earlier;
  bool since_rerating = false;  // made only from the year on in which its series was rated anew
  std::optional<PlausibleReadings> plausible;
  std::string note;
  std::optional<How> how;  // overrides the series where this row alone was had differently

  [[nodiscard]] How how_of(PipeColumn column) const { return how ? *how : series->basis_of(column).how; }
};

// A point of a published curve.
struct CurvePoint {
  double x = 0.0;
  double y = 0.0;
};

struct MaterialFacts {
  std::optional<Pressure> tensile_strength;
  std::optional<Pressure> shear_strength;
  std::optional<Pressure> modulus;
  Basis basis;
  std::vector<CurvePoint> temperature_factors;  // degrees Fahrenheit -> factor on the rating; empty: not derated
  Basis temperature_basis;
};

enum class ThreadStandard : std::uint8_t { awwa_taper, npt, iso7 };
inline constexpr std::array<std::string_view, 3> thread_standard_names = {"AWWA taper", "NPT", "ISO 7-1"};
[[nodiscard]] constexpr std::string_view name_of(ThreadStandard standard) {
  return thread_standard_names[static_cast<std::size_t>(standard)];
}

struct TapThread {
  ThreadStandard standard = ThreadStandard::npt;
  NominalSize size;
  mechanics::ThreadForm form;                      // enough to count threads in a wall
  std::optional<mechanics::TaperThread> geometry;  // enough to plan make-up; absent for the AWWA taper
  std::optional<Length> drill;                     // hole drilled before the tap
  std::optional<Length> projection;                // tap point ahead of the gauge plane when the tap stands at gauge
  Basis basis;
};

enum class Feed : std::uint8_t { hand, powered };
[[nodiscard]] constexpr std::string_view name_of(Feed feed) { return feed == Feed::hand ? "hand" : "powered"; }

// What a tapping machine can do, by its maker's figures or, for the unspecified machine, by caution.
struct MachineProfile {
  std::string id;
  std::string title;
  bool maker_figures = false;   // false: nobody has given the maker's limits yet
  bool without_limits = false;  // for a table of mains: whatever machine it takes; no figure of it is asked for
  NominalSize smallest_tap;
  NominalSize largest_tap;
  std::optional<Pressure> hand_limit;     // line pressure up to which the screw may be fed by hand
  std::optional<Pressure> powered_limit;  // and with a powered feed; absent: it has none
  Pressure body_rating;                   // what the body and its gaskets hold
  Length bar_diameter;
  std::optional<Length> bar_travel;
  std::optional<Length> standoff;      // from the pipe's crown to the tool's point with the bar drawn back
  std::optional<Length> valve_height;  // from the pipe's crown to where its valve swings clear
  std::optional<Length> feed_pitch;    // the bar's way in one turn of the feed
  std::optional<Length>
      adapter_standoff;  // from the end of its adapter, screwed on a stop, to the drawn-back cutter's edge
  std::optional<Length> saddle_od_from;  // outside diameters its machine saddles seat on
  std::optional<Length> saddle_od_to;
  std::optional<Length> chain_length;     // base chain, hook to hook
  std::optional<Length> chain_extension;  // each extension
  std::optional<Length> anchor_offset;    // chain anchor: sideways from the bar's axis
  std::optional<Length> anchor_height;    // and above the pipe's crown
  std::optional<Length> chain_thickness;
  std::optional<Length> gasket_diameter;  // sealing circle on the pipe
  std::optional<Length> stud_diameter;
  int studs = 2;
  Basis basis;
};

// What the trade calls a size in millimeters: DN 200 is the 8-inch pipe.
struct MetricSize {
  int dn = 0;
  NominalSize size;
};

class CatalogError;

// Bytes of one data file, by its path under data/ ("pipes/ductile_iron.json").
using DataFiles = std::map<std::string, std::string, std::less<>>;

class Catalog {
 public:
  // The tables built into the program. Loaded at the first call.
  static const Catalog& builtin();
  // From files of the same layout. Throws CatalogError naming file, row and fault.
  explicit Catalog(const DataFiles& files);
  Catalog(const Catalog&) = delete;
  Catalog& operator=(const Catalog&) = delete;

  [[nodiscard]] const std::string& edition() const { return edition_; }
  // A hash over every file, so that a changed number is a deliberate one. Worked out when it is asked for.
  [[nodiscard]] std::string hash() const;

  // All pipes of one material and nominal size, in catalog order; empty when there are none.
  [[nodiscard]] std::span<const Pipe> pipes(Material material, NominalSize size) const;
  [[nodiscard]] std::span<const Pipe> pipes() const { return pipes_; }
  // The nominal sizes in which a material is listed, rising.
  [[nodiscard]] std::vector<NominalSize> sizes(Material material) const;

  [[nodiscard]] const MaterialFacts& facts(Material material) const {
    return materials_[static_cast<std::size_t>(material)];
  }
  // What corporation stops are taken to be made of, where nobody has read the mark: cast leaded brass, the weakest met.
  [[nodiscard]] const MaterialFacts& stop_material() const { return stop_material_; }
  [[nodiscard]] const TapThread* thread(ThreadStandard standard, NominalSize size) const;
  [[nodiscard]] std::span<const TapThread> threads() const { return threads_; }
  [[nodiscard]] const MachineProfile* machine(std::string_view id) const;
  // Tubing, meters, fixtures, chlorine, ground.
  [[nodiscard]] const ServiceTables& service_tables() const { return service_tables_; }
  [[nodiscard]] const MachineProfile& unspecified_machine() const { return machines_.front(); }
  [[nodiscard]] std::span<const MachineProfile> machines() const { return machines_; }
  [[nodiscard]] const Source* source(std::string_view id) const;
  // The size of this metric name, written by it: see NominalSize::dn().
  [[nodiscard]] std::optional<NominalSize> metric_size(double dn) const;
  // The standards that pipes are made to, as a work order writes them: "c151", "a2151".
  [[nodiscard]] const std::vector<std::string>& standards() const { return standards_; }
  // What pipe is made to it, the first listed.
  [[nodiscard]] std::optional<Material> material_of_standard(std::uint8_t standard) const;
  [[nodiscard]] std::span<const PipeSeries> series() const { return series_; }
  // A class or a standard as somebody wrote it for a pipe of this material.
  [[nodiscard]] ClassWords read_class(std::string_view text, Material material) const;

  // What a spelling on a work order means: "D.I.P." -> ductile iron. Never by nearness.
  struct MaterialReading {
    std::optional<Material> material;
    std::string_view why_not;  // for a code that means different things in different places, or is no water main
  };
  [[nodiscard]] MaterialReading read_material(std::string_view text) const;

  // The text of a data file, for readers of tables the core does not interpret (rules).
  [[nodiscard]] const std::string& file(std::string_view path) const;

 private:
  friend class CatalogLoader;
  std::string edition_;
  DataFiles files_;
  std::vector<Source> sources_;
  std::vector<PipeSeries> series_;
  std::vector<std::string> standards_;
  std::vector<Pipe> pipes_;
  struct Range {
    std::uint32_t first = 0, count = 0;
  };
  std::map<std::pair<Material, NominalSize>, Range> index_;
  std::array<MaterialFacts, material_count> materials_;
  MaterialFacts stop_material_;
  std::vector<TapThread> threads_;
  std::vector<MachineProfile> machines_;
  std::vector<MetricSize> metric_sizes_;
  ServiceTables service_tables_;
  std::map<std::string, Material, std::less<>> material_spellings_;
  std::map<std::string, std::string, std::less<>> ambiguous_spellings_;
};

}  // namespace mainbore
