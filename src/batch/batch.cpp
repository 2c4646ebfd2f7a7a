#include "batch/batch.hpp"

#include <memory>
#include <utility>

#include "batch/order_planner.hpp"
#include "batch/pipeline.hpp"
#include "io/order_table.hpp"

namespace mainbore::batch {

InputFormat format_of(std::string_view first_bytes) {
  if (first_bytes.starts_with("\xEF\xBB\xBF")) first_bytes.remove_prefix(3);
  const std::size_t first = first_bytes.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return InputFormat::csv;
  if (first_bytes[first] == '[') return InputFormat::json;
  if (first_bytes[first] != '{') return InputFormat::csv;
  // Behind a brace that ends its line comes an order of several lines.
  const std::string_view behind = first_bytes.substr(first + 1);
  return behind.starts_with('\n') || behind.starts_with('\r') ? InputFormat::json : InputFormat::ndjson;
}

BatchResult plan_orders(io::ByteSource bytes, InputFormat in, const std::string& file_name, const Catalog& catalog,
                        const Rules& rules, const BatchOptions& options, const std::function<void(Piece&)>& give) {
  BatchResult result;
  std::optional<io::CsvReader> rows;
  std::optional<io::OrderTable> table;
  std::unique_ptr<OrderSource> source;
  if (in == InputFormat::csv) {
    io::CsvOptions csv;
    csv.delimiter = options.delimiter;
    rows.emplace(std::move(bytes), csv);
    io::CsvRecord header;
    if (!rows->read(header)) return result;
    table.emplace(catalog, options.map, file_name, header);
    result.faults = table->faults();
    if (!result.faults.empty()) return result;
    source = table_source(*rows);
  } else {
    source = in == InputFormat::ndjson ? line_source(std::move(bytes)) : json_source(std::move(bytes));
  }
  const auto make_work = [&]() -> Work {
    const auto planner =
        std::make_shared<OrderPlanner>(catalog, rules, options, file_name, table ? &*table : nullptr);
    return [planner](Piece& piece) { planner->plan(piece); };
  };
  run_in_order(
      options.jobs, [&](Piece& piece) { return source->take(piece); }, make_work,
      [&](Piece& piece) {
        result.tally += piece.tally;
        give(piece);
      });
  return result;
}

}  // namespace mainbore::batch
