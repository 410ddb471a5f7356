import type { Sentences } from '../translate.ts';

export const START: Sentences = {
  'Join with the code from the panel': 'Unirse con el código de la central',
  'Join code': 'Código',
  'The panel phone shows it in large letters, with a square code to scan.':
    'El teléfono de la central lo muestra en letras grandes, con un código para escanear.',
  Join: 'Unirse',
  Joining: 'Uniéndose',
  'Who is at this phone?': '¿Quién está en este teléfono?',
  'Your name': 'Su nombre',
  'Stands in the record. You can go on without: it then says “not named”.':
    'Figura en el registro. Puede seguir sin él: entonces dirá "sin nombre".',
  Firm: 'Empresa',
  'If you like.': 'Si quiere.',
  Competence: 'Competencia',
  'Such as a card or a course, if you like.': 'Un carné o un curso, por ejemplo, si quiere.',
  'Two phones, one beam: line it up together.': 'Dos teléfonos, un haz: alinéenlo juntos.',
  'At the panel': 'En la central',
  'At the emitter': 'En el emisor',
  'You read the meter. This opens a job and gives the code for the other phone.':
    'Usted lee el medidor. Abre un trabajo y da el código para el otro teléfono.',
  'You turn the screws. You need the code from the panel.':
    'Usted gira los tornillos. Necesita el código de la central.',
  'A whole site': 'Una obra entera',
  'Plan its pairs, see the status of each, and sign the records.':
    'Planificar sus parejas, ver el estado de cada una y firmar los registros.',
  'Open a site': 'Abrir una obra',
  Continue: 'Continuar',
  'Leave this job': 'Dejar este trabajo',
  'Yes, leave this job': 'Sí, dejar este trabajo',
  "Alarm outputs isolated? Someone told? Ladder footed? The maker's instructions, local code and licensed practice come before anything this tool says.":
    '¿Salidas de alarma anuladas? ¿Alguien avisado? ¿Escalera asegurada? Las instrucciones del fabricante, la norma local y la práctica autorizada van antes que lo que diga esta herramienta.',
  'Language of this phone': 'Idioma de este teléfono',
  'Nobody who grew up with this language has checked it yet. Speaking is understood in English only: type, or use the buttons.':
    'Ningún hablante nativo lo ha revisado todavía. Hablar solo se entiende en inglés: escriba, o use los botones.',
  'This language could not be loaded. Try again when there is a link.':
    'No se pudo cargar este idioma. Inténtelo cuando haya conexión.',
  "The supervisor's pages and the report are English.":
    'Las páginas del supervisor y el informe están en inglés.',
};
