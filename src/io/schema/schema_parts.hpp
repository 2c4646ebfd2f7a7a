// What the schemas have in common: the patterns of texts that the readers take, and small pieces of a schema.
#pragma once

#include <array>
#include <nlohmann/json.hpp>
#include <span>
#include <string>
#include <string_view>

#include "io/job/job_fields.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/plan.hpp"

namespace mainbore::io::schema {

using Json = nlohmann::ordered_json;

// --- regular expressions, in the dialect of ECMA 262 ---

// The word in any case.
[[nodiscard]] std::string any_case(std::string_view word);
// The word as plain_name (nearest.hpp) reads it, with any separator, or none, where it has one.
[[nodiscard]] std::string any_spelling(std::string_view word);
template <class Words, class Spell>
[[nodiscard]] std::string one_of(const Words& words, Spell spell) {
  std::string pattern;
  for (const auto& word : words) pattern += (pattern.empty() ? "(?:" : "|") + spell(word);
  return pattern + ')';
}
// From the first character to the last, blanks allowed around.
[[nodiscard]] std::string whole(const std::string& pattern);
// 12, 1.5, and of lengths and plain numbers 3/4 and 1-1/4, with a sign.
[[nodiscard]] std::string number_pattern(Kind kind);
[[nodiscard]] std::string quantity_pattern(Kind kind);
// "8 in", "DN 200", "200 mm".
[[nodiscard]] std::string size_pattern(const Catalog& catalog);

// --- pieces of a schema ---

// One of the words as they stand.
template <class Words>
[[nodiscard]] Json one_of(const Words& words) {
  return {{"enum", words}};
}
[[nodiscard]] Json list_of(Json items);
inline constexpr std::array verdicts = {name_of(Verdict::go), name_of(Verdict::hold), name_of(Verdict::no_go)};

[[nodiscard]] std::string name_of_kind(Kind kind);
[[nodiscard]] Json text_matching(const std::string& pattern);
[[nodiscard]] Json closed_object();
// The words themselves, for editors to offer, and every other case and spelling of them that is read.
[[nodiscard]] Json words(std::span<const std::string_view> names, std::span<const OtherWord> others = {});
// The names of the materials, and the other spellings that the tables list.
[[nodiscard]] Json material(const Catalog& catalog);
[[nodiscard]] Json unit_word(Kind kind);
// One line, or several, without control characters.
[[nodiscard]] Json plain_text(bool several_lines);
[[nodiscard]] Json clock_position();
[[nodiscard]] Json reference(const std::string& definition);
// Beside a reference nothing else counts (draft-07, 8.3): a description needs the reference inside "allOf".
[[nodiscard]] Json described(std::string_view help, const std::string& definition);
[[nodiscard]] std::string with_range(std::string_view help, Measure least, Measure greatest);

}  // namespace mainbore::io::schema
