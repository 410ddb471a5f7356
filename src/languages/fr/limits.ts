import type { Sentences } from '../translate.ts';

/** What was too much at once. */
export const LIMITS: Sentences = {
  'Too many messages at once. Wait a second and send it again.':
    'Trop de messages à la fois. Attendez une seconde et renvoyez.',
  'Messages still come too fast. Connect again in a while.':
    'Les messages arrivent encore trop vite. Reconnectez-vous dans un moment.',
  '{n} people are looking at this job already. Try again when one of them has left.':
    "{n} personnes regardent déjà ce travail. Réessayez quand l'une d'elles est partie.",
  'Too many changes at once. Wait a second and send it again.':
    'Trop de changements à la fois. Attendez une seconde et renvoyez.',
  'Too many records are brought at once. Nothing is lost: try again in some seconds.':
    'Trop de dossiers sont apportés à la fois. Rien n’est perdu : réessayez dans quelques secondes.',
  'Too many jobs were opened from here. Wait a minute.':
    "Trop de travaux ont été ouverts d'ici. Attendez une minute.",
  'Too many sites were opened from here. Wait a minute.':
    "Trop de sites ont été ouverts d'ici. Attendez une minute.",
  'So many jobs were opened from here today that the server takes no more. Wait some hours, or ask who runs the server.':
    "Tant de travaux ont été ouverts d'ici aujourd'hui que le serveur n'en prend plus. Attendez quelques heures, ou demandez à qui gère le serveur.",
  'So many sites were opened from here today that the server takes no more. Wait some hours, or ask who runs the server.':
    "Tant de sites ont été ouverts d'ici aujourd'hui que le serveur n'en prend plus. Attendez quelques heures, ou demandez à qui gère le serveur.",
  'So much was sent from here today that the server takes no more for now. Keep this, wait some hours, or ask who runs the server.':
    "Tant a été envoyé d'ici aujourd'hui que le serveur n'en prend plus pour le moment. Gardez ceci, attendez quelques heures, ou demandez à qui gère le serveur.",
  'So much was written to this record today that it takes no more for now. Keep this, and send it again in some hours.':
    "Tant a été écrit dans ce registre aujourd'hui qu'il n'en prend plus pour le moment. Gardez ceci, et renvoyez-le dans quelques heures.",
  'Too many wrong codes were typed here. Scan the square code at the panel, or wait some minutes.':
    'Trop de codes faux ont été tapés ici. Scannez le code carré à la centrale, ou attendez quelques minutes.',
  'Too many photos at once. Wait some seconds and send it again.':
    'Trop de photos à la fois. Attendez quelques secondes et renvoyez.',
  'Too much waits to be heard. Type it, or say it again in a moment.':
    "Trop attend d'être entendu. Tapez-le, ou redites-le dans un instant.",
  'Too many reports were asked for here. Wait until one is ready.':
    "Trop de rapports ont été demandés ici. Attendez que l'un soit prêt.",
  'This is being read by too many at once. Wait a few seconds and try again.':
    'Trop de personnes lisent ceci à la fois. Attendez quelques secondes et réessayez.',
  'Too much to say at once. Wait a second.': 'Trop à dire à la fois. Attendez une seconde.',
  'At most {n} bytes.': 'Au plus {n} octets.',
  'At most {n} characters.': 'Au plus {n} caractères.',
};
