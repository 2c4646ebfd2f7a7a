// Where orders come from: a stream cut into pieces, each order with its row and line, in constant memory.
//
// A source of bytes that gives less than there is room for has no more at once: JSON that has come that far is planned
// without waiting for more.
#pragma once

#include <memory>
#include <string_view>

#include "batch/piece.hpp"
#include "io/orders/table_rows.hpp"
#include "io/text/csv.hpp"

namespace mainbore::batch {

// Before each text of a sequence (RFC 7464, RFC 8142).
inline constexpr char record_separator = '\x1E';

enum class InputFormat : std::uint8_t { csv, ndjson, json, geojson };

class OrderSource {
 public:
  virtual ~OrderSource() = default;
  // The next orders, behind nothing: the piece comes cleared. False at the end, when there are none.
  virtual bool take(Piece& piece) = 0;
};

// A line is an order; lines of nothing but space are none. A line longer than any job is cut off behind what tells that.
[[nodiscard]] std::unique_ptr<OrderSource> line_source(io::ByteSource bytes);

// Texts behind a record separator each. A text is taken when the next begins.
[[nodiscard]] std::unique_ptr<OrderSource> sequence_source(io::ByteSource bytes);

// The features of GeoJSON (RFC 7946): of a collection, in a sequence, a line each or one after the other.
[[nodiscard]] std::unique_ptr<OrderSource> feature_source(io::ByteSource bytes);

// The elements of an array, or values one after the other, or both. Whatever stands between two separators is an order,
// so that a fault spoils its own order; a fault of the array itself is an order of its own. Behind an order whose braces
// or quotes do not match, reading goes on with the next that is surely one; an order that may have swallowed others says
// up to which line. See json_source.cpp.
[[nodiscard]] std::unique_ptr<OrderSource> json_source(io::ByteSource bytes);

// The same of features. `head`: what stands before the list of them in a collection, without which they stand one after
// the other.
[[nodiscard]] std::unique_ptr<OrderSource> json_feature_source(io::ByteSource bytes, std::string_view head);

// The rows of a table, which must outlive the source.
[[nodiscard]] std::unique_ptr<OrderSource> table_source(io::TableRows& rows);

}  // namespace mainbore::batch
