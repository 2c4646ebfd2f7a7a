// The words of the order of work: its headings, steps and what to wait for, what to do when it goes wrong, and how
// valves stand.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "words/fill.hpp"

namespace mainbore::words {

enum class StepWord : std::uint8_t {
  // headings of the order of work
  phase_before,
  phase_pipe,
  phase_engineer,
  phase_machine,
  phase_cut,
  phase_change,
  phase_stop,
  phase_off,
  phase_saddle,
  phase_shut_stop,
  phase_sleeve,
  phase_shut_valve,
  phase_next,
  phase_fill,
  phase_connect,
  phase_leave,
  phase_trouble,
  // before the machine
  people,
  fittings,  // {named}
  fittings_until,
  valves,
  valves_until,
  empty,
  empty_until,
  pit,
  walls_bottom,  // {along} {across} {depth}
  walls_engineer,
  walls_shield,
  walls_slope,  // {run}
  walls_spoil,  // {setback}
  walls_until,
  identify,
  identify_until,
  // the pipe
  place,          // {clock} {shift} {way}
  place_several,  // {count} {clock} {other} {apart}
  place_clears,   // {things}
  place_thing,    // {thing} {least}
  clean_film,
  clean_asbestos,
  clean_plastic,
  clean_bare,
  check,  // {numbers}
  check_plastic,
  check_plastic_direct,
  check_until,
  wrap,
  pressure_lowered,  // {limit}
  pressure,          // {line} {limit}
  pressure_until,
  holds,
  holds_until,
  disinfect,
  engineer,
  engineer_until,
  // words inside sentences
  its_thread,
  push,  // {push} {line}
  push_unknown,
  as_measured,
  // the machine on the pipe
  seat,              // {diameter}
  chain,             // {needed} {torque}
  chain_extension,   // {needed}
  chain_extensions,  // {needed} {count}
  chain_none,        // {needed}
  chain_plastic,
  chain_firm,
  tool_metal,    // {tap} {thread}
  tool_plastic,  // {tap} {thread}
  tool_until,
  machine_valves,  // {mark}
  machine_valves_until,
  thread_it,  // {mark}
  by_piece,
  // the cut
  blanket,
  touch,  // {marks}
  touch_until,
  cut_by_hand,
  cut_powered,
  cut_plastic,
  cut_through,  // {mark}
  cut_wet,
  flush_machine,   // {holder}
  flush_asbestos,  // {holder}
  flush_until,
  holder_machine,
  holder_saddle,
  holder_sleeve,
  // from the tool to the stop, under pressure
  back_out,  // {push}
  shut_machine_valve,
  bleed,
  bleed_until,
  look_at_tool,
  look_at_coupon,
  load_stop,  // {sealant}
  sealant_tape,
  sealant_any,
  load_stop_until,
  equalize,
  equalize_until,
  open_machine_valve,  // {push}
  set_stop,            // {mark} {makeup}
  stop_bleed,
  zero_until,
  release,
  lift,
  look_at_stop,  // {showing}
  look_at_stop_until,
  showing,
  showing_unknown,
  // the stop in a dry main
  dry_back_out,
  dry_lift,
  dry_lift_coupon,
  dry_lift_until,
  dry_stop,  // {sealant} {makeup}
  makeup,    // {makeup}
  makeup_plastic,
  makeup_unknown,
  // saddle
  saddle_fit,
  saddle_fit_plastic,
  saddle_stop,
  saddle_test,
  saddle_test_until,
  mount_on_stop,
  saddle_tool,  // {hole}
  saddle_tool_until,
  saddle_valves,  // {mark}
  saddle_valves_until,
  saddle_back,  // {push}
  saddle_shut,
  saddle_bleed,
  saddle_dry_back,
  dry_until,
  saddle_lift,
  coupon,
  coupon_until,
  saddle_look,
  saddle_look_until,
  // sleeve
  sleeve_fit,
  sleeve_test,
  sleeve_test_until,
  mount_on_valve,
  sleeve_tool,
  sleeve_tool_until,
  sleeve_valves,  // {mark}
  sleeve_valves_until,
  sleeve_back,  // {push}
  sleeve_shut,
  sleeve_dry_back,
  sleeve_lift,
  sleeve_look,
  sleeve_look_until,
  // afterwards
  next_tap,  // {count}
  fill_stop,
  fill_valve,
  fill_until,
  bond_when,
  bond,
  connect,
  connect_branch,
  connect_several,  // {count}
  flush_stop,       // {seconds} {time}
  flush_valve,      // {seconds} {time}
  check_joints,
  check_joints_valve,
  check_joints_until,
  bed,
  bed_film,
  bring_back,
  bring_back_until,
  oil_direct,
  oil_other,
  record,
  // if it goes wrong: when, and what to do
  breaks_when,
  breaks,
  water_when,
  water,
  leaks_gasket_when,
  leaks_seat_when,
  leaks_gasket,  // {torque}
  leaks_seat,
  no_zero_when,
  no_zero_machine,
  no_zero_stop,
  no_zero_valve,
  bar_out_when,
  bar_out,
  jams_when,
  jams,
  jams_dry,
  loose_when,
  loose,
  loose_dry,
  threads_when,
  threads,
  coupon_when,
  coupon_lost,
  crack_when,
  crack,
  not_water_when,
  not_water,
  // how valves and chamber stand
  valve_stop,
  valve_machine,
  valve_tapping,
  valve_bypass,
  valve_bleed,
  valve_chamber,
  valve_brief,
  chamber_brief,
  stop_brief,
  open,
  shut,
  bypass_open,
  bypass_shut,
  at_line,
  at_zero,
  open_brief,
  shut_brief,
  bypass_open_brief,
  bypass_shut_brief,
  full_brief,
  zero_brief,
  // the order of work on a page
  work_heading,
  work_now,
  work_until,
  by_utility,
  trouble_heading,
  load_heading,
  load_beside,
  end,
};

[[nodiscard]] std::string_view say(StepWord word, Language language);

}  // namespace mainbore::words
