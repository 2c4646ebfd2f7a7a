// Rows of comma-separated values (RFC 4180) behind a string.
//
// A spreadsheet runs a cell that begins with = + - @, a tab or a line end as a formula, whoever wrote it. Such a text
// gets an apostrophe before it, and so does one with apostrophes before that; a number stands as it is. CsvReader takes
// the apostrophe away again, so that what was written is what is read.
#pragma once

#include <string>
#include <string_view>

#include "mainbore/measure.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {

// Whether a spreadsheet would run the cell, or would but for apostrophes before it.
[[nodiscard]] constexpr bool runs_in_spreadsheet(std::string_view cell) {
  const std::size_t first = cell.find_first_not_of('\'');
  return first != std::string_view::npos && std::string_view("=+-@\t\r").find(cell[first]) != std::string_view::npos;
}

class CsvWriter {
 public:
  explicit CsvWriter(std::string& out) : out_(out) {}
  CsvWriter(const CsvWriter&) = delete;
  CsvWriter& operator=(const CsvWriter&) = delete;

  // Anybody's text.
  void text(std::string_view text) {
    text::append_visible(cell(), text);
    end();
  }
  void number(double value, int decimals) { append_number(cell(), value, decimals); }
  void empty() { cell(); }
  // A text in parts: behind cell(), finished by end().
  std::string& cell() {
    if (!first_) out_ += ',';
    first_ = false;
    begin_ = out_.size();
    return out_;
  }
  void end() {
    if (runs_in_spreadsheet(std::string_view(out_).substr(begin_))) out_.insert(begin_, 1, '\'');
    if (out_.find_first_of(",\"\r\n", begin_) == std::string::npos) return;
    for (std::size_t at = out_.find('"', begin_); at != std::string::npos; at = out_.find('"', at + 2)) {
      out_.insert(at, 1, '"');
    }
    out_.insert(begin_, 1, '"');
    out_ += '"';
  }
  void line() {
    out_ += "\r\n";
    first_ = true;
  }

 private:
  std::string& out_;
  std::size_t begin_ = 0;
  bool first_ = true;
};

}  // namespace mainbore::io
