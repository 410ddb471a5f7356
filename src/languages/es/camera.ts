import type { Sentences } from '../translate.ts';

/** The phone that watches the meter. */
export const CAMERA: Sentences = {
  'The phone at the panel reads the meter now.': 'El teléfono de la central lee ahora el medidor.',
  'The phone at the panel has lost the meter: it was moved.':
    'El teléfono de la central ha perdido el medidor: lo movieron.',
  'The phone at the panel cannot see the meter: it is too dark.':
    'El teléfono de la central no ve el medidor: está demasiado oscuro.',
  'The phone at the panel cannot read the meter.': 'El teléfono de la central no puede leer el medidor.',
  'The battery of the phone at the panel is low.': 'La batería del teléfono de la central está baja.',
  'The phone at the panel has stopped reading the meter.':
    'El teléfono de la central ha dejado de leer el medidor.',
  '{value} (read by camera, {n} frames, {n1} % sure)':
    '{value} (leído con la cámara, {n} imágenes, {n1} % seguro)',
  'This phone watches the meter': 'Este teléfono vigila el medidor',
  'Prop the phone so that it stands by itself and sees the number large and straight.':
    'Apoye el teléfono de modo que se sostenga solo y vea el número grande y recto.',
  'Draw a box round the number, close, with all its places in it: also those that are blank now. Leave out the unit.':
    'Dibuje un recuadro ajustado alrededor del número, con todas sus cifras: también las que ahora están vacías. Deje fuera la unidad.',
  'The number is too small in the picture. Bring the phone closer.':
    'El número es demasiado pequeño en la imagen. Acerque el teléfono.',
  'It reads no number yet. Bring the phone closer, turn it out of the glare, or draw the box again.':
    'Aún no lee ningún número. Acerque el teléfono, evite el reflejo o dibuje otra vez el recuadro.',
  'The reader is loading.': 'El lector se está cargando.',
  'The box round the number. The arrow keys move it; with Shift they change its size.':
    'El recuadro del número. Las flechas lo mueven; con Mayúsculas cambian su tamaño.',
  'Yes, the meter shows {value}': 'Sí, el medidor muestra {value}',
  'Is it right? Compare it with the meter, point and sign too. Not for figures whose zero has a dot or a stroke in it: it may take them for an eight.':
    '¿Es correcto? Compárelo con el medidor, también la coma y el signo. No vale para cifras cuyo cero lleva un punto o una raya: puede tomarlo por un ocho.',
  'This number is not on the scale of the meter that the job was opened with.':
    'Este número no está en la escala del medidor con que se abrió el trabajo.',
  'Sees it': 'Lo ve',
  'Waits: it changes': 'Espera: cambia',
  'Moved!': '¡Movido!',
  'Too dark!': '¡Muy oscuro!',
  'Cannot read it!': '¡No lo lee!',
  'Put the phone back, or draw the box again. Nothing is read until then.':
    'Vuelva a colocar el teléfono, o dibuje otra vez el recuadro. Hasta entonces no se lee nada.',
  'Give the display light, or wake it. Nothing is read until then.':
    'Ilumine la pantalla del medidor, o actívela. Hasta entonces no se lee nada.',
  'Look for glare, for something in the way, and at the display itself. Nothing is read until then.':
    'Busque reflejos, algo en medio, y mire la pantalla misma. Hasta entonces no se lee nada.',
  'Last told: {value}, {n}': 'Último dicho: {value}, {n}',
  'It tells the number each time it is asked for. Nothing was asked for yet.':
    'Dice el número cada vez que se le pide. Aún no se pidió nada.',
  'The phone lets its screen go dark: charge it, or end its power saving.':
    'El teléfono deja que se apague la pantalla: cárguelo, o desactive el ahorro de energía.',
  'This browser cannot keep the screen on: set it in the phone so that it stays on.':
    'Este navegador no puede mantener la pantalla encendida: ajústelo en el teléfono.',
  'The battery is low: plug the phone in.': 'La batería está baja: enchufe el teléfono.',
  'Browsers allow the camera only on a secure page. The page /trust of this server says how to turn it on.':
    'Los navegadores solo permiten la cámara en una página segura. La página /trust de este servidor dice cómo activarla.',
  "The camera is not allowed. Allow it for this page in the browser's site settings.":
    'La cámara no está permitida. Permítala para esta página en los ajustes del navegador.',
  'This device has no camera.': 'Este dispositivo no tiene cámara.',
  'Another app is using the camera. Close it and try again.':
    'Otra aplicación usa la cámara. Ciérrela e inténtelo otra vez.',
  'The camera could not be opened: {x}.': 'No se pudo abrir la cámara: {x}.',
  'The reader of the display does not work: {x}.': 'El lector de la pantalla no funciona: {x}.',
  'Draw the box again': 'Dibujar otra vez el recuadro',
  'Stop watching': 'Dejar de vigilar',
  'Back to the panel': 'Volver a la central',
};
