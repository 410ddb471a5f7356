import type { Sentences } from '../translate.ts';

/** The phone that follows a tone or a lamp. */
export const INDICATOR: Sentences = {
  'The phone at the panel listens to the tone now.': 'Das Telefon an der Zentrale hört jetzt auf den Ton.',
  'The phone at the panel looks at the lamp now.': 'Das Telefon an der Zentrale sieht jetzt auf die Lampe.',
  'The phone at the panel has stopped listening.': 'Das Telefon an der Zentrale hört nicht mehr zu.',
  'The phone at the panel has stopped looking at the lamp.':
    'Das Telefon an der Zentrale sieht nicht mehr auf die Lampe.',
  'The phone at the panel has lost the lamp: it was moved.':
    'Das Telefon an der Zentrale hat die Lampe verloren: es wurde bewegt.',
  'The phone at the panel sees nothing around the lamp: it is too dark.':
    'Das Telefon an der Zentrale sieht nichts um die Lampe: es ist zu dunkel.',
  'The phone at the panel cannot tell the tone: it is too loud there.':
    'Das Telefon an der Zentrale erkennt den Ton nicht: dort ist es zu laut.',
  'The phone at the panel hears nothing at all: its microphone is off.':
    'Das Telefon an der Zentrale hört gar nichts: sein Mikrofon ist aus.',
  'The phone at the panel cannot tell what the indicator does.':
    'Das Telefon an der Zentrale erkennt nicht, was die Anzeige tut.',
  'It was taught: what counts is how strong it is.': 'Es hat gelernt: es zählt, wie stark sie oder er ist.',
  'It was taught: what counts is its pitch.': 'Es hat gelernt: es zählt die Tonhöhe.',
  'It was taught: what counts is its colour.': 'Es hat gelernt: es zählt die Farbe.',
  'It was taught: what counts is how often it goes on.':
    'Es hat gelernt: es zählt, wie oft sie oder er angeht.',
  '{value} (by a tone, taught profile, {n} moments)':
    '{value} (nach einem Ton, gelerntes Profil, {n} Momente)',
  '{value} (by a lamp, taught profile, {n} moments)':
    '{value} (nach einer Lampe, gelerntes Profil, {n} Momente)',
  'by a tone, taught profile': 'nach einem Ton, gelerntes Profil',
  'by a lamp, taught profile': 'nach einer Lampe, gelerntes Profil',
  'The phone at the panel tells what the light does. Only what it tells counts.':
    'Das Telefon an der Zentrale sagt, was das Licht tut. Nur was es sagt, zählt.',
  'This phone follows the indicator': 'Dieses Telefon folgt der Anzeige',
  'What tells of the light at the panel? Prop this phone there, so that nobody has to hold it.':
    'Was zeigt an der Zentrale das Licht an? Stellen Sie dieses Telefon dort so auf, dass niemand es halten muss.',
  'A tone': 'Ein Ton',
  'A lamp': 'Eine Lampe',
  'Now show it the tone three times. Press, and be quiet until it says that it has learnt. Leave the phone as it stands.':
    'Lassen Sie es den Ton dreimal hören. Drücken Sie und seien Sie still, bis es sagt, dass es gelernt hat. Lassen Sie das Telefon stehen, wie es steht.',
  'Draw the box close round the lamp. Around it must be edges to see, such as those of the panel. Then show it the lamp three times: press, and keep out of the picture.':
    'Ziehen Sie den Kasten eng um die Lampe. Um sie herum müssen Kanten zu sehen sein, etwa die der Zentrale. Zeigen Sie ihm dann die Lampe dreimal: drücken Sie und bleiben Sie aus dem Bild.',
  'The box round the lamp. The arrow keys move it; with Shift they change its size.':
    'Der Kasten um die Lampe. Die Pfeiltasten bewegen ihn; mit Umschalt ändern sie seine Größe.',
  'Show me none': 'Zeig mir nichts',
  'No light at all: cover the beam.': 'Gar kein Licht: decken Sie den Strahl ab.',
  'This is none': 'Das ist nichts',
  'Show me some': 'Zeig mir etwas',
  'So little light that you can just tell it from none.':
    'So wenig Licht, dass Sie es gerade noch von nichts unterscheiden.',
  'This is some': 'Das ist etwas',
  'Show me plenty': 'Zeig mir viel',
  'So much light that more changes nothing.': 'So viel Licht, dass mehr nichts ändert.',
  'This is plenty': 'Das ist viel',
  Learnt: 'Gelernt',
  'Learning: keep still': 'Lernt: still halten',
  Begin: 'Beginnen',
  'soon after I press': 'gleich nach dem Drücken',
  '1 minute after I press': '1 Minute nach dem Drücken',
  '3 minutes after I press': '3 Minuten nach dem Drücken',
  'Begins in {n} s': 'Beginnt in {n} s',
  'Teach it once more': 'Noch einmal lernen lassen',
  'Follow it': 'Ihr folgen',
  'Nothing was there at some or at plenty. Bring the phone closer, or choose the other kind of indicator.':
    'Bei etwas oder bei viel war nichts da. Bringen Sie das Telefon näher, oder wählen Sie die andere Art Anzeige.',
  'Some and plenty looked or sounded alike. Show it less at some, and more at plenty.':
    'Etwas und viel waren gleich. Zeigen Sie bei etwas weniger und bei viel mehr.',
  'None and some looked or sounded alike. Show it a little more at some.':
    'Nichts und etwas waren gleich. Zeigen Sie bei etwas ein wenig mehr.',
  'Some did not lie between none and plenty. Show it all three once more, in this order.':
    'Etwas lag nicht zwischen nichts und viel. Zeigen Sie alle drei noch einmal, in dieser Reihenfolge.',
  'It could not hear or see well enough just then. Try that one again.':
    'Es konnte gerade nicht gut genug hören oder sehen. Versuchen Sie das noch einmal.',
  Waits: 'Wartet',
  'Too loud!': 'Zu laut!',
  'Hears nothing!': 'Hört nichts!',
  'Not clear!': 'Unklar!',
  'Put the phone back, or teach it once more. Nothing is told until then.':
    'Stellen Sie das Telefon zurück, oder lassen Sie es noch einmal lernen. Bis dahin wird nichts gemeldet.',
  'Give the panel light, or uncover the camera. Nothing is told until then.':
    'Geben Sie der Zentrale Licht, oder machen Sie die Kamera frei. Bis dahin wird nichts gemeldet.',
  'It is louder than when it was taught. Wait, or stop the noise. Nothing is told until then.':
    'Es ist lauter als beim Lernen. Warten Sie, oder stellen Sie den Lärm ab. Bis dahin wird nichts gemeldet.',
  'Look whether another app has the microphone. Nothing is told until then.':
    'Sehen Sie nach, ob eine andere App das Mikrofon hat. Bis dahin wird nichts gemeldet.',
  'It fits nothing that it was taught. Look at the indicator, or teach it once more.':
    'Es passt zu nichts, was es gelernt hat. Sehen Sie nach der Anzeige, oder lassen Sie es noch einmal lernen.',
  'It tells what the light does each time it is asked for. Nothing was asked for yet.':
    'Es sagt jedes Mal, wenn danach gefragt wird, was das Licht tut. Bisher wurde nicht gefragt.',
  'This browser changes the loudness of the microphone by itself: only the pitch, or how often it goes on, can be followed.':
    'Dieser Browser ändert die Lautstärke des Mikrofons selbst: nur der Tonhöhe, oder wie oft er angeht, lässt sich folgen.',
  'A second phone listens to a tone or looks at a lamp':
    'Ein zweites Telefon hört auf einen Ton oder sieht auf eine Lampe',
  'Two phones, and something to prop one of them at the panel. A tone or a lamp there that follows the light. No number. A detector that sets its own gain cannot be aligned so.':
    'Zwei Telefone, und etwas, um eines davon an der Zentrale aufzustellen. Dort ein Ton oder eine Lampe, der oder die dem Licht folgt. Keine Zahl. Ein Melder, der seine Verstärkung selbst einstellt, lässt sich so nicht ausrichten.',
  'Prop the first phone and teach it: show it none, some and plenty.':
    'Stellen Sie das erste Telefon auf und lassen Sie es lernen: zeigen Sie ihm nichts, etwas und viel.',
  'Climb. The propped phone tells what the light does: rising, falling, steady, nothing, too strong. The phone that you carry speaks each order. Expect about {n} turns.':
    'Steigen Sie hinauf. Das aufgestellte Telefon sagt, was das Licht tut: steigt, fällt, stabil, nichts, zu viel Licht. Das Telefon, das Sie tragen, spricht jede Anweisung. Rechnen Sie mit etwa {n} Drehungen.',
  'Weaker than with numbers: accepted on trends, no reading. Each trend was told by a phone, by the profile that you taught it, and the record names both. How strong the signal is, and whether it lies in the band, nobody read. Read it at the panel before you rely on it.':
    'Schwächer als mit Zahlen: nach Tendenzen angenommen, ohne Messwert. Jede Tendenz sagte ein Telefon, nach dem Profil, das Sie es gelehrt haben, und die Aufzeichnung nennt beides. Wie stark das Signal ist und ob es im Band liegt, hat niemand abgelesen. Lesen Sie es an der Zentrale ab, bevor Sie sich darauf verlassen.',
  'Begin with a tone or a lamp': 'Mit einem Ton oder einer Lampe beginnen',
  'accepted on trends, no reading: a second phone told what a tone or a lamp did, by a profile that the same person taught it':
    'nach Tendenzen angenommen, ohne Messwert: Ein zweites Telefon sagte, was ein Ton oder eine Lampe tat, nach einem Profil, das dieselbe Person es lehrte',
  'light seen': 'Licht gesehen',
  'Hands off: the phone at the panel tells what the light does.':
    'Hände weg: Das Telefon an der Zentrale sagt, was das Licht tut.',
  'The other phone is not taught yet': 'Das andere Telefon hat noch nicht gelernt',
  'Teach the phone at the panel none, some and plenty. Then it tells what the light does.':
    'Zeigen Sie dem Telefon an der Zentrale kein, etwas und viel Licht. Dann meldet es, was das Licht tut.',
  'Wait: the other phone tells': 'Warten: das andere Telefon meldet',
  'Leave the card in the beam: the phone at the panel tells what is left.':
    'Lassen Sie die Karte im Strahl: Das Telefon an der Zentrale sagt, was übrig ist.',
  'Leave the card: the other phone tells': 'Karte lassen: das andere Telefon meldet',
  some: 'etwas',
  plenty: 'viel',
};
