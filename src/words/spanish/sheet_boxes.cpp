#include "words/sheet_boxes.hpp"

#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace sheet_boxes_table {

using enum BoxWord;

constexpr BoxTable table{{
    {inside, "dentro"},
    {outside, "FUERA - alto, planifique de nuevo"},
    {unreadable, "no se puede leer"},
    {holds, "estanco"},
    {leaks, "FUGA - no tape la zanja: apriete o repare, pruebe de nuevo, llame"},
    {unsure, "no dice que aguanta: escriba \"estanco a 70 psi, 15 min\""},
    {first, "No se guardó. Esto no se puede leer:"},
    {save, "Guardar las lecturas"},
    {saved, "Guardado como"},
    {hold, "pendiente"},
}};
static_assert(complete(table), "every word of the boxes, in the order of BoxWord");

}  // namespace sheet_boxes_table

const BoxTable& sheet_boxes() { return sheet_boxes_table::table; }

}  // namespace mainbore::words::spanish
