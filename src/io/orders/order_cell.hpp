// What one cell of a table of orders says, as the header and the map understand it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/orders/order_map.hpp"
#include "mainbore/catalog.hpp"

namespace mainbore::io {

// A column, as the header or a member of orders in JSON names it.
struct OrderColumn {
  std::string header;           // as the file writes it
  std::optional<FieldPath> to;  // absent: not read
  std::string unit;             // of bare numbers; may be empty
  const MappedColumn* mapped = nullptr;
  std::string name = {};  // the header, "SIZE#2" for the second of this name
};

struct CellReading {
  enum class Says : std::uint8_t { nothing, value, rejected };
  Says says = Says::nothing;
  FieldValue value;
  Problem problem;
  const std::vector<MapDefault>* also = nullptr;  // what a code of the map says beside the material
};

// What all cells of a table are read by.
struct CellContext {
  const Catalog& catalog;
  const OrderMap* map = nullptr;  // may be missing
  bool decimal_comma = false;
};

// A cell of a column that holds a fact (`to`).
[[nodiscard]] CellReading understand_cell(const CellContext& context, const OrderColumn& column, std::string_view cell);

// Longer cells are no words of a map, and no table says them over and over.
inline constexpr std::size_t longest_spelling = 64;

// For a wall that a plastic pipe cannot have.
inline constexpr std::string_view perhaps_ratio =
    "perhaps it is the dimension ratio: that belongs in main.class, as \"DR 13.5\"";

[[nodiscard]] constexpr bool is_free_text(const JobField& field) {
  return field.type == FieldType::text || field.type == FieldType::lines;
}

// Line breaks inside a cell for one line of text: an address written in two lines.
[[nodiscard]] std::string on_one_line(std::string_view text);

[[nodiscard]] bool has_control(std::string_view text);

}  // namespace mainbore::io
