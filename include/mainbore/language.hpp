// The language of what people read, and whom words are for. Codes, paths, JSON and file formats are the same in every language.
//
//     text_report(plan, {.language = Language::spanish});
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "mainbore/measure.hpp"

namespace mainbore {

enum class Language : std::uint8_t { english, spanish };

// As ISO 639-1 has them.
inline constexpr std::array<std::string_view, 2> language_codes = {"en", "es"};
[[nodiscard]] constexpr std::string_view name_of(Language language) {
  return language_codes[static_cast<std::size_t>(language)];
}
[[nodiscard]] constexpr std::optional<Language> language_named(std::string_view code) {
  for (std::size_t i = 0; i < language_codes.size(); ++i) {
    if (language_codes[i] == code) return static_cast<Language>(i);
  }
  return std::nullopt;
}

// Whom words are for: the units and the language they read. Where only units are given, English.
struct Audience {
  UnitSystem units = UnitSystem::us;
  Language language = Language::english;

  constexpr Audience() = default;
  constexpr Audience(UnitSystem read, Language spoken = Language::english)
      : units(read), language(spoken) {}                   // NOLINT implicit by design
  constexpr operator UnitSystem() const { return units; }  // NOLINT
};

}  // namespace mainbore
