#include "report/sheet_lines.hpp"

#include <algorithm>
#include <array>

#include "report/unbroken.hpp"

namespace mainbore::report {
namespace {

// Thousandths of an em, from the space to the tilde.
constexpr std::array<int, 95> widths = {
    228, 228, 291, 456, 456, 729, 547, 157, 273, 273, 319, 479, 228, 273, 228, 228,  // space to /
    456, 456, 456, 456, 456, 456, 456, 456, 456, 456, 228, 228, 479, 479, 479, 456,  // 0 to ?
    832, 547, 547, 592, 592, 547, 501, 638, 592, 228, 410, 547, 456, 683, 592, 638,  // @ to O
    547, 638, 592, 547, 501, 592, 547, 774, 547, 547, 501, 228, 228, 228, 385, 456,  // P to _
    273, 456, 456, 410, 456, 456, 228, 456, 456, 182, 182, 410, 182, 683, 456, 456,  // ` to o
    456, 456, 273, 410, 228, 456, 410, 592, 410, 410, 410, 274, 213, 274, 479};      // p to ~
constexpr double other = 0.6;    // a character of another script, as a rule no wider
constexpr double bolder = 1.08;  // what bold adds to running text

double width_of_byte(char c) {
  const auto byte = static_cast<unsigned char>(c);
  if (byte >= 0x20 && byte < 0x7F) return widths[byte - 0x20U] / 1000.0;
  return (byte & 0xC0U) == 0x80U ? 0.0 : other;  // counted once, at the first byte
}

// Behind the first hyphen.
std::size_t hyphen_end(std::string_view text) {
  const std::size_t hyphen = text.find('-');
  return hyphen == std::string_view::npos ? text.size() : hyphen + 1;
}

}  // namespace

double condensed_width(std::string_view text, bool bold) {
  double width = 0.0;
  for (const char c : text) width += width_of_byte(c);
  return bold ? bolder * width : width;
}

void Lines::add(std::string_view text, bool bold) {
  while (!text.empty()) {
    // A number with its unit, or a word with the hyphen or the spaces behind it. Spaces may hang over the end of a line.
    std::size_t end = unbroken_end(text, 0);
    if (!would_break(text.substr(0, end))) end = std::min(end, hyphen_end(text));
    double width = condensed_width(text.substr(0, end), bold);
    std::size_t next = end;
    while (next < text.size() && text[next] == ' ') ++next;
    if (x_ > 0.0 && x_ + width > column_) {
      ++count_;
      x_ = 0.0;
    }
    // A word longer than a line is broken.
    for (; width > column_; width -= column_) ++count_;
    x_ += width + condensed_width(text.substr(end, next - end), bold);
    text.remove_prefix(next);
  }
}

}  // namespace mainbore::report
