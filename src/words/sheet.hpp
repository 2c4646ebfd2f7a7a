// The words of the field sheet that stand on it alone: headings, columns, legend.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "words/fill.hpp"

namespace mainbore::words {

enum class SheetWord : std::uint8_t {
  // head of the page
  title_sheet,
  order,
  place,
  planned_for,
  crew,
  cover,
  rules,
  trouble_link,
  record_link,
  // the card
  what_stops_it,
  what_stops_it_beside,
  stop_numbers,
  stop_numbers_beside,
  column_read,
  column_bounds,
  column_reading,
  setup,
  marks,
  marks_beside,
  makeup,
  office_open,
  office,
  pipe_open,
  pipe,
  pipe_beside,
  by,
  bring,
  bring_beside,
  about,
  // the order of work
  work,
  work_beside,
  legend_open,
  legend_shut,
  legend_full,
  legend_zero,
  // afterwards
  trouble,
  cautions,
  cautions_beside,
  record,
  record_beside,
  fingerprint,  // {print}
  // on a screen alone
  stops_in_full,
  holds_in_full,
  of_office,
  of_pipe,
  found,
  found_beside,
  load,
  load_beside,
  // what the plan rests on, on a screen alone
  assumed,
  assumed_beside,
  numbers,
  fact_main,
  main_is,
  fact_thread,
  fact_sleeve,
  fact_saddle,
  fact_machine,
  fact_hold_down,
  fact_torque,
  fact_pit,
  pit_is,
  fact_slope,
  slope_is,
  fact_dug,
  dug_sloped,
  dug_shielded,
  fact_spoil,
  fact_swab,
  swab_gallon,
  swab_liter,
  fact_flush,
  flush_is,
  fact_left,
  left_is,
  sources,
  own_rule,
  from_memory,
  end,
};

[[nodiscard]] std::string_view say(SheetWord word, Language language);

}  // namespace mainbore::words
