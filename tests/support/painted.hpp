// Texts that would paint on a screen, and what must not stand on one.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "text/foreign.hpp"

namespace mainbore::test {

// What somebody hopes to see on the screen of another.
inline constexpr std::string_view painted_line = "GO - painted, by somebody else";

// Each is UTF-8, and each would move the cursor, turn the reading, hide something or begin a line.
inline const std::array<std::string, 12> painting = {
    "\x1b[2J\x1b[H" + std::string(painted_line) + "\x1b[8m",
    "x\n" + std::string(painted_line) + "\n",
    "x\r" + std::string(painted_line),
    "\xC2\x9B"
    "2J\xC2\x85" +
        std::string(painted_line),  // C1: control sequence, next line
    "\x1b]0;title\x07\x1b]8;;http://x\x1b\\",
    "\xE2\x80\xAE"
    "og\xE2\x80\xAC \xE2\x81\xA6x\xE2\x81\xA9",  // overrides and isolates
    "\xD8\x9C\xE2\x80\x8F\xE2\x80\x8E",
    "\xE2\x80\x8B\xE2\x81\xA0\xEF\xBB\xBF\xC2\xAD",               // no width
    "\xE2\x80\xA8" + std::string(painted_line) + "\xE2\x80\xA9",  // line and paragraph separators
    "\xF3\xA0\x81\x87\xF3\xA0\x81\x8F",                           // tags
    "\x7F\x08\x08\x08\x0C\x0B"
    "GO",
    "x" +
        std::string("\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9"
                    "\xC3\xA9\xC3\xA9"
                    "\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9"
                    "\xC3\xA9\xC3\xA9"
                    "\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9"),
};

// What of a text that was shown is not fit for a screen; empty where all of it is. Line feeds are the program's own.
inline std::string not_fit(std::string_view shown) {
  bool line_begins = true;
  for (std::size_t at = 0; at < shown.size();) {
    const text::Character one = text::first_character(shown.substr(at));
    if (!one.good) return "a byte that is not UTF-8 at " + std::to_string(at);
    if (one.code != U'\n' && one.code != U'\r' && text::is_hidden(one.code)) {
      return "a hidden character at " + std::to_string(at) + ": " + text::visible(shown.substr(at, 40));
    }
    if (one.code == U'\r' && !shown.substr(at).starts_with("\r\n")) return "a carriage return at " + std::to_string(at);
    if (line_begins && shown.substr(at).starts_with(painted_line)) return "a painted line at " + std::to_string(at);
    line_begins = one.code == U'\n';
    at += one.size;
  }
  return {};
}

}  // namespace mainbore::test
