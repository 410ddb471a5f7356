import type { Sentences } from '../translate.ts';

export const ALONE: Sentences = {
  'I am alone': 'Ich bin allein',
  'You do both: with a second phone by the panel, by walking to it, or by an indicator that you see from the ladder.':
    'Sie tun beides: mit einem zweiten Telefon an der Zentrale, indem Sie hingehen, oder nach einer Anzeige, die Sie von der Leiter aus sehen.',
  'One person alone': 'Eine Person allein',
  'Where the rules of the site or the maker ask for two people, this is not allowed. Ask before you begin.':
    'Wo die Regeln des Objekts oder des Herstellers zwei Personen verlangen, ist das nicht erlaubt. Fragen Sie vorher.',
  'What you need': 'Was Sie brauchen',
  'How it goes': 'Wie es abläuft',
  'What its evidence is worth': 'Was der Nachweis wert ist',
  'A second phone watches the meter': 'Ein zweites Telefon beobachtet das Messgerät',
  'Two phones, and something to prop one of them before the display. The display shows a number.':
    'Zwei Telefone, und etwas, um eines vor der Anzeige aufzustellen. Die Anzeige zeigt eine Zahl.',
  'At the panel: open the job on the phone that stays there.':
    'An der Zentrale: den Auftrag auf dem Telefon eröffnen, das dort bleibt.',
  'Scan its square code with the phone that you carry.':
    'Seinen Quadratcode mit dem Telefon scannen, das Sie bei sich tragen.',
  'Prop the first phone, draw the box round the number, and say once that it reads it right.':
    'Das erste Telefon aufstellen, den Kasten um die Zahl ziehen und einmal bestätigen, dass es richtig liest.',
  'Climb. From here on nobody touches the propped phone. The phone that you carry speaks each order.':
    'Hinaufsteigen. Von nun an berührt niemand das aufgestellte Telefon. Das Telefon, das Sie tragen, sagt jede Anweisung.',
  'The same as with two people: every number was on the display when it was taken. The record names the camera beside each, and how sure it was.':
    'Dasselbe wie mit zwei Personen: Jede Zahl stand auf der Anzeige, als sie genommen wurde. Das Protokoll nennt bei jeder die Kamera, und wie sicher sie war.',
  'Begin with two phones': 'Mit zwei Telefonen beginnen',
  'You walk to the meter': 'Sie gehen zum Messgerät',
  'This phone only. A way between ladder and meter that you can walk about {n} times. The gain is set beside the meter.':
    'Nur dieses Telefon. Ein Weg zwischen Leiter und Messgerät, den Sie etwa {n}-mal gehen können. Die Verstärkung wird neben dem Messgerät eingestellt.',
  'Begin at the meter: read it first.': 'Beginnen Sie am Messgerät: lesen Sie es zuerst ab.',
  'Do what it says at the emitter, turn by turn, and say "done" each time.':
    'Tun Sie am Sender, was es sagt, Drehung für Drehung, und sagen Sie jedes Mal „fertig“.',
  'Go to the meter. Say or type the number.': 'Zum Messgerät gehen. Die Zahl sagen oder tippen.',
  'Before each trip it tells you its plan: how many turns, and when the card goes up. It keeps the count.':
    'Vor jedem Weg sagt es den Plan: wie viele Drehungen und wann die Karte davor kommt. Es zählt mit.',
  'Both sides of each peak, the blocking check, and a number that holds, with fewer places read than with two people: the number at the peak must be what the others foretold. What the meter did while you were away from it, nobody saw.':
    'Beide Seiten jedes Maximums, die Abdeckprobe und eine Zahl, die hält, mit weniger abgelesenen Stellen als mit zwei Personen: die Zahl am Maximum muss die sein, die die anderen vorhersagten. Was das Messgerät tat, während Sie weg waren, hat niemand gesehen.',
  'Begin with one phone': 'Mit einem Telefon beginnen',
  'Alone: tell somebody where you work, and when they will hear from you.':
    'Allein: jemandem sagen, wo Sie arbeiten und wann Sie sich melden.',
  'Nobody holds the ladder: tie it or foot it. Close the ground below it.':
    'Niemand hält die Leiter: anbinden oder sichern. Den Boden darunter absperren.',
  'One person alone: {way}.': 'Eine Person allein: {way}.',
  'a second phone read the meter by its camera': 'Ein zweites Telefon las das Messgerät mit der Kamera ab',
  'the same person walked to the meter for each number': 'Dieselbe Person ging für jede Zahl zum Messgerät',
  'Stay at the meter. Read it again.': 'Am Messgerät bleiben. Noch einmal ablesen.',
  'Stay: read the meter again': 'Bleiben: noch einmal ablesen',
  'Go to the meter. Say what it shows.': 'Zum Messgerät gehen. Sagen, was es zeigt.',
  'Go and read the meter': 'Hingehen und ablesen',
  'Hands off. Now go to the meter.': 'Hände weg. Jetzt zum Messgerät gehen.',
  'Hands off: go to the meter': 'Hände weg: zum Messgerät gehen',
  'Stay at the meter. Proving that it holds.': 'Am Messgerät bleiben. Es wird geprüft, ob der Wert hält.',
  'Stay: proving steady': 'Bleiben: Prüfung auf Ruhe',
  'Talk hands-free from the start: on': 'Freihändig sprechen von Anfang an: ein',
  'Talk hands-free from the start: off': 'Freihändig sprechen von Anfang an: aus',
  'If nothing is heard from you': 'Wenn nichts von Ihnen zu hören ist',
  'The phone asks whether you are still there, then asks louder, then shows what you agreed with somebody. It cannot call by itself, and nobody is told unless a finger presses its key: it is no rescue.':
    'Das Telefon fragt, ob Sie noch da sind, fragt dann lauter und zeigt dann, was Sie mit jemandem vereinbart haben. Es kann nicht selbst anrufen, und niemand erfährt es, wenn kein Finger seine Taste drückt: Es ist keine Rettung.',
  'Ask after so many minutes of silence': 'Nach so vielen Minuten Stille fragen',
  'What was agreed: who to call, and where you are': 'Was vereinbart ist: wer anzurufen ist und wo Sie sind',
  'It is shown large on this phone, to whoever finds it.':
    'Es steht groß auf diesem Telefon, für jeden, der es findet.',
  'Number to call or text': 'Nummer für Anruf oder Nachricht',
  'Without a number of minutes it does not ask.': 'Ohne Minuten fragt es nicht.',
  'Kept on this phone.': 'Auf diesem Telefon gespeichert.',
  'Still there? Say yes.': 'Noch da? Sagen Sie „ja“.',
  'Are you well? Say yes, or touch the phone.':
    'Geht es Ihnen gut? Sagen Sie „ja“, oder berühren Sie das Telefon.',
  'Nobody answers. Please look for the person on the ladder.':
    'Niemand antwortet. Bitte nach der Person auf der Leiter sehen.',
  'I am here': 'Ich bin da',
  'Call {x}': '{x} anrufen',
  'Send a text': 'Nachricht senden',
  'Send by another app': 'Mit einer anderen App senden',
  'Between {n1} and {n2} minutes, or leave it empty.': 'Zwischen {n1} und {n2} Minuten, oder leer lassen.',
  'Trip {n}: {n1} turns, then the card, then the meter.':
    'Weg {n}: {n1} Drehungen, dann die Karte, dann das Messgerät.',
  'Trip {n}: this turn, then the card, then the meter.':
    'Weg {n}: diese Drehung, dann die Karte, dann das Messgerät.',
  'Trip {n}: {n1} turns, then the meter.': 'Weg {n}: {n1} Drehungen, dann das Messgerät.',
  'Then go to the meter: trip {n}.': 'Dann zum Messgerät gehen: Weg {n}.',
  'Nothing was heard for {n} minutes from the person working alone at {x}.':
    'Seit {n} Minuten ist nichts von der Person zu hören, die allein arbeitet: {x}.',
  'Nothing was heard for {n} minutes from the person on the ladder at {x}.':
    'Von der Person auf der Leiter an {x} war {n} Minuten lang nichts zu hören.',
  'Still there? Nobody at the emitter answered for {n} minutes. Go and look.':
    'Noch da? Am Sender hat {n} Minuten lang niemand geantwortet. Sehen Sie nach.',
  'Still there? The emitter answered again.': 'Noch da? Am Sender wurde wieder geantwortet.',
  'If nothing is heard from me': 'Wenn von mir nichts zu hören ist',
  'Check of the person alone: nobody answered for {n} minutes.':
    'Kontrolle der Person allein: Seit {n} Minuten hat niemand geantwortet.',
  'Check of the person alone: answered again.': 'Kontrolle der Person allein: Es wurde wieder geantwortet.',
};
