// A table of orders from its first byte: titles above the header, the header, and the rows that say anything.
//
// Exports of spreadsheets have titles above the header and empty rows below the last. The header is the first of the
// first rows in which every column is understood; behind the last row that says anything, rows of empty cells are none.
// Where cells are apart by semicolons and the map does not say, every number with decimals among the first rows decides
// whether they are written with a comma; memory is bounded.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "io/orders/keep_columns.hpp"
#include "io/orders/order_map.hpp"
#include "io/orders/order_table.hpp"
#include "io/text/csv.hpp"

namespace mainbore::io {

class TableRows {
 public:
  static constexpr std::size_t most_titles = 10;   // rows above the header
  static constexpr std::size_t rows_ahead = 1000;  // that decide on decimal commas; of a run of empty ones, those kept

  // What is passed by reference or pointer must outlive this. `map` and `keep` may be nullptr.
  TableRows(ByteSource bytes, CsvOptions options, const Catalog& catalog, const OrderMap* map,
            const std::string& file_name, const KeepColumns* keep = nullptr);

  // nullptr: the file is empty. With faults there are no rows.
  [[nodiscard]] OrderTable* table() { return table_ ? &*table_ : nullptr; }
  bool read(CsvRecord& record);

  [[nodiscard]] char delimiter() const { return reader_.delimiter(); }
  [[nodiscard]] std::size_t titles() const { return titles_; }

 private:
  void find_header(const Catalog& catalog, const OrderMap* map, const std::string& file_name, const KeepColumns* keep);
  void find_decimals();
  bool next(CsvRecord& record);

  CsvReader reader_;
  std::optional<OrderTable> table_;
  std::size_t titles_ = 0;
  std::vector<CsvRecord> ahead_;
  std::size_t taken_ = 0;        // of those
  std::vector<CsvRecord> held_;  // empty rows, and the one behind them
  std::size_t given_ = 0;        // of those
};

}  // namespace mainbore::io
