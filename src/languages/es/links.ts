import type { Sentences } from '../translate.ts';

/** Links, codes and seats that let nobody in, and requests that failed. */
export const LINKS: Sentences = {
  'This link is not known here.': 'Este enlace no se conoce aquí.',
  'This link does not open a site, or it is not known here.':
    'Este enlace no abre una obra, o no se conoce aquí.',
  'This link opens a site, not a job.': 'Este enlace abre una obra, no un trabajo.',
  'This link is for watching. It can write remarks with a name, and nothing else.':
    'Este enlace es para mirar. Puede escribir notas con un nombre, y nada más.',
  'Only who watches puts a name to a remark. The name of a seat is given with "person".':
    'Solo quien mira pone un nombre a una nota. El nombre de un puesto se da con "person".',
  'Only the emitter phone says what it has shown.': 'Solo el teléfono del emisor dice lo que ha mostrado.',
  'This link is for reading. It cannot change the site.':
    'Este enlace es para leer. No puede cambiar la obra.',
  'A code is six letters and digits.': 'Un código son seis letras y cifras.',
  'This code is not known, was used before, or has expired. Ask for a new one.':
    'Este código no se conoce, ya se usó o ha caducado. Pida uno nuevo.',
  'Another phone has taken the panel seat.': 'Otro teléfono ha tomado el puesto de la central.',
  'Another phone has taken the emitter seat.': 'Otro teléfono ha tomado el puesto del emisor.',
  'The panel phone of this job is connected.': 'El teléfono de la central de este trabajo está conectado.',
  'The emitter phone of this job is connected.': 'El teléfono del emisor de este trabajo está conectado.',
  'Close it there first.': 'Ciérrelo allí primero.',
  'This phone opened a newer connection.': 'Este teléfono abrió una conexión más nueva.',
  'The server does not answer. Check that this device is on the site network. Then try again.':
    'El servidor no responde. Compruebe que este dispositivo está en la red de la obra. Luego inténtelo otra vez.',
  'The server has a newer version of this page. Load the page again: what you typed stays.':
    'El servidor tiene una versión más nueva de esta página. Cargue la página otra vez: lo que escribió se conserva.',
  "This page cannot read the server's answer. Load the page again.":
    'Esta página no puede leer la respuesta del servidor. Cargue la página otra vez.',
  "This page cannot read the server's answer ({n}). Load the page again.":
    'Esta página no puede leer la respuesta del servidor ({n}). Cargue la página otra vez.',
  'The request failed: {x}': 'La petición falló: {x}',
  'There is no such visit on this site.': 'No hay tal visita en esta obra.',
  'The link to the server is lost.': 'Se perdió la conexión con el servidor.',
  "The server's log of this job is not the one that this phone has seen.":
    'El registro de este trabajo en el servidor no es el que ha visto este teléfono.',
  'This page is too old for the server. Load it again.':
    'Esta página es demasiado vieja para el servidor. Cárguela otra vez.',
  'This page is newer than the server.': 'Esta página es más nueva que el servidor.',
  'This request comes from a page of another website.':
    'Esta petición viene de una página de otro sitio web.',
  'This is practice on a simulated pair: there is no record to print or to save.':
    'Esto es una práctica con una pareja simulada: no hay registro que imprimir ni guardar.',
  'There is no such report. Start it again.': 'No existe ese informe. Empiécelo otra vez.',
  'The speech model has no such file.': 'El modelo de voz no tiene ese archivo.',
  'it holds a character that nobody sees ({x}). Type it again.':
    'contiene un carácter que nadie ve ({x}). Escríbalo otra vez.',
  'The server is stopping. Nothing is lost: try again in a minute.':
    'El servidor se está parando. No se pierde nada: inténtelo otra vez en un minuto.',
  'The server is stopping. Keep your phone open: it goes on by itself.':
    'El servidor se está parando. Deje el teléfono abierto: sigue solo.',
  'The link needs a long key after the': 'El enlace necesita una clave larga después de',
  '. Ask the person who sent it to send all of it again. A site that this device knows also opens from the start page.':
    '. Pida a quien lo envió que lo mande entero otra vez. Una obra que este dispositivo conoce se abre también desde la página de inicio.',
  'Another phone has taken the {seat} seat.': 'Otro teléfono ha tomado el puesto: {seat}.',
};
