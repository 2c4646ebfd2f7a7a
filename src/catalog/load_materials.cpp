#include <utility>

#include "catalog/load_tables.hpp"
#include "catalog/table_reader.hpp"
#include "mainbore/measure.hpp"

namespace mainbore::tables {
namespace {

constexpr Limits strength_limits{100, 500000, "psi"};
constexpr Limits modulus_limits{10000, 100000000, "psi"};

class MaterialTables : public TableReader {
 public:
  using TableReader::TableReader;

  void read_materials(object file, Materials& materials) {
    std::array<bool, material_count> seen{};
    for (const auto& [name, value] : file) {
      enter("material " + quoted(name));
      const auto material = material_named(name);
      if (!material) fault("a main is not made of it");
      if (std::exchange(seen[static_cast<std::size_t>(*material)], true)) fault("it stands twice");
      const object facts = as_object(value, "the entry");
      only(facts, {"metallic", "conducts", "tensile", "shear", "modulus"});
      MaterialFacts& into = materials[static_cast<std::size_t>(*material)];
      into.tensile_strength = stress(facts, "tensile", strength_limits, into.basis);
      into.shear_strength = stress(facts, "shear", strength_limits, into.basis);
      into.modulus = stress(facts, "modulus", modulus_limits, into.basis);
    }
    enter("");
    for (std::size_t i = 0; i < material_count; ++i) {
      if (!seen[i]) fault("no material " + quoted(material_names[i]));
    }
  }

  void read_stop_material(object file, MaterialFacts& into) {
    only(file, {"cast leaded brass"});
    const object facts = table_in(file, "cast leaded brass");
    only(facts, {"shear"});
    into.shear_strength = stress(facts, "shear", strength_limits, into.basis);
    if (!into.shear_strength) fault("cast leaded brass has no shear strength");
  }

  void read_temperature_factors(object file, Materials& materials) {
    for (const auto& [name, value] : file) {
      enter("temperature factors of " + quoted(name));
      const auto material = material_named(name);
      if (!material) fault("a main is not made of it");
      const object table = as_object(value, "the table");
      only(table, {"title", "below", "above", "between", "source", "how", "columns", "rows", "note"});
      std::size_t count = 0;
      const auto at = columns_of(table, std::array<std::string_view, 2>{"degF", "factor"}, 2, count);
      MaterialFacts& facts = materials[static_cast<std::size_t>(*material)];
      if (!facts.temperature_factors.empty()) fault("the table stands twice");
      facts.temperature_basis = basis_of(table);
      each_row(table, count, [&](const Cells& cells) {
        const CurvePoint point{number_within(cells[at[0]], {32, 250, "degF"}, "degF"),
                               number_within(cells[at[1]], {0.01, 1}, "factor")};
        const auto& before = facts.temperature_factors;
        if (!before.empty() && (point.x <= before.back().x || point.y > before.back().y)) {
          fault("temperatures must rise and factors fall from row to row");
        }
        facts.temperature_factors.push_back(point);
      });
      if (facts.temperature_factors.empty()) fault("no rows");
    }
    enter("");
    for (std::size_t i = 0; i < material_count; ++i) {
      if (is_plastic(static_cast<Material>(i)) && materials[i].temperature_factors.empty()) {
        fault("no temperature factors of " + quoted(material_names[i]) + ": without them it would be rated as if cold");
      }
    }
  }

 private:
  std::optional<Pressure> stress(object facts, std::string_view key, Limits limits, Basis& weakest) const {
    const element value = member(facts, key);
    if (value.is_null()) return std::nullopt;
    const object given = as_object(value, key);
    only(given, {"value", "unit", "source", "how", "note"});
    const double number = as_number(member(given, "value"), key);
    const ParsedMeasure read = parse_measure(number, text_member(given, "unit"), Kind::pressure);
    if (!read) fault(std::string(key) + " is not a stress with its unit");
    within(read.value.base(), limits, key);
    weakest = weaker(weakest, basis_of(given));
    return read.value.as<Pressure>();
  }
};

}  // namespace

void load_materials(TableFiles& at, object file, Materials& materials) {
  MaterialTables(at).read_materials(file, materials);
}

void load_temperature_factors(TableFiles& at, object file, Materials& materials) {
  MaterialTables(at).read_temperature_factors(file, materials);
}

void load_stop_material(TableFiles& at, object file, MaterialFacts& stop) {
  MaterialTables(at).read_stop_material(file, stop);
}

}  // namespace mainbore::tables
