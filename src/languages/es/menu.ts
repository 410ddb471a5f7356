import type { Sentences } from '../translate.ts';

export const MENU: Sentences = {
  'This job': 'Este trabajo',
  'Stop the job': 'Parar el trabajo',
  'At this phone': 'En este teléfono',
  '(name forgotten)': '(nombre olvidado)',
  'not named': 'sin nombre',
  'Give a name': 'Dar un nombre',
  'Somebody else is here now': 'Ahora hay otra persona',
  'Keep for the record': 'Guardar para el registro',
  'Remark for the record': 'Nota para el registro',
  'Keep the remark': 'Guardar la nota',
  Screen: 'Pantalla',
  'As the phone is set': 'Como está el teléfono',
  'In the sun': 'Al sol',
  'At night': 'De noche',
  '{theme}: chosen': '{theme}: elegido',
  'Voice of this phone': 'Voz de este teléfono',
  'Voice is on. Turn it off': 'La voz está encendida. Apagarla',
  'Voice is off. Turn it on': 'La voz está apagada. Encenderla',
  'Vibration is on. Turn it off': 'La vibración está encendida. Apagarla',
  'Vibration is off. Turn it on': 'La vibración está apagada. Encenderla',
  Pace: 'Ritmo',
  Loudness: 'Volumen',
  'Try the voice': 'Probar la voz',
  'This is how I speak.': 'Así hablo yo.',
  'Without a link': 'Sin conexión',
  'Another phone takes over': 'Otro teléfono toma el relevo',
  'This phone keeps the pages: they open without a link.':
    'Este teléfono guarda las páginas: se abren sin conexión.',
  'What you press or type is kept. It is sent when the link is back.':
    'Lo que pulse o escriba se guarda. Se envía cuando vuelva la conexión.',
  '1 thing that you said or pressed is kept here. It is sent when the link is back.':
    'Aquí se guarda 1 cosa que dijo o pulsó. Se envía cuando vuelva la conexión.',
  '{n} things that you said or pressed are kept here. It is sent when the link is back.':
    'Aquí se guardan {n} cosas que dijo o pulsó. Se envían cuando vuelva la conexión.',
  'This is the job as this phone last saw it. The other phone may have gone on since.':
    'Este es el trabajo como lo vio este teléfono por última vez. El otro puede haber seguido desde entonces.',
  'The record stays on the server. To come back, this phone needs a new code.':
    'El registro queda en el servidor. Para volver, este teléfono necesita un código nuevo.',
  'From now on the sound of what you say is kept with this record for {n} days. Both of you can turn it off in the menu.':
    'Desde ahora, el sonido de lo que dicen se guarda con este registro durante {n} días. Los dos pueden desactivarlo en el menú.',
  'The sound of what you say is no longer kept. What was kept before is deleted when its days are over.':
    'El sonido de lo que dicen ya no se guarda. Lo guardado antes se borra cuando se cumplen sus días.',
  'Your voice': 'Su voz',
  'If you are heard wrong: read ten digits in English, with a short pause after each. It takes fifteen seconds. Where they are heard badly, you are asked more often instead.':
    'Si se le entiende mal: lea diez cifras en inglés, con una pausa corta después de cada una. Son quince segundos. Si se oyen mal, se le pregunta más a menudo.',
  'Nothing of your voice is stored. What was learnt of it is gone when this page is closed.':
    'De su voz no se guarda nada. Lo aprendido de ella se pierde al cerrar esta página.',
  'Read ten digits': 'Leer diez cifras',
  'I have read them': 'Ya las he leído',
  'Listening to the ten digits': 'Escuchando las diez cifras',
  'These were not heard as ten digits. Read them again in this order, with a short pause after each, or go on without.':
    'No se oyeron como diez cifras. Léalas otra vez en este orden, con una pausa corta después de cada una, o siga sin ello.',
  'Your digits were heard well. Nothing changes.': 'Sus cifras se oyeron bien. No cambia nada.',
  'Some of your digits were heard badly. Until this page is closed you are asked more often.':
    'Algunas de sus cifras se oyeron mal. Hasta que se cierre esta página se le pregunta más a menudo.',
  'Forget my voice': 'Olvidar mi voz',
  'Sound of what is said': 'Sonido de lo que se dice',
  'Not kept: the server listens, writes down the words, and forgets the sound.':
    'No se guarda: el servidor escucha, escribe las palabras y olvida el sonido.',
  'Kept with the record for {n} days, so that a supervisor can listen to a reading that is doubted.':
    'Se guarda con el registro durante {n} días, para que un supervisor pueda escuchar una lectura dudosa.',
  'Keep the sound for {n} days': 'Guardar el sonido {n} días',
  'Do not keep the sound': 'No guardar el sonido',
  'What a phone hears by itself, without the server, is never kept.':
    'Lo que un teléfono oye por sí mismo, sin el servidor, no se guarda nunca.',
  Listen: 'Escuchar',
  'Practice keeps nothing, and no sound.': 'La práctica no guarda nada, tampoco sonido.',
  'From now on the sound of what you say is kept with this record for one day. Both of you can turn it off in the menu.':
    'Desde ahora el sonido de lo que dicen se guarda un día con este registro. Los dos pueden apagarlo en el menú.',
  'Listen to: {x}': 'Escuchar: {x}',
  'There is no sound with this entry.': 'No hay sonido con esta entrada.',
  'The sound is deleted: its days are over.': 'El sonido está borrado: sus días han pasado.',
  'The sound is not on the server, or is not the one that was kept.':
    'El sonido no está en el servidor, o no es el que se guardó.',
  '{x}, percent filter on': '{x}, por ciento, filtro puesto',
  'yes, let it in': 'sí, dejarlo entrar',
  'no, not our phone': 'no, no es nuestro teléfono',
  'a new join code': 'un código nuevo para unirse',
  'take back entry {n}': 'retirar la entrada {n}',
};
