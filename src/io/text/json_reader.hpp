// The base of every reader of a JSON document: it counts the faults, says where each is, and words those that all
// documents can have: a key that nothing knows, a value of the wrong kind, a text that is no JSON.
//
//     class MapReader : JsonReader {
//       explicit MapReader(...) : JsonReader(map_codes) {}
//       read_document(text, {name, longest_map, "a map", deepest_map}, [&] { if (expect(0, JsonType::object, ...)) ... });
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "io/text/json_text.hpp"
#include "io/text/source_text.hpp"
#include "mainbore/diagnostic.hpp"

namespace mainbore::io {

// What a kind of document calls its faults.
struct JsonCodes {
  std::string_view unknown_key;
  std::string_view wrong_type;
  // Values are read as those of a job are, so that one spelling serves all; what their faults are called here.
  std::span<const std::pair<std::string_view, std::string_view>> of_a_job = {};
};

struct JsonDocument {
  std::string_view name;  // as the user named it
  std::size_t longest;    // bytes
  std::string_view what;  // "a map"
  int deepest;
  std::int64_t first_line = 1;
};

// `did you mean "size"?  known here: size, pressure`
[[nodiscard]] std::string nearest_and_known(std::string_view found, std::span<const std::string_view> known,
                                            std::string_view before = "known here: ");

// `{"value": 3.5, "unit": "in"}` as one writes it, "3.5 in", so that there is one reading of quantities. Nothing for
// anything else.
[[nodiscard]] std::optional<std::string> quantity_text(const JsonText& json, std::uint32_t node);

class JsonReader {
 public:
  explicit JsonReader(const JsonCodes& codes) : codes_(codes) {}

 protected:
  // Calls read() when the text is JSON. False: it is none, and the faults say so.
  template <class Read>
  bool read_document(std::string_view text, const JsonDocument& document, Read read) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    const SourceText source(text, document.name, document.first_line);
    if (auto fault = source.unreadable(document.longest, document.what)) {
      add(*std::move(fault));
      return false;
    }
    const JsonText json(text, document.deepest, document.first_line);
    enter(source, json);
    tell_faults();
    if (json.is_json()) read();
    leave();
    return json.is_json();
  }
  // A part of a text that another reader has opened.
  void enter(const SourceText& source, const JsonText& json) {
    source_ = &source;
    json_ = &json;
  }
  void leave() {
    source_ = nullptr;
    json_ = nullptr;
  }

  // ---- looking around

  [[nodiscard]] bool open() const { return json_ != nullptr; }
  [[nodiscard]] const JsonText& json() const { return *json_; }
  [[nodiscard]] const SourceText& source() const { return *source_; }
  [[nodiscard]] const JsonNode& node_at(std::uint32_t index) const { return json_->node(index); }
  // The members of an object or the elements of a list, in the order of the text.
  template <class Visit>
  void members(std::uint32_t parent, Visit visit) const {
    for (std::uint32_t child = parent + 1; child < json_->node(parent).next; child = json_->node(child).next)
      visit(child);
  }

  // ---- faults

  // Asked before a place is worked out, which takes a look at all that stands before it.
  [[nodiscard]] bool enough() const;
  [[nodiscard]] bool sound() const { return diagnostics_.empty(); }
  [[nodiscard]] std::size_t faults() const { return diagnostics_.size(); }
  void add(Diagnostic diagnostic);
  void add(std::uint32_t at, Problem problem);
  void add(std::uint32_t at, Span span, Problem problem);
  void add_at_key(std::uint32_t at, Problem problem) { add(at, node_at(at).key_span, std::move(problem)); }
  // "a number where a list should stand"
  void wrong_type(std::uint32_t at, std::string_view wanted, std::string help = {});
  // False, and told with "such as ...", when a value is of another type.
  bool expect(std::uint32_t at, JsonType type, std::string_view such_as);
  // "\"siez\" is not part of a map": `where` is "a map". A `hint` stands before what is known here.
  void unknown_key(std::uint32_t at, std::string_view where, std::span<const std::string_view> known,
                   std::string hint = {});

  // What was found, at most as many as anybody reads; in the order of the text, what has no place in it last.
  [[nodiscard]] std::vector<Diagnostic> found();
  [[nodiscard]] std::vector<Diagnostic> found_in_order();

 private:
  void tell_faults();
  [[nodiscard]] std::string_view own_code(std::string_view code) const;

  const JsonCodes& codes_;
  const SourceText* source_ = nullptr;
  const JsonText* json_ = nullptr;
  std::vector<Diagnostic> diagnostics_;
};

}  // namespace mainbore::io
