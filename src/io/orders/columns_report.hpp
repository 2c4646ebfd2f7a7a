// What was understood of a table of orders, column by column, before anything is planned.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "io/orders/order_table.hpp"
#include "io/orders/table_rows.hpp"
#include "io/text/csv.hpp"

namespace mainbore::io {

// Of several columns for one fact, a later one counts only in the rows where the earlier ones say nothing.
struct ColumnReport {
  std::string header;
  std::string path;            // "main.size"; "id" for each column of the id
  std::string unit;            // of bare numbers; may be empty
  std::uint64_t values = 0;    // rows in which the column says something that was understood
  std::uint64_t missing = 0;   // in which it says nothing
  std::uint64_t rejected = 0;  // in which it says something that was not
  struct Example {
    std::string cell;
    std::string meaning;
  };
  std::vector<Example> examples;  // of values that were understood, the first few that differ
  std::string least;              // of sizes, quantities and years, as a job has them
  std::string greatest;
};

struct Count {
  std::string text;
  std::uint64_t rows = 0;
};

// A value that was not understood.
struct ValueCount {
  std::size_t column = 0;  // in the report
  std::string cell;
  std::uint64_t rows = 0;
};

struct ColumnsReport {
  std::string file;
  std::string map;             // its name; empty without one
  char delimiter = '\0';       // of a table
  std::size_t titles = 0;      // rows above the header
  bool decimal_comma = false;  // found, not said by the map
  std::uint64_t rows = 0;
  std::uint64_t readable = 0;      // rows that make a job
  std::uint64_t with_remarks = 0;  // of these, rows of which something was rejected
  std::vector<ColumnReport> columns;
  std::vector<std::string> not_read;
  std::vector<std::string> defaults;        // "main.pressure = 80 psi"
  std::vector<Count> unreadable;            // reasons, most frequent first
  std::vector<Count> rejected;              // reasons of remarks, most frequent first
  std::vector<ValueCount> values_rejected;  // column by column, most frequent first
  std::uint64_t values_not_counted = 0;     // rows with others, of more different ones than are counted
  std::vector<std::string> hints;           // what looks wrong on the whole: sizes in another unit
};

// Counts what orders say, one after the other.
class ColumnsCounter {
 public:
  // `table` reads the orders, must have no faults, and must outlive this. Columns may come to it on the way.
  explicit ColumnsCounter(OrderTable& table);
  ~ColumnsCounter();
  ColumnsCounter(const ColumnsCounter&) = delete;
  ColumnsCounter& operator=(const ColumnsCounter&) = delete;
  // `record` as the table has read it, nullptr where its cells cannot be trusted.
  void add(const CsvRecord* record, const OrderRecord& order);
  [[nodiscard]] ColumnsReport finish() &&;

 private:
  class Reporter;
  std::unique_ptr<Reporter> reporter_;
};

// Reads the table, which must have no faults, to its end.
[[nodiscard]] ColumnsReport report_columns(TableRows& rows);

// The report in lines of at most 100 characters. `all`: with every value that was not understood.
[[nodiscard]] std::string format_columns_report(const ColumnsReport& report, bool all = false);

}  // namespace mainbore::io
