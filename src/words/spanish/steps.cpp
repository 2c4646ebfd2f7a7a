#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace steps_table {

using enum StepWord;

constexpr StepTable table = {{
    {phase_before, "Antes de excavar"},
    {phase_pipe, "El tubo"},
    {phase_engineer, "El diseño del ingeniero"},
    {phase_machine, "Monte la máquina"},
    {phase_cut, "Corte"},
    {phase_change, "Cambie a la llave"},
    {phase_stop, "Ponga la llave"},
    {phase_off, "Quite la máquina"},
    {phase_saddle, "Abrazadera y llave"},
    {phase_shut_stop, "Cierre la llave"},
    {phase_sleeve, "Manguito y válvula"},
    {phase_shut_valve, "Cierre la válvula"},
    {phase_next, "La toma siguiente"},
    {phase_fill, "Llene la tubería"},
    {phase_connect, "Conecte y compruebe"},
    {phase_leave, "Déjelo bien"},
    {phase_trouble, "Si algo sale mal"},
    {people,
     "Acuerden quién maneja la máquina, quién mueve las válvulas y quién se queda fuera de la "
     "excavación, y la palabra que para el trabajo."},
    {fittings, "Prepare lo que nombra la lista aprobada y lea la marca de cada pieza: {named}."},
    {fittings_until, "Piezas como se aprobaron, según sus marcas."},
    {valves,
     "Busque y descubra las válvulas que cierran esta tubería. Ponga la llave de válvulas, gírelas "
     "lo bastante para saber que se mueven, y déjela puesta."},
    {valves_until, "Válvulas de cierre halladas, y se sabe que giran."},
    {empty,
     "Cierre las válvulas y póngales candado y tarjeta. Abra la salida más baja y déjela abierta "
     "hasta que el agua pare y siga parada."},
    {empty_until, "Tubería vacía comprobada, válvulas con candado y tarjeta."},
    {pit,
     "Deje espacio alrededor de todo el tubo y un cárcamo debajo. Bomba de achique andando, escalera "
     "adentro, abrazadera de reparación abierta en el borde. La persona competente revisa las paredes."},
    {walls_bottom, "Fondo de {along} por {across}, {depth} de hondo."},
    {walls_engineer, "Paredes según el diseño del ingeniero."},
    {walls_shield, "Ponga el escudo (ademe) antes de que alguien entre."},
    {walls_slope, "Dé talud a las paredes: {run} hacia fuera por cada 1 de alto, o ponga un escudo."},
    {walls_spoil, "Tierra excavada a {setback} o más del borde."},
    {walls_until, "La persona competente dice que las paredes están seguras."},
    {identify, "Compruebe por dos medios independientes que esta es la tubería de agua potable. Anote cuáles."},
    {identify_until, "Comprobado: es la tubería de agua."},
    {place,
     "Marque la toma en el tubo a las {clock} del reloj, visto a lo largo de la tubería[, a {shift} del "
     "lugar pedido (hacia el lado {way} de la orden)|]."},
    {place_several,
     "Son {count} tomas: márquelas todas, por turno a las {clock} y a las {other}[, separadas al menos "
     "{apart}|]."},
    {place_clears, "Mida que quede libre de: {things}."},
    {place_thing, "{thing}, {least}"},
    {clean_film, "Abra la película solo lo que hace falta para ver, medir y calibrar. Limpie ahí el tubo."},
    {clean_asbestos,
     "Moje el tubo y límpielo todo alrededor con trapos mojados y cepillo suave. Sin raspar en seco, "
     "sin esmeril, sin cepillo de alambre motorizado, sin martillo."},
    {clean_plastic,
     "Limpie el tubo todo alrededor con un trapo mojado. Sin raspar, sin martillo: en un rayón empieza "
     "la grieta."},
    {clean_bare,
     "Limpie el tubo a metal todo alrededor para que todo asiente parejo: quite la costra con el "
     "raspador, sin tierra bajo el asiento."},
    {check,
     "Mida el exterior con la cinta, y mida la pared en la toma y al lado.[ Números límite: "
     "{numbers}.|] Busque grietas, picaduras, partes blandas y abrazaderas viejas."},
    {check_plastic, "Lea la temperatura del tubo a la sombra. Sin toma en un tramo rayado o quemado por el sol."},
    {check_plastic_direct,
     "Lea la temperatura del tubo a la sombra. Sin toma en un tramo rayado, quemado por el sol o curvado."},
    {check_until, "Lecturas dentro de los números límite; tubo sano."},
    {wrap,
     "Cierre la película y envuélvala con dos o tres vueltas de cinta de polietileno, pegada al tubo, "
     "donde van la máquina y la cadena o la abrazadera. La toma se hace a través de cinta y película."},
    {pressure_lowered,
     "Lea la línea en un manómetro cerca de la toma, sacando antes el aire atrapado. Pida que bajen la "
     "tubería a {limit} o menos, y que alguien la mantenga así hasta quitar la máquina."},
    {pressure,
     "Lea la línea en un manómetro cerca de la toma, sacando antes el aire atrapado. Planeado para "
     "{line}.[ Pare si pasa de {limit}.|]"},
    {pressure_until, "Manómetro dentro del número límite, y quieto."},
    {holds,
     "Repase los pendientes numerados. Anote cada lectura en su espacio. Si una queda fuera de su "
     "número, pare y haga que vuelvan a planear el trabajo."},
    {holds_until, "Cada pendiente resuelto y firmado."},
    {disinfect,
     "Talle con solución de cloro el tubo donde se corta, la herramienta y las piezas, como pide la "
     "compañía."},
    {engineer,
     "No corte nada. Dé al ingeniero material, diámetro exterior, pared y presión como se leyeron, y "
     "espere por escrito el diseño de la conexión: pieza, corte, herramientas y presión; en tubo de "
     "concreto también alambres, mortero y lechada. Mantenga segura la excavación o ciérrela."},
    {engineer_until, "Diseño en mano, con el nombre del ingeniero."},
    {its_thread, "la suya"},
    {push, "unas {push} a {line}"},
    {push_unknown, "la presión de la línea"},
    {as_measured, "como se midió"},
    {seat,
     "Ponga empaque y asiento de máquina[ para {diameter} por fuera|] en la marca, luego el segundo "
     "empaque y la máquina, con la barra apuntando al centro del tubo. No debe bailar."},
    {chain,
     "Cadena alrededor del tubo, sin torcer, ganchos bien metidos[; mínimo {needed}|]. Apriete parejo "
     "los dos lados, poco a poco[, con torquímetro a lo que diga el fabricante de la máquina: sujetar "
     "pide unos {torque} en cada espárrago|]."},
    {chain_extension, "{needed} de cadena con 1 extensión"},
    {chain_extensions, "{needed} de cadena con {count} extensiones"},
    {chain_none, "{needed} de cadena"},
    {chain_plastic, "Solo hasta que sujete: el tubo debe quedar redondo."},
    {chain_firm, "La máquina no debe moverse a mano."},
    {tool_metal,
     "Ponga en la barra la broca-macho de {tap}, rosca {thread}. Póngala junto a la llave: misma "
     "medida, misma rosca; que mire también otra persona. Cierre la cámara con la barra atrás."},
    {tool_plastic,
     "Ponga en la barra el cortador de copa con macho de {tap}, rosca {thread}. Póngalo junto a la "
     "llave: misma medida, misma rosca; que mire también otra persona. Cierre la cámara con la barra "
     "atrás."},
    {tool_until, "Herramienta y llave coinciden, visto por dos personas."},
    {machine_valves,
     "Purga y desvío (la válvula igualadora) cerrados, válvula de la máquina abierta. Gire la "
     "válvula una vez a mano: debe librar la herramienta. Marque la barra donde entra en la máquina: "
     "marca 0, {mark}."},
    {machine_valves_until, "La válvula gira libre de la herramienta; marca 0 en la barra."},
    {thread_it,
     "Corte la rosca, con grasa de corte en el macho: muerde en la marca 3. Avance con el tornillo hasta "
     "que guíen dos o tres hilos, luego quite el avance: gire, no empuje. Un cuarto de vuelta atrás de "
     "vez en cuando saca la viruta. Pare en la marca 4: {mark}. No más hondo, o la llave topa antes de "
     "sellar; nunca pase la marca 5."},
    {by_piece, "Hondura y vueltas son las de la pieza de prueba."},
    {blanket, "Ponga la manta sobre el tubo, con la máquina por su agujero, y párese detrás."},
    {touch,
     "Baje la herramienta hasta que apenas toque el tubo. Marque la barra donde entra en la máquina: "
     "marca 1. Desde ella trace con la regla las otras marcas de la tarjeta: marcas {marks}."},
    {touch_until, "Todas las marcas de la tarjeta están en la barra."},
    {cut_by_hand, "Gire constante y avance con el tornillo, suave y parejo."},
    {cut_powered, "Arranque el motor despacio. Avance con el tornillo, suave y parejo."},
    {cut_plastic, "Despacio, cortador afilado, sin recargarse."},
    {cut_through,
     "Desde la marca 2 ({mark}) sienta cuando atraviesa: la barra afloja. De ahí en adelante el avance "
     "solo acompaña."},
    {cut_wet, "Mantenga el corte mojado todo el tiempo y recoja la viruta."},
    {flush_machine,
     "Abra apenas la purga, deje salir viruta y aire, y ciérrela. Revise el asiento: {holder}, sin "
     "goteo."},
    {flush_asbestos,
     "Abra apenas la purga, deje salir viruta y aire por una manguera a una cubeta forrada, no al suelo, "
     "y ciérrela. Revise el asiento: {holder}, sin goteo."},
    {flush_until, "Sin fuga alrededor del asiento."},
    {holder_machine, "máquina"},
    {holder_saddle, "abrazadera"},
    {holder_sleeve, "manguito"},
    {back_out,
     "Saque el macho por su rosca. Ponga otra vez el avance antes de que suelte el último hilo: "
     "entonces el agua empuja la barra hacia fuera ({push}). Párese a un lado y déjela subir despacio "
     "con el avance, hasta la marca 0."},
    {shut_machine_valve, "Con la barra en la marca 0 cierre la válvula de la máquina. El desvío sigue cerrado."},
    {bleed, "Abra la purga. Vea que el manómetro baje a cero y se quede ahí un minuto completo."},
    {bleed_until, "Cámara en cero y se queda en cero. Si no: no se abre nada."},
    {look_at_tool,
     "Abra la cámara y saque la barra. Quite la herramienta y revísela: viruta brillante, ningún "
     "diente roto."},
    {look_at_coupon,
     "Abra la cámara y saque la barra. Quite la herramienta y revísela: el cupón debe estar dentro, "
     "bien cortado y tan grueso como se midió la pared. Guárdelo con la orden."},
    {load_stop,
     "Cierre la llave de inserción y pruébela a mano. {sealant} Quite la tuerca de su salida y "
     "atornille ahí la herramienta de inserción, apretada a mano; barra adentro, entrada hacia abajo. "
     "Mida que la llave libre la válvula. Cierre la cámara con la barra atrás."},
    {sealant_tape, "Cinta de PTFE en su rosca de entrada."},
    {sealant_any, "Sellador en su rosca de entrada."},
    {load_stop_until, "Llave cerrada, probada por dos personas; libra la válvula."},
    {equalize,
     "Cierre la purga y sujete la barra con el avance. Abra despacio el desvío y espere a que la "
     "cámara esté a la presión de la línea."},
    {equalize_until, "Misma presión a los dos lados de la válvula de la máquina."},
    {open_machine_valve,
     "Párese a un lado de la barra, sujetándola todavía con el avance ({push}), y abra toda la "
     "válvula de la máquina."},
    {set_stop,
     "Baje la llave hasta la marca S, {mark}. Avance y gire hasta que guíen dos o tres hilos, luego "
     "quite el avance y deje que guíe la rosca. {makeup}"},
    {stop_bleed,
     "Cierre el desvío y después abra la purga. Vea que el manómetro baje a cero y se quede ahí un "
     "minuto completo: solo ahora la llave aguanta la tubería."},
    {zero_until, "Manómetro en cero y se queda en cero. Si no: no se afloja nada."},
    {release,
     "Destornille la herramienta de inserción de la salida de la llave y jale la barra hacia atrás. La "
     "llave no debe girar con ella."},
    {lift, "Afloje la cadena pareja, un poco de cada lado, nadie en línea. Quite la máquina."},
    {look_at_stop,
     "Ponga otra vez la tuerca en la salida de la llave. Revise la llave con toda la presión. Si gotea, "
     "apriétela un poco más, con la herramienta de apriete en el lado de entrada, nunca en el cuadro "
     "ni en la salida. {showing}"},
    {look_at_stop_until, "Sin goteo en la llave."},
    {showing, "Deben verse tantos hilos como dice la tarjeta."},
    {showing_unknown, "No debe topar en el hombro."},
    {dry_back_out,
     "Saque el macho por su rosca, con el avance puesto antes de que suelte el último hilo, y jale la "
     "barra hasta la marca 0."},
    {dry_lift,
     "Abra la purga: no debe salir nada. Afloje la cadena pareja y quite la máquina. Saque la viruta "
     "del agujero y de la tubería. Mire la pared por el agujero: sana y tan gruesa como se midió."},
    {dry_lift_coupon,
     "Abra la purga: no debe salir nada. Afloje la cadena pareja y quite la máquina. Saque la viruta "
     "del agujero y de la tubería, y guarde el cupón con la orden. Mire la pared por el agujero: sana "
     "y tan gruesa como se midió."},
    {dry_lift_until, "Purga seca; pared vista por el agujero."},
    {dry_stop,
     "Cierre la llave de inserción. {sealant} Empiécela a mano, a escuadra con el tubo, luego la "
     "herramienta de apriete en el lado de entrada. {makeup}"},
    {makeup, "Apriete: {makeup}."},
    {makeup_plastic, "Con torquímetro, y no más apretado de lo que diga el fabricante de la llave para este tubo."},
    {makeup_unknown, "No la lleve hasta el hombro."},
    {saddle_fit,
     "Ponga la abrazadera, empaque en su ranura, salida en la marca. Apriete las tuercas parejo y por "
     "turno, con torquímetro a la cifra de la hoja de la abrazadera. Sin hueco a los lados."},
    {saddle_fit_plastic,
     "Ponga la abrazadera, empaque en su ranura, salida en la marca. Apriete las tuercas parejo y por "
     "turno, con torquímetro a la cifra de la hoja de la abrazadera. El tubo debe quedar redondo; sin "
     "hueco a los lados."},
    {saddle_stop,
     "Atornille la llave de inserción en la salida, con sellador en su rosca de entrada y la "
     "herramienta de apriete en el lado de entrada. Mida del tubo a la salida de la llave: el cortador "
     "debe regresar todo eso."},
    {saddle_test,
     "Abra la llave, llénela de agua limpia y, con la bomba de prueba, déle una presión de prueba no "
     "mayor que la de la línea ni que la nominal del tubo, antes de cortar nada. Quite otra vez la "
     "presión."},
    {saddle_test_until, "Abrazadera y llave aguantan la prueba."},
    {mount_on_stop,
     "Quite la tuerca de la salida de la llave. Atornille ahí la máquina con su adaptador, la llave "
     "abierta, y apoye su peso en calzas."},
    {saddle_tool,
     "Ponga el cortador en la barra: el más grande que pase por la llave abierta[, no más de {hole}|]. "
     "Páselo una vez a mano, sin tocar nada, y regréselo; que mire también otra persona. Cierre la "
     "cámara."},
    {saddle_tool_until, "El cortador pasa por la llave abierta, visto por dos personas."},
    {saddle_valves,
     "Barra atrás, purga y desvío (válvula igualadora) cerrados, llave toda abierta. Marque la barra "
     "donde entra en la máquina, con el cortador libre del macho de la llave: marca 0, {mark}."},
    {saddle_valves_until, "Marca 0 en la barra: la llave se cierra solo con la barra ahí."},
    {saddle_back,
     "Regrese el cortador con el avance. El agua empuja la barra hacia fuera ({push}): párese a un "
     "lado, déjela subir despacio hasta la marca 0, libre del macho de la llave."},
    {saddle_shut, "Con la barra en la marca 0 cierre la llave de inserción."},
    {saddle_bleed,
     "Abra la purga. Vea que el manómetro baje a cero y se quede ahí un minuto completo: solo ahora la "
     "llave aguanta la tubería."},
    {saddle_dry_back,
     "Regrese el cortador a la marca 0, libre del macho de la llave. Cierre la llave. Abra la purga: no "
     "debe salir nada."},
    {dry_until, "Purga seca."},
    {saddle_lift,
     "Sujete la llave con una herramienta de apriete y destornille la máquina con la otra, nadie en "
     "línea. La abrazadera no debe girar. Ponga otra vez la tuerca en la salida de la llave."},
    {coupon,
     "Quite el cortador. El cupón debe estar dentro. Mire su canto, sano y tan grueso como se midió la "
     "pared, y guárdelo con la orden."},
    {coupon_until, "Cupón en la mano."},
    {saddle_look, "Revise abrazadera y llave con toda la presión."},
    {saddle_look_until, "Sin goteo en abrazadera ni llave."},
    {sleeve_fit,
     "Ponga el manguito hecho para el diámetro medido y atornille la válvula de toma. Tornillos parejo "
     "y por turno, con torquímetro a la cifra del fabricante. Apoye válvula y máquina por su cuenta: "
     "el tubo no carga ninguna."},
    {sleeve_test,
     "Con la bomba de prueba, dé a manguito y válvula una presión de prueba no mayor que la de la "
     "línea ni que la nominal del tubo, por el tapón de prueba, antes de cortar nada. Quite otra vez "
     "la presión."},
    {sleeve_test_until, "El manguito aguanta la prueba."},
    {mount_on_valve, "Atornille la máquina a la válvula con su adaptador. Apoye su peso en calzas."},
    {sleeve_tool,
     "Ponga el cortador con su piloto en la barra y cierre la cámara. Mida que libre válvula y salida "
     "y que alcance a atravesar el tubo; que mida también otra persona."},
    {sleeve_tool_until, "El cortador libra válvula y salida, medido por dos personas."},
    {sleeve_valves,
     "Barra atrás, purga y desvío (válvula igualadora) cerrados, válvula de toma toda abierta; "
     "cuente sus vueltas. Marque la barra donde entra en la máquina, con el cortador libre de la "
     "válvula: marca 0, {mark}."},
    {sleeve_valves_until, "Marca 0 en la barra: la válvula se cierra solo con la barra ahí."},
    {sleeve_back,
     "Regrese el cortador con el avance. El agua empuja la barra hacia fuera ({push}): párese a un "
     "lado, déjela subir despacio hasta la marca 0, libre de la válvula."},
    {sleeve_shut, "Con la barra en la marca 0 cierre la válvula de toma; el mismo número de vueltas."},
    {sleeve_dry_back,
     "Regrese el cortador a la marca 0, libre de la válvula. Cierre la válvula. Abra la purga: no debe "
     "salir nada."},
    {sleeve_lift, "Quite los tornillos parejo, nadie en línea. Quite la máquina."},
    {sleeve_look, "Revise manguito y válvula con toda la presión."},
    {sleeve_look_until, "Sin goteo en manguito ni válvula."},
    {next_tap,
     "Haga lo mismo con cada una de las {count} tomas, desde el montaje hasta aquí, una terminada y "
     "cerrada antes de empezar la otra."},
    {fill_stop,
     "Con la llave cerrada, llene despacio la tubería y saque el aire por el extremo alto. Estuvo "
     "abierta: enjuáguela, y que se desinfecte y se muestree como pide la compañía antes de que "
     "algún cliente tome agua. Llévela a toda su presión según el manómetro."},
    {fill_valve,
     "Con la válvula de toma cerrada, llene despacio la tubería y saque el aire por el extremo alto. "
     "Estuvo abierta: enjuáguela, y que se desinfecte y se muestree como pide la compañía antes de "
     "que algún cliente tome agua. Llévela a toda su presión según el manómetro."},
    {fill_until, "Sin goteo en la toma nueva con toda la presión."},
    {bond_when, "Si se corta un servicio viejo de metal"},
    {bond, "primero el cable puente, y puesto hasta terminar el trabajo."},
    {connect,
     "Conecte el servicio con holgura: un cuello de ganso junto a la tubería, sin jalar ni hacer "
     "palanca en la llave."},
    {connect_branch,
     "Conecte el ramal, sujeto o con atraque como lo tiene el ingeniero. Sin jalar ni hacer palanca en "
     "la válvula."},
    {connect_several,
     "Conecte los {count} servicios con holgura, cada uno con cuello de ganso junto a la tubería, y "
     "únalos con los accesorios. Sin jalar ni hacer palanca en las llaves."},
    {flush_stop,
     "Lleve el otro extremo al desagüe con la manguera. Abra despacio la llave de inserción, enjuague "
     "hasta que salga clara, sin aire ni viruta, y cierre el otro extremo.[ Enjuague fuerte: la cubeta "
     "se llena en {seconds} o menos, por lo menos {time}.|]"},
    {flush_valve,
     "Lleve el otro extremo al desagüe con la manguera. Abra despacio la válvula de toma, enjuague "
     "hasta que salga clara, sin aire ni viruta, y cierre el otro extremo.[ Enjuague fuerte: la cubeta "
     "se llena en {seconds} o menos, por lo menos {time}.|]"},
    {check_joints, "Revise cada junta, de la tubería a la llave de banqueta, con toda la presión, antes de tapar."},
    {check_joints_valve, "Revise cada junta, de la tubería a la válvula, con toda la presión, antes de tapar."},
    {check_joints_until, "Ninguna fuga a la vista."},
    {bed, "Asiente y apoye tubería, toma y servicio. Ninguna piedra contra ellos."},
    {bed_film,
     "Cierre con cinta cada corte de la película; envuelva la llave y el principio del servicio. "
     "Asiente y apoye tubería, toma y servicio. Ninguna piedra contra ellos."},
    {bring_back, "Pida que regresen despacio la tubería a su presión, y revise otra vez la toma."},
    {bring_back_until, "Sin goteo con toda la presión."},
    {oil_direct, "Limpie y aceite la máquina. Revise herramienta, cadena, sellos y válvula; aparte lo gastado."},
    {oil_other, "Limpie y aceite la máquina. Revise cortador, adaptador, sellos y válvula; aparte lo gastado."},
    {record,
     "Anótelo: lugar con dos referencias, hora del reloj, profundidad, tubo y pared como se leyeron, "
     "presión, método, toma, cupón guardado, prueba de fugas, lo raro de la tubería. Tome una foto "
     "antes de tapar."},
    {breaks_when, "La tubería se raja, se mueve o lanza agua"},
    {breaks,
     "todos fuera de la excavación, ya. Válvulas cerradas desde arriba. Nadie regresa por herramienta, "
     "y nadie entra tras otro al agua que sube."},
    {water_when, "Sale agua donde no debería"},
    {water, "fuera de la excavación; vea que cada válvula esté cerrada y con candado; vacíe otra vez antes de seguir."},
    {leaks_gasket_when, "Goteo en el empaque"},
    {leaks_seat_when, "Goteo en el asiento"},
    {leaks_gasket,
     "pare el avance. Apriete parejo los dos lados, un poco[, hasta donde permite el fabricante de la "
     "máquina (solo sujetar pide hasta {torque} en un espárrago)|]. Si todavía no atraviesa y sigue "
     "goteando: quítela y póngala otra vez en tubo más limpio, con el empaque de repuesto. Si ya "
     "atravesó: déjela montada y pida el cierre de la tubería."},
    {leaks_seat,
     "pare el avance. Apriete parejo las tuercas, un poco. Si todavía no atraviesa y sigue goteando: "
     "quítela y póngala otra vez en tubo más limpio. Si ya atravesó: déjela montada y pida el "
     "cierre de la tubería."},
    {no_zero_when, "El manómetro no baja a cero, o vuelve a subir"},
    {no_zero_machine,
     "no se afloja nada. Mueva otra vez la válvula de la máquina, de abierta a cerrada; ¿está libre "
     "la barra? Con la llave puesta: apriétela un poco más. Si aun así no: deje todo montado, "
     "aléjese, pida que cierren y vacíen la tubería, y entonces quítela."},
    {no_zero_stop,
     "no se afloja nada. Mueva otra vez la llave, de abierta a cerrada; ¿está libre el cortador? Si "
     "aun así no: deje todo montado, aléjese, pida que cierren y vacíen la tubería, y entonces "
     "quítela."},
    {no_zero_valve,
     "no se afloja nada. Mueva otra vez la válvula, de abierta a cerrada; ¿está libre el cortador? Si "
     "aun así no: deje todo montado, aléjese, pida que cierren y vacíen la tubería, y entonces "
     "quítela."},
    {bar_out_when, "La barra se escapa"},
    {bar_out, "no la agarre. Aléjese; se detiene en su tope. Luego regrésela con el tornillo, o cierre la tubería."},
    {jams_when, "El avance se atora o la herramienta se para"},
    {jams,
     "ni barra más larga ni otro hombre. Regrese media vuelta, abra apenas la purga para sacar viruta, "
     "pruebe suave. Si se atora otra vez: regrese, cierre, purgue a cero y revise la herramienta."},
    {jams_dry,
     "ni barra más larga ni otro hombre. Regrese media vuelta, saque la viruta, pruebe suave. Si se "
     "atora otra vez: regrese y revise la herramienta."},
    {loose_when, "La llave no aprieta, o gira sin fin"},
    {loose,
     "rosca barrida o cortada muy honda. Déjela metida hasta donde aguante, máquina puesta, cámara "
     "cerrada, y pida el cierre de la tubería. Después el tapón, una abrazadera sobre el agujero o la "
     "abrazadera de reparación."},
    {loose_dry,
     "rosca barrida o cortada muy honda. Sáquela. Después el tapón, una abrazadera sobre el agujero o "
     "la abrazadera de reparación."},
    {threads_when, "Se ven hilos de más o de menos"},
    {threads,
     "de más: cuando mucho otra vuelta, con la herramienta de apriete en el lado de entrada; la llave "
     "que se traba no se fuerza. De menos, o ninguno: el agujero está muy hondo. Si aguanta, que la "
     "compañía diga si se queda; si gotea, cierre la tubería y ponga abrazadera."},
    {coupon_when, "El cupón no está en el cortador"},
    {coupon_lost,
     "no abra nada hacia los clientes. Enjuague fuerte al desagüe por la toma nueva o el hidrante "
     "próximo; búsquelo; avise por escrito a la compañía si no aparece."},
    {crack_when, "Vetas blancas, un chasquido o una línea que sale del agujero"},
    {crack, "trátelo como grieta. Fuera de la excavación, cierre la tubería, corte y quite el tramo."},
    {not_water_when, "Algo que no es agua, o cualquier olor, al atravesar"},
    {not_water,
     "pare, deje máquina y válvulas como están, todos lejos contra el viento, sin llamas ni "
     "teléfonos cerca, llame a emergencias y al dueño del tubo."},
    {valve_stop, "llave de inserción"},
    {valve_machine, "válvula de máquina"},
    {valve_tapping, "válvula de toma"},
    {valve_bypass, "desvío"},
    {valve_bleed, "purga"},
    {valve_chamber, "cámara"},
    {valve_brief, "válv."},
    {chamber_brief, "cám."},
    {stop_brief, "llave"},
    {open, "ABIERTA"},
    {shut, "CERRADA"},
    {bypass_open, "ABIERTO"},
    {bypass_shut, "CERRADO"},
    {at_line, "A PRESIÓN"},
    {at_zero, "EN CERO"},
    {open_brief, "abierta"},
    {shut_brief, "cerrada"},
    {bypass_open_brief, "abierto"},
    {bypass_shut_brief, "cerrado"},
    {full_brief, "llena"},
    {zero_brief, "cero"},
    {work_heading, "ORDEN DEL TRABAJO"},
    {work_now, "Ahora: "},
    {work_until, "No siga sin esto: "},
    {by_utility, "La compañía: "},
    {trouble_heading, "SI ALGO SALE MAL"},
    {load_heading, "CARGUE"},
    {load_beside, "marque cada cosa"},
}};
static_assert(complete(table), "every word, in the order of StepWord");

}  // namespace steps_table

const StepTable& steps() { return steps_table::table; }

}  // namespace mainbore::words::spanish
