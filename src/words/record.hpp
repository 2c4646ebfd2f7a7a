// The words of the record of a finished tap.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "words/fill.hpp"

namespace mainbore::words {

enum class RecordWord : std::uint8_t {
  // the verdict on the record
  title_void,
  title_complete,
  title_missing,  // {count}
  title_leaks,
  tap_number,  // {number}
  planned,
  with_readings,
  holds_outside,
  holds_leaking,
  // why the sheet is void
  why_void,
  why_void_beside,
  outside,  // {number} {value} {bounds}
  by_hand_alone,
  was_no_go,
  another_tap,  // {work}
  // stop numbers
  stop_numbers,
  read_inside,   // {bounds} {value}
  read_outside,  // {bounds} {value}
  not_read,      // {bounds}
  // as built, holds, deviations, what is missing
  as_built,
  holds,
  hold_settled,   // {hold}
  hold_cleared,   // {hold} {found} {by}; {by} may be missing
  hold_by_gauge,  // {hold}
  hold_open,      // {hold}
  deviations,
  deviation,       // {what} {done} {planned} {reason}
  deviation_told,  // {what} {reason}
  missing,
  missing_hold,     // {hold}
  missing_reason,   // {what} {done} {planned}
  missing_tight,    // {read}
  missing_plainly,  // {read}
  diameter_or_circumference,
  end,
};

[[nodiscard]] std::string_view say(RecordWord word, Language language);

}  // namespace mainbore::words
