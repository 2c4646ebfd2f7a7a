#include "report/unbroken.hpp"

#include <algorithm>
#include <array>

#include "text/digit.hpp"

namespace mainbore::report {
namespace {

constexpr std::array<std::string_view, 22> bound_units = {
    "in",  "ft",  "psi",  "lbf", "ft-lbf", "gpm", "degF", "mm",  "m",       "kPa",     "N",
    "N-m", "L/s", "degC", "%",   "deg",    "h",   "min",  "tsf", "o'clock", "threads", "turns"};

using text::is_digit;

bool is_number(std::string_view word) {
  return !word.empty() && is_digit(word.front()) && word.find_first_not_of("0123456789.-/:") == std::string_view::npos;
}

bool is_blank(std::string_view word) { return !word.empty() && word.find_first_not_of('_') == std::string_view::npos; }

bool is_unit(std::string_view word) {
  while (!word.empty() && std::string_view(".,;:)").find(word.back()) != std::string_view::npos) word.remove_suffix(1);
  return std::find(bound_units.begin(), bound_units.end(), word) != bound_units.end();
}

std::size_t word_end(std::string_view text, std::size_t at) { return std::min(text.find(' ', at), text.size()); }

std::string_view word_at(std::string_view text, std::size_t at) { return text.substr(at, word_end(text, at) - at); }

// Of the word behind the spaces at `at`.
std::size_t next_word(std::string_view text, std::size_t at) {
  return std::min(text.find_first_not_of(' ', at), text.size());
}

}  // namespace

std::size_t unbroken_end(std::string_view text, std::size_t at) {
  const std::size_t end = word_end(text, at);
  std::string_view word = text.substr(at, end - at);
  if (!word.empty() && word.front() == '(') word.remove_prefix(1);
  if (!is_number(word) && !is_blank(word)) return end;
  const std::size_t unit = next_word(text, end);
  if (!is_unit(word_at(text, unit))) return end;
  const std::size_t behind = word_end(text, unit);
  if (word_at(text, unit) != "ft") return behind;
  const std::size_t inches = next_word(text, behind);
  const std::size_t inch_unit = next_word(text, word_end(text, inches));
  const bool goes_on = is_number(word_at(text, inches)) && is_unit(word_at(text, inch_unit)) &&
                       word_at(text, inch_unit).substr(0, 2) == "in";
  return goes_on ? word_end(text, inch_unit) : behind;
}

bool would_break(std::string_view piece) {
  constexpr std::size_t longest = 24;  // what is longer is somebody's own text, and may need to break
  if (piece.size() > longest) return false;
  if (piece.find(' ') != std::string_view::npos) return true;
  return std::any_of(piece.begin(), piece.end(), is_digit) && piece.find_first_of("-/") != std::string_view::npos;
}

}  // namespace mainbore::report
