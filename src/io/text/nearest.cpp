#include "io/text/nearest.hpp"

#include <algorithm>
#include <vector>

namespace mainbore::io {
namespace {

constexpr bool is_separator(char c) { return c == ' ' || c == '-' || c == '_' || c == '.' || c == '\t'; }
constexpr char lowered(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

// The next letter as it is compared; nothing at the end.
std::optional<char> next_letter(std::string_view text, std::size_t& at) {
  while (at < text.size() && is_separator(text[at])) ++at;
  if (at == text.size()) return std::nullopt;
  return lowered(text[at++]);
}

}  // namespace

std::string plain_name(std::string_view text) {
  std::string plain;
  plain.reserve(text.size());
  for (const char c : text) {
    if (!is_separator(c)) plain += lowered(c);
  }
  return plain;
}

bool same_name(std::string_view a, std::string_view b) {
  std::size_t at_a = 0;
  std::size_t at_b = 0;
  for (;;) {
    const auto letter = next_letter(a, at_a);
    if (letter != next_letter(b, at_b)) return false;
    if (!letter) return true;
  }
}

std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t most) {
  // Three rows of the usual table: the one being filled and the two above it, for swaps.
  std::vector<std::size_t> before_last(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    std::size_t least = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before_last[j - 2] + 1);
      least = std::min(least, row[j]);
    }
    if (least > most) return least;  // no row below it has less
    std::swap(before_last, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

std::optional<std::string_view> nearest(std::string_view text, std::span<const std::string_view> known) {
  constexpr std::size_t longest_word = 60;
  if (text.empty() || text.size() > longest_word) return std::nullopt;
  const std::string wanted = plain_name(text);
  std::optional<std::string_view> best;
  std::size_t best_distance = 0;
  for (const std::string_view name : known) {
    if (best && best_distance == 0) break;
    const auto letters =
        static_cast<std::size_t>(std::count_if(name.begin(), name.end(), [](char c) { return !is_separator(c); }));
    const std::size_t shorter = std::min(wanted.size(), letters);
    const std::size_t longer = std::max(wanted.size(), letters);
    std::size_t most = std::max<std::size_t>(1, longer / 3);
    if (best) most = std::min(most, best_distance - 1);
    // At least the letters that one has more.
    if (longer - shorter > most) continue;
    const std::size_t distance = edit_distance(wanted, plain_name(name), most);
    const bool nothing_shared = distance >= shorter;
    if (distance > most || nothing_shared) continue;
    best = name;
    best_distance = distance;
  }
  return best;
}

std::string listed(std::span<const std::string_view> names) {
  std::string text;
  for (const std::string_view name : names) {
    if (!text.empty()) text += ", ";
    text += name;
  }
  return text;
}

}  // namespace mainbore::io
