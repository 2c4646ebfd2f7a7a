#include "cli/table_command.hpp"

#include "cli/result_writer.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/tool_file.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {
namespace {

Material material_of(const std::string& text, const Catalog& catalog) {
  const auto read = catalog.read_material(text);
  if (read.material) return *read.material;
  if (!read.why_not.empty())
    throw Stop(exit_usage, "--material: " + text::quoted(text) + ": " + std::string(read.why_not));
  return static_cast<Material>(word_of("--material", text, material_names).value());
}

std::shared_ptr<const MachineProfile> machine_of(const MachineFacts& machine, const Catalog& catalog) {
  if (machine.given) return machine.given;
  const MachineProfile* named = machine.profile.empty() ? nullptr : catalog.machine(machine.profile);
  return named == nullptr ? nullptr : std::make_shared<MachineProfile>(*named);
}

std::shared_ptr<const MachineProfile> machine_of(const Settings& settings, const Catalog& catalog, FromSettings& from) {
  auto machine = machine_of(settings.machine, catalog);
  if (machine) from.taken.insert(from.taken.end(), settings.machine_facts.begin(), settings.machine_facts.end());
  return machine;
}

std::shared_ptr<const MachineProfile> machine_of(const std::string& path, const Catalog& catalog, Console& console) {
  if (path.empty()) return nullptr;
  const JobFile read = read_job(read_text(path, longest_job, console), shown_name(path), catalog);
  stop_on(read.diagnostics, "no table is made", console);
  auto machine = machine_of(read.job->machine, catalog);
  if (!machine)
    throw Stop(exit_unreadable, shown_name(path) + ": the job names no machine; give its figures under \"machine\"");
  return machine;
}

PocketOptions options_of(const TableRequest& request, const Catalog& catalog, Console& console) {
  PocketOptions options;
  for (const std::string& material : request.materials) {
    if (material.empty()) throw Stop(exit_usage, "--material takes a material, such as \"ductile iron\"");
    options.materials.push_back(material_of(material, catalog));
  }
  if (!request.all_sizes) {
    options.main_from = std::get<NominalSize>(fact_of("--from", request.from, "main.size", catalog).value());
    options.main_to = std::get<NominalSize>(fact_of("--to", request.to, "main.size", catalog).value());
  }
  if (const auto thread = fact_of("--thread", request.thread, "service.thread", catalog)) {
    options.thread = static_cast<ThreadStandard>(std::get<int>(*thread));
  }
  if (const auto line = fact_of("--pressure", request.pressure, "main.pressure", catalog)) {
    options.line = std::get<Measure>(*line).as<Pressure>();
  }
  options.machine = machine_of(request.machine, catalog, console);
  return options;
}

}  // namespace

ExitStatus table_command(const TableRequest& request, Console& console) {
  const std::shared_ptr<const Catalog> tables = open_catalog(request.data, console);
  const Catalog& catalog = *tables;
  SettingsInForce in_force(request.settings_file, UsersOwn::read, catalog, console);
  const UnitSystem system = in_force.units(request.units);
  const Planner planner(tables, in_force.rules(catalog, request.rules, console));
  PocketOptions options = options_of(request, catalog, console);
  FromSettings from = in_force.taken();
  if (!options.machine) options.machine = machine_of(in_force.file(), catalog, from);
  else if (!in_force.file().machine_facts.empty()) from.set_aside.emplace_back("machine");
  PocketTable table = pocket_table(planner, std::move(options));
  table.from_settings = std::move(from);
  std::string result;
  if (request.format == "json") result = pocket_table_to_json(table, system, JsonStyle::pretty);
  else if (request.format == "csv") result = pocket_table_to_csv(table, system);
  else if (request.format == "html") result = pocket_table_html(table, system);
  else result = pocket_table_text(table, system);
  write_result(result, console);
  return exit_go;
}

}  // namespace mainbore::cli
