#include "words/asking.hpp"

#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace asking_table {

using enum AskWord;

constexpr AskTable table{{
    {heading_order, "LA ORDEN"},
    {heading_main, "LA TUBERÍA PRINCIPAL"},
    {heading_bare_pipe, "EL TUBO DESCUBIERTO"},
    {heading_service, "EL SERVICIO"},
    {heading_beside, "JUNTO A LA TOMA"},
    {heading_machine, "LA MÁQUINA"},
    {heading_tool, "LA HERRAMIENTA"},
    {heading_trial, "TOMAS DE PRUEBA"},
    {heading_water, "AGUA PARA EL CLIENTE"},
    {heading_pit, "LA EXCAVACIÓN"},
    {heading_cleaning, "DESINFECCIÓN"},
    {heading_rest, "ALGO MÁS"},
    {heading_job, "EL TRABAJO"},
    {this_asks, "Esto pregunta lo que se sabe de una toma, y al final escribe {file}."},
    {how_to_answer,
     "Con Enter solo se toma lo que está entre corchetes. «no sé» es respuesta en todas partes: el plan toma entonces "
     "el lado seguro, y lo dice. «?» explica, «atrás» vuelve a la pregunta anterior, «alto» termina y no escribe "
     "nada."},
    {first_question, "Esta es la primera pregunta."},
    {what_else, "¿Qué más hay ahí?"},
    {also, "También: no sé, atrás, alto."},
    {yes, "sí"},
    {no, "no"},
    {yes_or_no, "sí o no"},
    {blank_not_known, "no sé"},
    {blank_none, "ninguno"},
    {blank_plan_chooses, "lo escoge el plan"},
    {blank_no, "no"},
    {blank_not_proved, "aún no comprobado"},
    {blank_it_has_none, "no tiene"},
    {blank_size_of_tap, "el tamaño de la toma"},
    {blank_nothing_more, "nada más"},
    {or_nothing, "o bien: nada"},
    {or_nothing_more, "o bien: nada más"},
    {one_of, "una de: {words}"},
    {whole_between, "un número entero de {least} a {greatest}"},
    {between, "de {least} a {greatest}"},
    {a_size, "un tamaño nominal, como \"8 pulg\", \"3/4 pulg\" o \"DN 200\""},
    {a_clock, "un lugar en la carátula de un reloj, como \"1:30\""},
    {a_time, "una hora del día, como \"07:30\""},
    {a_day, "una fecha: año, mes y día, como \"2026-05-04\""},
    {a_line, "un renglón de texto"},
    {tables_have, "las tablas tienen para esta tubería: {classes}"},
    {taken_as, "se entendió: {answer}"},
    {neither, "{answer} no es ni sí ni no"},
    {none_of_these, "{answer} no es ninguna de estas"},
    {nothing_given, "no hay nada escrito"},
    {no_number, "{answer} no empieza con un número"},
    {no_unit, "{answer} no tiene unidad"},
    {unknown_unit, "{answer} tiene una unidad que no se conoce"},
    {wrong_unit, "{answer} tiene la unidad de otra cosa"},
    {not_usable, "{answer} no es un número que se pueda usar"},
    {left_over, "a {answer} le sobra algo después de la unidad"},
    {two_numbers, "{answer} son dos números, o no es una fracción"},
    {out_of_range, "{answer} está fuera de los límites"},
    {not_whole, "{answer} no es un número entero"},
    {not_a_clock, "{answer} no es un lugar en la carátula de un reloj"},
    {not_a_word, "{answer} no se conoce aquí"},
    {not_enough, "{answer} no basta para saber cuál es"},
    {not_a_time, "{answer} no es una hora del día"},
    {not_a_day, "{answer} no es un día del calendario"},
    {not_utf8, "eso no es texto UTF-8"},
    {set_utf8, "ponga la terminal en UTF-8, o escriba sin acentos"},
    {not_taken, "{answer} no se puede tomar: muy largo, o no es texto simple"},
    {write_size, "escriba \"{inches}\""},
    {write_either, "escriba \"{us}\" o \"{si}\""},
    {did_you_mean, "¿quiso decir «{word}»?"},
    {no_comma, "el decimal va con punto, no con coma"},
    {the_highest, "de dos lecturas dé la que cuenta: de la presión de línea, la más alta"},
    {dry_main, "una tubería vacía es main.pressurized = false, con la presión que va a llevar en main.pressure"},
    {nearby_left_out,
     "Entonces el archivo no dice nada de lo que hay cerca, y el plan queda pendiente hasta que todo se mida."},
    {machine_left_out,
     "Entonces se dejan fuera todos los datos de la máquina: el plan usa cifras conservadoras, y queda pendiente hasta "
     "tenerlos."},
    {still_to_find, "Falta averiguar antes de poder planear: {facts}."},
    {write_it, "¿Escribirlo en {file}?"},
    {yes_back_or_stop, "sí, atrás o alto"},
    {end_help, "sí escribe el archivo; atrás vuelve a la última pregunta; alto termina y no escribe nada"},
    {stopped, "terminado; no se escribió nada"},
    {written, "escrito: {file}"},
    {next_command, "siguiente: {command}"},
    {one_to_find, "falta averiguar un dato:"},
    {facts_to_find, "faltan {count} datos por averiguar:"},
    {then_write, "luego escríbalos en el archivo, o:"},
    {readings_begin, "Enter deja una lectura sin leer, «?» explica, «alto» termina y no registra nada."},
    {hold_found, "Pendiente, {hold}: qué se encontró"},
    {hold_by, "  quién lo resolvió"},
    {stopped_readings, "terminado; no se registró nada"},
}};
static_assert(complete(table), "every word of asking, in the order of AskWord");

}  // namespace asking_table

const AskTable& asking() { return asking_table::table; }

}  // namespace mainbore::words::spanish
