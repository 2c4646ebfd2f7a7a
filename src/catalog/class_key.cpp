#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>

#include "mainbore/catalog.hpp"

namespace mainbore {
namespace {

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_letter(char c) { return c >= 'a' && c <= 'z'; }
constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
constexpr bool parts_words(char c) { return c == ' ' || c == '\t' || c == '-' || c == '_' || c == '/'; }

// Names of standards and materials that people write before the class.
constexpr std::array<std::string_view, 15> designations = {"ansi", "awwa", "astm", "c900",  "c905",
                                                           "c909", "c906", "c901", "c151",  "c150",
                                                           "c106", "c108", "c400", "a2151", "d2241"};
constexpr std::array<std::string_view, 3> short_names = {"pvc", "dip", "di"};

constexpr std::array<std::pair<std::string_view, std::string_view>, 7> class_words = {{
    {"specialthicknessclass", "cl"},
    {"thicknessclass", "cl"},
    {"pressureclass", "pc"},
    {"schedule", "sch"},
    {"class", "cl"},
    {"sdr", "dr"},
    {"tc", "cl"},
}};

// The beginnings of some names by their first two letters: nearly every class begins otherwise, and is told so at once.
class Beginnings {
 public:
  constexpr void add(std::string_view name) { known_[place(name)] = true; }
  [[nodiscard]] constexpr bool may_begin(std::string_view text) const {
    return text.size() >= 2 && known_[place(text)];
  }

 private:
  static constexpr std::size_t place(std::string_view text) {
    constexpr unsigned few = 31;
    return (static_cast<unsigned char>(text[0]) & few) * (few + 1) + (static_cast<unsigned char>(text[1]) & few);
  }
  std::array<bool, 1024> known_{};
};
constexpr Beginnings name_beginnings = [] {
  Beginnings all;
  for (const std::string_view name : designations) all.add(name);
  for (const std::string_view name : short_names) all.add(name);
  return all;
}();
constexpr Beginnings class_beginnings = [] {
  Beginnings all;
  for (const auto& [word, brief] : class_words) all.add(word);
  return all;
}();

// Every name here has two letters at least, and those tell most words apart without a call.
bool starts_with(std::string_view text, std::string_view name) {
  return text.size() >= name.size() && text[0] == name[0] && text[1] == name[1] && text.starts_with(name);
}

bool is_leading_name(std::string_view word) {
  if (!name_beginnings.may_begin(word)) return false;
  const auto is_word = [&](std::string_view name) { return word.size() == name.size() && starts_with(word, name); };
  return std::any_of(designations.begin(), designations.end(), is_word) ||
         std::any_of(short_names.begin(), short_names.end(), is_word);
}

// Under these a bare number is not what it is alone: "D2241 200" is a pressure rating, "C900 200" an old class or a new
// one. There the standard stays with the number.
bool gives_numbers_meaning(std::string_view word) { return word == "c900" || word == "c905" || word == "d2241"; }

// Drops the names written without a space: "c900dr18", "dipc350". Ductile iron's short names are dropped only before
// the word for a class, because "dips dr 11" names a diameter family.
void drop_joined_names(std::string& key) {
  const auto starts_with_any = [](std::string_view rest, auto... words) { return (rest.starts_with(words) || ...); };
  for (bool dropped = true; dropped && name_beginnings.may_begin(key);) {
    dropped = false;
    const std::string_view all = key;
    for (const std::string_view name : designations) {
      if (all.size() > name.size() && starts_with(all, name) && is_letter(all[name.size()])) {
        key.erase(0, name.size());
        dropped = true;
        break;
      }
    }
    if (dropped) continue;
    for (const std::string_view name : short_names) {
      if (all.size() <= name.size() || !starts_with(all, name)) continue;
      const std::string_view rest = all.substr(name.size());
      if (is_digit(rest.front()) || starts_with_any(rest, "pc", "pressureclass", "cl", "tc", "thicknessclass") ||
          (name == "pvc" && is_letter(rest.front()))) {
        key.erase(0, name.size());
        dropped = true;
        break;
      }
    }
  }
}

}  // namespace

std::string class_key(std::string_view text) {
  std::string key;
  std::string standard;  // of PVC, where one was named
  bool leading = true;
  for (std::size_t at = 0; at < text.size();) {
    if (parts_words(text[at])) {
      ++at;
      continue;
    }
    for (; at < text.size() && !parts_words(text[at]); ++at) {
      const char c = lower(text[at]);
      if (is_digit(c) || is_letter(c)) key += c;
    }
    if (leading && is_leading_name(key)) {
      if (gives_numbers_meaning(key)) standard = key;
      key.clear();
    } else {
      leading = false;
    }
  }
  if (!standard.empty() && !key.empty() && std::all_of(key.begin(), key.end(), is_digit)) return standard + key;
  drop_joined_names(key);
  if (!class_beginnings.may_begin(key)) return key;
  for (const auto& [word, brief] : class_words) {
    if (!starts_with(key, word) || key.size() == word.size()) continue;
    // "Class A" is a class, and a longer word that happens to start with "tc" is not.
    if (word != "class" && !is_digit(key[word.size()])) continue;
    key.replace(0, word.size(), brief);
    break;
  }
  return key;
}

}  // namespace mainbore
