#include "words/asking.hpp"
#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace {

constexpr std::string_view yes[] = {"si", "s", "claro", "verdadero"};
constexpr std::string_view no[] = {"no", "n", "falso"};
constexpr std::string_view not_known[] = {"nose",        "nolose", "yonose",  "nosesabe", "desconocido",
                                          "desconocida", "niidea", "sindato", "quiensabe"};
constexpr std::string_view help[] = {"ayuda"};
constexpr std::string_view back[] = {"atras", "volver", "regresar", "anterior"};
constexpr std::string_view stop[] = {"alto", "salir", "parar", "terminar", "cancelar"};
constexpr std::string_view nothing[] = {"nada", "nadamas", "ninguno", "ninguna", "nohaymas", "nohay"};
constexpr std::string_view no_text[] = {"ninguno", "ninguna", "nada", "no"};
constexpr UnitWord units[] = {{"pulg", "in"},        {"pulgada", "in"},   {"pulgadas", "in"},   {"pie", "ft"},
                              {"pies", "ft"},        {"metro", "m"},      {"metros", "m"},      {"milimetros", "mm"},
                              {"centimetros", "cm"}, {"lb/pulg2", "psi"}, {"lbs/pulg2", "psi"}, {"gal/min", "gpm"},
                              {"galon", "gal"},      {"galones", "gal"},  {"litro", "L"},       {"litros", "L"},
                              {"millas/h", "mph"},   {"hora", "h"},       {"horas", "h"},       {"dias", "days"},
                              {"minutos", "min"}};

constexpr AnswerWords words{.yes = yes,
                            .no = no,
                            .not_known = not_known,
                            .help = help,
                            .back = back,
                            .stop = stop,
                            .nothing = nothing,
                            .no_text = no_text,
                            .units = units};

}  // namespace

const AnswerWords& answers() { return words; }

}  // namespace mainbore::words::spanish
