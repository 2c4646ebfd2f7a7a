#include "io/text/json_writer.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <cstring>

#include "text/foreign.hpp"
#include "units/digits.hpp"

namespace mainbore::io {
namespace {

constexpr auto escaped_bytes = [] {
  std::array<bool, 256> bytes{};
  for (std::size_t byte = 0; byte < 0x20; ++byte) bytes[byte] = true;
  bytes['"'] = bytes['\\'] = true;
  for (std::size_t byte = 0x7F; byte < 256; ++byte) bytes[byte] = true;
  return bytes;
}();
// Perhaps, where it is no ASCII: some characters are, and so are bytes that are no UTF-8.
bool needs_escape(char c) { return escaped_bytes[static_cast<unsigned char>(c)]; }

// Sixteen bytes at a time, in one instruction where the machine has one. A vector of GCC and Clang.
using Bytes = unsigned char __attribute__((vector_size(16)));

// Of each byte all bits, where it needs an escape.
auto copy_block(char* to, const char* from) {
  Bytes bytes;
  std::memcpy(&bytes, from, sizeof(bytes));
  std::memcpy(to, &bytes, sizeof(bytes));
  return (bytes < 0x20) | (bytes == '"') | (bytes == '\\') | (bytes >= 0x7F);
}

// The same of eight: of each byte its top bit, where it is odd. A borrow goes up only from a byte that is odd itself.
bool is_plain(std::uint64_t bytes) {
  constexpr std::uint64_t each = 0x0101010101010101u;
  const auto zero = [&](std::uint64_t value) { return value - each; };
  const std::uint64_t odd =
      (bytes - each * 0x20) | zero(bytes ^ each * '"') | zero(bytes ^ each * '\\') | zero(bytes ^ each * 0x7F);
  return ((odd | bytes) & (each * 0x80)) == 0;
}

// Copies a text and says whether it is plain in one pass: most of a plan is words. The end is copied as one more block,
// some bytes of which are copied and tested twice.
bool copy_plain(char* to, std::string_view text) {
  const char* const from = text.data();
  const std::size_t size = text.size();
  if (size >= sizeof(Bytes)) {
    const std::size_t last = size - sizeof(Bytes);
    auto odd = copy_block(to + last, from + last);
    for (std::size_t at = 0; at < last; at += sizeof(Bytes)) odd |= copy_block(to + at, from + at);
    std::array<std::uint64_t, 2> halves{};
    std::memcpy(halves.data(), &odd, sizeof(odd));
    return (halves[0] | halves[1]) == 0;
  }
  const auto ends = [&](auto first) {  // both of this size, which together are the text
    auto last = first;
    std::memcpy(&first, from, sizeof(first));
    std::memcpy(&last, from + size - sizeof(last), sizeof(last));
    std::memcpy(to, &first, sizeof(first));
    std::memcpy(to + size - sizeof(last), &last, sizeof(last));
    return std::array<std::uint64_t, 2>{first, last};
  };
  if (size >= sizeof(std::uint64_t)) {
    const auto [first, last] = ends(std::uint64_t{});
    return is_plain(first) && is_plain(last);
  }
  if (size >= sizeof(std::uint32_t)) {
    const auto [first, last] = ends(std::uint32_t{});
    return is_plain(first | last << 32);
  }
  bool plain = true;
  for (std::size_t at = 0; at < size; ++at) {
    to[at] = from[at];
    plain = plain && !needs_escape(from[at]);
  }
  return plain;
}

void append_code_unit(std::string& out, std::uint32_t unit) {
  constexpr std::string_view hex = "0123456789abcdef";
  out += "\\u";
  for (int shift = 12; shift >= 0; shift -= 4) out += hex[unit >> shift & 0xFu];
}

// The first place from `from` on that needs an escape, or the end.
std::size_t plain_until(std::string_view text, std::size_t from) {
  while (from < text.size() && !needs_escape(text[from])) ++from;
  return from;
}

}  // namespace

void append_json_character(std::string& out, text::Character one, std::string_view bytes) {
  constexpr std::uint32_t replacement = 0xFFFD;
  const auto code = static_cast<std::uint32_t>(one.code);
  if (!one.good) return append_code_unit(out, replacement);
  if (!text::is_hidden(one.code)) {
    out += bytes;
  } else if (code < 0x10000) {
    append_code_unit(out, code);
  } else {
    append_code_unit(out, 0xD800 + ((code - 0x10000) >> 10));
    append_code_unit(out, 0xDC00 + ((code - 0x10000) & 0x3FF));
  }
}

void JsonWriter::line() {
  if (style_ == JsonStyle::compact) return;
  const std::size_t indent = static_cast<std::size_t>(depth_) * 2;
  char* at = more(1 + indent);
  *at++ = '\n';
  std::memset(at, ' ', indent);
}

void JsonWriter::back_to(Mark mark) {
  room_ = out_.size() - mark.size;
  depth_ = mark.depth;
  first_ = mark.first;
}

void JsonWriter::grow(std::size_t size) {
  constexpr std::size_t least = 64;
  constexpr std::size_t most = 4096;
  const std::size_t added = size + std::clamp(this->size() - start_, least, most);
  out_.resize(out_.size() + added);
  room_ += added;
}

void JsonWriter::settle() {
  out_.resize(size());
  room_ = 0;
}

// Copies a key or a unit and returns the place behind it. There are a thousand to a plan, and a call for each of their
// few bytes takes longer than these.
char* JsonWriter::put(char* to, std::string_view text) {
  const auto ends = [&](auto word) {
    std::memcpy(&word, text.data(), sizeof(word));
    std::memcpy(to, &word, sizeof(word));
    std::memcpy(&word, text.data() + text.size() - sizeof(word), sizeof(word));
    std::memcpy(to + text.size() - sizeof(word), &word, sizeof(word));
  };
  if (text.size() > 16) std::memcpy(to, text.data(), text.size());
  else if (text.size() >= 8) ends(std::uint64_t{});
  else if (text.size() >= 4) ends(std::uint32_t{});
  else if (text.size() >= 2) ends(std::uint16_t{});
  else if (!text.empty()) *to = text.front();
  return to + text.size();
}

char* JsonWriter::begin_pretty(std::string_view key, std::size_t room) {
  if (!first_) *more(1) = ',';
  if (depth_ > 0) line();
  first_ = false;
  char* at = more((key.empty() ? 0 : key.size() + 4) + room);
  if (key.empty()) return at;
  *at++ = '"';
  at = put(at, key);
  return put(at, "\": ");
}

void JsonWriter::begin_object_named(std::string_view name) {
  text({}, name);
  const std::string_view opening = style_ == JsonStyle::compact ? ":{" : ": {";
  put(more(opening.size()), opening);
  ++depth_;
  first_ = true;
}

void JsonWriter::close(char bracket) {
  --depth_;
  if (!first_) line();
  *more(1) = bracket;
  first_ = false;
  if (depth_ == 0) settle();
}

void JsonWriter::write_text(char* at, std::string_view value) {
  *at++ = '"';
  const bool plain = copy_plain(at, value);
  at[value.size()] = '"';
  if (plain) return;
  ends_at(at);
  append_escaped(value);
}

void JsonWriter::append_escaped(std::string_view value) {
  settle();
  std::size_t written = 0;
  for (std::size_t i = plain_until(value, 0); i < value.size(); i = plain_until(value, written)) {
    out_.append(value.substr(written, i - written));
    written = i + 1;
    switch (value[i]) {
      case '"':
        out_ += "\\\"";
        break;
      case '\\':
        out_ += "\\\\";
        break;
      case '\n':
        out_ += "\\n";
        break;
      case '\r':
        out_ += "\\r";
        break;
      case '\t':
        out_ += "\\t";
        break;
      default: {
        const text::Character one = text::first_character(value.substr(i));
        written = i + one.size;
        append_json_character(out_, one, value.substr(i, one.size));
      }
    }
  }
  out_.append(value.substr(written));
  out_ += '"';
}

void JsonWriter::text_named(std::string_view name, std::string_view value) {
  text({}, name);
  *more(1) = ':';
  first_ = true;  // no comma before the value
  text({}, value);
  first_ = false;
}

char* JsonWriter::room_at(char* at, std::size_t size) {
  ends_at(at);
  return more(size);
}

void JsonWriter::write_word(char* at, std::string_view word) { put(room_at(at, word.size()), word); }

void JsonWriter::write_whole(char* at, std::int64_t value) {
  constexpr std::size_t longest = 24;
  at = room_at(at, longest);
  ends_at(std::to_chars(at, at + longest, value).ptr);
}

void JsonWriter::write_number(char* at, double value, int decimals) {
  ends_at(put_number(room_at(at, longest_number), value, decimals));
}

void JsonWriter::write_quantity(char* at, const Shown& display) {
  const bool compact = style_ == JsonStyle::compact;
  const std::string_view opening = compact ? "{\"value\":" : "{\"value\": ";
  const std::string_view middle = compact ? ",\"unit\":\"" : ", \"unit\": \"";
  at = room_at(at, opening.size() + longest_number + middle.size() + display.unit.size() + 2);
  at = put_number(put(at, opening), display.value, display.decimals);
  at = put(put(at, middle), display.unit);
  *at++ = '"';
  *at++ = '}';
  ends_at(at);
}

void JsonWriter::write_shown(char* at, const Shown& display) {
  if (display.unit.empty()) write_number(at, display.value, display.decimals);
  else write_quantity(at, display);
}

}  // namespace mainbore::io
