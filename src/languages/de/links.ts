import type { Sentences } from '../translate.ts';

/** Links, codes and seats that let nobody in, and requests that failed. */
export const LINKS: Sentences = {
  'This link is not known here.': 'Dieser Link ist hier nicht bekannt.',
  'This link does not open a site, or it is not known here.':
    'Dieser Link öffnet kein Objekt, oder er ist hier nicht bekannt.',
  'This link opens a site, not a job.': 'Dieser Link öffnet ein Objekt, keinen Auftrag.',
  'This link is for watching. It can write remarks with a name, and nothing else.':
    'Dieser Link ist zum Zusehen. Er kann Bemerkungen mit Namen schreiben, sonst nichts.',
  'Only who watches puts a name to a remark. The name of a seat is given with "person".':
    'Nur wer zusieht, setzt einen Namen zu einer Bemerkung. Der Name eines Platzes wird mit "person" angegeben.',
  'Only the emitter phone says what it has shown.': 'Nur das Telefon am Sender sagt, was es gezeigt hat.',
  'This link is for reading. It cannot change the site.':
    'Dieser Link ist zum Lesen. Er kann das Objekt nicht ändern.',
  'A code is six letters and digits.': 'Ein Code hat sechs Buchstaben und Ziffern.',
  'This code is not known, was used before, or has expired. Ask for a new one.':
    'Dieser Code ist nicht bekannt, wurde schon benutzt oder ist abgelaufen. Fragen Sie nach einem neuen.',
  'Another phone has taken the panel seat.': 'Ein anderes Telefon hat den Platz an der Zentrale übernommen.',
  'Another phone has taken the emitter seat.': 'Ein anderes Telefon hat den Platz am Sender übernommen.',
  'The panel phone of this job is connected.': 'Das Telefon der Zentrale ist bei diesem Auftrag verbunden.',
  'The emitter phone of this job is connected.': 'Das Telefon am Sender ist bei diesem Auftrag verbunden.',
  'Close it there first.': 'Schließen Sie es zuerst dort.',
  'This phone opened a newer connection.': 'Dieses Telefon hat eine neuere Verbindung geöffnet.',
  'The server does not answer. Check that this device is on the site network. Then try again.':
    'Der Server antwortet nicht. Prüfen Sie, ob dieses Gerät im Netz des Objekts ist. Dann versuchen Sie es noch einmal.',
  'The server has a newer version of this page. Load the page again: what you typed stays.':
    'Der Server hat eine neuere Fassung dieser Seite. Laden Sie die Seite neu: Was Sie getippt haben, bleibt.',
  "This page cannot read the server's answer. Load the page again.":
    'Diese Seite kann die Antwort des Servers nicht lesen. Laden Sie die Seite neu.',
  "This page cannot read the server's answer ({n}). Load the page again.":
    'Diese Seite kann die Antwort des Servers nicht lesen ({n}). Laden Sie die Seite neu.',
  'The request failed: {x}': 'Die Anfrage ist gescheitert: {x}',
  'There is no such visit on this site.': 'Diesen Besuch gibt es in diesem Objekt nicht.',
  'The link to the server is lost.': 'Die Verbindung zum Server ist verloren.',
  "The server's log of this job is not the one that this phone has seen.":
    'Das Protokoll dieses Auftrags auf dem Server ist nicht das, das dieses Telefon gesehen hat.',
  'This page is too old for the server. Load it again.':
    'Diese Seite ist zu alt für den Server. Laden Sie sie neu.',
  'This page is newer than the server.': 'Diese Seite ist neuer als der Server.',
  'This request comes from a page of another website.':
    'Diese Anfrage kommt von einer Seite einer anderen Website.',
  'This is practice on a simulated pair: there is no record to print or to save.':
    'Das ist Übung an einem simulierten Paar: es gibt kein Protokoll zum Drucken oder Speichern.',
  'There is no such report. Start it again.': 'Diesen Bericht gibt es nicht. Starten Sie ihn noch einmal.',
  'The speech model has no such file.': 'Das Sprachmodell hat keine solche Datei.',
  'it holds a character that nobody sees ({x}). Type it again.':
    'es enthält ein Zeichen, das niemand sieht ({x}). Tippen Sie es noch einmal.',
  'The server is stopping. Nothing is lost: try again in a minute.':
    'Der Server hält an. Nichts ist verloren: versuchen Sie es in einer Minute noch einmal.',
  'The server is stopping. Keep your phone open: it goes on by itself.':
    'Der Server hält an. Lassen Sie Ihr Telefon offen: es geht von selbst weiter.',
  'The link needs a long key after the': 'Der Link braucht einen langen Schlüssel nach dem',
  '. Ask the person who sent it to send all of it again. A site that this device knows also opens from the start page.':
    '. Bitten Sie die Person, die ihn schickte, ihn ganz zu schicken. Ein Objekt, das dieses Gerät kennt, öffnet sich auch von der Startseite.',
  'Another phone has taken the {seat} seat.': 'Ein anderes Telefon hat den Platz übernommen: {seat}.',
};
