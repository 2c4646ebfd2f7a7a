#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace {

using enum SheetWord;

constexpr SheetTable table = {{
    {title_sheet, "Hoja de campo"},
    {order, "Orden"},
    {place, "Lugar"},
    {planned_for, "Planeada para"},
    {crew, "Cuadrilla"},
    {cover, "Tapado"},
    {rules, "Reglas"},
    {trouble_link, "Si algo sale mal"},
    {record_link, "Registro"},
    {what_stops_it, "Lo que lo impide"},
    {what_stops_it_beside, "y qué hacer"},
    {stop_numbers, "Números límite"},
    {stop_numbers_beside, "fuera de uno: pare, vuelva a planear"},
    {column_read, "Lea"},
    {column_bounds, "Pare si no es"},
    {column_reading, "Lectura"},
    {setup, "Montaje"},
    {marks, "Marcas en la barra"},
    {marks_beside, "avance tras la marca 1"},
    {makeup, "Apriete"},
    {office_open, "También pendiente, para la oficina"},
    {office, "Resuelva primero la oficina"},
    {pipe_open, "También pendiente, en el tubo"},
    {pipe, "Resuelva en el tubo"},
    {pipe_beside, "antes del corte"},
    {by, "por"},
    {bring, "Lleve"},
    {bring_beside, "marque cada cosa; una de cada una si no dice cuántas"},
    {about, "Sobre este trabajo"},
    {work, "Orden del trabajo"},
    {work_beside, "marque cada paso; en negrita: no siga hasta que sea así"},
    {legend_open, "abierto"},
    {legend_shut, "cerrado"},
    {legend_full, "cámara con presión"},
    {legend_zero, "cámara en cero"},
    {trouble, "Si algo sale mal"},
    {cautions, "Precauciones"},
    {cautions_beside, "léalas en la excavación, siempre"},
    {record, "Registro"},
    {record_beside, "como se hizo"},
    {fingerprint, "Huella {print}"},
    {stops_in_full, "Lo que lo impide, completo"},
    {holds_in_full, "Pendientes completos"},
    {of_office, " (oficina)"},
    {of_pipe, " (en el tubo)"},
    {found, "Cuidado con"},
    {found_beside, "hallado al planear"},
    {load, "Lista de carga"},
    {load_beside, "qué revisar antes de salir del patio"},
}};
static_assert(complete(table), "every word, in the order of SheetWord");

}  // namespace

const SheetTable& sheet() { return table; }

}  // namespace mainbore::words::spanish
