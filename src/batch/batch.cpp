#include "batch/batch.hpp"

#include <memory>
#include <mutex>
#include <utility>

#include "batch/order_planner.hpp"
#include "batch/pipeline.hpp"
#include "io/orders/order_members.hpp"
#include "io/orders/table_rows.hpp"

namespace mainbore::batch {
namespace {

std::unique_ptr<OrderSource> source_of(io::ByteSource bytes, InputFormat in) {
  if (in == InputFormat::geojson) return feature_source(std::move(bytes));
  return in == InputFormat::ndjson ? line_source(std::move(bytes)) : json_source(std::move(bytes));
}

io::TableRows open_table(io::ByteSource bytes, const std::string& file_name, const Catalog& catalog,
                         const BatchOptions& options) {
  io::CsvOptions csv;
  csv.delimiter = options.delimiter;
  return {std::move(bytes), csv, catalog, options.map, file_name, options.keep};
}

std::vector<std::string> kept_of(const io::OrderTable& table) {
  std::vector<std::string> names;
  for (const std::size_t column : table.kept_columns()) names.push_back(table.columns()[column].name);
  return names;
}

// Where the bytes are a later part of a stream, its orders go on counting.
void count_on(Piece& piece, const BatchOptions& options) {
  if (options.rows_before == 0 && options.lines_before == 0) return;
  for (OrderText& text : piece.texts) {
    text.row += options.rows_before;
    text.line += options.lines_before;
    text.first_line += options.lines_before;
    if (text.unread_to > 0) text.unread_to += options.lines_before;
  }
}

}  // namespace

BatchResult plan_orders(io::ByteSource bytes, InputFormat in, const std::string& file_name, const Planner& planner,
                        const BatchOptions& options, const std::function<void(Piece&)>& give) {
  BatchResult result;
  std::optional<io::TableRows> rows;
  std::unique_ptr<OrderSource> source;
  std::vector<std::string> kept;
  if (in == InputFormat::csv) {
    rows.emplace(open_table(std::move(bytes), file_name, planner.catalog(), options));
    if (rows->table() == nullptr) return result;
    result.faults = rows->table()->faults();
    if (!result.faults.empty()) return result;
    source = table_source(*rows);
    kept = kept_of(*rows->table());
  } else {
    source = source_of(std::move(bytes), in);
    if (options.keep != nullptr) kept = options.keep->names;
  }
  if (options.begin) options.begin(kept);
  std::mutex mutex;
  std::vector<std::shared_ptr<OrderPlanner>> planners;
  const auto make_work = [&]() -> Work {
    const auto orders =
        std::make_shared<OrderPlanner>(planner, options, file_name, in, rows ? rows->table() : nullptr, kept);
    const std::scoped_lock lock(mutex);
    planners.push_back(orders);
    return [orders](Piece& piece) { orders->plan(piece); };
  };
  run_in_order(
      options.jobs,
      [&](Piece& piece) {
        const bool any = source->take(piece);
        count_on(piece, options);
        return any;
      },
      make_work,
      [&](Piece& piece) {
        result.tally += piece.tally;
        give(piece);
      });
  io::MemberRows::Met met;
  for (const auto& orders : planners) met.add(orders->met());
  result.faults = io::never_met(met, options.map, options.keep, file_name);
  return result;
}

ColumnsResult look_at_columns(io::ByteSource bytes, InputFormat in, const std::string& file_name,
                              const Catalog& catalog, const BatchOptions& options) {
  ColumnsResult result;
  if (in == InputFormat::csv) {
    io::TableRows rows = open_table(std::move(bytes), file_name, catalog, options);
    if (rows.table() == nullptr) return result;
    result.faults = rows.table()->faults();
    if (result.faults.empty()) result.report = io::report_columns(rows);
    return result;
  }
  const std::unique_ptr<OrderSource> source = source_of(std::move(bytes), in);
  io::MemberRows rows(catalog, options.map, file_name, options.keep, in == InputFormat::geojson, false);
  io::ColumnsCounter counter(rows.table());
  OrderRecord order;
  for (Piece piece; source->take(piece); piece.clear()) {
    for (const OrderText& text : piece.texts) {
      rows.read(std::string_view(piece.bytes).substr(text.begin, text.size), text.first_line, order);
      counter.add(rows.is_row() && !text.broken ? &rows.record() : nullptr, order);
    }
  }
  result.report = std::move(counter).finish();
  result.report.not_read = rows.not_read();
  result.faults = io::never_met(rows.met(), options.map, options.keep, file_name);
  return result;
}

}  // namespace mainbore::batch
