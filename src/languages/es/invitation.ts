import type { Sentences } from '../translate.ts';

export const INVITATION: Sentences = {
  'Code for the emitter phone': 'Código para el teléfono del emisor',
  'Code for the panel phone': 'Código para el teléfono de la central',
  'A code for the emitter phone': 'Un código para el teléfono del emisor',
  'A code for the panel phone': 'Un código para el teléfono de la central',
  'Link to join': 'Enlace para unirse',
  Share: 'Compartir',
  Copied: 'Copiado',
  'Asking for a code.': 'Pidiendo un código.',
  'It comes when there is a link.': 'Llega cuando haya conexión.',
  'Ask again': 'Pedir de nuevo',
  'For one phone, once. Valid for {n} more minutes.': 'Para un teléfono, una vez. Válido {n} minutos más.',
  'For one phone, once. Valid for one more minute.': 'Para un teléfono, una vez. Válido un minuto más.',
  'By name, where a device finds it:': 'Por su nombre, si el dispositivo lo encuentra:',
  'This page was opened as {x}, which only this device can reach. Open it at the network address that the server prints. Then the other phone can join.':
    'Esta página se abrió como {x}, a la que solo llega este aparato. Ábrala en la dirección de red que muestra el servidor. Así podrá unirse el otro teléfono.',
};
