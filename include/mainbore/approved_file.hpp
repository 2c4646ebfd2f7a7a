// The file of approved fittings (approved.hpp), as JSON or as a table with the same columns.
//
//     {
//       "format": 1,
//       "name": "Ashby Vale approved fittings",
//       "edition": "2026-03",
//       "items": [
//         {"kind": "saddle", "main": ["ductile iron", "cast iron"], "od_from": "8.54 in", "od_to": "9.40 in", "size": "1 in",
//          "straps": 2, "torque": "50 ft-lbf", "rating": "200 psi", "length": "2 in", "stock": "41-117"},
//         {"kind": "stop", "size": "1 in", "thread": "AWWA taper", "rating": "150 psi", "length": "3.5 in", "stock": "12-004"}
//       ]
//     }
//
//     kind,main,od_from,od_to,size,thread,straps,torque,rating,length,diameter,stock,text
//     saddle,ductile iron|cast iron,8.54 in,9.40 in,1 in,,2,50 ft-lbf,200 psi,2 in,,41-117,
//
// A text that begins with "{" is JSON. Which columns an item must have, and which it may not, follows from its kind
// (`approved_columns`). Several materials stand in a list, in a cell with "|" between them. An empty cell is no value.
// Nothing is guessed: every fault is reported at once, with line, what is allowed and the nearest word.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "mainbore/approved.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"

namespace mainbore {

struct ApprovedFile {
  std::optional<ApprovedList> list;  // present exactly when there are no diagnostics
  std::vector<Diagnostic> diagnostics;
};

// Longest text read, in bytes, and most items.
inline constexpr std::size_t longest_approved = 4u << 20;
inline constexpr std::size_t most_approved_items = 10000;

// Never throws for anything in the text.
[[nodiscard]] ApprovedFile read_approved(std::string_view text, std::string_view file_name, const Catalog& catalog);

// One column: by kind whether an item must have it (R), may have it (O) or may not (-), in the order of ApprovedKind.
struct ApprovedColumn {
  std::string_view key;
  std::string_view use;
  std::string_view help;
};
[[nodiscard]] std::span<const ApprovedColumn> approved_columns();

// What the codes of its diagnostics mean.
[[nodiscard]] std::span<const DiagnosticText> approved_diagnostic_texts();

}  // namespace mainbore
