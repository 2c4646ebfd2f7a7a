// Looking up a place in a table whose key increases from row to row.
#pragma once

#include <algorithm>
#include <cstddef>
#include <span>
#include <stdexcept>

namespace mainbore::hydraulics::detail {

template <class Row, class Key>
void require_increasing(std::span<const Row> table, Key key, const char* message) {
  bool increases = true;
  for (std::size_t i = 1; i < table.size(); ++i) increases &= key(table[i - 1]) < key(table[i]);
  if (!increases) throw std::invalid_argument(message);
}

// The index of the last row whose key is at or below `x`, kept so that a row follows it: the two rows between which, or
// beyond which, a straight line is drawn. The table has at least two rows.
template <class Row, class Key, class X>
std::size_t row_before(std::span<const Row> table, Key key, X x) {
  const auto inner = table.subspan(1, table.size() - 2);
  const auto above = std::partition_point(inner.begin(), inner.end(), [&](const Row& row) { return key(row) <= x; });
  return static_cast<std::size_t>(above - inner.begin());
}

// The value at `x` on the straight line through (x0, y0) and (x1, y1); exactly y0 and y1 at the ends.
template <class X, class Y>
Y on_line(X x, X x0, Y y0, X x1, Y y1) {
  if (x == x1) return y1;
  return y0 + (x - x0) / (x1 - x0) * (y1 - y0);
}

}  // namespace mainbore::hydraulics::detail
