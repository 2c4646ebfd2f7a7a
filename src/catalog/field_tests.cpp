#include "mainbore/field_tests.hpp"

#include <simdjson.h>

#include <algorithm>
#include <string>

#include "mainbore/catalog_error.hpp"

namespace mainbore {
namespace {

constexpr std::string_view file_name = "field_tests.json";

[[noreturn]] void fault(std::string_view where, const std::string& what) {
  throw CatalogError(std::string(file_name) + ": " + std::string(where) + ": " + what);
}

simdjson::dom::object object_of(simdjson::dom::object parent, std::string_view key, std::string_view where) {
  simdjson::dom::object child;
  if (parent[key].get_object().get(child) != simdjson::SUCCESS) fault(where, "no object \"" + std::string(key) + '"');
  return child;
}

std::string_view text_of(simdjson::dom::element value, std::string_view where) {
  std::string_view text;
  if (value.get_string().get(text) != simdjson::SUCCESS) fault(where, "a text is wanted");
  return text;
}

Basis read_basis(simdjson::dom::object test, std::string_view where, const Catalog& catalog) {
  Basis basis;
  std::string_view source;
  std::string_view how;
  if (test["source"].get_string().get(source) == simdjson::SUCCESS) basis.source = catalog.source(source);
  if (basis.source == nullptr) fault(where, "no known source");
  if (test["how"].get_string().get(how) != simdjson::SUCCESS) fault(where, "no \"how\"");
  for (const How known : {How::published, How::derived, How::common_practice, How::memory}) {
    if (how != name_of(known)) continue;
    basis.how = known;
    return basis;
  }
  fault(where, "unknown how \"" + std::string(how) + '"');
}

// Calls `take` with each material and its value; every material must stand there once.
template <class Take>
Basis read_test(simdjson::dom::object document, std::string_view name, const Catalog& catalog, Take take) {
  const auto test = object_of(document, name, name);
  std::array<int, material_count> seen{};
  for (const auto& [key, value] : object_of(test, "materials", name)) {
    const auto material = material_named(key);
    if (!material) fault(name, "unknown material \"" + std::string(key) + '"');
    ++seen[static_cast<std::size_t>(*material)];
    take(*material, value);
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (seen[i] != 1) fault(name, std::string(material_names[i]) + " must stand there once");
  }
  return read_basis(test, name, catalog);
}

// The place of a word among the known ones.
std::size_t place_of(std::string_view word, std::span<const std::string_view> known, std::string_view where) {
  const auto found = std::find(known.begin(), known.end(), word);
  if (found == known.end()) fault(where, "unknown word \"" + std::string(word) + '"');
  return static_cast<std::size_t>(found - known.begin());
}

}  // namespace

FieldTests load_field_tests(const Catalog& catalog) {
  FieldTests tests;
  simdjson::dom::parser parser;
  simdjson::dom::object document;
  if (parser.parse(catalog.file(file_name)).get_object().get(document) != simdjson::SUCCESS) {
    fault("whole file", "not a JSON object");
  }
  const auto entry = [&](Material material) -> MaterialTests& {
    return tests.materials[static_cast<std::size_t>(material)];
  };
  tests.magnet_basis = read_test(document, "magnet", catalog, [&](Material material, simdjson::dom::element value) {
    constexpr std::array<std::string_view, 3> words = {"does not stick", "sticks", "either"};
    const std::size_t answer = place_of(text_of(value, "magnet"), words, "magnet");
    if (answer < 2) entry(material).magnet = answer == 1;
  });
  tests.sound_basis = read_test(document, "sound", catalog, [&](Material material, simdjson::dom::element value) {
    constexpr std::array<std::string_view, 3> words = {sound_names[0], sound_names[1], "either"};
    const std::size_t answer = place_of(text_of(value, "sound"), words, "sound");
    if (answer < 2) entry(material).sound = static_cast<Sound>(answer);
  });
  tests.joints_basis = read_test(document, "joints", catalog, [&](Material material, simdjson::dom::element value) {
    simdjson::dom::array styles;
    if (value.get_array().get(styles) != simdjson::SUCCESS) fault("joints", "a list is wanted");
    for (const auto style : styles) {
      entry(material).joints.push_back(
          static_cast<JointStyle>(place_of(text_of(style, "joints"), joint_style_names, "joints")));
    }
  });
  return tests;
}

}  // namespace mainbore
