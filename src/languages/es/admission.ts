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
  'No panel shows this word now. Check it with the person at the panel: it changes when the server starts again.':
    'Ninguna central muestra ahora esta palabra. Compruébela con la persona de la central: cambia cuando el servidor arranca de nuevo.',
  'The panel phone of this job is not connected, so nobody can answer. Ask again when it is back.':
    'El teléfono de la central de este trabajo no está conectado, así que nadie puede responder. Pregunte otra vez cuando vuelva.',
  'Another phone asks at this moment. Wait until the panel has answered it, then ask again.':
    'Otro teléfono pregunta en este momento. Espere a que la central le responda y pregunte otra vez.',
  'Three questions in a row were not answered with yes, so the panel gets none for a quarter of an hour. Scan its square code, or type its code.':
    'Tres preguntas seguidas no recibieron un sí, así que la central no recibe ninguna durante un cuarto de hora. Escanee su código cuadrado o escriba su código.',
  'Too many questions came from here. Wait some minutes, or scan the square code at the panel.':
    'Llegaron demasiadas preguntas desde aquí. Espere unos minutos o escanee el código cuadrado en la central.',
  'The record of this job is signed, so nobody is let in by asking. The panel can still give a code.':
    'El registro de este trabajo está firmado, así que nadie entra preguntando. La central aún puede dar un código.',
  'That phone asks no longer. If it is yours, let it ask again.':
    'Ese teléfono ya no pregunta. Si es suyo, que pregunte otra vez.',
  'Only the panel phone answers who may come in.':
    'Solo el teléfono de la central responde quién puede entrar.',
  'The server does not know this question any more. Ask again.':
    'El servidor ya no conoce esta pregunta. Pregunte otra vez.',
  'yes, let it in': 'sí, que entre',
  'no, not our phone': 'no, no es nuestro teléfono',
  'Asking failed: {why}': 'No se pudo preguntar: {why}',
};
