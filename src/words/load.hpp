// The words of the load list: each thing, and what to look at before it leaves the yard.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "words/fill.hpp"

namespace mainbore::words {

enum class LoadWord : std::uint8_t {
  // sizes
  by_machine,
  od_between,  // {low} {high}
  od,          // {od}
  od_unknown,
  on_main,   // {main} {seat} {tap}
  for_stop,  // {tap}
  outlet,    // {tap}
  // fittings; {rated} is the sentence of that name, {marked} the next
  rated,                // {pressure}
  marked,               // {pressure}
  as_asked,             // {text}
  stop,                 // {thread} {marked}
  stop_check,           // {rated}
  stop_bore,            // {thread} {marked}
  stop_bore_check,      // {rated}
  saddle,               // {marked}
  saddle_polyethylene,  // {marked}
  saddle_pvc,           // {marked}
  saddle_check,         // {asked} {rated}
  sleeve,
  sleeve_check,  // {asked} {rated}
  valve,
  valve_check,  // {rated}
  support,
  support_stop,
  support_sleeve,
  branch_fittings,  // {count} {tap}
  branch_fittings_check,
  branch_pipe,
  branch_pipe_check,
  service_pipe,
  service_pipe_check,
  tape,
  tape_check,
  sealant,
  sealant_check,
  grease,
  grease_check,
  grease_plastic_check,
  disinfectant,
  disinfectant_check,
  // machine
  machine,        // {title}
  machine_check,  // {travel} {pressure}
  powered_feed,
  machine_saddle,
  machine_saddle_check,
  gaskets,
  gaskets_check,
  spare_gaskets,
  spare_gaskets_check,
  chain,
  chain_check,  // {length}
  extension,
  insertion_tool,
  insertion_tool_check,
  drill_and_tap,
  cutter_and_tap,
  tool_check,
  trial_piece,
  trial_piece_check,
  cutter,
  cutter_check,
  cutter_pilot,
  cutter_pilot_check,
  pump_saddle,
  pump_sleeve,
  stop_adapter,
  stop_adapter_check,
  valve_adapter,
  valve_adapter_check,
  torque_wrench,
  torque_wrench_check,  // {usual} {high}
  wrenches,
  wrenches_check,
  // to measure
  rule,
  gauge,
  gauge_check,  // {most} {line}
  tape_measure,
  wall_gauge,
  wall_gauge_check,  // {material}
  thermometer,
  // to keep safe
  scraper,
  jumper,
  jumper_check,
  blanket,
  asbestos,
  asbestos_check,
  film_tape,
  film_tape_check,
  shield,
  shield_check,
  ladder,
  ladder_check,
  pump,
  pump_check,
  valve_key,
  valve_key_check,
  locks,
  locks_check,
  hose,
  hose_check,
  bucket,
  bucket_check,
  clamp,
  clamp_check,
  plug,  // {thread}
  plug_check,
  // what the office approves, and what is aboard
  approved,        // {named}
  you_have,        // {count}
  you_lack,        // {count} {instead}; {instead} may be missing
  other_seat,      // {low} {high} {stock}; {stock} may be missing
  other_tool,      // {stock}; may be missing
  extended_chain,  // {chain} {count} {extension}
  smaller_tool,    // {tap} {count} {spacing}
  end,
};

[[nodiscard]] std::string_view say(LoadWord word, Language language);

}  // namespace mainbore::words
