import type { Sentences } from '../translate.ts';

export const CAUSES: Sentences = {
  'that each turn is the one asked for: adjuster, way and amount':
    'que cada giro sea el pedido: tornillo, sentido y cantidad',
  'that the card covers the whole direct line, metres out':
    'que la tarjeta cubra toda la línea directa, a unos metros',
  "the maker's instructions, for how the detector sets its gain, or how to set it by hand":
    'las instrucciones del fabricante: cómo ajusta el detector su ganancia, o cómo ajustarla a mano',
  'power at both ends': 'la alimentación en ambos extremos',
  'the path, for anything in it': 'el camino, por si hay algo en medio',
  'that the receiver faces the emitter': 'que el receptor mire al emisor',
  'that this emitter belongs to this receiver': 'que este emisor sea de este receptor',
  "the path length against the maker's range": 'la longitud del camino frente al alcance del fabricante',
  'the units themselves': 'las propias unidades',
  'the mounts, for looseness': 'los soportes, por si están flojos',
  'the building, for movement': 'el edificio, por si se mueve',
  'the receiver, for sun or lamps shining in': 'el receptor, por si le da el sol o una lámpara',
  'the path, for cranes, lifts or people passing': 'el camino, por si pasan grúas, elevadores o personas',
  'the air, for steam, dust or smoke': 'el aire, por si hay vapor, polvo o humo',
  'the windows and lenses, for dirt': 'las ventanas y lentes, por si están sucias',
  'the edges of the path': 'los bordes del camino',
  'shiny surfaces beside the path': 'superficies brillantes junto al camino',
  'that the path is not shorter than the maker allows':
    'que el camino no sea más corto de lo que permite el fabricante',
  'for the short-range filter, if the maker asks for one':
    'si está el filtro de corta distancia, si el fabricante lo pide',
  'for other light at the receiver': 'si hay otra luz en el receptor',
  'the gain: free it, or say stop and note it': 'la ganancia: libérela, o diga «alto» y anótelo',
  'the horizontal adjuster: free it, or say stop and note it':
    'el tornillo horizontal: libérelo, o diga «alto» y anótelo',
  'the vertical adjuster: free it, or say stop and note it':
    'el tornillo vertical: libérelo, o diga «alto» y anótelo',
  "the maker's instructions, for which of the two gain steps to use; then accept with a written reason":
    'las instrucciones del fabricante, sobre cuál de los dos pasos de ganancia usar; luego acepte con un motivo escrito',
  'for a stronger test filter': 'si hay un filtro de prueba más fuerte',
  'for a weaker test filter that is still above the threshold':
    'si hay un filtro de prueba más débil que aún supere el umbral',
  'that the cover holds back enough light': 'que la tapa quite bastante luz',
  'how fast it was covered: slowly for an alarm, at once for a fault':
    'con qué rapidez se tapó: despacio para una alarma, de golpe para una avería',
  'that "covered" is said at that moment, not later': 'que «tapado» se diga en ese momento, no después',
  'that "covered" is said at that moment, not earlier': 'que «tapado» se diga en ese momento, no antes',
  'the grade of the test filter against the plan': 'el grado del filtro de prueba frente al plan',
  'the alarm threshold that is set': 'el umbral de alarma ajustado',
  'the delays that are set': 'los retardos ajustados',
  'delays and verification at the panel': 'retardos y verificación en la central',
  'that the zone is not disabled at the panel': 'que la zona no esté desactivada en la central',
  'that the panel was reset': 'que la central se rearmó',
  'the labels and addresses in the panel': 'los textos y direcciones en la central',
  'the wires from the detector to the panel': 'los cables del detector a la central',
  'the end-of-line device': 'el final de línea',
};
