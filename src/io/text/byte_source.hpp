// Bytes of a file or a pipe, as they come.
#pragma once

#include <cstddef>
#include <functional>

namespace mainbore::io {

// Puts up to `room` bytes at `to` and says how many; 0 at the end.
using ByteSource = std::function<std::size_t(char* to, std::size_t room)>;

// The same bytes without the byte-order mark of UTF-8 before them, in whatever pieces it comes. Waits for no more than it
// takes to tell.
[[nodiscard]] ByteSource without_mark(ByteSource bytes);

}  // namespace mainbore::io
