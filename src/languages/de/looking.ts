import type { Sentences } from '../translate.ts';

export const LOOKING: Sentences = {
  'You see an indicator from the ladder': 'Sie sehen eine Anzeige von der Leiter aus',
  'This phone only. A lamp or a tone that follows the light, and that you see or hear from the ladder. No number. A detector that sets its own gain cannot be aligned so.':
    'Nur dieses Telefon. Eine Lampe oder ein Ton, der dem Licht folgt und den Sie von der Leiter aus sehen oder hören. Keine Zahl. Ein Melder, der seine Verstärkung selbst einstellt, lässt sich so nicht ausrichten.',
  'Set the gain beforehand so that the indicator is neither dark nor at its limit.':
    'Stellen Sie vorher die Verstärkung so ein, dass die Anzeige weder dunkel noch an ihrer Grenze ist.',
  'Turn as it says, and say "done" each time. Then say only what the light does: rising, falling, steady, nothing, too strong.':
    'Drehen Sie, wie es sagt, und sagen Sie jedes Mal „fertig“. Sagen Sie dann nur, was das Licht tut: steigt, fällt, stabil, nichts, zu viel Licht.',
  'It is held against your last look: look well each time, and always from the same place.':
    'Verglichen wird mit Ihrem letzten Blick: sehen Sie jedes Mal genau hin, und immer von derselben Stelle.',
  'Expect about {n} turns. For the blocking check you put a card into the beam and look from the ladder.':
    'Rechnen Sie mit etwa {n} Drehungen. Für die Abdeckprobe stellen Sie eine Karte in den Strahl und sehen von der Leiter aus hin.',
  'Weaker than with numbers: accepted on trends, no reading. Each side of each peak was seen to be darker twice, the light went out behind a card, and then stayed the same. How strong the signal is, and whether it lies in the band, nobody read. Read it at the panel before you rely on it.':
    'Schwächer als mit Zahlen: nach Tendenzen angenommen, ohne Messwert. Jede Seite jedes Maximums war zweimal dunkler, das Licht verschwand hinter einer Karte und blieb danach gleich. Wie stark das Signal ist und ob es im Band liegt, hat niemand abgelesen. Lesen Sie es an der Zentrale ab, bevor Sie sich darauf verlassen.',
  'Begin with an indicator': 'Mit einer Anzeige ohne Zahl beginnen',
  'accepted on trends, no reading: the same person saw from the ladder what an indicator did':
    'nach Tendenzen angenommen, ohne Messwert: Dieselbe Person sah von der Leiter aus, was eine Anzeige tat',
  'Look at the indicator only when you stand still and hold on. Never look into the emitter or a laser.':
    'Sehen Sie nur auf die Anzeige, wenn Sie still stehen und sich festhalten. Nie in den Sender oder einen Laser sehen.',
  'Look: steady, nothing or too strong?': 'Sehen Sie hin: „stabil“, „nichts“ oder „zu viel Licht“?',
  'Steady, nothing, too strong?': 'Stabil, nichts, zu viel Licht?',
  'Against your last look: rising, falling, steady?': 'Gegen Ihren letzten Blick: steigt, fällt, stabil?',
  'Look again: still steady?': 'Noch einmal hinsehen: noch „stabil“?',
  'Still steady?': 'Noch stabil?',
  'Behind the card: nothing, or steady?': 'Hinter der Karte: „nichts“ oder „stabil“?',
  'Behind the card: nothing?': 'Hinter der Karte: nichts?',
  'Too soon: not counted. Wait until you are asked.':
    'Zu früh: zählt nicht. Warten Sie, bis Sie gefragt werden.',
  'No number counts here. Say rising, falling, steady, nothing or too strong.':
    'Hier zählt keine Zahl. Sagen Sie „steigt“, „fällt“, „stabil“, „nichts“ oder „zu viel Licht“.',
  'Say undo. Then say what the light does.': 'Sagen Sie „zurücknehmen“. Sagen Sie dann, was das Licht tut.',
  'a look at the light here': 'ein Blick auf das Licht hier',
  'light that is not too strong: lower the gain': 'Licht, das nicht zu stark ist: Verstärkung senken',
  'light seen to fall twice on each side of the horizontal peak':
    'Licht, das auf jeder Seite des horizontalen Maximums zweimal fiel',
  'light seen to fall twice on each side of the vertical peak':
    'Licht, das auf jeder Seite des vertikalen Maximums zweimal fiel',
  'both adjusters turned across their peaks, and no rise beside them':
    'beide Schrauben über ihr Maximum gedreht, ohne Anstieg daneben',
  'a look where a stronger peak may be': 'ein Blick dorthin, wo ein stärkeres Maximum sein kann',
  'the blocking check: blocked, nothing may be seen, and then the same light as before':
    'die Abdeckprobe: verdeckt darf nichts zu sehen sein, danach dasselbe Licht wie vorher',
  'light that stays the same': 'Licht, das gleich bleibt',
  'a fresh look': 'ein frischer Blick',
  'Not for a detector that sets its own gain: its indicator stays the same while the light changes.':
    'Nicht für einen Melder, der seine Verstärkung selbst einstellt: seine Anzeige bleibt gleich, während sich das Licht ändert.',
  Light: 'Licht',
  'accepted on trends, no reading': 'nach Tendenzen angenommen, ohne Messwert',
  'nobody read a number: whether it lies in the band is not known':
    'niemand hat eine Zahl abgelesen: ob sie im Band liegt, ist nicht bekannt',
  'light, no number': 'Licht, keine Zahl',
  'Indicator without a number': 'Anzeige ohne Zahl',
  'Look at the light': 'Auf das Licht sehen',
  Nothing: 'Nichts',
  'Too strong': 'Zu stark',
  'Keeps changing': 'Ändert sich',
  'Nobody read a number: there is nothing to draw. What the light did stands in the exchange.':
    'Niemand hat eine Zahl abgelesen: es gibt nichts zu zeichnen. Was das Licht tat, steht im Verlauf.',
};
