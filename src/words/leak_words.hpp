// The words by which a leak check is understood, of every language at once: a ledger has what the crew wrote, and does not say
// in which. Folded: lower case, without accents and apostrophes.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace mainbore::words {

enum class LeakList : std::uint8_t {
  holds,         // it is tight
  leaks,         // beginnings of words: it is not
  negates,       // "no leaks", "not tight"
  again,         // negates a second time what is negated once: "no hay ninguna fuga"
  none_behind,   // "leaks: none"
  tight_behind,  // "leak free"
  test_behind,   // "leak test" says nothing of a leak
  test_before,   // nor does "prueba de fugas"
  either,        // carries a "no" on: "no leaks or drips"
  ends,          // ends what a "no" speaks of
  plain,         // says nothing for or against
  between,       // may stand between a "no" and the leak that it speaks of
  pressures,     // units: a number is of a pressure or a time
  times,
  asks,  // begins a question
  end,
};
inline constexpr std::size_t leak_list_count = static_cast<std::size_t>(LeakList::end);

// Each list with a space between its words.
[[nodiscard]] const std::array<std::string_view, leak_list_count>& leak_words();

}  // namespace mainbore::words
