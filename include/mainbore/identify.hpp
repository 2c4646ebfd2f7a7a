// Which pipe is this? Every pipe of the catalog that fits what was measured, and what would tell them apart.
//
// A pipe fits when its outside diameter D, within its own tolerance and that of the tool, covers the reading:
//     D - minus - u <= reading <= D + plus + u        u: the tape's uncertainty / pi, or the caliper's (rules,
//     "measuring")
// Two readings must both be met. A magnet that sticks rules out what it cannot stick to, and the other way round. Year,
// sound and joints rule nothing out, because records err and repairs differ; nor does a wall, because walls rust and run
// over: what they speak against is said beside each class (Misgiving), and what nothing speaks against comes first.
//
// Nothing here is an identification. The answer is the list of what the pipe may be, "none of the catalog" included,
// and each entry's taps are what the rules would allow were it that pipe, sound, and proved to carry water. Color and
// material prove nothing about what is inside: identify_warnings() says so with every answer.
//
//     PipeReadings readings;
//     readings.circumference = 21.6875 * units::inch;                        // 6.90 in
//     const Identification found = identify(readings, planner, load_field_tests(planner.catalog()));
//     found.fits.front().series->material, .size, .classes ...
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/field_tests.hpp"
#include "mainbore/job.hpp"
#include "mainbore/pocket_table.hpp"
#include "mainbore/rules.hpp"

namespace mainbore {

struct PipeReadings {
  std::optional<Length> circumference;  // by tape round the cleaned pipe; this or `od` is required
  std::optional<Length> od;             // by caliper
  std::optional<Length> wall;           // by gauge
  std::optional<int> installed;         // year laid, by the record
  std::optional<bool> magnet;           // sticks
  std::optional<Sound> sound;
  std::optional<JointStyle> joint;
  std::optional<Carries> carries;  // as proved by two independent means; absent: not yet
};

// What speaks against a class without ruling it out.
enum class Misgiving : std::uint8_t {
  wall_reads_thin,
  wall_reads_thick,
  not_laid_then,
  sounds_otherwise,
  joint_unusual
};
[[nodiscard]] constexpr std::string_view name_of(Misgiving misgiving) {
  constexpr std::array<std::string_view, 5> names = {"wall-reads-thin", "wall-reads-thick", "not-laid-then",
                                                     "sounds-otherwise", "joint-unusual"};
  return names[static_cast<std::size_t>(misgiving)];
}

struct PossibleClass {
  const Pipe* pipe = nullptr;
  std::vector<Misgiving> against;
  PocketCell allows;  // were it this pipe, of the wall read: see pocket_table.hpp
};

// One series in one size: pipes that a tape tells apart only by their classes' own diameters, if at all.
struct PossiblePipe {
  const PipeSeries* series = nullptr;
  NominalSize size;
  std::vector<PossibleClass> classes;  // in catalog order
  std::size_t misgivings = 0;          // of the class that nothing, or least, speaks against
  Length gap;                          // from the reading to the nearest class's nominal diameter
};

// A pipe that does not fit, to show how far off the reading is.
struct NearMiss {
  const Pipe* pipe = nullptr;
  Length gap;  // reading less the nearest diameter it may have; negative: the pipe is larger
};

// A further reading that splits those that fit.
enum class NextReading : std::uint8_t { magnet, wall, sound, joint, year };
[[nodiscard]] constexpr std::string_view name_of(NextReading next) {
  constexpr std::array<std::string_view, 5> names = {"magnet", "wall", "sound", "joint", "year"};
  return names[static_cast<std::size_t>(next)];
}
struct NextAnswer {
  std::string_view answer;  // "sticks"; empty where `low` and `high` say it
  std::optional<Measure> low;
  std::optional<Measure> high;
  std::optional<int> from;  // years
  std::optional<int> to;
  std::vector<std::size_t> fits;  // places in Identification::fits
};
struct NextStep {
  NextReading what = NextReading::magnet;
  std::vector<NextAnswer> answers;
};

struct Identification {
  PipeReadings readings;
  Length od;      // by the better tool
  Length od_low;  // what every pipe listed must cover
  Length od_high;
  bool readings_disagree = false;             // tape and caliper: measure again; nothing fits
  std::vector<PossiblePipe> fits;             // empty: none of the catalog
  std::vector<NearMiss> nearest;              // where none fits: the next smaller and the next larger
  std::vector<const PipeSeries*> not_judged;  // series whose diameters are not tabulated: they may fit anything
  std::vector<NextStep> next;                 // the surest first
  bool water_proved = false;
  FromSettings from_settings;  // by whoever laid it
};

// Throws std::invalid_argument when neither circumference nor diameter is given, or a length is not positive and
// finite.
[[nodiscard]] Identification identify(const PipeReadings& readings, const Planner& planner, const FieldTests& tests,
                                      const PocketOptions& options = {});

// What must be said with every answer, gravest first. None can be left out.
[[nodiscard]] std::vector<std::string_view> identify_warnings(const Identification& found);

}  // namespace mainbore
