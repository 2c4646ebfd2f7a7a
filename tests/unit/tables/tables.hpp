// Tables of orders from text, for the tests of this area.
#pragma once

#include <algorithm>
#include <cstring>
#include <fstream>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "io/orders/order_map.hpp"
#include "io/orders/order_table.hpp"
#include "io/orders/table_rows.hpp"
#include "io/text/csv.hpp"
#include "mainbore/catalog.hpp"

namespace mainbore::test {

// Hands the text over in pieces of at most `piece` bytes. The text must outlive the source.
inline io::ByteSource source_of(std::string_view text, std::size_t piece = 1u << 16) {
  return [text, piece](char* to, std::size_t room) mutable {
    const std::size_t size = std::min({text.size(), room, piece});
    std::memcpy(to, text.data(), size);
    text.remove_prefix(size);
    return size;
  };
}

inline std::vector<io::CsvRecord> records_of(std::string_view text, std::size_t piece = 1u << 16,
                                             io::CsvOptions options = {}) {
  io::CsvReader reader(source_of(text, piece), options);
  std::vector<io::CsvRecord> records;
  for (io::CsvRecord record; reader.read(record);) records.push_back(record);
  return records;
}

inline std::vector<std::string> cells_of(const io::CsvRecord& record) {
  std::vector<std::string> cells;
  for (std::size_t i = 0; i < record.cells.size(); ++i) cells.emplace_back(record.cell(i));
  return cells;
}

inline std::string file_text(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot open " + path);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}
inline std::string project_file(const std::string& path) {
  return file_text(std::string(MAINBORE_SOURCE_DIR) + '/' + path);
}

inline io::OrderMap map_of(std::string_view text) {
  io::OrderMapFile read = io::read_order_map(text, "map.json", Catalog::builtin());
  if (!read.map) {
    std::string all;
    for (const Diagnostic& told : read.diagnostics) all += format_diagnostic(told);
    throw std::runtime_error(all);
  }
  return *std::move(read.map);
}

struct ReadTable {
  std::vector<Diagnostic> faults;
  std::vector<OrderRecord> orders;
};
inline ReadTable read_table(std::string_view text, const io::OrderMap* map = nullptr) {
  static const std::string name = "orders.csv";
  io::TableRows rows(source_of(text), {}, Catalog::builtin(), map, name);
  ReadTable read;
  if (rows.table() == nullptr) return read;
  read.faults = rows.table()->faults();
  OrderRecord order;
  for (io::CsvRecord record; rows.read(record);) {
    rows.table()->read(record, order);
    read.orders.push_back(order);
  }
  return read;
}

inline bool has_code(const std::vector<Diagnostic>& told, std::string_view code) {
  return std::any_of(told.begin(), told.end(), [&](const Diagnostic& one) { return one.code == code; });
}

}  // namespace mainbore::test
