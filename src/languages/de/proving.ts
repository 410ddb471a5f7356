import type { Sentences } from '../translate.ts';

export const PROVING: Sentences = {
  'Fault test: cover the whole receiver at once, with something dull. Say covered at that moment.':
    'Störungsprüfung: den ganzen Empfänger auf einmal mit etwas Mattem abdecken. Sagen Sie in diesem Moment „verdeckt“.',
  'Cover all of the receiver at once': 'Den ganzen Empfänger auf einmal abdecken',
  'Alarm test: slide a dull card over half of the receiver, slowly, in more than two seconds. Half a cover is coarse: be exact. Say half covered when it is there.':
    'Alarmprüfung: einen matten Karton langsam, in mehr als zwei Sekunden, über die Hälfte des Empfängers schieben. Eine halbe Abdeckung ist grob: genau arbeiten. Sagen Sie „halb verdeckt“, wenn er dort ist.',
  'Cover half of the receiver, slowly': 'Die Hälfte des Empfängers langsam abdecken',
  '{test}: bring the {n} percent test filter before the receiver, slowly, in more than two seconds. Say {n1} percent filter on when it is there.':
    '{test}: den Prüffilter {n} Prozent langsam, in mehr als zwei Sekunden, vor den Empfänger bringen. Sagen Sie „Filter {n1} Prozent davor“, wenn er dort ist.',
  '{test}: bring the test filter before the receiver, slowly, in more than two seconds. Say filter on when it is there.':
    '{test}: den Prüffilter langsam, in mehr als zwei Sekunden, vor den Empfänger bringen. Sagen Sie „Filter davor“, wenn er dort ist.',
  'No alarm must come. Quiet test': 'Es darf kein Alarm kommen. Ruheprüfung',
  'This filter is so strong that a fault may come: only an alarm counts. Alarm test':
    'Dieser Filter ist so stark, dass eine Störung kommen kann: nur ein Alarm zählt. Alarmprüfung',
  'Alarm test': 'Alarmprüfung',
  'Quiet test': 'Ruheprüfung',
  'Fault test': 'Störungsprüfung',
  '{n} percent test filter on, slowly': 'Prüffilter {n} Prozent langsam davor',
  'test filter on, slowly': 'Prüffilter langsam davor',
  'Panel: read the meter, then watch the panel. Say alarm, or what it shows, at once.':
    'Zentrale: Messgerät ablesen, dann die Zentrale beobachten. Sagen Sie sofort „Alarm“, oder was sie zeigt.',
  'Watch for alarm': 'Auf Alarm achten',
  'Panel: read the meter, then watch the panel. Say fault, or what it shows, at once.':
    'Zentrale: Messgerät ablesen, dann die Zentrale beobachten. Sagen Sie sofort „Störung“, oder was sie zeigt.',
  'Watch for fault': 'Auf Störung achten',
  'Panel: reset it. Say when the panel shows normal.':
    'Zentrale: zurücksetzen. Sagen Sie „normal“, wenn die Zentrale es zeigt.',
  'Watch for normal': 'Auf Normalzustand achten',
  'Panel: read the meter, then watch the panel. It must stay at normal. Say alarm at once if it comes.':
    'Zentrale: Messgerät ablesen, dann die Zentrale beobachten. Sie muss normal bleiben. Sagen Sie sofort „Alarm“, wenn er kommt.',
  'No alarm must come: wait': 'Es darf kein Alarm kommen: warten',
  'Panel: the path must be clear. What does the meter show?':
    'Zentrale: Der Weg muss frei sein. Was zeigt das Messgerät?',
  'Path clear: read the meter': 'Weg frei: Messgerät ablesen',
  'Panel: leave the cover on. What does the meter show?':
    'Zentrale: Abdeckung davor lassen. Was zeigt das Messgerät?',
  'Cover on: read the meter': 'Abgedeckt: Messgerät ablesen',
  'The reading with the path clear has fallen since the alignment was accepted. Please check: {list}. Then say done, and read again. If it stays low, the alignment is made again.':
    'Der Messwert bei freiem Weg ist gefallen, seit die Ausrichtung angenommen wurde. Bitte prüfen: {list}. Sagen Sie dann „fertig“ und lesen Sie noch einmal ab. Bleibt er niedrig, wird neu ausgerichtet.',
  'Beam lost or moved. Check: {list}': 'Strahl verloren oder bewegt. Prüfen: {list}',
  'The reading stays low: this alignment no longer stands. Aim the emitter by eye, within fifteen centimetres of the receiver. Then say done.':
    'Der Messwert bleibt niedrig: Diese Ausrichtung gilt nicht mehr. Den Sender nach Augenmaß auf fünfzehn Zentimeter genau auf den Empfänger richten. Sagen Sie dann „fertig“.',
  'Align again: aim by eye, within 15 cm of the receiver':
    'Neu ausrichten: nach Augenmaß, höchstens 15 cm neben dem Empfänger',
  'The signal fell since the last visit. Check: {list}. Then say done.':
    'Das Signal ist seit dem letzten Besuch gefallen. Prüfen Sie: {list}. Sagen Sie dann „fertig“.',
  'Less signal than at the last visit. Check: {list}':
    'Weniger Signal als beim letzten Besuch. Prüfen: {list}',
  'The only filter here that can bring the alarm is so strong that the detector may take it for a lost beam. Please look for a weaker test filter that is still above the threshold, and enter it in the plan of a new visit. Say done to go on with this one.':
    'Der einzige Filter hier, der den Alarm auslösen kann, ist so stark, dass der Melder ihn für einen verlorenen Strahl halten kann. Bitte einen schwächeren Prüffilter suchen, der noch über der Schwelle liegt, und ihn in den Plan eines neuen Besuchs eintragen. Sagen Sie „fertig“, um mit diesem weiterzumachen.',
  'Is there a weaker filter?': 'Gibt es einen schwächeren Filter?',
  'No cover here is right for this threshold: bring a filter of at least {n} percent, enter it in the plan, and begin a new visit. Restore the alarm outputs before you leave.':
    'Keine Abdeckung hier passt zu dieser Schwelle: Bringen Sie einen Filter von mindestens {n} Prozent, tragen Sie ihn in den Plan ein und beginnen Sie einen neuen Besuch. Schalten Sie die Alarmausgänge wieder ein, bevor Sie gehen.',
  'No cover here is right for this threshold: bring a filter of at least {n} percent, but not over {n1}, enter it in the plan, and begin a new visit. Restore the alarm outputs before you leave.':
    'Keine Abdeckung hier passt zu dieser Schwelle: Bringen Sie einen Filter von mindestens {n} Prozent, aber nicht über {n1}, tragen Sie ihn in den Plan ein und beginnen Sie einen neuen Besuch. Schalten Sie die Alarmausgänge wieder ein, bevor Sie gehen.',
  'Bring a filter of at least {n} %': 'Filter von mindestens {n} % bringen',
  'A {n} percent filter? The plan has no test filter. Take it off, or say half covered if half is covered.':
    'Ein Filter mit {n} Prozent? Der Plan hat keinen Prüffilter. Nehmen Sie ihn weg, oder sagen Sie „halb verdeckt“, wenn die Hälfte verdeckt ist.',
  'A {n} percent filter? The plan has {filters} percent. Which is on? Say it whole: {n1} percent filter on.':
    'Ein Filter mit {n} Prozent? Der Plan hat {filters} Prozent. Welcher ist davor? Sagen Sie es ganz: „Filter {n1} Prozent davor“.',
  'the panel did not show it in time': 'die Zentrale zeigte es nicht rechtzeitig',
  'the panel showed an alarm behind a cover that is clearly below the alarm threshold':
    'die Zentrale zeigte Alarm hinter einer Abdeckung, die klar unter der Alarmschwelle liegt',
  'the panel showed both alarm and fault': 'die Zentrale zeigte Alarm und Störung',
  'the panel showed both alarm and fault behind a cover that must bring neither':
    'die Zentrale zeigte Alarm und Störung hinter einer Abdeckung, die keines von beiden bringen darf',
  'the panel showed something else': 'die Zentrale zeigte etwas anderes',
  'the panel showed it too early': 'die Zentrale zeigte es zu früh',
  'the panel showed it too late': 'die Zentrale zeigte es zu spät',
  'the reading with the cover on was not as expected':
    'der Messwert hinter der Abdeckung war nicht wie erwartet',
  'the reading with the path clear has fallen: the beam was lost or moved, and the cover was not wrong':
    'der Messwert bei freiem Weg ist gefallen: der Strahl ging verloren oder bewegte sich, und die Abdeckung war nicht falsch',
  'the panel did not come back to normal in time': 'die Zentrale wurde nicht rechtzeitig wieder normal',
  'Failed: {what}.': 'Nicht bestanden: {what}.',
  '{test} failed: {why}.': '{test} nicht bestanden: {why}.',
  '{test} failed: {why} ({figures}).': '{test} nicht bestanden: {why} ({figures}).',
  'Tested again, and passed.': 'Wiederholt und bestanden.',
  'The entry it rests on was taken back.': 'Der Eintrag, auf dem es beruht, wurde zurückgenommen.',
  'the test that a weak filter brings no alarm, passed':
    'die bestandene Prüfung, dass ein schwacher Filter keinen Alarm bringt',
  'the alarm test, passed': 'die bestandene Alarmprüfung',
  'the fault test, passed': 'die bestandene Störungsprüfung',
  'an accepted alignment': 'eine angenommene Ausrichtung',
  'a reading after the tests': 'ein Messwert nach den Prüfungen',
  'an answer to the open issue: {x}': 'eine Antwort auf den offenen Punkt: {x}',
  'It cannot be signed yet. Missing: {needs}.':
    'Es kann noch nicht unterschrieben werden. Es fehlt: {needs}.',
  'The only filter here that can bring the alarm is so strong that the detector may take it for a lost beam. Please look {list}, and enter it in the plan of a new visit. Say done to go on with this one.':
    'Der einzige Filter hier, der den Alarm bringen kann, ist so stark, dass der Melder ihn für einen verlorenen Strahl halten kann. Suchen Sie {list}, und tragen Sie ihn in den Plan eines neuen Besuchs ein. Sagen Sie „fertig“, um mit diesem weiterzumachen.',
};
