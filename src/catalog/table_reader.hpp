// What the readers of the data files share: where they are, what is wrong there, and the cells of a table.
//
// simdjson, because every run of the program loads every table: its parser takes a tenth of the time of a general one.
#pragma once

#include <simdjson.h>

#include <algorithm>
#include <array>
#include <initializer_list>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/catalog.hpp"
#include "text/foreign.hpp"

namespace mainbore::tables {

using simdjson::dom::array;
using simdjson::dom::element;
using simdjson::dom::object;

// The cells of one table row, in the order of its columns.
constexpr std::size_t most_columns = 16;
using Cells = std::array<element, most_columns>;

// What can be: it keeps out slips of typing and converting by orders of magnitude. What is odd but possible is the
// table's own affair.
struct Limits {
  double least;
  double most;
  std::string_view unit = {};
};
constexpr Limits pressure_limits{1, 5000, "psi"};
constexpr Limits flow_limits{0.1, 100000, "gpm"};

// The files, and where in them the reading is. One for all tables.
struct TableFiles {
  TableFiles(const DataFiles& all_files, const std::vector<Source>& all_sources)
      : files(all_files), sources(all_sources) {}

  const DataFiles& files;
  const std::vector<Source>& sources;
  simdjson::dom::parser parser;
  std::set<std::string, std::less<>> opened;
  std::string file;
  std::string entry;
  std::string row_name;
  std::size_t row = 0;

  [[nodiscard]] const Source* source(std::string_view id) const;
};

// The base of every reader of a table: a fault is thrown as CatalogError with its file, entry and row.
class TableReader {
 public:
  explicit TableReader(TableFiles& at) : at_(at) {}

  // The file's text, and its object; what was open before is closed.
  const std::string& require(std::string_view path);
  object open(std::string_view path);

 protected:
  [[noreturn]] void fault(const std::string& message) const;
  void enter(std::string entry);
  static std::string quoted(std::string_view text) { return text::quoted(text); }

  double within(double value, Limits limits, std::string_view name) const;
  double number_within(element cell, Limits limits, std::string_view name) const {
    return within(as_number(cell, name), limits, name);
  }

  object as_object(element value, std::string_view name) const;
  array as_array(element value, std::string_view name) const;
  std::string_view as_text(element value, std::string_view name) const;
  double as_number(element value, std::string_view name) const;
  NominalSize as_size(element value, std::string_view name) const;
  // Null is the honest "unknown".
  std::optional<double> as_number_or_unknown(element value, std::string_view name) const;
  std::string text_cell(element cell, std::string_view name) const;

  element member(object from, std::string_view key) const;
  std::string_view text_member(object from, std::string_view key) const;
  std::string text_or_empty(object from, std::string_view key) const;
  // Misspelt and repeated keys do not pass in silence.
  void only(object from, std::initializer_list<std::string_view> known) const;
  // Enters a table that stands in a file beside others.
  object table_in(object from, std::string_view key);

  How as_how(std::string_view text) const;
  Basis basis_of(object from) const;
  Basis basis_in(element source, element how) const;
  static const Basis& weaker(const Basis& a, const Basis& b);

  // Calls `read_row` with the cells of each row, after checking that there are as many as columns.
  template <class Read>
  void each_row(object table, std::size_t columns, Read read_row) {
    at_.row = 0;
    for (const element line : as_array(member(table, "rows"), "rows")) {
      ++at_.row;
      at_.row_name.clear();
      Cells cells{};
      std::size_t count = 0;
      for (const element cell : as_array(line, "the row")) {
        if (count < cells.size()) cells[count] = cell;
        ++count;
      }
      if (count != columns) {
        fault(std::to_string(count) + " cells under " + std::to_string(columns) + " columns");
      }
      read_row(cells);
    }
    at_.row = 0;
    at_.row_name.clear();
  }

  // Where each wanted column stands; npos for an optional one that is not there.
  static constexpr std::size_t npos = most_columns;
  template <std::size_t N>
  std::array<std::size_t, N> columns_of(object table, const std::array<std::string_view, N>& wanted,
                                        std::size_t required, std::size_t& count) const {
    std::array<std::size_t, N> at{};
    at.fill(npos);
    count = 0;
    for (const element name : as_array(member(table, "columns"), "columns")) {
      const std::string_view text = as_text(name, "a column name");
      const auto* const found = std::find(wanted.begin(), wanted.end(), text);
      if (found == wanted.end()) fault("unknown column " + quoted(text));
      std::size_t& place = at[static_cast<std::size_t>(found - wanted.begin())];
      if (place != npos) fault("column " + quoted(text) + " stands twice");
      place = count++;
    }
    for (std::size_t i = 0; i < required; ++i) {
      if (at[i] == npos) fault("no column " + quoted(wanted[i]));
    }
    return at;
  }

  TableFiles& at_;
};

}  // namespace mainbore::tables
