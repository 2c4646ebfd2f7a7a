#include "planning/laid_line.hpp"

#include <algorithm>
#include <cmath>

namespace mainbore::planning {
namespace {

// Loss goes with the flow to the power 1.75 to 2: the least of these gives n stops side by side the least credit.
constexpr double least_flow_exponent = 1.75;

constexpr Temperature usual_temperature = Temperature::fahrenheit(50.0);

}  // namespace

hydraulics::ServiceLine LaidLine::itemised(BoreTaken taken, const MeterSize* meter) const {
  return made_of(taken, meter, false);
}

hydraulics::ServiceLine LaidLine::line(BoreTaken taken, const MeterSize* meter) const {
  return made_of(taken, meter, true);
}

hydraulics::ServiceLine LaidLine::made_of(BoreTaken taken, const MeterSize* meter, bool joined) const {
  const auto bore_of = [&](const TubeSize& size) { return taken == BoreTaken::least ? size.bore_least : size.bore; };
  const auto counted = [&](LineFitting fitting, NominalSize size) {
    return tables->equivalent_length(fitting, size).value_or(Length());
  };
  // A stop larger than any tubing passes the water as the line does.
  const TubeSize* const tapped = tap == tube->size ? tube : tables->tube(tube->tubing, tap);
  const TubeSize& stop = tapped != nullptr ? *tapped : *tube;
  hydraulics::ServiceLine result;
  auto& segments = result.segments;
  segments.reserve(4);
  const auto add = [&](Length bore, Length run, Length equivalent) {
    if (joined && !segments.empty() && segments.back().bore == bore) {
      segments.back().length += run;
      segments.back().equivalent_length += equivalent;
    } else {
      segments.push_back({.bore = bore, .length = run, .equivalent_length = equivalent, .friction = friction});
    }
  };
  const double shared = taps == 1 ? 1.0 : std::pow(static_cast<double>(taps), least_flow_exponent);
  add(bore_of(stop), {}, counted(LineFitting::corporation_stop, stop.size) / shared);
  add(bore_of(*tube), {}, counted(LineFitting::curb_stop, tube->size));
  add(bore_of(*tube), length, {});
  const auto several = [&](int count, LineFitting fitting) {
    return count == 0 ? Length() : static_cast<double>(count) * counted(fitting, tube->size);
  };
  add(bore_of(*tube), {}, several(elbows, LineFitting::elbow) + several(couplings, LineFitting::coupling));
  if (meter != nullptr) result.meter = meter->meter();
  result.rise = rise;
  result.water = water;
  return result;
}

std::optional<LaidLine> laid_line(const Context& context, const ChosenMethod& method) {
  const ServiceTables& tables = context.catalog.service_tables();
  const LineFacts& facts = context.job().service.line;
  if (!facts.material || !facts.length) return std::nullopt;
  LaidLine laid;
  laid.tables = &tables;
  laid.tube = tables.tube(*facts.material, facts.size.value_or(context.asked()));
  if (laid.tube == nullptr) return std::nullopt;
  laid.length = *facts.length;
  laid.rise = facts.rise.value_or(Length());
  laid.taps = method.kind == Method::none ? 1 : method.count;
  laid.tap = method.kind == Method::none ? context.asked() : method.tap;
  laid.elbows = facts.elbows.value_or(0);
  laid.couplings = facts.couplings.value_or(0);
  laid.temperature = context.job().main.temperature.value_or(usual_temperature);
  laid.water.weight = tables.head;  // the codes' gradient serves heights and losses alike
  if (facts.friction.value_or(FrictionMethod::hazen_williams) == FrictionMethod::darcy_weisbach) {
    laid.water.viscosity = hydraulics::water_at(laid.temperature, tables.water).viscosity;
    laid.friction = hydraulics::DarcyWeisbach{tables.friction_of(*facts.material).roughness};
  } else {
    laid.friction = hydraulics::HazenWilliams{facts.c.value_or(tables.friction_of(*facts.material).c)};
  }
  return laid;
}

// The line pressure is the greatest there is: a lowest pressure above it is a slip, and counts for no more.
Pressure lowest_pressure(const Context& context) {
  return std::min(context.job().main.pressure_low.value_or(context.line()), context.line());
}

}  // namespace mainbore::planning
