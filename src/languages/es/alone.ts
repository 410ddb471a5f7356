import type { Sentences } from '../translate.ts';

export const ALONE: Sentences = {
  'I am alone': 'Estoy solo',
  'You do both: with a second phone by the panel, by walking to it, or by an indicator that you see from the ladder.':
    'Usted hace ambas cosas: con un segundo teléfono en la central, yendo hasta ella, o por un indicador que ve desde la escalera.',
  'One person alone': 'Una persona sola',
  'Where the rules of the site or the maker ask for two people, this is not allowed. Ask before you begin.':
    'Donde las reglas del lugar o del fabricante piden dos personas, esto no está permitido. Pregunte antes de empezar.',
  'What you need': 'Qué necesita',
  'How it goes': 'Cómo se hace',
  'What its evidence is worth': 'Qué vale la prueba',
  'A second phone watches the meter': 'Un segundo teléfono vigila el medidor',
  'Two phones, and something to prop one of them before the display. The display shows a number.':
    'Dos teléfonos, y algo para apoyar uno delante de la pantalla. La pantalla muestra un número.',
  'At the panel: open the job on the phone that stays there.':
    'En la central: abra el trabajo en el teléfono que se queda allí.',
  'Scan its square code with the phone that you carry.':
    'Escanee su código cuadrado con el teléfono que lleva.',
  'Prop the first phone, draw the box round the number, and say once that it reads it right.':
    'Apoye el primer teléfono, dibuje el recuadro alrededor del número y confirme una vez que lo lee bien.',
  'Climb. From here on nobody touches the propped phone. The phone that you carry speaks each order.':
    'Suba. Desde aquí nadie toca el teléfono apoyado. El teléfono que lleva dice cada orden.',
  'The same as with two people: every number was on the display when it was taken. The record names the camera beside each, and how sure it was.':
    'Lo mismo que con dos personas: cada número estaba en la pantalla cuando se tomó. El registro nombra la cámara junto a cada uno, y lo segura que estaba.',
  'Begin with two phones': 'Empezar con dos teléfonos',
  'You walk to the meter': 'Usted va hasta el medidor',
  'This phone only. A way between ladder and meter that you can walk about {n} times. The gain is set beside the meter.':
    'Este teléfono solamente. Un camino entre escalera y medidor que pueda recorrer unas {n} veces. La ganancia se ajusta junto al medidor.',
  'Begin at the meter: read it first.': 'Empiece en el medidor: léalo primero.',
  'Do what it says at the emitter, turn by turn, and say "done" each time.':
    'Haga lo que dice en el emisor, giro a giro, y diga «hecho» cada vez.',
  'Go to the meter. Say or type the number.': 'Vaya al medidor. Diga o escriba el número.',
  'Before each trip it tells you its plan: how many turns, and when the card goes up. It keeps the count.':
    'Antes de cada viaje le dice el plan: cuántos giros, y cuándo se pone la tarjeta. Lleva la cuenta.',
  'Both sides of each peak, the blocking check, and a number that holds, with fewer places read than with two people: the number at the peak must be what the others foretold. What the meter did while you were away from it, nobody saw.':
    'Los dos lados de cada máximo, la prueba de bloqueo y un número que se mantiene, con menos lugares leídos que con dos personas: el número en el máximo tiene que ser el que los demás anunciaban. Lo que hizo el medidor mientras usted no estaba, nadie lo vio.',
  'Begin with one phone': 'Empezar con un teléfono',
  'Alone: tell somebody where you work, and when they will hear from you.':
    'Solo: diga a alguien dónde trabaja y cuándo tendrá noticias suyas.',
  'Nobody holds the ladder: tie it or foot it. Close the ground below it.':
    'Nadie sujeta la escalera: átela o asegúrela. Cierre el suelo debajo.',
  'One person alone: {way}.': 'Una persona sola: {way}.',
  'a second phone read the meter by its camera': 'un segundo teléfono leyó el medidor con su cámara',
  'the same person walked to the meter for each number': 'la misma persona fue al medidor para cada número',
  'Stay at the meter. Read it again.': 'Quédese en el medidor. Léalo otra vez.',
  'Stay: read the meter again': 'Quédese: lea otra vez',
  'Go to the meter. Say what it shows.': 'Vaya al medidor. Diga qué muestra.',
  'Go and read the meter': 'Vaya a leer el medidor',
  'Hands off. Now go to the meter.': 'Manos fuera. Ahora vaya al medidor.',
  'Hands off: go to the meter': 'Manos fuera: vaya al medidor',
  'Stay at the meter. Proving that it holds.': 'Quédese en el medidor. Se comprueba que se mantiene.',
  'Stay: proving steady': 'Quédese: comprobando',
  'Talk hands-free from the start: on': 'Hablar manos libres desde el principio: sí',
  'Talk hands-free from the start: off': 'Hablar manos libres desde el principio: no',
  'If nothing is heard from you': 'Si no se oye nada de usted',
  'The phone asks whether you are still there, then asks louder, then shows what you agreed with somebody. It cannot call by itself, and nobody is told unless a finger presses its key: it is no rescue.':
    'El teléfono pregunta si sigue ahí, luego pregunta más fuerte, luego muestra lo que acordó con alguien. No puede llamar por sí mismo, y nadie se entera si un dedo no pulsa su tecla: no es un rescate.',
  'Ask after so many minutes of silence': 'Preguntar tras tantos minutos de silencio',
  'What was agreed: who to call, and where you are': 'Lo acordado: a quién llamar y dónde está usted',
  'It is shown large on this phone, to whoever finds it.':
    'Se muestra grande en este teléfono, a quien lo encuentre.',
  'Number to call or text': 'Número para llamar o escribir',
  'Without a number of minutes it does not ask.': 'Sin minutos no pregunta.',
  'Kept on this phone.': 'Guardado en este teléfono.',
  'Still there? Say yes.': '¿Sigue ahí? Diga «sí».',
  'Are you well? Say yes, or touch the phone.': '¿Está bien? Diga «sí», o toque el teléfono.',
  'Nobody answers. Please look for the person on the ladder.':
    'Nadie contesta. Busque a la persona de la escalera.',
  'I am here': 'Estoy aquí',
  'Call {x}': 'Llamar al {x}',
  'Send a text': 'Enviar un mensaje',
  'Send by another app': 'Enviar con otra aplicación',
  'Between {n1} and {n2} minutes, or leave it empty.': 'Entre {n1} y {n2} minutos, o déjelo vacío.',
  'Trip {n}: {n1} turns, then the card, then the meter.':
    'Viaje {n}: {n1} giros, luego la tarjeta, luego el medidor.',
  'Trip {n}: this turn, then the card, then the meter.':
    'Viaje {n}: este giro, luego la tarjeta, luego el medidor.',
  'Trip {n}: {n1} turns, then the meter.': 'Viaje {n}: {n1} giros, luego el medidor.',
  'Then go to the meter: trip {n}.': 'Luego vaya al medidor: viaje {n}.',
  'Nothing was heard for {n} minutes from the person working alone at {x}.':
    'Desde hace {n} minutos no se oye nada de la persona que trabaja sola: {x}.',
  'Nothing was heard for {n} minutes from the person on the ladder at {x}.':
    'Durante {n} minutos no se oyó nada de la persona en la escalera en {x}.',
  'Still there? Nobody at the emitter answered for {n} minutes. Go and look.':
    '¿Sigue ahí? Nadie en el emisor contestó durante {n} minutos. Vaya a ver.',
  'Still there? The emitter answered again.': '¿Sigue ahí? El emisor ha vuelto a contestar.',
  'If nothing is heard from me': 'Si no se oye nada de mí',
  'Check of the person alone: nobody answered for {n} minutes.':
    'Control de la persona sola: nadie contesta desde hace {n} minutos.',
  'Check of the person alone: answered again.': 'Control de la persona sola: ha vuelto a contestar.',
};
