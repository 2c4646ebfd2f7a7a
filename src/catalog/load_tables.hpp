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
void load_materials(Reading& at, object file, Materials& materials);
void load_temperature_factors(Reading& at, object file, Materials& materials);
void load_stop_material(Reading& at, object file, MaterialFacts& stop);

// load_names.cpp
struct Spellings {
  std::map<std::string, Material, std::less<>>& materials;
  std::map<std::string, std::string, std::less<>>& ambiguous;
};
void load_spellings(Reading& at, object file, const Catalog& catalog, Spellings into);
void load_metric_sizes(Reading& at, object file, std::vector<MetricSize>& sizes);

// load_threads.cpp, load_machines.cpp
void load_threads(Reading& at, object file, std::vector<TapThread>& threads);
void load_machines(Reading& at, object file, std::vector<MachineProfile>& machines);

// load_pipes.cpp: every file of the folder pipes/, the pipes sorted by material and size.
struct Pipes {
  std::vector<PipeSeries>& series;
  std::vector<std::string>& standards;
  std::vector<Pipe>& pipes;
};
void load_pipes(Reading& at, const Catalog& catalog, Pipes into);

// load_service.cpp
void load_tubes(Reading& at, object file, ServiceTables& tables);
void load_roughness(Reading& at, object file, ServiceTables& tables);
void load_fittings(Reading& at, object file, ServiceTables& tables);
void load_meters(Reading& at, object file, ServiceTables& tables);

// load_demand.cpp
void load_fixtures(Reading& at, object file, ServiceTables& tables);
void load_curves(Reading& at, object file, ServiceTables& tables);

// load_water.cpp
void load_water(Reading& at, object file, ServiceTables& tables);
void load_disinfection(Reading& at, object file, ServiceTables& tables);

// load_ground.cpp
void load_soils(Reading& at, object file, ServiceTables& tables);
void load_colours(Reading& at, object file, ServiceTables& tables);

}  // namespace mainbore::tables
