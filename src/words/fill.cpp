#include "words/fill.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstring>

namespace mainbore::words {
namespace {

constexpr std::array<std::string_view, language_codes.size()> not_known = {"(not known)", "(sin dato)"};

constexpr bool is_mark(char c) { return c == '{' || c == '[' || c == '|' || c == ']'; }

// The first mark from `from` on, or the end. Sixteen bytes at a time, in a vector of GCC and Clang, because each letter of
// each sentence is asked: with eight a whole plan takes 22,000 instructions more.
std::size_t next_mark(std::string_view sentence, std::size_t from) {
  using Bytes = unsigned char __attribute__((vector_size(16)));
  for (Bytes bytes; from + sizeof(bytes) <= sentence.size(); from += sizeof(bytes)) {
    std::memcpy(&bytes, sentence.data() + from, sizeof(bytes));
    const auto found = (bytes == '{') | (bytes == '[') | (bytes == '|') | (bytes == ']');
    std::array<std::uint64_t, 2> halves{};
    std::memcpy(halves.data(), &found, sizeof(found));
    if ((halves[0] | halves[1]) != 0) break;
  }
  while (from < sentence.size() && !is_mark(sentence[from])) ++from;
  return from;
}

class Expansion {
 public:
  Expansion(const Figures& figures, Language language)
      : figures_(figures), not_known_(not_known[static_cast<std::size_t>(language)]) {}

  void sentence(std::string& out, std::string_view rest) const { expand(out, rest, Until::end); }

 private:
  enum class Until : std::uint8_t { end, bar, bracket };  // of the sentence, the first of two texts, the second

  static bool ends(char c, Until until) {
    return until != Until::end && (c == ']' || (c == '|' && until == Until::bar));
  }

  // Takes from `rest` up to there. False when something in it is not known.
  bool expand(std::string& out, std::string_view& rest, Until until) const {
    bool known = true;
    while (!rest.empty() && !ends(rest.front(), until)) {
      if (rest.front() == '{') {
        const std::size_t close = rest.find('}');
        known &= figure(out, rest.substr(1, close - 1));
        rest.remove_prefix(close + 1);
      } else if (rest.front() == '[') {
        either(out, rest);
      } else {
        const std::size_t plain = next_mark(rest, 1);
        out += rest.substr(0, plain);
        rest.remove_prefix(plain);
      }
    }
    return known;
  }

  bool figure(std::string& out, std::string_view name) const {
    const std::size_t before = out.size();
    if (figures_.append(out, name)) return true;
    if (out.size() == before) out += not_known_;
    return false;
  }

  void either(std::string& out, std::string_view& rest) const {
    rest.remove_prefix(1);
    const std::size_t before = out.size();
    const bool take_first = expand(out, rest, Until::bar);
    if (!take_first) out.resize(before);
    if (rest.front() == '|') {
      rest.remove_prefix(1);
      const std::size_t behind = out.size();
      expand(out, rest, Until::bracket);
      if (take_first) out.resize(behind);
    }
    rest.remove_prefix(1);
  }

  const Figures& figures_;
  std::string_view not_known_;
};

class Listed : public Figures {
 public:
  explicit Listed(std::initializer_list<Figure> figures) : figures_(figures) {}
  bool append(std::string& out, std::string_view name) const override {
    const auto* const found =
        std::find_if(figures_.begin(), figures_.end(), [&](const Figure& figure) { return figure.name == name; });
    if (found == figures_.end() || found->text.empty()) return false;
    out += found->text;
    return true;
  }

 private:
  std::initializer_list<Figure> figures_;
};

}  // namespace

bool stands(std::string_view sentence) { return next_mark(sentence, 0) == sentence.size(); }

std::string sentence_case(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

void append_filled(std::string& out, std::string_view sentence, const Figures& figures, Language language) {
  Expansion(figures, language).sentence(out, sentence);
}

void append_filled(std::string& out, std::string_view sentence, std::initializer_list<Figure> figures,
                   Language language) {
  append_filled(out, sentence, Listed(figures), language);
}

std::string filled(std::string_view sentence, const Figures& figures, Language language) {
  std::string out;
  out.reserve(sentence.size() + 32);
  append_filled(out, sentence, figures, language);
  return out;
}

std::string filled(std::string_view sentence, std::initializer_list<Figure> figures, Language language) {
  return filled(sentence, Listed(figures), language);
}

std::vector<std::string_view> figures_in(std::string_view sentence) {
  std::vector<std::string_view> names;
  for (std::size_t open = sentence.find('{'); open != std::string_view::npos; open = sentence.find('{', open + 1)) {
    names.push_back(sentence.substr(open + 1, sentence.find('}', open) - open - 1));
  }
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

}  // namespace mainbore::words
