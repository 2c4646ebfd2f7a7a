// A page of plain text: wrapped paragraphs, aligned labels, numbered items.
#pragma once

#include <string>
#include <string_view>

namespace mainbore::report {

// One column a code point. Bytes that are not UTF-8 count one each.
[[nodiscard]] std::size_t columns(std::string_view text);

// Text of the user's as it may be printed (see text/foreign.hpp), its line breaks and tabs as spaces. TextPage does this
// to all it is given.
[[nodiscard]] std::string printable(std::string_view text);

// A space at which no line is broken, for columns inside a text.
inline constexpr char hard_space = '\x1f';

class TextPage {
 public:
  TextPage(int width, bool emphasis);

  void blank();
  // A line that stands out. `strong` is the verdict's.
  void title(std::string_view text, bool strong = false);
  // A heading with a blank line before it and a word beside it.
  void heading(std::string_view text, std::string_view beside = {});
  // The same without the blank line.
  void plain_heading(std::string_view text, std::string_view beside = {});
  // `lead` starts the first line (a number, a label), the text wraps under itself at `indent`.
  void paragraph(std::string_view text, int indent = 0, std::string_view lead = {});
  // The same with a code in brackets at the end of its last line, or on a line of its own when there is no room.
  void coded(std::string_view text, std::string_view code, int indent = 0, std::string_view lead = {});
  // The same with a place to write on at the right end of its last line, dots before it.
  void blanked(std::string_view text, std::string_view blank, int indent, std::string_view lead);
  // Lines that another page has set.
  void append(std::string_view lines) { out_ += lines; }
  // "  label ........ text", the text from `column` on.
  void field(std::string_view label, std::string_view text, int column = 27);

  [[nodiscard]] std::string take() && { return std::move(out_); }
  [[nodiscard]] int width() const { return width_; }
  [[nodiscard]] bool emphasis() const { return emphasis_; }

 private:
  void wrap(std::string_view text, std::size_t indent, std::string_view lead, std::string_view tail,
            char filling = ' ');
  void end_line(std::string& line);
  void emphasised(std::string_view text, std::string_view on);

  std::string out_;
  int width_;
  bool emphasis_;
};

}  // namespace mainbore::report
