#include "words/sheet_boxes.hpp"

#include "words/tables.hpp"

namespace mainbore::words::english {
namespace sheet_boxes_table {

using enum BoxWord;

constexpr BoxTable table{{
    {inside, "inside"},
    {outside, "OUTSIDE - stop, plan again"},
    {unreadable, "cannot be read"},
    {holds, "tight"},
    {leaks, "LEAKS - do not backfill: tighten or repair, check again, call"},
    {unsure, "does not say that it holds: write \"tight at 70 psi, 15 min\""},
    {first, "Not saved. This cannot be read:"},
    {save, "Save the readings"},
    {saved, "Saved as"},
    {hold, "hold"},
}};
static_assert(complete(table), "every word of the boxes, in the order of BoxWord");

}  // namespace sheet_boxes_table

const BoxTable& sheet_boxes() { return sheet_boxes_table::table; }

}  // namespace mainbore::words::english
