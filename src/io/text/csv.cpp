#include "io/text/csv.hpp"

#include <algorithm>
#include <array>
#include <cstring>
#include <utility>

namespace mainbore::io {
namespace {

constexpr std::size_t chunk = 1u << 18;
constexpr std::size_t npos = std::string_view::npos;

// Quotes that are never closed, each with much text behind it, would have all of that text searched again for each of
// them. After so many a record is looked for in a few lines only, until that text is behind.
constexpr int most_in_vain = 16;
constexpr int few_lines = 8;

// string_view::find is not always memchr.
std::size_t find_byte(std::string_view text, char byte, std::size_t from, std::size_t to) {
  if (from >= to) return npos;
  const void* const found = std::memchr(text.data() + from, byte, to - from);
  return found == nullptr ? npos : static_cast<std::size_t>(static_cast<const char*>(found) - text.data());
}
std::size_t find_byte(std::string_view text, char byte, std::size_t from) {
  return find_byte(text, byte, from, text.size());
}

// Behind the break that ends the last of so many lines, or the end of the text.
std::size_t behind_lines(std::string_view text, char line_break, int lines) {
  std::size_t behind = 0;
  for (; lines > 0 && behind < text.size(); --lines) {
    behind = std::min(find_byte(text, line_break, behind), text.size() - 1) + 1;
  }
  return behind;
}

// The quote that ends a quoted cell, the last of the text included, and whether quotes before it are doubled.
std::size_t closing_quote(std::string_view text, std::size_t from, bool& doubled) {
  for (;;) {
    const std::size_t closing = find_byte(text, '"', from);
    if (closing == npos || closing + 1 == text.size() || text[closing + 1] != '"') return closing;
    doubled = true;
    from = closing + 2;
  }
}

// The cell with each of its doubled quotes once, behind the others of the record.
void unquote(std::string_view text, CsvRecord::Cell& cell, std::string& unquoted) {
  cell.plain = static_cast<std::uint32_t>(unquoted.size());
  for (std::size_t i = cell.begin; i < cell.end; ++i) {
    unquoted += text[i];
    if (text[i] == '"') ++i;
  }
  cell.plain_size = static_cast<std::uint32_t>(unquoted.size()) - cell.plain;
}

bool is_text(std::string_view bytes) {
  unsigned high = 0;
  unsigned zeros = 0;
  for (const char c : bytes) {
    high |= static_cast<unsigned char>(c);
    zeros |= c == '\0' ? 1u : 0u;
  }
  return zeros == 0 && (high < 0x80 || !first_not_utf8(bytes));
}

}  // namespace

CsvReader::CsvReader(ByteSource source, CsvOptions options)
    : source_(without_mark(std::move(source))),
      options_(options),
      buffer_(std::clamp<std::size_t>(options.longest_record, 1024, chunk)) {}

// Brings more bytes behind those held. False when there are none.
bool CsvReader::fill() {
  if (ended_) return false;
  if (begin_ > 0) {
    std::memmove(buffer_.data(), buffer_.data() + begin_, end_ - begin_);
    end_ -= begin_;
    begin_ = 0;
  }
  if (end_ == buffer_.size()) buffer_.resize(2 * buffer_.size());
  const std::size_t got = source_(buffer_.data() + end_, buffer_.size() - end_);
  end_ += got;
  if (got == 0) ended_ = true;
  return got > 0;
}

// What the first line says about the file: how its lines end and what stands between its cells.
void CsvReader::begin() {
  begun_ = true;
  std::array<std::pair<char, std::size_t>, 3> counts = {{{',', 0}, {'\t', 0}, {';', 0}}};
  constexpr int most_lines = 10;  // titles above a table need not have any
  int lines = 0;
  bool quoted = false;
  bool first_break = true;
  for (std::size_t at = 0; at < options_.longest_record; ++at) {
    while (at + 1 >= held().size() && fill()) {  // the byte behind a CR counts
    }
    if (at >= held().size()) break;
    const char c = held()[at];
    if (c == '"') quoted = !quoted;
    if (!quoted && (c == '\n' || c == '\r')) {
      const bool alone = c == '\r' && (at + 1 >= held().size() || held()[at + 1] != '\n');
      if (std::exchange(first_break, false)) line_break_ = alone ? '\r' : '\n';
      const bool any = std::any_of(counts.begin(), counts.end(), [](const auto& one) { return one.second > 0; });
      if (any || ++lines == most_lines) break;
      continue;
    }
    if (quoted) continue;
    for (auto& [byte, count] : counts) count += c == byte ? 1u : 0u;
  }
  const auto most =
      std::max_element(counts.begin(), counts.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  delimiter_ = options_.delimiter.value_or(most->first);
  take_separator_line();
}

// "sep=;" above a table, which spreadsheets write and read.
void CsvReader::take_separator_line() {
  const std::string_view text = held();
  const std::size_t end = std::min(find_byte(text, line_break_, 0), text.size());
  std::string_view line = text.substr(0, end);
  if (line.ends_with('\r')) line.remove_suffix(1);
  if (line.size() == 7 && line.front() == '"' && line.back() == '"') line = line.substr(1, 5);
  if (line.size() != 5 || (line[0] | 0x20) != 's' || (line[1] | 0x20) != 'e' || (line[2] | 0x20) != 'p' ||
      line[3] != '=') {
    return;
  }
  if (!options_.delimiter) delimiter_ = line[4];
  consume(std::min(end + 1, text.size()));
  ++line_;
}

// False at the end of the file.
bool CsvReader::skip_blank_lines() {
  for (;;) {
    while (held().size() < 2 && fill()) {
    }
    const std::string_view text = held();
    if (text.empty()) return false;
    const bool pair = line_break_ == '\n' && text.starts_with("\r\n");
    if (!pair && text.front() != line_break_) return true;
    consume(pair ? 2 : 1);
    ++line_;
  }
}

// Cuts the text held into the cells of the record it begins with. `unfinished`: it does not end in the text held. No
// byte beyond the limit has a say, so that the outcome is the same whatever the pieces.
CsvReader::Split CsvReader::split(CsvRecord& record) const {
  record.cells.clear();
  record.unquoted.clear();
  std::string_view text = held().substr(0, options_.longest_record);
  Split result;
  const auto stopped = [&](Outcome outcome, std::size_t fault) {
    result.outcome = outcome;
    result.fault = fault;
    return result;
  };
  const auto too_large = [&](std::size_t seen) {
    result.outcome = Outcome::too_large;
    result.seen = seen;
    return result;
  };
  const auto all_held = [&] { return text.size() == held().size(); };
  const auto unfinished = [&] { return all_held() ? result : too_large(text.size()); };
  const auto finished = [&](std::size_t end, std::size_t next) {
    result.outcome = Outcome::record;
    result.end = end;
    result.next = std::min(next, text.size());
    return result;
  };
  const auto at_file_end = [&] { return ended_ && all_held(); };
  std::size_t line_end = 0;
  const auto line_ends_behind = [&](std::size_t from) {
    line_end = find_byte(text, line_break_, from);
    if (line_end != npos) return true;
    line_end = text.size();
    return at_file_end();
  };

  if (!line_ends_behind(0)) return unfinished();
  if (in_vain_ >= most_in_vain) text = text.substr(0, behind_lines(text, line_break_, few_lines));
  for (std::size_t at = 0;;) {
    if (record.cells.size() == most_cells) return too_large(at);
    CsvRecord::Cell cell;
    if (at == text.size() || text[at] != '"') {
      std::size_t end = find_byte(text, delimiter_, at, line_end);
      const bool last = end == npos;
      if (last) {
        end = line_end;
        if (line_break_ == '\n' && end > at && text[end - 1] == '\r') --end;
      }
      cell.begin = static_cast<std::uint32_t>(at);
      cell.end = static_cast<std::uint32_t>(end);
      record.cells.push_back(cell);
      if (last) return finished(end, line_end + 1);
      at = end + 1;
      continue;
    }

    const std::size_t opening = at;
    if (!result.several_lines) result.fault = opening;
    const std::size_t closing = closing_quote(text, opening + 1, cell.doubled);
    if (closing == npos) return at_file_end() ? stopped(Outcome::open_quote, opening) : unfinished();
    if (closing + 1 == text.size() && !at_file_end()) return unfinished();
    cell.begin = static_cast<std::uint32_t>(opening + 1);
    cell.end = static_cast<std::uint32_t>(closing);
    if (cell.doubled) unquote(text, cell, record.unquoted);
    record.cells.push_back(cell);

    const std::size_t behind = closing + 1;
    if (behind > line_end) {  // a line break inside the quotes
      result.several_lines = true;
      if (!line_ends_behind(behind)) return unfinished();
    }
    if (behind == line_end) return finished(behind, line_end + 1);
    if (text[behind] == delimiter_) {
      at = behind + 1;
    } else if (line_break_ == '\n' && text[behind] == '\r' && behind + 1 == line_end) {
      return finished(behind, line_end + 1);
    } else {
      return stopped(Outcome::stray_quote, opening);
    }
  }
}

bool CsvReader::read(CsvRecord& record) {
  if (!begun_) begin();
  record.fault.reset();
  record.not_text = false;
  if (!skip_blank_lines()) return false;
  record.row = row_++;
  record.line = line_;
  for (;;) {
    const Split found = split(record);
    switch (found.outcome) {
      case Outcome::unfinished:
        fill();
        continue;
      case Outcome::record:
        take(record, found);
        break;
      case Outcome::too_large:
        take_first_line(record, found);
        break;
      case Outcome::stray_quote:
        take_broken(record, found, "the quoted cell that begins here goes on behind its closing quote");
        break;
      case Outcome::open_quote:
        take_broken(record, found, "the quoted cell that begins here never ends");
    }
    return true;
  }
}

void CsvReader::consume(std::size_t bytes) {
  begin_ += bytes;
  seen_ahead_ -= std::min(bytes, seen_ahead_);
  if (seen_ahead_ == 0) in_vain_ = 0;
}

void CsvReader::take(CsvRecord& record, const Split& found) {
  const std::string_view text = held().substr(0, found.end);
  record.text.assign(text);
  record.not_text = !is_text(text);
  line_ += found.several_lines ? 1 + static_cast<std::int64_t>(std::count(text.begin(), text.end(), line_break_)) : 1;
  consume(found.next);
}

// The record ends with the line on which the bad cell begins, so that one quote does not swallow the rest of the file.
void CsvReader::take_broken(CsvRecord& record, const Split& found, std::string_view what) {
  const std::size_t line_end = std::min(find_byte(held(), line_break_, found.fault), held().size());
  const std::string_view text = held().substr(0, line_end);
  record.text.assign(text);
  if (line_break_ == '\n' && record.text.ends_with('\r')) record.text.pop_back();
  record.not_text = !is_text(record.text);
  record.cells.clear();
  record.unquoted.clear();
  record.fault = CsvFault{{found.fault, found.fault + 1},
                          {"csv.quote", std::string(what),
                           "a quote inside a quoted cell is written twice: \"6\"\" main\"; reading goes on with the "
                           "next line"}};
  line_ += 1 + static_cast<std::int64_t>(std::count(text.begin(), text.end(), line_break_));
  consume(std::min(line_end + 1, held().size()));
}

// What was looked at behind the line stays held, and is read again.
void CsvReader::take_first_line(CsvRecord& record, const Split& found) {
  const std::size_t line_end = find_byte(held(), line_break_, 0, std::min(found.seen, held().size()));
  if (line_end == npos) return take_long_line(record);
  take_broken(record, found, "the quoted cell that begins here makes the row too long: perhaps it is never closed");
  if (seen_ahead_ == 0) seen_ahead_ = found.seen - std::min(found.seen, line_end + 1);
  if (seen_ahead_ > 0) ++in_vain_;
}

// Drops a line without keeping more of it than its beginning.
void CsvReader::take_long_line(CsvRecord& record) {
  constexpr std::size_t shown = 200;
  record.text.assign(held().substr(0, shown));
  record.not_text = !is_text(record.text);
  record.cells.clear();
  record.unquoted.clear();
  record.fault = CsvFault{{0, 1},
                          {"csv.too-large",
                           "a line of more than " + std::to_string(options_.longest_record) + " bytes or " +
                               std::to_string(most_cells) + " cells",
                           "reading goes on with the next line"}};
  ++line_;
  for (;;) {
    const std::size_t line_end = find_byte(held(), line_break_, 0);
    if (line_end != npos) return consume(line_end + 1);
    consume(held().size());
    if (!fill()) return;
  }
}

}  // namespace mainbore::io
