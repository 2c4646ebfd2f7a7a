#include "text/foreign.hpp"

#include <algorithm>
#include <array>

namespace mainbore::text {
namespace {

struct Range {
  char32_t first;
  char32_t last;
};

// Unicode 15.1: general category Cc, Cf where it has no ink of its own, Zl and Zp; and Default_Ignorable_Code_Point.
constexpr std::array hidden = {
    Range{0x0000, 0x001F},   Range{0x007F, 0x009F},   Range{0x00AD, 0x00AD},   Range{0x034F, 0x034F},
    Range{0x061C, 0x061C},   Range{0x115F, 0x1160},   Range{0x17B4, 0x17B5},   Range{0x180B, 0x180F},
    Range{0x200B, 0x200F},   Range{0x2028, 0x202E},   Range{0x2060, 0x206F},   Range{0x3164, 0x3164},
    Range{0xFDD0, 0xFDEF},   Range{0xFE00, 0xFE0F},   Range{0xFEFF, 0xFEFF},   Range{0xFFA0, 0xFFA0},
    Range{0xFFF0, 0xFFFB},   Range{0x13430, 0x1343F}, Range{0x1BCA0, 0x1BCA3}, Range{0x1D173, 0x1D17A},
    Range{0xE0000, 0xE0FFF},
};

// Category Zs, and the braille pattern without dots.
constexpr std::array spaces = {
    Range{0x0020, 0x0020}, Range{0x00A0, 0x00A0}, Range{0x1680, 0x1680}, Range{0x2000, 0x200A},
    Range{0x202F, 0x202F}, Range{0x205F, 0x205F}, Range{0x2800, 0x2800}, Range{0x3000, 0x3000},
};

template <std::size_t N>
bool stands_in(const std::array<Range, N>& ranges, char32_t code) {
  const auto after = std::upper_bound(ranges.begin(), ranges.end(), code,
                                      [](char32_t value, const Range& range) { return value < range.first; });
  return after != ranges.begin() && code <= (after - 1)->last;
}

constexpr bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u; }
constexpr bool is_plain(char c) { return c >= 0x20 && c < 0x7F; }

void append_number(std::string& out, std::string_view lead, char32_t value, int least_digits) {
  constexpr std::string_view hex = "0123456789ABCDEF";
  int digits = least_digits;
  while (digits < 8 && (value >> (4 * digits)) != 0) ++digits;
  (out += '<') += lead;
  for (int digit = digits - 1; digit >= 0; --digit) out += hex[(value >> (4 * digit)) & 0xFu];
  out += '>';
}

void append(std::string& out, std::string_view text, bool keep_lines) {
  while (!text.empty()) {
    const auto odd = std::find_if(text.begin(), text.end(), [](char c) { return !is_plain(c); });
    const auto plain = static_cast<std::size_t>(odd - text.begin());
    out += text.substr(0, plain);
    text.remove_prefix(plain);
    if (text.empty()) break;
    const Character one = first_character(text);
    if (!one.good) append_number(out, "", static_cast<unsigned char>(text.front()), 2);
    else if (is_hidden(one.code) && !(keep_lines && one.code == U'\n')) append_number(out, "U+", one.code, 4);
    else out += text.substr(0, one.size);
    text.remove_prefix(one.size);
  }
}

}  // namespace

Character first_character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(0);
  if (lead < 0x80) return {1, lead, true};
  const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < size) return {};
  char32_t code = lead & (0xFFu >> (size + 1));
  for (std::size_t i = 1; i < size; ++i) {
    if (!continues(text[i])) return {};
    code = code << 6u | (byte(i) & 0x3Fu);
  }
  const char32_t least = size == 2 ? 0x80 : size == 3 ? 0x800 : 0x10000;
  if (code < least || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) return {};
  return {size, code, true};
}

std::optional<std::size_t> first_not_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const Character one = first_character(text.substr(i));
    if (!one.good) return i;
    i += one.size;
  }
  return std::nullopt;
}

bool is_hidden(char32_t code) { return stands_in(hidden, code) || (code & 0xFFFEu) == 0xFFFEu; }

void append_visible(std::string& out, std::string_view text) { append(out, text, false); }
std::string visible(std::string_view text) {
  std::string out;
  append(out, text, false);
  return out;
}
std::string visible_lines(std::string_view text) {
  std::string out;
  append(out, text, true);
  return out;
}

std::string quoted(std::string_view text) {
  constexpr std::size_t longest = 60;
  const std::string_view kept = cut(text, longest);
  return '"' + visible(kept) + (kept.size() < text.size() ? "...\"" : "\"");
}

std::string_view cut(std::string_view text, std::size_t most) {
  if (text.size() <= most) return text;
  std::size_t end = most;
  while (end > 0 && most - end < 4 && continues(text[end])) --end;
  if (continues(text[end])) end = most;  // no character is so long: these are bytes of none
  return text.substr(0, end);
}

bool is_blank(std::string_view text) {
  while (!text.empty()) {
    const Character one = first_character(text);
    if (!one.good || !(is_hidden(one.code) || stands_in(spaces, one.code))) return false;
    text.remove_prefix(one.size);
  }
  return true;
}

}  // namespace mainbore::text
