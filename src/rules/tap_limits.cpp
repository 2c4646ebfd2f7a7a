#include "rules/tap_limits.hpp"

#include <algorithm>

#include "units/tolerance.hpp"

namespace mainbore::rules {
namespace {

bool shares_class(const TapLimit& row, const Pipe& pipe) {
  return row.class_keys.empty() ||
         std::any_of(row.class_keys.begin(), row.class_keys.end(), [&](const std::string& key) {
           return std::find(pipe.class_keys.begin(), pipe.class_keys.end(), key) != pipe.class_keys.end();
         });
}

}  // namespace

bool fits(const TapLimit& row, const Pipe* pipe, std::optional<Length> measured_wall) {
  if (!row.series.empty() &&
      (pipe == nullptr || std::find(row.series.begin(), row.series.end(), pipe->series->id) == row.series.end())) {
    return false;
  }
  if (pipe != nullptr ? !shares_class(row, *pipe) : !row.class_keys.empty()) return false;
  if (!row.wall_from) return true;
  std::optional<Length> wall = pipe == nullptr ? std::nullopt : pipe->wall;
  if (measured_wall && (!wall || *measured_wall < *wall)) wall = measured_wall;
  return wall && !over(*row.wall_from, *wall);
}

const TapLimit* deciding_row(std::span<const TapLimit> rows, Material material, NominalSize size, const Pipe* pipe,
                             std::optional<Length> measured_wall) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const TapLimit& row) {
    return row.covers(material, size) && fits(row, pipe, measured_wall);
  });
  return found == rows.end() ? nullptr : &*found;
}

Ruling ruling(std::span<const TapLimit> rows, Material material, NominalSize size,
              std::span<const Pipe* const> candidates, std::optional<Length> measured_wall) {
  Ruling result;
  const auto ask = [&](const Pipe* pipe) {
    const TapLimit* const row = deciding_row(rows, material, size, pipe, measured_wall);
    if (row == nullptr) result.none = true;
    else if (result.row == nullptr || row->largest < result.row->largest) result.row = row;
  };
  for (const Pipe* const pipe : candidates) ask(pipe);
  if (candidates.empty()) ask(nullptr);
  return result;
}

}  // namespace mainbore::rules
