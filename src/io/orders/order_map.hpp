// The map file: which column of a utility's own export is which fact of a job, written once.
//
//     {
//       "format": 1,
//       "name": "Ashby Vale Water District, asset register",
//       "columns": {
//         "WO_NO": "id",
//         "PIPE_SIZE": {"to": "main.size", "unit": "mm", "missing": [7]},
//         "PIPE_MATER": "main.material",
//         "PIPE_TYPE": "main.material",
//         "CATEGORY": {"to": "main.carries", "values": {"TREATED": "water", "UNTREATED": "raw water"}},
//         "LAID": {"to": "main.installed", "least": 1880}
//       },
//       "materials": {"CO": "copper", "PVC200": {"main.material": "PVC", "main.class": "SDR 21"}},
//       "missing": ["TBA"],
//       "defaults": {"main.pressure": "80 psi", "service.size": "1 in"}
//     }
//
// Column names match a header without regard to case, spaces, underscores, dots and hyphens. Of several columns for one
// fact, the first that says anything counts, in the order of the map. A default stands where no column says anything;
// it never covers up a cell that could not be read.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "io/job/job_fields.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"

namespace mainbore::io {

// The end of a range, and how the map writes it.
struct Bound {
  double value = 0.0;  // inches and other base units; a plain number for a whole number
  std::string text;
};

struct MappedColumn {
  std::string name;  // as the map writes it
  FieldPath to;
  std::string unit;                                        // of cells that are bare numbers
  std::vector<std::string> missing;                        // cell_key()s that say nothing here
  std::vector<std::pair<std::string, FieldValue>> values;  // cell_key() -> what it means
  std::optional<Bound> least;
  std::optional<Bound> greatest;
  bool optional = false;  // an export without the column is read all the same
};

struct MapDefault {
  FieldPath to;
  FieldValue value;
  std::string text;
};

// What one code of an export says: a material, and further facts where no column says them.
struct MaterialCode {
  Material material = Material::ductile_iron;
  std::vector<MapDefault> also;
};

struct OrderMap {
  std::string name;
  std::vector<MappedColumn> columns;
  std::vector<std::string> id;                                 // columns that make the id, joined by hyphens
  std::map<std::string, MaterialCode, std::less<>> materials;  // by normal_spelling()
  std::vector<std::string> missing;                            // cell_key()s that say nothing in any column
  std::vector<MapDefault> defaults;
  bool ignore_others = true;          // columns the map does not name
  std::optional<bool> decimal_comma;  // absent: found where cells are apart by semicolons
};

struct OrderMapFile {
  std::optional<OrderMap> map;  // present exactly when there are no diagnostics
  std::vector<Diagnostic> diagnostics;
};

inline constexpr std::size_t longest_map = 1u << 20;

// Never throws for anything in the text. All faults are reported at once, up to most_diagnostics.
[[nodiscard]] OrderMapFile read_order_map(std::string_view text, std::string_view file_name, const Catalog& catalog);

// How cells compare with the words of a map: without the space round them, in lower case; numbers by their value, so
// that "7.00" is "7".
[[nodiscard]] std::string cell_key(std::string_view cell);

// "150" with the unit "mm" is "150 mm"; a cell that is no bare number, such as "DN 150" or 6", stays as it is.
[[nodiscard]] std::string with_unit(std::string_view cell, std::string_view unit);

// The number of a quantity, a size or a whole number that ranges are checked on.
[[nodiscard]] std::optional<double> number_in(const FieldValue& value);

}  // namespace mainbore::io
