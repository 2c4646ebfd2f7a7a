// The published tables behind water for the customer, cleaning and the pit.
//
// Part of the catalog: loaded once, never changed, and pointed at by plans. Each table says what it rests on.
//
//     const ServiceTables& tables = Catalog::builtin().service_tables();
//     tables.tube(Tubing::copper_k, NominalSize::inches(1))->bore / units::inch;      // 0.995
//     tables.meter(NominalSize::inches(0.75))->safe_maximum / units::gpm;             // 30
//     tables.equivalent_length(LineFitting::curb_stop, NominalSize::inches(1));       // 7 ft of the same pipe
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/hydraulics/demand.hpp"
#include "mainbore/hydraulics/minor_loss.hpp"
#include "mainbore/hydraulics/water.hpp"
#include "mainbore/nominal_size.hpp"
#include "mainbore/sanitary/concentration.hpp"
#include "mainbore/source.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

// Tubing and pipe that services are laid in.
enum class Tubing : std::uint8_t {
  copper_k,
  copper_l,
  polyethylene,
  pex,
  galvanized_steel,  // Schedule 40, as is the next
  black_steel,
  pvc_40,
  pvc_80,
  cpvc,
  ductile_iron,  // lined with cement mortar
  pvc_pressure,
};
inline constexpr std::size_t tubing_count = 11;
inline constexpr std::array<std::string_view, tubing_count> tubing_names = {
    "copper type K",   "copper type L",   "polyethylene SDR 9", "PEX SDR 9",    "galvanized steel", "black steel",
    "PVC Schedule 40", "PVC Schedule 80", "CPVC SDR 11",        "ductile iron", "PVC DR 18"};
[[nodiscard]] constexpr std::string_view name_of(Tubing tubing) {
  return tubing_names[static_cast<std::size_t>(tubing)];
}

struct TubeSize {
  Tubing tubing = Tubing::copper_k;
  NominalSize size;
  Length od;
  Length wall;
  Length bore;                     // by the nominal wall
  Length bore_least;               // with plastic walls as thick as their tolerance allows
  std::optional<Pressure> rating;  // of plastic, at 73 degF, by the least grade it is made of; none for copper
  Basis basis;
  Basis rating_basis;
};

// The friction coefficient that a kind of tubing is planned with.
struct TubeFriction {
  double c = 0.0;  // Hazen-Williams
  Basis c_basis;
  Length roughness;  // for Darcy-Weisbach
  Basis roughness_basis;
};

enum class LineFitting : std::uint8_t { corporation_stop, curb_stop, elbow, coupling };
inline constexpr std::size_t line_fitting_count = 4;

struct SizedLength {
  NominalSize size;
  Length length;
};

struct MeterSize {
  NominalSize size;
  std::vector<hydraulics::MeterPoint> loss;
  Flow safe_maximum;
  Basis basis;
  std::optional<hydraulics::Meter> reads;  // the rows of `loss`, looked over; of every meter of a catalog

  [[nodiscard]] const hydraulics::Meter& meter() const { return *reads; }
};

// Whose fixture units and whose demand curve: they only mean something together.
enum class PlumbingCode : std::uint8_t { ipc, upc, nspc };
inline constexpr std::size_t plumbing_code_count = 3;
inline constexpr std::array<std::string_view, plumbing_code_count> plumbing_code_names = {"IPC", "UPC", "NSPC"};
[[nodiscard]] constexpr std::string_view name_of(PlumbingCode code) {
  return plumbing_code_names[static_cast<std::size_t>(code)];
}

// One row of a code's fixture units. A code may list a fixture several times, for its use and how it is fed.
struct FixtureRow {
  PlumbingCode code = PlumbingCode::ipc;
  std::string fixture;
  std::string use;      // "private", "public", "assembly" ...
  std::string control;  // "flush tank", "flushometer valve"; empty where the code names none
  double units = 0.0;
  bool flush_valve = false;
  bool dwelling = false;  // for private use, alone or among others
  bool again = false;     // the fixture is that of the row before
};

