#include "cli/identify_command.hpp"

#include <array>

#include "cli/result_writer.hpp"
#include "mainbore/catalog_error.hpp"
#include "mainbore/tool_file.hpp"

namespace mainbore::cli {
namespace {

PipeReadings readings_of(const IdentifyRequest& request, const Catalog& catalog) {
  const auto length = [&](const char* option, const std::string& text, std::string_view path) -> std::optional<Length> {
    const auto read = fact_of(option, text, path, catalog);
    return read ? std::optional(std::get<Measure>(*read).as<Length>()) : std::nullopt;
  };
  PipeReadings readings;
  readings.circumference = length("--circumference", request.circumference, "main.circumference");
  readings.od = length("--od", request.od, "main.od");
  if (!readings.circumference && !readings.od) {
    throw Stop(exit_usage,
               "nothing measured: give --circumference \"21-3/4 in\" or --od \"6.9 in\"\n"
               "try: mainbore identify --help");
  }
  readings.wall = length("--wall", request.wall, "main.wall");
  if (const auto year = fact_of("--installed", request.installed, "main.installed", catalog)) {
    readings.installed = std::get<int>(*year);
  }
  constexpr std::array<std::string_view, 2> no_yes = {"no", "yes"};
  if (const auto magnet = word_of("--magnet", request.magnet, no_yes)) readings.magnet = *magnet == 1;
  if (const auto sound = word_of("--sound", request.sound, sound_names)) readings.sound = static_cast<Sound>(*sound);
  if (const auto joint = word_of("--joint", request.joint, joint_style_names)) {
    readings.joint = static_cast<JointStyle>(*joint);
  }
  if (const auto carries = fact_of("--carries", request.carries, "main.carries", catalog)) {
    readings.carries = static_cast<Carries>(std::get<int>(*carries));
  }
  return readings;
}

FieldTests open_field_tests(const Catalog& catalog) {
  try {
    return load_field_tests(catalog);
  } catch (const CatalogError& fault) {
    throw Stop(exit_unreadable, fault.what());
  }
}

}  // namespace

ExitStatus identify_command(const IdentifyRequest& request, Console& console) {
  const std::shared_ptr<const Catalog> tables = open_catalog(request.data, console);
  const Catalog& catalog = *tables;
  const PipeReadings readings = readings_of(request, catalog);
  SettingsInForce in_force(request.settings_file, UsersOwn::read, catalog, console);
  const UnitSystem units = in_force.units(request.units);
  const Planner planner(tables, in_force.rules(catalog, request.rules, console));
  Identification found = identify(readings, planner, open_field_tests(catalog));
  found.from_settings = in_force.taken();
  write_result(
      request.format == "json" ? identification_to_json(found, units, JsonStyle::pretty) : identify_text(found, units),
      console);
  return found.fits.empty() ? exit_no_go : exit_go;
}

}  // namespace mainbore::cli
