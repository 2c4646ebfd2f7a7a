// The words of asking, of `new` and of `record`: headings, what an empty answer means, what may be answered, what cannot be
// taken. And the words in which people answer.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <span>
#include <string>
#include <string_view>

#include "words/fill.hpp"

namespace mainbore::words {

enum class AskWord : std::uint8_t {
  // headings of the interview
  heading_order,
  heading_main,
  heading_bare_pipe,
  heading_service,
  heading_beside,
  heading_machine,
  heading_tool,
  heading_trial,
  heading_water,
  heading_pit,
  heading_cleaning,
  heading_rest,
  heading_job,
  // how it begins, and how a line is answered
  this_asks,  // {file}
  how_to_answer,
  first_question,
  what_else,
  also,
  yes,
  no,
  yes_or_no,
  // what an empty answer means
  blank_not_known,
  blank_none,
  blank_plan_chooses,
  blank_no,
  blank_not_proved,
  blank_it_has_none,
  blank_size_of_tap,
  blank_nothing_more,
  // what may be answered
  or_nothing,
  or_nothing_more,
  one_of,         // {words}
  whole_between,  // {least} {greatest}
  between,        // {least} {greatest}
  a_size,
  a_clock,
  a_time,
  a_day,
  a_line,
  tables_have,  // {classes}
  // what was understood
  taken_as,  // {answer}
  // an answer that cannot be taken, and what to do about it
  neither,        // {answer}
  none_of_these,  // {answer}
  nothing_given,
  no_number,     // {answer}
  no_unit,       // {answer}
  unknown_unit,  // {answer}
  wrong_unit,    // {answer}
  not_usable,    // {answer}
  left_over,     // {answer}
  two_numbers,   // {answer}
  out_of_range,  // {answer}
  not_whole,     // {answer}
  not_a_clock,   // {answer}
  not_a_word,    // {answer}
  not_enough,    // {answer}
  not_a_time,    // {answer}
  not_a_day,     // {answer}
  not_utf8,
  set_utf8,
  not_taken,     // {answer}
  write_size,    // {inches}
  write_either,  // {us} {si}
  did_you_mean,  // {word}
  no_comma,
  the_highest,
  dry_main,
  // what is left out
  nearby_left_out,
  machine_left_out,
  // the end
  still_to_find,  // {facts}
  write_it,       // {file}
  yes_back_or_stop,
  end_help,
  stopped,
  written,       // {file}
  next_command,  // {command}
  one_to_find,
  facts_to_find,  // {count}
  then_write,
  // the readings of a finished tap
  readings_begin,
  hold_found,  // {hold}
  hold_by,
  stopped_readings,
  end,
};

[[nodiscard]] std::string_view say(AskWord word, Language language);

struct UnitWord {
  std::string_view said;
  std::string_view unit;  // as quantities are read
};

// What somebody may type, in small letters, without blanks, hyphens, dots and accents. What English has is understood in every
// language.
struct AnswerWords {
  std::span<const std::string_view> yes;
  std::span<const std::string_view> no;
  std::span<const std::string_view> not_known;
  std::span<const std::string_view> help;
  std::span<const std::string_view> back;
  std::span<const std::string_view> stop;
  std::span<const std::string_view> nothing;  // more, of a list
  std::span<const std::string_view> no_text;
  std::span<const UnitWord> units;
};

[[nodiscard]] const AnswerWords& answer_words(Language language);

}  // namespace mainbore::words
