// Every data file with what reads it, in the order in which they build on each other.
#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

#include "catalog/load_tables.hpp"
#include "catalog/table_reader.hpp"
#include "mainbore/catalog.hpp"

namespace mainbore {

class CatalogLoader : tables::TableReader {
 public:
  CatalogLoader(tables::TableFiles& at, Catalog& catalog) : TableReader(at), catalog_(catalog) {}

  void load() {
    read_sources();
    for (const Table& table : tables_of_pipe()) table.read(at_, open(table.path), catalog_);
    read_pipes();
    for (const ServiceTable& table : service_tables) table.read(at_, open(table.path), catalog_.service_tables_);
    for (const std::string_view path : read_when_asked_for) static_cast<void>(require(path));
    expect_all_read();
  }

 private:
  using object = tables::object;

  struct Table {
    std::string_view path;
    void (*read)(tables::TableFiles& at, object file, Catalog& into);
  };
  static std::array<Table, 8> tables_of_pipe() {
    using tables::TableFiles;
    return std::array<Table, 8>{{
        {"edition.json",
         [](TableFiles& at, object file, Catalog& into) { CatalogLoader(at, into).read_edition(file); }},
        {"materials.json",
         [](TableFiles& at, object file, Catalog& into) { load_materials(at, file, into.materials_); }},
        {"stops.json",
         [](TableFiles& at, object file, Catalog& into) { load_stop_material(at, file, into.stop_material_); }},
        {"temperature_factors.json",
         [](TableFiles& at, object file, Catalog& into) { load_temperature_factors(at, file, into.materials_); }},
        {"material_names.json",
         [](TableFiles& at, object file, Catalog& into) {
           load_spellings(at, file, into, {into.material_spellings_, into.ambiguous_spellings_});
         }},
        {"metric_sizes.json",
         [](TableFiles& at, object file, Catalog& into) { load_metric_sizes(at, file, into.metric_sizes_); }},
        {"threads.json", [](TableFiles& at, object file, Catalog& into) { load_threads(at, file, into.threads_); }},
        {"machines.json", [](TableFiles& at, object file, Catalog& into) { load_machines(at, file, into.machines_); }},
    }};
  }

  struct ServiceTable {
    std::string_view path;
    void (*read)(tables::TableFiles& at, object file, ServiceTables& into);
  };
  static constexpr std::array<ServiceTable, 10> service_tables = {{
      {"tubing.json", tables::load_tubes},
      {"roughness.json", tables::load_roughness},
      {"fittings.json", tables::load_fittings},
      {"meters.json", tables::load_meters},
      {"fixtures.json", tables::load_fixtures},
      {"demand_curves.json", tables::load_curves},
      {"water.json", tables::load_water},
      {"disinfection.json", tables::load_disinfection},
      {"soils.json", tables::load_soils},
      {"locate_colours.json", tables::load_colors},
  }};

  static constexpr std::array<std::string_view, 2> read_when_asked_for = {"rules/default.json", "field_tests.json"};

  // Besides the register itself, a folder may keep the publications that it alone rests on.
  void read_sources() {
    static_cast<void>(open("sources.json"));
    for (const auto& [path, text] : catalog_.files_) {
      if (path == "sources.json" || path.ends_with("/sources.json")) read_sources(path);
    }
  }
  void read_sources(std::string_view path) {
    const object sources = open(path);
    for (const auto& [id, value] : sources) {
      enter("source " + quoted(id));
      const object source = as_object(value, "the source");
      only(source, {"title", "short", "where", "note"});
      if (catalog_.source(id) != nullptr) fault("the id stands twice");
      std::string title(text_member(source, "title"));
      std::string brief = text_or_empty(source, "short");
      if (brief.empty()) brief = title;  // a title of few words is its own
      catalog_.sources_.push_back({std::string(id), std::move(title), std::move(brief),
                                   std::string(text_member(source, "where")), text_or_empty(source, "note")});
    }
  }

  void read_edition(object file) {
    only(file, {"edition"});
    catalog_.edition_ = text_member(file, "edition");
  }

  void read_pipes() {
    load_pipes(at_, catalog_, {catalog_.series_, catalog_.standards_, catalog_.pipes_});
    for (std::size_t i = 0; i < catalog_.pipes_.size(); ++i) {
      const Pipe& pipe = catalog_.pipes_[i];
      Catalog::Range& range = catalog_.index_[std::pair(pipe.series->material, pipe.size)];
      if (range.count++ == 0) range.first = static_cast<std::uint32_t>(i);
    }
  }

  // A table that nothing reads looks as if it counted.
  void expect_all_read() {
    for (const auto& [path, text] : catalog_.files_) {
      if (at_.opened.contains(path)) continue;
      at_.file = path;
      enter("");
      fault("nothing reads this file");
    }
  }

  Catalog& catalog_;
};

Catalog::Catalog(const DataFiles& files) : files_(files) {
  tables::TableFiles at(files_, sources_);
  CatalogLoader(at, *this).load();
}

}  // namespace mainbore
