// Writes JSON behind a string, one value after the other, without building a tree: fast enough for a plan a line.
#pragma once

#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

#include "mainbore/job_file.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/nominal_size.hpp"
#include "text/foreign.hpp"

// Into the caller, which knows the key: of a whole plan this and numbers written in place took the writer from 373,000
// instructions to 304,000.
#define MAINBORE_INLINE [[gnu::always_inline]] inline

namespace mainbore::io {

// A character of a JSON string that is no plain ASCII: a hidden one as an escape, bytes that are not UTF-8 as U+FFFD.
void append_json_character(std::string& out, text::Character one, std::string_view bytes);

// Decimals of a number without a unit.
inline constexpr int ratio_places = 3;

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
  MAINBORE_INLINE void begin_object(std::string_view key = {}) { open(key, '{'); }
  // Inside an object, under a key that may be anybody's text.
  void begin_object_named(std::string_view name);
  void end_object() { close('}'); }
  MAINBORE_INLINE void begin_array(std::string_view key = {}) { open(key, '['); }
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
  MAINBORE_INLINE void text(std::string_view key, std::string_view value) {
    write_text(begin(key, value.size() + 2), value);
  }
  void text_named(std::string_view name, std::string_view value);  // a key that may be anybody's text
  MAINBORE_INLINE void flag(std::string_view key, bool value) { write_word(begin(key, 1), value ? "true" : "false"); }
  MAINBORE_INLINE void null(std::string_view key) { write_word(begin(key, 1), "null"); }
  MAINBORE_INLINE void whole(std::string_view key, std::int64_t value) { write_whole(begin(key, 1), value); }
  MAINBORE_INLINE void number(std::string_view key, double value, int decimals) {
    write_number(begin(key, 1), value, decimals);
  }
  // {"value": 82, "unit": "psi"} on one line; a ratio, which has no unit, as a plain number.
  MAINBORE_INLINE void quantity(std::string_view key, Measure value, UnitSystem system) {
    write_shown(begin(key, 1), shown(value, system));
  }
  MAINBORE_INLINE void quantity(std::string_view key, const Shown& display) { write_shown(begin(key, 1), display); }
  // A bound, rounded so that it holds.
  MAINBORE_INLINE void bound(std::string_view key, Measure value, UnitSystem system, Toward toward) {
    write_shown(begin(key, 1), shown(value, system, toward));
  }
  MAINBORE_INLINE void size(std::string_view key, NominalSize value) { quantity(key, value.number(), 4, "in"); }
  MAINBORE_INLINE void quantity(std::string_view key, double value, int decimals, std::string_view unit) {
    write_quantity(begin(key, 1), {value, unit, decimals});
  }

 private:
  // So many more bytes of the text, to be written to. There are a thousand values to a plan, and a string that grows by
  // each of them takes several times as long: it grows by as much as there is.
  char* more(std::size_t size) {
    if (room_ < size) grow(size);
    char* const at = out_.data() + (out_.size() - room_);
    room_ -= size;
    return at;
  }
  // The text ends here, wherever more() had it end. More than that may follow: room for it is made first.
  void ends_at(const char* at) { room_ = static_cast<std::size_t>(out_.data() + out_.size() - at); }
  char* room_at(char* at, std::size_t size);
  void grow(std::size_t size);
  [[nodiscard]] std::size_t size() const { return out_.size() - room_; }

  // Comma, line, indentation and key; then `room` more bytes, one at the least.
  MAINBORE_INLINE char* begin(std::string_view key, std::size_t room) {
    if (style_ == JsonStyle::pretty) return begin_pretty(key, room);
    const bool comma = !first_;
    first_ = false;
    char* at = more((comma ? 1 : 0) + (key.empty() ? 0 : key.size() + 3) + room);
    *at = ',';
    at += comma ? 1 : 0;
    if (key.empty()) return at;
    *at++ = '"';
    at = put_key(at, key);
    *at++ = '"';
    *at++ = ':';
    return at;
  }
  // A key that stands in the code is copied by a store or two.
  MAINBORE_INLINE static char* put_key(char* to, std::string_view key) {
    if (!__builtin_constant_p(key.size())) return put(to, key);
    std::memcpy(to, key.data(), key.size());
    return to + key.size();
  }
  static char* put(char* to, std::string_view text);
  char* begin_pretty(std::string_view key, std::size_t room);
  void write_text(char* at, std::string_view value);
  void write_word(char* at, std::string_view word);
  void write_whole(char* at, std::int64_t value);
  void write_number(char* at, double value, int decimals);
  void write_quantity(char* at, const Shown& display);
  void write_shown(char* at, const Shown& display);
  MAINBORE_INLINE void open(std::string_view key, char bracket) {
    *begin(key, 1) = bracket;
    ++depth_;
    first_ = true;
  }
  void close(char bracket);
  void line();
  void append_escaped(std::string_view value);

  std::string& out_;
  JsonStyle style_;
  int depth_ = 0;
  bool first_ = true;
  std::size_t start_ = 0;
  std::size_t room_ = 0;  // bytes at the end of the string that are no text yet
};

}  // namespace mainbore::io

#undef MAINBORE_INLINE
