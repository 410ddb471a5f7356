import type { Intent } from '../../grammar/intent.ts';
import { gradedFilter } from '../../grammar/reporting.ts';
import { means, type Rules, said, say } from '../../grammar/rule.ts';
import { inEighths } from '../../grammar/turning.ts';
import { NO_SIGNAL, SATURATED } from '../../model/reading.ts';

const intent = <K extends Intent['kind']>(kind: K): { kind: K } => ({ kind });

const UNITS = ['uno|un|una', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho', 'nueve'];
const TEENS = [
  ...'diez once doce trece catorce quince dieciséis diecisiete dieciocho diecinueve veinte'.split(' '),
  'veintiuno|veintiún|veintiuna',
  ...'veintidós veintitrés veinticuatro veinticinco veintiséis veintisiete veintiocho veintinueve'.split(' '),
];
const TENS = 'treinta cuarenta cincuenta sesenta setenta ochenta noventa'.split(' ');
const HUNDREDS = [
  'cien|ciento',
  'doscientos',
  'trescientos',
  'cuatrocientos',
  'quinientos|cinco cientos',
  'seiscientos',
  'setecientos',
  'ochocientos',
  'novecientos',
];

const numbers = {
  zero: means('0', 'cero'),
  unit: UNITS.flatMap((words, i) => means(String(i + 1), words)),
  teen: TEENS.flatMap((words, i) => means(10 + i, words)),
  tens: TENS.flatMap((word, i) => means(30 + 10 * i, word)),
  two: [
    say('<teen>', ({ teen }) => teen),
    say('<tens>', ({ tens }) => tens),
    say('<tens> y <unit>', ({ tens, unit }) => tens + Number(unit)),
    // "Diez y seis", the older spelling.
    say('diez y <unit>', ({ unit }) => (Number(unit) > 5 ? 10 + Number(unit) : undefined)),
  ],
  hundreds: HUNDREDS.flatMap((words, i) => means(100 + 100 * i, words)),
  thousands: [...means(1000, 'mil'), say('<small> mil', ({ small }) => 1000 * small)],
  minus: means(true as const, 'menos'),
  point: means(true as const, 'coma|punto|con'),
  andHalf: means(true as const, 'y (medio|media)'),
  measure: [
    ...means('percent', 'porciento'),
    ...means('volts', 'voltio|voltios'),
    ...means('counts', 'cuenta|cuentas'),
    ...means('decibels', 'decibelio|decibelios|decibel|decibeles'),
    ...means('bars', 'barra|barras'),
    ...means('steps', 'paso|pasos'),
    ...means('segments', 'segmento|segmentos'),
    ...means('divisions', 'división|divisiones'),
    ...means('own', 'units|unidades'),
  ],
} satisfies Rules;

const turning = {
  axis: [
    ...means('horizontal' as const, '[en] [el] [tornillo|ajuste|eje|regulador] horizontal'),
    ...means('vertical' as const, '[en] [el] [tornillo|ajuste|eje|regulador] vertical'),
  ],
  sense: [
    ...means(
      'clockwise' as const,
      '[en] [el] [sentido] horario|en [el] sentido de las agujas [del reloj]|con las agujas [del reloj]',
    ),
    ...means(
      'anticlockwise' as const,
      '[en] [el] [sentido] antihorario|en [el] sentido contrario a las agujas [del reloj]',
      'contra las agujas [del reloj]|en [el] sentido contrario al [de las agujas del] reloj',
    ),
    ...means('back' as const, '[hacia] atrás|de vuelta|al revés|al contrario|[en] [el] sentido contrario'),
    ...means('on' as const, 'más|[hacia] adelante|[en] [el] mismo sentido'),
  ],
  way: [
    say('<sense>', ({ sense }) => sense),
    ...means('left' as const, '[a|hacia] [la] izquierda'),
    ...means('right' as const, '[a|hacia] [la] derecha'),
    ...means('up' as const, '[hacia] arriba'),
    ...means('down' as const, '[hacia] abajo'),
    ...means('in' as const, '[hacia] (dentro|adentro)'),
    ...means('out' as const, '[hacia] (fuera|afuera)'),
  ],
  part: [
    ...means(1, '[un] octavo'),
    ...means(2, '[un] cuarto|dos octavos'),
    ...means(3, 'tres octavos'),
    ...means(4, 'media|cuatro octavos|dos cuartos'),
    ...means(5, 'cinco octavos'),
    ...means(6, 'tres cuartos|seis octavos'),
    ...means(7, 'siete octavos'),
  ],
  turns: [
    say('<part> [de] vuelta', ({ part }) => part),
    ...means(8, '[una] vuelta [entera|completa]|una entera'),
    say('[una] vuelta y <part>', ({ part }) => 8 + part),
    ...means(16, 'dos vueltas [enteras|completas]'),
    say('dos vueltas y <part>', ({ part }) => 16 + part),
    ...means(24, 'tres vueltas [enteras|completas]'),
    say('<numeral> (vuelta|vueltas)', ({ numeral }) => inEighths(numeral)),
    say('<fraction> [de] [vuelta|vueltas]', ({ fraction }) => inEighths(fraction)),
  ],
  toVerb: means(true as const, '[lo] [he] (girado|movido|dado|hecho|giré|moví|di|hice)|solo|sólo'),
} satisfies Rules;

const reporting = {
  state: [
    ...means(
      NO_SIGNAL,
      '(sin|no hay|ninguna) (señal|lectura|luz)|nada|se ha perdido [la señal]|se perdió [la señal]|señal perdida',
    ),
    ...means(
      SATURATED,
      '[está] saturado|[está] saturada|satura|se satura|fuera de escala|demasiada (señal|luz)|demasiado fuerte|a tope',
    ),
  ],
  lead: means(
    true as const,
    '[ahora] (marca|indica|muestra|pone|da|leo|veo|tengo|está en|estamos en)|son|es',
    '[el] (medidor|aparato) (marca|indica|muestra)|[la] (lectura|señal) [es|está en]|lectura [de]|exactamente',
  ),
  near: means(true as const, '(unos|unas|aproximadamente|casi|cerca de|alrededor de|más o menos|como)'),
  trend: [
    ...means(
      'rising' as const,
      '[está|va] (subiendo|aumentando|mejorando)|sube|aumenta|mejora|ha subido|subió|más (alto|fuerte|claro|brillante)|mejor',
    ),
    ...means(
      'falling' as const,
      '[está|va] (bajando|disminuyendo|cayendo|empeorando)|baja|cae|disminuye|empeora|ha bajado|bajó|más (bajo|débil|oscuro)|peor',
    ),
    ...means(
      'steady' as const,
      '[está|se mantiene] (estable|constante|igual|firme)|sin cambios|no (cambia|varía|se mueve)|lo mismo',
    ),
    ...means(
      'wandering' as const,
      '(oscila|varía|salta|fluctúa|inestable)|no [se] (para|estabiliza)|sube y baja',
    ),
  ],
  gain: [
    say('[la] (ganancia|sensibilidad) (bajada|reducida|abajo|más baja) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say('[he] (bajado|reducido|bajé|reduje) la (ganancia|sensibilidad) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say('[la] (ganancia|sensibilidad) (subida|aumentada|arriba|más alta) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say('[he] (subido|aumentado|subí|aumenté) la (ganancia|sensibilidad) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say('[la] ganancia [está|puesta] (en|a) [el] [paso] <number> <measure?>', ({ number }) => ({
      kind: 'gain' as const,
      change: 'set' as const,
      to: number,
    })),
    ...means(
      { kind: 'gain' as const, change: 'full' as const },
      '[la] ganancia [está] [al] (máximo|máxima)|ganancia a tope|toda la ganancia',
    ),
  ],
  graded: [
    say('[el] filtro [de|del] <grade> [porciento] puesto', ({ grade }) => gradedFilter(grade)),
    say('[he] puesto [el] filtro [de|del] <grade> [porciento]', ({ grade }) => gradedFilter(grade)),
  ],
  path: [
    ...means(
      { kind: 'path' as const, state: 'blocked' as const },
      '[está] [el] [haz|camino|receptor] [está] [todo|totalmente] (tapado|cubierto|bloqueado|obstruido)|[ya] tapado',
      '[hay] (algo|alguien) [está] en (medio|el haz|el camino)|tapa puesta|cartón puesto',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const },
      '[está] (parcialmente|en parte) (tapado|cubierto|bloqueado)',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const, by: 'half' as const },
      '[está] (medio|a medias|la mitad|mitad) (tapado|cubierto|tapada|cubierta)|tapado a medias|tapada la mitad',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const, by: 'filter' as const },
      '[el] filtro [está] puesto',
    ),
    ...means(
      { kind: 'path' as const, state: 'clear' as const },
      '[está] [el] [haz|camino] [está] (libre|despejado|destapado|descubierto)|[ya] libre|filtro quitado|tapa quitada',
      'nada en (medio|el haz|el camino)|no está (tapado|cubierto)',
    ),
  ],
  panel: [
    ...means(
      { kind: 'panel' as const, shows: 'alarm' as const },
      '[la] [central|panel] [el panel] [muestra|indica|marca|está en|en|hay] alarma|alarma de incendio',
    ),
    ...means(
      { kind: 'panel' as const, shows: 'fault' as const },
      '[la] [central|panel] [el panel] [muestra|indica|marca|está en|en|hay] (avería|fallo|falla)',
    ),
    ...means(
      { kind: 'panel' as const, shows: 'normal' as const },
      '[la] [central|panel] [el panel] [muestra|indica|marca|está|está en] (normal|reposo)|todo normal|vuelve a normal',
      'sin (avería|fallo|alarma)|restablecido|restablecida',
    ),
  ],
  whom: [
    ...means('the control room', '[a] [la] (sala de control|central receptora)'),
    ...means('security', '[a] [los de] [la] (seguridad|vigilancia)|[al] (guardia|vigilante)'),
    ...means('reception', '[a] [la] recepción'),
    ...means('the fire brigade', '[a] [los] bomberos'),
    ...means('everyone', '[a] (todos|todo el mundo)'),
  ],
  informed: [
    say('[he|hemos] (avisado|informado|avisé|informé|avisamos) <whom>', ({ whom }) => ({
      kind: 'told' as const,
      who: whom,
    })),
  ],
  done: means<Intent>(
    { kind: 'done' },
    '[ya] [está|lo he] (hecho|hecha|listo|lista|terminado|girado|movido|puesto)|[ya] está|ya|fijado|ajustado',
    '[todo] (comprobado|revisado|apuntado)|vuelta hecha|giro hecho',
  ),
} satisfies Rules;

