// A page as one line, so that a test may look for words wherever the page breaks them.
#pragma once

#include <string>
#include <string_view>

namespace mainbore::test {

inline std::string on_one_line(std::string_view text) {
  std::string line;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\n';
    if (!blank || line.empty() || line.back() != ' ') line += blank ? ' ' : c;
  }
  return line;
}

}  // namespace mainbore::test
