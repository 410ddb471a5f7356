import type { Sentences } from '../translate.ts';

/** What was too much at once. */
export const LIMITS: Sentences = {
  'Too many messages at once. Wait a second and send it again.':
    'Demasiados mensajes a la vez. Espere un segundo y envíelo otra vez.',
  'Messages still come too fast. Connect again in a while.':
    'Los mensajes siguen llegando demasiado deprisa. Conéctese de nuevo dentro de un rato.',
  '{n} people are looking at this job already. Try again when one of them has left.':
    'Ya hay {n} personas mirando este trabajo. Inténtelo cuando se vaya una.',
  'Too many changes at once. Wait a second and send it again.':
    'Demasiados cambios a la vez. Espere un segundo y envíelo otra vez.',
  'Too many records are brought at once. Nothing is lost: try again in some seconds.':
    'Se traen demasiados registros a la vez. No se pierde nada: inténtelo de nuevo en unos segundos.',
  'Too many jobs were opened from here. Wait a minute.':
    'Se abrieron demasiados trabajos desde aquí. Espere un minuto.',
  'Too many sites were opened from here. Wait a minute.':
    'Se abrieron demasiadas obras desde aquí. Espere un minuto.',
  'So many jobs were opened from here today that the server takes no more. Wait some hours, or ask who runs the server.':
    'Hoy se abrieron tantos trabajos desde aquí que el servidor no admite más. Espere unas horas, o pregunte a quien lleva el servidor.',
  'So many sites were opened from here today that the server takes no more. Wait some hours, or ask who runs the server.':
    'Hoy se abrieron tantas obras desde aquí que el servidor no admite más. Espere unas horas, o pregunte a quien lleva el servidor.',
  'So much was sent from here today that the server takes no more for now. Keep this, wait some hours, or ask who runs the server.':
    'Hoy se envió tanto desde aquí que el servidor no admite más por ahora. Guarde esto, espere unas horas, o pregunte a quien lleva el servidor.',
  'So much was written to this record today that it takes no more for now. Keep this, and send it again in some hours.':
    'Hoy se escribió tanto en este registro que no admite más por ahora. Guarde esto y envíelo otra vez dentro de unas horas.',
  'Too many wrong codes were typed here. Scan the square code at the panel, or wait some minutes.':
    'Aquí se escribieron demasiados códigos erróneos. Escanee el código cuadrado de la central, o espere unos minutos.',
  'Too many photos at once. Wait some seconds and send it again.':
    'Demasiadas fotos a la vez. Espere unos segundos y envíela otra vez.',
  'Too much waits to be heard. Type it, or say it again in a moment.':
    'Hay demasiado esperando a ser oído. Escríbalo, o dígalo otra vez en un momento.',
  'Too many reports were asked for here. Wait until one is ready.':
    'Aquí se pidieron demasiados informes. Espere a que uno esté listo.',
  'This is being read by too many at once. Wait a few seconds and try again.':
    'Demasiadas personas leen esto a la vez. Espere unos segundos e inténtelo otra vez.',
  'Too much to say at once. Wait a second.': 'Demasiado que decir a la vez. Espere un segundo.',
  'At most {n} bytes.': 'Como mucho {n} bytes.',
  'At most {n} characters.': 'Como mucho {n} caracteres.',
};
