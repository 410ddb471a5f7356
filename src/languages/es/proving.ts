import type { Sentences } from '../translate.ts';

export const PROVING: Sentences = {
  'Fault test: cover the whole receiver at once, with something dull. Say covered at that moment.':
    'Prueba de avería: tape todo el receptor de golpe, con algo mate. Diga «tapado» en ese momento.',
  'Cover all of the receiver at once': 'Tapar todo el receptor de golpe',
  'Alarm test: slide a dull card over half of the receiver, slowly, in more than two seconds. Half a cover is coarse: be exact. Say half covered when it is there.':
    'Prueba de alarma: deslice un cartón mate sobre la mitad del receptor, despacio, en más de dos segundos. Medio tapado es impreciso: sea exacto. Diga «medio tapado» cuando esté.',
  'Cover half of the receiver, slowly': 'Tapar la mitad del receptor, despacio',
  '{test}: bring the {n} percent test filter before the receiver, slowly, in more than two seconds. Say {n1} percent filter on when it is there.':
    '{test}: ponga el filtro de prueba del {n} por ciento ante el receptor, despacio, en más de dos segundos. Diga «filtro del {n1} por ciento puesto» cuando esté.',
  '{test}: bring the test filter before the receiver, slowly, in more than two seconds. Say filter on when it is there.':
    '{test}: ponga el filtro de prueba ante el receptor, despacio, en más de dos segundos. Diga «filtro puesto» cuando esté.',
  'No alarm must come. Quiet test': 'No debe haber alarma. Prueba de silencio',
  'This filter is so strong that a fault may come: only an alarm counts. Alarm test':
    'Este filtro es tan fuerte que puede dar avería: solo cuenta una alarma. Prueba de alarma',
  'Alarm test': 'Prueba de alarma',
  'Quiet test': 'Prueba de silencio',
  'Fault test': 'Prueba de avería',
  '{n} percent test filter on, slowly': 'Filtro de prueba del {n} por ciento, despacio',
  'test filter on, slowly': 'filtro de prueba, despacio',
  'Panel: read the meter, then watch the panel. Say alarm, or what it shows, at once.':
    'Central: lea el medidor y luego vigile la central. Diga «alarma», o lo que indique, enseguida.',
  'Watch for alarm': 'Vigilar si hay alarma',
  'Panel: read the meter, then watch the panel. Say fault, or what it shows, at once.':
    'Central: lea el medidor y luego vigile la central. Diga «avería», o lo que indique, enseguida.',
  'Watch for fault': 'Vigilar si hay avería',
  'Panel: reset it. Say when the panel shows normal.':
    'Central: rearme. Avise cuando la central indique «normal».',
  'Watch for normal': 'Esperar a que esté normal',
  'Panel: read the meter, then watch the panel. It must stay at normal. Say alarm at once if it comes.':
    'Central: lea el medidor y luego vigile la central. Debe seguir normal. Diga «alarma» enseguida si aparece.',
  'No alarm must come: wait': 'No debe haber alarma: esperar',
  'Panel: the path must be clear. What does the meter show?':
    'Central: el camino debe estar libre. ¿Qué muestra el medidor?',
  'Path clear: read the meter': 'Camino libre: leer el medidor',
  'Panel: leave the cover on. What does the meter show?':
    'Central: deje la tapa puesta. ¿Qué muestra el medidor?',
  'Cover on: read the meter': 'Tapado: leer el medidor',
  'The reading with the path clear has fallen since the alignment was accepted. Please check: {list}. Then say done, and read again. If it stays low, the alignment is made again.':
    'La lectura con el camino libre ha bajado desde que se aceptó la alineación. Revise: {list}. Luego diga «hecho» y lea otra vez. Si sigue baja, se repite la alineación.',
  'Beam lost or moved. Check: {list}': 'Haz perdido o movido. Revisar: {list}',
  'The reading stays low: this alignment no longer stands. Aim the emitter by eye, within fifteen centimetres of the receiver. Then say done.':
    'La lectura sigue baja: esta alineación ya no vale. Apunte el emisor a ojo, a menos de quince centímetros del receptor. Luego diga «hecho».',
  'Align again: aim by eye, within 15 cm of the receiver':
    'Alinear de nuevo: apuntar a ojo, a menos de 15 cm del receptor',
  'The signal fell since the last visit. Check: {list}. Then say done.':
    'La señal bajó desde la última visita. Revise: {list}. Luego diga «hecho».',
  'Less signal than at the last visit. Check: {list}': 'Menos señal que en la última visita. Revisar: {list}',
  'The only filter here that can bring the alarm is so strong that the detector may take it for a lost beam. Please look for a weaker test filter that is still above the threshold, and enter it in the plan of a new visit. Say done to go on with this one.':
    'El único filtro que puede dar la alarma aquí es tan fuerte que el detector puede tomarlo por un haz perdido. Busque un filtro más débil que aún supere el umbral y anótelo en el plan de una nueva visita. Diga «hecho» para seguir con este.',
  'Is there a weaker filter?': '¿Hay un filtro más débil?',
  'No cover here is right for this threshold: bring a filter of at least {n} percent, enter it in the plan, and begin a new visit. Restore the alarm outputs before you leave.':
    'Ningún filtro de aquí sirve para este umbral: traiga uno de al menos el {n} por ciento, anótelo en el plan y empiece una nueva visita. Restablezca las salidas de alarma antes de irse.',
  'No cover here is right for this threshold: bring a filter of at least {n} percent, but not over {n1}, enter it in the plan, and begin a new visit. Restore the alarm outputs before you leave.':
    'Ningún filtro de aquí sirve para este umbral: traiga uno de al menos el {n} por ciento, pero no más del {n1}, anótelo en el plan y empiece una nueva visita. Restablezca las salidas de alarma antes de irse.',
  'Bring a filter of at least {n} %': 'Traer un filtro de al menos {n} %',
  'A {n} percent filter? The plan has no test filter. Take it off, or say half covered if half is covered.':
    '¿Un filtro del {n} por ciento? El plan no tiene filtro de prueba. Quítelo, o diga «medio tapado» si está tapada la mitad.',
  'A {n} percent filter? The plan has {filters} percent. Which is on? Say it whole: {n1} percent filter on.':
    '¿Un filtro del {n} por ciento? El plan tiene {filters} por ciento. ¿Cuál está puesto? Dígalo entero: «filtro del {n1} por ciento puesto».',
  'the panel did not show it in time': 'la central no lo indicó a tiempo',
  'the panel showed an alarm behind a cover that is clearly below the alarm threshold':
    'la central indicó alarma con un filtro claramente por debajo del umbral',
  'the panel showed both alarm and fault': 'la central indicó alarma y avería',
  'the panel showed both alarm and fault behind a cover that must bring neither':
    'la central indicó alarma y avería con un filtro que no debe dar ninguna',
  'the panel showed something else': 'la central indicó otra cosa',
  'the panel showed it too early': 'la central lo indicó demasiado pronto',
  'the panel showed it too late': 'la central lo indicó demasiado tarde',
  'the reading with the cover on was not as expected': 'la lectura con la tapa puesta no fue la esperada',
  'the reading with the path clear has fallen: the beam was lost or moved, and the cover was not wrong':
    'la lectura con el camino libre ha bajado: el haz se perdió o se movió, y el filtro no era el problema',
  'the panel did not come back to normal in time': 'la central no volvió a normal a tiempo',
  'Failed: {what}.': 'Fallido: {what}.',
  '{test} failed: {why}.': '{test} fallida: {why}.',
  '{test} failed: {why} ({figures}).': '{test} fallida: {why} ({figures}).',
  'Tested again, and passed.': 'Repetida, y superada.',
  'The entry it rests on was taken back.': 'La entrada en la que se basa se retiró.',
  'the test that a weak filter brings no alarm, passed':
    'la prueba de que un filtro débil no da alarma, superada',
  'the alarm test, passed': 'la prueba de alarma, superada',
  'the fault test, passed': 'la prueba de avería, superada',
  'an accepted alignment': 'una alineación aceptada',
  'a reading after the tests': 'una lectura después de las pruebas',
  'an answer to the open issue: {x}': 'una respuesta a la incidencia abierta: {x}',
  'It cannot be signed yet. Missing: {needs}.': 'Todavía no se puede firmar. Falta: {needs}.',
  'The only filter here that can bring the alarm is so strong that the detector may take it for a lost beam. Please look {list}, and enter it in the plan of a new visit. Say done to go on with this one.':
    'El único filtro que puede dar la alarma aquí es tan fuerte que el detector puede tomarlo por un haz perdido. Mire {list}, y anótelo en el plan de una nueva visita. Diga «hecho» para seguir con este.',
};
