import type { Sentences } from '../translate.ts';

export const START: Sentences = {
  'Join with the code from the panel': 'Mit dem Code der Zentrale beitreten',
  'Join code': 'Code',
  'The panel phone shows it in large letters, with a square code to scan.':
    'Das Telefon der Zentrale zeigt ihn in großen Buchstaben, mit einem Quadratcode zum Scannen.',
  Join: 'Beitreten',
  Joining: 'Tritt bei',
  'Who is at this phone?': 'Wer ist an diesem Telefon?',
  'Your name': 'Ihr Name',
  'Stands in the record. You can go on without: it then says “not named”.':
    'Steht im Protokoll. Es geht auch ohne: dann steht dort "ohne Namen".',
  Firm: 'Firma',
  'If you like.': 'Wenn Sie möchten.',
  Competence: 'Befähigung',
  'Such as a card or a course, if you like.': 'Zum Beispiel ein Ausweis oder ein Kurs, wenn Sie möchten.',
  'Two phones, one beam: line it up together.': 'Zwei Telefone, ein Strahl: gemeinsam ausrichten.',
  'At the panel': 'An der Zentrale',
  'At the emitter': 'Am Sender',
  'You read the meter. This opens a job and gives the code for the other phone.':
    'Sie lesen das Messgerät ab. Das eröffnet einen Auftrag und gibt den Code für das andere Telefon.',
  'You turn the screws. You need the code from the panel.':
    'Sie drehen die Schrauben. Sie brauchen den Code der Zentrale.',
  'A whole site': 'Ein ganzes Objekt',
  'Plan its pairs, see the status of each, and sign the records.':
    'Paare planen, den Stand von jedem sehen und die Protokolle unterschreiben.',
  'Open a site': 'Objekt eröffnen',
  Continue: 'Weiter',
  'Leave this job': 'Diesen Auftrag verlassen',
  'Yes, leave this job': 'Ja, diesen Auftrag verlassen',
  "Alarm outputs isolated? Someone told? Ladder footed? The maker's instructions, local code and licensed practice come before anything this tool says.":
    'Alarmausgänge abgeschaltet? Jemand informiert? Leiter gesichert? Die Anleitung des Herstellers, die örtlichen Vorschriften und die zugelassene Praxis gehen allem vor, was dieses Werkzeug sagt.',
  'Language of this phone': 'Sprache dieses Telefons',
  'Nobody who grew up with this language has checked it yet. Speaking is understood in English only: type, or use the buttons.':
    'Noch hat niemand, der mit dieser Sprache aufgewachsen ist, sie geprüft. Gesprochenes wird nur auf Englisch verstanden: tippen Sie, oder nutzen Sie die Tasten.',
  'This language could not be loaded. Try again when there is a link.':
    'Diese Sprache ließ sich nicht laden. Versuchen Sie es noch einmal, wenn es eine Verbindung gibt.',
  "The supervisor's pages and the report are English.":
    'Die Seiten der Aufsicht und der Bericht sind englisch.',
};
