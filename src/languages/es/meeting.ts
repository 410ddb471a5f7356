import type { Sentences } from '../translate.ts';

/** Two phones that find each other without a server. */
export const MEETING: Sentences = {
  'The other phone, without a server': 'El otro teléfono, sin servidor',
  'Meet the other phone again': 'Volver a encontrar el otro teléfono',
  "Meet the panel's phone": 'Encontrar el teléfono de la central',
  "No server? Meet the panel's phone": '¿Sin servidor? Encontrar el teléfono de la central',
  'Both phones must be in the same Wi-Fi, or one in the hotspot of the other.':
    'Los dos teléfonos deben estar en la misma red wifi, o uno en la zona wifi del otro.',
  '1. Scan this with the other phone: with its camera app, or on its page for a code.':
    '1. Escanee esto con el otro teléfono: con su aplicación de cámara, o en su página para un código.',
  'Square code of this meeting': 'Código cuadrado de este encuentro',
  '2. The other phone shows a code then. Scan it here.':
    '2. El otro teléfono muestra entonces un código. Escanéelo aquí.',
  'Scan its code': 'Escanear su código',
  "1. Scan the code that the panel's phone shows.":
    '1. Escanee el código que muestra el teléfono de la central.',
  "2. Show this to the panel's phone. Stay on this page until the two have met.":
    '2. Muestre esto al teléfono de la central. Quédese en esta página hasta que los dos se hayan encontrado.',
  'Without a camera: as text': 'Sin cámara: como texto',
  'Text of this code': 'Texto de este código',
  Copy: 'Copiar',
  Copied: 'Copiado',
  'Text of its code': 'Texto de su código',
  'Use this text': 'Usar este texto',
  'Point the camera at the square code of the other phone.':
    'Apunte la cámara al código cuadrado del otro teléfono.',
  'Stop the camera': 'Parar la cámara',
  'Making the code': 'Preparando el código',
  'The phones look for each other.': 'Los teléfonos se buscan.',
  'The two phones have met': 'Los dos teléfonos se han encontrado',
  'The pages of the two phones are of different versions. Open both once where the server answers.':
    'Las páginas de los dos teléfonos son de versiones distintas. Abra las dos una vez donde responda el servidor.',
  'This is no code of a meeting. Scan the code that the other phone shows.':
    'Este no es un código de encuentro. Escanee el código que muestra el otro teléfono.',
  "This is the panel's own code. Scan the one that the other phone shows after it has scanned this one.":
    'Este es el código de la propia central. Escanee el que muestra el otro teléfono después de escanear este.',
  "This is a code of an emitter phone. Scan the one that the panel's phone shows.":
    'Este es el código de un teléfono del emisor. Escanee el que muestra el teléfono de la central.',
  'This code belongs to an earlier meeting. Begin again on both phones.':
    'Este código es de un encuentro anterior. Empiece de nuevo en los dos teléfonos.',
  'The two phones do not reach each other. Put both into the same Wi-Fi, or one into the hotspot of the other: a Wi-Fi for guests often keeps phones apart. Then begin again on both.':
    'Los dos teléfonos no se alcanzan. Póngalos en la misma red wifi, o uno en la zona wifi del otro: una wifi de invitados suele separar los teléfonos. Después empiece de nuevo en los dos.',
  'This browser cannot reach another phone without a server.':
    'Este navegador no puede alcanzar otro teléfono sin servidor.',
  'Begin the meeting again': 'Empezar de nuevo el encuentro',
  "The panel's phone is not reached. What you say is kept. Come back into its Wi-Fi; if no link comes, meet it again.":
    'No se alcanza el teléfono de la central. Lo que diga se guarda. Vuelva a su red wifi; si no hay conexión, encuéntrelo de nuevo.',
  "The panel's phone has brought the record to the server. To go on, join there with a code from the panel: nothing that you said is lost.":
    'El teléfono de la central ha llevado el registro al servidor. Para seguir, únase allí con un código de la central: no se pierde nada de lo que dijo.',
  'The record is at the server now': 'El registro está ahora en el servidor',
};
