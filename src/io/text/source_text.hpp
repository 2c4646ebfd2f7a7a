// A text somebody wrote, and how to point into it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/diagnostic.hpp"
#include "text/foreign.hpp"

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

using text::first_not_utf8;
using text::quoted;  // a value for a message

// Not for several threads at once.
class SourceText {
 public:
  // Both must outlive this. `first_line` numbers the first line; 0: lines mean nothing here (a single value).
  SourceText(std::string_view text, std::string_view name, std::int64_t first_line)
      : text_(text), name_(name), first_line_(first_line) {}

  [[nodiscard]] Diagnostic at(Span span, std::string pointer, Problem problem) const;
  [[nodiscard]] std::int64_t line_of(std::size_t offset) const;
  // What keeps the whole text from being read: it is longer than `longest`, or not UTF-8. `what` is what it should be:
  // "a map".
  [[nodiscard]] std::optional<Diagnostic> unreadable(std::size_t longest, std::string_view what) const;

 private:
  std::string_view text_;
  std::string_view name_;
  std::int64_t first_line_;
  mutable std::vector<std::size_t> line_begins_;  // looked for once, and only where somebody asks for a line
};

}  // namespace mainbore::io
