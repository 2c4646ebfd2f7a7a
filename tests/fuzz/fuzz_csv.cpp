// Any bytes at all as a table of orders: no crash, every record accounted for, the same whatever pieces it arrives in.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <string>
#include <string_view>

#include "io/orders/columns_report.hpp"
#include "io/orders/order_table.hpp"
#include "io/orders/table_rows.hpp"
#include "io/text/csv.hpp"
#include "mainbore/catalog.hpp"

namespace {

using namespace mainbore;

void require(bool holds) {
  if (!holds) std::abort();
}

io::ByteSource source_of(std::string_view text, std::size_t piece) {
  return [text, piece](char* to, std::size_t room) mutable {
    const std::size_t size = std::min({text.size(), room, piece});
    if (size > 0) std::memcpy(to, text.data(), size);
    text.remove_prefix(size);
    return size;
  };
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::size_t piece = 1 + data[0] % 32;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  io::CsvOptions options;
  options.longest_record = 512;

  io::CsvReader whole(source_of(text, text.size() + 1), options);
  io::CsvReader pieces(source_of(text, piece), options);
  io::CsvRecord one;
  io::CsvRecord other;
  std::uint64_t rows = 0;
  while (whole.read(one)) {
    require(pieces.read(other));
    require(one.text.substr(0, 200) == other.text.substr(0, 200) || one.fault);
    require(one.cells.size() == other.cells.size());
    require(one.row == rows && other.row == rows && one.line == other.line);
    require(one.fault.has_value() == other.fault.has_value());
    require(!one.fault || one.cells.empty());
    for (std::size_t i = 0; i < one.cells.size(); ++i) require(one.cell(i) == other.cell(i));
    ++rows;
  }
  require(!pieces.read(other));

  io::CsvReader reader(source_of(text, piece), options);
  if (!reader.read(one)) return 0;
  io::OrderTable table(Catalog::builtin(), nullptr, "orders.csv", one);
  OrderRecord order;
  for (std::uint64_t row = 1; reader.read(one); ++row) {
    table.read(one, order);
    require(order.row == row);
    require(order.job.has_value() == order.diagnostics.empty());
    for (const Diagnostic& told : order.diagnostics) require(!format_diagnostic(told).empty());
  }
  io::TableRows whole_table(source_of(text, piece), options, Catalog::builtin(), nullptr, "orders.csv");
  if (whole_table.table() != nullptr && whole_table.table()->faults().empty()) {
    const io::ColumnsReport report = io::report_columns(whole_table);
    require(report.rows < rows);  // the header at least is none
    require(!io::format_columns_report(report).empty());
  }
  return 0;
}
