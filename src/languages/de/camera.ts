import type { Sentences } from '../translate.ts';

/** The phone that watches the meter. */
export const CAMERA: Sentences = {
  'The phone at the panel reads the meter now.': 'Das Telefon an der Zentrale liest jetzt das Messgerät ab.',
  'The phone at the panel has lost the meter: it was moved.':
    'Das Telefon an der Zentrale hat das Messgerät verloren: es wurde bewegt.',
  'The phone at the panel cannot see the meter: it is too dark.':
    'Das Telefon an der Zentrale sieht das Messgerät nicht: es ist zu dunkel.',
  'The phone at the panel cannot read the meter.':
    'Das Telefon an der Zentrale kann das Messgerät nicht ablesen.',
  'The battery of the phone at the panel is low.': 'Der Akku des Telefons an der Zentrale ist schwach.',
  'The phone at the panel has stopped reading the meter.':
    'Das Telefon an der Zentrale liest das Messgerät nicht mehr ab.',
  '{value} (read by camera, {n} frames, {n1} % sure)':
    '{value} (mit Kamera abgelesen, {n} Bilder, {n1} % sicher)',
  'This phone watches the meter': 'Dieses Telefon beobachtet das Messgerät',
  'Prop the phone so that it stands by itself and sees the number large and straight.':
    'Stellen Sie das Telefon so auf, dass es von selbst steht und die Zahl groß und gerade sieht.',
  'Draw a box round the number, close, with all its places in it: also those that are blank now. Leave out the unit.':
    'Ziehen Sie einen engen Rahmen um die Zahl, mit allen Stellen: auch denen, die jetzt leer sind. Lassen Sie die Einheit weg.',
  'The number is too small in the picture. Bring the phone closer.':
    'Die Zahl ist im Bild zu klein. Bringen Sie das Telefon näher heran.',
  'It reads no number yet. Bring the phone closer, turn it out of the glare, or draw the box again.':
    'Es liest noch keine Zahl. Bringen Sie das Telefon näher, drehen Sie es aus der Blendung, oder ziehen Sie den Rahmen neu.',
  'The reader is loading.': 'Der Leser lädt.',
  'The box round the number. The arrow keys move it; with Shift they change its size.':
    'Der Rahmen um die Zahl. Die Pfeiltasten bewegen ihn; mit Umschalt ändern sie seine Größe.',
  'Yes, the meter shows {value}': 'Ja, das Messgerät zeigt {value}',
  'Is it right? Compare it with the meter, point and sign too. Not for figures whose zero has a dot or a stroke in it: it may take them for an eight.':
    'Stimmt es? Vergleichen Sie mit dem Messgerät, auch Komma und Vorzeichen. Nicht für Ziffern, deren Null einen Punkt oder Strich hat: sie kann für eine Acht gehalten werden.',
  'This number is not on the scale of the meter that the job was opened with.':
    'Diese Zahl liegt nicht auf der Skala des Messgeräts, mit dem der Auftrag eröffnet wurde.',
  'Sees it': 'Sieht es',
  'Waits: it changes': 'Wartet: ändert sich',
  'Moved!': 'Bewegt!',
  'Too dark!': 'Zu dunkel!',
  'Cannot read it!': 'Nicht lesbar!',
  'Put the phone back, or draw the box again. Nothing is read until then.':
    'Stellen Sie das Telefon zurück, oder ziehen Sie den Rahmen neu. Bis dahin wird nichts abgelesen.',
  'Give the display light, or wake it. Nothing is read until then.':
    'Geben Sie der Anzeige Licht, oder wecken Sie sie. Bis dahin wird nichts abgelesen.',
  'Look for glare, for something in the way, and at the display itself. Nothing is read until then.':
    'Suchen Sie nach Blendung, nach etwas im Weg, und sehen Sie auf die Anzeige selbst. Bis dahin wird nichts abgelesen.',
  'Last told: {value}, {n}': 'Zuletzt gesagt: {value}, {n}',
  'It tells the number each time it is asked for. Nothing was asked for yet.':
    'Es sagt die Zahl jedes Mal, wenn sie verlangt wird. Noch wurde nichts verlangt.',
  'The phone lets its screen go dark: charge it, or end its power saving.':
    'Das Telefon lässt seinen Bildschirm dunkel werden: laden Sie es, oder beenden Sie das Stromsparen.',
  'This browser cannot keep the screen on: set it in the phone so that it stays on.':
    'Dieser Browser kann den Bildschirm nicht anlassen: stellen Sie es im Telefon so ein.',
  'The battery is low: plug the phone in.': 'Der Akku ist schwach: stecken Sie das Telefon ein.',
  'Browsers allow the camera only on a secure page. The page /trust of this server says how to turn it on.':
    'Browser erlauben die Kamera nur auf einer sicheren Seite. Die Seite /trust dieses Servers sagt, wie man sie einschaltet.',
  "The camera is not allowed. Allow it for this page in the browser's site settings.":
    'Die Kamera ist nicht erlaubt. Erlauben Sie sie für diese Seite in den Einstellungen des Browsers.',
  'This device has no camera.': 'Dieses Gerät hat keine Kamera.',
  'Another app is using the camera. Close it and try again.':
    'Eine andere App benutzt die Kamera. Schließen Sie sie, und versuchen Sie es noch einmal.',
  'The camera could not be opened: {x}.': 'Die Kamera ließ sich nicht öffnen: {x}.',
  'The reader of the display does not work: {x}.': 'Der Leser der Anzeige arbeitet nicht: {x}.',
  'Draw the box again': 'Rahmen neu ziehen',
  'Stop watching': 'Beobachten beenden',
  'Back to the panel': 'Zurück zur Zentrale',
};
