import type { Sentences } from '../translate.ts';

export const ADMISSION: Sentences = {
  'No code? Ask the panel': '¿Sin código? Pregunte a la central',
  'Ask the panel': 'Preguntar a la central',
  'Job word': 'Palabra del trabajo',
  'The panel phone shows it below its code. The person there then says yes or no.':
    'El teléfono de la central la muestra debajo de su código. La persona de allí dirá sí o no.',
  Asking: 'Preguntando',
  'Ask to come in': 'Pedir entrar',
  'I have a code': 'Tengo un código',
  'The panel is asked': 'Se pregunta a la central',
  'The panel phone shows the same word and number. Tell the person there what you see.':
    'El teléfono de la central muestra la misma palabra y el mismo número. Diga a la persona de allí lo que usted ve.',
  'No link to the server. This page goes on trying.':
    'Sin conexión con el servidor. Esta página lo sigue intentando.',
  'Waiting for yes or no. Keep this page open.': 'Esperando sí o no. Deje esta página abierta.',
  'The panel said no. Ask only if this is the emitter phone of that job: call the person at the panel.':
    'La central dijo que no. Pregunte solo si este es el teléfono del emisor de ese trabajo: llame a la persona de la central.',
  'Nobody at the panel answered in time. Call the person there, then ask again.':
    'Nadie en la central respondió a tiempo. Llame a la persona de allí y pregunte otra vez.',
  'Is this your emitter?': '¿Es este su emisor?',
  "Yes only if your colleague's phone shows the same word and number.":
    'Sí solo si el teléfono de su compañero muestra la misma palabra y el mismo número.',
  'The phone that was at the emitter before loses its seat.':
    'El teléfono que estaba antes en el emisor pierde su puesto.',
  'Yes, let it in': 'Sí, que entre',
  'Without the code: the other phone asks the panel, with the job word':
    'Sin el código: el otro teléfono pregunta a la central, con la palabra del trabajo',
  'A job word is a word of the radio and three figures, as in KILO 417.':
    'La palabra del trabajo es una palabra de la radio y tres cifras, como KILO 417.',
  'The panel let a phone in that showed {x}': 'La central dejó entrar a un teléfono que mostraba {x}',
  'The panel turned a phone away that showed {x}': 'La central rechazó a un teléfono que mostraba {x}',
};
