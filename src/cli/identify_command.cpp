#include "cli/identify_command.hpp"

#include <array>
#include <charconv>

#include "cli/result_writer.hpp"
#include "mainbore/catalog_error.hpp"
#include "mainbore/tool_file.hpp"

namespace mainbore::cli {
namespace {

std::optional<Length> length_of(const std::string& option, const std::string& text) {
  const auto read = quantity_of(option, text, Kind::length);
  if (!read) return std::nullopt;
  if (!(read->base() > 0.0)) throw Stop(exit_usage, option + ": a length over zero is wanted; found \"" + text + '"');
  return read->as<1, 0, 0>();
}

std::optional<int> year_of(const std::string& text) {
  if (text.empty()) return std::nullopt;
  int year = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), year);
  if (error != std::errc() || end != text.data() + text.size() || year < 1800 || year > 2100) {
    throw Stop(exit_usage, "--installed takes a year from 1800 to 2100, such as 1962; found \"" + text + '"');
  }
  return year;
}

PipeReadings readings_of(const IdentifyRequest& request) {
  PipeReadings readings;
  readings.circumference = length_of("--circumference", request.circumference);
  readings.od = length_of("--od", request.od);
  if (!readings.circumference && !readings.od) {
    throw Stop(exit_usage,
               "nothing measured: give --circumference \"21-3/4 in\" or --od \"6.9 in\"\n"
               "try: mainbore identify --help");
  }
  readings.wall = length_of("--wall", request.wall);
  readings.installed = year_of(request.installed);
  constexpr std::array<std::string_view, 2> no_yes = {"no", "yes"};
  if (const auto magnet = word_of("--magnet", request.magnet, no_yes)) readings.magnet = *magnet == 1;
  if (const auto sound = word_of("--sound", request.sound, sound_names)) readings.sound = static_cast<Sound>(*sound);
  if (const auto joint = word_of("--joint", request.joint, joint_style_names)) {
    readings.joint = static_cast<JointStyle>(*joint);
  }
  if (const auto carries = word_of("--carries", request.carries, carries_names)) {
    readings.carries = static_cast<Carries>(*carries);
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
  const PipeReadings readings = readings_of(request);
  std::unique_ptr<const Catalog> own_tables;
  const Catalog& catalog = open_catalog(request.data, own_tables, console);
  SettingsInForce in_force(request.settings_file, UsersOwn::read, catalog, console);
  const UnitSystem units = in_force.units(request.units);
  const Rules rules = in_force.rules(catalog, request.rules, console);
  Identification found = identify(readings, catalog, rules, open_field_tests(catalog));
  found.from_settings = in_force.taken();
  write_result(request.format == "json" ? identification_to_json(found, units, JsonStyle::pretty)
                                        : identify_text(found, units),
               console);
  return found.fits.empty() ? exit_no_go : exit_go;
}

}  // namespace mainbore::cli
