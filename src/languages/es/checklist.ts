import type { Sentences } from '../translate.ts';

export const CHECKLIST: Sentences = {
  'Panel: are the alarm outputs isolated? Say yes or no.':
    'Central: ¿están anuladas las salidas de alarma? Diga «sí» o «no».',
  'Alarm outputs isolated?': '¿Salidas de alarma anuladas?',
  'alarm outputs isolated': 'salidas de alarma anuladas',
  'alarm outputs not isolated': 'salidas de alarma sin anular',
  'Panel: who was told that the alarm is out of service? For example, say: told the control room.':
    'Central: ¿a quién se avisó de que la alarma está fuera de servicio? Por ejemplo, diga: «avisada la sala de control».',
  'Who was told?': '¿A quién se avisó?',
  told: 'avisado',
  'told: {x}': 'avisado: {x}',
  'nobody told yet': 'nadie avisado todavía',
  'Is the ladder or platform inspected, and safe to climb? Say yes or no.':
    '¿Está revisada la escalera o plataforma, y es seguro subir? Diga «sí» o «no».',
  'Access equipment inspected?': '¿Equipo de acceso revisado?',
  'access equipment inspected': 'equipo de acceso revisado',
  'access equipment not inspected': 'equipo de acceso sin revisar',
  'Nobody may look into an aiming laser, here or below. Agreed? Say yes or no.':
    'Nadie debe mirar a un láser de puntería, ni aquí ni abajo. ¿De acuerdo? Diga «sí» o «no».',
  'Nobody looks into a laser: agreed?': 'Nadie mira al láser: ¿de acuerdo?',
  'laser caution agreed': 'precaución del láser aceptada',
  'laser caution not agreed': 'precaución del láser no aceptada',
  'Is the beam path clear from end to end? Say yes or no.':
    '¿Está libre el camino del haz de un extremo al otro? Diga «sí» o «no».',
  'Beam path clear?': '¿Camino del haz libre?',
  'path clear from end to end': 'camino libre de un extremo al otro',
  'path not clear': 'camino no libre',
  'Clean the windows of both units as the maker says. Were they cleaned? Say yes or no.':
    'Limpie las ventanas de ambas unidades como dice el fabricante. ¿Se limpiaron? Diga «sí» o «no».',
  'Windows of both units cleaned?': '¿Ventanas de ambas unidades limpias?',
  'windows cleaned': 'ventanas limpias',
  'windows not cleaned': 'ventanas sin limpiar',
  'Panel: does the alarm show this pair, in its zone, and no other? Say yes or no.':
    'Central: ¿muestra la alarma esta pareja, en su zona, y ninguna otra? Diga «sí» o «no».',
  'Right pair and zone on the panel?': '¿Pareja y zona correctas en la central?',
  'panel shows the right pair and zone': 'la central muestra la pareja y la zona correctas',
  'panel does not show the right pair and zone': 'la central no muestra la pareja y la zona correctas',
  'Wiring test: open the line to the panel at the detector, then close it. Did a fault show, and then clear? Say yes or no.':
    'Prueba de cableado: abra la línea a la central en el detector y ciérrela. ¿Apareció una avería y luego desapareció? Diga «sí» o «no».',
  'Wiring test: open line gives fault?': 'Prueba de cableado: ¿la línea abierta da avería?',
  'open line gave a fault, and it cleared': 'la línea abierta dio avería, y desapareció',
  'wiring test failed': 'prueba de cableado fallida',
  'Panel: are the alarm outputs restored, and was everybody told? Say yes or no.':
    'Central: ¿están restablecidas las salidas de alarma y se avisó a todos? Diga «sí» o «no».',
  'Alarm outputs restored?': '¿Salidas de alarma restablecidas?',
  'alarm outputs restored': 'salidas de alarma restablecidas',
  'alarm outputs still isolated': 'salidas de alarma todavía anuladas',
  'Are the covers on, and is the path clear? Say yes or no.':
    '¿Están puestas las tapas y el camino libre? Diga «sí» o «no».',
  'Covers on?': '¿Tapas puestas?',
  'covers on': 'tapas puestas',
  'covers not on yet': 'tapas sin poner todavía',
  'Panel: is it back to normal, without fault or alarm? Say yes or no.':
    'Central: ¿está otra vez normal, sin avería ni alarma? Diga «sí» o «no».',
  'Panel normal?': '¿Central normal?',
  'panel normal': 'central normal',
  'panel not normal': 'central no normal',
};
