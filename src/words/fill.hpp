// Sentences with figures in them. "{wall}" stands for the figure of that name; "[this {a}|that]" is "this" when every figure
// in it is known and otherwise "that", which may be empty; they nest. A figure that is not known, outside of brackets, is
// said to be so.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/language.hpp"

namespace mainbore::words {

// What stands for the names of a sentence.
class Figures {
 public:
  virtual ~Figures() = default;
  // Appends the figure of this name. False where it is not known: then what it appends stands outside of brackets alone, and
  // where it appends nothing the sentence says so.
  virtual bool append(std::string& out, std::string_view name) const = 0;
};

[[nodiscard]] std::string filled(std::string_view sentence, const Figures& figures,
                                 Language language = Language::english);
void append_filled(std::string& out, std::string_view sentence, const Figures& figures,
                   Language language = Language::english);

struct Figure {
  std::string_view name;
  std::string_view text;  // empty: not known
};
[[nodiscard]] std::string filled(std::string_view sentence, std::initializer_list<Figure> figures,
                                 Language language = Language::english);
void append_filled(std::string& out, std::string_view sentence, std::initializer_list<Figure> figures,
                   Language language = Language::english);

// A sentence of any table of words (`CardWord`, `StepWord`, ...) with its figures.
template <typename Word>
[[nodiscard]] std::string say(Word word, Language language, std::initializer_list<Figure> figures) {
  return filled(say(word, language), figures, language);
}

// Whether a sentence has no figures, so that it stands as it is.
[[nodiscard]] bool stands(std::string_view sentence);

// Its first letter as a sentence starts; a letter outside of ASCII stays as it is.
[[nodiscard]] std::string sentence_case(std::string text);

// The names in a sentence, each once, sorted. A mark that must be reached ("{limit+}") is another than its figure.
[[nodiscard]] std::vector<std::string_view> figures_in(std::string_view sentence);

}  // namespace mainbore::words
