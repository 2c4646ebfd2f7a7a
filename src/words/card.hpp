// The words of the card: verdict, the plan in a line, stop numbers, set-up, marks on the bar, make-up, headings.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "words/fill.hpp"

namespace mainbore::words {

enum class CardWord : std::uint8_t {
  // verdict and the plan in a line
  verdict_go,
  verdict_hold,
  verdict_no_go,
  main,         // {size} {material}
  direct_tap,   // {size} {main}
  direct_taps,  // {count} {size} {main}
  saddle_tap,   // {size} {main}
  saddle_taps,  // {count} {size} {main}
  sleeve_tap,   // {size} {main}
  service,      // {size} {main}; {size} may be missing
  at_pressure,  // {pressure}
  drained,
  one_hold,
  holds,  // {count}
  where,  // {clock} {other} {shift} {way}
  // stop numbers
  line_pressure,
  wall,
  circumference,
  pipe_temperature,
  air_temperature,
  joint_distance,
  surge,
  at_least,  // {bound}
  at_most,   // {bound}
  between,   // what stands between two bounds
  stop_numbers,
  stop_numbers_beside,
  read,
  // holds and stops
  what_stops_it,
  what_stops_it_beside,
  clear_by_office,
  open_for_office,
  clear_at_pipe,
  clear_at_pipe_beside,
  clear_at_pipe_ready,
  open_at_pipe,
  by,
  // set-up
  setup,
  machine_seat,
  seat_for,  // {diameter}
  seat_on_stop,
  seat_on_valve,
  chain,
  chain_no_extension,   // {needed} {available}
  chain_one_extension,  // {needed} {available}
  chain_extensions,     // {needed} {available} {count}
  stud_torque,
  stud_torque_is,  // {torque}
  cutter,
  cutter_is,  // {hole}
  feed,
  feed_by_hand,  // {push}, which may be missing
  feed_powered,  // {push}, which may be missing
  // the tap in short
  short_chain,    // {length}
  short_tapping,  // {mark}
  short_through,  // {mark}
  short_wrench,   // {turns}
  // marks on the bar
  marks,
  marks_beside,
  back_of_machine_valve,
  back_of_stop,
  back_of_tapping_valve,
  tool_touches,
  teeth_touch,
  made_at_pipe,
  breakthrough,
  tap_catches,
  stop_tapping,
  never_past,
  stop_touches,
  back_at_least,   // {length} {turns}; {turns} may be missing
  back_tried,      // {length}
  back_by_saddle,  // {length}
  back_by_sleeve,  // {length}
  past_gauged,     // {length}
  past_full,       // {length} {full} {turns}; the last two may be missing
  past_lead,       // {length}
  past_fed,        // {length} {turns}; {turns} may be missing
  past_by_trial,   // {length}
  past_turned,     // {length} {turns}; {turns} may be missing
  past_catching,   // {length} {turns}; {turns} may be missing
  past_by_piece,   // {length} {turns}; {turns} may be missing
  past,            // {length}
  past_less,       // {length} {clearance}
  less_the_pilot,
  past_less_stop,  // {length}
  back,            // {length}
  tool_too_long,
  past_never,
  // make-up
  makeup,
  turn,        // {number}
  turns,       // {number}
  makeup_one,  // {hand} {wrench}; {hand} may be missing
  makeup_is,   // {hand} {wrench} {showing}; {hand} may be missing
  makeup_by_trial,
  // what to bring
  bring,
  bring_beside,
  bring_all_beside,
  more_to_bring,  // {count}
  fit,
  machine,
  measure,
  keep_safe,
  // about this job
  about,
  from_settings,  // {taken}
  lacks_aboard,
  all_aboard,
  note,        // {note}
  not_method,  // {method} {why}
  or_smaller,  // {count} {tap}
  assumed,     // {fact} {value}; {value} may be missing
  more_about,  // {count}
  every_time,
  // of a translation alone: empty in English
  translation_unreviewed,
  translation_reviewed,  // {name}
  findings_in_full,
  action,
  cautions_in_full,
  english_from_here,
  end,
};

[[nodiscard]] std::string_view say(CardWord word, Language language);

}  // namespace mainbore::words
