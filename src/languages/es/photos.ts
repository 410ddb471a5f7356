import type { Sentences } from '../translate.ts';

export const PHOTOS: Sentences = {
  'What does it show?': '¿Qué muestra?',
  'In your words, if you like': 'Con sus palabras, si quiere',
  'Keep it': 'Guardarla',
  Label: 'Etiqueta',
  Mounting: 'Montaje',
  'Path of the beam': 'Camino del haz',
  'Photo, {what}': 'Foto, {what}',
  'Photo, {what}: {x}': 'Foto, {what}: {x}',
  'The name in entry {n} was forgotten: {x}': 'El nombre de la entrada {n} fue olvidado: {x}',
  'The names in {n} entries were forgotten: {x}': 'Los nombres de {n} entradas fueron olvidados: {x}',
  'Photo of entry {n} removed: {x}': 'Foto de la entrada {n} quitada: {x}',
  '{n} MB': '{n} MB',
  'The record of a visit holds at most {n} photos, {size} together. Remove one that is not needed.':
    'El registro de una visita admite como mucho {n} fotos, {size} en total. Quite una que no haga falta.',
  'A picture may hold at most {n} kB. Take the photo with the button of the page, which makes it small.':
    'Una imagen puede tener como mucho {n} kB. Haga la foto con el botón de la página, que la reduce.',
  'This job has not begun. Nothing was kept.': 'Este trabajo no ha empezado. No se guardó nada.',
  'There is no such photo in this record. Nothing was changed.':
    'No hay tal foto en este registro. No se cambió nada.',
  'The picture was removed. Its entry stays in the record.':
    'La imagen se quitó. Su entrada queda en el registro.',
  'Only who took this photo, or the desk, can remove it.':
    'Solo quien hizo esta foto, o el escritorio, puede quitarla.',
  'This record is signed. Its photos can be removed at the desk only.':
    'Este registro está firmado. Sus fotos solo se pueden quitar en el escritorio.',
  'The picture is not on the server, or is not the one that was taken.':
    'La imagen no está en el servidor, o no es la que se tomó.',
  'PICTURE LOST: it is not on the server, or is not the one that was taken.':
    'IMAGEN PERDIDA: no está en el servidor, o no es la que se tomó.',
  'This is not a JPEG picture. Take the photo with the button of the page.':
    'Esto no es una imagen JPEG. Haga la foto con el botón de la página.',
  'The picture is not whole. Send it again.': 'La imagen no está entera. Envíela otra vez.',
  'The picture has notes of the camera in it, such as the place. Take the photo with the button of the page, which leaves them out.':
    'La imagen lleva notas de la cámara, como el lugar. Haga la foto con el botón de la página, que las omite.',
  'The picture is in the colours of a printing press. Take the photo with the button of the page.':
    'La imagen está en colores de imprenta. Haga la foto con el botón de la página.',
  'A picture must be {n} to {n1} pixels wide and high.':
    'Una imagen debe tener de {n} a {n1} píxeles de ancho y alto.',
  Photos: 'Fotos',
  'Take a photo': 'Hacer una foto',
  'Choose a picture on this phone': 'Elegir una imagen de este teléfono',
  'Keep it for the record': 'Guardarla para el registro',
  'Do not keep it': 'No guardarla',
  'This file is no picture that this phone can open. Take or choose another.':
    'Este archivo no es una imagen que este teléfono pueda abrir. Haga o elija otra.',
  'No photos yet.': 'Aún no hay fotos.',
  'Labels, mountings, what the beam passes. No people: faces do not belong in the record.':
    'Etiquetas, montajes, lo que pasa el haz. Sin personas: las caras no van en el registro.',
  'Not sent yet. It goes when the link is back.': 'Sin enviar. Sale cuando vuelva la conexión.',
  'Not sent yet, and this browser keeps nothing: leave this page open until it is sent.':
    'Sin enviar, y este navegador no guarda nada: deje esta página abierta hasta que se envíe.',
  'Not taken into the record: {why}': 'No se tomó en el registro: {why}',
  'Throw it away': 'Tirarla',
  'Remove this photo': 'Quitar esta foto',
  'Why is it removed?': '¿Por qué se quita?',
  'The picture is deleted for good. The record keeps that there was one, and why it is gone.':
    'La imagen se borra para siempre. El registro conserva que la hubo, y por qué ya no está.',
  'This record is signed. A photo added now changes it: it must then be signed again.':
    'Este registro está firmado. Una foto añadida ahora lo cambia: habrá que firmarlo otra vez.',
  '{what}: {n} not sent yet': '{what}: {n} sin enviar',
  '{what}: removed ({x}), #{n}': '{what}: quitada ({x}), #{n}',
  'The pictures are left out of a report of so many photos. Make the report of this pair alone to have them.':
    'Con tantas fotos, el informe va sin imágenes. Haga el informe de esta pareja sola para tenerlas.',
  'Pictures are kept for a day on this server': 'Las imágenes se guardan un día en este servidor',
  'Pictures are kept for {n} days on this server': 'Las imágenes se guardan {n} días en este servidor',
  'Names are kept for a day on this server': 'Los nombres se guardan un día en este servidor',
  'Names are kept for {n} days on this server': 'Los nombres se guardan {n} días en este servidor',
};
