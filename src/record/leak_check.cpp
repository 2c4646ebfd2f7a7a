// What the text of a leak check says. Only a plain statement that it holds is taken for one: words that are not known, a "no"
// that speaks of nothing, and a question leave it open. The script of the field sheet does the same (sheet_script.js).
#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "mainbore/tap_record.hpp"
#include "words/leak_words.hpp"

namespace mainbore {
namespace {

using words::LeakList;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return c >= 'a' && c <= 'z'; }

// Lower case without accents; an apostrophe of any shape is ', a space " ". What is not known stays as it is.
std::string folded(std::string_view text) {
  struct Shape {
    std::string_view from;
    std::string_view to;
  };
  static constexpr std::array shapes = {Shape{"á", "a"}, Shape{"é", "e"}, Shape{"í", "i"},      Shape{"ó", "o"},
                                        Shape{"ú", "u"}, Shape{"ü", "u"}, Shape{"ñ", "n"},      Shape{"Á", "a"},
                                        Shape{"É", "e"}, Shape{"Í", "i"}, Shape{"Ó", "o"},      Shape{"Ú", "u"},
                                        Shape{"Ü", "u"}, Shape{"Ñ", "n"}, Shape{"’", "'"},      Shape{"½", "1"},
                                        Shape{"¼", "1"}, Shape{"¾", "1"}, Shape{"\u00a0", " "}, Shape{"–", ","}};
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const auto* const shape = std::find_if(shapes.begin(), shapes.end(),
                                           [&](const Shape& one) { return text.substr(at).starts_with(one.from); });
    if (shape != shapes.end()) {
      out += shape->to;
      at += shape->from.size();
      continue;
    }
    const char c = text[at++];
    out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return out;
}

// Words, numbers, and one character for whatever else stands between them; a space or a hyphen within a word is nothing.
std::vector<std::string> tokens_of(std::string_view text) {
  std::vector<std::string> tokens;
  const auto at = [&](std::size_t i) { return i < text.size() ? text[i] : '\0'; };
  for (std::size_t i = 0; i < text.size();) {
    std::string token;
    if (is_letter(text[i])) {
      for (; is_letter(at(i)) || (at(i) == '\'' && is_letter(at(i + 1))); ++i) {
        if (at(i) != '\'') token += at(i);
      }
      if (at(i) == '-' && is_letter(at(i + 1))) ++i;
    } else if (is_digit(text[i])) {
      while (is_digit(at(i)) ||
             (std::string_view(".,/:-").find(at(i)) != std::string_view::npos && is_digit(at(i + 1))))
        token += at(i++);
    } else if (std::string_view(" \t'\"").find(text[i]) != std::string_view::npos) {
      ++i;
      continue;
    } else {
      token = at(i++);
    }
    tokens.push_back(std::move(token));
  }
  return tokens;
}

class LeakReader {
 public:
  explicit LeakReader(std::string_view text) : tokens_(tokens_of(folded(text))) {}

  LeakCheck read() && {
    for (; at_ < tokens_.size(); ++at_) take(tokens_[at_]);
    end_of_clause();
    if (leaks_) return LeakCheck::leaks;
    return holds_ && !open_ && is_plain() ? LeakCheck::holds : LeakCheck::unsure;
  }

 private:
  [[nodiscard]] static bool is_in(LeakList list, std::string_view token) {
    const std::string_view words = words::leak_words()[static_cast<std::size_t>(list)];
    const bool beginnings = list == LeakList::leaks;
    for (std::size_t begin = 0; begin < words.size();) {
      const std::size_t end = std::min(words.find(' ', begin), words.size());
      const std::string_view word = words.substr(begin, end - begin);
      if (beginnings ? token.starts_with(word) : token == word) return true;
      begin = end + 1;
    }
    return false;
  }
  [[nodiscard]] std::string_view near(std::ptrdiff_t step) const {
    const std::ptrdiff_t place = static_cast<std::ptrdiff_t>(at_) + step;
    return place < 0 || place >= std::ssize(tokens_) ? std::string_view() : tokens_[static_cast<std::size_t>(place)];
  }

  void take(std::string_view token) {
    const bool carried = carried_;
    carried_ = false;
    if (is_in(LeakList::holds, token)) return statement(true);
    if (is_in(LeakList::negates, token)) return negation(token);
    if (is_in(LeakList::leaks, token)) return leak();
    if (is_in(LeakList::either, token)) {
      negated_ = negated_ || carried;
      return;
    }
    if (!is_letter(token[0]) && !is_digit(token[0])) return mark(token);
    if (is_in(LeakList::ends, token)) return end_of_clause();
    if (is_digit(token[0]) || is_in(LeakList::plain, token)) return;
    open_ = true;
  }

