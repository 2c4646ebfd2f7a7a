// What simple tests on a bare pipe say of its material: magnet, hammer, joints.
//
// Read from data/field_tests.json. Only the magnet rules a material out; sound and joints are hints, because water,
// film and earth dull a ring, and repairs put foreign joints on any pipe.
//
//     const FieldTests tests = load_field_tests(Catalog::builtin());
//     tests.of(Material::pvc).magnet      // false: it does not stick
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/material.hpp"

namespace mainbore {

enum class Sound : std::uint8_t { ring, dull };
inline constexpr std::array<std::string_view, 2> sound_names = {"ring", "dull"};
[[nodiscard]] constexpr std::string_view name_of(Sound sound) { return sound_names[static_cast<std::size_t>(sound)]; }

enum class JointStyle : std::uint8_t {
  push_on,
  mechanical,
  flanged,
  caulked_bell,
  mortared_bell,
  sleeve_coupling,
  threaded,
  welded,
  fused,
  solvent_cement,
  soldered
};
inline constexpr std::array<std::string_view, 11> joint_style_names = {
    "push-on",  "mechanical", "flanged", "caulked bell",   "mortared bell", "sleeve coupling",
    "threaded", "welded",     "fused",   "solvent cement", "soldered"};
[[nodiscard]] constexpr std::string_view name_of(JointStyle style) {
  return joint_style_names[static_cast<std::size_t>(style)];
}

struct MaterialTests {
  std::optional<bool> magnet;      // sticks; absent: either may be
  std::optional<Sound> sound;      // absent: either may be
  std::vector<JointStyle> joints;  // usual ones
};

struct FieldTests {
  std::array<MaterialTests, material_count> materials;
  Basis magnet_basis;
  Basis sound_basis;
  Basis joints_basis;

  [[nodiscard]] const MaterialTests& of(Material material) const {
    return materials[static_cast<std::size_t>(material)];
  }
};

// Throws CatalogError when the file is missing, leaves a material out or says something unknown. The bases point into
// the catalog, which must outlive them.
[[nodiscard]] FieldTests load_field_tests(const Catalog& catalog);

}  // namespace mainbore
