import type { Sentences } from '../translate.ts';

export const PHOTOS: Sentences = {
  'What does it show?': 'Was zeigt es?',
  'In your words, if you like': 'In Ihren Worten, wenn Sie möchten',
  'Keep it': 'Behalten',
  Label: 'Typenschild',
  Mounting: 'Montage',
  'Path of the beam': 'Weg des Strahls',
  'Photo, {what}': 'Foto, {what}',
  'Photo, {what}: {x}': 'Foto, {what}: {x}',
  'The name in entry {n} was forgotten: {x}': 'Der Name in Eintrag {n} wurde vergessen: {x}',
  'The names in {n} entries were forgotten: {x}': 'Die Namen in {n} Einträgen wurden vergessen: {x}',
  'Photo of entry {n} removed: {x}': 'Foto von Eintrag {n} entfernt: {x}',
  '{n} MB': '{n} MB',
  'The record of a visit holds at most {n} photos, {size} together. Remove one that is not needed.':
    'Das Protokoll eines Besuchs fasst höchstens {n} Fotos, zusammen {size}. Entfernen Sie eines, das nicht gebraucht wird.',
  'A picture may hold at most {n} kB. Take the photo with the button of the page, which makes it small.':
    'Ein Bild darf höchstens {n} kB haben. Machen Sie das Foto mit der Taste der Seite, die es verkleinert.',
  'This job has not begun. Nothing was kept.': 'Dieser Auftrag hat nicht begonnen. Nichts wurde aufbewahrt.',
  'There is no such photo in this record. Nothing was changed.':
    'Dieses Foto gibt es in diesem Protokoll nicht. Nichts wurde geändert.',
  'The picture was removed. Its entry stays in the record.':
    'Das Bild wurde entfernt. Sein Eintrag bleibt im Protokoll.',
  'Only who took this photo, or the desk, can remove it.':
    'Nur wer dieses Foto gemacht hat, oder der Schreibtisch, kann es entfernen.',
  'This record is signed. Its photos can be removed at the desk only.':
    'Dieses Protokoll ist unterschrieben. Seine Fotos können nur am Schreibtisch entfernt werden.',
  'The picture is not on the server, or is not the one that was taken.':
    'Das Bild ist nicht auf dem Server, oder es ist nicht das aufgenommene.',
  'PICTURE LOST: it is not on the server, or is not the one that was taken.':
    'BILD VERLOREN: es ist nicht auf dem Server, oder es ist nicht das aufgenommene.',
  'This is not a JPEG picture. Take the photo with the button of the page.':
    'Das ist kein JPEG-Bild. Machen Sie das Foto mit der Taste der Seite.',
  'The picture is not whole. Send it again.': 'Das Bild ist nicht vollständig. Senden Sie es noch einmal.',
  'The picture has notes of the camera in it, such as the place. Take the photo with the button of the page, which leaves them out.':
    'Das Bild enthält Angaben der Kamera, etwa den Ort. Machen Sie das Foto mit der Taste der Seite, die sie weglässt.',
  'The picture is in the colours of a printing press. Take the photo with the button of the page.':
    'Das Bild ist in Druckfarben. Machen Sie das Foto mit der Taste der Seite.',
  'A picture must be {n} to {n1} pixels wide and high.':
    'Ein Bild muss {n} bis {n1} Pixel breit und hoch sein.',
  Photos: 'Fotos',
  'Take a photo': 'Foto machen',
  'Choose a picture on this phone': 'Bild auf diesem Telefon wählen',
  'Keep it for the record': 'Für das Protokoll behalten',
  'Do not keep it': 'Nicht behalten',
  'This file is no picture that this phone can open. Take or choose another.':
    'Diese Datei ist kein Bild, das dieses Telefon öffnen kann. Machen oder wählen Sie ein anderes.',
  'No photos yet.': 'Noch keine Fotos.',
  'Labels, mountings, what the beam passes. No people: faces do not belong in the record.':
    'Schilder, Halterungen, woran der Strahl vorbeigeht. Keine Menschen: Gesichter gehören nicht ins Protokoll.',
  'Not sent yet. It goes when the link is back.':
    'Noch nicht gesendet. Es geht, wenn die Verbindung wieder da ist.',
  'Not sent yet, and this browser keeps nothing: leave this page open until it is sent.':
    'Noch nicht gesendet, und dieser Browser bewahrt nichts auf: lassen Sie diese Seite offen, bis es gesendet ist.',
  'Not taken into the record: {why}': 'Nicht ins Protokoll aufgenommen: {why}',
  'Throw it away': 'Wegwerfen',
  'Remove this photo': 'Dieses Foto entfernen',
  'Why is it removed?': 'Warum wird es entfernt?',
  'The picture is deleted for good. The record keeps that there was one, and why it is gone.':
    'Das Bild wird endgültig gelöscht. Das Protokoll behält, dass es eines gab und warum es weg ist.',
  'This record is signed. A photo added now changes it: it must then be signed again.':
    'Dieses Protokoll ist unterschrieben. Ein neues Foto ändert es: dann muss es neu unterschrieben werden.',
  '{what}: {n} not sent yet': '{what}: {n} noch nicht gesendet',
  '{what}: removed ({x}), #{n}': '{what}: entfernt ({x}), #{n}',
  'The pictures are left out of a report of so many photos. Make the report of this pair alone to have them.':
    'Bei so vielen Fotos fehlen die Bilder im Bericht. Machen Sie den Bericht dieses Paares allein, um sie zu haben.',
  'Pictures are kept for a day on this server': 'Bilder werden auf diesem Server einen Tag aufbewahrt',
  'Pictures are kept for {n} days on this server': 'Bilder werden auf diesem Server {n} Tage aufbewahrt',
  'Names are kept for a day on this server': 'Namen werden auf diesem Server einen Tag aufbewahrt',
  'Names are kept for {n} days on this server': 'Namen werden auf diesem Server {n} Tage aufbewahrt',
};
