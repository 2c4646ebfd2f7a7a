#include "rules/tap_limits.hpp"

#include <algorithm>
#include <utility>

#include "units/tolerance.hpp"

namespace mainbore::rules {
namespace {

bool shares_class(const TapLimit& row, const Pipe& pipe) {
  return row.classes.empty() || std::binary_search(row.pipes.begin(), row.pipes.end(), &pipe);
}

// Sizes in steps of an inch; all of the last step's and larger stand together.
constexpr std::size_t size_steps = 66;
std::size_t step_of(NominalSize size) {
  return static_cast<std::size_t>(std::clamp(size.number(), 0.0, static_cast<double>(size_steps - 1)));
}

bool may_cover(const TapLimit& row, std::size_t step) {
  const auto low = static_cast<double>(step);
  const bool last = step + 1 == size_steps;
  const auto starts_beyond = [&](const std::optional<NominalSize>& from) {
    return from && !last && from->number() >= low + 1.0;
  };
  const auto ends_before = [&](const std::optional<NominalSize>& to) { return to && to->number() < low; };
  return !starts_beyond(row.main_from) && !starts_beyond(row.main_above) && !ends_before(row.main_to) &&
         !ends_before(row.main_below);
}

}  // namespace

bool fits(const TapLimit& row, const Pipe* pipe, std::optional<Length> measured_wall) {
  if (!row.series.empty() &&
      (pipe == nullptr || std::find(row.series.begin(), row.series.end(), pipe->series->id) == row.series.end())) {
    return false;
  }
  if (pipe != nullptr ? !shares_class(row, *pipe) : !row.classes.empty()) return false;
  if (!row.wall_from) return true;
  // Asked of the nominal wall: a reading within the casting tolerance makes no other class of the pipe.
  const std::optional<Length> wall = pipe != nullptr && pipe->wall ? pipe->wall : measured_wall;
  return wall && !over(*row.wall_from, *wall);
}

const TapLimit* deciding_row(const TapLimits& rows, Material material, NominalSize size, const Pipe* pipe,
                             std::optional<Length> measured_wall) {
  for (const std::uint32_t place : rows.near(material, size)) {
    const TapLimit& row = rows[place];
    if (row.covers(material, size) && fits(row, pipe, measured_wall)) return &row;
  }
  return nullptr;
}

const TapLimit* lowest_cap(const MainInQuestion& main, const TapLimits& caps) {
  const TapLimit* lowest = nullptr;
  for (const std::uint32_t place : caps.near(main.material, main.size)) {
    const TapLimit& row = caps[place];
    if (!row.covers(main.material, main.size) || (lowest != nullptr && row.largest >= lowest->largest)) continue;
    // Of a main that the catalogue does not list, any class, series or wall may be the one meant.
    const bool meant = main.candidates.empty() ||
                       std::any_of(main.candidates.begin(), main.candidates.end(), [&](const Pipe* pipe) {
                         return fits(row, pipe, std::nullopt);
                       });
    if (meant) lowest = &row;
  }
  return lowest;
}

Ruling ruling(const MainInQuestion& main, const MethodLists& lists) {
  Ruling result;
  const auto ask_consent = [&](const TapLimit& row, const Pipe* pipe) {
    if (result.by_consent != nullptr || !row.basis.utility || row.largest == NominalSize()) return;
    const TapLimit* const usual = deciding_row(lists.by_default, main.material, main.size, pipe, main.measured_wall);
    const bool closed = usual == nullptr || usual->largest == NominalSize();
    if (!closed && row.consent.empty()) return;
    result.by_consent = &row;
    result.opened = closed;
    result.closed_by = closed ? usual : nullptr;
  };
  const auto ask = [&](const Pipe* pipe) {
    const TapLimit* const row = deciding_row(lists.permissions, main.material, main.size, pipe, main.measured_wall);
    if (row == nullptr) {
      result.none = true;
      return;
    }
    if (result.permission == nullptr || row->largest < result.permission->largest) result.permission = row;
    ask_consent(*row, pipe);
  };
  for (const Pipe* const pipe : main.candidates) ask(pipe);
  if (main.candidates.empty()) ask(nullptr);
  for (const TapLimits* const caps : lists.caps) {
    const TapLimit* const cap = lowest_cap(main, *caps);
    if (cap != nullptr && (result.cap == nullptr || cap->largest < result.cap->largest)) result.cap = cap;
  }
  return result;
}

}  // namespace mainbore::rules

namespace mainbore {

TapLimits::TapLimits(std::vector<TapLimit> rows) : rows_(std::move(rows)) {
  if (rows_.empty()) return;
  starts_.reserve(material_count * rules::size_steps + 1);
  for (std::size_t m = 0; m < material_count; ++m) {
    for (std::size_t step = 0; step < rules::size_steps; ++step) {
      starts_.push_back(static_cast<std::uint32_t>(places_.size()));
      for (std::size_t i = 0; i < rows_.size(); ++i) {
        const MaterialList& materials = rows_[i].materials;
        const bool of_it = materials.empty() || materials.contains(static_cast<Material>(m));
        if (of_it && rules::may_cover(rows_[i], step)) places_.push_back(static_cast<std::uint32_t>(i));
      }
    }
  }
  starts_.push_back(static_cast<std::uint32_t>(places_.size()));
}

std::span<const std::uint32_t> TapLimits::near(Material material, NominalSize size) const {
  if (rows_.empty()) return {};
  const std::size_t at = static_cast<std::size_t>(material) * rules::size_steps + rules::step_of(size);
  return {places_.begin() + starts_[at], places_.begin() + starts_[at + 1]};
}

}  // namespace mainbore
