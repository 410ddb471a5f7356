import type { Sentences } from '../translate.ts';

export const PAGES: Sentences = {
  'This link is not complete': 'Este enlace no está completo',
  'There is no such page': 'No existe esa página',
  'Part of the address may be missing. A link to join ends in six letters and digits.':
    'Puede faltar parte de la dirección. Un enlace para unirse termina en seis letras y cifras.',
  'To the start': 'Al inicio',
  Loading: 'Cargando',
  'This page did not load': 'Esta página no se cargó',
  'The link to the server failed, or the server has a new version. Nothing you entered is lost.':
    'Falló la conexión con el servidor, o el servidor tiene otra versión. No se pierde nada de lo escrito.',
  'Try again': 'Intentar otra vez',
  'Load the page again': 'Cargar la página otra vez',
  'Jobs this phone was in': 'Trabajos en los que estuvo este teléfono',
  'Read the record': 'Leer el registro',
  'Only the phone that opened the job has the key of its record.':
    'Solo el teléfono que abrió el trabajo tiene la llave de su registro.',
  Forget: 'Olvidar',
  'Forget: {x}': 'Olvidar: {x}',
  'Yes, forget it': 'Sí, olvidarlo',
  'Yes, forget it: {x}': 'Sí, olvidarlo: {x}',
  'The record stays on the server. Its key on this phone goes, and cannot be brought back here.':
    'El registro queda en el servidor. Su llave en este teléfono se borra, y aquí no se puede recuperar.',
  'Not accepted': 'No aceptado',
  'Accepted, not signed': 'Aceptado, sin firmar',
  Signed: 'Firmado',
  '{state}, as last seen here on {x}.': '{state}, visto aquí por última vez el {x}.',
  'A job on this phone': 'Un trabajo en este teléfono',
  'The job continues where it stopped.': 'El trabajo sigue donde se paró.',
  'The record stays. To come back, this phone needs a new code.':
    'El registro queda. Para volver, este teléfono necesita un código nuevo.',
  '{n} pair in trouble, as seen here {when}': '{n} pareja con problemas, vista aquí {when}',
  '{n} pairs in trouble, as seen here {when}': '{n} parejas con problemas, vistas aquí {when}',
  '{n} pair': '{n} pareja',
  '{n} pairs': '{n} parejas',
  'A code has {n} letters and digits, never 0, O, 1, I or L. Check it again.':
    'Un código tiene {n} letras y cifras, nunca 0, O, 1, I ni L. Revíselo.',
  'Joining failed: {why}': 'No se pudo unir: {why}',
  'Waiting for the {seat} phone': 'Esperando el teléfono: {seat}',
  "To the site's board": 'Al tablero de la obra',
  'For a supervisor: watch, read only': 'Para un supervisor: mirar, solo leer',
  'Link to watch': 'Enlace para mirar',
  'The chart begins with the first turn that was read.': 'El gráfico empieza con el primer giro leído.',
  'No readings while this adjuster was turned since the last aim by eye.':
    'Sin lecturas de este tornillo desde que se apuntó a ojo por última vez.',
  'No readings while this adjuster was turned.': 'Sin lecturas mientras se giró este tornillo.',
  '{n} readings from before the last aim by eye are not shown.':
    '{n} lecturas de antes de apuntar a ojo por última vez no se muestran.',
  Passphrase: 'Contraseña',
  'Of whoever runs this server.': 'De quien lleva este servidor.',
  'Whoever runs this server asks for a passphrase before a site or a job is opened.':
    'Quien lleva este servidor pide una contraseña para abrir una obra o un trabajo.',
  'This is not the passphrase. Check it again.': 'Esta no es la contraseña. Revísela.',
  'You are': 'Usted es',
  'Somebody else': 'Otra persona',
  "At the desk: open the site's board, then this pair.":
    'En el escritorio: abra el tablero de la obra, luego esta pareja.',
  'Write down how it was settled': 'Anotar cómo se resolvió',
  'The person responsible for this pair reads the record and signs it, with name and role.':
    'La persona responsable de esta pareja lee el registro y lo firma, con nombre y función.',
  'Read the record and sign it': 'Leer el registro y firmarlo',
  'Square code of the join link': 'Código cuadrado del enlace',
  'This phone is not at the panel': 'Este teléfono no está en la central',
  'This phone is not at the emitter': 'Este teléfono no está en el emisor',
  'Get a join code from the other phone of the crew, or scan its square code.':
    'Pida un código al otro teléfono del equipo, o escanee su código cuadrado.',
  'Enter a code': 'Introducir un código',
  'The link has ended': 'La conexión ha terminado',
  'Connect again': 'Conectar de nuevo',
  'Open in another window': 'Abierto en otra ventana',
  'This seat is open in a newer window or tab of this phone.':
    'Este puesto está abierto en una ventana o pestaña más nueva de este teléfono.',
  'Use it here': 'Usarlo aquí',
  'Another phone has this seat now': 'Otro teléfono tiene ahora este puesto',
  'To come back, ask the other phone of the crew for a new code.':
    'Para volver, pida un código nuevo al otro teléfono del equipo.',
  'This server does not know the job': 'Este servidor no conoce el trabajo',
  'It may have been opened on another server. Open a new job, or ask for a new code.':
    'Quizá se abrió en otro servidor. Abra un trabajo nuevo, o pida un código nuevo.',
  'This page is out of date': 'Esta página es antigua',
  'Nothing that you sent is lost.': 'Nada de lo enviado se pierde.',
  'The server has less than this phone has seen': 'El servidor tiene menos de lo que este teléfono vio',
  'Its data may be an older copy. Stop the work and tell the supervisor. To continue from what the server has, load the page again.':
    'Sus datos pueden ser una copia antigua. Pare el trabajo y avise al supervisor. Para seguir con lo que tiene el servidor, cargue la página otra vez.',
  'Continue with the server': 'Seguir con el servidor',
  'This browser keeps nothing. Do not close this page, and do not load it again.':
    'Este navegador no guarda nada. No cierre esta página ni la cargue otra vez.',
  'Emitter phone: {what}': 'Teléfono del emisor: {what}',
  'Reading the {what}': 'Leyendo: {what}',
  'The {what} could not be read': 'No se pudo leer: {what}',
  'the log': 'el registro',
  job: 'trabajo',
  record: 'registro',
  site: 'obra',
  'The pages are not built yet': 'Las páginas aún no están hechas',
  'Run "npm run build" on the server, then load this page again.':
    'Ejecute "npm run build" en el servidor, luego cargue esta página otra vez.',
  'There is nothing here': 'Aquí no hay nada',
  'Scan the code again, or begin at the start.': 'Escanee el código otra vez, o empiece por el inicio.',
  'Go to the start': 'Ir al inicio',
  'This server does not know that name': 'Este servidor no conoce ese nombre',
  'Open it by an address that it printed when it started. If the name in the address bar is right, whoever runs the server can add it with --name.':
    'Ábralo con una dirección que mostró al arrancar. Si el nombre es correcto, quien lleva el servidor puede añadirlo con --name.',
};
