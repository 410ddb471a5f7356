import type { Sentences } from '../translate.ts';

/** The phone that watches the meter. */
export const CAMERA: Sentences = {
  'The phone at the panel reads the meter now.': "Le téléphone à la centrale lit maintenant l'appareil.",
  'The phone at the panel has lost the meter: it was moved.':
    "Le téléphone à la centrale a perdu l'appareil: il a été bougé.",
  'The phone at the panel cannot see the meter: it is too dark.':
    "Le téléphone à la centrale ne voit pas l'appareil: il fait trop sombre.",
  'The phone at the panel cannot read the meter.': "Le téléphone à la centrale ne peut pas lire l'appareil.",
  'The battery of the phone at the panel is low.': 'La batterie du téléphone à la centrale est faible.',
  'The phone at the panel has stopped reading the meter.':
    "Le téléphone à la centrale ne lit plus l'appareil.",
  '{value} (read by camera, {n} frames, {n1} % sure)': '{value} (lu par caméra, {n} images, sûr à {n1} %)',
  'This phone watches the meter': "Ce téléphone surveille l'appareil",
  'Prop the phone so that it stands by itself and sees the number large and straight.':
    "Calez le téléphone pour qu'il tienne seul et voie le nombre grand et droit.",
  'Draw a box round the number, close, with all its places in it: also those that are blank now. Leave out the unit.':
    "Tracez un cadre serré autour du nombre, avec tous ses chiffres: aussi ceux qui sont vides maintenant. Laissez l'unité dehors.",
  'The number is too small in the picture. Bring the phone closer.':
    "Le nombre est trop petit dans l'image. Rapprochez le téléphone.",
  'It reads no number yet. Bring the phone closer, turn it out of the glare, or draw the box again.':
    'Il ne lit pas encore de nombre. Rapprochez le téléphone, évitez le reflet, ou retracez le cadre.',
  'The reader is loading.': 'Le lecteur se charge.',
  'The box round the number. The arrow keys move it; with Shift they change its size.':
    'Le cadre autour du nombre. Les flèches le déplacent; avec Maj elles changent sa taille.',
  'Yes, the meter shows {value}': "Oui, l'appareil affiche {value}",
  'Is it right? Compare it with the meter, point and sign too. Not for figures whose zero has a dot or a stroke in it: it may take them for an eight.':
    "Est-ce juste? Comparez avec l'appareil, virgule et signe aussi. Pas pour des chiffres dont le zéro a un point ou une barre: il peut être pris pour un huit.",
  'This number is not on the scale of the meter that the job was opened with.':
    "Ce nombre n'est pas sur l'échelle de l'appareil avec lequel le travail a été ouvert.",
  'Sees it': 'Le voit',
  'Waits: it changes': 'Attend: ça change',
  'Moved!': 'Bougé!',
  'Too dark!': 'Trop sombre!',
  'Cannot read it!': 'Illisible!',
  'Put the phone back, or draw the box again. Nothing is read until then.':
    "Remettez le téléphone, ou retracez le cadre. Rien n'est lu d'ici là.",
  'Give the display light, or wake it. Nothing is read until then.':
    "Éclairez l'affichage, ou réveillez-le. Rien n'est lu d'ici là.",
  'Look for glare, for something in the way, and at the display itself. Nothing is read until then.':
    "Cherchez un reflet, quelque chose devant, et regardez l'affichage lui-même. Rien n'est lu d'ici là.",
  'Last told: {value}, {n}': 'Dernier dit: {value}, {n}',
  'It tells the number each time it is asked for. Nothing was asked for yet.':
    "Il dit le nombre chaque fois qu'on le demande. Rien n'a encore été demandé.",
  'The phone lets its screen go dark: charge it, or end its power saving.':
    "Le téléphone laisse son écran s'éteindre: chargez-le, ou arrêtez l'économie d'énergie.",
  'This browser cannot keep the screen on: set it in the phone so that it stays on.':
    "Ce navigateur ne peut pas garder l'écran allumé: réglez le téléphone pour qu'il le reste.",
  'The battery is low: plug the phone in.': 'La batterie est faible: branchez le téléphone.',
  'Browsers allow the camera only on a secure page. The page /trust of this server says how to turn it on.':
    "Les navigateurs ne permettent la caméra que sur une page sûre. La page /trust de ce serveur dit comment l'activer.",
  "The camera is not allowed. Allow it for this page in the browser's site settings.":
    "La caméra n'est pas autorisée. Autorisez-la pour cette page dans les réglages du navigateur.",
  'This device has no camera.': "Cet appareil n'a pas de caméra.",
  'Another app is using the camera. Close it and try again.':
    'Une autre application utilise la caméra. Fermez-la et réessayez.',
  'The camera could not be opened: {x}.': "La caméra n'a pas pu être ouverte: {x}.",
  'The reader of the display does not work: {x}.': "Le lecteur de l'affichage ne marche pas: {x}.",
  'Draw the box again': 'Retracer le cadre',
  'Stop watching': 'Arrêter la surveillance',
  'Back to the panel': 'Retour à la centrale',
};
