#include "io/text/byte_source.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace mainbore::io {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

// What has come while it might still have been the mark, and is none.
struct Begun {
  std::array<char, byte_order_mark.size()> bytes{};
  std::size_t at = 0;
  std::size_t held = 0;

  void look_for_mark(const ByteSource& source) {
    while (held < bytes.size()) {
      const std::size_t got = source(bytes.data() + held, bytes.size() - held);
      held += got;
      const bool may_be_mark = byte_order_mark.starts_with(std::string_view(bytes.data(), held));
      if (got == 0 || !may_be_mark) return;
    }
    at = held;
  }
  std::size_t give(char* to, std::size_t room) {
    const std::size_t given = std::min(room, held - at);
    std::copy_n(bytes.data() + at, given, to);
    at += given;
    return given;
  }
};

}  // namespace

ByteSource without_mark(ByteSource bytes) {
  return [source = std::move(bytes), begun = Begun(), looked = false](char* to, std::size_t room) mutable {
    if (!std::exchange(looked, true)) begun.look_for_mark(source);
    if (const std::size_t given = begun.give(to, room); given > 0) return given;
    return source(to, room);
  };
}

}  // namespace mainbore::io
