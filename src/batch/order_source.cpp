#include "batch/order_source.hpp"

#include <algorithm>
#include <cstring>
#include <utility>

#include "io/fast_job.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::batch {
namespace {

// A piece's whole plans are forty times as long as its orders, and should still fit into the caches.
constexpr std::size_t piece_size = std::size_t{1} << 15;
constexpr std::size_t most_rows = 64;  // of a table in a piece
constexpr std::size_t room_behind = io::FastJobReader::room_behind;
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

constexpr bool is_space(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }
bool is_blank(std::string_view text) { return std::all_of(text.begin(), text.end(), is_space); }

class LineSource : public OrderSource {
 public:
  explicit LineSource(io::ByteSource bytes) : bytes_(std::move(bytes)) {}

  bool take(Piece& piece) override {
    while (!ended_ && piece.texts.empty()) fill(piece);
    return !piece.texts.empty();
  }

 private:
  // Whole lines, as many as there is room for; what is left of the last begins the next piece.
  void fill(Piece& piece) {
    std::string& text = piece.bytes;
    const auto make_room = [&](std::size_t room) {
      if (text.size() < room + room_behind) text.resize(room + room_behind);
    };
    make_room(std::max(piece_size, rest_.size()));
    std::memcpy(text.data(), rest_.data(), rest_.size());
    std::size_t held = rest_.size();
    std::size_t whole = 0;  // bytes in whole lines
    rest_.clear();
    while (whole == 0 && !ended_) {
      if (held > longest_job) {  // tells that the line is too long; the rest of it is passed over
        whole = held;
        pass_over_line();
        break;
      }
      make_room(std::max(piece_size, 2 * held));
      while (held + room_behind < text.size()) {
        const std::size_t room = text.size() - room_behind - held;
        const std::size_t got = bytes_(text.data() + held, room);
        ended_ = got == 0;
        const bool line_ends = std::memchr(text.data() + held, '\n', got) != nullptr;
        held += got;
        // Where no more is to be had at once, what has come goes on its way: somebody may be waiting for it.
        if (ended_ || (got < room && line_ends)) break;
      }
      const std::size_t last = std::string_view(text).substr(0, held).rfind('\n');
      whole = ended_ ? held : last == std::string_view::npos ? 0 : last + 1;
      if (whole > 0) rest_.assign(text, whole, held - whole);
    }
    split(piece, whole);
  }

  // What follows the line begins the next piece.
  void pass_over_line() {
    std::string block(std::size_t{1} << 16, '\0');
    for (;;) {
      const std::size_t got = bytes_(block.data(), block.size());
      if (got == 0) {
        ended_ = true;
        return;
      }
      const std::size_t end = std::string_view(block).substr(0, got).find('\n');
      if (end == std::string_view::npos) continue;
      rest_.assign(block, end + 1, got - end - 1);
      return;
    }
  }

  void split(Piece& piece, std::size_t whole) {
    const std::string_view text = std::string_view(piece.bytes).substr(0, whole);
    std::size_t begin = line_ == 1 && text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
    while (begin < text.size()) {
      const std::size_t end = std::min(text.find('\n', begin), text.size());
      std::string_view line = text.substr(begin, end - begin);
      if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
      if (!is_blank(line)) piece.texts.push_back({begin, line.size(), line_, line_, ++row_, {}});
      ++line_;
      begin = end + 1;
    }
  }

  io::ByteSource bytes_;
  std::string rest_;
  bool ended_ = false;
  int line_ = 1;
  std::uint64_t row_ = 0;
};

// A value's text is found by its brackets and quotes alone; whether it is JSON is for the readers of orders to say. No
// string of JSON goes over the end of a line, so a quote too many spoils no more than that line.
class JsonSource : public OrderSource {
 public:
  explicit JsonSource(io::ByteSource bytes) : bytes_(std::move(bytes)) {}

  bool take(Piece& piece) override {
    used_ = 0;
    while (used_ < piece_size) {
      if (at_ == held_) {
        // Where no more is to be had at once, what has come goes on its way: somebody may be waiting for it.
        if (held_ < block_.size() && !piece.texts.empty()) break;
        held_ = bytes_(block_.data(), block_.size());
        at_ = 0;
        if (held_ == 0) {
          if (!ended_) end(piece);
          ended_ = true;
          break;
        }
        if (std::exchange(first_block_, false) && block().starts_with(byte_order_mark)) at_ = byte_order_mark.size();
      }
      read_byte(piece, block_[at_++]);
    }
    // What is left of an order in the making begins the next piece.
    if (piece.bytes.size() < used_ + room_behind) piece.bytes.resize(used_ + room_behind);
    return !piece.texts.empty();
  }

