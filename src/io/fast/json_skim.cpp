#include "io/fast/json_skim.hpp"

#include <algorithm>
#include <array>

#include "io/text/json_text.hpp"
#include "io/text/json_writer.hpp"
#include "io/text/text_scan.hpp"
#include "io/text/word_scan.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {
namespace {

enum class Byte : std::uint8_t { plain, quote, backslash, control, high };

// What a byte is in a string.
constexpr auto kind_of = [] {
  std::array<Byte, 256> kinds{};
  for (std::size_t byte = 0; byte < 0x20; ++byte) kinds[byte] = Byte::control;
  for (std::size_t byte = 0x80; byte < 256; ++byte) kinds[byte] = Byte::high;
  kinds['"'] = Byte::quote;
  kinds['\\'] = Byte::backslash;
  return kinds;
}();

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

std::uint32_t code_at(std::string_view digits) {
  std::uint32_t code = 0;
  for (const char c : digits) code = code << 4 | static_cast<std::uint32_t>(hex_digit(c));
  return code;
}

}  // namespace

void JsonSkim::begin(std::string_view text, std::string_view whole) {
  text_ = text;
  whole_ = whole;
  at_ = 0;
  ascii_ = true;
  nodes_.clear();
  nodes_.emplace_back();
}

std::size_t JsonSkim::read_first(std::string_view text, std::string_view whole) {
  begin(text, whole);
  if (!value(0, true) || (!ascii_ && text::first_not_utf8(text_.substr(0, at_)))) return 0;
  return at_;
}

void JsonSkim::take(std::string_view text, std::span<const SkimNode> nodes) {
  text_ = text;
  nodes_.assign(nodes.begin(), nodes.end());
}

bool JsonSkim::read(std::string_view text, std::string_view whole) {
  begin(text, whole);
  skip_space();
  if (!value(0, true)) return false;
  skip_space();
  return at_ == text_.size() && (ascii_ || !text::first_not_utf8(text_));
}

std::uint32_t JsonSkim::member(std::uint32_t object, std::string_view key) const {
  for (std::uint32_t child = object + 1; child < nodes_[object].next; child = nodes_[child].next) {
    const Span& span = nodes_[child].key;
    if (text_.substr(span.begin, span.end - span.begin) == key) return child;
  }
  return 0;
}

// The last node is the value's own, where it has one.
bool JsonSkim::value(int depth, bool noted) {
  if (at_ >= text_.size() || depth > deepest) return false;
  const std::size_t index = nodes_.size() - 1;
  const std::size_t begin = at_;
  JsonType type = JsonType::null;
  bool escaped = false;
  bool good = false;
  switch (text_[at_]) {
    case '{':
      type = JsonType::object;
      good = object(depth, noted);
      break;
    case '[':
      type = JsonType::array;
      good = array(depth, noted);
      break;
    case '"':
      type = JsonType::string;
      good = string(escaped);
      break;
    case 't':
      type = JsonType::boolean;
      good = word("true");
      break;
    case 'f':
      type = JsonType::boolean;
      good = word("false");
      break;
    case 'n':
      good = word("null");
      break;
    default:
      type = JsonType::number;
      good = number();
  }
  if (!noted || !good) return good;
  SkimNode& node = nodes_[index];
  node.type = type;
  node.escaped = escaped;
  node.span = {begin, at_};
  node.next = static_cast<std::uint32_t>(nodes_.size());
  return true;
}

bool JsonSkim::object(int depth, bool noted) {
  ++at_;
  skip_space();
  if (at_ < text_.size() && text_[at_] == '}') return ++at_, true;
  for (;;) {
    if (at_ >= text_.size() || text_[at_] != '"') return false;
    const std::size_t begin = at_ + 1;
    bool escaped = false;
    if (!string(escaped)) return false;
    const Span key = {begin, at_ - 1};
    skip_space();
    if (at_ >= text_.size() || text_[at_] != ':') return false;
    ++at_;
    skip_space();
    if (noted) {
      SkimNode& node = nodes_.emplace_back();
      node.key = key;
      node.key_escaped = escaped;
    }
    const bool alone = depth == 0 && !whole_.empty() && text_.substr(key.begin, key.end - key.begin) == whole_;
    const std::size_t own = nodes_.size() - 1;
    const std::size_t value_begin = at_;
    if (!value(depth + 1, noted && !alone)) return false;
    if (noted && alone) {
      const char first = text_[value_begin];
      nodes_[own].type = first == '{' ? JsonType::object : first == 'n' ? JsonType::null : JsonType::string;
      nodes_[own].span = {value_begin, at_};
      nodes_[own].next = static_cast<std::uint32_t>(own + 1);
    }
    skip_space();
    if (at_ >= text_.size()) return false;
    const char c = text_[at_++];
    if (c == '}') return true;
    if (c != ',') return false;
    skip_space();
  }
}

