#include "words/fill.hpp"

#include <algorithm>
#include <array>

namespace mainbore::words {
namespace {

constexpr std::array<std::string_view, language_codes.size()> not_known = {"(not known)", "(sin dato)"};

// By a table, because each letter of each sentence is asked.
constexpr auto marks = [] {
  std::array<bool, 256> bytes{};
  for (const char c : {'{', '[', '|', ']'}) bytes[static_cast<unsigned char>(c)] = true;
  return bytes;
}();
bool is_mark(char c) { return marks[static_cast<unsigned char>(c)]; }

class Expansion {
 public:
  Expansion(const Figures& figures, Language language)
      : figures_(figures), not_known_(not_known[static_cast<std::size_t>(language)]) {}

  // Takes from `rest` up to one of `ends`. False when something in it is not known.
  bool expand(std::string& out, std::string_view& rest, std::string_view ends) const {
    bool known = true;
    while (!rest.empty() && ends.find(rest.front()) == std::string_view::npos) {
      if (rest.front() == '{') {
        const std::size_t close = rest.find('}');
        known &= figure(out, rest.substr(1, close - 1));
        rest.remove_prefix(close + 1);
      } else if (rest.front() == '[') {
        either(out, rest);
      } else {
        std::size_t plain = 1;
        while (plain < rest.size() && !is_mark(rest[plain])) ++plain;
        out += rest.substr(0, plain);
        rest.remove_prefix(plain);
      }
    }
    return known;
  }

 private:
  bool figure(std::string& out, std::string_view name) const {
    const std::size_t before = out.size();
    if (figures_.append(out, name)) return true;
    if (out.size() == before) out += not_known_;
    return false;
  }

  void either(std::string& out, std::string_view& rest) const {
    rest.remove_prefix(1);
    const std::size_t before = out.size();
    const bool take_first = expand(out, rest, "|]");
    if (!take_first) out.resize(before);
    if (rest.front() == '|') {
      rest.remove_prefix(1);
      const std::size_t behind = out.size();
      expand(out, rest, "]");
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

std::string sentence_case(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

std::string filled(std::string_view sentence, const Figures& figures, Language language) {
  std::string out;
  out.reserve(sentence.size() + 32);
  Expansion(figures, language).expand(out, sentence, "");
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
