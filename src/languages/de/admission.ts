import type { Sentences } from '../translate.ts';

export const ADMISSION: Sentences = {
  'No code? Ask the panel': 'Kein Code? Die Zentrale fragen',
  'Ask the panel': 'Die Zentrale fragen',
  'Job word': 'Wort des Auftrags',
  'The panel phone shows it below its code. The person there then says yes or no.':
    'Das Telefon an der Zentrale zeigt es unter seinem Code. Die Person dort sagt dann ja oder nein.',
  Asking: 'Wird gefragt',
  'Ask to come in': 'Um Einlass bitten',
  'I have a code': 'Ich habe einen Code',
  'The panel is asked': 'Die Zentrale wird gefragt',
  'The panel phone shows the same word and number. Tell the person there what you see.':
    'Das Telefon an der Zentrale zeigt dasselbe Wort und dieselbe Zahl. Sagen Sie der Person dort, was Sie sehen.',
  'No link to the server. This page goes on trying.':
    'Keine Verbindung zum Server. Diese Seite versucht es weiter.',
  'Waiting for yes or no. Keep this page open.': 'Warten auf ja oder nein. Lassen Sie diese Seite offen.',
  'The panel said no. Ask only if this is the emitter phone of that job: call the person at the panel.':
    'Die Zentrale hat nein gesagt. Fragen Sie nur, wenn dies das Telefon am Sender dieses Auftrags ist: Rufen Sie die Person an der Zentrale an.',
  'Nobody at the panel answered in time. Call the person there, then ask again.':
    'Niemand an der Zentrale hat rechtzeitig geantwortet. Rufen Sie die Person dort an, dann fragen Sie noch einmal.',
  'Is this your emitter?': 'Ist das Ihr Sender?',
  "Yes only if your colleague's phone shows the same word and number.":
    'Ja nur, wenn das Telefon Ihres Kollegen dasselbe Wort und dieselbe Zahl zeigt.',
  'The phone that was at the emitter before loses its seat.':
    'Das Telefon, das vorher am Sender war, verliert seinen Platz.',
  'Yes, let it in': 'Ja, hereinlassen',
  'Without the code: the other phone asks the panel, with the job word':
    'Ohne den Code: Das andere Telefon fragt die Zentrale, mit dem Wort des Auftrags',
  'A job word is a word of the radio and three figures, as in KILO 417.':
    'Das Wort des Auftrags ist ein Wort aus dem Funk und drei Ziffern, wie KILO 417.',
  'The panel let a phone in that showed {x}': 'Die Zentrale hat ein Telefon hereingelassen, das {x} zeigte',
  'The panel turned a phone away that showed {x}': 'Die Zentrale hat ein Telefon abgewiesen, das {x} zeigte',
  'No panel shows this word now. Check it with the person at the panel: it changes when the server starts again.':
    'Keine Zentrale zeigt jetzt dieses Wort. Prüfen Sie es mit der Person an der Zentrale: Es ändert sich, wenn der Server neu startet.',
  'The panel phone of this job is not connected, so nobody can answer. Ask again when it is back.':
    'Das Telefon an der Zentrale dieses Auftrags ist nicht verbunden, also kann niemand antworten. Fragen Sie noch einmal, wenn es wieder da ist.',
  'Another phone asks at this moment. Wait until the panel has answered it, then ask again.':
    'Gerade fragt ein anderes Telefon. Warten Sie, bis die Zentrale ihm geantwortet hat, dann fragen Sie noch einmal.',
  'Three questions in a row were not answered with yes, so the panel gets none for a quarter of an hour. Scan its square code, or type its code.':
    'Drei Fragen hintereinander bekamen kein Ja, also bekommt die Zentrale eine Viertelstunde lang keine. Scannen Sie ihren quadratischen Code, oder tippen Sie ihren Code.',
  'Too many questions came from here. Wait some minutes, or scan the square code at the panel.':
    'Von hier kamen zu viele Fragen. Warten Sie einige Minuten, oder scannen Sie den quadratischen Code an der Zentrale.',
  'The record of this job is signed, so nobody is let in by asking. The panel can still give a code.':
    'Das Protokoll dieses Auftrags ist unterschrieben, also kommt niemand durch Fragen herein. Die Zentrale kann noch einen Code geben.',
  'That phone asks no longer. If it is yours, let it ask again.':
    'Dieses Telefon fragt nicht mehr. Wenn es Ihres ist, lassen Sie es noch einmal fragen.',
  'Only the panel phone answers who may come in.':
    'Nur das Telefon an der Zentrale antwortet, wer hereinkommen darf.',
  'The server does not know this question any more. Ask again.':
    'Der Server kennt diese Frage nicht mehr. Fragen Sie noch einmal.',
  'yes, let it in': 'ja, hereinlassen',
  'no, not our phone': 'nein, nicht unser Telefon',
  'Asking failed: {why}': 'Fragen ging nicht: {why}',
};
