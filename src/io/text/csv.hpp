// Comma-separated values (RFC 4180), read as a stream in constant memory.
//
// Beyond the RFC: a byte-order mark is skipped; lines end with LF, CRLF or CR, whichever ends the first line; cells are
// apart by comma, tab or semicolon, whichever the first line that has any has most of, or as a first line "sep=;" says;
// blank lines are no records. Nothing is
// trimmed. A quote inside a cell that does not begin with one is a plain character: 6" pipe. An apostrophe that keeps a
// spreadsheet from running a cell (csv_writer.hpp) is no part of it.
//
// Every record comes out, also one that is broken. A quoted cell that never ends, or that goes on behind its closing
// quote, breaks its record; reading goes on with the line after the one on which that cell begins. A record over the
// limit is passed over to its end.
//
//     CsvReader reader(source);
//     for (CsvRecord record; reader.read(record);) ... record.cell(0) ...
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "io/text/byte_source.hpp"
#include "io/text/csv_writer.hpp"
#include "io/text/source_text.hpp"

namespace mainbore::io {

struct CsvFault {
  Span span;  // in the record's text
  Problem problem;
};

// One record, with its own copy of the text, so that it may be handed to another thread. Reading into the same record
// again uses its memory again.
struct CsvRecord {
  struct Cell {
    std::uint32_t begin = 0;  // in `text`, inside the quotes
    std::uint32_t end = 0;
    std::uint32_t plain = 0;  // where the cell without doubled quotes stands in `unquoted`, when it has any
    std::uint32_t plain_size = 0;
    bool doubled = false;  // it has
  };

  std::string text;  // as it stands in the file, without its line end
  std::string unquoted;
  std::vector<Cell> cells;
  std::uint64_t row = 0;          // the first record of the file is 0: the header
  std::int64_t line = 0;          // where it begins, from 1
  bool not_text = false;          // NUL bytes or bytes that are not UTF-8 somewhere in it
  bool from_table = true;         // false: an order in JSON, of which no spreadsheet runs anything
  std::optional<CsvFault> fault;  // then there are no cells

  // Without the apostrophe that keeps a spreadsheet from running it (see csv_writer.hpp).
  [[nodiscard]] std::string_view cell(std::size_t index) const {
    const Cell& at = cells[index];
    const std::string_view written = at.doubled ? std::string_view(unquoted).substr(at.plain, at.plain_size)
                                                : std::string_view(text).substr(at.begin, at.end - at.begin);
    return from_table && written.starts_with('\'') && runs_in_spreadsheet(written) ? written.substr(1) : written;
  }
  [[nodiscard]] Span span_of(std::size_t index) const { return {cells[index].begin, cells[index].end}; }
};

struct CsvOptions {
  std::optional<char> delimiter;          // absent: found from the first line
  std::size_t longest_record = 1u << 20;  // bytes
};
inline constexpr std::size_t most_cells = 10000;  // of one record

class CsvReader {
 public:
  explicit CsvReader(ByteSource source, CsvOptions options = {});

  // The next record; false at the end of the file.
  bool read(CsvRecord& record);

  // The record last read was the header: the next is row 1.
  void begin_rows() { row_ = 1; }

  // Known once the first record has been read.
  [[nodiscard]] char delimiter() const { return delimiter_; }

 private:
  enum class Outcome : std::uint8_t { record, unfinished, stray_quote, open_quote, too_large };
  struct Split {
    Outcome outcome = Outcome::unfinished;
    std::size_t end = 0;    // of the record's text
    std::size_t next = 0;   // where the next record begins
    std::size_t fault = 0;  // where the troublesome cell begins; of too_large, the one that leaves the first line
    std::size_t seen = 0;   // of too_large: the bytes looked at
    bool several_lines = false;
  };

  [[nodiscard]] std::string_view held() const { return {buffer_.data() + begin_, end_ - begin_}; }
  bool fill();
  void begin();
  void take_separator_line();
  bool skip_blank_lines();
  Split split(CsvRecord& record) const;
  void take(CsvRecord& record, const Split& split);
  void take_broken(CsvRecord& record, const Split& split, std::string_view what);
  void take_first_line(CsvRecord& record, const Split& split);
  void take_long_line(CsvRecord& record);
  void consume(std::size_t bytes);

  ByteSource source_;
  CsvOptions options_;
  std::vector<char> buffer_;
  std::size_t begin_ = 0;
  std::size_t end_ = 0;
  bool begun_ = false;
  bool ended_ = false;
  char delimiter_ = ',';
  char line_break_ = '\n';
  std::int64_t line_ = 1;
  std::uint64_t row_ = 0;
  std::size_t seen_ahead_ = 0;  // bytes in which a record too large was looked for its end
  int in_vain_ = 0;             // how many such records begin in them
};

}  // namespace mainbore::io
