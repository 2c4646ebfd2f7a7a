// JSON byte by byte: the space between values, and a string, so that a bracket or a quote in it is not taken for one of
// the text.
#pragma once

namespace mainbore::batch {

[[nodiscard]] constexpr bool is_space(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

class JsonString {
 public:
  // Behind its first quote.
  void open() { inside_ = true; }
  void leave() { inside_ = escaped_ = false; }
  [[nodiscard]] bool inside() const { return inside_; }
  // The next byte is what a backslash makes of it.
  [[nodiscard]] bool escaped() const { return escaped_; }

  // A byte of the string. True: it stands for itself.
  bool take(char c) {
    if (escaped_) {
      escaped_ = false;
    } else if (c == '\\') {
      escaped_ = true;
    } else if (c == '"') {
      inside_ = false;
    } else {
      return true;
    }
    return false;
  }

 private:
  bool inside_ = false;
  bool escaped_ = false;
};

}  // namespace mainbore::batch
