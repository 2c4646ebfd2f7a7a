// JSON (RFC 8259) with places: every value remembers where it stands, so that a message can point at it.
//
// The tree is one flat list in the order of the text. A node's children follow it; `next` is the node after its last
// one, so the children of node i are c = i + 1; c < nodes[i].next; c = nodes[c].next.
#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "io/text/source_text.hpp"

namespace mainbore::io {

enum class JsonType : std::uint8_t { null, boolean, number, string, array, object };
// "a string", "an object", for messages.
[[nodiscard]] std::string_view article_of(JsonType type);

struct JsonNode {
  JsonType type = JsonType::null;
  bool truth = false;  // of a boolean
  std::uint32_t next = 0;
  Span key_span;  // with the quotes; empty for an element of an array and for the root
  Span span;
  std::string_view key;   // without quotes and escapes
  std::string_view text;  // a string without quotes and escapes; a number as written
};

struct JsonFault {
  Span span;
  Problem problem;
  std::uint32_t node = 0;  // the node it was found in, for the path
};

// The text must outlive this, and this must not move while its nodes are looked at.
class JsonText {
 public:
  JsonText(std::string_view text, int deepest, std::int64_t first_line = 1);
  JsonText(const JsonText&) = delete;
  JsonText& operator=(const JsonText&) = delete;

  // False: the text is no JSON, and the one syntax fault is the last of faults().
  [[nodiscard]] bool is_json() const { return is_json_; }
  // Syntax, and keys given twice.
  [[nodiscard]] const std::vector<JsonFault>& faults() const { return faults_; }
  [[nodiscard]] const std::vector<JsonNode>& nodes() const { return nodes_; }
  [[nodiscard]] const JsonNode& node(std::uint32_t index) const { return nodes_[index]; }

  // JSON Pointer (RFC 6901) of a node; "" for the root.
  [[nodiscard]] std::string pointer(std::uint32_t index) const;

 private:
  friend class JsonParser;
  std::vector<JsonNode> nodes_;
  std::vector<JsonFault> faults_;
  std::deque<std::string> unescaped_;
  bool is_json_ = false;
};

void append_utf8(std::string& out, std::uint32_t code);

// What a backslash and this letter stand for in a string; nothing for "u", whose digits follow, and for what JSON does not know.
[[nodiscard]] std::optional<char> escaped_character(char letter);
// A character beyond the first 65,536 is written as two escapes, its halves.
constexpr bool is_high_half(std::uint32_t code) { return code >= 0xD800 && code < 0xDC00; }
constexpr bool is_low_half(std::uint32_t code) { return code >= 0xDC00 && code < 0xE000; }
constexpr std::uint32_t joined_halves(std::uint32_t high, std::uint32_t low) {
  return 0x10000 + ((high - 0xD800) << 10) + (low - 0xDC00);
}

// "~" and "/" of a key as a JSON Pointer writes them.
[[nodiscard]] std::string pointer_token(std::string_view key);

}  // namespace mainbore::io
