#include "words/record.hpp"

#include "words/tables.hpp"

namespace mainbore::words::english {
namespace record_table {

using enum RecordWord;

constexpr RecordTable table{{
    {title_void, "RECORD - the sheet is void"},
    {title_complete, "RECORD - complete"},
    {title_missing, "RECORD - {count} missing"},
    {title_leaks, "RECORD - it leaks: do not backfill"},
    {tap_number, "tap {number}"},
    {planned, "Planned"},
    {with_readings, "With readings"},
    {holds_outside, "Hold: a reading lies outside its stop number."},
    {holds_leaking, "Hold: the tap leaks."},
    {why_void, "WHY THE SHEET IS VOID"},
    {why_void_beside, "stop, and plan again with these readings"},
    {outside, "{number}: {value} was read, and the sheet holds for {bounds}"},
    {by_hand_alone, "the stop was made up by hand alone: less than a quarter turn by wrench"},
    {was_no_go, "the plan was a no-go: there was no tap to make"},
    {another_tap, "planned again with the readings it is another tap: {work}"},
    {stop_numbers, "STOP NUMBERS"},
    {read_inside, "{bounds}; read {value}: inside"},
    {read_outside, "{bounds}; read {value}: outside"},
    {not_read, "{bounds}; not read"},
    {as_built, "AS BUILT"},
    {holds, "HOLDS"},
    {hold_settled, "{hold}: settled by what was read."},
    {hold_cleared, "{hold}: {found}[, by {by}|]."},
    {hold_by_gauge, "{hold}: cleared by the gauge."},
    {hold_open, "{hold}: not written as cleared."},
    {deviations, "DEVIATIONS"},
    {deviation, "{what}: {done}, planned {planned}: [{reason}|no reason given.]"},
    {deviation_told, "{what}: [{reason}|no reason given.]"},
    {missing, "STILL MISSING"},
    {missing_hold, "Hold not written as cleared, found and by whom: {hold}"},
    {missing_reason, "Reason for {what}: {done} where {planned} was planned"},
    {missing_tight,
     "Leak check: it leaks (\"{read}\"). Do not backfill. Tighten or repair, check again under full line pressure; "
     "call if it does not hold"},
    {missing_plainly,
     "Leak check: \"{read}\" does not say that it holds. Do not backfill before it does, and write that alone, such as "
     "\"tight at 70 psi, 15 min\"; what was before goes under remarks"},
    {diameter_or_circumference, "Outside diameter, or circumference"},
}};
static_assert(complete(table), "every word of the record, in the order of RecordWord");

}  // namespace record_table

const RecordTable& record() { return record_table::table; }

}  // namespace mainbore::words::english
