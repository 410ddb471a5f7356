import type { Sentences } from '../translate.ts';

/** Who watches, and what they say. */
export const WATCHING: Sentences = {
  '{x} is watching and says: {x1}': '{x} está mirando y dice: {x1}',
  '{x} watching': '{x} mirando',
  '{x} and {n} more watching': '{x} y {n} más mirando',
  'Say something to the crew': 'Decir algo al equipo',
  'Both phones show it and say it. It stays in the record, under your name.':
    'Los dos teléfonos lo muestran y lo dicen. Queda en el registro, con su nombre.',
  'Your remark': 'Su nota',
  'Send to the crew': 'Enviar al equipo',
  'One remark waits to be sent.': 'Una nota espera a ser enviada.',
  '{n} remarks wait to be sent.': '{n} notas esperan a ser enviadas.',
  'The remark is in the record.': 'La nota está en el registro.',
};
