#include "words/record.hpp"

#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace {

using enum RecordWord;

constexpr RecordTable table{{
    {title_void, "REGISTRO - la hoja ya no vale"},
    {title_complete, "REGISTRO - completo"},
    {title_missing, "REGISTRO - faltan {count}"},
    {tap_number, "toma {number}"},
    {planned, "Planeado"},
    {with_readings, "Con las lecturas"},
    {holds_outside, "Pendiente: una lectura queda fuera de su número límite."},
    {why_void, "POR QUÉ LA HOJA YA NO VALE"},
    {why_void_beside, "alto, y planee de nuevo con estas lecturas"},
    {outside, "{number}: se leyó {value}, y la hoja vale para {bounds}"},
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
    {diameter_or_circumference, "Diámetro exterior, o circunferencia"},
}};
static_assert(complete(table), "every word of the record, in the order of RecordWord");

}  // namespace

const RecordTable& record() { return table; }

}  // namespace mainbore::words::spanish
