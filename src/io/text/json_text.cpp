#include "io/text/json_text.hpp"

#include <algorithm>
#include <charconv>

#include "io/text/text_scan.hpp"

namespace mainbore::io {
namespace {

constexpr bool is_letter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '_'; }
constexpr std::uint32_t no_unit = 0xFFFFFFFFu;  // not a \u escape

}  // namespace

void append_utf8(std::string& out, std::uint32_t code) {
  const auto byte = [&](std::uint32_t value) { out += static_cast<char>(static_cast<unsigned char>(value)); };
  if (code < 0x80) {
    byte(code);
  } else if (code < 0x800) {
    byte(0xC0 | (code >> 6));
    byte(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    byte(0xE0 | (code >> 12));
    byte(0x80 | ((code >> 6) & 0x3F));
    byte(0x80 | (code & 0x3F));
  } else {
    byte(0xF0 | (code >> 18));
    byte(0x80 | ((code >> 12) & 0x3F));
    byte(0x80 | ((code >> 6) & 0x3F));
    byte(0x80 | (code & 0x3F));
  }
}

std::optional<char> escaped_character(char letter) {
  switch (letter) {
    case '"':
    case '\\':
    case '/':
      return letter;
    case 'b':
      return '\b';
    case 'f':
      return '\f';
    case 'n':
      return '\n';
    case 'r':
      return '\r';
    case 't':
      return '\t';
    default:
      return std::nullopt;
  }
}

// Recursive descent; each function leaves `at_` behind what it read, or records the fault and returns false.
class JsonParser {
 public:
  JsonParser(std::string_view text, int deepest, std::int64_t first_line, JsonText& out)
      : text_(text), lines_(text, "", first_line), deepest_(deepest), out_(out) {}

  bool document() {
    skip_space();
    if (done())
      return fail({at_, at_}, "the file is empty", "a job is a JSON object: { \"main\": ..., \"service\": ... }");
    if (!value({}, {})) return false;
    skip_space();
    if (done()) return true;
    if (peek() == '}' || peek() == ']') return fail_here("a closing bracket too many", "");
    if (peek() == '{') {
      return fail_here("a second value begins behind the first", "one file holds one job");
    }
    return unexpected("the end of the file");
  }

 private:
  [[nodiscard]] bool done() const { return at_ >= text_.size(); }
  [[nodiscard]] char peek() const { return done() ? '\0' : text_[at_]; }
  [[nodiscard]] char peek(std::size_t ahead) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
  void skip_space() {
    while (!done() && (text_[at_] == ' ' || text_[at_] == '\n' || text_[at_] == '\r' || text_[at_] == '\t')) ++at_;
  }

  bool fail(Span span, std::string message, std::string help, std::string_view code = "json.syntax") {
    const auto last = static_cast<std::uint32_t>(out_.nodes_.empty() ? 0 : out_.nodes_.size() - 1);
    out_.faults_.push_back({span, {code, std::move(message), std::move(help)}, last});
    return false;
  }
  bool fail_here(std::string message, std::string help) {
    return fail({at_, std::min(at_ + 1, text_.size())}, std::move(message), std::move(help));
  }

  // Something else stands where `wanted` should. Says which, and why that usually happens.
  bool unexpected(std::string_view wanted) {
    const std::string should = std::string(wanted) + " should stand here";
    if (done()) {
      std::string help;
      if (!open_.empty()) {
        help = "the " + quoted(text_.substr(open_.back(), 1)) + " of line " +
               std::to_string(lines_.line_of(open_.back())) + " is never closed";
      }
      return fail({at_, at_}, "the text ends where " + std::string(wanted) + " should stand", help);
    }
    if (peek() == '\'') return fail_here("a single quote", "JSON puts text and keys in double quotes: \"...\"");
    if (text_.substr(at_, 3) == "\xE2\x80\x9C" || text_.substr(at_, 3) == "\xE2\x80\x9D") {
      return fail({at_, at_ + 3}, "a typographic quote", "JSON puts text and keys in plain double quotes: \"...\"");
    }
    if (peek() == '#' || (peek() == '/' && (peek(1) == '/' || peek(1) == '*'))) {
      return fail_here("a comment", "JSON has no comments: put it in \"note\", or take it out");
    }
    if (is_letter(peek())) {
      std::size_t end = at_;
      while (end < text_.size() && (is_letter(text_[end]) || is_digit(text_[end]))) ++end;
      const std::string word(text_.substr(at_, end - at_));
      std::string help = "put it in double quotes: \"" + word + '"';
      if (word == "True" || word == "False") help = "write true or false";
      if (word == "None" || word == "NULL" || word == "Null" || word == "undefined") {
        help = "leave out the key where the fact is not known";
      }
      if (word == "NaN" || word == "Infinity" || word == "nan" || word == "inf") help = "no number can be that";
      return fail({at_, end}, quoted(word) + " without quotes; " + should, help);
    }
    if (peek() == ',') return fail_here("a comma too many; " + should, "");
    return fail_here(quoted(text_.substr(at_, 1)) + " where " + std::string(wanted) + " should stand", "");
  }

  bool value(Span key_span, std::string_view key) {
    if (static_cast<int>(open_.size()) > deepest_) {
      return fail({at_, at_ + 1}, "nested more than " + std::to_string(deepest_) + " deep", "", "json.too-large");
    }
    const std::size_t index = out_.nodes_.size();
    JsonNode& fresh = out_.nodes_.emplace_back();
    fresh.key_span = key_span;
    fresh.key = key;
    const std::size_t begin = at_;
    bool read = false;
    switch (peek()) {
      case '{':
        read = object(static_cast<std::uint32_t>(index));
        break;
      case '[':
        read = array(index);
        break;
      case '"': {
        std::string_view text;
        read = string(text);
        out_.nodes_[index].type = JsonType::string;
        out_.nodes_[index].text = text;
        break;
      }
      default:
        read = is_digit(peek()) || peek() == '-' ? number(index) : word(index);
    }
    if (!read) return false;
    out_.nodes_[index].span = {begin, at_};
    out_.nodes_[index].next = static_cast<std::uint32_t>(out_.nodes_.size());
    return true;
  }

  bool word(std::size_t index) {
    JsonNode& node = out_.nodes_[index];
    const auto is = [&](std::string_view name) {
      return text_.substr(at_, name.size()) == name && !is_letter(peek(name.size())) && !is_digit(peek(name.size()));
    };
    if (is("true") || is("false")) {
      node.type = JsonType::boolean;
      node.truth = peek() == 't';
      at_ += node.truth ? 4 : 5;
      return true;
    }
    if (is("null")) {
      at_ += 4;
      return true;
    }
    return unexpected("a value");
  }

  bool number(std::size_t index) {
    const std::size_t begin = at_;
    const auto digits = [&] {
      const std::size_t from = at_;
      while (is_digit(peek())) ++at_;
      return at_ > from;
    };
    const auto malformed = [&](std::string help) {
      return fail({begin, std::min(at_ + 1, text_.size())}, "not a number as JSON writes it", std::move(help));
    };
    if (peek() == '-') ++at_;
    if (peek() == '0' && is_digit(peek(1))) return malformed("a number does not begin with 0");
    if (!digits()) return malformed("a digit follows the minus sign");
    if (peek() == '.') {
      ++at_;
      if (!digits()) return malformed("a digit follows the decimal point");
    }
    if (peek() == 'e' || peek() == 'E') {
      std::size_t sign = peek(1) == '+' || peek(1) == '-' ? 2 : 1;
      if (is_digit(peek(sign))) {
        at_ += sign;
        digits();
      }
    }
    if (unquoted_quantity(begin)) return false;
    JsonNode& node = out_.nodes_[index];
    node.type = JsonType::number;
    node.text = text_.substr(begin, at_ - begin);
    double value = 0.0;
    const auto [end, error] = std::from_chars(node.text.data(), node.text.data() + node.text.size(), value);
    if (error == std::errc::result_out_of_range && node.text.find("e-") == std::string_view::npos &&
        node.text.find("E-") == std::string_view::npos) {
      return fail({begin, at_}, "a number too large to be read", "");
    }
    return true;
  }

  // 82 psi, 8in, 3/4, 8": the commonest slip in a job file. Records it and returns true.
  bool unquoted_quantity(std::size_t begin) {
    std::size_t end = at_;
    while (end < text_.size() && text_[end] == ' ') ++end;
    const char c = end < text_.size() ? text_[end] : '\0';
    const bool comment = c == '/' && end + 1 < text_.size() && (text_[end + 1] == '/' || text_[end + 1] == '*');
    const bool starts = is_letter(c) || c == '%' || c == '\xC2' || (c == '/' && !comment) ||
                        (end == at_ && (c == '"' || c == '\'' || c == '-'));
    if (!starts) return false;
    while (end < text_.size() && text_[end] != ',' && text_[end] != '}' && text_[end] != ']' && text_[end] != '\n' &&
           text_[end] != '\r') {
      ++end;
    }
    while (text_[end - 1] == ' ') --end;
    std::string found(text_.substr(begin, end - begin));
    std::string right = found;
    if (right.ends_with('"')) right.replace(right.size() - 1, 1, " in");
    fail({begin, end}, found + " without quotes", "a quantity is a string: write \"" + right + '"');
    return true;
  }

  // At a '"'. The text between the quotes, escapes resolved.
  bool string(std::string_view& text) {
    const std::size_t begin = at_++;
    std::string* changed = nullptr;  // made at the first escape
    std::size_t copied = at_;
    for (;;) {
      while (!done() && peek() != '"' && peek() != '\\' && static_cast<unsigned char>(peek()) >= 0x20) ++at_;
      if (done() || peek() == '\n' || peek() == '\r') {
        return fail({begin, at_}, "the closing quote of this text is missing", "text ends on the line it begins on");
      }
      if (peek() == '"') break;
      if (peek() != '\\') return fail_here("a control character inside a text", "write a tab as \\t");
      if (changed == nullptr) changed = &out_.unescaped_.emplace_back();
      changed->append(text_.substr(copied, at_ - copied));
      if (!escape(*changed)) return false;
      copied = at_;
    }
    if (changed != nullptr) {
      changed->append(text_.substr(copied, at_ - copied));
      text = *changed;
    } else {
      text = text_.substr(begin + 1, at_ - begin - 1);
    }
    ++at_;
    return true;
  }

  bool escape(std::string& out) {
    const std::size_t begin = at_;
    const auto refuse = [&](std::size_t length, std::string_view what) {
      return fail({begin, std::min(begin + length, text_.size())}, std::string(what),
                  "a backslash is written \\\\, a double quote \\\"");
    };
    if (const auto character = escaped_character(peek(1))) {
      out += *character;
      at_ += 2;
      return true;
    }
    if (peek(1) != 'u') return refuse(2, "an escape JSON does not know");
    std::uint32_t code = code_unit();
    if (code == no_unit) return refuse(6, "\\u without four hexadecimal digits");
    at_ += 6;
    if (is_low_half(code)) return refuse(6, "half a character (a lone surrogate)");
    if (is_high_half(code)) {
      const std::uint32_t low = code_unit();
      if (!is_low_half(low)) return refuse(6, "half a character (a lone surrogate)");
      at_ += 6;
      code = joined_halves(code, low);
    }
    append_utf8(out, code);
    return true;
  }

  // The value of the \uXXXX that begins here, or no_unit.
  [[nodiscard]] std::uint32_t code_unit() const {
    if (peek() != '\\' || peek(1) != 'u' || at_ + 6 > text_.size()) return no_unit;
    std::uint32_t value = 0;
    const char* const first = text_.data() + at_ + 2;
    const auto [end, error] = std::from_chars(first, first + 4, value, 16);
    return error == std::errc() && end == first + 4 ? value : no_unit;
  }

  bool object(std::uint32_t index) {
    out_.nodes_[index].type = JsonType::object;
    open_.push_back(at_++);
    skip_space();
    if (peek() == '}') return close();
    for (;;) {
      if (peek() != '"') return unexpected("a key in double quotes");
      const std::size_t key_begin = at_;
      std::string_view key;
      if (!string(key)) return false;
      const Span key_span{key_begin, at_};
      skip_space();
      if (peek() != ':') return unexpected("a colon");
      ++at_;
      skip_space();
      if (peek() == '}')
        return fail_here("no value for " + quoted(key), "leave out the key where the fact is not known");
      if (!value(key_span, key)) return false;
      skip_space();
      if (peek() == '}') {
        out_.nodes_[index].next = static_cast<std::uint32_t>(out_.nodes_.size());
        find_duplicates(index);
        return close();
      }
      if (!comma('}')) return false;
    }
  }

  bool array(std::size_t index) {
    out_.nodes_[index].type = JsonType::array;
    open_.push_back(at_++);
    skip_space();
    if (peek() == ']') return close();
    for (;;) {
      if (!value({}, {})) return false;
      skip_space();
      if (peek() == ']') return close();
      if (!comma(']')) return false;
    }
  }

  // Between members: a comma, and something behind it.
  bool comma(char closing) {
    if (peek() != ',') {
      std::size_t end = at_;
      while (end > 0 &&
             (text_[end - 1] == ' ' || text_[end - 1] == '\n' || text_[end - 1] == '\r' || text_[end - 1] == '\t'))
        --end;
      if (peek() == '"' && end == at_) {
        return fail_here("a quote inside a text, or a comma missing",
                         "an inch mark inside a text is written \\\"; better write \"3/4 in\"");
      }
      if (peek() == '"' || peek() == '{' || peek() == '[' || is_digit(peek())) {
        return fail({end - 1, end}, "a comma is missing behind this",
                    "members of an object and of a list stand apart by commas");
      }
      return unexpected(std::string("a comma or ") + closing);
    }
    const std::size_t where = at_++;
    skip_space();
    if (peek() == closing) {
      return fail({where, where + 1}, std::string("a comma before the closing ") + closing,
                  "take out the comma behind the last member");
    }
    return true;
  }

  bool close() {
    ++at_;
    open_.pop_back();
    return true;
  }

  // Sorted rather than compared each with each: a hostile file may have very many.
  void find_duplicates(std::uint32_t object) {
    const std::vector<JsonNode>& nodes = out_.nodes_;
    std::vector<std::uint32_t>& members = members_;
    members.clear();
    for (std::uint32_t child = object + 1; child < nodes[object].next; child = nodes[child].next)
      members.push_back(child);
    std::sort(members.begin(), members.end(), [&](std::uint32_t a, std::uint32_t b) {
      return nodes[a].key != nodes[b].key ? nodes[a].key < nodes[b].key : a < b;
    });
    for (std::size_t i = 1; i < members.size(); ++i) {
      const JsonNode& twin = nodes[members[i]];
      const JsonNode& first = nodes[members[i - 1]];
      if (twin.key != first.key) continue;
      const std::int64_t line = lines_.line_of(first.key_span.begin);
      out_.faults_.push_back({twin.key_span,
                              {"job.duplicate-key", quoted(twin.key) + " is given twice",
                               "first given on line " + std::to_string(line) + ": keep the right one"},
                              members[i]});
    }
  }

  std::string_view text_;
  SourceText lines_;
  std::size_t at_ = 0;
  int deepest_;
  JsonText& out_;
  std::vector<std::size_t> open_;  // where each bracket not yet closed stands
  std::vector<std::uint32_t> members_;
};

JsonText::JsonText(std::string_view text, int deepest, std::int64_t first_line) {
  nodes_.reserve(64);
  is_json_ = JsonParser(text, deepest, first_line, *this).document();
}

std::string JsonText::pointer(std::uint32_t index) const {
  std::string path;
  std::uint32_t parent = 0;
  while (parent < index && !nodes_.empty()) {
    std::uint32_t child = parent + 1;
    std::size_t position = 0;
    // A text that broke off has nodes whose end is not known (next == 0): the place is inside such a node.
    while (nodes_[child].next != 0 && nodes_[child].next <= index) {
      child = nodes_[child].next;
      ++position;
    }
    path += '/';
    path += nodes_[parent].type == JsonType::array ? std::to_string(position) : pointer_token(nodes_[child].key);
    parent = child;
  }
  return path;
}

std::string pointer_token(std::string_view key) {
  std::string token;
  for (const char c : key) {
    if (c == '~') token += "~0";
    else if (c == '/') token += "~1";
    else token += c;
  }
  return token;
}

std::string_view article_of(JsonType type) {
  switch (type) {
    case JsonType::null:
      return "null";
    case JsonType::boolean:
      return "true or false";
    case JsonType::number:
      return "a number";
    case JsonType::string:
      return "a text";
    case JsonType::array:
      return "a list";
    case JsonType::object:
      return "an object";
  }
  return "";
}

}  // namespace mainbore::io
