import type { Sentences } from '../translate.ts';

export const KEYS: Sentences = {
  'The key of this phone was taken away by the panel or the desk. What the server had acknowledged is in the record; what still waits here was not sent.':
    'La central o la oficina retiró la llave de este teléfono. Lo que el servidor había confirmado está en el registro; lo que aún espera aquí no se envió.',
  'Only the panel phone and the desk see and change who has a key.':
    'Solo el teléfono de la central y la oficina ven y cambian quién tiene una llave.',
  'There is no such key, or it was taken away before.': 'No existe esa llave, o ya se retiró antes.',
  'A phone cannot take its own key away. Leave the job instead.':
    'Un teléfono no puede retirar su propia llave. Deje el trabajo.',
  'The link of the desk is only exchanged for another one: give "next".':
    'El enlace de la oficina solo se cambia por otro: dé "next".',
  'Only links are exchanged. Whoever is to have a seat joins with a code.':
    'Solo se cambian enlaces. Quien deba tener un puesto se une con un código.',
  'Panel phone': 'Teléfono de la central',
  'Emitter phone': 'Teléfono del emisor',
  'Link of the desk': 'Enlace de la oficina',
  '{what}: its key was taken away': '{what}: se retiró su llave',
  'Who has a key': 'Quién tiene una llave',
  Since: 'Desde',
  'Connected now': 'Conectado ahora',
  'Not used since the server started': 'Sin uso desde que arrancó el servidor',
  'Last used': 'Último uso',
  'This phone': 'Este teléfono',
  'The old link then opens nothing.': 'El enlace viejo ya no abre nada.',
  'That phone is told, and loses its seat at once.':
    'Se avisa a ese teléfono, que pierde su puesto enseguida.',
  'Yes, change this link': 'Sí, cambiar este enlace',
  'Yes, take this key away': 'Sí, retirar esta llave',
  'Change the link': 'Cambiar el enlace',
  'Take this key away': 'Retirar esta llave',
  'This key was taken away': 'Esta llave se retiró',
  'To come back, ask the panel or the desk for a new code.':
    'Para volver, pida un código nuevo a la central o a la oficina.',
  'This was not sent. Tell it to your colleague, or write it down:':
    'Esto no se envió. Dígaselo a su compañero o anótelo:',
};
