import type { Sentences } from '../translate.ts';

export const QUESTIONS: Sentences = {
  'Did the meter show {value}?': 'Zeigte das Messgerät {value}?',
  '{value}?': '{value}?',
  '{a}, or {b}? Say which.': '{a} oder {b}? Sagen Sie, welches.',
  '{a} or {b}?': '{a} oder {b}?',
  '{a}, or {b}? Say it figure by figure.': '{a} oder {b}? Sagen Sie es Ziffer für Ziffer.',
  'Did you turn: {a}, or {b}?': 'Gedreht: {a} oder {b}?',
  'Did you turn: {a}?': 'Gedreht: {a}?',
  '{n} turns ago, did you turn: {a}?': 'Vor {n} Drehungen, gedreht: {a}?',
  '{n} turns ago: turned {a}?': 'Vor {n} Drehungen: gedreht {a}?',
  'Turned {a}, or {b}?': 'Gedreht {a} oder {b}?',
  'Turned {a}?': 'Gedreht {a}?',
  'Did you say: {a}?': 'Haben Sie gesagt: {a}?',
  'Is the beam path clear? Say yes or no.': 'Ist der Strahlweg frei? Sagen Sie „ja“ oder „nein“.',
  'Path clear?': 'Weg frei?',
  'Is the gain untouched? Say yes or no.': 'Ist die Verstärkung unberührt? Sagen Sie „ja“ oder „nein“.',
  'Gain untouched?': 'Verstärkung unberührt?',
  'Reading right? Say yes, or say it again.':
    'Stimmt der Messwert? Sagen Sie „ja“ oder nennen Sie ihn noch einmal.',
  'Reading right?': 'Messwert richtig?',
  'Say again, please.': 'Bitte noch einmal.',
  'I did not understand "{x}". Try other words, or type.':
    'Ich habe „{x}“ nicht verstanden. Versuchen Sie andere Wörter oder tippen Sie.',
  '{question} Or type it, or say "not sure".': '{question} Oder tippen Sie, oder sagen Sie „nicht sicher“.',
  '{list} Or say "stop", and note it.': '{list} Oder sagen Sie „stopp“, und notieren Sie es.',
  '{question} Or say "wait", look again, then "go on".':
    '{question} Oder sagen Sie „warten“, sehen Sie noch einmal nach, dann „weiter“.',
  'Then say the reading again.': 'Dann nennen Sie den Messwert noch einmal.',
  'Something was turned since then. What does the meter show now?':
    'Seitdem wurde etwas gedreht. Was zeigt das Messgerät jetzt?',
  'There is no such reading. What does the meter show?':
    'Diesen Messwert gibt es nicht. Was zeigt das Messgerät?',
  'What is wrong? Say "wrong" and the right reading, or "undo".':
    'Was ist falsch? Sagen Sie „Korrektur“ und den richtigen Messwert, oder „zurücknehmen“.',
  'What is not sure? Say what was turned, or "say again".':
    'Was ist nicht sicher? Sagen Sie, was gedreht wurde, oder „noch einmal“.',
  'Then look first. Say yes or no.': 'Dann sehen Sie zuerst nach. Sagen Sie „ja“ oder „nein“.',
  'A number is needed: the one on the meter at the panel. Or say no signal, or saturated.':
    'Es braucht eine Zahl: die am Messgerät der Zentrale. Oder sagen Sie „kein Signal“ oder „übersteuert“.',
  'Nothing was asked. What can you not do?': 'Es wurde nichts verlangt. Was geht nicht?',
  'No turn was made yet. What went the wrong way?':
    'Es wurde noch nichts gedreht. Was ging in die falsche Richtung?',
  'There is nothing to take back.': 'Es gibt nichts zurückzunehmen.',
  'Which adjuster was turned: horizontal or vertical?':
    'Welche Schraube wurde gedreht: „horizontal“ oder „vertikal“?',
  'How far was it turned? Say the adjuster, how far and which way: horizontal, half a turn clockwise.':
    'Wie weit wurde gedreht? Nennen Sie Schraube, Weite und Richtung: „horizontal, eine halbe Drehung im Uhrzeigersinn“.',
  'How far did you turn the horizontal?': 'Wie weit haben Sie horizontal gedreht?',
  'How far did you turn the vertical?': 'Wie weit haben Sie vertikal gedreht?',
  'Which way did you turn the horizontal: clockwise or anticlockwise?':
    'In welche Richtung haben Sie horizontal gedreht: „im Uhrzeigersinn“ oder „gegen den Uhrzeigersinn“?',
  'Which way did you turn the vertical: clockwise or anticlockwise?':
    'In welche Richtung haben Sie vertikal gedreht: „im Uhrzeigersinn“ oder „gegen den Uhrzeigersinn“?',
  'Heard {n}, but this meter shows steps of {n1}. What does it show?':
    'Gehört: {n}, aber dieses Messgerät zeigt Schritte von {n1}. Was zeigt es?',
  'This meter shows {unit}. What does it show?': 'Dieses Messgerät zeigt {unit}. Was zeigt es?',
  'Heard {n}, but this meter only shows {n1} to {n2}. What does it show?':
    'Gehört: {n}, aber dieses Messgerät zeigt nur {n1} bis {n2}. Was zeigt es?',
  'Who was told? For example, say: told the control room.':
    'Wer wurde informiert? Sagen Sie zum Beispiel: „Leitstelle informiert“.',
  'Is that right? Say yes or no.': 'Stimmt das? Sagen Sie „ja“ oder „nein“.',
  'Half of it, or all? This test needs half. Say half covered when it is.':
    'Die Hälfte oder alles? Diese Prüfung braucht die Hälfte. Sagen Sie „halb verdeckt“, wenn es so ist.',
  'Is the filter on? Say filter on when it is.':
    'Ist der Filter davor? Sagen Sie „Filter davor“, wenn es so ist.',
};
