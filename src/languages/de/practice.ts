import type { Sentences } from '../translate.ts';

export const PRACTICE: Sentences = {
  Practice: 'Übung',
  'a simulated pair': 'ein simuliertes Paar',
  Practise: 'Üben',
  'The screens are the real ones. The beam, the meter and the screws are drawn, and nothing is a record. It works without a link.':
    'Die Bildschirme sind die echten. Strahl, Messgerät und Schrauben sind gezeichnet, und nichts ist ein Protokoll. Es geht ohne Verbindung.',
  'First time: five steps, about a minute': 'Erstes Mal: fünf Schritte, etwa eine Minute',
  'At the panel: read the meter': 'An der Zentrale: Messgerät ablesen',
  'At the emitter: turn the screws': 'Am Sender: Schrauben drehen',
  'Start at the panel': 'An der Zentrale beginnen',
  'Start at the emitter': 'Am Sender beginnen',
  'With trouble': 'Mit Schwierigkeiten',
  'What shall go wrong?': 'Was soll schiefgehen?',
  'Surprise me': 'Überraschung',
  'On two phones': 'Auf zwei Telefonen',
  'This phone is at the panel and shows the drawn meter. The other one joins with a code and turns the drawn screws. For this you need the link.':
    'Dieses Telefon ist an der Zentrale und zeigt das gezeichnete Messgerät. Das andere tritt mit einem Code bei und dreht die gezeichneten Schrauben. Dafür braucht es die Verbindung.',
  'Start on two phones': 'Auf zwei Telefonen beginnen',
  'This phone then leaves the job it is in.': 'Dieses Telefon verlässt dann seinen jetzigen Auftrag.',
  'This phone then leaves {x}.': 'Dieses Telefon verlässt dann {x}.',
  'the job it is in': 'seinen jetzigen Auftrag',
  'Practice could not be opened: {why}': 'Die Übung ließ sich nicht öffnen: {why}',
  'Too much light': 'Zu viel Licht',
  'The meter stands at its end. That number means nothing: say "saturated".':
    'Das Messgerät steht am Ende. Diese Zahl bedeutet nichts: sagen Sie „übersteuert“.',
  'A turn that goes the wrong way': 'Eine Drehung in die falsche Richtung',
  'Once, a screw goes the other way than meant. Look at it before you say "done"; say "wrong way" if it was.':
    'Einmal dreht eine Schraube anders als gemeint. Sehen Sie nach, bevor Sie „fertig“ sagen; sagen Sie „falsche Richtung“, wenn es so war.',
  'A wall that reflects': 'Eine Wand, die spiegelt',
  'The light first comes from a wall. The card in the direct line shows it: the meter does not go to nothing.':
    'Das Licht kommt zuerst von einer Wand. Der Karton in der direkten Linie zeigt es: das Messgerät fällt nicht auf nichts.',
  'A shaking mount': 'Eine zitternde Halterung',
  'The meter never stands still. Say a number from the middle of what you see.':
    'Das Messgerät steht nie still. Sagen Sie eine Zahl aus der Mitte dessen, was Sie sehen.',
  'A number heard wrong': 'Eine falsch gehörte Zahl',
  'Once, a number from the panel is heard as another. Listen to the read-back, and correct it.':
    'Einmal wird eine Zahl der Zentrale falsch gehört. Hören Sie die Wiederholung, und korrigieren Sie sie.',
  'Read the drawn meter. Type its number, then tap Send.':
    'Lesen Sie das gezeichnete Messgerät ab. Tippen Sie die Zahl, dann Senden.',
  'Your colleague turns a screw. Watch the meter move, and wait.':
    'Die andere Person dreht eine Schraube. Sehen Sie, wie sich das Messgerät bewegt, und warten Sie.',
  'When the order says "read", send the new number.':
    'Wenn die Anweisung es verlangt, senden Sie die neue Zahl.',
  'A wrong number sent? Try it: tap Correct, and give the number of the meter.':
    'Eine falsche Zahl gesendet? Probieren Sie: Korrigieren, und die Zahl des Messgeräts geben.',
  'You need time? Tap Wait, then Go on.': 'Sie brauchen Zeit? Tippen Sie Warten, dann Weiter.',
  'The large words are your order. Turn the drawn screw as they say.':
    'Die großen Wörter sind Ihre Anweisung. Drehen Sie die gezeichnete Schraube so.',
  'It is turned? Tap Done.': 'Ist gedreht? Tippen Sie Fertig.',
  'Hands off. Your colleague reads the meter, and you hear what changed.':
    'Hände weg. Die andere Person liest ab, und Sie hören, was sich geändert hat.',
  'Nothing to do for you yet. Wait for your order.':
    'Für Sie gibt es noch nichts zu tun. Warten Sie auf Ihre Anweisung.',
  'Not heard? Tap Say again.': 'Nicht gehört? Tippen Sie Noch einmal.',
  'You need both hands? Tap Wait, then Go on.': 'Sie brauchen beide Hände? Tippen Sie Warten, dann Weiter.',
  '{n} of {n1}: {lesson}': '{n} von {n1}: {lesson}',
  'That is all you need. Go on until "accept", or end here.':
    'Mehr brauchen Sie nicht. Machen Sie bis „annehmen“ weiter, oder enden Sie hier.',
  'Your colleague calls out': 'Die andere Person ruft',
  '{axis}: not turned': '{axis}: nicht gedreht',
  '{axis}: {glyph} clockwise': '{axis}: {glyph} im Uhrzeigersinn',
  '{axis}: {glyph} anticlockwise': '{axis}: {glyph} gegen den Uhrzeigersinn',
  'Turn the horizontal screw {amount} {sense}': 'Horizontalschraube drehen: {amount} {sense}',
  'Turn the vertical screw {amount} {sense}': 'Vertikalschraube drehen: {amount} {sense}',
  'Practice on one phone: nobody else joins it.': 'Übung auf einem Telefon: niemand sonst tritt bei.',
  'The same pair is now played with a simulated crew that does what it is asked.':
    'Dasselbe Paar wird jetzt mit einem simulierten Team gespielt, das tut, was verlangt wird.',
  'Ended before it was accepted': 'Vor der Annahme beendet',
  'Well done': 'Gut gemacht',
  'Accepted, but look': 'Angenommen, aber sehen Sie',
  'Nothing was missed.': 'Nichts wurde übersehen.',
  'It was accepted without its proof.': 'Es wurde ohne Nachweis angenommen.',
  'It was accepted on the light of a wall. On a real pair, smoke in the beam would bring no alarm.':
    'Es wurde auf dem Licht einer Wand angenommen. Bei einem echten Paar brächte Rauch im Strahl keinen Alarm.',
  'It was accepted beside the peak: a little dirt, and it loses its signal.':
    'Es wurde neben dem Maximum angenommen: ein wenig Schmutz, und das Signal geht verloren.',
  'A number was said while the meter was at its end.':
    'Eine Zahl wurde gesagt, während das Messgerät am Ende stand.',
  'A number that the meter did not show was not put right.':
    'Eine Zahl, die das Messgerät nicht zeigte, wurde nicht berichtigt.',
  'A screw was not turned as reported, and it was not put right.':
    'Eine Schraube wurde nicht wie gemeldet gedreht, und das wurde nicht berichtigt.',
  '"Blocked" was said without a card in the beam. A wall would not have been found.':
    '„Verdeckt“ wurde ohne Karton im Strahl gesagt. Eine Wand wäre nicht entdeckt worden.',
  '"Clear" was said while the card was in the beam.':
    '„Frei“ wurde gesagt, während der Karton im Strahl war.',
  '"Aimed" was said without aiming.': 'Es wurde gemeldet, aber nicht ausgerichtet.',
  mastered: 'gemeistert',
  missed: 'übersehen',
  'did not come up': 'kam nicht vor',
  Turns: 'Drehungen',
  Readings: 'Messwerte',
  Time: 'Zeit',
  'Words and taps': 'Worte und Tipper',
  'Wrong numbers': 'Falsche Zahlen',
  '{n}, put right: {n1}': '{n}, berichtigt: {n1}',
  'Below the best': 'Unter dem Besten',
  You: 'Sie',
  Crew: 'Team',
  'Crew: a simulated one on the same pair. It obeys, and looks again only when asked; 6 s a turn, 2 s a reading (our estimate).':
    'Team: ein simuliertes am selben Paar. Es gehorcht und sieht nur auf Verlangen noch einmal nach; 6 s je Drehung, 2 s je Messwert (unsere Schätzung).',
  'The crew had not got there when its time was up.': 'Das Team war nicht am Ziel, als seine Zeit um war.',
  'The same again': 'Dasselbe noch einmal',
  'Practise something else': 'Etwas anderes üben',
  'Practice: nothing here is a record': 'Übung: nichts hier ist ein Protokoll',
  'End, and see how it went': 'Beenden und Ergebnis sehen',
  'Leave practice': 'Übung verlassen',
  'Practice: the hand turned {turn}': 'Übung: die Hand drehte {turn}',
  'Practice: the hand set the gain {n} dB below full':
    'Übung: die Hand stellte die Verstärkung {n} dB unter Maximum',
  'Practice: the card was held into the beam': 'Übung: der Karton wurde in den Strahl gehalten',
  'Practice: the card was taken out': 'Übung: der Karton wurde weggenommen',
  'Practice: aimed by eye': 'Übung: nach Augenmaß ausgerichtet',
  'Drawn screws': 'Gezeichnete Schrauben',
  'Drawn emitter': 'Gezeichneter Sender',
  'It points at the receiver now.': 'Er zeigt jetzt auf den Empfänger.',
  'It points past the receiver.': 'Er zeigt am Empfänger vorbei.',
  'Aim at the receiver': 'Auf den Empfänger richten',
  'Drawn card': 'Gezeichneter Karton',
  'The card is in the beam.': 'Der Karton ist im Strahl.',
  'The card is out of the beam.': 'Der Karton ist nicht im Strahl.',
  'Take the card out': 'Karton wegnehmen',
  'Hold the card in': 'Karton hineinhalten',
  'Drawn gain': 'Gezeichnete Verstärkung',
  'Gain: full': 'Verstärkung: Maximum',
  'Gain: {n} dB below full': 'Verstärkung: {n} dB unter Maximum',
  'Drawn meter': 'Gezeichnetes Messgerät',
  'What to do': 'Was zu tun ist',
  'A drawn beam, with trouble if you like. Alone on this phone, or on two.':
    'Ein gezeichneter Strahl, auf Wunsch mit Schwierigkeiten. Allein auf diesem Telefon oder auf zweien.',
  'Your colleague aims the emitter. Watch the meter move, and wait.':
    'Die andere Person richtet den Sender aus. Sehen Sie, wie sich das Messgerät bewegt, und warten Sie.',
  'The large words are your order. Aim the drawn emitter, then tap Aimed.':
    'Die großen Wörter sind Ihre Anweisung. Richten Sie den gezeichneten Sender aus, dann tippen Sie Ausgerichtet.',
  'Now turn the drawn screw as the large words say.':
    'Jetzt drehen Sie die gezeichnete Schraube, wie die großen Wörter es sagen.',
};
