#include "words/tables.hpp"

namespace mainbore::words::spanish {
namespace cautions_table {

using enum CautionWord;

constexpr CautionTable table = {{
    {who_decides,
     {"Deciden compañía, código y fabricante",
      "Deciden la compañía de agua, los fabricantes de la máquina y las piezas, el código local y la persona "
      "competente "
      "en el sitio. Donde ellos digan otra cosa, o vean algo que no está en esta hoja, hágales caso."}},
    {identify,
     {"Compruebe de 2 modos: ¿es la de agua?",
      "Compruebe por dos medios independientes que esta es la tubería de agua potable antes de montar la máquina. "
      "Metal, color y pintura no prueban nada. Con marca amarilla o cualquier olor, silbido o burbujeo: aléjese, sin "
      "llamas ni teléfonos cerca, y llame desde lejos a emergencias y al dueño del gas."}},
    {other_lines,
     {"Halle a mano cada línea marcada",
      "Encuentre a mano cada línea marcada antes de que una máquina excave cerca, y mire también al lado y debajo de "
      "la "
      "tubería. Las marcas pueden estar corridas; las líneas privadas no se marcan."}},
    {prove_empty,
     {"Vacía se puede llenar: candado y ojo",
      "Una tubería vaciada puede llenarse otra vez. Ponga candado y tarjeta a las válvulas, abra la salida más baja y "
      "déjela abierta, y trate la tubería como llena hasta que ahí el agua haya parado y siga parada."}},
    {shut_off,
     {"Válvulas de cierre halladas y giradas",
      "Sepa qué válvulas cierran esta tubería. Que estén halladas, descubiertas y giradas antes del corte, con alguien "
      "a la mano que pueda cerrarlas."}},
    {out_of_line,
     {"Nadie en línea con barra ni llave",
      "Mantenga cabeza y cuerpo fuera de la línea de la barra, de la llave y de todo tapón con presión. Nadie se para "
      "donde volaría una pieza.[ A {pressure} el agua empuja con {push} en un agujero de {hole}.|]"}},
    {read_zero,
     {"Manómetro en cero, o nada se abre",
      "Nada se afloja, destornilla ni levanta hasta que la válvula esté cerrada, la purga abierta y el manómetro en "
      "cero y se quede ahí. Si no se queda, deje todo montado y pida el cierre."}},
    {trapped_air,
     {"Aire fuera despacio: avienta piezas",
      "Saque despacio el aire de tubería, máquina y servicio. El aire atrapado guarda una fuerza que el agua no "
      "guarda: "
      "la pieza que se suelta con aire sale volando."}},
    {pit_fills,
     {"Si se suelta, el hoyo se llena: salga",
      "[Una llave o herramienta que se suelta echa hasta {flow} a la excavación[, sobre la tubería en {time}.|, y la "
      "llena en minutos.]|Una llave o herramienta que se suelta puede llenar la excavación en minutos.] Tenga andando "
      "una bomba de achique y la salida libre de mangueras y herramientas."}},
    {eyes,
     {"Casco, protección de ojos y cara",
      "Casco, protección de ojos, botas con puntera, sin guantes donde algo gira; careta en la máquina."}},
    {clean,
     {"Que agua del hoyo no toque la toma",
      "El agua de la excavación es agua sucia. Manténgala debajo de la toma; desinfecte herramienta, llave y cara del "
      "tubo como pide la compañía; ninguna punta de manguera en la excavación sin separación de aire."}},
    {not_alone,
     {"Nunca solo; uno queda fuera del hoyo",
      "Nunca solo. Una persona se queda fuera de la excavación, a la vista, con qué llamar. Nadie entra tras otro al "
      "agua que sube o a la tierra caída: cierre la tubería, llame y ayude desde el borde."}},
    {pit,
     {"Paredes revisadas y escalera, siempre",
      "Una persona competente revisa la excavación antes de cada turno, después de la lluvia y cuando aparezca agua. A "
      "la profundidad que fija la regla, y antes si el suelo da cualquier seña, dele talud, apuntale o ponga escudo. "
      "Sobre una tubería a presión tenga escalera aun en una excavación poco honda.[ Esta baja {depth}.|[ Esta baja al "
      "menos {least_depth}.|]]"}},
    {pit_deep,
     {"Talud, puntales o escudo; y escalera",
      "Nadie entra antes de que la excavación tenga talud, puntales o escudo: a esta profundidad la regla lo pide "
      "siempre. Una persona competente la revisa antes de cada turno, después de la lluvia y cuando aparezca agua. "
      "Tenga "
      "escalera.[ Esta baja {depth}.|[ Esta baja al menos {least_depth}.|]]"}},
    {wet_ground,
     {"Agua en el hoyo: salga y bombee",
      "El suelo que ya se excavó nunca es del firme, y el suelo mojado es del suelto. Agua en la excavación: salga, "
      "bombee y haga que la revisen otra vez."}},
    {digger,
     {"Cucharón abajo, tierra lejos, y entre",
      "Cucharón en el suelo y motor en ralentí mientras haya alguien en la excavación. La tierra excavada, bien lejos "
      "del borde."}},
    {wet_electric,
     {"Herramienta eléctrica solo con GFCI",
      "Ninguna herramienta ni bomba eléctrica en una excavación mojada si no está en un interruptor de falla a tierra "
      "(GFCI)."}},
    {bond,
     {"Ponga puente antes de separar metal",
      "La tubería y los servicios pueden llevar corriente de las casas. Ponga un cable puente con grapas antes de "
      "separar cualquier tubo de metal, y déjelo hasta terminar el trabajo. Un cosquilleo o una chispa: pare, no "
      "toque, "
      "llame a la compañía eléctrica."}},
    {static_charge,
     {"Plástico guarda carga: mójelo antes",
      "El tubo de plástico seco puede guardar carga estática. Moje con agua el tubo y el suelo junto a él antes de "
      "tocarlo con herramientas, y que no haya nada inflamable cerca."}},
    {powered,
     {"Motorizado: una mano en el apagador",
      "Avance motorizado: sin mangas, puños ni guantes sueltos en el mando; una persona con el apagador en la mano; "
      "apagado antes de que alguien toque la barra."}},
    {asbestos,
     {"Asbesto: gente entrenada, todo mojado",
      "Asbesto cemento. Una persona competente clasifica el trabajo antes de empezar; solo lo maneja gente entrenada. "
      "Mantenga el corte mojado, saque las virutas con el agua y embólselas mojadas. Sin sierra abrasiva, sin raspar "
      "en "
      "seco, sin soplar ni barrer en seco."}},
    {brittle,
     {"El hierro fundido se raja: sin golpes",
      "El hierro fundido se raja sin aviso. Ningún martillazo más que el ligero para oír, nada de palanca en la barra "
      "ni en el servicio, la cadena apretada pareja y solo lo que aguante."}},
    {wire,
     {"No corte alambre de tubo de concreto",
      "Nunca corte por su cuenta un alambre o varilla de un tubo de concreto: es lo que sostiene el tubo. La "
      "abrazadera, el lugar y la lechada los dicen el fabricante y el ingeniero."}},
    {blanket,
     {"PVC estalla: manta, y corte despacio",
      "El PVC puede estallar a lo largo. Cubra el tubo con una manta pesada con un agujero para la herramienta, párese "
      "detrás, corte despacio con un cortador de copa afilado que guarde su cupón, y no corte un tubo rayado, quemado "
      "por el sol o caliente."}},
    {polyethylene,
     {"Solo abrazadera para polietileno",
      "El polietileno cede con el tiempo: use solo una abrazadera hecha para él y para este diámetro, sin cinchos ni "
      "pernos en U. En un tramo aplastado o doblado no se hace toma."}},
    {coupon,
     {"Dé cuenta de cada cupón",
      "Dé cuenta de cada cupón. El que queda en la tubería acaba en un medidor, una válvula o una casa."}},
    {poor_wall,
     {"Tubo malo: abrazadera abierta, a mano",
      "Esta tubería está anotada así: {condition}. Una abrazadera de reparación de su tamaño queda abierta en el borde "
      "de la excavación antes del corte. Vigile el tubo, no la herramienta."}},
    {encasement,
     {"Tape con cinta los cortes de película",
      "Cada corte en la película se cierra con cinta antes de tapar; el hierro que queda al aire ahí se oxida."}},
    {lead,
     {"Servicio de plomo: pare y avise",
      "Un servicio de plomo, o de metal gris y blando, en la excavación: pare, no lo mueva ni lo corte, avise a la "
      "compañía. No se conecta otra vez sin su palabra."}},
    {slack,
     {"Deje holgura al servicio y asiéntelo",
      "Deje holgura en el servicio junto a la tubería, y asiéntelo. Una toma falla porque la jalan o hacen palanca, "
      "mucho después de que la cuadrilla se fue."}},
}};
static_assert(complete(table), "every caution, in the order of CautionWord");

}  // namespace cautions_table

const CautionTable& cautions() { return cautions_table::table; }

}  // namespace mainbore::words::spanish
