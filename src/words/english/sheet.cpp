#include "words/tables.hpp"

namespace mainbore::words::english {
namespace {

using enum SheetWord;

constexpr SheetTable table = {{
    {title_sheet, "Field sheet"},
    {order, "Order"},
    {place, "Place"},
    {planned_for, "Planned for"},
    {crew, "Crew"},
    {cover, "Cover"},
    {rules, "Rules"},
    {trouble_link, "If it goes wrong"},
    {record_link, "Record"},
    {what_stops_it, "What stops it"},
    {what_stops_it_beside, "and the way forward"},
    {stop_numbers, "Stop numbers"},
    {stop_numbers_beside, "outside one: stop, plan again"},
    {column_read, "Read"},
    {column_bounds, "Stop unless"},
    {column_reading, "Reading"},
    {setup, "Set-up"},
    {marks, "Marks on the bar"},
    {marks_beside, "from mark 1, where the tool touches"},
    {makeup, "Make-up"},
    {office_open, "Also open, for the office"},
    {office, "Clear first, by the office"},
    {pipe_open, "Also open, at the pipe"},
    {pipe, "Clear at the pipe"},
    {pipe_beside, "before the cut"},
    {by, "by"},
    {bring, "Bring"},
    {bring_beside, "tick each one; one of each where no count stands"},
    {about, "About this job"},
    {work, "Order of work"},
    {work_beside, "tick each step; bold: go no further until it is so"},
    {legend_open, "open"},
    {legend_shut, "shut"},
    {legend_full, "chamber under pressure"},
    {legend_zero, "chamber at zero"},
    {trouble, "If it goes wrong"},
    {cautions, "Cautions"},
    {cautions_beside, "read out at the pit, every time"},
    {record, "Record"},
    {record_beside, "as built"},
    {fingerprint, "Fingerprint {print}"},
    {stops_in_full, "What stops it, in full"},
    {holds_in_full, "Holds in full"},
    {of_office, " (office)"},
    {of_pipe, " (at the pipe)"},
    {found, "Watch for"},
    {found_beside, "found while planning"},
    {load, "Load list"},
    {load_beside, "what to look at before it leaves the yard"},
}};
static_assert(complete(table), "every word, in the order of SheetWord");

}  // namespace

const SheetTable& sheet() { return table; }

}  // namespace mainbore::words::english
