// What a main is made of.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace mainbore {

enum class Material : std::uint8_t {
  ductile_iron,
  cast_iron,
  pvc,
  pvco,  // molecularly oriented PVC
  polyethylene,
  asbestos_cement,
  steel,
  concrete_cylinder,
  galvanized_steel,
  copper,
};

inline constexpr std::array<std::string_view, 10> material_names = {
    "ductile iron",    "cast iron", "PVC",               "PVCO",             "polyethylene",
    "asbestos cement", "steel",     "concrete cylinder", "galvanized steel", "copper"};
inline constexpr std::size_t material_count = material_names.size();

[[nodiscard]] constexpr std::string_view name_of(Material material) {
  return material_names[static_cast<std::size_t>(material)];
}
[[nodiscard]] constexpr std::optional<Material> material_named(std::string_view canonical) {
  for (std::size_t i = 0; i < material_count; ++i) {
    if (material_names[i] == canonical) return static_cast<Material>(i);
  }
  return std::nullopt;
}

// Softens with warmth: its pressure rating is derated, and a chain can squeeze it out of round.
[[nodiscard]] constexpr bool is_plastic(Material m) {
  return m == Material::pvc || m == Material::pvco || m == Material::polyethylene;
}
[[nodiscard]] constexpr bool is_iron(Material m) {
  return m == Material::ductile_iron || m == Material::cast_iron;
}
// May carry stray or house current, and completes a circuit when a service is parted.
[[nodiscard]] constexpr bool is_metallic(Material m) {
  return m == Material::ductile_iron || m == Material::cast_iron || m == Material::steel ||
         m == Material::concrete_cylinder || m == Material::galvanized_steel || m == Material::copper;
}

}  // namespace mainbore
