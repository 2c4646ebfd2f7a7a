// A text somebody wrote, and how to point into it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/diagnostic.hpp"

namespace mainbore::io {

// What is wrong and what to do about it, before it has a place.
struct Problem {
  std::string_view code;
  std::string message;
  std::string help;
};

// A stretch of bytes of a text.
struct Span {
  std::size_t begin = 0;
  std::size_t end = 0;
};

// The first byte that is not UTF-8 (RFC 3629: no overlong forms, no surrogates), if any.
[[nodiscard]] std::optional<std::size_t> first_not_utf8(std::string_view text);

// A value for a message: in double quotes, cut short, control characters made visible, so that a file cannot
// write to the terminal of the one who reads the message.
[[nodiscard]] std::string quoted(std::string_view text);

// Not for several threads at once.
class SourceText {
 public:
  // Both must outlive this. `first_line` numbers the first line; 0: lines mean nothing here (a single value).
  SourceText(std::string_view text, std::string_view name, int first_line)
      : text_(text), name_(name), first_line_(first_line) {}

  [[nodiscard]] Diagnostic at(Span span, std::string pointer, Problem problem) const;
  [[nodiscard]] int line_of(std::size_t offset) const;
  // What keeps the whole text from being read: it is longer than `longest`, or not UTF-8. `what` is what it should be:
  // "a map".
  [[nodiscard]] std::optional<Diagnostic> unreadable(std::size_t longest, std::string_view what) const;

 private:
  std::string_view text_;
  std::string_view name_;
  int first_line_;
  mutable std::vector<std::size_t> line_begins_;  // looked for once, and only where somebody asks for a line
};

}  // namespace mainbore::io
