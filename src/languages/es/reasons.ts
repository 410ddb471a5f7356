import type { Sentences } from '../translate.ts';

export const REASONS: Sentences = {
  'Once the alignment is accepted, nothing more is turned.':
    'Una vez aceptada la alineación, no se gira nada más.',
  'Nothing is judged while the path is covered: uncover it, unless it is covered for the blocking check.':
    'No se juzga nada con el camino tapado: destápelo, salvo en la prueba de tapado.',
  'After hands off, wait until the reading has settled or two readings agree; only then judge.':
    'Con las manos fuera, espere a que la lectura se estabilice o dos lecturas coincidan; solo entonces juzgue.',
  'Every turn and every gain change is judged by a reading taken after it.':
    'Cada giro y cada cambio de ganancia se juzga con una lectura posterior.',
  'A reading that keeps changing is no evidence: find what moves first.':
    'Una lectura que no para de cambiar no prueba nada: busque antes qué se mueve.',
  'A reading that does not fit the earlier ones is read again before it counts.':
    'Una lectura que no encaja con las anteriores se repite antes de contar.',
  'If the reading is confirmed, the crew is asked about the turn before it: wrong way, wrong adjuster, half or double. Where light does not come back, about each turn since.':
    'Si la lectura se confirma, se pregunta por el giro anterior: sentido equivocado, otro tornillo, la mitad o el doble. Si la luz no vuelve, por cada giro desde entonces.',
  'A low reading that nothing before it predicts may later prove a side of the peak, so it is read twice; in a plain search every reading is.':
    'Una lectura baja que nada anunciaba puede probar después un lado del máximo, así que se lee dos veces; en una búsqueda simple, todas.',
  'If the reading stays when the direct path is blocked, the light comes from a reflection: aim again.':
    'Si la lectura sigue con el camino directo tapado, la luz viene de un reflejo: apunte de nuevo.',
  'With no signal, search at full gain.': 'Sin señal, busque con la ganancia al máximo.',
  'Read what is there; then, before anything is turned, aim at the receiver by eye, within {near}, or by the laser if there is one: light by way of a wall looks like the beam.':
    'Lea lo que hay; después, antes de girar nada, apunte al receptor a ojo, a menos de {near}, o con el láser si lo hay: la luz que llega por una pared parece el haz.',
  'With no signal at full gain, bring the emitter by eye to within {near} of the receiver.':
    'Sin señal con la ganancia al máximo, apunte el emisor a ojo a menos de {near} del receptor.',
  'With no signal after aiming, turn the two adjusters through a widening square and remember each place.':
    'Sin señal después de apuntar, gire los dos tornillos en un cuadrado creciente y recuerde cada lugar.',
  'When the square has found nothing, work through the causes, most likely first.':
    'Si el cuadrado no encontró nada, revise las causas, primero la más probable.',
  'When a turn loses the signal, go back to where it was seen.':
    'Si un giro pierde la señal, vuelva a donde se vio.',
  'When the meter is saturated, lower the gain and continue with the same adjuster in the same direction.':
    'Con el medidor saturado, baje la ganancia y siga con el mismo tornillo en el mismo sentido.',
  'A detector that sets its own gain gets time to do so, and is read again.':
    'A un detector que ajusta solo su ganancia se le da tiempo, y se lee otra vez.',
  'A search that goes on too long without proof, or whose confirmed readings fit no beam, begins again with an aim by eye.':
    'Una búsqueda que dura demasiado sin prueba, o cuyas lecturas confirmadas no encajan con ningún haz, empieza de nuevo apuntando a ojo.',
  'Where the readings fit no beam, go one adjuster at a time, reach every place next to the peak clockwise, and stop between two lower readings.':
    'Si las lecturas no encajan con ningún haz, vaya tornillo por tornillo, llegue a cada lugar junto al máximo en sentido horario y pare entre dos lecturas más bajas.',
  'A narrow light found so may be a side lobe: the places around it where the beam can be are read, and anything brighter is taken up.':
    'Una luz estrecha hallada así puede ser un lóbulo lateral: se leen los lugares de alrededor donde puede estar el haz, y se sigue lo que brille más.',
  'A search that finds no end is stopped: turns are miscounted, or something moves or stands in the light. Find it first.':
    'Una búsqueda que no termina se detiene: las vueltas están mal contadas, o algo se mueve o está en la luz. Encuéntrelo primero.',
  'If light stays behind the card after two more aims by eye, aiming is not the cure: find where it comes from.':
    'Si tras apuntar a ojo dos veces más queda luz detrás de la tarjeta, apuntar no es el remedio: busque de dónde viene.',
  "A detector that sets its own gain is told to set it at the peak, as its maker's instructions say.":
    'Un detector que ajusta su propia ganancia la ajusta en el máximo, como dicen las instrucciones del fabricante.',
  'Turn one adjuster a known amount to learn which way the signal rises.':
    'Gire un tornillo una cantidad conocida para saber hacia dónde sube la señal.',
  'Keep turning the way the signal rises.': 'Siga girando hacia donde sube la señal.',
  'Go past the peak until the reading falls, so that it is bracketed from both sides.':
    'Pase el máximo hasta que la lectura baje, para acotarlo por ambos lados.',
  'A fall means the peak lies the other way: turn back through it.':
    'Una bajada significa que el máximo está al otro lado: gire de vuelta a través de él.',
  'With the peak bracketed, turn straight to where the readings place it.':
    'Con el máximo acotado, gire directo adonde lo sitúan las lecturas.',
  'Light where this beam cannot be comes from a second peak: measure it, and keep the higher one.':
    'La luz donde este haz no puede estar viene de un segundo máximo: mídalo y quédese con el más alto.',
  'A peak far from the aim by eye may be a side lobe: look just as far on the other side of the aim.':
    'Un máximo lejos de la puntería a ojo puede ser un lóbulo lateral: mire igual de lejos al otro lado.',
  'Set the gain so that the peak reads in the middle of the band.':
    'Ajuste la ganancia para que el máximo quede en medio de la banda.',
  'One gain step puts the peak below the band and the next one above it: the gain is not changed any more.':
    'Un paso de ganancia deja el máximo por debajo de la banda y el siguiente por encima: la ganancia ya no se cambia.',
  'Both peaks are checked at the final gain: a lower settled reading on each side.':
    'Ambos máximos se comprueban con la ganancia final: una lectura estable más baja a cada lado.',
  'If light brighter than this peak was read and is gone, the screws are not where the count says: aim again.':
    'Si se leyó una luz más fuerte que este máximo y ya no está, los tornillos no están donde dice la cuenta: apunte de nuevo.',
  'After checking a side, turn back to the peak, from the side the search came from.':
    'Tras comprobar un lado, vuelva al máximo desde el lado del que vino la búsqueda.',
  'A peak that stays below the band at full gain is not accepted: find out why it is weak.':
    'Un máximo que queda por debajo de la banda con toda la ganancia no se acepta: averigüe por qué es débil.',
  'A peak that saturates the meter at the lowest gain is not accepted: find out why it is strong.':
    'Un máximo que satura el medidor con la ganancia mínima no se acepta: averigüe por qué es fuerte.',
  'With an adjuster stuck, the other one is worked on first; then it must be freed, or the work stops with a note.':
    'Con un tornillo atascado, primero se trabaja con el otro; luego hay que liberarlo, o el trabajo se para con una nota.',
  'With the peak beyond the end of an adjuster, the screws go back to their middle and the unit is aimed again.':
    'Con el máximo más allá del final de un tornillo, los tornillos vuelven a su centro y se apunta de nuevo.',
  'Before acceptance the direct path is blocked: the reading must go to nothing and come back the same.':
    'Antes de aceptar se tapa el camino directo: la lectura debe caer a nada y volver igual.',
  'The final reading must stay within tolerance for the hold time.':
    'La lectura final debe mantenerse en tolerancia durante el tiempo de espera.',
  'When all the evidence is there, the crew accepts.': 'Cuando están todas las pruebas, el equipo acepta.',
  'Nobody climbs, and nothing is tested, before the list is answered.':
    'Nadie sube ni se prueba nada antes de responder la lista.',
  'A periodic visit begins with the signal as it is found, before anything is touched.':
    'Una visita periódica empieza con la señal tal como está, antes de tocar nada.',
  'Dirt takes light away: the windows are cleaned, or the crew says that they were not.':
    'La suciedad quita luz: se limpian las ventanas, o el equipo dice que no se limpiaron.',
  'After cleaning the meter is read again: what came back was dirt.':
    'Tras limpiar se lee otra vez el medidor: lo que volvió era suciedad.',
  'Where the signal is less than the last visit left, the cause is looked for; if it stays low, the beam is aligned again.':
    'Si la señal es menor que la que dejó la última visita, se busca la causa; si sigue baja, se alinea de nuevo.',
  'The signal that is kept must stay within tolerance for the hold time.':
    'La señal que se mantiene debe seguir en tolerancia durante el tiempo de espera.',
  'Untouched and as bright as the last visit left it, the alignment is kept; the tests follow.':
    'Sin tocar y tan fuerte como lo dejó la última visita, la alineación se mantiene; siguen las pruebas.',
  'A test starts with the panel at normal: only then does what it shows count.':
    'Una prueba empieza con la central normal: solo entonces cuenta lo que indica.',
  'Before every cover the meter is read with the path clear: what the cover holds back is counted from there.':
    'Antes de cada tapado se lee el medidor con el camino libre: desde ahí se cuenta lo que quita la tapa.',
  'After every cover the meter is read with the path clear: is the beam still what it was?':
    'Después de cada tapado se lee el medidor con el camino libre: ¿sigue el haz como estaba?',
  'If the reading with the path clear has fallen, the beam was lost or moved: find the cause; if it stays low, align again.':
    'Si la lectura con el camino libre ha bajado, el haz se perdió o se movió: busque la causa; si sigue baja, alinee de nuevo.',
  'A loss clearly below the alarm threshold must not give an alarm.':
    'Una pérdida claramente por debajo del umbral no debe dar alarma.',
  'Slowly blocking part of the light must give an alarm after the set delay, and no sooner.':
    'Tapar despacio parte de la luz debe dar alarma tras el retardo ajustado, y no antes.',
  'Blocking all of the light at once must give a fault after the set delay.':
    'Tapar toda la luz de golpe debe dar avería tras el retardo ajustado.',
  'A filter this strong may look like a lost beam, and bring a fault: it is used only if there is no weaker one.':
    'Un filtro tan fuerte puede parecer un haz perdido y dar avería: solo se usa si no hay otro más débil.',
  'Where the meter can tell, a test counts only with a reading behind the cover.':
    'Si el medidor puede decirlo, una prueba solo cuenta con una lectura detrás de la tapa.',
  'Without a reading before the cover, behind it and after it, the test does not count.':
    'Sin una lectura antes, detrás y después de la tapa, la prueba no cuenta.',
  'The last cover was too near the alarm threshold, or nobody knows which it was: that test does not count.':
    'La última tapa estaba demasiado cerca del umbral, o nadie sabe cuál era: esa prueba no cuenta.',
  'Only a cover clearly above the alarm threshold proves the alarm.':
    'Solo una tapa claramente por encima del umbral prueba la alarma.',
  'Uncovered and reset, the panel must come back to normal.':
    'Destapado y rearmada, la central debe volver a normal.',
  'The panel must show this pair, in its zone, and no other.':
    'La central debe mostrar esta pareja, en su zona, y ninguna otra.',
  'A broken wire between detector and panel must show as a fault.':
    'Un cable roto entre detector y central debe dar avería.',
  'After the tests the reading must be what it was when the alignment was accepted.':
    'Tras las pruebas la lectura debe ser la de cuando se aceptó la alineación.',
  'After a failed test, the cause is fixed and the test is repeated, or somebody answers for it in writing.':
    'Tras una prueba fallida se arregla la causa y se repite, o alguien responde por escrito.',
  'Nobody leaves before the protection is back.': 'Nadie se va antes de que la protección vuelva.',
  'With everything proven and back in service, the record can be signed.':
    'Con todo probado y en servicio, el registro se puede firmar.',
  'Once the record is signed, nothing more is touched.': 'Una vez firmado el registro, no se toca nada más.',
  'Where no number is read, every turn is judged by whether the light rose, fell or stayed.':
    'Donde no se lee ningún número, cada giro se juzga por si la luz subió, bajó o se mantuvo.',
  'Where no number is read, the peak is the middle between two places from which the light falls alike.':
    'Donde no se lee ningún número, el máximo es el punto medio entre dos lugares desde los que la luz baja por igual.',
};
