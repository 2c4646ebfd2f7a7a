// A service-tap job: what is known before anyone drills.
//
// Four facts are required: the main's material and size, the service's size, and the line pressure. Everything else may
// be absent; the planner then assumes the safe side and says so. Field names are the paths of the job file
// (docs/job.md): job.main.od is "main.od".
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/material.hpp"
#include "mainbore/nominal_size.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

enum class Condition : std::uint8_t { sound, pitted, poor };
inline constexpr std::array<std::string_view, 3> condition_names = {"sound", "pitted", "poor"};

// What the main carries. Only potable water is tapped.
enum class Carries : std::uint8_t { water, unknown, reclaimed_water, raw_water, sewage, gas, petroleum, other };
inline constexpr std::array<std::string_view, 8> carries_names = {"water",  "unknown", "reclaimed water", "raw water",
                                                                  "sewage", "gas",     "petroleum",       "other"};

enum class NearbyThing : std::uint8_t {
  joint,
  bell,
  fitting,
  valve,
  tap,
  saddle,
  repair_clamp,
  defect,
  hydrant,
  sewer,
  gas_line,
  electric_line,
  other,
  plain_end  // of a bell and spigot joint: the spigot
};
inline constexpr std::array<std::string_view, 14> nearby_names = {
    "joint",  "bell",    "fitting", "valve",    "tap",           "saddle", "repair clamp",
    "defect", "hydrant", "sewer",   "gas line", "electric line", "other",  "plain end"};

// A joint, or either end of a pipe in one.
[[nodiscard]] constexpr bool is_joint(NearbyThing thing) {
  return thing == NearbyThing::joint || thing == NearbyThing::bell || thing == NearbyThing::plain_end;
}

enum class Method : std::uint8_t { direct, saddle, sleeve, none };
inline constexpr std::array<std::string_view, 4> method_names = {"direct", "saddle", "sleeve", "none"};
[[nodiscard]] constexpr std::string_view name_of(Method m) { return method_names[static_cast<std::size_t>(m)]; }

// A place round the pipe as a clock face seen along the main: 12:00 is the crown, 3:00 the springline.
struct ClockPosition {
  int minutes = 0;  // past 12:00, 0 to 719
  // Degrees above the horizontal: 90 at the crown, 0 at the springlines, -90 at the invert.
  [[nodiscard]] double elevation_degrees() const;
  [[nodiscard]] std::string label() const;  // "1:30"
  friend bool operator==(const ClockPosition&, const ClockPosition&) = default;
};

struct MainFacts {
  std::optional<Material> material;      // required
  std::optional<NominalSize> size;       // required
  std::optional<Pressure> pressure;      // required: the greatest static pressure expected while tapping
  std::optional<Pressure> pressure_low;  // the lowest static pressure that customers are served at
  std::string class_name;                // as written: "PC 350", "C900 DR 18", "Class 150"
  std::string standard;                  // "C900", "D2241", "iron pipe size" ...: narrows the catalog
  std::optional<int> installed;          // year laid
  std::optional<Length> od;              // measured outside diameter
  std::optional<Length> circumference;   // measured by tape
  std::optional<Length> wall;            // measured by gauge at the tap
  std::optional<Condition> condition;
  std::optional<bool> encased;               // in polyethylene film
  std::optional<bool> curved;                // the length is bent along its run
  std::optional<Temperature> temperature;    // of the pipe wall
  std::optional<Pressure> surge;             // over static, recurring: pumps and valves of every day
  std::optional<Pressure> occasional_surge;  // over static, seldom: a power failure, a fire flow
  std::optional<Pressure> rating;            // working pressure that the utility rates this main for, at 73 degF
  std::optional<Carries> carries;
  std::optional<Length> cover;         // ground to crown
  std::optional<bool> cover_measured;  // a cover of 0 is one that somebody measured
  std::optional<bool> pressurized;     // false: a dry main, drained

  // Where nobody says otherwise it is.
  [[nodiscard]] bool is_pressurized() const { return pressurized.value_or(true); }

  // Records write 0 where nobody measured.
  [[nodiscard]] std::optional<Length> known_cover() const {
    return cover && (*cover > Length() || cover_measured.value_or(false)) ? cover : std::nullopt;
  }
};

