// A sheet without the marks that keep a number on one line, so that a test may look for words as they are read.
#pragma once

#include <string>

namespace mainbore::test {

inline std::string plain_numbers(std::string page) {
  const std::string start = "<span class=\"number\">";
  const std::string end = "</span>";
  for (std::size_t at = page.find(start); at != std::string::npos; at = page.find(start, at)) {
    page.erase(at, start.size());
    page.erase(page.find(end, at), end.size());
  }
  return page;
}

}  // namespace mainbore::test