  void mark(std::string_view token) {
    if (std::string_view(",;.:=-()/!&+@").find(token) == std::string_view::npos) open_ = true;
    end_of_clause();
  }

  // A "no" that spoke of nothing known speaks of something else.
  void end_of_clause() {
    open_ = open_ || negated_;
    negated_ = false;
  }

  void negation(std::string_view token) {
    if (negated_ && !is_in(LeakList::again, token)) open_ = true;
    negated_ = true;
  }

  void statement(bool tight) {
    (tight != negated_ ? holds_ : leaks_) = true;
    carried_ = negated_ && !tight;
    negated_ = false;
  }

  void leak() {
    const bool named = tokens_[at_] == "leak";
    if (named && is_in(LeakList::test_behind, near(1))) {
      ++at_;
    } else if (near(-1) == "de" && is_in(LeakList::test_before, near(-2))) {
      return;
    } else if (named && is_in(LeakList::tight_behind, near(1))) {
      ++at_;
      statement(true);
    } else if (const bool apart = near(1) == ":" || near(1) == "=" || near(1) == "-";
               !negated_ && is_in(LeakList::none_behind, near(apart ? 2 : 1))) {
      at_ += apart ? 2 : 1;
      holds_ = true;
    } else {
      statement(false);
    }
  }

  [[nodiscard]] std::string_view token(std::size_t place) const {
    return place < tokens_.size() ? std::string_view(tokens_[place]) : std::string_view();
  }
  [[nodiscard]] static bool is_word(std::string_view token) {
    return !token.empty() && (is_letter(token[0]) || is_digit(token[0]));
  }
  [[nodiscard]] static bool joins(std::string_view token) { return token == ":" || token == "=" || token == "-"; }

  // Past the "no" at this place and the leak that it denies; nothing where it denies another thing.
  [[nodiscard]] std::optional<std::size_t> past_denial(std::size_t place) const {
    const std::string_view before = token(place - 1);
    const std::string_view denied = joins(before) ? token(place - 2) : before;
    const bool behind = is_in(LeakList::leaks, denied) && is_in(LeakList::none_behind, token(place));
    if (behind) return is_word(token(place + 1)) ? std::nullopt : std::optional(place + 1);
    for (++place; is_in(LeakList::between, token(place)) || is_in(LeakList::again, token(place));) ++place;
    return is_in(LeakList::leaks, token(place)) ? std::optional(place + 1) : std::nullopt;
  }

  // Each part between commas says that it holds or how it was checked, by one pressure and one time; each "no" is a leak's.
  [[nodiscard]] bool is_plain() const {
    if (is_in(LeakList::asks, token(0))) return false;
    bool said = false;
    int pressures = 0;
    int times = 0;
    for (std::size_t place = 0; place < tokens_.size();) {
      const std::string_view here = token(place);
      if (is_in(LeakList::negates, here)) {
        const auto past = past_denial(place);
        if (!past) return false;
        place = *past;
        said = true;
      } else if (here == "leak" && is_in(LeakList::tight_behind, token(place + 1))) {
        place += 2;
        said = true;
      } else if (is_digit(here[0])) {
        const bool pressure = is_in(LeakList::pressures, token(place + 1));
        if (!pressure && !is_in(LeakList::times, token(place + 1))) return false;
        if (++(pressure ? pressures : times) > 1) return false;
        place += 2;
        said = true;
      } else if (is_word(here) || joins(here)) {
        if (joins(here) && !is_word(token(place + 1))) return false;
        said = said || is_in(LeakList::holds, here);
        ++place;
      } else {
        if (!said) return false;
        said = ++place == tokens_.size();
      }
    }
    return said;
  }

  std::vector<std::string> tokens_;
  std::size_t at_ = 0;
  bool negated_ = false;
  bool carried_ = false;  // the "no" of a leak just named
  bool holds_ = false;
  bool leaks_ = false;
  bool open_ = false;
};

}  // namespace

LeakCheck leak_said(std::string_view text) { return LeakReader(text).read(); }

LeakCheck TapRecord::leak_check() const {
  return readings.has(RecordKey::leak_check) ? leak_said(readings.text(RecordKey::leak_check)) : LeakCheck::unread;
}

}  // namespace mainbore