// A day as a text begins with it: "2026-05-04", "2026-05-04 07:30".
struct CalendarDay {
  int year = 0;
  int month = 0;
  int day = 0;
  [[nodiscard]] bool exists() const;  // false for the 31st of February
};
// Nothing where the text begins otherwise.
[[nodiscard]] std::optional<CalendarDay> day_in(std::string_view text);

// Something on or beside the main near the asked place.
struct Nearby {
  NearbyThing what = NearbyThing::joint;
  Length along;  // from the asked place; + and - are the two ways along the main
  std::optional<ClockPosition> clock;
  std::optional<NominalSize> size;
};

// How the friction of the service is worked out.
enum class FrictionMethod : std::uint8_t { hazen_williams, darcy_weisbach };
inline constexpr std::array<std::string_view, 2> friction_method_names = {"Hazen-Williams", "Darcy-Weisbach"};

// What feeds most water closets: decides which column of a demand curve is read.
enum class FixtureSupply : std::uint8_t { flush_tank, flush_valve };
inline constexpr std::array<std::string_view, 2> fixture_supply_names = {"flush tank", "flush valve"};

enum class DwellingSprinklers : std::uint8_t { none, single, pair };
inline constexpr std::array<std::string_view, 3> dwelling_sprinkler_names = {"none", "single", "pair"};

// A service found in the ground where the new one goes.
enum class ExistingService : std::uint8_t { none, copper, plastic, galvanized, lead };
inline constexpr std::array<std::string_view, 5> existing_service_names = {"none", "copper", "plastic", "galvanized",
                                                                           "lead"};

// From the main to the meter and on to where the residual is wanted.
struct LineFacts {
  std::optional<Tubing> material;
  std::optional<NominalSize> size;  // as the service, where not given
  std::optional<Length> length;
  std::optional<Length> rise;  // of the customer over the main; negative when it lies lower
  std::optional<FrictionMethod> friction;
  std::optional<double> c;  // Hazen-Williams, in place of the tabulated one
  std::optional<int> elbows;
  std::optional<int> couplings;
  std::optional<Pressure> rating;  // working pressure printed on the tubing, at 73 degF
  std::optional<Length> cover;     // least, from the ground to the line
  std::optional<Length> gas;       // from the line to the nearest gas line, level, edge to edge
  std::optional<Length> electric;  // and to the nearest electric line
  std::optional<Length> sewer;     // and sewer
};

struct DemandFacts {
  std::optional<Flow> flow;  // known as such: fixtures are then not counted
  std::optional<double> fixture_units;
  std::string fixtures;              // "2 bathroom group, kitchen sink": names of the code's own table
  std::optional<PlumbingCode> code;  // whose fixture units those are
  std::optional<FixtureSupply> supply;
  std::optional<Flow> continuous;  // hose bibbs, lawn, cooling: added in full
  std::optional<DwellingSprinklers> sprinklers;
  std::optional<Flow> sprinkler_flow;  // of one sprinkler, by its listing
  std::optional<bool> shared;          // the pipe also serves other dwellings
  std::optional<Pressure> residual;    // wanted behind the meter
};

// What trial taps with this tool and a stop of this lot have found (mechanics/trial_taps.hpp).
struct TrialFacts {
  std::optional<Length> depth;            // from the touch of the tool to where tapping stops
  std::optional<double> hand_turns;       // the stop goes in by hand
  std::optional<double> wrench_turns;     // and by wrench
  std::optional<double> threads_showing;  // left outside after them
  std::string date;
  std::string tool;  // the mark on the tool
};

struct ServiceFacts {
  std::optional<NominalSize> size;        // required
  std::optional<ThreadStandard> thread;   // of the corporation stop's inlet
  std::optional<Method> method;           // asked for: direct, saddle or sleeve
  std::optional<ClockPosition> clock;     // asked for
  std::optional<Pressure> stop_rating;    // working pressure marked on the corporation stop
  std::optional<Pressure> saddle_rating;  // and on the saddle or sleeve
  std::optional<Length> stop_length;      // corporation stop from end to end
  std::optional<Length> saddle_height;    // from the pipe to the outlet face of the saddle
  TrialFacts trial;
  std::optional<ExistingService> existing;
  LineFacts line;
  std::optional<NominalSize> meter;  // nominal size of the meter
  std::optional<int> dwellings;      // that the service supplies
  std::optional<int> premises;       // lots or buildings that it supplies
  DemandFacts demand;
};

