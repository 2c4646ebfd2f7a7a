// How many lines words take in a column, so that a sheet can be laid out before it is printed.
//
// By the advance widths of the common condensed sans-serif faces, which share them; a wide face drawn narrower on a
// machine without one comes to nearly the same. Breaks as browsers do: after spaces, and after hyphens inside a word.
#pragma once

#include <string_view>

namespace mainbore::report {

// Width in ems.
[[nodiscard]] double condensed_width(std::string_view text, bool bold = false);

// A paragraph, or several that run on in one.
class Lines {
 public:
  explicit Lines(double column_ems) : column_(column_ems) {}

  // Texts that follow each other must have a space between them to be parted there.
  void add(std::string_view text, bool bold = false);
  [[nodiscard]] int count() const { return count_; }

 private:
  double column_;
  double x_ = 0.0;
  int count_ = 1;
};

}  // namespace mainbore::report
