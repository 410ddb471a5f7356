import type { Sentences } from '../translate.ts';

export const PAGES: Sentences = {
  'This link is not complete': 'Dieser Link ist nicht vollständig',
  'There is no such page': 'Diese Seite gibt es nicht',
  'Part of the address may be missing. A link to join ends in six letters and digits.':
    'Vielleicht fehlt ein Teil der Adresse. Ein Link zum Beitreten endet mit sechs Buchstaben und Ziffern.',
  'To the start': 'Zum Anfang',
  Loading: 'Lädt',
  'This page did not load': 'Diese Seite wurde nicht geladen',
  'The link to the server failed, or the server has a new version. Nothing you entered is lost.':
    'Die Verbindung zum Server ist gescheitert, oder der Server hat eine neue Version. Nichts Eingegebenes ist verloren.',
  'Try again': 'Noch einmal versuchen',
  'Load the page again': 'Seite neu laden',
  'Jobs this phone was in': 'Aufträge, bei denen dieses Telefon war',
  'Read the record': 'Protokoll lesen',
  'Only the phone that opened the job has the key of its record.':
    'Nur das Telefon, das den Auftrag eröffnet hat, hat den Schlüssel zu seinem Protokoll.',
  Forget: 'Vergessen',
  'Forget: {x}': 'Vergessen: {x}',
  'Yes, forget it': 'Ja, vergessen',
  'Yes, forget it: {x}': 'Ja, vergessen: {x}',
  'The record stays on the server. Its key on this phone goes, and cannot be brought back here.':
    'Das Protokoll bleibt auf dem Server. Sein Schlüssel auf diesem Telefon geht verloren und kommt hier nicht zurück.',
  'Not accepted': 'Nicht angenommen',
  'Accepted, not signed': 'Angenommen, nicht unterschrieben',
  Signed: 'Unterschrieben',
  '{state}, as last seen here on {x}.': '{state}, hier zuletzt gesehen am {x}.',
  'A job on this phone': 'Ein Auftrag auf diesem Telefon',
  'The job continues where it stopped.': 'Der Auftrag geht weiter, wo er stand.',
  'The record stays. To come back, this phone needs a new code.':
    'Das Protokoll bleibt. Um zurückzukommen, braucht dieses Telefon einen neuen Code.',
  '{n} pair in trouble, as seen here {when}': '{n} Paar mit Schwierigkeiten, hier gesehen {when}',
  '{n} pairs in trouble, as seen here {when}': '{n} Paare mit Schwierigkeiten, hier gesehen {when}',
  '{n} pair': '{n} Paar',
  '{n} pairs': '{n} Paare',
  'A code has {n} letters and digits, never 0, O, 1, I or L. Check it again.':
    'Ein Code hat {n} Buchstaben und Ziffern, nie 0, O, 1, I oder L. Bitte noch einmal prüfen.',
  'Joining failed: {why}': 'Beitreten gescheitert: {why}',
  'Waiting for the {seat} phone': 'Wartet auf das Telefon: {seat}',
  "To the site's board": 'Zur Tafel des Objekts',
  'For a supervisor: watch, read only': 'Für die Aufsicht: zusehen, nur lesen',
  'Link to watch': 'Link zum Zusehen',
  'The chart begins with the first turn that was read.':
    'Das Diagramm beginnt mit der ersten abgelesenen Drehung.',
  'No readings while this adjuster was turned since the last aim by eye.':
    'Keine Messwerte dieser Schraube seit dem letzten Ausrichten nach Augenmaß.',
  'No readings while this adjuster was turned.': 'Keine Messwerte, während diese Schraube gedreht wurde.',
  '{n} readings from before the last aim by eye are not shown.':
    '{n} Messwerte von vor dem letzten Ausrichten nach Augenmaß sind nicht gezeigt.',
  Passphrase: 'Kennwort',
  'Of whoever runs this server.': 'Von der Person, die diesen Server betreibt.',
  'Whoever runs this server asks for a passphrase before a site or a job is opened.':
    'Wer diesen Server betreibt, verlangt ein Kennwort, bevor ein Objekt oder ein Auftrag eröffnet wird.',
  'This is not the passphrase. Check it again.': 'Das ist nicht das Kennwort. Bitte noch einmal prüfen.',
  'You are': 'Sie sind',
  'Somebody else': 'Jemand anderes',
  "At the desk: open the site's board, then this pair.":
    'Am Schreibtisch: Tafel des Objekts öffnen, dann dieses Paar.',
  'Write down how it was settled': 'Aufschreiben, wie es erledigt wurde',
  'The person responsible for this pair reads the record and signs it, with name and role.':
    'Die für dieses Paar verantwortliche Person liest das Protokoll und unterschreibt es, mit Name und Funktion.',
  'Read the record and sign it': 'Protokoll lesen und unterschreiben',
  'Square code of the join link': 'Quadratcode des Links zum Beitreten',
  'This phone is not at the panel': 'Dieses Telefon ist nicht an der Zentrale',
  'This phone is not at the emitter': 'Dieses Telefon ist nicht am Sender',
  'Get a join code from the other phone of the crew, or scan its square code.':
    'Holen Sie einen Code vom anderen Telefon des Teams, oder scannen Sie seinen Quadratcode.',
  'Enter a code': 'Code eingeben',
  'The link has ended': 'Die Verbindung ist beendet',
  'Connect again': 'Neu verbinden',
  'Open in another window': 'In einem anderen Fenster offen',
  'This seat is open in a newer window or tab of this phone.':
    'Dieser Platz ist in einem neueren Fenster oder Tab dieses Telefons offen.',
  'Use it here': 'Hier benutzen',
  'Another phone has this seat now': 'Ein anderes Telefon hat jetzt diesen Platz',
  'To come back, ask the other phone of the crew for a new code.':
    'Um zurückzukommen, fragen Sie das andere Telefon des Teams nach einem neuen Code.',
  'This server does not know the job': 'Dieser Server kennt den Auftrag nicht',
  'It may have been opened on another server. Open a new job, or ask for a new code.':
    'Er wurde vielleicht auf einem anderen Server eröffnet. Eröffnen Sie einen neuen Auftrag, oder fragen Sie nach einem neuen Code.',
  'This page is out of date': 'Diese Seite ist veraltet',
  'Nothing that you sent is lost.': 'Nichts Gesendetes ist verloren.',
  'The server has less than this phone has seen': 'Der Server hat weniger, als dieses Telefon gesehen hat',
  'Its data may be an older copy. Stop the work and tell the supervisor. To continue from what the server has, load the page again.':
    'Seine Daten können eine ältere Kopie sein. Arbeit anhalten und die Aufsicht informieren. Um mit dem Stand des Servers weiterzumachen, Seite neu laden.',
  'Continue with the server': 'Mit dem Server weitermachen',
  'This browser keeps nothing. Do not close this page, and do not load it again.':
    'Dieser Browser bewahrt nichts auf. Schließen Sie diese Seite nicht, und laden Sie sie nicht neu.',
  'Emitter phone: {what}': 'Telefon am Sender: {what}',
  'Reading the {what}': 'Liest: {what}',
  'The {what} could not be read': 'Konnte nicht gelesen werden: {what}',
  'the log': 'das Protokoll',
  job: 'Auftrag',
  record: 'Protokoll',
  site: 'Objekt',
  'The pages are not built yet': 'Die Seiten sind noch nicht gebaut',
  'Run "npm run build" on the server, then load this page again.':
    'Führen Sie "npm run build" auf dem Server aus, dann laden Sie diese Seite neu.',
  'There is nothing here': 'Hier ist nichts',
  'Scan the code again, or begin at the start.':
    'Scannen Sie den Code noch einmal, oder beginnen Sie am Anfang.',
  'Go to the start': 'Zum Anfang gehen',
  'This server does not know that name': 'Dieser Server kennt diesen Namen nicht',
  'Open it by an address that it printed when it started. If the name in the address bar is right, whoever runs the server can add it with --name.':
    'Öffnen Sie ihn unter einer Adresse, die er beim Start ausgab. Stimmt der Name, kann die Person, die den Server betreibt, ihn mit --name hinzufügen.',
};
