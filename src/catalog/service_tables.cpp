#include "mainbore/service_tables.hpp"

#include <algorithm>

namespace mainbore {

const TubeSize* ServiceTables::tube(Tubing tubing, NominalSize size) const {
  const auto sizes = tubes_of(tubing);
  const auto found = std::find_if(sizes.begin(), sizes.end(), [&](const TubeSize& tube) { return tube.size == size; });
  return found == sizes.end() ? nullptr : &*found;
}

const MeterSize* ServiceTables::meter(NominalSize size) const {
  const auto found =
      std::find_if(meters.begin(), meters.end(), [&](const MeterSize& meter) { return meter.size == size; });
  return found == meters.end() ? nullptr : &*found;
}

std::span<const FixtureRow> ServiceTables::fixtures_beginning(PlumbingCode code, char first) const {
  const auto& from = fixtures_from[static_cast<std::size_t>(code)];
  const auto letter = static_cast<unsigned char>(first);
  if (letter + 1u >= from.size()) return {};
  return std::span(fixtures).subspan(from[letter], static_cast<std::size_t>(from[letter + 1u] - from[letter]));
}

std::optional<Length> ServiceTables::equivalent_length(LineFitting fitting, NominalSize size) const {
  const std::vector<SizedLength>& rows = fittings[static_cast<std::size_t>(fitting)];
  for (const SizedLength& row : rows) {
    if (row.size >= size) return row.length;
  }
  if (rows.empty()) return std::nullopt;
  return (size.number() / rows.back().size.number()) * rows.back().length;
}

std::string_view ServiceTables::color_of(std::string_view word) const {
  const auto found = std::find_if(colors.begin(), colors.end(), [&](const LocateColor& color) {
    return color.meaning.find(word) != std::string::npos;
  });
  return found == colors.end() ? std::string_view() : std::string_view(found->color);
}

}  // namespace mainbore
