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
  joint, bell, fitting, valve, tap, saddle, repair_clamp, defect, hydrant, sewer, gas_line, electric_line, other
};
inline constexpr std::array<std::string_view, 13> nearby_names = {
    "joint",        "bell",   "fitting", "valve", "tap",      "saddle",        "repair clamp",
    "defect",       "hydrant", "sewer",  "gas line", "electric line", "other"};

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
  std::optional<Material> material;          // required
  std::optional<NominalSize> size;           // required
  std::optional<Pressure> pressure;          // required: the greatest static pressure expected while tapping
  std::string class_name;                    // as written: "PC 350", "C900 DR 18", "Class 150"
  std::string standard;                      // "C900", "D2241", "iron pipe size" ...: narrows the catalogue
  std::optional<int> installed;              // year laid
  std::optional<Length> od;                  // measured outside diameter
  std::optional<Length> circumference;       // measured by tape
  std::optional<Length> wall;                // measured by gauge at the tap
  std::optional<Condition> condition;
  std::optional<bool> encased;               // in polyethylene film
  std::optional<bool> curved;                // the length is bent along its run
  std::optional<Temperature> temperature;    // of the pipe wall
  std::optional<Pressure> surge;             // over static, recurring
  std::optional<Carries> carries;
  std::optional<Length> cover;               // ground to crown
  std::optional<bool> pressurised;           // false: a dry main, drained
};

// Something on or beside the main near the asked place.
struct Nearby {
  NearbyThing what = NearbyThing::joint;
  Length along;                              // from the asked place; + and - are the two ways along the main
  std::optional<ClockPosition> clock;
  std::optional<NominalSize> size;
};

struct ServiceFacts {
  std::optional<NominalSize> size;           // required
  std::optional<ThreadStandard> thread;      // of the corporation stop's inlet
  std::optional<Method> method;              // asked for: direct, saddle or sleeve
  std::optional<ClockPosition> clock;        // asked for
  std::optional<Pressure> stop_rating;       // working pressure marked on the corporation stop
  std::optional<Pressure> saddle_rating;     // and on the saddle or sleeve
};

struct MachineFacts {
  std::string profile;                       // id of a machine of the catalogue
  std::optional<Feed> feed;                  // the feed to be used
  std::shared_ptr<const MachineProfile> given;  // the machine's own figures, given whole in the job; plans point at it
  std::optional<int> extensions;             // chain extensions on the truck
};

struct Job {
  std::string id;                            // work order
  std::string place;                         // where, in the user's words
  std::string date;                          // planned day
  std::string crew;
  std::string note;
  MainFacts main;
  std::optional<std::vector<Nearby>> nearby; // absent: nobody looked; empty: looked, and there is nothing
  ServiceFacts service;
  MachineFacts machine;
};

}  // namespace mainbore
