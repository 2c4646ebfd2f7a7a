// Spanish of the crews: "principal" is the main, "toma" the tap, "llave de inserción" the corporation stop, "abrazadera" the
// service saddle, "manguito" the tapping sleeve, "asiento" the machine saddle. Orders are in the polite imperative. The figures
// are those of the English sentences. Why a check is made is said in English alone.
#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace findings_table {

using enum FindingCode;

constexpr FindingTable<FindingText> table = {{
    {identity_not_water,
     {"la tubería no es de agua potable",
      "Según la orden, esta tubería lleva: {0}. Con este plan solo se perfora agua potable.",
      "No haga la toma. No acerque herramientas al tubo y llame a su dueño. Si la orden está mal, pida que la compañía "
      "la "
      "corrija por escrito y vuelva a planear.",
      ""}},
    {identity_unknown,
     {"nadie sabe qué lleva la tubería", "La orden dice que no se sabe qué lleva esta tubería.",
      "Todavía no haga la toma. Pida que la compañía identifique el tubo por dos medios independientes, como su "
      "registro y "
      "un sonido o señal de trazado desde un hidrante o válvula conocidos. Anote qué lleva y vuelva a planear.",
      ""}},
    {identity_unconfirmed,
     {"falta comprobar que la tubería es la de agua",
      "La orden no dice que se haya comprobado que este tubo lleva agua potable.",
      "Compruébelo por dos medios independientes antes de montar la máquina: registro y marca azul; señal o sonido "
      "desde un "
      "hidrante o válvula conocidos; tamaño, material y juntas como en el registro. Anote cuáles dos.",
      ""}},
    {main_not_in_catalogue,
     {"tubería que no está en las tablas",
      "No hay en las tablas tubo de {1}, material {0}: no se conocen su diámetro, su pared ni su presión nominal.",
      "Revise tamaño y material en el tubo mismo. Si son correctos, mida el diámetro exterior y el espesor de la "
      "pared, pida "
      "la presión nominal a la compañía y vuelva a planear con esos datos.",
      ""}},
    {main_class_unknown,
     {"clase de la tubería desconocida",
      "{1} tubos de las tablas concuerdan con lo que se sabe. [Se planeó con el más débil, {0}.|Se planeó con el más "
      "débil.]",
      "Lea la clase fundida, pintada o impresa en el cuerpo del tubo[, o mida esto, que distingue los tubos: {2}|].",
      ""}},
    {main_class_not_made,
     {"la clase de la orden no se hizo en este tamaño",
      "La clase o norma de la orden no está en las tablas para este tubo.[ Las tablas tienen: {0}[ a {1}|][; {2}[ a "
      "{3}|]|].|]",
      "Lea la clase en el cuerpo del tubo. Corrija la orden, o deje la clase en blanco y mida la pared en la toma.",
      ""}},
    {main_class_word,
     {"palabra desconocida en la clase",
      "La clase o norma de la orden dice {0}[, palabra de tubo de {1}|, palabra que no está en las tablas].",
      "Lea la clase en el cuerpo del tubo. Corrija el material, o escriba la clase con las palabras de su norma, y "
      "vuelva a "
      "planear.",
      ""}},
    {main_by_recollection,
     {"solo un dato de memoria distingue el tubo",
      "[El nombre de la orden se recuerda como el usual de {0}.|{1}: se recuerda que se instaló[ desde {2}|][ hasta "
      "{3}|].] El "
      "plan no se apoya en eso.",
      "Lea la clase fundida en el cuerpo del tubo, o pida que la compañía dé la presión nominal. Mientras tanto se "
      "planea con el tubo "
      "más débil que concuerda.",
      ""}},
    {main_size_metric,
     {"tamaño dado con nombre métrico",
      "El tamaño se dio como DN {0}. El tubo planeado, {2} de {1}, mide {3} por fuera. En la mayoría de los países un "
      "tubo "
      "con ese nombre mide otra cosa.",
      "Mida la circunferencia en el tubo descubierto y limpio, anótela y vuelva a planear. Si el registro nombra la "
      "norma "
      "americana del tubo, anótela en main.standard.",
      ""}},
    {main_year_contradicts,
     {"el año de instalación no concuerda con el tubo",
      "La orden dice {0} instalado en {1}.[ Se instaló de {2} a {3}.|[ Se instaló desde {2}.|[ Se instaló hasta "
      "{3}.|]]]",
      "Mire el tubo: rásquelo, vea la junta, mida el diámetro exterior. Corrija material, clase o año y vuelva a "
      "planear.",
      ""}},
    {main_not_yet_laid,
     {"tubería instalada después del día de la toma", "La orden dice instalada en {0}; la toma está planeada para {1}.",
      "Corrija el año o el día y vuelva a planear. Si la tubería aún no está, planee la toma cuando esté instalada y "
      "llena.",
      ""}},
    {main_od_contradicts,
     {"el diámetro exterior no es el del tubo de la orden",
      "El tubo mide {value} por fuera. Lo más cercano según la orden[, {0},|] mide {limit}.[ La lectura concuerda con "
      "{1}.|]",
      "Limpie el tubo y mida otra vez en tres lugares. Si la lectura se confirma, este no es el tubo de la orden: "
      "corrija "
      "material, clase o tamaño y vuelva a planear.",
      ""}},
    {main_od_unsettled,
     {"diámetro exterior sin definir", "Tubos de {0} a {1} por fuera concuerdan con lo que se sabe.",
      "Mida la circunferencia en el tubo descubierto y limpio antes de cargar el camión. La lectura define qué asiento "
      "de "
      "máquina y qué abrazadera llevar.",
      ""}},
    {main_od_unknown,
     {"diámetro exterior desconocido", "Ni las tablas ni la orden dan el diámetro exterior.",
      "Mida la circunferencia con cinta en el tubo descubierto y limpio, anótela y vuelva a planear.", ""}},
    {main_readings_disagree,
     {"calibrador y cinta no concuerdan", "El calibrador da {value}; la cinta da {limit}.",
      "Limpie el tubo todo alrededor y tome las dos lecturas en el mismo lugar. Revise que la cinta quede a escuadra "
      "con el "
      "tubo. Deben concordar antes de la toma.",
      ""}},
    {main_wall_impossible,
     {"la lectura de pared no puede ser correcta",
      "Se anotó una pared de {value}. Este tubo tiene {limit} como máximo.",
      "Revise la unidad y el ajuste del medidor para este material. Mida otra vez sobre metal o plástico limpio: el "
      "revestimiento no cuenta. Mientras tanto el plan usa la pared mínima de las tablas.",
      ""}},
    {main_wall_thin,
     {"pared más delgada que la de un tubo sano",
      "La pared mide {value}. Un tubo sano[ de {0}|] tiene al menos {limit}.",
      "Mida en varios lugares alrededor de la toma y busque picaduras. Haga la toma solo donde la pared dé al menos "
      "[{wall}|{limit}]; si no, pase a tubo sano o pregunte al ingeniero.[ Una tubería de {1} puede haberse pedido con "
      "pared más "
      "delgada: que la compañía busque la pared en sus planos, y planee con una salida soldada y reforzada, según el "
      "diseño del "
      "ingeniero.|]",
      ""}},
    {main_wall_unmeasured,
     {"pared sin medir",
      "Nadie ha medido la pared en la toma.[ El plan necesita pared sana de al menos {wall}.|[ El plan "
      "necesita pared sana de al menos {limit}.|]]",
      "Mida la pared en la toma y a los lados, en tubo descubierto y limpio, y anote la lectura menor. [Debe dar al "
      "menos "
      "{wall}; si da menos, pare.|[Debe dar al menos {limit}; si da menos, pare.|Anótela y vuelva a planear.]]",
      ""}},
    {main_condition_unseen,
     {"falta revisar la tubería", "Nadie ha dicho en qué estado está la tubería.",
      "Limpie el tubo todo alrededor y mire: grietas, picaduras, partes blandas, abrazaderas viejas. Si es hierro, "
      "dele "
      "golpes ligeros con martillo y oiga. Anote sano, picado o malo.",
      ""}},
    {main_condition_pitted,
     {"la tubería está picada", "La tubería está anotada como picada.",
      "Escoja el lugar con el medidor: pared sana bajo todo el asiento de la máquina o la abrazadera, y ninguna "
      "picadura bajo "
      "un empaque. Lea la pared en la toma y anótela.",
      ""}},
    {main_condition_poor,
     {"la tubería está en mal estado", "La tubería está anotada como mala.",
      "No haga la toma a presión en este tramo. Use un tramo sano, o que el ingeniero decida si se corta y se pone una "
      "pieza "
      "nueva con la tubería cerrada.",
      ""}},
    {main_encased,
     {"tubería envuelta en película", "La tubería está envuelta en película de polietileno.",
      "Donde irán la máquina y la cadena, dé dos o tres vueltas de cinta de polietileno alrededor de tubo y película, "
      "y haga la "
      "toma a través de ella. Después cierre con cinta cada corte y envuelva la llave y el comienzo del servicio.",
      ""}},
    {main_curved,
     {"el tubo está curvado a lo largo", "Este tramo de tubo se instaló en curva.",
      "Pase a un tramo recto para la toma directa, o use una abrazadera hecha para este tubo.", ""}},
    {main_curve_unknown,
     {"no se sabe si el tubo está curvado", "Nadie ha dicho si este tramo está recto.",
      "Ponga una regla o un hilo a lo largo del tubo descubierto. Haga toma directa solo si está recto; anote lo que "
      "vio.",
      ""}},
    {main_temperature_outside,
     {"tubo demasiado frío o caliente para la toma",
      "La pared del tubo está a {value}. La toma se hace ({2}) solo de {0} a {1}.",
      "Dele sombra, cúbralo o espere hasta que un termómetro puesto en el tubo dé [{pipe-temperature}|{0} a {1}][, "
      "{3}|].",
      ""}},
    {main_temperature_unmeasured,
     {"temperatura del tubo sin leer",
      "Nadie ha leído la temperatura del tubo. Debe estar en [{pipe-temperature}|{0} a {1}].",
      "Ponga un termómetro en el tubo descubierto, a la sombra, cuando lleve un rato destapado. Haga la toma solo a "
      "[{pipe-temperature}|{0} a {1}].",
      ""}},
    {main_freezing,
     {"tubo bajo cero", "La pared del tubo está a {value}; el agua se congela a {limit}.",
      "Revise el termómetro. Si es así, no corte: cubra y caliente la excavación, sin llama, hasta que el tubo dé al "
      "menos "
      "{limit} y se sepa que hay flujo en la tubería; luego vuelva a planear.",
      ""}},
    {service_not_smaller,
     {"servicio tan grande como la tubería", "Aquí no se planea un servicio de {0} en una tubería de {1}.",
      "Que el ingeniero escoja: un manguito del mismo tamaño, una te o una tubería mayor. Si un tamaño se anotó mal, "
      "corríjalo y vuelva a planear.",
      ""}},
    {direct_not_allowed,
     {"sin toma directa en este tipo de tubería",
      "Según las reglas vigentes no hay toma directa en {0}."
      "[ Qué regla vale depende de {2}, que no se sabe: indíquelo y vuelva a planear.|]",
      "[En su lugar: {1}.|Use una abrazadera o un manguito hechos para este tubo.]", ""}},
    {direct_over_maximum,
     {"mayor que la toma directa más grande",
      "Se pide una toma directa de {0}. La mayor permitida[ en {2}|] es de {1}."
      "[ Qué regla vale depende de {3}, que no se sabe: indíquelo y vuelva a planear.|]",
      "Use una abrazadera, o varias tomas menores de igual capacidad.", ""}},
    {direct_no_rule,
     {"sin regla para toma directa aquí",
      "Ninguna regla vigente cubre una toma directa en {1} de {0}."
      "[ Qué regla vale depende de {2}, que no se sabe: indíquelo y vuelva a planear.|]",
      "Use una abrazadera, o que el ingeniero fije la toma directa máxima para esta tubería.", ""}},
    {direct_few_threads,
     {"muy pocos hilos en la pared", "[Una pared de {0}|La pared] tiene {value-}; se requieren {limit}.",
      "Use una toma menor, varias pequeñas o una abrazadera.", ""}},
    {direct_thin_wall,
     {"muy pocos hilos si la pared es la mínima",
      "La pared puede ser de solo {value}, que[ tiene {0-} y|] no alcanza: se necesita {limit}.",
      "Mida la pared en la toma. Debe dar al menos [{wall}|{1+}]; si da menos, use una abrazadera.", ""}},
    {direct_marginal_threads,
     {"hilos apenas suficientes", "La pared tiene {value-}; se requieren {limit}.",
      "Mida la pared en la toma, use un macho afilado y una llave nueva, y pare en la marca. Lleve una abrazadera en "
      "el "
      "camión.",
      ""}},
    {direct_recalled_thread,
     {"medidas de rosca de memoria, no publicadas",
      "[La empresa de agua pide {limit} en la pared; con las medidas que se recuerdan de esta rosca una pared de {0} "
      "tiene "
      "{value-}.|Con las medidas que se recuerdan de esta rosca la pared tiene {value-}; lo usual es {limit}.]",
      "[Mida la pared en la toma: con {1+} o más los tiene. O lea la clase en el tubo, o mida la rosca de la llave, y "
      "vuelva "
      "a planear. O que el ingeniero de la empresa permita esta toma.|Mida la rosca de la llave (diámetro sobre los "
      "hilos "
      "e hilos por pulgada) o pregunte a su fabricante, y vuelva a planear.]",
      ""}},
    {direct_thread_unknown,
     {"rosca que no está en las tablas",
      "No hay medidas para una rosca [{0} de {1}|{0}]; donde hay una mayor se cuenta como esa.",
      "Revise la rosca marcada en la llave. Use llave y macho con una rosca de las tablas, o una abrazadera.", ""}},
    {direct_wrong_thread,
     {"rosca equivocada para toma directa aquí", "{0} no es la rosca que se corta en esta tubería.",
      "Use llave y macho con la rosca que piden las reglas, los dos iguales, o una abrazadera.", ""}},
    {direct_hole_too_large,
     {"agujero demasiado grande para el tubo",
      "El agujero[ de {0}|] es {value} del diámetro del tubo; se permite {limit} como máximo.",
      "Use una toma menor, varias pequeñas, o una abrazadera o un manguito.", ""}},
    {direct_wall_unknown,
     {"pared desconocida", "Ni las tablas ni la orden dan una pared en la que contar hilos.",
      "Mida la pared en la toma.[ Los hilos necesitan al menos {wall}.|[ Los hilos necesitan al menos {limit}.|]] "
      "Anote la "
      "lectura y vuelva a planear, o use una abrazadera.",
      ""}},
    {saddle_not_allowed,
     {"sin abrazadera en este tipo de tubería",
      "Según las reglas vigentes no hay toma con abrazadera en {0}."
      "[ Qué regla vale depende de {2}, que no se sabe: indíquelo y vuelva a planear.|]",
      "[En su lugar: {1}.|Use un manguito hecho para este tubo, o pregunte al ingeniero.]", ""}},
    {saddle_over_maximum,
     {"mayor que la toma con abrazadera más grande",
      "Se pide una toma con abrazadera de {0}. La mayor permitida[ en {2}|] es de {1}."
      "[ Qué regla vale depende de {3}, que no se sabe: indíquelo y vuelva a planear.|]",
      "Use varias tomas menores de igual capacidad, o un manguito.", ""}},
    {saddle_no_rule,
     {"sin regla para abrazadera aquí",
      "Ninguna regla vigente cubre una abrazadera en {1} de {0}."
      "[ Qué regla vale depende de {2}, que no se sabe: indíquelo y vuelva a planear.|]",
      "Que el ingeniero fije la toma máxima con abrazadera para esta tubería, o use un manguito.", ""}},
    {saddle_hole_too_large,
     {"agujero demasiado grande para una abrazadera",
      "El agujero[ de {0}|] es {value} del diámetro del tubo; bajo una abrazadera se permite {limit} como máximo.",
      "Use una toma menor, varias pequeñas o un manguito.", ""}},
    {saddle_by_engineer,
     {"abrazadera solo con la palabra del ingeniero",
      "En esta tubería la abrazadera se usa solo como diga el ingeniero.",
      "Muestre al ingeniero material, diámetro exterior, pared y presión. Anote la abrazadera permitida y el nombre.",
      ""}},
    {section_too_little_left,
     {"queda muy poco tubo junto al agujero",
      "Con el agujero queda {value} de la resistencia del tubo como viga; se pide al menos {limit}.",
      "Use una toma menor, varias pequeñas bien separadas, o un manguito que soporte el tubo.", ""}},
    {several_need_room,
     {"varias tomas necesitan espacio", "{0} tomas de {1} necesitan {limit} de tubo libre.",
      "Descubra y mida el tubo entre juntas. Debe haber {limit} sin tomas, juntas ni abrazaderas.", ""}},
    {several_no_room,
     {"sin espacio para varias tomas",
      "{0} tomas de {1} necesitan {limit} de tubo libre; entre las juntas anotadas hay {value}.",
      "Descubra un tramo más largo para las tomas, o use una abrazadera o un manguito.", ""}},
    {several_too_many,
     {"demasiadas tomas en lugar de una",
      "Se necesitarían {0} tomas[ de {1}|][; se permiten {limit} como máximo|, más de lo que permite la regla].",
      "Use una abrazadera o un manguito para una sola toma mayor.", ""}},
    {several_not_taken,
     {"no se ofrecen varias tomas menores", "Aquí no sirven tomas de {0}[: {1}|].",
      "Vea qué más se ofrece, o pregunte al ingeniero.", ""}},
    {sleeve_not_allowed,
     {"sin manguito en este tipo de tubería",
      "Según las reglas vigentes no va manguito de toma en {0}."
      "[ Qué regla vale depende de {2}, que no se sabe: indíquelo y vuelva a planear.|]",
      "[En su lugar: {1}.|Pregunte al ingeniero: quizá haya que cortar y poner una te con la tubería cerrada.]", ""}},
    {sleeve_over_maximum,
     {"mayor que la toma con manguito más grande",
      "Se pide una salida de {0}. La mayor permitida[ en {2}|] es de {1}."
      "[ Qué regla vale depende de {3}, que no se sabe: indíquelo y vuelva a planear.|]",
      "Use una salida menor, o que el ingeniero diseñe una te con la tubería cerrada.", ""}},
    {sleeve_no_rule,
     {"sin regla para manguito aquí",
      "Ninguna regla vigente cubre un manguito en {1} de {0}."
      "[ Qué regla vale depende de {2}, que no se sabe: indíquelo y vuelva a planear.|]",
      "Que el ingeniero fije la salida máxima para esta tubería.", ""}},
    {sleeve_to_be_chosen,
     {"falta escoger el manguito",
      "Se necesita un manguito de toma con salida de {0}[ para diámetro exterior de {1}|].",
      "Mida el diámetro exterior en tres lugares y pida manguito y válvula de toma para esa medida, con presión "
      "nominal para "
      "la línea. Mida del tubo a la cara exterior de la válvula y vea que la carrera de la máquina la pase, y también "
      "la pared. Planee "
      "el corte con la hoja del fabricante del manguito y de su máquina.",
      ""}},
    {method_not_as_asked,
     {"no es el método pedido", "Se pidió: {0}. Se planeó: {1}.",
      "Avise a quien escribió la orden. La razón está con los métodos descartados.", ""}},
    {method_none,
     {"ningún método sirve", "Ningún método que se pueda ofrecer sirve para esta tubería y este servicio.",
      "[Las reglas dicen en su lugar: {0}. |Vea por qué se descartó cada uno. ]Lo que queda: un servicio menor, otra "
      "tubería, "
      "una te cortada con la tubería cerrada, o una conexión diseñada por el ingeniero.",
      ""}},
    {pressure_over_pipe_rating,
     {"presión de línea mayor que la nominal del tubo",
      "La línea está a {value}. La presión nominal del tubo[ {0}|] es {limit}: se pasa por {margin}.",
      "[La clase no está comprobada, y el tubo puede ser uno que aguante esta línea. Lea {1} en el sitio, o pida a la "
      "compañía la "
      "presión nominal de esta tubería, y vuelva a planear con eso. Si ninguna alcanza, la tubería trabaja sobre su "
      "presión "
      "nominal, con toma o sin ella: avise a la compañía.|Pare y avise a la compañía: esta tubería trabaja sobre su "
      "presión "
      "nominal, con toma o sin ella. Si hay duda de la clase, léala en el tubo o pregunte a la compañía la presión "
      "nominal, y "
      "vuelva a planear.]",
      ""}},
    {pressure_over_feed_limit,
     {"presión de línea mayor que el límite de avance",
      "La línea está a {value}. Esta máquina ({0}) se avanza solo hasta {limit}.",
      "Pida que bajen la tubería a [{line-pressure}|{limit}] o menos y la mantengan así, o lleve una máquina con "
      "avance motorizado. Lea "
      "el manómetro en la toma: [{line-pressure}|{limit}] como máximo.",
      ""}},
    {pressure_over_machine_rating,
     {"presión de línea mayor que la de la máquina", "La línea está a {value}. La máquina aguanta {limit}.",
      "Pida que bajen la tubería a [{line-pressure}|{limit}] o menos y la mantengan así, o lleve una máquina para esa "
      "presión. Lea el "
      "manómetro en la toma.",
      ""}},
    {pressure_over_stop_rating,
     {"presión de línea mayor que la de la llave",
      "La línea está a {value}. La llave de inserción sirve hasta {limit}.",
      "Use una llave marcada para al menos {value+}. Si la del camión está marcada así, anote su presión nominal y "
      "vuelva a "
      "planear.",
      ""}},
    {pressure_over_saddle_rating,
     {"presión de línea mayor que la de la abrazadera",
      "La línea está a {value}. La abrazadera o el manguito sirve hasta {limit}.",
      "Use una pieza marcada para al menos {value+}. Si la del camión está marcada así, anote su presión nominal y "
      "vuelva a planear.",
      ""}},
    {pressure_over_wet_tap_limit,
     {"presión de línea mayor que el límite para tomas",
      "La línea está a {value}. Las tomas a presión se hacen hasta {limit}.",
      "Pida que bajen la tubería a [{line-pressure}|{limit}] o menos y la mantengan así durante la toma. Lea el "
      "manómetro en la "
      "toma: [{line-pressure}|{limit}] como máximo.",
      ""}},
    {pressure_surge_over_rating,
     {"presión con golpe de ariete sobre lo permitido al tubo",
      "Con golpe de ariete de {0}[ ({1})|] la tubería puede llegar a {value}; se permite {limit}.",
      "Pregunte a la compañía qué golpe de ariete tiene esta tubería y cada cuánto[: cabe {surge}|[: cabe {2}|]]. Lea "
      "la clase "
      "del tubo y pregunte su presión nominal. Vuelva a planear con lo que averigüe; un golpe que solo viene con un "
      "corte de luz o un "
      "incendio se anota como ocasional. Lo que lo baja: arrancar bombas y cerrar válvulas despacio, o una presión de "
      "línea menor "
      "permanente.",
      ""}},
    {pressure_surge_over_fitting,
     {"presión con golpe de ariete sobre lo permitido a una pieza",
      "Con golpe de ariete de {0} la pieza ({1}) puede llegar a {value}; por un momento se permite {limit}.",
      "Use una marcada para al menos {2+}: anote su presión nominal y vuelva a planear. O pregunte a la compañía qué "
      "golpe de "
      "ariete tiene esta tubería y anótelo.",
      ""}},
    {pressure_rating_unknown,
     {"presión nominal del tubo desconocida", "Las tablas no dan presión nominal para este tubo.",
      "Pida a la compañía la presión de trabajo de esta tubería, por su registro o su prueba, y anótela como presión "
      "nominal. "
      "[Debe ser al menos {limit}, línea y golpe de ariete juntos. |]Vuelva a planear.",
      ""}},
    {pressure_too_warm,
     {"tubo demasiado caliente para estar a presión",
      "El tubo está a {0}, fuera del rango en que tiene presión nominal.",
      "No haga la toma. Dele sombra y enfríe el tubo, revise el termómetro y vuelva a planear con una lectura dentro "
      "del rango.",
      ""}},
    {pressure_needs_regulator,
     {"el lado del cliente necesita regulador",
      "La línea está a {value}; sin regulador se sirve a clientes hasta {limit}.",
      "Ponga un regulador de presión del lado del cliente, como pide el código local.", ""}},
    {pressure_low_over_line,
     {"presión mínima mayor que la máxima",
      "La presión mínima de la tubería se dio como {value}; la máxima, como {limit}.",
      "Lea el manómetro o pida las dos a la compañía, corrija la equivocada y vuelva a planear.", ""}},
    {pressure_system_low,
     {"línea bajo la presión de una red de agua", "La línea está a {value}; una red se mantiene al menos a {limit}.",
      "Pregunte a la compañía si el dato es correcto y la tubería está en servicio, y qué tendrá el cliente.", ""}},
    {machine_unspecified,
     {"faltan los datos de la máquina", "Se planeó con datos conservadores[ ({0})|], no con los del fabricante.",
      "Lea en los papeles de la máquina los límites de presión, la carrera de la barra y los tamaños de toma. Deben "
      "alcanzar "
      "los números de este plan; anótelos, o métalos y vuelva a planear.",
      ""}},
    {machine_wrong_size,
     {"toma fuera de los tamaños de la máquina", "La toma es de {0}. La máquina hace de {1} a {2}.",
      "Lleve una máquina para tomas de {0}.", ""}},
    {machine_no_powered_feed,
     {"la máquina no tiene avance motorizado", "Se pidió avance motorizado y esta máquina no lo tiene.",
      "Avance a mano dentro del límite de avance a mano, o lleve una máquina con avance motorizado.", ""}},
    {machine_figures_missing,
     {"datos de la máquina incompletos", "No se dio, y por eso no se revisó: {0}[; {1}|][; {2}|][; {3}|].",
      "Lea los datos en los papeles de la máquina o mídalos en ella, anótelos y vuelva a planear; o demuestre en el "
      "patio, en "
      "un tramo del mismo tubo, que la máquina asienta, aguanta y alcanza.",
      ""}},
    {machine_no_saddle,
     {"sin asiento de máquina para este tubo",
      "El tubo mide {value} por fuera. Los asientos de la máquina son para {0} a {1}.",
      "Lleve un asiento de máquina hecho para {value}, u otra máquina. No calce uno que no quede.", ""}},
    {machine_gasket_small,
     {"sello apenas más ancho que el agujero",
      "El círculo de sello de la máquina mide {value}; alrededor de un agujero de {0} debe medir {limit} o más.",
      "Revise el dato en los papeles de la máquina, o lleve un asiento y empaque que sellen por fuera del agujero.",
      ""}},
    {machine_figures_wrong,
     {"datos de la máquina imposibles", "El dato {0} es {value}: {1} {limit}.",
      "Mídalo en la máquina o léalo en los papeles del fabricante, corríjalo y vuelva a planear.", ""}},
    {machine_stud_overloaded,
     {"espárrago débil para la sujeción",
      "Cada espárrago jala {0}: {value} en un espárrago de {1}; el límite es {limit}.",
      "Use una sujeción con espárragos más gruesos o un empaque menor, o baje la presión de línea.", ""}},
    {machine_chain_short,
     {"cadena demasiado corta",
      "Se necesitan {limit} de cadena y en el camión hay {value}. Extensiones que se necesitan en total: {0}[; en el "
      "camión: {1}|].",
      "Cargue extensiones de cadena: {0} en total. Luego mida la cadena de gancho a gancho: al menos {limit}.", ""}},
    {machine_travel_short,
     {"carrera de la barra demasiado corta", "La barra recorre {value}; esta toma necesita {limit}.",
      "Lleve una máquina con al menos {limit} de carrera, o una herramienta más corta que su fabricante permita.", ""}},
    {machine_reach_unknown,
     {"no se sabe si la barra alcanza",
      "Con abrazadera la barra pasa por adaptador, llave y abrazadera. No se dio: "
      "{0}[; {1}|][; {2}|][; {3}|].",
      "Mida con cinta en el patio, con máquina, llave y abrazadera en el banco, anote las medidas y vuelva a planear; "
      "o ármelos "
      "en un tramo del mismo tubo y córtelo.",
      ""}},
    {machine_valve_not_clear,
     {"la válvula no cierra detrás de la barra",
      "Con la barra recogida, esta pieza queda a {value} sobre el tubo: {0}. La válvula "
      "necesita {limit} para girar.",
      "Use una herramienta más corta, o una máquina con la válvula más cerca del tubo. Pruebe la válvula en el patio "
      "con la "
      "herramienta en la barra.",
      ""}},
    {machine_tool_strikes_far_wall,
     {"la herramienta llega a la pared opuesta",
      "A toda profundidad la herramienta queda a {value-} de la pared opuesta; se pide {limit}.",
      "Use una herramienta más corta o una toma menor. No pase de la marca.", ""}},
    {machine_push_by_hand,
     {"la barra empuja fuerte contra la mano",
      "La línea empuja la barra con {value}; el límite para las manos es {limit}.",
      "Sujete la barra con el tornillo de avance o su seguro, nunca solo a mano, y párese a un lado.", ""}},
    {machine_chain_ovals_pipe,
     {"la cadena puede ovalar el tubo",
      "Con la tensión necesaria el tubo puede ovalarse {value}; desde {0} hay que cuidarse y {1} es el límite.",
      "Use una banda ancha o una sujeción de asiento completo en vez de cadena sola, o baje la presión de línea. "
      "Apriete solo "
      "hasta que aguante.",
      ""}},
    {makeup_by_trial,
     {"profundidad de la toma por prueba",
      "El apriete no se puede calcular para [{0}|esta rosca]: su conicidad o su largo de calibre no están publicados "
      "aquí.",
      "Rosque en el banco una pieza de prueba de la misma pared, enrosque la llave y marque la barra donde quedan a la "
      "vista los hilos "
      "correctos.",
      ""}},
    {makeup_trial_off,
     {"la prueba no cuadra", "De la prueba, {0}: {value}; {1} {limit}.",
      "Repita la prueba con esta herramienta y una llave de este lote, cuente vueltas e hilos, y saque otra vez la "
      "profundidad.",
      ""}},
    {place_not_looked,
     {"nadie ha buscado juntas ni otras tomas", "No se sabe qué hay en la tubería y a su lado cerca de la toma.",
      "Descubra el tubo hacia los dos lados y busque juntas, tomas, abrazaderas y defectos. La toma debe quedar a "
      "{limit} o "
      "más.",
      ""}},
    {place_moved,
     {"toma movida para librar algo",
      "Muy cerca del lugar pedido: {0}, a {1}. La toma debe quedar a {limit}. Se movió {value+} a lo largo del tubo, + "
      "y - "
      "como en la orden.",
      "Excave hasta el nuevo lugar y mida ahí. Deje al menos {limit} libre. Avise a quien dibujó el servicio.", ""}},
    {place_no_room,
     {"sin lugar libre cerca",
      "A menos de {0} del lugar pedido ningún lugar cumple todas las distancias[ (estorba: {1})|].",
      "Escoja un lugar en otro tramo de tubo, o que el ingeniero acepte una distancia menor.", ""}},
    {place_clock,
     {"posición alrededor del tubo fuera de la regla",
      "El lugar pedido está a {value} sobre la horizontal[; el límite es {limit}|]. Planeado: {0}.",
      "Haga la toma en el lugar planeado, o que el ingeniero acepte el pedido. Anote cuál.", ""}},
    {place_stagger,
     {"otra toma en la misma línea",
      "[Una toma a {0} está a las {1}, en línea con esta o a menos de {3} de ella.|Nadie ha dicho en qué hora del "
      "reloj está una toma "
      "que queda a {0}: cuenta como en línea.][ Planeado: {2}.|]",
      "[Haga la toma a las {2}, o muévase a lo largo del tubo hasta {limit} de la otra.|[Cerca de la toma a las {1}: "
      "muévase a lo "
      "largo del tubo hasta {limit} de ella y vuelva a planear para ese lugar.|Vea en qué hora del reloj está esa "
      "toma, anótela y "
      "vuelva a planear; o muévase hasta {limit} de ella.]]",
      ""}},
    {place_defect_near,
     {"tubo dañado cerca", "Cerca de la toma: {0}, a {1}.",
      "Revíselo, y el tubo hasta ahí. Vigílelo mientras la máquina esté puesta; mueva la toma si suda o se mueve.",
      ""}},
    {place_other_line,
     {"otra línea cerca", "Cerca de la toma: {0}, a {1}.",
      "Encuéntrela excavando a mano antes de acercar una máquina, y mire también debajo de la tubería. Lleve en el "
      "camión el "
      "teléfono de su dueño.",
      ""}},
    {value_recalled,
     {"un valor es de memoria, no leído", "Revise este valor: {0}[, {1}|][, {2}|][, {3}|]. Es de memoria, no leído.",
      "Compárelo con el documento o la hoja del fabricante antes de confiar en él.", ""}},
    {service_size_not_made,
     {"no se hace llave de este tamaño",
      "No hay rosca {1} en las tablas para una toma de {0}[; las más cercanas: {2}[ y {3}|]|; la más cercana: {3}].",
      "Lea el tamaño en la llave o pida el tamaño nominal del servicio[: quizá {2}[ o {3}|]|: quizá {3}], y vuelva a "
      "planear con él.",
      ""}},
    {service_not_tabulated,
     {"tamaño que no está en las tablas",
      "{1}, dado como {0}, no está en ninguna tabla[; los más cercanos: {2}[ y {3}|]|; el más cercano: {3}].",
      "Lea el tamaño en el tubo o en el medidor[: quizá {2}[ o {3}|]|: quizá {3}], y vuelva a planear con él. De un "
      "medidor mayor que los listados, compuesto o de turbina, traiga la curva de su fabricante: lo que pierde y deja "
      "pasar con este caudal. Con ella calcula el ingeniero el servicio.",
      ""}},
    {service_existing_lead,
     {"servicio viejo de plomo", "El servicio encontrado en el suelo es de plomo.",
      "Pare. No lo corte, doble ni mueva. Avise a la compañía, y siga solo con su palabra sobre reemplazo, enjuague y "
      "aviso al "
      "cliente.",
      ""}},
    {service_existing_galvanized,
     {"servicio viejo galvanizado", "El servicio encontrado en el suelo es de acero galvanizado.",
      "Pare y avise a la compañía. Pregunte si alguna vez estuvo conectado tras plomo y si se reemplaza entero. Mida "
      "el caudal que pasa "
      "antes de conectarlo.",
      ""}},
    {service_not_checked,
     {"agua para el cliente sin calcular",
      "Sin revisar: {0}.[ Falta: {1}[, {2}|][, {3}|].|[ Falta: {2}[, {3}|].|[ Falta: {3}.|]]]",
      "Dé lo que falta y vuelva a planear, o que el ingeniero calcule el servicio.", ""}},
    {service_code_unnamed,
     {"código de plomería sin nombrar",
      "Se dieron unidades de mueble sin el código al que pertenecen. Se planeó con {0}, que pide más: {value}.",
      "Diga de qué código son estas unidades y vuelva a planear.", ""}},
    {service_fixture_unknown,
     {"mueble que el código no tiene",
      "En la lista de muebles, el número {1} no es un mueble de [{0}|ningún código de aquí].",
      "Escriba el mueble como en la tabla del código, o dé las unidades de mueble o el caudal.", ""}},
    {service_curve_unread,
     {"la curva de demanda no alcanza",
      "Ninguna curva de demanda de [{0}|un código de aquí] cubre estas unidades de mueble y este tipo de servicio.",
      "Calcule la demanda con el código mismo y dela como caudal.", ""}},
    {service_starved,
     {"al cliente no le llega el agua",
      "Con {0} la presión que queda tras el medidor es {value-}; se quiere al menos {limit}. Con esa presión la línea "
      "pasa {1}.",
      "Ponga una línea, un medidor o una toma mayor, o acorte la línea, y vuelva a planear. El plan nombra los más "
      "pequeños que "
      "sirven.",
      ""}},
    {service_too_high,
     {"cliente demasiado alto para la tubería principal",
      "El cliente está {0} por encima de la tubería principal. Con la presión más baja de esta le quedan {value-} "
      "antes "
      "de que corra el agua; se quiere al menos {limit}.",
      "Revise el desnivel. Si es correcto, sirva al cliente de una tubería de mayor presión o con una bomba que la "
      "empresa de agua permita.",
      ""}},
    {service_too_fast,
     {"agua demasiado rápida en el servicio",
      "Con {0} el agua corre a {value}, más de {limit}; más allá de {1} la línea es muy chica.",
      "Ponga [una línea de {2}|la línea del tamaño siguiente]. Hasta {1} esta sirve, pero hace ruido y se gasta más "
      "pronto.",
      ""}},
    {service_meter_over,
     {"medidor sobre su máximo", "La demanda de {value} pasa de los {limit} que admite un medidor de {0}.",
      "Ponga un medidor mayor. El plan nombra el más pequeño que sirve.", ""}},
    {service_meter_continuous,
     {"medidor forzado sin descanso",
      "Corren {value} sin pausa; por un medidor de {0} no deben pasar más de {limit} por mucho tiempo.",
      "Ponga un medidor mayor, o baje el caudal continuo.", ""}},
    {service_line_small,
     {"servicio menor que el mínimo", "Una línea de {0} es menor que el mínimo de {1}.",
      "Ponga al menos {1}, o muestre el permiso de la compañía para menos.", ""}},
    {clean_stock_too_weak,
     {"cloro más débil que la solución", "El cloro del camión tiene {value}; la solución pide {limit}.",
      "Lleve cloro fresco y lea su etiqueta. El blanqueador pierde fuerza en el camión.", ""}},
    {clean_cannot_scour,
     {"enjuague muy lento para arrastrar la suciedad", "La línea descarga {value}; para correr a {0} necesita {limit}.",
      "Enjuague antes de poner el medidor, a paso completo, y con más cambios de agua. Mire lo que sale y siga hasta "
      "que salga "
      "clara.",
      ""}},
    {clean_as_main,
     {"el servicio se desinfecta como tubería principal",
      "Un servicio de {0} pasa de {1}: se llena con cloro, se deja, se enjuaga y se muestrea como una tubería "
      "principal.",
      "Escoja una de las dosis de este plan, manténgala su tiempo, lea lo que queda, enjuague y pida que tomen "
      "muestras antes de "
      "ponerlo en uso.",
      ""}},
    {pit_not_checked,
     {"parte de la excavación sin calcular",
      "La excavación no está revisada por completo. No se dio: [{0}|{1}][, {1}|].",
      "Dé el dato y vuelva a planear; mientras tanto decide en el sitio la persona competente.", ""}},
    {pit_not_located,
     {"líneas sin localizar", "La orden no dice que el boleto de localización esté vigente y todas las marcas leídas.",
      "Llame al centro de localización (811). No excave antes de {0} días hábiles completos después del día de la "
      "llamada, o "
      "según la ley del estado. Excave a mano a menos de {1} a cada lado de una marca.",
      ""}},
    {pit_soil_not_type_a,
     {"el suelo no puede ser Tipo A", "El suelo se planea como {0}: {1}.",
      "Dé talud o escudo para {0}. Solo un suelo que nunca se excavó, que no vibra y no muestra grieta ni agua puede "
      "quedar "
      "como Tipo A.",
      ""}},
    {pit_claimed_undisturbed,
     {"suelo sobre una tubería dado por no excavado",
      "La orden dice que el suelo nunca se excavó y lo planea como {0}. Hay una tubería en él.",
      "Que la persona competente anote cómo se metió la tubería sin zanja (perforada, hincada, jalada). Si está en "
      "zanja, deje "
      "en blanco `excavation.disturbed` y vuelva a planear: las paredes llevan entonces talud de suelo excavado.",
      ""}},
    {pit_not_examined,
     {"suelo sin revisar por señas de derrumbe",
      "A {value+} no se requiere sistema de protección solo si una persona competente revisó y no halló señas de "
      "derrumbe. La "
      "orden no lo dice.",
      "Que una persona competente revise el suelo antes de que alguien entre, y anote lo que halló. Con cualquier "
      "seña: talud o "
      "escudo.",
      ""}},
    {pit_protective_system,
     {"se requiere sistema de protección",
      "A {value+}, o por una seña hallada, la excavación debe llevar talud, puntales o escudo (desde {limit}, "
      "siempre).",
      "Dele el talud de su suelo, apuntálela o ponga un escudo hecho para la profundidad, antes de que alguien entre.",
      ""}},
    {pit_engineer,
     {"el ingeniero diseña la protección", "A {value+} la excavación pasa de {limit}, donde terminan las tablas.",
      "Que un ingeniero profesional registrado diseñe el sistema de protección; tenga el plano en el sitio.", ""}},
    {pit_distress,
     {"el suelo se está moviendo", "El suelo muestra señas: grietas en el borde, asentamiento o abultamiento.",
      "Todos fuera. Recorte las paredes con al menos {0} más de salida por uno de alto que el talud más empinado, o "
      "ponga escudo; "
      "una persona competente revisa otra vez antes de que alguien entre.",
      ""}},
    {pit_water,
     {"agua en la excavación", "Agua en la excavación: {0}. El suelo mojado es Tipo C.",
      "Nadie trabaja en agua que se junta ni cerca de ella, a menos que se bombee con alguien vigilando y las paredes "
      "estén "
      "protegidas para suelo mojado. Mantenga el agua debajo de la toma.",
      ""}},
    {pit_egress,
     {"se requiere salida", "A {value+} se requiere una escalera, a no más de {0} de cualquiera.",
      "Ponga la escalera antes de que alguien entre, con {1} sobre el borde, libre de mangueras y herramientas.", ""}},
    {pit_atmosphere,
     {"hay que probar el aire", "La excavación tiene {value+} de fondo y se puede esperar mal aire.",
      "Pruebe oxígeno (19.5 por ciento al menos) y gas antes de que alguien entre y durante el trabajo; ventile. Tenga "
      "equipo de "
      "rescate en el borde.",
      ""}},
    {pit_guardrail,
     {"el paso necesita barandal", "La gente cruza una excavación de {value+} de fondo.",
      "Ponga barandales en el paso.", ""}},
    {pit_spoil_too_near,
     {"tierra excavada muy cerca del borde", "La tierra está a {value} del borde; se requiere al menos {limit}.",
      "Retírela, o deténgala con una tabla de retención hecha para eso.", ""}},
    {pit_sewer_near,
     {"drenaje muy cerca de la línea de agua",
      "El drenaje más cercano está a {value}.[ Está {1} debajo de la línea de agua.|] Debe estar a {limit}, o al menos "
      "{0} debajo.",
      "Mueva el servicio, o que la compañía acepte un cruce con sus juntas lejos del drenaje. Anote las dos "
      "distancias.",
      ""}},
    {pit_main_hangs,
     {"una junta de la tubería cuelga en la excavación",
      "Hay {0} a {1} de la toma, dentro de los {2+} de tubería descubierta.",
      "Apoye la tubería a los dos lados antes de quitarle el suelo de abajo, y asiéntela otra vez antes de tapar.",
      ""}},
    {main_not_tapped,
     {"tubería en la que la compañía no hace tomas",
      "La compañía no hace tomas en tuberías como esta, {0} de {1}. {2}.",
      "No haga la toma. Sirva el lote desde otra tubería, o preséntelo al ingeniero de la compañía y vuelva a planear "
      "con las "
      "reglas que resulten.",
      ""}},
    {main_perhaps_not_tapped,
     {"tubería en la que quizá la compañía no hace tomas",
      "En algunos de los tubos que esta tubería de {1} ({0}) puede ser, la compañía no hace tomas. {2}.",
      "[Indique {3}|Lea la clase en el tubo] y vuelva a planear. Si es uno en el que no se hacen tomas, sirva el lote "
      "desde otra tubería.",
      ""}},
    {season_closed,
     {"planeado en temporada sin tomas",
      "La compañía no hace estas tomas de {0} a {1}, y la orden está planeada para un día de esos.[ {2}.|]",
      "Planee para un día fuera de la temporada, o consiga por escrito el permiso de la compañía para esta.", ""}},
    {season_date_unknown,
     {"falta el día, y no se hacen tomas todo el año",
      "La compañía no hace estas tomas de {0} a {1}, y la orden no da un día que se pueda leer.[ {2}.|]",
      "Escriba el día como año, mes y día, por ejemplo 2026-05-04 (`date`). Si cae dentro, consiga el permiso de la "
      "compañía.",
      ""}},
    {place_cover,
     {"cobertura fuera de la regla de la compañía",
      "La tubería está a {value} de profundidad, {0} que los {limit} pedidos.",
      "Mida la cobertura en la toma. Si es así, pregunte a la compañía cómo se protege aquí el servicio de heladas y "
      "tráfico, y "
      "anote la respuesta.",
      ""}},
    {place_cover_unknown,
     {"cobertura sobre la tubería desconocida", "La compañía pide una cobertura de {limit}, y la orden no da ninguna.",
      "Mida de la superficie al lomo de la tubería y vuelva a planear con esa medida (`main.cover`).", ""}},
    {service_tap_small,
     {"toma menor que las que hace la compañía", "Una toma de {0} es menor que {1}, la menor que hace la compañía.",
      "Haga la toma de {1} y reduzca después de la llave, o consiga el permiso de la compañía.", ""}},
    {rules_looser,
     {"regla de la compañía menos estricta que la normal",
      "La compañía fija {0} en {1}; lo normal es {2}. Su razón: {3}.",
      "Si la razón no vale aquí, planee con lo normal.", ""}},
    {pressure_over_line_rating,
     {"presión de línea mayor que la del tubo de servicio",
      "La línea está a {value}. El tubo de servicio, {0}, sirve hasta {limit}[ a {1}|].",
      "Ponga tubo marcado para al menos {value+}, o cobre. Si el del camión está marcado así, anote su presión nominal "
      "y vuelva a "
      "planear.",
      ""}},
    {order_fact_unread,
     {"dato de la orden que no se puede leer",
      "La orden dice algo que no se puede leer de: {0}[, {1}|][, {2}|][, {3}|].",
      "Averigüe qué se quiso decir, escríbalo de modo que se pueda leer y vuelva a planear.", ""}},
    {rules_consent,
     {"toma solo con consentimiento",
      "La regla de la compañía permite esta toma[ ({0})|] en {1} con el consentimiento de {3}.[ Lo normal: {2}.|]",
      "Consiga por escrito el consentimiento de {3} para esta toma, con nombre y fecha, antes del corte.", ""}},
    {rules_consent_unnamed,
     {"abierto por regla de la compañía, sin decir quién consiente",
      "Lo normal es que en {1} no se haga esta toma ({0})[: {2}|]. La regla de la compañía la permite y no nombra a "
      "nadie que "
      "consienta.",
      "Consiga por escrito el consentimiento del ingeniero de la compañía para esta toma. Si en tuberías como esta se "
      "van a hacer tomas así, "
      "que la regla nombre quién consiente; si la regla solo quería limitar el tamaño, escríbala como tope.",
      ""}},
    {several_over_maximum,
     {"tomas de una serie mayores que lo permitido",
      "Las tomas de {0} son mayores que las que una serie puede tener aquí[, {1}|].[ {2}.|]",
      "Use tomas menores, una abrazadera o un manguito.", ""}},
    {service_tap_too_fast,
     {"agua demasiado rápida en la toma",
      "Con {0} el agua pasa a {value} por la toma de {1} y su llave, más de {limit}.",
      "[Haga la toma de {2}|Haga una toma mayor, o varias], o muestre el permiso de la compañía para esta velocidad.",
      ""}},
    {service_meter_share,
     {"medidor cerca de su caudal máximo", "La demanda de {value} toma de un medidor de {0} más de {limit}.",
      "[Ponga un medidor de {1}|Ponga un medidor mayor], o muestre el permiso de la compañía para este.", ""}},
    {service_line_against_tap,
     {"tubo de servicio y toma que la compañía no junta",
      "[El tubo de servicio es de {1}|La orden no dice la medida del tubo de servicio]; con una toma de {0} la "
      "compañía "
      "lo quiere[ de {2} como mínimo|][ de {3} como máximo|].",
      "Indique la medida del tubo (`service.line.size`) o de la toma que va con él, o consiga el permiso de la "
      "compañía.",
      ""}},
    {sleeve_too_small,
     {"no hay manguito con salida tan pequeña",
      "Una salida de {0} es menor que {1}, la menor con que se hace un manguito.",
      "Planee un manguito con salida de {1} (`service.size`) y reduzca detrás de su válvula, o use una abrazadera.",
      ""}},
    {sleeve_hole_too_large,
     {"salida demasiado grande para la tubería",
      "El agujero[ de {0}|] es {value} del diámetro del tubo; bajo un manguito se permite {limit} como máximo.",
      "Use una salida menor, o que el ingeniero diseñe una te con la tubería cerrada.", ""}},
    {approved_none_fits,
     {"ninguna pieza aprobada sirve",
      "Ninguna pieza de la lista aprobada sirve ({0}).[ Ninguna tiene lo necesario: {3}.|][ La más próxima es {1}; le "
      "falta: "
      "{2}[ ({value}; se necesita {limit})|].| La lista no tiene ninguna.]",
      "Que la oficina nombre por escrito una pieza aprobada ({0}) para esta tubería, con su número de almacén, o "
      "corrija la "
      "lista y planee de nuevo.",
      ""}},
    {approved_no_tool_fits,
     {"ninguna herramienta aprobada sirve",
      "Ninguna herramienta de la lista aprobada sirve ({0}).[ Ninguna tiene lo necesario: {3}.|][ La más próxima es "
      "{1}; le "
      "falta: {2}[ ({value}; se necesita {limit})|].|]",
      "Pregunte en el almacén cuál se usa en esta tubería ({0}) antes de que salga el camión.", ""}},
    {service_cover,
     {"cobertura del servicio menor que la regla de la compañía",
      "El servicio está a {value} de profundidad como mínimo, menos que los {limit} pedidos.",
      "Póngalo más hondo, o pregunte a la compañía cómo se protege aquí de heladas y tráfico, y anote la respuesta.",
      ""}},
    {service_cover_unknown,
     {"cobertura del servicio desconocida",
      "La compañía pide {limit} sobre el servicio, y la orden no da ninguna cobertura.",
      "Tome la cobertura mínima del plano del servicio, o hágala medir, y vuelva a planear con ella "
      "(`service.line.cover`).",
      ""}},
    {service_line_near,
     {"servicio más cerca de otra línea que la regla de la compañía",
      "El servicio está a {value} de {0}; la compañía pide {limit}.",
      "Póngalo más lejos, o consiga el permiso de la compañía y del dueño de la otra línea.", ""}},
    {service_line_near_unknown,
     {"distancia del servicio a otra línea desconocida",
      "La compañía pide {limit} entre el servicio y {0}, y la orden no dice la distancia.",
      "Tómela de las marcas y del plano del servicio, y vuelva a planear con ella (`{1}`); donde no haya, dé una "
      "distancia mayor.",
      ""}},
    {service_line_close,
     {"servicio junto a otra línea", "El servicio está a {value} de {0}; lo usual es {limit}.",
      "Póngalo más lejos, o pregunte cuánto permite el código local: muchos lo dejan en un escalón arriba del drenaje, "
      "o "
      "junto a uno de tubo aprobado dentro de edificios. Del gas y la electricidad responde su dueño.",
      ""}},
    {main_air_cold,
     {"aire más frío que la regla de la compañía",
      "El aire está a {value}; la compañía no hace tomas por debajo de {limit}.",
      "Espere hasta que el aire esté a {limit} o más, léalo en la zanja y vuelva a planear.", ""}},
    {main_air_unknown,
     {"temperatura del aire desconocida", "La compañía no hace tomas con el aire por debajo de {limit}.",
      "Lea la temperatura del aire en la zanja ese día, y haga la toma solo a {limit} o más.", ""}},
    {service_dwellings_size,
     {"menor que el tamaño de la compañía para tantas viviendas",
      "Para {3} viviendas la compañía pide {0} de {1} o mayor[; aquí es de {2}|, y la orden no da ninguno].",
      "Ponga {1} o mayor y vuelva a planear, o consiga el permiso de la compañía.", ""}},
    {service_dwellings_unknown,
     {"número de viviendas desconocido",
      "La compañía da los tamaños de toma, servicio y medidor por viviendas, y la orden no dice cuántas son.",
      "Averigüe a cuántas viviendas sirve y vuelva a planear (`service.dwellings`).", ""}},
    {service_dwellings_unlisted,
     {"número de viviendas fuera de la tabla de la compañía",
      "La tabla de la compañía no tiene renglón para {0} viviendas.",
      "Pida por escrito al ingeniero de la compañía los tamaños de toma, servicio y medidor.", ""}},
    {service_premises,
     {"más predios en una toma de los que permite la compañía",
      "El servicio es para {value} predios; la compañía permite {limit} por toma.",
      "Planee una toma para cada predio, o consiga por escrito el permiso de la compañía.", ""}},
    {service_premises_unknown,
     {"número de predios desconocido",
      "La compañía permite {limit} predios por toma, y la orden no dice para cuántos es.",
      "Averigüe a cuántos predios sirve y vuelva a planear (`service.premises`).", ""}},
}};
static_assert(complete(table), "every finding has its words, in the order of MAINBORE_FINDINGS");

}  // namespace findings_table

const FindingTable<FindingText>& findings() { return findings_table::table; }

}  // namespace mainbore::words::spanish
