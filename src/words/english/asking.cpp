#include "words/asking.hpp"

#include "words/tables.hpp"

namespace mainbore::words::english {
namespace {

using enum AskWord;

constexpr AskTable table{{
    {heading_order, "THE ORDER"},
    {heading_main, "THE MAIN"},
    {heading_bare_pipe, "THE BARE PIPE"},
    {heading_service, "THE SERVICE"},
    {heading_beside, "BESIDE THE TAP"},
    {heading_machine, "THE MACHINE"},
    {heading_water, "WATER FOR THE CUSTOMER"},
    {heading_pit, "THE PIT"},
    {heading_cleaning, "CLEANING"},
    {heading_rest, "ANYTHING ELSE"},
    {heading_job, "THE JOB"},
    {this_asks, "This asks what is known of one tap, and writes {file} at the end."},
    {how_to_answer,
     "Enter alone takes what is in brackets. \"don't know\" is an answer everywhere: the plan then takes the safe "
     "side, and says so. \"?\" explains, \"back\" goes to the question before, \"stop\" quits and writes nothing."},
    {first_question, "This is the first question."},
    {what_else, "What else is there?"},
    {also, "Also: don't know, back, stop."},
    {yes, "yes"},
    {no, "no"},
    {yes_or_no, "yes or no"},
    {blank_not_known, "don't know"},
    {blank_none, "none"},
    {blank_plan_chooses, "the plan chooses"},
    {blank_no, "no"},
    {blank_not_proved, "not proved yet"},
    {blank_it_has_none, "it has none"},
    {blank_nothing_more, "nothing more"},
    {or_nothing, "or: nothing"},
    {or_nothing_more, "or: nothing more"},
    {one_of, "one of: {words}"},
    {whole_between, "a whole number from {least} to {greatest}"},
    {between, "from {least} to {greatest}"},
    {a_size, "a nominal size, such as \"8 in\", \"3/4 in\" or \"DN 200\""},
    {a_clock, "a place on a clock face, such as \"1:30\""},
    {a_time, "a time of day, such as \"07:30\""},
    {a_day, "a day, such as \"2026-05-04\""},
    {a_line, "one line of plain text"},
    {tables_have, "the tables have for this main: {classes}"},
    {taken_as, "taken as {answer}"},
    {neither, "{answer} is neither yes nor no"},
    {none_of_these, "{answer} is none of these"},
    {nothing_given, "nothing is given"},
    {no_number, "{answer} does not start with a number"},
    {no_unit, "{answer} has no unit"},
    {unknown_unit, "{answer} has a unit that is not known"},
    {wrong_unit, "{answer} has a unit for something else"},
    {not_usable, "{answer} is not a number that can be used"},
    {left_over, "{answer} has something left over after the unit"},
    {two_numbers, "{answer} is two numbers, or not a fraction"},
    {out_of_range, "{answer} is out of range"},
    {not_whole, "{answer} is not a whole number"},
    {not_a_clock, "{answer} is not a place on a clock face"},
    {not_a_word, "{answer} is not a word known here"},
    {not_enough, "{answer} is not enough to go by"},
    {not_a_time, "{answer} is not a time of day"},
    {not_a_day, "{answer} is not a day of the calendar"},
    {not_utf8, "that is not UTF-8 text"},
    {set_utf8, "set the terminal to UTF-8, or write without accents"},
    {not_taken, "{answer} cannot be taken: too long, or not plain text"},
    {write_size, "write \"{inches}\""},
    {write_either, "write \"{us}\" or \"{si}\""},
    {did_you_mean, "did you mean \"{word}\"?"},
    {no_comma, "the decimal point is a point, not a comma"},
    {the_highest, "of two readings give the one that counts: of the line pressure, the highest"},
    {dry_main, "a dry main is main.pressurised = false, with the pressure it will carry as main.pressure"},
    {nearby_left_out, "Then the file says nothing of what is near, and the plan holds until all of it is measured."},
    {machine_left_out,
     "Then the machine's figures are all left out: the plan uses conservative figures, and holds until they are "
     "given."},
    {still_to_find, "Still to find out before it can be planned: {facts}."},
    {write_it, "Write it to {file}?"},
    {yes_back_or_stop, "yes, back or stop"},
    {end_help, "yes writes the file; back goes to the last question; stop quits and writes nothing"},
    {stopped, "stopped; nothing is written"},
    {written, "written: {file}"},
    {next_command, "next: {command}"},
    {one_to_find, "one fact is still to be found out:"},
    {facts_to_find, "{count} facts are still to be found out:"},
    {then_write, "then write them into the file, or:"},
    {readings_begin, "Enter leaves a reading unread, \"?\" explains, \"stop\" quits and records nothing."},
    {hold_found, "Hold, {hold}: found"},
    {hold_by, "  cleared by"},
    {stopped_readings, "stopped; nothing is recorded"},
}};
static_assert(complete(table), "every word of asking, in the order of AskWord");

}  // namespace

const AskTable& asking() { return table; }

}  // namespace mainbore::words::english