const commanding = {
  and: means(true as const, 'y|y ahora|ahora'),
  to: means(true as const, 'a|hasta|en'),
  not: means(true as const, '[y] no'),
  assent: means<Intent>({ kind: 'yes' }, 'sí'),
  pause: means<Intent>({ kind: 'wait' }, '[y] (espera|un momento)'),
  correcting: means(
    true as const,
    'no|[no] corrección|[no] perdón|[no] mal|[no] incorrecto|[no] está mal|quería decir|quise decir',
  ),
  yes: means(
    intent('yes'),
    'sí|[sí] correcto|[sí] exacto|[sí] eso es|así es|afirmativo|claro|vale|de acuerdo|confirmado|entendido|recibido',
  ),
  command: [
    ...means(
      intent('no'),
      'no|negativo|corrección|[no] incorrecto|no es correcto|no está bien|ninguno|ninguna|nadie [todavía]',
    ),
    ...means(
      intent('undo'),
      'deshacer|deshaz|[deshaz|borra|anula|olvida] (lo último|eso)|bórralo|anúlalo|olvídalo|retíralo',
    ),
    ...means(
      intent('repeat'),
      '(repite|repita|repetir) [por favor]|otra vez|dilo otra vez|cómo|qué has dicho|no [te|lo] he (oído|entendido)',
    ),
    ...means(
      intent('wait'),
      '(espera|espere|esperar|esperad) [un momento]|un momento|un segundo|un minuto|todavía no|aún no|pausa',
    ),
    ...means(
      intent('resume'),
      '(sigue|siga|seguir|sigamos|continúa|continuar|adelante|continúe)|[estoy|estamos] (listo|lista|listos) para seguir|ya puedo|preparado|preparada',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'stuck' as const },
      '[está] (atascado|bloqueado el tornillo|agarrotado|trabado|duro)|no (gira|se mueve|cede)|[el] tornillo [está] atascado',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'end-of-travel' as const },
      '[está al] (fin|final) [del|de] (recorrido|carrera)|tope|[está] en el tope|no (va|da) más|no hay más recorrido',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'out-of-reach' as const },
      'no (llego|alcanzo) [hasta allí]|fuera de [mi] alcance|no lo alcanzo',
    ),
    ...means({ kind: 'cannot' as const, why: 'unsaid' as const }, 'no puedo [hacerlo]|no se puede|imposible'),
    ...means(
      { kind: 'swap' as const },
      '(cambia|cambiar|pasa) [de|al otro] (tornillo|ajuste|eje)|el otro [tornillo]',
    ),
    say('(cambia|cambiar|pasa|pasar|ve) al <axis>', ({ axis }) => ({ kind: 'swap' as const, axis })),
    ...means(
      intent('ask-reading'),
      '(qué|cuánto) (marca|indica|pone|lees|tienes|da|ves)|lectura|dame [la|una] lectura|cuál es la lectura',
    ),
    ...means(intent('accept'), '[lo|la] (acepto|aceptar|aceptado|aceptada|aceptamos) [la alineación]'),
    ...means(intent('stop'), '(alto|para|parar|pare|parad|stop|detente|abortar) [todo|ya]|alto alto'),
    ...means(
      intent('start'),
      '(empezar|empieza|empezamos|comenzar|comienza|reanudar|arrancar) [de nuevo|otra vez]',
    ),
    ...means(intent('unsure'), 'no [lo] sé|no [estoy] (seguro|segura)|ni idea|omitir|déjalo'),
    ...means(intent('why'), '(por qué|porqué|por qué motivo|para qué)'),
  ],
  sorry: means(true as const, 'perdón|perdona|lo siento'),
  slip: [
    ...means(
      intent('knocked'),
      '(alguien) [lo] ha (golpeado|movido|empujado|tocado) [el emisor|el soporte]|[lo] he golpeado [el emisor]|golpeado|se ha movido [el soporte]|recibió un golpe',
    ),
    ...means(
      intent('not-turned'),
      'no [lo] he (girado|movido|tocado|hecho) [nada|todavía]|[no] girado nada|sin girar',
    ),
    ...means(
      intent('miscounted'),
      '[he] perdido la cuenta|[me he] (pasado|pasé)|demasiado|no sé cuánto [he girado]',
    ),
    ...means(
      intent('wrong-way'),
      '[en|al|por|el] [sentido|lado|dirección] (equivocado|equivocada|incorrecto|incorrecta)|[he] girado al revés|lado contrario',
    ),
    ...means(
      intent('wrong-screw'),
      '[he girado] [el] (tornillo|ajuste) (equivocado|incorrecto)|[he girado] el otro tornillo|me he equivocado de tornillo',
    ),
  ],
} satisfies Rules;

/** Spanish. A native's check is still owed. */
export const RULES = { ...numbers, ...turning, ...reporting, ...commanding } satisfies Rules;

export const FILLERS = 'eh em este pues bueno ahora por favor gracias entonces mira vale'.split(' ');

export const REMARK =
  /^\W*(?:nota|anota|anotar|apunta|observación|observacion)(?:\s+que)?\b[\s:,.;-]*(.*)$/isu;
export const TOLD =
  /^\W*(?:s[ií]\W+)?(?:(?:lo\s+)?(?:he|hemos)\s+)?(?:avisad[oa]s?|informad[oa]s?|avisé|avise|avisamos|informé)\s+(?:a\s+)?(\S.*)$/isu;
