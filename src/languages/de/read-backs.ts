import type { Sentences } from '../translate.ts';

export const READ_BACKS: Sentences = {
  'Heard: {what}.': 'Gehört: {what}.',
  'Well done: {what}.': 'Gut gemacht: {what}.',
  'Kept as the last visit left it: {what}.': 'So behalten, wie beim letzten Besuch verlassen: {what}.',
  'Turned the other way: {what}.': 'In die andere Richtung gedreht: {what}.',
  'The other adjuster: {what}.': 'Die andere Schraube: {what}.',
  'Corrected: {what}.': 'Korrigiert: {what}.',
  'Corrected: {what}, not {not}.': 'Korrigiert: {what}, nicht {not}.',
  'Taken back: {what}.': 'Zurückgenommen: {what}.',
  'Noted: {x}.': 'Notiert: {x}.',
  'Issue closed: {x}': 'Punkt erledigt: {x}',
  'Left out. Nothing was taken down.': 'Ausgelassen. Es wurde nichts aufgeschrieben.',
  'Not turned.': 'Nicht gedreht.',
  'Waiting. Say "go on" when ready.': 'Pause. Sagen Sie „weiter“, wenn Sie bereit sind.',
  'Stopped. Say "start" to go on.': 'Angehalten. Sagen Sie „start“, um weiterzumachen.',
  'There is no instruction now.': 'Im Moment gibt es keine Anweisung.',
  'No word for a while. Say a reading, or "go on".':
    'Länger nichts gehört. Nennen Sie einen Messwert, oder sagen Sie „weiter“.',
  'The emitter phone is away. The next order waits for it.':
    'Das Telefon am Sender ist nicht verbunden. Die nächste Anweisung wartet darauf.',
  'This cannot go on without it. Say "go on" to try again, or "stop", and note why.':
    'Ohne das geht es nicht weiter. Sagen Sie „weiter“, um es noch einmal zu versuchen, oder „stopp“, und notieren Sie warum.',
  'Emitter: say ready for the next order.': 'Sender: Sagen Sie „bereit“ für die nächste Anweisung.',
  'Noted, but there is nothing to do now.': 'Notiert, aber jetzt ist nichts zu tun.',
  'The ladder asks: what does the meter show?': 'Frage von der Leiter: Was zeigt das Messgerät?',
  'Accepted by override. The reason stays in the record.':
    'Ohne vollen Nachweis angenommen. Der Grund bleibt im Protokoll.',
  'Was the screw really turned ({turn})? Then turn it back, or say what was turned.':
    'Wurde die Schraube wirklich gedreht ({turn})? Dann drehen Sie sie zurück, oder sagen Sie, was gedreht wurde.',
  'I heard nothing. Hold the button while you speak.':
    'Ich habe nichts gehört. Halten Sie die Taste, während Sie sprechen.',
  'Speech is not available. Please type.': 'Spracherkennung ist nicht verfügbar. Bitte tippen.',
  'Speech took too long. Say it again, or type.':
    'Die Spracherkennung dauerte zu lange. Noch einmal sagen oder tippen.',
  'Speech failed. Say it again, or type.':
    'Die Spracherkennung ist gescheitert. Noch einmal sagen oder tippen.',
  'That was cut off. Please say it again.': 'Das war abgeschnitten. Bitte noch einmal sagen.',
  'Not yet. Missing: {needs}.': 'Noch nicht. Es fehlt: {needs}.',
};
