// Writes JSON behind a string, one value after the other, without building a tree: fast enough for a plan a line.
#pragma once

#include <array>
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

#include "mainbore/job_file.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/nominal_size.hpp"
#include "text/foreign.hpp"

// Into the caller, which knows the key, and often the word: there are two thousand members to a plan.
#define MAINBORE_INLINE [[gnu::always_inline]] inline

namespace mainbore::io {

// A character of a JSON string that is no plain ASCII: a hidden one as an escape, bytes that are not UTF-8 as U+FFFD.
void append_json_character(std::string& out, text::Character one, std::string_view bytes);

// Decimals of a number without a unit.
inline constexpr int ratio_places = 3;

class JsonWriter {
 public:
  JsonWriter(std::string& out, JsonStyle style) : out_(out), style_(style) {}
  ~JsonWriter() {
    if (at_ != page_.data()) settle();
  }
  JsonWriter(const JsonWriter&) = delete;
  JsonWriter& operator=(const JsonWriter&) = delete;

  // Inside an object give the key; inside an array, and for the root, leave it out. Keys, words and units are names of
  // ours and are written as they stand.
  MAINBORE_INLINE void begin_object(std::string_view key = {}) { open(key, '{'); }
  // Inside an object, under a key that may be anybody's text.
  void begin_object_named(std::string_view name);
  void end_object() { close('}'); }
  MAINBORE_INLINE void begin_array(std::string_view key = {}) { open(key, '['); }
  void end_array() { close(']'); }

  // Puts what is written behind the string: before anybody else reads it or writes behind it. The end of the outermost
  // bracket does the same, and so does the end of the writer.
  void settle() {
    out_.append(page_.data(), at_);
    at_ = page_.data();
  }

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
  MAINBORE_INLINE void text(std::string_view key, std::string_view value) { write_text(begin(key), value); }
  void text_named(std::string_view name, std::string_view value);  // a key that may be anybody's text
  // A name of ours: plain ASCII without quotes, and short.
  MAINBORE_INLINE void word(std::string_view key, std::string_view name) {
    char* at = begin(key);
    *at++ = '"';
    at = put_name(at, name);
    *at++ = '"';
    at_ = at;
  }
  MAINBORE_INLINE void flag(std::string_view key, bool value) {
    char* const at = begin(key);
    at_ = value ? put_literal(at, "true") : put_literal(at, "false");
  }
  MAINBORE_INLINE void null(std::string_view key) { at_ = put_literal(begin(key), "null"); }
  MAINBORE_INLINE void whole(std::string_view key, std::int64_t value) { write_whole(begin(key), value); }
  MAINBORE_INLINE void number(std::string_view key, double value, int decimals) {
    write_number(begin(key), value, decimals);
  }
  // {"value": 82, "unit": "psi"} on one line; a ratio, which has no unit, as a plain number.
  MAINBORE_INLINE void quantity(std::string_view key, Measure value, UnitSystem system) {
    write_shown(begin(key), shown(value, system));
  }
  MAINBORE_INLINE void quantity(std::string_view key, const Shown& display) { write_shown(begin(key), display); }
  // A bound, rounded so that it holds.
  MAINBORE_INLINE void bound(std::string_view key, Measure value, UnitSystem system, Toward toward) {
    write_shown(begin(key), shown(value, system, toward));
  }
  MAINBORE_INLINE void size(std::string_view key, NominalSize value) { quantity(key, value.number(), 4, "in"); }
  MAINBORE_INLINE void quantity(std::string_view key, double value, int decimals, std::string_view unit) {
    write_quantity(begin(key), {value, unit, decimals});
  }

 private:
  // Comma, line, indentation and key; returns the place behind them. Then the page has room for any value but a text.
  MAINBORE_INLINE char* begin(std::string_view key) {
    if (style_ == JsonStyle::pretty) return begin_pretty(key);
    char* at = room_for(key.size() + 4);
    *at = ',';
    at += first_ ? 0 : 1;
    first_ = false;
    if (key.empty()) return at;
    *at++ = '"';
    at = put_name(at, key);
    *at++ = '"';
    *at++ = ':';
    return at;
  }
  char* begin_pretty(std::string_view key);
  // A name that stands in the code is copied by a store or two.
  MAINBORE_INLINE static char* put_name(char* to, std::string_view name) {
    if (!__builtin_constant_p(name.size())) return put(to, name);
    std::memcpy(to, name.data(), name.size());
    return to + name.size();
  }
  static char* put(char* to, std::string_view name);
  template <std::size_t N>
  MAINBORE_INLINE static char* put_literal(char* to, const char (&text)[N]) {
    std::memcpy(to, text, N - 1);
    return to + N - 1;
  }
  MAINBORE_INLINE void put_byte(char byte) {
    *room_for(1) = byte;
    ++at_;
  }
  MAINBORE_INLINE char* room_for(std::size_t size) {
    if (room() < size + most_of_value) settle();
    return at_;
  }
  [[nodiscard]] std::size_t room() const { return static_cast<std::size_t>(page_.data() + page_.size() - at_); }
  [[nodiscard]] std::size_t size() const { return out_.size() + static_cast<std::size_t>(at_ - page_.data()); }

  void write_text(char* at, std::string_view value);
  void write_long(char* at, std::string_view value);
  void write_escaped(std::string_view value);
  void write_whole(char* at, std::int64_t value);
  void write_number(char* at, double value, int decimals);
  void write_quantity(char* at, const Shown& display);
  void write_shown(char* at, const Shown& display);
  MAINBORE_INLINE void open(std::string_view key, char bracket) {
    char* const at = begin(key);
    *at = bracket;
    at_ = at + 1;
    ++depth_;
    first_ = true;
  }
  MAINBORE_INLINE void close(char bracket) {
    --depth_;
    if (style_ == JsonStyle::pretty && !first_) line();
    put_byte(bracket);
    first_ = false;
    if (depth_ == 0) settle();
  }
  void line();

  // A quantity or a name of ours, with what stands around it.
  static constexpr std::size_t most_of_value = 128;

  std::string& out_;
  JsonStyle style_;
  int depth_ = 0;
  bool first_ = true;
  char* at_ = page_.data();
  // What was written last. There are thousands of pieces to a plan, and a string that grows by each of them takes several
  // times as long.
  std::array<char, 4096> page_;
};

}  // namespace mainbore::io

#undef MAINBORE_INLINE
