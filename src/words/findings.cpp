#include "words/findings.hpp"

#include "words/tables.hpp"

namespace mainbore::words {

const FindingText& finding_text(FindingCode code, Language language) {
  (void)language;
  return english::findings()[static_cast<std::size_t>(code)].words;
}

std::string_view finding_line(FindingCode code, Language language) {
  (void)language;
  return english::finding_lines()[static_cast<std::size_t>(code)].words;
}

std::string_view finding_blank(FindingCode code, Language language) {
  (void)language;
  return english::finding_blanks()[static_cast<std::size_t>(code)].words;
}

}  // namespace mainbore::words
