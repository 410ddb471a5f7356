import type { Sentences } from '../translate.ts';

/** Who read what: the page of an administrator. */
export const WHO_READ: Sentences = {
  'Who read what is for an administrator with an account. This server has no accounts, and knows readers by their links alone.':
    'Wer was gelesen hat, ist für eine Verwaltung mit einem Konto. Dieser Server hat keine Konten und kennt Lesende nur an ihren Links.',
  'One line for each reader, record and hour. Who is not signed in is known only by the link that was used.':
    'Eine Zeile für jede lesende Person, Aufzeichnung und Stunde. Wer nicht angemeldet ist, ist nur an dem benutzten Link zu erkennen.',
  'Nothing was read yet.': 'Noch wurde nichts gelesen.',
  Record: 'Aufzeichnung',
  'Board of the site': 'Tafel des Standorts',
  'Report as PDF': 'Bericht als PDF',
  Export: 'Export',
  'Who read what': 'Wer was gelesen hat',
  'A name that was deleted': 'Ein gelöschter Name',
  'Only an administrator sees who read what.': 'Nur die Verwaltung sieht, wer was gelesen hat.',
  'Show all records': 'Alle Aufzeichnungen zeigen',
  'Show older ones': 'Ältere zeigen',
  'In the hour from': 'In der Stunde ab',
  'Only this record': 'Nur diese Aufzeichnung',
};
