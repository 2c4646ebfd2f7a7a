// The service line as a job lays it, ready for the formulas of hydraulics.
#pragma once

#include <optional>

#include "mainbore/hydraulics/service_line.hpp"
#include "planning/checks.hpp"

namespace mainbore::planning {

enum class BoreTaken : std::uint8_t { nominal, least };

struct LaidLine {
  const ServiceTables* tables = nullptr;
  const TubeSize* tube = nullptr;
  Length length;
  Length rise;
  int taps = 1;
  NominalSize tap;
  int elbows = 0;
  int couplings = 0;
  hydraulics::FrictionLaw friction;
  hydraulics::Water water;
  Temperature temperature;

  // Segments in the order of LossPart: corporation stop, curb stop, line, fittings.
  [[nodiscard]] hydraulics::ServiceLine itemised(BoreTaken bore, const MeterSize* meter) const;
  // The same with what has one bore in one segment: for solving.
  [[nodiscard]] hydraulics::ServiceLine line(BoreTaken bore, const MeterSize* meter) const;

 private:
  [[nodiscard]] hydraulics::ServiceLine made_of(BoreTaken bore, const MeterSize* meter, bool joined) const;
};

// Nothing when the job does not give material and length, or no such tubing is tabulated.
[[nodiscard]] std::optional<LaidLine> laid_line(const Context& context, const ChosenMethod& method);

// The lowest pressure in the main: given, or the line pressure.
[[nodiscard]] Pressure lowest_pressure(const Context& context);

}  // namespace mainbore::planning
