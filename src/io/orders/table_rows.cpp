#include "io/orders/table_rows.hpp"

#include <algorithm>
#include <utility>

#include "io/text/text_scan.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {
namespace {

bool says_nothing(const CsvRecord& record) {
  if (record.fault) return false;
  for (std::size_t i = 0; i < record.cells.size(); ++i) {
    if (!text::is_blank(record.cell(i))) return false;
  }
  return true;
}

std::size_t understood(const OrderTable& table) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < table.columns().size(); ++i) {
    count += table.columns()[i].to || table.is_part_of_id(i) ? 1u : 0u;
  }
  return count;
}

// A cell of one number with decimals: what stands before them, and how many there are.
struct Decimals {
  char mark = '\0';  // none
  std::size_t digits = 0;
};
Decimals decimals_of(std::string_view cell) {
  cell = trimmed(cell);
  if (cell.starts_with('-') || cell.starts_with('+')) cell.remove_prefix(1);
  const std::size_t mark = cell.find_first_not_of("0123456789");
  if (mark == std::string_view::npos || mark == 0 || (cell[mark] != ',' && cell[mark] != '.')) return {};
  const std::string_view behind = cell.substr(mark + 1);
  if (behind.empty() || behind.find_first_not_of("0123456789") != std::string_view::npos) return {};
  return {cell[mark], behind.size()};
}

}  // namespace

TableRows::TableRows(ByteSource bytes, CsvOptions options, const Catalog& catalog, const OrderMap* map,
                     const std::string& file_name, const KeepColumns* keep)
    : reader_(std::move(bytes), options) {
  find_header(catalog, map, file_name, keep);
  const bool said = map != nullptr && map->decimal_comma;
  if (table_ && table_->faults().empty() && !said && reader_.delimiter() == ';') find_decimals();
}

// Where none will do, the one that is understood best says what is wrong.
void TableRows::find_header(const Catalog& catalog, const OrderMap* map, const std::string& file_name,
                            const KeepColumns* keep) {
  CsvRecord row;
  for (std::size_t above = 0; above <= most_titles && reader_.read(row); ++above) {
    OrderTable table(catalog, map, file_name, row, keep);
    const bool good = table.faults().empty();
    if (!table_ || good || understood(table) > understood(*table_)) {
      table_.emplace(std::move(table));
      titles_ = above;
    }
    if (!good) continue;
    reader_.begin_rows();
    return;
  }
}

// Three decimals behind every comma may as well be thousands.
void TableRows::find_decimals() {
  bool any = false;
  bool all = true;
  bool thousands = true;
  for (CsvRecord row; ahead_.size() < rows_ahead && reader_.read(row);) {
    for (std::size_t i = 0; i < std::min(row.cells.size(), table_->columns().size()); ++i) {
      if (!table_->columns()[i].to) continue;
      const FieldType type = table_->columns()[i].to->field->type;
      if (type != FieldType::quantity && type != FieldType::size) continue;
      const Decimals decimals = decimals_of(row.cell(i));
      if (decimals.mark == '\0') continue;
      any = true;
      all = all && decimals.mark == ',';
      thousands = thousands && decimals.digits == 3;
    }
    ahead_.push_back(std::move(row));
    row = {};
  }
  table_->set_decimal_comma(any && all && !thousands);
}

bool TableRows::next(CsvRecord& record) {
  if (taken_ == ahead_.size()) return reader_.read(record);
  record = std::move(ahead_[taken_++]);
  if (taken_ == ahead_.size()) {
    ahead_.clear();
    taken_ = 0;
  }
  return true;
}

// Empty rows wait until another row tells that they are not the end.
bool TableRows::read(CsvRecord& record) {
  if (given_ == held_.size()) {
    held_.clear();
    given_ = 0;
    if (!next(record)) return false;
    if (!says_nothing(record)) return true;
    for (bool more = true; more && says_nothing(record); more = next(record)) {
      if (held_.size() < rows_ahead) held_.push_back(std::move(record));
      record = {};
    }
    if (says_nothing(record)) {  // the file has ended
      held_.clear();
      return false;
    }
    held_.push_back(std::move(record));
  }
  record = std::move(held_[given_++]);
  return true;
}

}  // namespace mainbore::io
