// What is asked of every byte of millions of orders, asked of eight bytes at once: a fifth of the instructions.
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string_view>

namespace mainbore::io {

// Eight bytes of a text. Each test below has the top bit of a byte set where the byte is of that kind; above the first
// such byte bits may stand that mean nothing.
using TextWord = std::uint64_t;
inline constexpr TextWord each_byte = 0x0101010101010101u;
inline constexpr TextWord top_bits = 0x8080808080808080u;

[[nodiscard]] constexpr TextWord below_space(TextWord bytes) { return (bytes - each_byte * 0x20) & ~bytes & top_bits; }
[[nodiscard]] constexpr TextWord delete_or_above(TextWord bytes) { return (bytes | (bytes + each_byte)) & top_bits; }
[[nodiscard]] constexpr TextWord equal_to(char c, TextWord bytes) {
  const TextWord other = bytes ^ each_byte * static_cast<unsigned char>(c);
  return (other - each_byte) & ~other & top_bits;
}

// Whether a test holds for any byte. What fills up the last word is a letter.
template <class Test>
[[nodiscard]] bool any_byte(std::string_view text, Test test) {
  TextWord bytes = 0;
  for (; text.size() >= sizeof(bytes); text.remove_prefix(sizeof(bytes))) {
    std::memcpy(&bytes, text.data(), sizeof(bytes));
    if (test(bytes) != 0) return true;
  }
  if (text.empty()) return false;
  bytes = each_byte * 'x';
  std::memcpy(&bytes, text.data(), text.size());
  return test(bytes) != 0;
}

// How many bytes at the beginning of a text a test surely does not hold for.
template <class Test>
[[nodiscard]] std::size_t bytes_without(std::string_view text, Test test) {
  std::size_t at = 0;
  TextWord bytes = 0;
  for (; at + sizeof(bytes) <= text.size(); at += sizeof(bytes)) {
    std::memcpy(&bytes, text.data() + at, sizeof(bytes));
    const TextWord found = test(bytes);
    if (found == 0) continue;
    if constexpr (std::endian::native != std::endian::little) return at;
    return at + static_cast<std::size_t>(std::countr_zero(found)) / 8;
  }
  return at;
}

}  // namespace mainbore::io
