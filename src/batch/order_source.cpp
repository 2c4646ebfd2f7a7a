#include "batch/order_source.hpp"

#include <algorithm>
#include <cstring>
#include <utility>

#include "batch/json_string.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::batch {
namespace {

constexpr std::size_t most_rows = 64;  // of a table in a piece

bool is_blank(std::string_view text) { return std::all_of(text.begin(), text.end(), is_space); }

class LineSource : public OrderSource {
 public:
  LineSource(io::ByteSource bytes, char separator)
      : bytes_(io::without_mark(std::move(bytes))), separator_(separator) {}

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
        const bool line_ends = std::memchr(text.data() + held, separator_, got) != nullptr;
        held += got;
        // Where no more is to be had at once, what has come goes on its way: somebody may be waiting for it.
        if (ended_ || (got < room && line_ends)) break;
      }
      const std::size_t last = std::string_view(text).substr(0, held).rfind(separator_);
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
      const std::size_t end = std::string_view(block).substr(0, got).find(separator_);
      if (end == std::string_view::npos) continue;
      rest_.assign(block, end + 1, got - end - 1);
      return;
    }
  }

  void split(Piece& piece, std::size_t whole) {
    const std::string_view text = std::string_view(piece.bytes).substr(0, whole);
    for (std::size_t begin = 0; begin < text.size();) {
      const std::size_t end = std::min(text.find(separator_, begin), text.size());
      std::string_view line = text.substr(begin, end - begin);
      if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
      if (!is_blank(line)) piece.texts.push_back({begin, line.size(), line_, line_, ++row_, {}, false, 0});
      line_ += separator_ == '\n' ? 1 : std::count(line.begin(), line.end(), '\n');
      begin = end + 1;
    }
  }

  io::ByteSource bytes_;
  char separator_;
  std::string rest_;
  bool ended_ = false;
  std::int64_t line_ = 1;
  std::uint64_t row_ = 0;
};

class TableSource : public OrderSource {
 public:
  explicit TableSource(io::TableRows& rows) : rows_(rows) {}

  bool take(Piece& piece) override {
    std::size_t size = 0;
    while (piece.row_count < most_rows && size < piece_size) {
      if (piece.rows.size() == piece.row_count) piece.rows.emplace_back();
      io::CsvRecord& row = piece.rows[piece.row_count];
      if (!rows_.read(row)) break;
      size += row.text.size();
      ++piece.row_count;
    }
    return piece.row_count > 0;
  }

 private:
  io::TableRows& rows_;
};

}  // namespace

std::unique_ptr<OrderSource> line_source(io::ByteSource bytes) {
  return std::make_unique<LineSource>(std::move(bytes), '\n');
}
std::unique_ptr<OrderSource> sequence_source(io::ByteSource bytes) {
  return std::make_unique<LineSource>(std::move(bytes), record_separator);
}
std::unique_ptr<OrderSource> table_source(io::TableRows& rows) { return std::make_unique<TableSource>(rows); }

}  // namespace mainbore::batch
