// Texts by the grammar of JSON (RFC 8259), and the same with one rule broken.
#pragma once

#include <random>
#include <string>
#include <vector>

namespace mainbore::test {

// A value of the grammar, with every form of space, number, escape and nesting; the same for the same state of `random`.
class JsonTexts {
 public:
  explicit JsonTexts(unsigned seed) : random_(seed) {}

  std::string value(int depth = 0) {
    std::string out = space();
    switch (pick(depth > 3 ? 5 : 7)) {
      case 0:
        out += "true";
        break;
      case 1:
        out += pick(2) == 0 ? "false" : "null";
        break;
      case 2:
        out += number();
        break;
      case 5:
        out += list('[', ']', depth, [&] { return value(depth + 1); });
        break;
      case 6:
        out += list('{', '}', depth, [&] { return space() + string() + space() + ':' + value(depth + 1); });
        break;
      default:
        out += string();
    }
    return out + space();
  }

  std::string string() {
    static const std::vector<std::string> parts = {"a",
                                                   "main",
                                                   "8 in",
                                                   "\\\"",
                                                   "\\\\",
                                                   "\\/",
                                                   "\\b\\f\\n\\r\\t",
                                                   "\\u0041",
                                                   "\\u00e9",
                                                   "\\uD83D\\uDE00",
                                                   "\xC3\xA9",
                                                   "\xE2\x82\xAC",
                                                   "\xF0\x9F\x98\x80",
                                                   "{",
                                                   "}",
                                                   "[",
                                                   "]",
                                                   ",",
                                                   ":",
                                                   " ",
                                                   "\x7F"};
    std::string out = "\"";
    for (unsigned n = pick(5); n > 0; --n) out += parts[pick(static_cast<unsigned>(parts.size()))];
    return out + '"';
  }

  std::string number() {
    static const std::vector<std::string> all = {
        "0", "-0", "1", "-12", "0.5", "1e5", "1E+05", "1e-400", "123456789012345678901", "-1.5e-3"};
    return all[pick(static_cast<unsigned>(all.size()))];
  }

  unsigned pick(unsigned below) { return static_cast<unsigned>(random_() % below); }

  // One rule broken: a byte taken out, put in, or changed.
  std::string broken(std::string text) {
    static const std::string tokens = "{}[]\",:\\'x0.-+eE \n\t\x01\x80\xFF";
    const std::size_t at = random_() % (text.size() + 1);
    const char token = tokens[pick(static_cast<unsigned>(tokens.size()))];
    switch (pick(3)) {
      case 0:
        if (at < text.size()) text.erase(at, 1);
        break;
      case 1:
        text.insert(at, 1, token);
        break;
      default:
        if (at < text.size()) text[at] = token;
    }
    return text;
  }

 private:
  std::string space() {
    static const std::vector<std::string> all = {"", "", " ", "\n", "\r\n\t"};
    return all[pick(5)];
  }
  template <class Element>
  std::string list(char open, char close, int, Element element) {
    std::string out(1, open);
    const unsigned size = pick(4);
    for (unsigned n = 0; n < size; ++n) out += (n > 0 ? "," : "") + element();
    if (size == 0) out += space();
    return out + close;
  }

  std::mt19937 random_;
};

}  // namespace mainbore::test
