import type { Sentences } from '../translate.ts';

export const KEYS: Sentences = {
  'The key of this phone was taken away by the panel or the desk. What the server had acknowledged is in the record; what still waits here was not sent.':
    'Die Zentrale oder das Büro hat diesem Telefon den Schlüssel genommen. Was der Server bestätigt hat, steht im Protokoll; was hier noch wartet, wurde nicht gesendet.',
  'Only the panel phone and the desk see and change who has a key.':
    'Nur das Telefon an der Zentrale und das Büro sehen und ändern, wer einen Schlüssel hat.',
  'There is no such key, or it was taken away before.':
    'Diesen Schlüssel gibt es nicht, oder er wurde schon genommen.',
  'A phone cannot take its own key away. Leave the job instead.':
    'Ein Telefon kann sich den eigenen Schlüssel nicht nehmen. Verlassen Sie den Auftrag.',
  'The link of the desk is only exchanged for another one: give "next".':
    'Der Link des Büros wird nur gegen einen anderen getauscht: "next" angeben.',
  'Only links are exchanged. Whoever is to have a seat joins with a code.':
    'Nur Links werden getauscht. Wer einen Platz bekommen soll, tritt mit einem Code bei.',
  'Panel phone': 'Telefon an der Zentrale',
  'Emitter phone': 'Telefon am Sender',
  'Link of the desk': 'Link des Büros',
  '{what}: its key was taken away': '{what}: der Schlüssel wurde genommen',
  'Who has a key': 'Wer einen Schlüssel hat',
  Since: 'Seit',
  'Connected now': 'Jetzt verbunden',
  'Not used since the server started': 'Nicht benutzt, seit der Server läuft',
  'Last used': 'Zuletzt benutzt',
  'This phone': 'Dieses Telefon',
  'The old link then opens nothing.': 'Der alte Link öffnet dann nichts mehr.',
  'That phone is told, and loses its seat at once.':
    'Dieses Telefon erfährt es und verliert sofort seinen Platz.',
  'Yes, change this link': 'Ja, diesen Link ändern',
  'Yes, take this key away': 'Ja, diesen Schlüssel nehmen',
  'Change the link': 'Link ändern',
  'Take this key away': 'Diesen Schlüssel nehmen',
  'This key was taken away': 'Dieser Schlüssel wurde genommen',
  'To come back, ask the panel or the desk for a new code.':
    'Um zurückzukommen, bitten Sie die Zentrale oder das Büro um einen neuen Code.',
  'This was not sent. Tell it to your colleague, or write it down:':
    'Das wurde nicht gesendet. Sagen Sie es Ihrem Kollegen, oder schreiben Sie es auf:',
};