bool JsonSkim::array(int depth, bool noted) {
  ++at_;
  skip_space();
  if (at_ < text_.size() && text_[at_] == ']') return ++at_, true;
  for (;;) {
    if (noted) nodes_.emplace_back();
    if (!value(depth + 1, noted)) return false;
    skip_space();
    if (at_ >= text_.size()) return false;
    const char c = text_[at_++];
    if (c == ']') return true;
    if (c != ',') return false;
    skip_space();
  }
}

bool JsonSkim::string(bool& escaped) {
  const char* at = text_.data() + at_ + 1;
  const char* const end = text_.data() + text_.size();
  const auto odd = [](TextWord bytes) {
    return below_space(bytes) | delete_or_above(bytes) | equal_to('"', bytes) | equal_to('\\', bytes);
  };
  at += bytes_without({at, static_cast<std::size_t>(end - at)}, odd);
  for (; at < end; ++at) {
    const Byte kind = kind_of[static_cast<unsigned char>(*at)];
    if (kind == Byte::plain) continue;
    at_ = static_cast<std::size_t>(at - text_.data());
    if (kind == Byte::quote) return ++at_, true;
    if (kind == Byte::control) return false;
    if (kind == Byte::high) {
      ascii_ = false;
      continue;
    }
    escaped = true;
    if (!escape()) return false;
    at = text_.data() + at_ - 1;
  }
  return false;
}

// Halves of a character come in pairs.
bool JsonSkim::escape() {
  const char c = at_ + 1 < text_.size() ? text_[at_ + 1] : '\0';
  at_ += 2;
  if (c != 'u') return escaped_character(c).has_value();
  std::uint32_t code = 0;
  if (!hex4(code) || is_low_half(code)) return false;
  if (!is_high_half(code)) return true;
  if (text_.substr(at_, 2) != "\\u") return false;
  at_ += 2;
  return hex4(code) && is_low_half(code);
}

bool JsonSkim::hex4(std::uint32_t& code) {
  const std::string_view digits = text_.substr(std::min(at_, text_.size()), 4);
  if (digits.size() != 4 || !std::all_of(digits.begin(), digits.end(), [](char c) { return hex_digit(c) >= 0; })) {
    return false;
  }
  code = code_at(digits);
  at_ += 4;
  return true;
}

bool JsonSkim::number() {
  const char* at = text_.data() + at_;
  const char* const end = text_.data() + text_.size();
  const auto digits = [&] {
    const char* const begin = at;
    while (at < end && is_digit(*at)) ++at;
    return at > begin;
  };
  if (at < end && *at == '-') ++at;
  if (at < end && *at == '0') ++at;
  else if (!digits()) return false;
  if (at < end && *at == '.') {
    ++at;
    if (!digits()) return false;
  }
  if (at < end && (*at == 'e' || *at == 'E')) {
    ++at;
    if (at < end && (*at == '+' || *at == '-')) ++at;
    if (!digits()) return false;
  }
  at_ = static_cast<std::size_t>(at - text_.data());
  return true;
}

bool JsonSkim::word(std::string_view wanted) {
  if (!text_.substr(at_).starts_with(wanted)) return false;
  at_ += wanted.size();
  return true;
}

void append_unescaped(std::string& out, std::string_view written) {
  for (std::size_t at = 0; at < written.size();) {
    const std::size_t backslash = std::min(written.find('\\', at), written.size());
    out.append(written.substr(at, backslash - at));
    if (backslash == written.size()) return;
    const char c = written[backslash + 1];
    at = backslash + 2;
    if (c != 'u') {
      out += escaped_character(c).value_or(c);
      continue;
    }
    std::uint32_t code = code_at(written.substr(at, 4));
    at += 4;
    if (is_high_half(code)) {
      code = joined_halves(code, code_at(written.substr(at + 2, 4)));
      at += 6;
    }
    append_utf8(out, code);
  }
}

void append_json_as_written(std::string& out, std::string_view written, bool one_line) {
  const std::size_t begin = out.size();
  if (!any_byte(written, delete_or_above)) {  // nothing that may be hidden
    out.append(written);
  } else {
    for (std::size_t at = 0; at < written.size();) {
      const text::Character one = text::first_character(written.substr(at));
      append_json_character(out, one, written.substr(at, one.size));
      at += one.size;
    }
  }
  if (!one_line) return;
  std::replace_if(
      out.begin() + static_cast<std::ptrdiff_t>(begin), out.end(), [](char c) { return c == '\n' || c == '\r'; }, ' ');
}

}  // namespace mainbore::io
