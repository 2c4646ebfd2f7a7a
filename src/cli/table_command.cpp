#include "cli/table_command.hpp"

#include "cli/result_writer.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/tool_file.hpp"

namespace mainbore::cli {
namespace {

Material material_of(const std::string& text, const Catalog& catalog) {
  const auto read = catalog.read_material(text);
  if (read.material) return *read.material;
  if (!read.why_not.empty()) throw Stop(exit_usage, "--material: \"" + text + "\": " + std::string(read.why_not));
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
  const JobFile read = read_job(read_text(path, longest_job, console), path == "-" ? "standard input" : path, catalog);
  stop_on(read.diagnostics, "no table is made", console);
  auto machine = machine_of(read.job->machine, catalog);
  if (!machine) throw Stop(exit_unreadable, path + ": the job names no machine; give its figures under \"machine\"");
  return machine;
}

PocketOptions options_of(const TableRequest& request, const Catalog& catalog, Console& console) {
  PocketOptions options;
  for (const std::string& material : request.materials) {
    if (material.empty()) throw Stop(exit_usage, "--material takes a material, such as \"ductile iron\"");
    options.materials.push_back(material_of(material, catalog));
  }
  if (!request.all_sizes) {
    options.main_from = size_of("--from", request.from);
    options.main_to = size_of("--to", request.to);
  }
  if (const auto thread = word_of("--thread", request.thread, thread_standard_names)) {
    options.thread = static_cast<ThreadStandard>(*thread);
  }
  if (const auto line = quantity_of("--pressure", request.pressure, Kind::pressure)) {
    if (!(line->base() > 0.0)) throw Stop(exit_usage, "--pressure takes a pressure over zero");
    options.line = Pressure::from_base(line->base());
  }
  options.machine = machine_of(request.machine, catalog, console);
  return options;
}

}  // namespace

ExitStatus table_command(const TableRequest& request, Console& console) {
  std::unique_ptr<const Catalog> own_tables;
  const Catalog& catalog = open_catalog(request.data, own_tables, console);
  SettingsInForce in_force(request.settings_file, UsersOwn::read, catalog, console);
  const UnitSystem system = in_force.units(request.units);
  const Rules rules = in_force.rules(catalog, request.rules, console);
  PocketOptions options = options_of(request, catalog, console);
  FromSettings from = in_force.taken();
  if (!options.machine) options.machine = machine_of(in_force.file(), catalog, from);
  else if (!in_force.file().machine_facts.empty()) from.set_aside.emplace_back("machine");
  PocketTable table = pocket_table(catalog, rules, std::move(options));
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
