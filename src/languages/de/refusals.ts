import type { Sentences } from '../translate.ts';

/** What was refused, and why. */
export const REFUSALS: Sentences = {
  'That entry is not a reading that still counts. Nothing was changed.':
    'Dieser Eintrag ist kein Messwert, der noch zählt. Nichts wurde geändert.',
  'That entry cannot be taken back, or already was.':
    'Dieser Eintrag kann nicht zurückgenommen werden, oder er wurde es schon.',
  'That entry is not an open issue. Nothing was changed.':
    'Dieser Eintrag ist kein offener Punkt. Nichts wurde geändert.',
  'There is no reading to accept yet.': 'Es gibt noch keinen Messwert zum Annehmen.',
  'Accept the alignment first. What is written for the hand-over is about an accepted pair.':
    'Nehmen Sie zuerst die Ausrichtung an. Was für die Übergabe geschrieben wird, gilt einem angenommenen Paar.',
  'This job is not practice: its beam is real. Nothing was written down.':
    'Dieser Auftrag ist keine Übung: sein Strahl ist echt. Nichts wurde aufgeschrieben.',
  'This is practice on a simulated pair. It is no record, and nobody signs it.':
    'Das ist Übung an einem simulierten Paar. Es ist kein Protokoll, und niemand unterschreibt es.',
  'This visit has no such step. Nothing was written down.':
    'Dieser Besuch hat keinen solchen Schritt. Nichts wurde aufgeschrieben.',
  'Nothing is filled in. Nothing was written down.': 'Nichts ist ausgefüllt. Nichts wurde aufgeschrieben.',
  'That no longer stands: it was struck out or replaced meanwhile. Read the record again.':
    'Das gilt nicht mehr: es wurde inzwischen gestrichen oder ersetzt. Lesen Sie das Protokoll noch einmal.',
  'Nothing is missing. Say "accept": no override is needed.':
    'Es fehlt nichts. Sagen Sie „annehmen“: kein Übergehen nötig.',
  'There is nothing to sign yet.': 'Es gibt noch nichts zu unterschreiben.',
  'The record has grown while you read it. Read what is new, then sign again.':
    'Das Protokoll ist gewachsen, während Sie es lasen. Lesen Sie das Neue, dann unterschreiben Sie noch einmal.',
  'The typed signature is not the name of the signer. Type the name as it stands above, or draw the signature.':
    'Die getippte Unterschrift ist nicht der Name der Person, die unterschreibt. Tippen Sie den Namen, wie er oben steht, oder zeichnen Sie die Unterschrift.',
  '{x} has signed this record already. A second signature is for another person.':
    '{x} hat dieses Protokoll schon unterschrieben. Eine zweite Unterschrift ist für eine andere Person.',
  'The comparison with the other pairs of the site is not read yet. Wait a moment, then sign.':
    'Der Vergleich mit den anderen Paaren des Objekts ist noch nicht gelesen. Warten Sie einen Moment, dann unterschreiben Sie.',
  'The findings of the site have changed while you read. Read what is new, then sign again.':
    'Die Befunde des Objekts haben sich geändert, während Sie lasen. Lesen Sie das Neue, dann unterschreiben Sie noch einmal.',
  '"{x}" is not a reading. Type what the meter showed, such as 142.':
    '"{x}" ist kein Messwert. Tippen Sie, was das Messgerät zeigte, zum Beispiel 142.',
  'A site has at most {n} pairs. Open another site for the rest.':
    'Ein Objekt hat höchstens {n} Paare. Eröffnen Sie ein weiteres Objekt für den Rest.',
  'There is no pair {x} on this site. Nothing was changed.':
    'Es gibt kein Paar {x} in diesem Objekt. Nichts wurde geändert.',
  'The plan of {x} has no meter. Choose the meter for its readings.':
    'Der Plan von {x} hat kein Messgerät. Wählen Sie das Messgerät für seine Messwerte.',
  'There is no such time zone. Give a name like "Europe/London" or "UTC".':
    'Diese Zeitzone gibt es nicht. Geben Sie einen Namen wie "Europe/London" oder "UTC" an.',
  'Two of these pairs have the id {x}.': 'Zwei dieser Paare haben die Kennung {x}.',
  'The ids {x} and {x1} differ only in capital letters. Give one of them another id.':
    'Die Kennungen {x} und {x1} unterscheiden sich nur in Großbuchstaben. Geben Sie einem Paar eine andere.',
};
