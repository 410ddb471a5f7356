import type { Sentences } from '../translate.ts';

export const MISSING: Sentences = {
  'a settled reading here': 'una lectura estable aquí',
  'a clear path': 'un camino libre',
  'a reading that is not saturated: lower the gain': 'una lectura no saturada: baje la ganancia',
  'a reading in the band': 'una lectura dentro de la banda',
  'lower settled readings on both sides of the horizontal peak, at this gain':
    'lecturas estables más bajas a ambos lados del máximo horizontal, con esta ganancia',
  'lower settled readings on both sides of the vertical peak, at this gain':
    'lecturas estables más bajas a ambos lados del máximo vertical, con esta ganancia',
  'the adjusters at the peak, and a reading next to it': 'los tornillos en el máximo, y una lectura al lado',
  'a reading where a stronger peak may be': 'una lectura donde puede haber un máximo más fuerte',
  'the highest reading seen at this gain': 'la lectura más alta vista con esta ganancia',
  'the blocking check: blocked, the reading must go to nothing and come back the same':
    'la prueba de tapado: tapado, la lectura debe caer a nada y volver igual',
  'a reading that holds steady': 'una lectura que se mantiene',
  'a fresh reading': 'una lectura reciente',
  'an answer to the open question': 'una respuesta a la pregunta abierta',
  'an alignment that nobody touched on this visit': 'una alineación que nadie tocó en esta visita',
  'an answer whether the windows were cleaned': 'una respuesta sobre si se limpiaron las ventanas',
  'the signal that the last visit left': 'la señal que dejó la última visita',
  'Still missing:': 'Todavía falta:',
  'The next steps give this evidence.': 'Los próximos pasos dan esta prueba.',
  'Nothing was turned, and the signal is what the last visit left.':
    'No se giró nada, y la señal es la que dejó la última visita.',
  'Keep the alignment': 'Mantener la alineación',
  'All the evidence is complete.': 'Todas las pruebas están completas.',
  'Not proven yet': 'Aún sin probar',
  'Accept against the evidence': 'Aceptar sin todas las pruebas',
  Reason: 'Motivo',
  'This reason and all that is missing stay in the record for ever, on its first page.':
    'Este motivo y todo lo que falta quedan para siempre en el registro, en la primera página.',
  'Accept with this reason': 'Aceptar con este motivo',
};
