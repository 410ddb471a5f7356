import type { Sentences } from '../translate.ts';

export const MISSING: Sentences = {
  'a settled reading here': 'ein beruhigter Messwert hier',
  'a clear path': 'ein freier Weg',
  'a reading that is not saturated: lower the gain':
    'ein Messwert, der nicht übersteuert ist: Verstärkung senken',
  'a reading in the band': 'ein Messwert im Band',
  'lower settled readings on both sides of the horizontal peak, at this gain':
    'niedrigere beruhigte Messwerte auf beiden Seiten des horizontalen Maximums, bei dieser Verstärkung',
  'lower settled readings on both sides of the vertical peak, at this gain':
    'niedrigere beruhigte Messwerte auf beiden Seiten des vertikalen Maximums, bei dieser Verstärkung',
  'the adjusters at the peak, and a reading next to it': 'die Schrauben am Maximum, und ein Messwert daneben',
  'a reading where a stronger peak may be': 'ein Messwert, wo ein stärkeres Maximum sein kann',
  'the highest reading seen at this gain': 'der höchste Messwert, der bei dieser Verstärkung gesehen wurde',
  'the blocking check: blocked, the reading must go to nothing and come back the same':
    'die Abdeckprobe: verdeckt muss der Messwert auf nichts fallen und gleich wiederkommen',
  'a reading that holds steady': 'ein Messwert, der ruhig bleibt',
  'a fresh reading': 'ein frischer Messwert',
  'an answer to the open question': 'eine Antwort auf die offene Frage',
  'an alignment that nobody touched on this visit':
    'eine Ausrichtung, die bei diesem Besuch niemand berührt hat',
  'an answer whether the windows were cleaned': 'eine Antwort, ob die Fenster gereinigt wurden',
  'the signal that the last visit left': 'das Signal, wie es der letzte Besuch hinterließ',
  'Still missing:': 'Es fehlt noch:',
  'The next steps give this evidence.': 'Die nächsten Schritte bringen diesen Nachweis.',
  'Nothing was turned, and the signal is what the last visit left.':
    'Es wurde nichts gedreht, und das Signal ist, wie es der letzte Besuch hinterließ.',
  'Keep the alignment': 'Ausrichtung behalten',
  'All the evidence is complete.': 'Alle Nachweise sind vollständig.',
  'Not proven yet': 'Noch nicht nachgewiesen',
  'Accept against the evidence': 'Trotz fehlender Nachweise annehmen',
  Reason: 'Grund',
  'This reason and all that is missing stay in the record for ever, on its first page.':
    'Dieser Grund und alles, was fehlt, bleiben für immer im Protokoll, auf der ersten Seite.',
  'Accept with this reason': 'Mit diesem Grund annehmen',
};
