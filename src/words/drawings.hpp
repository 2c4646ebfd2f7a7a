// The words of the drawings on the printed pages of the field sheet.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "words/fill.hpp"

namespace mainbore::words {

enum class DrawingWord : std::uint8_t {
  // every drawing; {n} is the number that is drawn
  not_drawn,  // {why}
  to_scale,   // {n}
  // along the main
  along,
  minus_way,
  plus_way,
  tap_here,
  nothing_near,
  moved,           // {n}
  thing_kept,      // {thing} {n} {least}
  clear_each_way,  // {n}
  nearest,
  far_thing,  // {thing} {distance} {way}
  along_said,
  near_unknown,
  at_place,
  moved_said,  // {distance}
  thing_said,  // {thing} {distance} {least}
  nobody_looked,
  keep_out,
  white_mark,
  farther_off,  // {things}
  first_of,     // {count}
  from_the_side,
  // machine and bar
  machine,
  chosen_together,
  od_unknown,
  chain,  // {n}
  on_open_stop,
  depths_missing,
  wall_missing,
  depth_of_point,
  below_outside,
  drill,
  cutter,
  mark_touch,
  mark_through,
  full_width,
  tap,
  mark_catches,
  mark_stop,
  by_trial,
  machine_on_pipe,
  machine_on_stop,
  chain_said,     // {length} {degrees}
  full_said,      // {length}
  stop_said,      // {length}
  seat_caption,   // {diameter}
  chain_inward,   // {length} {extensions} {degrees}
  chain_outward,  // {length} {extensions} {degrees}
  no_extension,
  one_extension,
  extensions,  // {count}
  chain_missing,
  travel,  // {travel} {standoff} {needed}
  travel_missing,
  stands_at,  // {clock}
  // the main at the tap
  section,
  measure_first,
  stop,      // {size}
  saddle,    // {size}
  sleeve,    // {size}
  at_clock,  // {clock}
  hole,      // {n}
  wall,      // {n}
  to_far_wall,
  outside,       // {n}
  section_said,  // {od} {wall} {clock} {hole} {thread}
  seen_along,
  wall_not_drawn,
  thread_black,
  dashes_stop,
  dashes_fitting,
  // the drawings on a screen alone
  threads,
  no_measures,
  gauge_first,
  threads_said,
  cut_across,
  cut_along,
  complete_threads,
  drop,
  wall_alone,
  stop_ends,
  threads_black,
  at_least_wall,
  at_least_wall_dashed,
  threads_required,
  largest_decides,
  height_usual,
  pit,
  spoil_high,
  spoil_wide,
  ladder,
  shield,
  slope,
  bottom,
  top,
  set_back,
  cover,
  depth,
  pit_said,
  pit_sloped,
  pit_shielded,
  pit_upright,
  pit_main,
  pit_ladder,
  machine_left,
  machine_right,
  engineer_designs,
  slope_for,
  dashes_shield,
  upright_while,
  ladder_drawn,
  profile,
  tap_and_stop,
  curb_stop,
  least_bore,
  in_main,
  wanted,
  profile_said,
  profile_behind,
  profile_least,
  profile_wanted,
  profile_caption,
  not_arriving,
  meter_left_out,
  meter_assumed,
  end,
};

[[nodiscard]] std::string_view say(DrawingWord word, Language language);

}  // namespace mainbore::words
