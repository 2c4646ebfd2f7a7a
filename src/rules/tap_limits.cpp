#include "rules/tap_limits.hpp"

#include <algorithm>
#include <utility>

#include "units/tolerance.hpp"

namespace mainbore::rules {
namespace {

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

Match match_any(const MainFilter& row, const MainInQuestion& main, AsksOf* open) {
  if (main.candidates.empty()) return match(row, nullptr, main.known, open);
  Match least = Match::yes;
  Match most = Match::no;
  AsksOf asks = AsksOf::pipe_class;  // where the pipes it may be differ
  for (const Pipe* const pipe : main.candidates) {
    const Match one = match(row, pipe, main.known, &asks);
    least = std::min(least, one);
    most = std::max(most, one);
  }
  if (least == most && most != Match::perhaps) return most;
  if (open != nullptr) *open = asks;
  return Match::perhaps;
}

Deciding deciding_row(const TapLimits& rows, Material material, NominalSize size, const Pipe* pipe,
                      const KnownOfMain& known) {
  Deciding result;
  for (const std::uint32_t place : rows.near(material, size)) {
    const TapLimit& row = rows[place];
    if (!row.covers(material, size)) continue;
    result.of_any_pipe = result.of_any_pipe && !asks_of_pipe(row);
    AsksOf asks{};
    const Match fits = match(row, pipe, known, &asks);
    if (fits == Match::no) continue;
    if (result.row == nullptr || row.largest < result.row->largest) result.row = &row;
    if (result.consent == nullptr && !row.consent.empty()) result.consent = &row;
    if (fits == Match::yes) return result;
    if (result.open == nullptr) {
      result.open = &row;
      result.asks = asks;
    }
  }
  result.row = nullptr;
  return result;
}

Cap lowest_cap(const MainInQuestion& main, const TapLimits& caps, Above above) {
  Cap lowest;
  for (const std::uint32_t place : caps.near(main.material, main.size)) {
    const TapLimit& row = caps[place];
    if (row.consent.empty() != (above == Above::none)) continue;
    if (!row.covers(main.material, main.size) || (lowest.row != nullptr && row.largest >= lowest.row->largest))
      continue;
    AsksOf asks{};
    const Match fits = match_any(row, main, &asks);
    if (fits == Match::no) continue;
    lowest.row = &row;
    lowest.asks = fits == Match::perhaps ? std::optional(asks) : std::nullopt;
  }
  return lowest;
}

Ruling ruling(const MainInQuestion& main, const MethodLists& lists) {
  Ruling result;
  bool of_any_pipe = true;
  const auto ask_consent = [&](const TapLimit& row, const Pipe* pipe) {
    if (result.by_consent != nullptr || !row.basis.utility || row.largest == NominalSize()) return;
    const Deciding by_default = deciding_row(lists.by_default, main.material, main.size, pipe, main.known);
    of_any_pipe = of_any_pipe && by_default.of_any_pipe;
    const TapLimit* const usual = by_default.row;
    const bool closed = usual == nullptr || usual->largest == NominalSize();
    if (!closed && row.consent.empty()) return;
    result.by_consent = &row;
    result.opened = closed;
    result.closed_by = closed ? usual : nullptr;
  };
  const auto ask = [&](const Pipe* pipe) {
    const Deciding decided = deciding_row(lists.permissions, main.material, main.size, pipe, main.known);
    of_any_pipe = of_any_pipe && decided.of_any_pipe;
    if (decided.open != nullptr && result.open == nullptr) {
      result.open = decided.open;
      result.asks = decided.asks;
    }
    if (decided.row == nullptr) {
      result.none = true;
      return;
    }
    if (result.permission == nullptr || decided.row->largest < result.permission->largest) {
      result.permission = decided.row;
    }
    if (decided.consent != nullptr) ask_consent(*decided.consent, pipe);
    ask_consent(*decided.row, pipe);
  };
  // Most rows ask for material and size alone: then one pipe says it for all, in a fifth of the time.
  for (const Pipe* const pipe : main.candidates) {
    ask(pipe);
    if (of_any_pipe) break;
  }
  if (main.candidates.empty()) ask(nullptr);
  for (const TapLimits* const caps : lists.caps) {
    const auto take = [&](Cap& least, const Cap& cap) {
      if (cap.row != nullptr && (least.row == nullptr || cap.row->largest < least.row->largest)) least = cap;
    };
    take(result.cap, lowest_cap(main, *caps, Above::none));
    take(result.consent_cap, lowest_cap(main, *caps, Above::by_consent));
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
