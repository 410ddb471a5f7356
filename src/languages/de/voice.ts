import type { Sentences } from '../translate.ts';

export const VOICE: Sentences = {
  'The bracket is loose on its upper bolt.': 'Die Halterung ist an der oberen Schraube locker.',
  'Speech on this phone is off. Turn it on': 'Spracherkennung auf diesem Telefon ist aus. Einschalten',
  'Speech on this phone is loading': 'Spracherkennung auf diesem Telefon wird geladen',
  'Speech on this phone is on. Turn it off': 'Spracherkennung auf diesem Telefon ist an. Ausschalten',
  'While there is no link, this phone then hears you itself, and keeps your words to send later.':
    'Ohne Verbindung hört dieses Telefon Sie dann selbst und bewahrt Ihre Worte auf, um sie später zu senden.',
  'The microphone is off: this page came over plain http. Type instead, or':
    'Das Mikrofon ist aus: diese Seite kam über einfaches http. Tippen Sie, oder',
  'turn it on': 'einschalten',
  'Too loud: hold the phone further away.': 'Zu laut: Telefon weiter weg halten.',
  'Too loud here: type the numbers.': 'Zu laut hier: Zahlen tippen.',
  'Opening the microphone': 'Mikrofon wird geöffnet',
  'Hands-free: just speak. Tap to stop': 'Freihändig: einfach sprechen. Zum Beenden tippen',
  'Hearing you': 'Hört Sie',
  'Listening. Tap to send': 'Hört zu. Zum Senden tippen',
  'Listening. Let go to send': 'Hört zu. Zum Senden loslassen',
  'Turning it into words': 'Wird in Worte umgesetzt',
  'No words were heard. Say it again, or type it.': 'Keine Worte gehört. Noch einmal sagen oder tippen.',
  'There is no link now. Type it, or turn on speech on this phone in the menu: your words are kept and sent later.':
    'Jetzt gibt es keine Verbindung. Tippen Sie, oder schalten Sie im Menü die Spracherkennung auf diesem Telefon ein: Ihre Worte werden aufbewahrt und später gesendet.',
  'The link was lost. Say it again when it is back, or type it: typed words are kept.':
    'Die Verbindung ging verloren. Sagen Sie es noch einmal, wenn sie wieder da ist, oder tippen Sie: Getipptes wird aufbewahrt.',
  'The speech model could not be loaded. Turn it on again when there is a link, or type instead.':
    'Das Sprachmodell ließ sich nicht laden. Schalten Sie es bei Verbindung wieder ein, oder tippen Sie.',
  'Talking could not be loaded. Try again when there is a link, or type instead.':
    'Das Sprechen ließ sich nicht laden. Versuchen Sie es bei Verbindung noch einmal, oder tippen Sie.',
  'Hands-free talk stopped: {why}': 'Freihändiges Sprechen beendet: {why}',
  'This phone is too slow for it.': 'Dieses Telefon ist dafür zu langsam.',
  'the voice detector gave no answer': 'die Spracherkennung gab keine Antwort',
  'the speech model gave no letters': 'das Sprachmodell gab keine Buchstaben',
  'the speech model is not available: {why}': 'das Sprachmodell ist nicht verfügbar: {why}',
  'The microphone gives no sound. Close other apps that use it, then try again, or type instead.':
    'Das Mikrofon gibt keinen Ton. Andere Apps schließen, die es benutzen, dann noch einmal, oder tippen.',
  'Browsers allow the microphone only on a secure page. Type instead. The page /trust of this server says how to turn it on.':
    'Browser erlauben das Mikrofon nur auf einer sicheren Seite. Tippen Sie. Die Seite /trust dieses Servers sagt, wie man es einschaltet.',
  "The microphone is not allowed. Allow it for this page in the browser's site settings, or type instead.":
    'Das Mikrofon ist nicht erlaubt. Erlauben Sie es für diese Seite in den Einstellungen des Browsers, oder tippen Sie.',
  'This device has no microphone. Type instead.': 'Dieses Gerät hat kein Mikrofon. Tippen Sie.',
  'Another app is using the microphone. Close it and try again, or type instead.':
    'Eine andere App benutzt das Mikrofon. Schließen Sie sie, oder tippen Sie.',
  'The microphone could not be opened: {x}. Type instead.':
    'Das Mikrofon ließ sich nicht öffnen: {x}. Tippen Sie.',
  'There is no speech engine here. Type it.': 'Hier gibt es keine Spracherkennung. Tippen Sie.',
  'Sound must come in whole samples of two bytes.': 'Ton muss in ganzen Abtastwerten von zwei Bytes kommen.',
  'Sound comes too fast. Say it again.': 'Der Ton kommt zu schnell. Noch einmal sagen.',
  'No such talk is open here. Say it again.': 'Diese Aufnahme ist hier nicht offen. Noch einmal sagen.',
  'Read the screen.': 'Lesen Sie den Bildschirm.',
  'This server was started without a voice. {more}': 'Dieser Server wurde ohne Stimme gestartet. {more}',
  'There is nothing to say in this text.': 'In diesem Text gibt es nichts zu sagen.',
  'This phone keeps no copy of the pages: they came over plain http, or under a certificate that it does not trust. Without a link, do not load this page again: it would not open.':
    'Dieses Telefon bewahrt keine Kopie der Seiten auf: sie kamen über einfaches http oder mit einem Zertifikat, dem es nicht vertraut. Laden Sie diese Seite ohne Verbindung nicht neu: sie würde sich nicht öffnen.',
  'A new version of this page is here. It waits until no job is open on this phone: then the start page takes it.':
    'Eine neue Version dieser Seite ist da. Sie wartet, bis auf diesem Telefon kein Auftrag offen ist: dann nimmt sie die Startseite.',
  'The speech model is on this phone.': 'Das Sprachmodell ist auf diesem Telefon.',
  'The speech model is not on this phone yet. It is fetched once, about {n} MB, while there is a link.':
    'Das Sprachmodell ist noch nicht auf diesem Telefon. Es wird einmal geholt, etwa {n} MB, solange es eine Verbindung gibt.',
};
