#include "cli/tool_values.hpp"

#include <algorithm>

#include "cli/console.hpp"
#include "io/nearest.hpp"

namespace mainbore::cli {

std::optional<Measure> quantity_of(const std::string& option, const std::string& text, Kind kind) {
  if (text.empty()) return std::nullopt;
  const ParsedMeasure read = parse_measure(text, kind);
  if (!read) throw Stop(exit_usage, option + ": " + describe(read.fault, text) + "\ngive " + expected_text(kind));
  return read.value;
}

std::optional<NominalSize> size_of(const std::string& option, const std::string& text) {
  const auto read = quantity_of(option, text, Kind::length);
  if (!read) return std::nullopt;
  if (!(read->base() > 0.0 && read->base() <= 150.0)) {
    throw Stop(exit_usage, option + ": " + text + " is no pipe's size; give one from 1/2 in to 150 in");
  }
  return NominalSize::inches(read->base());
}

std::optional<std::size_t> word_of(const std::string& option, const std::string& text,
                                   std::span<const std::string_view> known) {
  if (text.empty()) return std::nullopt;
  const auto found = std::find(known.begin(), known.end(), text);
  if (found != known.end()) return static_cast<std::size_t>(found - known.begin());
  std::string message = option + ": unknown word \"" + text + '"';
  if (const auto near = io::nearest(text, known)) message += ": did you mean \"" + std::string(*near) + "\"?";
  throw Stop(exit_usage, message + "\none of: " + io::listed(known));
}

}  // namespace mainbore::cli
