import type { Sentences } from '../translate.ts';

export const VOICE: Sentences = {
  'The bracket is loose on its upper bolt.': 'El soporte está flojo en su tornillo superior.',
  'Speech on this phone is off. Turn it on': 'La voz en este teléfono está apagada. Encenderla',
  'Speech on this phone is loading': 'La voz en este teléfono se está cargando',
  'Speech on this phone is on. Turn it off': 'La voz en este teléfono está encendida. Apagarla',
  'While there is no link, this phone then hears you itself, and keeps your words to send later.':
    'Sin conexión, este teléfono le oye él mismo y guarda sus palabras para enviarlas después.',
  'The microphone is off: this page came over plain http. Type instead, or':
    'El micrófono está apagado: esta página vino por http simple. Escriba, o',
  'turn it on': 'encenderlo',
  'Too loud: hold the phone further away.': 'Demasiado fuerte: aleje el teléfono.',
  'Too loud here: type the numbers.': 'Demasiado ruido aquí: escriba los números.',
  'Opening the microphone': 'Abriendo el micrófono',
  'Hands-free: just speak. Tap to stop': 'Manos libres: hable. Tocar para parar',
  'Hearing you': 'Le oye',
  'Listening. Tap to send': 'Escuchando. Tocar para enviar',
  'Listening. Let go to send': 'Escuchando. Soltar para enviar',
  'Turning it into words': 'Convirtiéndolo en palabras',
  'No words were heard. Say it again, or type it.': 'No se oyeron palabras. Repita, o escriba.',
  'There is no link now. Type it, or turn on speech on this phone in the menu: your words are kept and sent later.':
    'Ahora no hay conexión. Escriba, o encienda la voz de este teléfono en el menú: sus palabras se guardan y se envían después.',
  'The link was lost. Say it again when it is back, or type it: typed words are kept.':
    'Se perdió la conexión. Repita cuando vuelva, o escriba: lo escrito se guarda.',
  'The speech model could not be loaded. Turn it on again when there is a link, or type instead.':
    'No se pudo cargar el modelo de voz. Enciéndalo otra vez cuando haya conexión, o escriba.',
  'Talking could not be loaded. Try again when there is a link, or type instead.':
    'No se pudo cargar la función de hablar. Inténtelo otra vez cuando haya conexión, o escriba.',
  'Hands-free talk stopped: {why}': 'Manos libres parado: {why}',
  'This phone is too slow for it.': 'Este teléfono es demasiado lento para eso.',
  'the voice detector gave no answer': 'el detector de voz no respondió',
  'the speech model gave no letters': 'el modelo de voz no dio letras',
  'the speech model is not available: {why}': 'el modelo de voz no está disponible: {why}',
  'The microphone gives no sound. Close other apps that use it, then try again, or type instead.':
    'El micrófono no da sonido. Cierre otras aplicaciones que lo usen y repita, o escriba.',
  'Browsers allow the microphone only on a secure page. Type instead. The page /trust of this server says how to turn it on.':
    'Los navegadores solo permiten el micrófono en una página segura. Escriba. La página /trust de este servidor dice cómo encenderlo.',
  "The microphone is not allowed. Allow it for this page in the browser's site settings, or type instead.":
    'El micrófono no está permitido. Permítalo para esta página en los ajustes del navegador, o escriba.',
  'This device has no microphone. Type instead.': 'Este aparato no tiene micrófono. Escriba.',
  'Another app is using the microphone. Close it and try again, or type instead.':
    'Otra aplicación usa el micrófono. Ciérrela y repita, o escriba.',
  'The microphone could not be opened: {x}. Type instead.': 'No se pudo abrir el micrófono: {x}. Escriba.',
  'There is no speech engine here. Type it.': 'Aquí no hay reconocimiento de voz. Escriba.',
  'Sound must come in whole samples of two bytes.': 'El sonido debe llegar en muestras enteras de dos bytes.',
  'Sound comes too fast. Say it again.': 'El sonido llega demasiado rápido. Repita.',
  'No such talk is open here. Say it again.': 'Aquí no hay ninguna conversación abierta así. Repita.',
  'Read the screen.': 'Lea la pantalla.',
  'This server was started without a voice. {more}': 'Este servidor se arrancó sin voz. {more}',
  'There is nothing to say in this text.': 'En este texto no hay nada que decir.',
  'This phone keeps no copy of the pages: they came over plain http, or under a certificate that it does not trust. Without a link, do not load this page again: it would not open.':
    'Este teléfono no guarda copia de las páginas: vinieron por http simple, o con un certificado en el que no confía. Sin conexión, no cargue esta página otra vez: no se abriría.',
  'A new version of this page is here. It waits until no job is open on this phone: then the start page takes it.':
    'Hay una nueva versión de esta página. Espera a que no haya ningún trabajo abierto en este teléfono: entonces la toma la página de inicio.',
  'The speech model is on this phone.': 'El modelo de voz está en este teléfono.',
  'The speech model is not on this phone yet. It is fetched once, about {n} MB, while there is a link.':
    'El modelo de voz aún no está en este teléfono. Se descarga una vez, unos {n} MB, mientras haya conexión.',
};