// A code's demand by fixture units. `tank` and `valve`: water closets mainly by flush tank or by flush valve.
struct DemandCurve {
  std::vector<hydraulics::DemandPoint> tank_rows;
  std::vector<hydraulics::DemandPoint> valve_rows;
  std::optional<hydraulics::FixtureCurve> tank;   // by these rows
  std::optional<hydraulics::FixtureCurve> valve;  // nothing where the curve was not published or not read
  // Fixture units between two rows of which the rows between were not read: no flow is given there.
  std::optional<std::array<double, 2>> gap;
  Basis basis;
};

struct DechlorinationAgent {
  std::string name;
  double per_chlorine = 0.0;  // milligrams of agent per milligram of chlorine
};

// A product that chlorine is sold as. The strength of a liquid is by volume: grams of available chlorine in 100 mL.
struct ChlorineProduct {
  std::string name;
  bool dry = false;  // weighed; else measured by volume
  sanitary::Concentration strength;
  Basis basis;
};

// A strength to fill a line with, and how long it stands.
struct ChlorineDose {
  std::string method;
  sanitary::Concentration dose;
  Time hold;
  std::optional<Time> hold_most;
  sanitary::Concentration residual;  // at least this must be left at the end
  Basis basis;
};

struct LocateColor {
  std::string color;
  std::string meaning;
};

struct ServiceTables {
  std::array<std::vector<TubeSize>, tubing_count> tubes;  // sizes rising
  std::array<TubeFriction, tubing_count> friction;
  std::array<std::vector<SizedLength>, line_fitting_count> fittings;  // sizes rising
  Basis fittings_basis;
  std::vector<MeterSize> meters;     // sizes rising
  std::vector<FixtureRow> fixtures;  // by code, then by the first letter, whatever its case
  // Where the rows of a letter begin, in lower case; those of the next begin where they end.
  std::array<std::array<std::uint16_t, 129>, plumbing_code_count> fixtures_from{};
  std::array<Basis, plumbing_code_count> fixtures_basis;
  std::array<DemandCurve, plumbing_code_count> curves;
  std::vector<hydraulics::WaterPoint> water;
  Basis water_basis;
  UnitWeight head;  // pressure of a foot of water, as the codes round it
  Basis head_basis;
  sanitary::Concentration weakest_bleach;  // household bleach, by its label
  Basis stock_basis;
  std::vector<DechlorinationAgent> dechlorination;
  Basis dechlorination_basis;
  std::vector<ChlorineDose> doses;
  std::vector<ChlorineProduct> chlorine_products;
  UnitWeight soil_weight;  // in the bank
  UnitWeight rock_weight;
  Basis weight_basis;
  std::vector<LocateColor> colors;
  std::string water_mark;  // the color of drinking water's marks, which every pit asks for
  std::string gas_mark;
  Basis colors_basis;

  [[nodiscard]] std::span<const TubeSize> tubes_of(Tubing tubing) const {
    return tubes[static_cast<std::size_t>(tubing)];
  }
  [[nodiscard]] const TubeFriction& friction_of(Tubing tubing) const {
    return friction[static_cast<std::size_t>(tubing)];
  }
  [[nodiscard]] const TubeSize* tube(Tubing tubing, NominalSize size) const;
  [[nodiscard]] const MeterSize* meter(NominalSize size) const;
  // Those whose name begins with this character, in lower case.
  [[nodiscard]] std::span<const FixtureRow> fixtures_beginning(PlumbingCode code, char first) const;
  // The row of the size, or of the next larger one that is tabulated. Above the largest, as many diameters of pipe as that
  // has: equivalent lengths grow with the bore.
  [[nodiscard]] std::optional<Length> equivalent_length(LineFitting fitting, NominalSize size) const;
  // The color of the marks for something: the first whose meaning has the word in it; empty when there is none.
  [[nodiscard]] std::string_view color_of(std::string_view word) const;
};

}  // namespace mainbore
