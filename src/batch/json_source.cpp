// Orders out of an array of JSON, or out of values one after the other, in constant memory.
//
// A value's text is found by its brackets, quotes, colons and commas; whether it is an order is for the readers of orders
// to say. Where they cannot stand as they do, the order is broken: a brace or a quote too many or too few would have it
// swallow its neighbors. From there on the next order is looked for. Sure is: an object that begins as the orders of
// this file do, with a key that only orders have, and is not the value of another key. A brace too many in the middle of
// an order cuts off a piece that begins otherwise; planned by itself, that piece would be another order.
#include <algorithm>
#include <array>
#include <bitset>
#include <cstring>
#include <string_view>
#include <utility>

#include "batch/json_string.hpp"
#include "batch/order_source.hpp"
#include "io/job/job_fields.hpp"
#include "io/orders/order_members.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::batch {
namespace {

constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

constexpr std::string_view comma_outside =
    "a comma between orders that stand in no list: a bracket is missing, or one is too many";

std::int64_t line_ends_in(std::string_view text) {
  std::int64_t count = 0;
  for (std::size_t at = text.find('\n'); at != std::string_view::npos; at = text.find('\n', at + 1)) ++count;
  return count;
}

// Of an order, and not of an element of a list in one.
bool only_orders_have(std::string_view key) {
  const auto fields = io::job_fields();
  const auto begins_with_it = [&](std::string_view path) { return path.substr(0, path.find_first_of(".[")) == key; };
  return std::any_of(fields.begin(), fields.end(), [&](const auto& field) { return begins_with_it(field.path); }) &&
         std::none_of(fields.begin(), fields.end(), [&](const auto& field) {
           const std::size_t list = field.path.find("[].");
           return list != std::string_view::npos && begins_with_it(field.path.substr(list + 3));
         });
}

// What OrderStart::key() says of an object that begins  { "type" : "Feature"
constexpr std::string_view feature_start = "a feature";

bool is_feature_key(std::string_view key) {
  constexpr std::array<std::string_view, 5> keys = {"type", "id", "properties", "geometry", "bbox"};
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

// Looks for  { "key" :  byte by byte, whatever the quotes before it say. Of features, which begin with a key that their
// geometries have too, also for the value of that key.
class OrderStart {
 public:
  explicit OrderStart(bool features) : features_(features) {}
  void forget() { stage_ = Stage::none; }
  // At a brace and the quote behind it, which is not a closing one.
  void begin(std::string_view brace_and_quote, char before, std::size_t at, std::int64_t line) {
    feed('{', before, at, line);
    for (const char c : brace_and_quote.substr(1)) feed(c, before, at, line);
  }
  // `before`: the last byte before this one that is no space. `at`, `line`: where this one stands. True at the colon.
  bool feed(char c, char before, std::size_t at, std::int64_t line) {
    if (c == '{') {
      stage_ = before == ':' ? Stage::none : Stage::brace;
      seen_.assign(1, c);
      key_.clear();
      value_.clear();
      at_ = at;
      line_ = line;
      return false;
    }
    if (stage_ == Stage::none) return false;
    seen_ += c;
    switch (stage_) {
      case Stage::none:
        break;
      case Stage::brace:
        if (c == '"') stage_ = Stage::key;
        else if (!is_space(c)) stage_ = Stage::none;
        break;
      case Stage::key:
        if (c == '"') stage_ = Stage::colon;
        else key_ += c;
        break;
      case Stage::colon:
        if (c == ':' && features_ && key_ == "type") stage_ = Stage::value;
        else if (c == ':') return true;
        else if (!is_space(c)) stage_ = Stage::none;
        break;
      case Stage::value:
        if (is_space(c) && value_.empty()) break;
        value_ += c;
        if (value_ == "\"Feature\"") {
          key_ = feature_start;
          return true;
        }
        if (!std::string_view("\"Feature\"").starts_with(value_)) stage_ = Stage::none;
        break;
    }
    if (seen_.size() > most_seen) stage_ = Stage::none;
    return false;
  }
  [[nodiscard]] const std::string& seen() const { return seen_; }
  [[nodiscard]] const std::string& key() const { return key_; }
  [[nodiscard]] std::size_t at() const { return at_; }
  [[nodiscard]] std::int64_t line() const { return line_; }

 private:
  static constexpr std::size_t most_seen = 1000;
  enum class Stage : std::uint8_t { none, brace, key, colon, value };
  bool features_;
  Stage stage_ = Stage::none;
  std::string value_;
  std::string seen_;
  std::string key_;
  std::size_t at_ = 0;
  std::int64_t line_ = 0;
};

class JsonSource : public OrderSource {
 public:
  explicit JsonSource(io::ByteSource bytes) : bytes_(io::without_mark(std::move(bytes))) {}
  // Of features; `head` is what stands before the list of a collection, and is empty without one.
  JsonSource(io::ByteSource bytes, std::string_view head)
      : bytes_(std::move(bytes)), features_(true), collection_(!head.empty()), head_(head) {
    line_ = first_line_ = order_line_ = 1 + line_ends_in(head);
  }

  bool take(Piece& piece) override {
    used_ = 0;
    if (!head_.empty()) read_head(piece);
    while (used_ < piece_size) {
      if (at_ == held_) {
        // Where no more is to be had at once, what has come goes on its way: somebody may be waiting for it.
        if (held_ < block_.size() && !piece.texts.empty()) break;
        held_ = bytes_(block_.data(), block_.size());
        at_ = 0;
        if (held_ == 0) {
          if (!ended_) end(piece);
          ended_ = true;
          break;
        }
      }
      if (in_tail_) {
        read_tail();
        continue;
      }
      if (string_.inside() && !string_.escaped() && !broken_) pass_plain();
      else if (next_ == Next::more_of_word && !string_.inside() && !broken_ && comma_at_ == nowhere) pass_word();
      if (at_ < held_) read_byte(piece, block_[at_++]);
    }
    // What is left of an order in the making begins the next piece.
    if (piece.bytes.size() < used_ + room_behind) piece.bytes.resize(used_ + room_behind);
    return !piece.texts.empty() || !piece.head.empty() || !piece.tail.empty();
  }

 private:
  // What may stand next, at the innermost bracket.
  enum class Next : std::uint8_t { value, key, colon, comma, more_of_word };

  // --- bytes ---

  // The bytes of a string up to one that matters.
  void pass_plain() {
    const std::size_t begin = at_;
    while (at_ < held_ && block_[at_] != '"' && block_[at_] != '\\' && block_[at_] != '\n') ++at_;
    const std::size_t room = longest_job + 1 - std::min(longest_job + 1, text_.size());
    text_.append(block_, begin, std::min(room, at_ - begin));
  }

  // The bytes of a number or a word up to one that is none of it: coordinates are most of a feature.
  void pass_word() {
    const std::size_t begin = at_;
    while (at_ < held_ && is_word(block_[at_]) && !is_space(block_[at_])) ++at_;
    if (at_ == begin) return;
    const std::size_t room = longest_job + 1 - std::min(longest_job + 1, text_.size());
    text_.append(block_, begin, std::min(room, at_ - begin));
    before_ = block_[at_ - 1];
  }

  // An object that has come as a whole and is JSON, taken at once; its brace has been read.
  bool pass_object() {
    const std::size_t held = std::min(held_ - (at_ - 1), longest_job);
    const std::string_view rest = std::string_view(block_).substr(at_ - 1, held);
    const std::string_view object = rest.substr(0, skim_.read_first(rest, features_ ? "geometry" : ""));
    if (object.empty()) return false;
    blank_ = false;
    order_line_ = line_;
    passed_begin_ = text_.size();
    text_.append(object);
    passed_end_ = text_.size();
    here_ = text_.size() - 1;
    at_ += object.size() - 1;
    line_ += line_ends_in(object);
    is_object_ = true;
    next_ = Next::comma;
    passed_object_ = true;
    closed_ = !in_array_;
    return true;
  }
  void read_byte(Piece& piece, char c) {
    if (c == '{') passed_before_ = passed_over_;
    const bool was_in_string = string_.inside();
    if (was_in_string) read_string_byte(c);
    else if (is_space(c)) read_space(c);
    else read_token(piece, c);
    // In a broken order any byte may be one of the next order's.
    if (std::exchange(brace_in_quotes_, false) && !broken_) start_.forget();
    if (broken_ && start_.feed(c, before_, here_, line_) && is_sure(start_.key())) begin_at_start(piece);
    if (was_in_string && !string_.inside() && !broken_) look_into_string();
    if (std::exchange(ends_line_, false)) finish(piece);
    if (!is_space(c)) before_ = std::exchange(passed_object_, false) ? '}' : c;
    if (c == '\n') ++line_;
    if (text_.empty()) first_line_ = line_;
  }

  void read_string_byte(char c) {
    add(c);
    string_.take(c);
    if (c == '\n') {
      string_.leave();
      broken_ = true;
    }
  }

  // A quote that is missing further on makes a string of what ends here, and it may hold the brace of an order.
  void look_into_string() {
    const std::string_view content = std::string_view(text_).substr(0, text_.size() - 1);
    const std::size_t brace = content.find_last_not_of(" \t\r");
    if (text_.size() > longest_job || brace == std::string_view::npos || content[brace] != '{') return;
    const std::size_t before = content.find_last_not_of(" \t\r", brace - 1);
    start_.begin(std::string_view(text_).substr(brace), content[before], brace, line_);
    passed_before_ = passed_over_;
    brace_in_quotes_ = true;
  }

  void read_space(char c) {
    if (next_ == Next::more_of_word) next_ = Next::comma;
    add(c);
    if (c == '\n' && closed_) ends_line_ = true;
  }

  void read_token(Piece& piece, char c) {
    if (comma_at_ != nowhere) settle_comma(piece, c);
    const bool word_over = next_ == Next::more_of_word && !is_word(c);
    if (word_over) next_ = Next::comma;
    if (closed_) behind_closed(piece, c);
    if (comma_at_ == nowhere && depth_ == 0 && separates(c)) return separator(piece, c);
    if (std::exchange(at_comma_, false)) return;
    if (depth_ == 0 && !in_array_ && blank_ && c == '[') return open_array();
    if (c == '{' && next_ == Next::comma && depth_ == 0 && is_object_ && in_array_ && !broken_) comma_missing(piece);
    if (c == '{' && depth_ == 0 && blank_ && pass_object()) return;
    add(c);
    switch (c) {
      case '"':
        string_.open();
        if (next_ == Next::value) next_ = Next::comma;
        else if (next_ == Next::key) next_ = Next::colon;
        else broken_ = true;
        return;
      case ':':
        require(Next::colon);
        next_ = Next::value;
        return;
      case ',':
        require(Next::comma);
        next_ = in_object() ? Next::key : Next::value;
        return;
      case '{':
      case '[':
        open(c);
        return;
      case '}':
      case ']':
        closed_ = close(c) && depth_ == 0 && !in_array_ && !broken_ && comma_at_ == nowhere;
        return;
      default:
        if (next_ == Next::value) next_ = Next::more_of_word;
        else if (next_ != Next::more_of_word) broken_ = true;
    }
  }

  // Outside a list an order ends with its line or before the next one. Anything else behind its last brace was cut off from
  // it by a brace too many: it goes with the order, which cannot be read then.
  void behind_closed(Piece& piece, char c) {
    closed_ = false;
    if (c == '{' || c == ']') return finish(piece);
    if (c != ',') {
      broken_ = true;
      return;
    }
    add(c);
    comma_at_ = here_;
    comma_line_ = line_;
    at_comma_ = true;
  }

  static constexpr bool is_word(char c) {
    return c != ',' && c != ':' && c != '{' && c != '}' && c != '[' && c != ']' && c != '"';
  }
  void require(Next wanted) {
    if (next_ != wanted) broken_ = true;
  }

  // --- brackets ---

  static constexpr std::size_t deepest_known = 64;  // of brackets whose kind is remembered: no order has as many

  [[nodiscard]] bool in_object() const { return depth_ > 0 && depth_ <= deepest_known && objects_.test(depth_ - 1); }

  void open(char c) {
    if (next_ != Next::value) {
      broken_ = true;
      if (c == '{') ++passed_over_;  // perhaps an order
    }
    if (depth_ == 0 && c == '[') broken_ = true;  // no order is a list: a bracket too many
    if (depth_ < deepest_known) objects_.set(depth_, c == '{');
    if (depth_++ == 0) is_object_ = c == '{';
    next_ = c == '{' ? Next::key : Next::value;
  }

  // A bracket of the other kind closes nothing: it is the one that is too many, or its partner will be missed later.
  bool close(char c) {
    const bool fits = depth_ > 0 && (depth_ > deepest_known || in_object() == (c == '}'));
    if (!fits) {
      broken_ = true;
      return false;
    }
    if (in_object() && (next_ == Next::colon || next_ == Next::value)) broken_ = true;  // a key without a value
    --depth_;
    next_ = Next::comma;
    return true;
  }

  // --- orders ---

  // As the orders before this one began, or as this one did, quotes or no quotes.
  [[nodiscard]] bool is_sure(const std::string& key) const {
    const std::string own = first_word(text_);
    if (features_) return key == feature_start || (is_feature_key(key) && key != "type" && key == usual_first_);
    return only_orders_have(key) && (key == own || (key == usual_first_ && !only_orders_have(own)));
  }
  static std::string first_word(std::string_view text) {
    const auto is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; };
    const auto begin = std::find_if(text.begin(), text.end(), is_letter);
    return {begin, std::find_if_not(begin, text.end(), is_letter)};
  }

  void add(char c) {
    here_ = text_.size();
    if (blank_ && !is_space(c)) {
      blank_ = false;
      order_line_ = line_;
    }
    if (text_.size() <= longest_job) text_ += c;
  }

  // The closing bracket behind a broken order may be one of its own. Behind a value outside a list a comma is one of a
  // list whose bracket is missing, or was closed too early.
  [[nodiscard]] bool separates(char c) const {
    if (in_array_) return c == ',' || (c == ']' && !broken_);
    return c == ',' && blank_ && row_ > 0;
  }

  void open_array() {
    in_array_ = true;
    after_comma_ = false;
    begin_text();
  }

  void separator(Piece& piece, char c) {
    if (!in_array_) {
      fault(piece, comma_outside);
      in_array_ = after_comma_ = true;
      return begin_text();
    }
    in_tail_ = collection_ && c == ']';
    if (c == ',' && !blank_) {  // what follows tells whether the order ends here
      add(c);
      comma_at_ = here_;
      comma_line_ = line_;
      return;
    }
    if (!blank_) finish(piece);
    else if (c == ',') fault(piece, "a comma with no order before it");
    else if (after_comma_) fault(piece, "a comma before the closing bracket");
    after_comma_ = c == ',';
    in_array_ = c == ',';
    begin_text();
  }

  // The first byte behind a comma. What a brace too many has cut off goes with its order: planned without it, that would
  // be another order.
  void settle_comma(Piece& piece, char c) {
    if (c == '"' && is_object_ && !key_behind_comma_ && !broken_) {
      key_behind_comma_ = true;  // a key, or a text of its own: the next byte tells
      next_ = Next::value;
      return;
    }
    const std::size_t comma = std::exchange(comma_at_, nowhere);
    // A key that the order has already begins another, whose brace is missing.
    const auto is_of_this = [&] { return first_word(std::string_view(text_).substr(comma)) != first_word(text_); };
    const bool text_behind = std::exchange(key_behind_comma_, false);
    const bool goes_on =
        text_behind ? !broken_ && c == ':' && is_of_this() : broken_ && c != '{' && c != ']' && c != ',';
    const bool broken_behind = text_behind && std::exchange(broken_, false);
    if (goes_on) {
      next_ = Next::value;
      broken_ = true;
      return;
    }
    std::string behind = text_.substr(std::min(text_.size(), comma + 1));
    text_.resize(std::min(text_.size(), comma));
    const bool value_behind = next_ == Next::comma && !std::all_of(behind.begin(), behind.end(), is_space);
    finish(piece);
    if (!in_array_) {
      fault(piece, comma_outside);
      in_array_ = true;
    }
    after_comma_ = true;
    text_ = std::move(behind);
    first_line_ = comma_line_;
    if (!value_behind) return;
    blank_ = false;
    order_line_ = comma_line_ + line_ends_in(std::string_view(text_).substr(0, text_.find('"')));
    next_ = Next::comma;
    broken_ = broken_behind;
  }

  void comma_missing(Piece& piece) {
    finish(piece);
    fault(piece, "a comma is missing between this order and the one before");
    after_comma_ = true;
  }

  // What comes before the start is the broken order; the one that begins there is read on from its colon.
  void begin_at_start(Piece& piece) {
    const std::string seen = start_.seen();
    const std::int64_t line = start_.line();
    passed_over_ = passed_before_;  // this one is found
    text_.resize(std::min(text_.size(), start_.at()));
    if (const std::size_t last = text_.find_last_not_of(" \t\r\n,"); last != std::string::npos) text_.resize(last + 1);
    blank_ = text_.empty() || std::all_of(text_.begin(), text_.end(), [](char c) { return is_space(c) || c == ','; });
    last_line_ = line;
    if (!blank_) finish(piece);
    begin_text();
    after_comma_ = in_array_;
    text_ = seen;
    blank_ = false;
    first_line_ = order_line_ = line;
    depth_ = 1;
    objects_.set(0);
    is_object_ = true;
    next_ = features_ && seen.ends_with('"') ? Next::comma : Next::value;
  }

  void end(Piece& piece) {
    if (in_tail_) return end_collection(piece);
    const bool closed = depth_ == 0 && !string_.inside() && !broken_;
    if (comma_at_ != nowhere) settle_comma(piece, ']');
    last_line_ = line_;
    if (broken_) ++passed_over_;  // all to the end of the file
    if (!blank_) finish(piece);
    if (in_array_ && closed) fault(piece, "the list of orders is never closed: perhaps the file is cut off");
  }

  // --- what stands around the features of a collection ---

  void read_head(Piece& piece) {
    if (const auto members = io::members_around_features(head_ + "[]}", true)) piece.head = *members;
    else fault(piece, "what stands before the list of features is no JSON");
    head_.clear();
  }
  void read_tail() {
    constexpr std::size_t longest = std::size_t{1} << 20;
    const std::string_view more(block_.data() + at_, held_ - at_);
    tail_.append(more.substr(0, longest - std::min(longest, tail_.size())));
    at_ = held_;
  }
  void end_collection(Piece& piece) {
    if (const auto members = io::members_around_features("{\"features\":[]" + tail_, false)) piece.tail = *members;
    else fault(piece, "the collection of features does not end as it should: perhaps the file is cut off");
  }

  void begin_text() {
    text_.clear();
    passed_end_ = 0;
    blank_ = true;
    depth_ = 0;
    next_ = Next::value;
    string_.leave();
    broken_ = is_object_ = key_behind_comma_ = closed_ = ends_line_ = at_comma_ = false;
    passed_over_ = 0;
    last_line_ = 0;
    comma_at_ = nowhere;
    start_.forget();
  }

  void finish(Piece& piece) {
    const std::size_t needed = used_ + text_.size() + room_behind;
    if (piece.bytes.size() < needed) piece.bytes.resize(std::max(needed, piece_size + room_behind));
    std::memcpy(piece.bytes.data() + used_, text_.data(), text_.size());
    OrderText& order = piece.texts.emplace_back();
    order.begin = used_;
    order.size = text_.size();
    order.first_line = first_line_;
    order.line = order_line_;
    order.row = ++row_;
    order.broken = broken_;
    if (broken_ && passed_over_ > 0) order.unread_to = last_line_ > 0 ? last_line_ : line_;
    if (features_ && !broken_ && passed_end_ > 0) hand_on_nodes(piece, order);
    if (!broken_ && is_object_) usual_first_ = first_word(std::string_view(text_).substr(0, most_first));
    used_ += text_.size();
    begin_text();
  }

  // Of a text that is the object that was passed, with space around it: it is not to be read a second time.
  void hand_on_nodes(Piece& piece, OrderText& order) const {
    if (passed_end_ > text_.size() || text_.find_first_not_of(" \t\r\n", passed_end_) != std::string::npos) return;
    order.first_node = piece.nodes.size();
    order.node_count = skim_.nodes().size();
    for (io::SkimNode node : skim_.nodes()) {
      node.span = {node.span.begin + passed_begin_, node.span.end + passed_begin_};
      if (node.key.end > 0) node.key = {node.key.begin + passed_begin_, node.key.end + passed_begin_};
      piece.nodes.push_back(node);
    }
  }

  void fault(Piece& piece, std::string_view what) {
    OrderText& order = piece.texts.emplace_back();
    order.first_line = order.line = line_;
    order.row = ++row_;
    order.fault = what;
  }

  io::ByteSource bytes_;
  bool features_ = false;
  bool collection_ = false;
  std::string head_;
  std::string tail_;
  bool in_tail_ = false;
  io::JsonSkim skim_;
  bool passed_object_ = false;
  std::size_t passed_begin_ = 0;  // of the object that was passed, in the text of the order
  std::size_t passed_end_ = 0;    // 0: none was
  std::string block_ = std::string(std::size_t{1} << 16, '\0');
  std::size_t at_ = 0;
  std::size_t held_ = 0;
  bool ended_ = false;
  std::size_t used_ = 0;  // of the piece's bytes

  std::string text_;      // of the order in the making
  std::size_t here_ = 0;  // where in it the last byte stands
  bool blank_ = true;
  bool in_array_ = false;
  bool after_comma_ = false;
  JsonString string_;
  Next next_ = Next::value;
  std::size_t depth_ = 0;
  std::bitset<deepest_known> objects_;  // which of the open brackets are braces
  bool is_object_ = false;              // the value at depth 0
  std::size_t comma_at_ = nowhere;      // of a comma behind the value, while it is not known what follows
  std::int64_t comma_line_ = 0;
  bool key_behind_comma_ = false;
  bool closed_ = false;     // an order outside a list has had its last brace
  bool ends_line_ = false;  // and its line ends here
  bool at_comma_ = false;   // this byte is the comma behind it

  bool broken_ = false;
  bool brace_in_quotes_ = false;  // before the byte that comes next
  static constexpr std::size_t most_first = 1000;
  std::string usual_first_;  // word of the last order that was whole
  OrderStart start_{features_};
  std::uint64_t passed_over_ = 0;    // braces that may begin an order, in a broken one
  std::uint64_t passed_before_ = 0;  // the last brace
  std::int64_t last_line_ = 0;       // of the broken order
  char before_ = '\n';

  std::int64_t line_ = 1;
  std::int64_t first_line_ = 1;
  std::int64_t order_line_ = 1;
  std::uint64_t row_ = 0;
};

}  // namespace

std::unique_ptr<OrderSource> json_source(io::ByteSource bytes) {
  return std::make_unique<JsonSource>(std::move(bytes));
}

std::unique_ptr<OrderSource> json_feature_source(io::ByteSource bytes, std::string_view head) {
  return std::make_unique<JsonSource>(std::move(bytes), head);
}

}  // namespace mainbore::batch
