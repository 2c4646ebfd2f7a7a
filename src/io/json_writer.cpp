#include "io/json_writer.hpp"

#include <array>
#include <cstdint>
#include <cstring>

namespace mainbore::io {
namespace {

constexpr auto escaped_bytes = [] {
  std::array<bool, 256> bytes{};
  for (std::size_t byte = 0; byte < 0x20; ++byte) bytes[byte] = true;
  bytes['"'] = bytes['\\'] = bytes[0x7F] = true;
  return bytes;
}();
bool needs_escape(char c) { return escaped_bytes[static_cast<unsigned char>(c)]; }

// Sixteen bytes at a time, in one instruction where the machine has one. A vector of GCC and Clang.
using Bytes = unsigned char __attribute__((vector_size(16)));

bool is_plain(const char* at) {
  Bytes bytes;
  std::memcpy(&bytes, at, sizeof(bytes));
  const auto odd = (bytes < 0x20) | (bytes == '"') | (bytes == '\\') | (bytes == 0x7F);
  std::array<std::uint64_t, 2> halves{};
  std::memcpy(halves.data(), &odd, sizeof(odd));
  return (halves[0] | halves[1]) == 0;
}

// The first place from `from` on that needs an escape, or the end. Most of a plan is words.
std::size_t plain_until(std::string_view text, std::size_t from) {
  while (from + sizeof(Bytes) <= text.size() && is_plain(text.data() + from)) from += sizeof(Bytes);
  // The rest of a long text as one more block, some bytes of which are tested twice.
  const bool rest = from < text.size() && from + sizeof(Bytes) > text.size() && text.size() >= sizeof(Bytes);
  if (rest && is_plain(text.data() + text.size() - sizeof(Bytes))) return text.size();
  while (from < text.size() && !needs_escape(text[from])) ++from;
  return from;
}

}  // namespace

void JsonWriter::line() {
  if (style_ == JsonStyle::compact) return;
  out_ += '\n';
  out_.append(static_cast<std::size_t>(depth_) * 2, ' ');
}

// In one piece: there are some hundred keys to a plan.
void JsonWriter::before_compact(std::string_view key) {
  std::array<char, 64> piece;
  std::size_t size = 0;
  if (!first_) piece[size++] = ',';
  first_ = false;
  if (!key.empty()) {
    piece[size++] = '"';
    if (key.size() + 4 > piece.size()) {
      out_.append(piece.data(), size);
      out_ += key;
      size = 0;
    } else {
      std::memcpy(piece.data() + size, key.data(), key.size());
      size += key.size();
    }
    piece[size++] = '"';
    piece[size++] = ':';
  }
  out_.append(piece.data(), size);
}

void JsonWriter::back_to(Mark mark) {
  out_.resize(mark.size);
  depth_ = mark.depth;
  first_ = mark.first;
}

void JsonWriter::before(std::string_view key) {
  if (style_ == JsonStyle::compact) return before_compact(key);
  if (!first_) out_ += ',';
  if (depth_ > 0) line();
  first_ = false;
  if (!key.empty()) ((out_ += '"') += key) += "\": ";
}

void JsonWriter::open(std::string_view key, char bracket) {
  before(key);
  out_ += bracket;
  ++depth_;
  first_ = true;
}

void JsonWriter::begin_object_named(std::string_view name) {
  before({});
  string(name);
  out_ += style_ == JsonStyle::compact ? ":{" : ": {";
  ++depth_;
  first_ = true;
}

void JsonWriter::close(char bracket) {
  --depth_;
  if (!first_) line();
  out_ += bracket;
  first_ = false;
}

void JsonWriter::string(std::string_view value) {
  constexpr std::string_view hex = "0123456789abcdef";
  out_ += '"';
  std::size_t written = 0;
  for (std::size_t i = plain_until(value, 0); i < value.size(); i = plain_until(value, i + 1)) {
    out_.append(value.substr(written, i - written));
    written = i + 1;
    const auto byte = static_cast<unsigned char>(value[i]);
    switch (byte) {
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
      default:
        out_ += "\\u00";
        out_ += hex[byte >> 4];
        out_ += hex[byte & 0xF];
    }
  }
  out_.append(value.substr(written));
  out_ += '"';
}

void JsonWriter::text(std::string_view key, std::string_view value) {
  before(key);
  string(value);
}

void JsonWriter::flag(std::string_view key, bool value) {
  before(key);
  out_ += value ? "true" : "false";
}

void JsonWriter::whole(std::string_view key, long value) {
  before(key);
  append_number(out_, static_cast<double>(value), 0);
}

void JsonWriter::number(std::string_view key, double value, int decimals) {
  before(key);
  append_number(out_, value, decimals);
}

void JsonWriter::quantity(std::string_view key, double value, int decimals, std::string_view unit) {
  before(key);
  out_ += style_ == JsonStyle::compact ? "{\"value\":" : "{\"value\": ";
  append_number(out_, value, decimals);
  out_ += style_ == JsonStyle::compact ? ",\"unit\":\"" : ", \"unit\": \"";
  (out_ += unit) += "\"}";
}

void JsonWriter::quantity(std::string_view key, Measure value, UnitSystem system) {
  const Shown display = shown(value, system);
  if (display.unit.empty()) return number(key, display.value, display.decimals);
  quantity(key, display.value, display.decimals, display.unit);
}

void JsonWriter::size(std::string_view key, NominalSize value) { quantity(key, value.number(), 4, "in"); }

}  // namespace mainbore::io
