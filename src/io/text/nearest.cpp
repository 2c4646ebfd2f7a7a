#include "io/text/nearest.hpp"

#include <algorithm>
#include <vector>

namespace mainbore::io {

std::string plain_name(std::string_view text) {
  std::string plain;
  plain.reserve(text.size());
  for (const char c : text) {
    if (c == ' ' || c == '-' || c == '_' || c == '.' || c == '\t') continue;
    plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return plain;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Three rows of the usual table: the one being filled and the two above it, for swaps.
  std::vector<std::size_t> before_last;
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    before_last = last;
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
    const std::string plain = plain_name(name);
    const std::size_t longer = std::max(wanted.size(), plain.size());
    const std::size_t most = std::max<std::size_t>(1, longer / 3);
    // At least the letters that one has more.
    const std::size_t least = longer - std::min(wanted.size(), plain.size());
    if (least > most || (best && least >= best_distance)) continue;
    const std::size_t distance = edit_distance(wanted, plain);
    const bool nothing_shared = distance >= std::min(wanted.size(), plain.size());
    if (distance > most || nothing_shared || (best && distance >= best_distance)) continue;
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
