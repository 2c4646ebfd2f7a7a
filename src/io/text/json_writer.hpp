// Writes JSON behind a string, one value after the other, without building a tree: fast enough for a plan a line.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "mainbore/job_file.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/nominal_size.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {

// A character of a JSON string that is no plain ASCII: a hidden one as an escape, bytes that are not UTF-8 as U+FFFD.
void append_json_character(std::string& out, text::Character one, std::string_view bytes);

class JsonWriter {
 public:
  JsonWriter(std::string& out, JsonStyle style) : out_(out), style_(style), start_(out.size()) {}
  ~JsonWriter() {
    if (room_ > 0) settle();
  }
  JsonWriter(const JsonWriter&) = delete;
  JsonWriter& operator=(const JsonWriter&) = delete;

  // Inside an object give the key; inside an array, and for the root, leave it out. Keys and units are names of ours and
  // are written as they stand.
  void begin_object(std::string_view key = {}) { open(key, '{'); }
  // Inside an object, under a key that may be anybody's text.
  void begin_object_named(std::string_view name);
  void end_object() { close('}'); }
  void begin_array(std::string_view key = {}) { open(key, '['); }
  void end_array() { close(']'); }

  // Ends the string where the text ends: before anybody else reads it or writes behind it. The end of the outermost
  // bracket does the same, and so does the end of the writer.
  void settle();

  // Behind settle(): a member of the innermost object was written by hand, with the comma before it.
  void wrote_behind() { first_ = false; }

  // To take back an object that turned out to have nothing in it.
  struct Mark {
    std::size_t size = 0;
    int depth = 0;
    bool first = true;
  };
  [[nodiscard]] Mark mark() const { return {size(), depth_, first_}; }
  void back_to(Mark mark);
  // Whether nothing stands in the innermost bracket yet.
  [[nodiscard]] bool nothing_yet() const { return first_; }

  // Whatever the text, what is written is UTF-8 and moves no cursor: hidden characters (see text/foreign.hpp) stand as
  // escapes, a byte that is not UTF-8 as U+FFFD.
  void text(std::string_view key, std::string_view value);
  void text_named(std::string_view name, std::string_view value);  // a key that may be anybody's text
  void flag(std::string_view key, bool value);
  void null(std::string_view key);
  void whole(std::string_view key, std::int64_t value);
  void number(std::string_view key, double value, int decimals);
  // {"value": 82, "unit": "psi"} on one line; a ratio, which has no unit, as a plain number.
  void quantity(std::string_view key, Measure value, UnitSystem system);
  void quantity(std::string_view key, const Shown& display);
  // A bound, rounded so that it holds.
  void bound(std::string_view key, Measure value, UnitSystem system, Toward toward);
  void size(std::string_view key, NominalSize value);
  void quantity(std::string_view key, double value, int decimals, std::string_view unit);

 private:
  // So many more bytes of the text, to be written to. There are a thousand values to a plan, and a string that grows by
  // each of them takes several times as long: it grows by as much as there is.
  char* more(std::size_t size) {
    if (room_ < size) grow(size);
    char* const at = out_.data() + (out_.size() - room_);
    room_ -= size;
    return at;
  }
  void grow(std::size_t size);
  [[nodiscard]] std::size_t size() const { return out_.size() - room_; }
  void append_digits(double value, int decimals);
  // Comma, line, indentation and key; then `room` more bytes.
  char* begin(std::string_view key, std::size_t room);
  char* begin_pretty(std::string_view key, std::size_t room);
  void open(std::string_view key, char bracket);
  void close(char bracket);
  void line();
  void text_with_escapes(std::string_view key, std::string_view value);

  std::string& out_;
  JsonStyle style_;
  int depth_ = 0;
  bool first_ = true;
  std::size_t start_ = 0;
  std::size_t room_ = 0;  // bytes at the end of the string that are no text yet
  std::string digits_;
};

}  // namespace mainbore::io