struct SanitaryFacts {
  std::optional<double> stock;     // available chlorine of the stock at hand, per cent, by its label
  std::optional<Volume> solution;  // how much to mix
};

// As a competent person claims it after visual and manual tests.
enum class SoilClaim : std::uint8_t { stable_rock, type_a, type_b, type_c };
inline constexpr std::array<std::string_view, 4> soil_claim_names = {"stable rock", "A", "B", "C"};
// Layers that dip toward the pit.
enum class LayerFacts : std::uint8_t { none, gentle, steep };
inline constexpr std::array<std::string_view, 3> layer_names = {"none", "gentler than 4:1", "4:1 or steeper"};
enum class PitWater : std::uint8_t { none, seeping, standing };
inline constexpr std::array<std::string_view, 3> pit_water_names = {"none", "seeping", "standing"};
enum class Protection : std::uint8_t { slope, shield };
inline constexpr std::array<std::string_view, 2> protection_names = {"slope", "shield"};
// What a competent person who looked for signs of a cave-in found.
enum class CaveInSign : std::uint8_t { no_sign, sign };
inline constexpr std::array<std::string_view, 2> cave_in_names = {"no sign", "sign"};
// What the ground is made of, for the room that it takes when dug.
enum class Earth : std::uint8_t { sand, earth, clay, rock };
inline constexpr std::array<std::string_view, 4> earth_names = {"sand", "earth", "clay", "rock"};

struct ExcavationFacts {
  std::optional<SoilClaim> soil;
  std::optional<Pressure> strength;  // unconfined, by penetrometer or vane
  std::optional<Earth> earth;
  std::optional<bool> granular;
  std::optional<bool> fissured;
  std::optional<bool> vibration;  // traffic, pile driving
  std::optional<bool> disturbed;  // dug before: taken as so over any main
  std::optional<LayerFacts> layers;
  std::optional<PitWater> water;
  std::optional<bool> distress;  // cracks at the edge, slumping, bulging
  std::optional<Time> open_for;
  std::optional<Protection> protection;  // chosen
  std::optional<CaveInSign> finding;
  std::optional<bool> hazard;            // bad air is to be expected
  std::optional<bool> crossing;          // people cross the pit on a walkway
  std::optional<Length> spoil_distance;  // from the edge to the foot of the spoil
  std::optional<bool> located;           // the ticket is valid and all marks are read
  std::optional<Length> tolerance;       // of the state's law, to each side of a marked line
  std::optional<Length> sewer;           // from the water line to the nearest sewer, level, edge to edge
  std::optional<Length> sewer_below;     // and how far it lies below
  std::optional<Velocity> speed;         // posted
  std::optional<Length> lane;            // width of road closed
};

struct MachineFacts {
  std::string profile;                          // id of a machine of the catalog
  std::optional<Feed> feed;                     // the feed to be used
  std::shared_ptr<const MachineProfile> given;  // the machine's own figures, given whole in the job; plans point at it
  std::optional<int> extensions;                // chain extensions on the truck
};

// What goes on the bar, as measured with a tape.
struct ToolFacts {
  std::optional<Length> length;            // shoulder of the bar to the point of the cutting tool
  std::optional<Length> lead;              // of that tool, its point ahead of the first thread of its tap
  std::optional<Length> insertion_length;  // shoulder of the bar to the end of the stop on the insertion tool
};

struct Job {
  std::string id;     // work order
  std::string place;  // where, in the user's words
  std::string date;   // planned day
  std::string crew;
  std::string note;
  std::optional<Temperature> air_temperature;  // when tapping
  MainFacts main;
  std::optional<std::vector<Nearby>> nearby;  // absent: nobody looked; empty: looked, and there is nothing
  ServiceFacts service;
  MachineFacts machine;
  ToolFacts tool;
  SanitaryFacts sanitary;
  ExcavationFacts excavation;
  // Paths of facts that were given as something nobody could read, by whoever read the job all the same. Their text lives
  // as long as the program.
  std::vector<std::string_view> unread;
};

}  // namespace mainbore
