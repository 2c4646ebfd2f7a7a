// Many orders at once: a stream of them in, one record for each out, in their order, in constant memory.
//
// A record's bytes depend on its order alone (and on its place in the file, unless `rows` is off): not on the number of
// jobs, nor on the pieces the stream comes in.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "batch/first_bytes.hpp"
#include "batch/order_source.hpp"
#include "batch/piece.hpp"
#include "io/orders/columns_report.hpp"
#include "io/orders/keep_columns.hpp"
#include "io/orders/order_map.hpp"
#include "io/text/csv.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/settings.hpp"

namespace mainbore::batch {

enum class BatchFormat : std::uint8_t {
  verdicts,  // a line of JSON an order
  plans,     // the plan in one line of JSON an order
  table,     // a row of CSV an order
  features,  // a feature of GeoJSON an order, see io::append_verdict_feature; of features alone
  week,      // what a report of the week needs of each order: see Piece::week
};

struct BatchOptions {
  BatchFormat format = BatchFormat::verdicts;
  PlanScope scope = PlanScope::whole;  // of plans
  UnitSystem units = UnitSystem::us;
  bool rows = true;                       // records carry row and line
  bool name_files = false;                // records carry the file's name
  bool sheets = false;                    // of a week: each order's field sheet
  Language language = Language::english;  // of the sheets
  int orders_before = 0;                  // of files before this one, for the numbers of the sheets
  std::uint64_t rows_before = 0;          // of JSON: what came of the same stream before these bytes
  std::int64_t lines_before = 0;
  int jobs = 1;
  std::optional<char> delimiter;          // of a table; absent: found from its first line
  const io::OrderMap* map = nullptr;      // of a table; of members of JSON and properties of GeoJSON
  const io::KeepColumns* keep = nullptr;  // what records carry on
  const Settings* settings = nullptr;     // laid under every order
  FromSettings from_settings = {};        // what was taken for all of them already
  bool remember = true;                   // orders that say the same are judged once; records are the same either way
  // Told the columns that are kept, where the table or the names of --keep say them, before the first piece is given.
  std::function<void(std::span<const std::string>)> begin = {};
};

struct BatchResult {
  Tally tally;
  std::vector<Diagnostic> faults;  // of the header of a table, which then has no orders; of members that no order has
};

// What the columns of a table, or the members of orders, were read as; nothing is planned. Faults: as above, and then
// there is no report.
struct ColumnsResult {
  io::ColumnsReport report;
  std::vector<Diagnostic> faults;
};
[[nodiscard]] ColumnsResult look_at_columns(io::ByteSource bytes, InputFormat in, const std::string& file_name,
                                            const Catalog& catalog, const BatchOptions& options);

// Plans the orders of one stream. `give` gets the pieces in order: piece.out, or piece.week, and piece.tally.
[[nodiscard]] BatchResult plan_orders(io::ByteSource bytes, InputFormat in, const std::string& file_name,
                                      const Planner& planner, const BatchOptions& options,
                                      const std::function<void(Piece&)>& give);

}  // namespace mainbore::batch
