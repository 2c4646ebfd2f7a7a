#include "io/schema/schema_parts.hpp"

#include <array>
#include <utility>
#include <vector>

#include "units/unit_names.hpp"

namespace mainbore::io::schema {
namespace {

// 12, 1.5; and what may be a fraction 3/4, 1-1/4, 1 1/4: as Scanner of measure.cpp reads it.
constexpr std::string_view decimal = R"((?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)";
constexpr std::string_view fraction = R"((?:/0*[1-9][0-9]*|[- \t][0-9]+/0*[1-9][0-9]*)?)";

constexpr std::array<std::string_view, kind_count> kind_names = {
    "length",    "tape",     "distance",    "pressure", "force",     "torque",   "flow",  "volume",
    "earth",     "velocity", "temperature", "area",     "line_load", "strength", "speed", "duration",
    "time_span", "percent",  "angle",       "threads",  "turns",     "ratio"};

}  // namespace

// --- regular expressions ----------------------------------------------------------------------------------------
// In the dialect of ECMA 262, which has no flag for "any case" inside a schema: each letter stands in both.

std::string any_case(std::string_view word) {
  constexpr std::string_view special = R"(\^$.|?*+()[]{})";
  std::string pattern;
  for (const char c : word) {
    const bool lower = c >= 'a' && c <= 'z';
    if (lower || (c >= 'A' && c <= 'Z')) {
      const char small = lower ? c : static_cast<char>(c - 'A' + 'a');
      pattern += {'[', small, static_cast<char>(small - 'a' + 'A'), ']'};
    } else {
      if (special.find(c) != std::string_view::npos) pattern += '\\';
      pattern += c;
    }
  }
  return pattern;
}

std::string any_spelling(std::string_view word) {
  std::string pattern;
  for (std::size_t i = 0; i < word.size(); ++i) {
    const bool separator = word[i] == ' ' || word[i] == '-' || word[i] == '_' || word[i] == '.';
    pattern += separator ? "[ ._-]*" : any_case(word.substr(i, 1));
  }
  return pattern;
}

std::string whole(const std::string& pattern) { return "^[ \\t]*" + pattern + "[ \\t]*$"; }

std::string number_pattern(Kind kind) {
  const bool in_fractions = !has_unit(kind) || unit_names(kind).front() == "in";
  return "[+-]?" + std::string(decimal) + std::string(in_fractions ? fraction : std::string_view());
}

std::string quantity_pattern(Kind kind) {
  const std::vector<std::string_view> names = unit_names(kind);
  std::string simple = number_pattern(kind) + "[ \\t]*" + one_of(names, any_case);
  if (names.front() != "in") return simple;
  // Feet, then inches: "4 ft 6 in", 4'6".
  constexpr std::array<std::string_view, 3> feet = {"ft", "foot", "feet"};
  constexpr std::array<std::string_view, 4> inches = {"in", "inch", "inches", "\""};
  return "(?:" + simple + '|' + number_pattern(kind) + "[ \\t]*(?:" + one_of(feet, any_case) + "[ \\t]+|'[ \\t]*)" +
         std::string(decimal) + std::string(fraction) + "[ \\t]*" + one_of(inches, any_case) + ')';
}

// --- parts ------------------------------------------------------------------------------------------------------

std::string name_of_kind(Kind kind) { return std::string(kind_names[static_cast<std::size_t>(kind)]); }

Json text_matching(const std::string& pattern) { return {{"type", "string"}, {"pattern", pattern}}; }

Json closed_object() { return {{"type", "object"}, {"properties", Json::object()}, {"additionalProperties", false}}; }

Json list_of(Json items) { return {{"type", "array"}, {"items", std::move(items)}}; }

Json words(std::span<const std::string_view> names, std::span<const OtherWord> others) {
  std::vector<std::string_view> all(names.begin(), names.end());
  for (const OtherWord& other : others) all.push_back(other.word);
  return {{"anyOf", Json::array({{{"enum", names}}, text_matching('^' + one_of(all, any_spelling) + '$')})}};
}

Json material(const Catalog& catalog) {
  Json named = words(material_names);
  const Json table = Json::parse(catalog.file("material_names.json"));
  std::vector<std::string> spellings;
  for (const auto& [name, listed] : table.items()) {
    if (!material_named(name)) continue;  // spellings that name no material of a main
    for (const Json& spelling : listed) spellings.push_back(spelling.get<std::string>());
  }
  named["anyOf"].push_back(text_matching('^' + one_of(spellings, any_case) + '$'));
  return named;
}

Json unit_word(Kind kind) {
  const std::array shown_units = {shown(Measure(0.0, kind), UnitSystem::us).unit,
                                  shown(Measure(0.0, kind), UnitSystem::si).unit};
  const std::span<const std::string_view> usual(shown_units.data(), shown_units[0] == shown_units[1] ? 1u : 2u);
  return {{"anyOf", Json::array({{{"enum", usual}}, text_matching('^' + one_of(unit_names(kind), any_case) + '$')})}};
}

Json plain_text(bool several_lines) {
  return {{"type", "string"},
          {"maxLength", several_lines ? 10000 : 300},
          {"pattern", several_lines ? R"(^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]*$)"
                                    : R"(^[^\u0000-\u001f\u007f-\u009f]*$)"}};
}

Json clock_position() { return text_matching(R"(^[ \t]*(?:0?[1-9]|1[0-2])(?::[0-5][0-9])?[ \t]*(?:o'clock)?[ \t]*$)"); }

std::string size_pattern(const Catalog& catalog) {
  constexpr int greatest_dn = 4000;
  std::vector<std::string> trade;
  for (int dn = 1; dn <= greatest_dn; ++dn) {
    if (catalog.metric_size(dn)) trade.push_back(std::to_string(dn));
  }
  const auto as_is = [](const std::string& number) { return number; };
  return whole("(?:" + quantity_pattern(Kind::length) + "|[dD][nN][ \\t]*" + one_of(trade, as_is) + ')');
}

Json reference(const std::string& definition) { return {{"$ref", "#/definitions/" + definition}}; }

Json described(std::string_view help, const std::string& definition) {
  return {{"description", help}, {"allOf", Json::array({reference(definition)})}};
}

std::string with_range(std::string_view help, Measure least, Measure greatest) {
  return std::string(help) + "; from " + format_measure(least, UnitSystem::us) + " to " +
         format_measure(greatest, UnitSystem::us);
}

}  // namespace mainbore::io::schema
