import type { Sentences } from '../translate.ts';

/** Two phones that find each other without a server. */
export const MEETING: Sentences = {
  'The other phone, without a server': 'Das andere Telefon, ohne Server',
  'Meet the other phone again': 'Das andere Telefon wieder treffen',
  "Meet the panel's phone": 'Das Telefon an der Zentrale treffen',
  "No server? Meet the panel's phone": 'Kein Server? Das Telefon an der Zentrale treffen',
  'Both phones must be in the same Wi-Fi, or one in the hotspot of the other.':
    'Beide Telefone müssen im selben WLAN sein, oder eines im Hotspot des anderen.',
  '1. Scan this with the other phone: with its camera app, or on its page for a code.':
    '1. Scannen Sie das mit dem anderen Telefon: mit seiner Kamera-App oder auf seiner Seite für einen Code.',
  'Square code of this meeting': 'Quadratischer Code dieses Treffens',
  '2. The other phone shows a code then. Scan it here.':
    '2. Das andere Telefon zeigt dann einen Code. Scannen Sie ihn hier.',
  'Scan its code': 'Seinen Code scannen',
  "1. Scan the code that the panel's phone shows.":
    '1. Scannen Sie den Code, den das Telefon an der Zentrale zeigt.',
  "2. Show this to the panel's phone. Stay on this page until the two have met.":
    '2. Zeigen Sie das dem Telefon an der Zentrale. Bleiben Sie auf dieser Seite, bis die beiden sich getroffen haben.',
  'Without a camera: as text': 'Ohne Kamera: als Text',
  'Text of this code': 'Text dieses Codes',
  Copy: 'Kopieren',
  Copied: 'Kopiert',
  'Text of its code': 'Text seines Codes',
  'Use this text': 'Diesen Text verwenden',
  'Point the camera at the square code of the other phone.':
    'Richten Sie die Kamera auf den quadratischen Code des anderen Telefons.',
  'Stop the camera': 'Kamera ausschalten',
  'Making the code': 'Der Code wird gemacht',
  'The phones look for each other.': 'Die Telefone suchen einander.',
  'The two phones have met': 'Die beiden Telefone haben sich getroffen',
  'The pages of the two phones are of different versions. Open both once where the server answers.':
    'Die Seiten der beiden Telefone haben verschiedene Versionen. Öffnen Sie beide einmal, wo der Server antwortet.',
  'This is no code of a meeting. Scan the code that the other phone shows.':
    'Das ist kein Code eines Treffens. Scannen Sie den Code, den das andere Telefon zeigt.',
  "This is the panel's own code. Scan the one that the other phone shows after it has scanned this one.":
    'Das ist der eigene Code der Zentrale. Scannen Sie den, den das andere Telefon zeigt, nachdem es diesen gescannt hat.',
  "This is a code of an emitter phone. Scan the one that the panel's phone shows.":
    'Das ist der Code eines Telefons am Sender. Scannen Sie den, den das Telefon an der Zentrale zeigt.',
  'This code belongs to an earlier meeting. Begin again on both phones.':
    'Dieser Code gehört zu einem früheren Treffen. Beginnen Sie an beiden Telefonen neu.',
  'The two phones do not reach each other. Put both into the same Wi-Fi, or one into the hotspot of the other: a Wi-Fi for guests often keeps phones apart. Then begin again on both.':
    'Die beiden Telefone erreichen einander nicht. Bringen Sie beide ins selbe WLAN oder eines in den Hotspot des anderen: Ein WLAN für Gäste trennt Telefone oft. Beginnen Sie dann an beiden neu.',
  'This browser cannot reach another phone without a server.':
    'Dieser Browser kann ohne Server kein anderes Telefon erreichen.',
  'Begin the meeting again': 'Das Treffen neu beginnen',
  "The panel's phone is not reached. What you say is kept. Come back into its Wi-Fi; if no link comes, meet it again.":
    'Das Telefon an der Zentrale wird nicht erreicht. Was Sie sagen, bleibt erhalten. Kommen Sie zurück in sein WLAN; kommt keine Verbindung, treffen Sie es neu.',
  "The panel's phone has brought the record to the server. To go on, join there with a code from the panel: nothing that you said is lost.":
    'Das Telefon an der Zentrale hat die Aufzeichnung zum Server gebracht. Um weiterzumachen, treten Sie dort mit einem Code von der Zentrale bei: Nichts, was Sie gesagt haben, geht verloren.',
  'The record is at the server now': 'Die Aufzeichnung ist jetzt auf dem Server',
};
