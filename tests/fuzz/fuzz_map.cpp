// Any bytes at all as a map file: a map or diagnostics, never both, never neither; and a map that reads can be used.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <string>
#include <string_view>

#include "io/orders/order_map.hpp"
#include "io/orders/order_table.hpp"
#include "io/text/csv.hpp"
#include "mainbore/catalog.hpp"

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

std::string csv_cell(std::string_view text) {
  std::string cell = "\"";
  for (const char c : text) cell += c == '"' ? std::string("\"\"") : std::string(1, c);
  return cell + '"';
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace mainbore;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const io::OrderMapFile read = io::read_order_map(text, "map.json", Catalog::builtin());
  require(read.map.has_value() == read.diagnostics.empty());
  for (const Diagnostic& told : read.diagnostics) require(!format_diagnostic(told).empty());
  if (!read.map) return 0;

  // A table that has every column the map names.
  std::string header;
  std::string row;
  for (const io::MappedColumn& column : read.map->columns) {
    header += csv_cell(column.name) + ',';
    row += column.values.empty() ? "7," : csv_cell(column.values.front().first) + ',';
  }
  for (const std::string& column : read.map->id) {
    header += csv_cell(column) + ',';
    row += "X,";
  }
  const std::string table_text = header + "spare\n" + row + "\n" + row + "1\n";
  std::size_t at = 0;
  io::CsvReader reader([&](char* to, std::size_t room) {
    const std::size_t part = std::min(room, table_text.size() - at);
    std::memcpy(to, table_text.data() + at, part);
    at += part;
    return part;
  });
  io::CsvRecord record;
  if (!reader.read(record)) return 0;
  io::OrderTable table(Catalog::builtin(), &*read.map, "orders.csv", record);
  OrderRecord order;
  while (reader.read(record)) {
    table.read(record, order);
    require(order.job.has_value() == order.diagnostics.empty());
  }
  return 0;
}
