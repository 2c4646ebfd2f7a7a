#include "io/json_writer.hpp"

#include <cstdint>
#include <cstring>

namespace mainbore::io {
namespace {

constexpr bool needs_escape(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte < 0x20 || byte == '"' || byte == '\\' || byte == 0x7F;
}

// The first place from `from` on that needs an escape, or the end. Most of a plan is words, so eight bytes are looked
// at together: the usual tests for a byte below a limit and for a byte equal to a value.
std::size_t plain_until(std::string_view text, std::size_t from) {
  constexpr std::uint64_t each = 0x0101010101010101u;
  constexpr std::uint64_t top = 0x8080808080808080u;
  const auto any_below = [](std::uint64_t bytes, std::uint64_t limit) { return (bytes - each * limit) & ~bytes & top; };
  const auto any_equal = [&](std::uint64_t bytes, unsigned char value) { return any_below(bytes ^ (each * value), 1); };
  for (; from + 8 <= text.size(); from += 8) {
    std::uint64_t bytes = 0;
    std::memcpy(&bytes, text.data() + from, 8);
    if ((any_below(bytes, 0x20) | any_equal(bytes, '"') | any_equal(bytes, '\\') | any_equal(bytes, 0x7F)) != 0) break;
  }
  while (from < text.size() && !needs_escape(text[from])) ++from;
  return from;
}

}  // namespace

void JsonWriter::line() {
  if (style_ == JsonStyle::compact) return;
  out_ += '\n';
  out_.append(static_cast<std::size_t>(depth_) * 2, ' ');
}

void JsonWriter::before(std::string_view key) {
  if (!first_) out_ += ',';
  if (depth_ > 0) line();
  first_ = false;
  if (key.empty()) return;
  string(key);
  out_ += style_ == JsonStyle::compact ? ":" : ": ";
}

void JsonWriter::open(std::string_view key, char bracket) {
  before(key);
  out_ += bracket;
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
  out_ += style_ == JsonStyle::compact ? ",\"unit\":" : ", \"unit\": ";
  string(unit);
  out_ += '}';
}

void JsonWriter::quantity(std::string_view key, Measure value, UnitSystem system) {
  const Shown display = shown(value, system);
  if (display.unit.empty()) return number(key, display.value, display.decimals);
  quantity(key, display.value, display.decimals, display.unit);
}

void JsonWriter::size(std::string_view key, NominalSize value) { quantity(key, value.number(), 4, "in"); }

}  // namespace mainbore::io
