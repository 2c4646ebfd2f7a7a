#include "words/record.hpp"

#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace record_table {

using enum RecordWord;

constexpr RecordTable table{{
    {title_void, "REGISTRO - la hoja ya no vale"},
    {title_complete, "REGISTRO - completo"},
    {title_missing, "REGISTRO - faltan {count}"},
    {title_leaks, "REGISTRO - hay fuga: no tape la zanja"},
    {tap_number, "toma {number}"},
    {planned, "Planeado"},
    {with_readings, "Con las lecturas"},
    {holds_outside, "Pendiente: una lectura queda fuera de su número límite."},
    {holds_leaking, "Pendiente: la toma tiene fuga."},
    {why_void, "POR QUÉ LA HOJA YA NO VALE"},
    {why_void_beside, "alto, y planee de nuevo con estas lecturas"},
    {outside, "{number}: se leyó {value}, y la hoja vale para {bounds}"},
    {by_hand_alone, "la llave se puso solo a mano: menos de un cuarto de vuelta de apriete"},
    {was_no_go, "el plan era no: no había toma que hacer"},
    {another_tap, "planeada de nuevo con las lecturas es otra toma: {work}"},
    {stop_numbers, "NÚMEROS LÍMITE"},
    {read_inside, "{bounds}; leído {value}: dentro"},
    {read_outside, "{bounds}; leído {value}: fuera"},
    {not_read, "{bounds}; sin leer"},
    {as_built, "COMO QUEDÓ"},
    {holds, "PENDIENTES"},
    {hold_settled, "{hold}: resuelto por lo que se leyó."},
    {hold_cleared, "{hold}: {found}[, por {by}|]."},
    {hold_by_gauge, "{hold}: resuelto por el manómetro."},
    {hold_open, "{hold}: no está escrito como resuelto."},
    {deviations, "CAMBIOS AL PLAN"},
    {deviation, "{what}: {done}, planeado {planned}: [{reason}|sin motivo escrito.]"},
    {deviation_told, "{what}: [{reason}|sin motivo escrito.]"},
    {missing, "FALTA TODAVÍA"},
    {missing_hold, "Pendiente sin escribir como resuelto, qué se encontró y quién: {hold}"},
    {missing_reason, "Motivo de {what}: {done} donde se planeó {planned}"},
    {missing_tight,
     "Prueba de fugas: hay fuga (\"{read}\"). No tape la zanja. Apriete o repare, y pruebe de nuevo con toda la "
     "presión; llame "
     "si no aguanta"},
    {missing_plainly,
     "Prueba de fugas: \"{read}\" no dice que aguanta. No tape la zanja antes de que aguante, y escriba solo eso, por "
     "ejemplo "
     "\"estanco a 70 psi, 15 min\"; lo de antes va en lo raro de la tubería"},
    {diameter_or_circumference, "Diámetro exterior, o circunferencia"},
}};
static_assert(complete(table), "every word of the record, in the order of RecordWord");

}  // namespace record_table

const RecordTable& record() { return record_table::table; }

}  // namespace mainbore::words::spanish
