import type { Sentences } from '../translate.ts';

/** What was too much at once. */
export const LIMITS: Sentences = {
  'Too many messages at once. Wait a second and send it again.':
    'Zu viele Nachrichten auf einmal. Warten Sie eine Sekunde, und senden Sie es noch einmal.',
  'Messages still come too fast. Connect again in a while.':
    'Nachrichten kommen immer noch zu schnell. Verbinden Sie sich in einer Weile neu.',
  '{n} people are looking at this job already. Try again when one of them has left.':
    'Schon {n} Personen sehen diesem Auftrag zu. Versuchen Sie es wieder, wenn eine gegangen ist.',
  'Too many changes at once. Wait a second and send it again.':
    'Zu viele Änderungen auf einmal. Warten Sie eine Sekunde, und senden Sie es noch einmal.',
  'Too many records are brought at once. Nothing is lost: try again in some seconds.':
    'Zu viele Protokolle werden auf einmal gebracht. Nichts geht verloren: in einigen Sekunden noch einmal versuchen.',
  'Too many jobs were opened from here. Wait a minute.':
    'Von hier wurden zu viele Aufträge eröffnet. Warten Sie eine Minute.',
  'Too many sites were opened from here. Wait a minute.':
    'Von hier wurden zu viele Objekte eröffnet. Warten Sie eine Minute.',
  'So many jobs were opened from here today that the server takes no more. Wait some hours, or ask who runs the server.':
    'Heute wurden von hier so viele Aufträge eröffnet, dass der Server keine mehr annimmt. Warten Sie einige Stunden, oder fragen Sie die Person, die den Server betreibt.',
  'So many sites were opened from here today that the server takes no more. Wait some hours, or ask who runs the server.':
    'Heute wurden von hier so viele Objekte eröffnet, dass der Server keine mehr annimmt. Warten Sie einige Stunden, oder fragen Sie die Person, die den Server betreibt.',
  'So much was sent from here today that the server takes no more for now. Keep this, wait some hours, or ask who runs the server.':
    'Heute wurde von hier so viel gesendet, dass der Server vorerst nichts mehr annimmt. Bewahren Sie dies auf, warten Sie einige Stunden, oder fragen Sie die Person, die den Server betreibt.',
  'So much was written to this record today that it takes no more for now. Keep this, and send it again in some hours.':
    'In dieses Protokoll wurde heute so viel geschrieben, dass es vorerst nichts mehr annimmt. Bewahren Sie dies auf, und senden Sie es in einigen Stunden noch einmal.',
  'Too many wrong codes were typed here. Scan the square code at the panel, or wait some minutes.':
    'Hier wurden zu viele falsche Codes eingegeben. Scannen Sie den Quadratcode an der Zentrale, oder warten Sie einige Minuten.',
  'Too many photos at once. Wait some seconds and send it again.':
    'Zu viele Fotos auf einmal. Warten Sie einige Sekunden, und senden Sie es noch einmal.',
  'Too much waits to be heard. Type it, or say it again in a moment.':
    'Zu viel wartet darauf, gehört zu werden. Tippen Sie es, oder sagen Sie es gleich noch einmal.',
  'Too many reports were asked for here. Wait until one is ready.':
    'Hier wurden zu viele Berichte verlangt. Warten Sie, bis einer fertig ist.',
  'This is being read by too many at once. Wait a few seconds and try again.':
    'Das lesen gerade zu viele auf einmal. Warten Sie einige Sekunden, und versuchen Sie es noch einmal.',
  'Too much to say at once. Wait a second.': 'Zu viel auf einmal zu sagen. Warten Sie eine Sekunde.',
  'At most {n} bytes.': 'Höchstens {n} Bytes.',
  'At most {n} characters.': 'Höchstens {n} Zeichen.',
};
