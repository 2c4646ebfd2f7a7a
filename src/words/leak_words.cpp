#include "words/leak_words.hpp"

namespace mainbore::words {
namespace {

// Left out on purpose, so that it is asked for: "none" alone (no leak, or no check), "hold" ("on hold"), "bajo" (under, or it
// fell), whatever tells of before ("now dry after tightening" has its place under remarks), "dry" (it may have no water in it).
constexpr std::array<std::string_view, leak_list_count> lists{
    "tight watertight leaktight leakproof holds held holding ok okay pass passed passes good satisfactory "
    "estanco estanca hermetico hermetica aguanta aguanto sostiene sostuvo mantiene mantuvo bien "
    "conforme aprobado aprobada",
    "leak weep wept drip seep spray squirt wet damp moist drop lost lose losing loss fail fall fell crack bubbl ooz "
    "fug gote rezum moj humed pierd perd cay caid chorr escap filtra suda",
    "no not none without zero 0 nil never nor neither free isnt wasnt arent doesnt didnt dont wont cant cannot sin "
    "ningun ninguna ninguno nada cero nunca ni tampoco libre",
    "ningun ninguna ninguno",
    "none nil zero 0 ninguna ninguno nada cero",
    "tight free proof",
    "test tests tested testing check checks checked",
    "prueba revision",
    "or o u",
    "and y e",
    "a an the at for of in to by with under is was are it all any dry every full line pressure static psi psig kpa mpa "
    "bar kg cm min mins minute minutes hr hrs hour hours h m s sec secs second seconds test tests tested check checked "
    "joint joints fitting fittings stop tap saddle sleeve gasket seat gauge curb valve service connection connections "
    "seen visible found sign signs anywhere everywhere around during whole inspection "
    "al seco seca secas secos de del la el los las en con por toda todo todas todos presion minuto minutos hora horas "
    "junta juntas conexion "
    "conexiones llave toma abrazadera silleta empaque asiento valvula banqueta servicio prueba revision revisado "
    "revisada probado probada visibles vista hay se ve ven vio vieron tiene tuvo esta estan es fue linea "
    "completa durante manometro",
    "any visible sign signs of a hay se ve ven vio vieron",
    "psi psig kpa mpa bar kg",
    "m min mins minute minutes h hr hrs hour hours s sec secs second seconds minuto minutos hora horas",
    "is was are"};

}  // namespace

const std::array<std::string_view, leak_list_count>& leak_words() { return lists; }

}  // namespace mainbore::words