 private:
  [[nodiscard]] std::string_view block() const { return std::string_view(block_).substr(0, held_); }

  void read_byte(Piece& piece, char c) {
    if (in_string_) {
      add(c);
      if (escaped_) escaped_ = false;
      else if (c == '\\') escaped_ = true;
      else if (c == '"' || c == '\n') in_string_ = false;
    } else if (in_array_ && depth_ == 0 && (c == ',' || c == ']')) {
      separator(piece, c);
    } else if (!in_array_ && depth_ == 0 && c == '[' && blank_) {
      in_array_ = true;
      after_comma_ = false;
      begin_text();
    } else {
      add(c);
      in_string_ = c == '"';
      if (c == '{' || c == '[') ++depth_;
      if ((c == '}' || c == ']') && depth_ > 0 && --depth_ == 0 && !in_array_) finish(piece);
    }
    if (c == '\n') ++line_;
    if (text_.empty()) first_line_ = line_;
  }

  void add(char c) {
    if (blank_ && !is_space(c)) {
      blank_ = false;
      order_line_ = line_;
    }
    if (text_.size() <= longest_job) text_ += c;
  }

  void separator(Piece& piece, char c) {
    if (!blank_) {
      finish(piece);
    } else if (c == ',') {
      fault(piece, "a comma with no order before it");
    } else if (after_comma_) {
      fault(piece, "a comma before the closing bracket");
    }
    after_comma_ = c == ',';
    in_array_ = c == ',';
    begin_text();
  }

  void end(Piece& piece) {
    const bool closed = depth_ == 0 && !in_string_;
    if (!blank_) finish(piece);
    if (in_array_ && closed) fault(piece, "the list of orders is never closed: perhaps the file is cut off");
  }

  void begin_text() {
    text_.clear();
    blank_ = true;
    depth_ = 0;
    escaped_ = false;
  }

  void finish(Piece& piece) {
    const std::size_t needed = used_ + text_.size() + room_behind;
    if (piece.bytes.size() < needed) piece.bytes.resize(std::max(needed, piece_size + room_behind));
    std::memcpy(piece.bytes.data() + used_, text_.data(), text_.size());
    piece.texts.push_back({used_, text_.size(), first_line_, order_line_, ++row_, {}});
    used_ += text_.size();
    begin_text();
  }

  void fault(Piece& piece, std::string_view what) { piece.texts.push_back({0, 0, line_, line_, ++row_, what}); }

  io::ByteSource bytes_;
  std::string block_ = std::string(std::size_t{1} << 16, '\0');
  std::size_t at_ = 0;
  std::size_t held_ = 0;
  bool first_block_ = true;
  bool ended_ = false;
  std::size_t used_ = 0;  // of the piece's bytes

  std::string text_;  // of the order in the making
  bool blank_ = true;
  bool in_array_ = false;
  bool after_comma_ = false;
  bool in_string_ = false;
  bool escaped_ = false;
  int depth_ = 0;
  int line_ = 1;
  int first_line_ = 1;
  int order_line_ = 1;
  std::uint64_t row_ = 0;
};

class TableSource : public OrderSource {
 public:
  explicit TableSource(io::CsvReader& reader) : reader_(reader) {}

  bool take(Piece& piece) override {
    std::size_t size = 0;
    while (piece.row_count < most_rows && size < piece_size) {
      if (piece.rows.size() == piece.row_count) piece.rows.emplace_back();
      io::CsvRecord& row = piece.rows[piece.row_count];
      if (!reader_.read(row)) break;
      size += row.text.size();
      ++piece.row_count;
    }
    return piece.row_count > 0;
  }

 private:
  io::CsvReader& reader_;
};

}  // namespace

std::unique_ptr<OrderSource> line_source(io::ByteSource bytes) {
  return std::make_unique<LineSource>(std::move(bytes));
}
std::unique_ptr<OrderSource> json_source(io::ByteSource bytes) {
  return std::make_unique<JsonSource>(std::move(bytes));
}
std::unique_ptr<OrderSource> table_source(io::CsvReader& reader) { return std::make_unique<TableSource>(reader); }

}  // namespace mainbore::batch
