#include "mainbore/hydraulics/water.hpp"

#include <stdexcept>

#include "hydraulics/table.hpp"

namespace mainbore::hydraulics {

Water water_at(Temperature temperature, std::span<const WaterPoint> table) {
  const auto degrees = [](const WaterPoint& row) { return row.temperature.fahrenheit(); };
  if (table.empty()) throw std::invalid_argument("water_at: the table is empty");
  detail::require_increasing(table, degrees, "water_at: temperatures must increase from row to row");

  if (temperature <= table.front().temperature) return table.front().water;
  if (temperature >= table.back().temperature) return table.back().water;

  const double x = temperature.fahrenheit();
  const std::size_t i = detail::row_before(table, degrees, x);
  const WaterPoint& cold = table[i];
  const WaterPoint& warm = table[i + 1];
  const auto between = [&](auto at_cold, auto at_warm) {
    return detail::on_line(x, degrees(cold), at_cold, degrees(warm), at_warm);
  };
  return {.weight = between(cold.water.weight, warm.water.weight),
          .viscosity = between(cold.water.viscosity, warm.water.viscosity)};
}

}  // namespace mainbore::hydraulics
