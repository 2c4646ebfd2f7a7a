// JSON (RFC 8259) checked and taken apart in one pass over the text, for input that comes by the million.
//
// It says yes or no; JsonText (json_text.hpp) says what is wrong with a text and where. Nothing is unescaped or converted:
// each value is a stretch of the text. The nodes are laid out as those of JsonText: the children of node i are
// c = i + 1; c < nodes[i].next; c = nodes[c].next.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "io/text/json_text.hpp"

namespace mainbore::io {

struct SkimNode {
  JsonType type = JsonType::null;
  bool escaped = false;  // a string with escapes in it
  bool key_escaped = false;
  std::uint32_t next = 0;
  Span key;   // inside the quotes; empty for an element of a list and for the root
  Span span;  // of the value, a string's quotes included
};

class JsonSkim {
 public:
  static constexpr int deepest = 64;

  // True: the text is one value of JSON in UTF-8, nested no deeper than that. The value of the root's member `whole` is
  // checked like any other and has no nodes inside. Memory is used again.
  bool read(std::string_view text, std::string_view whole = {});

  // The same of the value that a text begins with, whatever stands behind it: how many bytes it takes, 0 where none ends.
  std::size_t read_first(std::string_view text, std::string_view whole = {});

  // What another has read of the same text, once its nodes are those of this text.
  void take(std::string_view text, std::span<const SkimNode> nodes);

  [[nodiscard]] std::span<const SkimNode> nodes() const { return nodes_; }
  [[nodiscard]] const SkimNode& node(std::uint32_t index) const { return nodes_[index]; }
  // Calls visit(index) for each member or element, in the order of the text.
  template <class Visit>
  void each(std::uint32_t parent, Visit visit) const {
    for (std::uint32_t child = parent + 1; child < nodes_[parent].next; child = nodes_[child].next) visit(child);
  }
  // The first member of an object with this key, as it is written; 0: none.
  [[nodiscard]] std::uint32_t member(std::uint32_t object, std::string_view key) const;

 private:
  void begin(std::string_view text, std::string_view whole);
  bool value(int depth, bool noted);
  bool object(int depth, bool noted);
  bool array(int depth, bool noted);
  bool string(bool& escaped);
  bool escape();
  bool hex4(std::uint32_t& code);
  bool number();
  bool word(std::string_view wanted);
  void skip_space() {
    while (at_ < text_.size() &&
           (text_[at_] == ' ' || text_[at_] == '\n' || text_[at_] == '\r' || text_[at_] == '\t')) {
      ++at_;
    }
  }

  std::string_view text_;
  std::string_view whole_;
  std::size_t at_ = 0;
  bool ascii_ = true;
  std::vector<SkimNode> nodes_;
};

// A string's text without its escapes; `written` is what stands between its quotes, as JsonSkim has checked it.
void append_unescaped(std::string& out, std::string_view written);

// A value as it stands in the text, fit to be shown: hidden characters (text/foreign.hpp), which JSON lets stand in
// strings, are written as escapes. `one_line`: line ends between the parts of the value become spaces.
void append_json_as_written(std::string& out, std::string_view written, bool one_line);

}  // namespace mainbore::io
