import type { Sentences } from '../translate.ts';

export const PHOTOS: Sentences = {
  'What does it show?': 'Que montre-t-elle?',
  'In your words, if you like': 'Avec vos mots, si vous voulez',
  'Keep it': 'La garder',
  Label: 'Étiquette',
  Mounting: 'Fixation',
  'Path of the beam': 'Trajet du faisceau',
  'Photo, {what}': 'Photo, {what}',
  'Photo, {what}: {x}': 'Photo, {what}: {x}',
  'The name in entry {n} was forgotten: {x}': "Le nom de l'entrée {n} a été oublié: {x}",
  'The names in {n} entries were forgotten: {x}': 'Les noms de {n} entrées ont été oubliés: {x}',
  'Photo of entry {n} removed: {x}': "Photo de l'entrée {n} retirée: {x}",
  '{n} MB': '{n} Mo',
  'The record of a visit holds at most {n} photos, {size} together. Remove one that is not needed.':
    "Le registre d'une visite contient au plus {n} photos, {size} en tout. Retirez-en une inutile.",
  'A picture may hold at most {n} kB. Take the photo with the button of the page, which makes it small.':
    'Une image peut avoir au plus {n} ko. Prenez la photo avec le bouton de la page, qui la réduit.',
  'This job has not begun. Nothing was kept.': "Ce travail n'a pas commencé. Rien n'a été gardé.",
  'There is no such photo in this record. Nothing was changed.':
    "Cette photo n'est pas dans ce registre. Rien n'a été changé.",
  'The picture was removed. Its entry stays in the record.':
    "L'image a été retirée. Son entrée reste dans le registre.",
  'Only who took this photo, or the desk, can remove it.':
    'Seul qui a pris cette photo, ou le bureau, peut la retirer.',
  'This record is signed. Its photos can be removed at the desk only.':
    "Ce registre est signé. Ses photos ne peuvent être retirées qu'au bureau.",
  'The picture is not on the server, or is not the one that was taken.':
    "L'image n'est pas sur le serveur, ou n'est pas celle qui a été prise.",
  'PICTURE LOST: it is not on the server, or is not the one that was taken.':
    "IMAGE PERDUE: elle n'est pas sur le serveur, ou n'est pas celle qui a été prise.",
  'This is not a JPEG picture. Take the photo with the button of the page.':
    "Ce n'est pas une image JPEG. Prenez la photo avec le bouton de la page.",
  'The picture is not whole. Send it again.': "L'image n'est pas entière. Renvoyez-la.",
  'The picture has notes of the camera in it, such as the place. Take the photo with the button of the page, which leaves them out.':
    "L'image contient des notes de l'appareil photo, comme le lieu. Prenez la photo avec le bouton de la page, qui les omet.",
  'The picture is in the colours of a printing press. Take the photo with the button of the page.':
    "L'image est en couleurs d'imprimerie. Prenez la photo avec le bouton de la page.",
  'A picture must be {n} to {n1} pixels wide and high.':
    'Une image doit avoir de {n} à {n1} pixels de large et de haut.',
  Photos: 'Photos',
  'Take a photo': 'Prendre une photo',
  'Choose a picture on this phone': 'Choisir une image sur ce téléphone',
  'Keep it for the record': 'La garder pour le registre',
  'Do not keep it': 'Ne pas la garder',
  'This file is no picture that this phone can open. Take or choose another.':
    "Ce fichier n'est pas une image que ce téléphone peut ouvrir. Prenez ou choisissez-en une autre.",
  'No photos yet.': 'Pas encore de photos.',
  'Labels, mountings, what the beam passes. No people: faces do not belong in the record.':
    "Étiquettes, fixations, ce que longe le faisceau. Personne: les visages n'ont pas leur place dans le registre.",
  'Not sent yet. It goes when the link is back.': 'Pas encore envoyée. Elle part au retour de la liaison.',
  'Not sent yet, and this browser keeps nothing: leave this page open until it is sent.':
    "Pas encore envoyée, et ce navigateur ne garde rien: laissez cette page ouverte jusqu'à l'envoi.",
  'Not taken into the record: {why}': 'Pas prise dans le registre: {why}',
  'Throw it away': 'La jeter',
  'Remove this photo': 'Retirer cette photo',
  'Why is it removed?': 'Pourquoi la retirer?',
  'The picture is deleted for good. The record keeps that there was one, and why it is gone.':
    "L'image est effacée pour de bon. Le registre garde qu'il y en avait une, et pourquoi elle n'y est plus.",
  'This record is signed. A photo added now changes it: it must then be signed again.':
    'Ce registre est signé. Une photo ajoutée maintenant le change: il faudra le signer de nouveau.',
  '{what}: {n} not sent yet': '{what}: {n} pas encore envoyées',
  '{what}: removed ({x}), #{n}': '{what}: retirée ({x}), #{n}',
  'The pictures are left out of a report of so many photos. Make the report of this pair alone to have them.':
    'Avec tant de photos, le rapport est sans images. Faites le rapport de cette paire seule pour les avoir.',
  'Pictures are kept for a day on this server': 'Les images sont gardées un jour sur ce serveur',
  'Pictures are kept for {n} days on this server': 'Les images sont gardées {n} jours sur ce serveur',
  'Names are kept for a day on this server': 'Les noms sont gardés un jour sur ce serveur',
  'Names are kept for {n} days on this server': 'Les noms sont gardés {n} jours sur ce serveur',
};
