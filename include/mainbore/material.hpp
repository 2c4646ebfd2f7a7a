// What a main is made of.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
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
    "ductile iron",      "cast iron",        "PVC",   "PVCO", "polyethylene", "asbestos cement", "steel",
    "concrete cylinder", "galvanized steel", "copper"};
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

// Some of the materials, each once, in the order in which they were named.
class MaterialList {
 public:
  constexpr MaterialList() = default;
  constexpr MaterialList(std::initializer_list<Material> materials) {
    for (const Material material : materials) push_back(material);
  }
  constexpr void push_back(Material material) {
    if (contains(material)) return;
    named_[count_++] = material;
    among_ |= bit(material);
  }
  [[nodiscard]] constexpr bool contains(Material material) const { return (among_ & bit(material)) != 0; }
  [[nodiscard]] constexpr bool empty() const { return count_ == 0; }
  [[nodiscard]] constexpr std::size_t size() const { return count_; }
  [[nodiscard]] constexpr const Material* begin() const { return named_.data(); }
  [[nodiscard]] constexpr const Material* end() const { return named_.data() + count_; }
  friend constexpr bool operator==(const MaterialList&, const MaterialList&) = default;

 private:
  static constexpr std::uint32_t bit(Material material) { return std::uint32_t{1} << static_cast<unsigned>(material); }
  std::array<Material, material_count> named_{};
  std::uint32_t count_ = 0;
  std::uint32_t among_ = 0;
};

// Softens with warmth: its pressure rating is derated, and a chain can squeeze it out of round.
[[nodiscard]] constexpr bool is_plastic(Material m) {
  return m == Material::pvc || m == Material::pvco || m == Material::polyethylene;
}
[[nodiscard]] constexpr bool is_iron(Material m) { return m == Material::ductile_iron || m == Material::cast_iron; }
// May carry stray or house current, and completes a circuit when a service is parted.
[[nodiscard]] constexpr bool is_metallic(Material m) {
  return m == Material::ductile_iron || m == Material::cast_iron || m == Material::steel ||
         m == Material::concrete_cylinder || m == Material::galvanized_steel || m == Material::copper;
}

}  // namespace mainbore
