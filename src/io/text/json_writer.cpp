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
using SignedBytes = signed char __attribute__((vector_size(16)));

// Of each byte all bits, where it needs an escape: of a byte and one, as they wrap, those of no plain ASCII are the least.
auto copy_block(char* to, const char* from) {
  Bytes bytes;
  std::memcpy(&bytes, from, sizeof(bytes));
  std::memcpy(to, &bytes, sizeof(bytes));
  return (reinterpret_cast<SignedBytes>(bytes + 1) <= 0x20) | (bytes == '"') | (bytes == '\\');
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
  char* const at = room_for(1 + indent);
  *at = '\n';
  std::memset(at + 1, ' ', indent);
  at_ = at + 1 + indent;
}

void JsonWriter::back_to(Mark mark) {
  if (mark.size < out_.size()) {
    out_.resize(mark.size);
    at_ = page_.data();
  } else {
    at_ = page_.data() + (mark.size - out_.size());
  }
  depth_ = mark.depth;
  first_ = mark.first;
}

// Copies a name and returns the place behind it. There are a thousand to a plan, and a call for each of their few bytes
// takes longer than these.
char* JsonWriter::put(char* to, std::string_view name) {
  const auto ends = [&](auto word) {
    std::memcpy(&word, name.data(), sizeof(word));
    std::memcpy(to, &word, sizeof(word));
    std::memcpy(&word, name.data() + name.size() - sizeof(word), sizeof(word));
    std::memcpy(to + name.size() - sizeof(word), &word, sizeof(word));
  };
  if (name.size() > 16) std::memcpy(to, name.data(), name.size());
  else if (name.size() >= 8) ends(std::uint64_t{});
  else if (name.size() >= 4) ends(std::uint32_t{});
  else if (name.size() >= 2) ends(std::uint16_t{});
  else if (!name.empty()) *to = name.front();
  return to + name.size();
}

char* JsonWriter::begin_pretty(std::string_view key) {
  if (!first_) put_byte(',');
  if (depth_ > 0) line();
  first_ = false;
  char* at = room_for(key.size() + 4);
  if (key.empty()) return at;
  *at++ = '"';
  at = put(at, key);
  return put(at, "\": ");
}

void JsonWriter::begin_object_named(std::string_view name) {
  text({}, name);
  at_ = put(room_for(0), style_ == JsonStyle::compact ? ":{" : ": {");
  ++depth_;
  first_ = true;
}

void JsonWriter::write_text(char* at, std::string_view value) {
  if (static_cast<std::size_t>(page_.data() + page_.size() - at) < value.size() + 2) return write_long(at, value);
  if (!copy_plain(at + 1, value)) {
    at_ = at;
    return write_escaped(value);
  }
  *at++ = '"';
  at += value.size();
  *at = '"';
  at_ = at + 1;
}

void JsonWriter::write_long(char* at, std::string_view value) {
  at_ = at;
  settle();
  if (value.size() + 2 <= page_.size()) write_text(at_, value);
  else write_escaped(value);
}

void JsonWriter::write_escaped(std::string_view value) {
  settle();
  out_ += '"';
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
  put_byte(':');
  first_ = true;  // no comma before the value
  text({}, value);
  first_ = false;
}

void JsonWriter::write_whole(char* at, std::int64_t value) { at_ = std::to_chars(at, at + most_of_value, value).ptr; }

void JsonWriter::write_number(char* at, double value, int decimals) { at_ = put_number(at, value, decimals); }

void JsonWriter::write_quantity(char* at, const Shown& display) {
  const bool compact = style_ == JsonStyle::compact;
  at = compact ? put_literal(at, "{\"value\":") : put_literal(at, "{\"value\": ");
  at = put_number(at, display.value, display.decimals);
  at = compact ? put_literal(at, ",\"unit\":\"") : put_literal(at, ", \"unit\": \"");
  at = put(at, display.unit);
  at_ = put_literal(at, "\"}");
}

void JsonWriter::write_shown(char* at, const Shown& display) {
  if (display.unit.empty()) write_number(at, display.value, display.decimals);
  else write_quantity(at, display);
}

}  // namespace mainbore::io
