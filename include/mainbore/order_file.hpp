// Orders: many jobs in one file, one record out for each record in.
//
// A table of orders (CSV, RFC 4180) has a header and a row for each order. Its columns are the paths of a job, with the
// unit in the header where the cells have none, or a map file says once which column is which:
//
//     id,main.material,main.size,main.pressure [psi],service.size
//     AV-1041,ductile iron,8 in,82,1 in
//
// Nothing is guessed. A cell that cannot be read is rejected, never repaired. Where the fact is one that a plan can do
// without, the order stands without it and carries a remark; where it is required, the order cannot be read and says
// all of why. docs/orders.md has the whole of it.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/diagnostic.hpp"
#include "mainbore/job.hpp"

namespace mainbore {

// A column of an order that its record carries on, where it was asked for. The views last until the next order is read.
struct KeptColumn {
  std::string_view name;   // as the input writes it
  std::string_view value;  // a cell's text; of orders in JSON the value as it stands in the file
  bool is_json = false;
  bool given = true;  // false: this order does not have it
};

struct OrderRecord {
  std::uint64_t row = 0;                // from 1, the header not counted
  std::int64_t line = 0;                // where it begins in the file, from 1
  std::string id;                       // the work order, wherever it could be read
  std::optional<Job> job;               // present exactly when there are no diagnostics
  std::vector<Diagnostic> diagnostics;  // why it cannot be read
  std::vector<Diagnostic> remarks;      // what was rejected; the job stands without it
  std::vector<KeptColumn> kept;
};

// What the codes "csv.*", "map.*" and "order.*" mean.
[[nodiscard]] std::span<const DiagnosticText> order_diagnostic_texts();

}  // namespace mainbore
