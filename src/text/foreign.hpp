// Text that somebody else wrote, as people may see it: on a terminal, on a page, in a message.
//
// Whoever writes a job, a table, a rule, the name of a file or a word of the command line can write anything there:
// what clears a screen and paints a "GO" on it, what turns the direction of reading, what cannot be seen at all. Each
// such character is shown by its number, <U+001B>, and a byte that is not UTF-8 as <FF>. The rest stands as it is.
//
// Every way out to people goes through here: diagnostics, pages, sheets, cells of CSV, and what stands on standard
// error. JSON goes to programs, and there the same characters are escaped as JSON has it: nothing of them is lost.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace mainbore::text {

// The first byte that is not UTF-8 (RFC 3629: no overlong forms, no surrogates), if any.
[[nodiscard]] std::optional<std::size_t> first_not_utf8(std::string_view text);

// The character a text begins with; the text is not empty.
struct Character {
  std::size_t size = 1;  // bytes
  char32_t code = 0;
  bool good = false;  // false: a byte that is not UTF-8
};
[[nodiscard]] Character first_character(std::string_view text);

// Controls (of ASCII and of ISO 6429), marks that turn the direction of reading, characters without ink that are no
// spaces, and code points that are no characters.
[[nodiscard]] bool is_hidden(char32_t code);

// As it may be shown on one line. Shown twice it is the same.
[[nodiscard]] std::string visible(std::string_view text);
void append_visible(std::string& out, std::string_view text);
// The same of a text of several lines, which stay lines.
[[nodiscard]] std::string visible_lines(std::string_view text);
// For a message: on one line, in double quotes, cut short.
[[nodiscard]] std::string quoted(std::string_view text);

// No more than so many bytes of it, in whole characters.
[[nodiscard]] std::string_view cut(std::string_view text, std::size_t most);

// Whether there is nothing to read in it: spaces of any kind, and what cannot be seen.
[[nodiscard]] bool is_blank(std::string_view text);

}  // namespace mainbore::text
