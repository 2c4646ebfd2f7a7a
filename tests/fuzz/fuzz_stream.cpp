// Any bytes at all as a stream of orders: no crash, a record for each order, and the same records whatever pieces the
// stream comes in, and whether what was decided is remembered or not. The first bytes say how it is cut.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <string>
#include <string_view>

#include "batch/batch.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules_file.hpp"
#include "text/foreign.hpp"

namespace {

using namespace mainbore;
using namespace mainbore::batch;

void require(bool holds) {
  if (!holds) std::abort();
}

// Pieces of `first` bytes, then of `later`.
io::ByteSource source_of(std::string_view text, std::size_t first, std::size_t later) {
  return [text, first, later](char* to, std::size_t room) mutable {
    const std::size_t size = std::min({text.size(), room, first});
    if (size > 0) std::memcpy(to, text.data(), size);
    text.remove_prefix(size);
    first = later;
    return size;
  };
}

std::string records_of(io::ByteSource bytes, InputFormat in, BatchFormat format, bool remember = true) {
  static const Planner planner(*load_rules(Catalog::builtin()).rules);
  BatchOptions options;
  options.format = format;
  options.remember = remember;
  std::string out;
  Tally tally;
  (void)plan_orders(std::move(bytes), in, "orders", planner, options, [&](Piece& piece) {
    out += piece.out;
    tally += piece.tally;
  });
  require(tally.internal == 0);
  require(static_cast<std::uint64_t>(std::count(out.begin(), out.end(), '\n')) == tally.all());
  return out;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 3) return 0;
  const auto in = static_cast<InputFormat>(data[0] % 4);
  const BatchFormat format = data[0] / 4 % 2 == 0 ? BatchFormat::verdicts : BatchFormat::table;
  const std::size_t first = 1 + data[1];
  const std::size_t later = 1 + data[2] % 64;
  const std::string_view text(reinterpret_cast<const char*>(data) + 3, size - 3);
  const std::string whole = records_of(source_of(text, text.size() + 1, text.size() + 1), in, format);
  require(whole == records_of(source_of(text, first, later), in, format));
  require(whole == records_of(source_of(text, first, later), in, format, false));
  for (std::string_view rest = whole; !rest.empty();) {
    const text::Character one = text::first_character(rest);
    require(one.good && (one.code == U'\n' || one.code == U'\r' || !text::is_hidden(one.code)));
    rest.remove_prefix(one.size);
  }
  return 0;
}
