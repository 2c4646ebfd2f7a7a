// Water for the customer: what the service takes from the main's pressure, and whether enough is left.
//
//   residual = lowest main pressure - (tap and corporation stop + line + curb stop + fittings + meter + rise)
//
// hydraulics/service_line.hpp has the balance and its formulas. Stops and fittings count as lengths of the same pipe
// (the published equivalent lengths, which hold the entrance from the main within that of the corporation stop), the
// meter by its published loss table, the rise at the 0.433 psi a foot that plumbing codes use. Several taps that stand
// for one share the flow between them.
//
// Plastic tubing is bored a little under nominal where its wall is thick within its tolerance: `residual` is by the
// nominal bore, `residual_least` by the least, and the latter is judged.
//
// Present only in a plan whose job gives the line's material and length and a demand; what else a job leaves out is
// assumed and said. The answers never better with a greater demand, length or rise, or a lower main pressure.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "mainbore/hydraulics/service_line.hpp"
#include "mainbore/job.hpp"
#include "mainbore/service_tables.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

struct DemandPlan {
  std::optional<PlumbingCode> code;
  std::optional<double> fixture_units;
  hydraulics::CurveCoverage coverage = hydraulics::CurveCoverage::within;
  Flow domestic;    // by fixtures or as given, and what runs on
  Flow continuous;  // of that
  Flow sprinklers;
  Flow flow;  // what the service must carry: the greater of the two
  const Basis* basis = nullptr;
};

// In the order in which water meets them.
enum class LossPart : std::uint8_t { corporation_stop, curb_stop, line, fittings, meter, rise };
inline constexpr std::size_t loss_part_count = 6;
inline constexpr std::array<std::string_view, loss_part_count> loss_part_names = {
    "tap and corporation stop", "curb stop", "line", "fittings", "meter", "rise"};
[[nodiscard]] constexpr std::string_view name_of(LossPart part) {
  return loss_part_names[static_cast<std::size_t>(part)];
}

struct LossItem {
  LossPart part = LossPart::line;
  Pressure loss;                     // negative where the line falls
  std::optional<Length> counted_as;  // plain pipe that loses as much
  Pressure left;                     // behind it
};

// A point of the drawing of pressure along the service.
struct ProfilePoint {
  std::string_view at;  // "main", or the part behind which it lies
  Length along;         // from the main
  Length height;        // over the main
  Pressure pressure;
};

// How many taps of a smaller size carry what the asked one does, by what is held equal.
struct EqualTaps {
  NominalSize size;
  double by_velocity = 0.0;  // exponent 2: the same speed; short fittings
  double by_rule = 0.0;      // the exponent taps are planned with
  double by_runs = 0.0;      // equal loss over equal runs of pipe
};

struct ServicePlan {
  DemandPlan demand;
  Pressure supply;  // lowest pressure in the main
  const TubeSize* tube = nullptr;
  Length length;
  Length rise;
  int taps = 1;
  NominalSize tap;
  FrictionMethod method = FrictionMethod::hazen_williams;
  double c = 0.0;           // by Hazen-Williams
  Length roughness;         // by Darcy-Weisbach
  Temperature temperature;  // of the water, for its viscosity
  const Basis* friction_basis = nullptr;
  const MeterSize* meter = nullptr;
  bool meter_assumed = false;  // the smallest that may pass the flow
  std::vector<LossItem> losses;
  Pressure residual;
  Pressure residual_least;  // with the least bore of the tubing
  Pressure residual_wanted;
  hydraulics::AvailableFlow available;  // the flow at which the residual falls to the least wanted
  Velocity velocity;                    // in the line, at the demand
  std::optional<NominalSize> smallest_tap;
  std::optional<NominalSize> smallest_line;
  std::optional<NominalSize> smallest_meter;
  std::vector<EqualTaps> equal_taps;
  std::vector<ProfilePoint> profile;
};

// The hole in the main, or a stop on it, open to the air at line pressure: an upper bound.
struct OpenHole {
  Length bore;
  Flow flow;
  Force push;  // on what closes it
  Force jet;   // of the water that comes out
};

}  // namespace mainbore
