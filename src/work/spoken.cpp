#include "work/spoken.hpp"

#include "words/card.hpp"
#include "words/terms.hpp"

namespace mainbore {

std::string turns_in_words(double turns, Language language, std::optional<Toward> toward) {
  std::string text = toward ? in_quarter_turns(turns, *toward) : in_quarter_turns(turns);
  if (language == Language::english) return text;
  const std::size_t unit = text.rfind(' ');
  const bool one = text.ends_with("turn");
  return say(one ? words::CardWord::turn : words::CardWord::turns, language, {{"number", text.substr(0, unit)}});
}

void append_in_words(std::string& out, const Measure& measure, Audience audience, std::optional<Toward> toward) {
  const std::size_t before = out.size();
  if (toward) append_measure(out, measure, audience, *toward);
  else append_measure(out, measure, audience);
  if (audience.language == Language::english) return;
  const std::size_t unit = out.rfind(' ');
  if (unit == std::string::npos || unit < before) return;
  const std::string said(words::term(std::string_view(out).substr(unit + 1), audience.language));
  out.replace(unit + 1, std::string::npos, said);
}

}  // namespace mainbore
