// What travels through a batch: a piece of the input with some dozen orders, and what was made of them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "io/fast/fast_job.hpp"
#include "io/fast/json_skim.hpp"
#include "io/text/csv.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/plan.hpp"
#include "report/week.hpp"

namespace mainbore::batch {

// Orders by how they ended.
struct Tally {
  std::uint64_t go = 0;
  std::uint64_t hold = 0;
  std::uint64_t office = 0;  // of the holds, those that wait for the office
  std::uint64_t no_go = 0;
  std::uint64_t unreadable = 0;  // those that met a fault of the program among them
  std::uint64_t internal = 0;
  std::uint64_t recalled = 0;  // of all, those judged with one before; how many depends on the number of threads

  [[nodiscard]] std::uint64_t all() const { return go + hold + no_go + unreadable; }
  void add(Verdict verdict, std::optional<Clears> who_clears) {
    ++(verdict == Verdict::go ? go : verdict == Verdict::hold ? hold : no_go);
    if (who_clears == Clears::office) ++office;
  }
  Tally& operator+=(const Tally& other) {
    go += other.go;
    hold += other.hold;
    office += other.office;
    no_go += other.no_go;
    unreadable += other.unreadable;
    internal += other.internal;
    recalled += other.recalled;
    return *this;
  }
};

// An order as text, in the bytes of its piece.
struct OrderText {
  std::size_t begin = 0;
  std::size_t size = 0;
  std::int64_t first_line = 0;  // of the text, which may begin with blank lines
  std::int64_t line = 0;        // of the order
  std::uint64_t row = 0;
  std::string_view fault;      // what is wrong with the file here; there is no text then
  bool broken = false;         // its brackets and quotes do not match: it is never planned
  std::int64_t unread_to = 0;  // of a broken one, over 0: up to this line it may have swallowed others
  // What it was read as where it was cut out of the file, in the nodes of its piece; none: nothing.
  std::size_t first_node = 0;
  std::size_t node_count = 0;
};

// The id of an order, in the ids of its piece.
struct OrderId {
  std::size_t size = 0;
  std::uint64_t row = 0;
  std::int64_t line = 0;
};

// A piece's whole plans are forty times as long as its orders, and should still fit into the caches.
inline constexpr std::size_t piece_size = std::size_t{1} << 15;
inline constexpr std::size_t room_behind = io::FastJobReader::room_behind;

// A piece is filled, worked on and emptied many times: its memory is used again.
struct Piece {
  std::string bytes;  // of the texts, and room behind them for the fast reader
  std::vector<OrderText> texts;
  std::vector<io::SkimNode> nodes;
  std::vector<io::CsvRecord> rows;  // of a table; the first row_count of them
  std::size_t row_count = 0;

  // Of a collection of features: its other members, each with a comma: those before the features behind the member, those
  // behind the features before it.
  std::string head;
  std::string tail;

  std::string out;                      // records in the format asked for
  std::vector<report::WeekOrder> week;  // or what a report of the week needs of each order
  std::string id_texts;                 // one behind the other
  std::vector<OrderId> ids;             // of the orders that have one
  Tally tally;

  void clear() {
    texts.clear();
    nodes.clear();
    row_count = 0;
    head.clear();
    tail.clear();
    out.clear();
    week.clear();
    id_texts.clear();
    ids.clear();
    tally = {};
  }
};

}  // namespace mainbore::batch
