#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace {

using enum DrawingWord;

constexpr DrawingTable table = {{
    {not_drawn, "Sin dibujo: {why}"},
    {to_scale, "{n} a escala"},
    {along, "A lo largo de la tubería"},
    {minus_way, "lado -"},
    {plus_way, "lado +"},
    {tap_here, "TOMA AQUÍ"},
    {nothing_near, "nada que librar en este tramo"},
    {moved, "a {n} del lugar pedido"},
    {thing_kept, "{thing} {n}, mínimo {least}"},
    {clear_each_way, "libre {n} o más por lado"},
    {nearest, "próximo: ______"},
    {far_thing, "{thing} a {distance}, lado {way}"},
    {along_said, "La tubería de lado."},
    {near_unknown, "No se sabe qué hay cerca."},
    {at_place, "La toma queda en el lugar pedido."},
    {moved_said, "La toma se mueve a {distance} del lugar pedido."},
    {thing_said, "{thing} a {distance} de la toma[, mínimo {least}|]."},
    {nobody_looked, "Nadie ha mirado: descubra a los dos lados, mida y anote."},
    {keep_out, "Gris oscuro: ahí no se hace toma."},
    {white_mark, "Marca blanca: el lugar pedido."},
    {farther_off, "Más lejos: {things}."},
    {first_of, "Se dibuja la primera de {count} tomas."},
    {from_the_side, "De lado."},
    {machine, "Máquina y barra"},
    {chosen_together, "manguito, válvula y máquina se escogen juntos."},
    {od_unknown, "no se sabe el diámetro exterior."},
    {chain, "cadena {n} con ganchos"},
    {on_open_stop, "máquina sobre la llave abierta"},
    {depths_missing, "Sin profundidades:"},
    {wall_missing, "no se sabe la pared."},
    {depth_of_point, "punta de la herramienta, bajo"},
    {below_outside, "el exterior del tubo"},
    {drill, "broca"},
    {cutter, "cortador"},
    {mark_touch, "1: toca"},
    {mark_through, "2: atraviesa"},
    {full_width, "ancho total"},
    {tap, "macho"},
    {mark_catches, "3: muerde"},
    {mark_stop, "4: PARE"},
    {by_trial, "prueba: ____"},
    {machine_on_pipe, "La máquina en el tubo, barra vertical."},
    {machine_on_stop, "La máquina en la llave de la abrazadera, barra vertical."},
    {chain_said, "Cadena {length} de gancho a gancho, tramos a {degrees} grados de la vertical."},
    {full_said, "Del toque al ancho total la broca avanza {length}."},
    {stop_said, "El macho para con la punta {length} bajo el exterior."},
    {seat_caption, "Asiento de máquina para {diameter} por fuera."},
    {chain_inward, "Cadena armada {length}, {extensions}; tramos inclinados {degrees} grados hacia dentro al subir."},
    {chain_outward, "Cadena armada {length}, {extensions}; tramos inclinados {degrees} grados hacia fuera al subir."},
    {no_extension, "sin extensión"},
    {one_extension, "1 extensión"},
    {extensions, "{count} extensiones"},
    {chain_missing, "Cadena sin dibujar: no se saben los anclajes."},
    {travel, "La barra corre {travel}; la punta recogida queda a {standoff}.[ Hace falta: {needed}.|]"},
    {travel_missing, "No se sabe la carrera de la barra."},
    {stands_at, "Línea cortada: solo su lugar. Va a las {clock}."},
    {section, "La tubería en la toma"},
    {measure_first, "no se sabe el diámetro exterior. Mídalo primero."},
    {stop, "llave de {size}"},
    {saddle, "abrazadera de {size}"},
    {sleeve, "manguito de {size}"},
    {at_clock, "a las {clock}"},
    {hole, "agujero {n}"},
    {wall, "pared {n}"},
    {to_far_wall, "macho a otra pared"},
    {outside, "exterior {n}"},
    {section_said,
     "Corte de la tubería, visto a lo largo. Diámetro exterior {od}.[ Pared {wall}.|] La toma apunta a "
     "las {clock}.[ Agujero de {hole}.|][ La rosca de la llave, apretada, llega {thread} bajo el "
     "exterior.|]"},
    {seen_along, "Vista a lo largo de la tubería."},
    {wall_not_drawn, "Pared desconocida, sin dibujar."},
    {thread_black, "Negro: rosca de la llave. Línea cortada: solo su lugar."},
    {dashes_stop, "Línea cortada: lugar de la llave."},
    {dashes_fitting, "Línea cortada: lugar de la pieza."},
}};
static_assert(complete(table), "every word, in the order of DrawingWord");

}  // namespace

const DrawingTable& drawings() { return table; }

}  // namespace mainbore::words::spanish
