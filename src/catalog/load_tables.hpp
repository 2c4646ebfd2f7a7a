// The tables, a family a file. Each reader takes one data file, opened, and fills what it is about.
#pragma once

#include <array>
#include <map>
#include <string>
#include <vector>

#include "catalog/table_reader.hpp"

namespace mainbore::tables {

// load_materials.cpp
using Materials = std::array<MaterialFacts, material_count>;
void load_materials(TableFiles& at, object file, Materials& materials);
void load_temperature_factors(TableFiles& at, object file, Materials& materials);
void load_stop_material(TableFiles& at, object file, MaterialFacts& stop);

// load_names.cpp
struct Spellings {
  std::map<std::string, Material, std::less<>>& materials;
  std::map<std::string, std::string, std::less<>>& ambiguous;
};
void load_spellings(TableFiles& at, object file, const Catalog& catalog, Spellings into);
void load_metric_sizes(TableFiles& at, object file, std::vector<MetricSize>& sizes);

// load_threads.cpp, load_machines.cpp
void load_threads(TableFiles& at, object file, std::vector<TapThread>& threads);
void load_machines(TableFiles& at, object file, std::vector<MachineProfile>& machines);

// load_pipes.cpp: every file of the folder pipes/, the pipes sorted by material and size.
struct Pipes {
  std::vector<PipeSeries>& series;
  std::vector<std::string>& standards;
  std::vector<Pipe>& pipes;
};
void load_pipes(TableFiles& at, const Catalog& catalog, Pipes into);

// load_service.cpp
void load_tubes(TableFiles& at, object file, ServiceTables& tables);
void load_roughness(TableFiles& at, object file, ServiceTables& tables);
void load_fittings(TableFiles& at, object file, ServiceTables& tables);
void load_meters(TableFiles& at, object file, ServiceTables& tables);

// load_demand.cpp
void load_fixtures(TableFiles& at, object file, ServiceTables& tables);
void load_curves(TableFiles& at, object file, ServiceTables& tables);

// load_water.cpp
void load_water(TableFiles& at, object file, ServiceTables& tables);
void load_disinfection(TableFiles& at, object file, ServiceTables& tables);

// load_ground.cpp
void load_soils(TableFiles& at, object file, ServiceTables& tables);
void load_colors(TableFiles& at, object file, ServiceTables& tables);

}  // namespace mainbore::tables
