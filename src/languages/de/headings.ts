import type { Sentences } from '../translate.ts';

export const HEADINGS: Sentences = {
  Question: 'Frage',
  'Nothing to do': 'Nichts zu tun',
  'Waiting for you': 'Wartet auf Sie',
  Stopped: 'Angehalten',
  'No link': 'Keine Verbindung',
  Gain: 'Verstärkung',
  'Hands off': 'Hände weg',
  'Aim by eye': 'Nach Augenmaß',
  'Beam path': 'Strahlweg',
  Receiver: 'Empfänger',
  'Watch the panel': 'Zentrale beobachten',
  Checklist: 'Prüfliste',
  'Open issue': 'Offener Punkt',
  'Ready to sign': 'Bereit zur Unterschrift',
  Check: 'Prüfen',
  Finished: 'Beendet',
  'for the panel': 'für die Zentrale',
  'for the emitter': 'für den Sender',
  'for the both': 'für beide',
  'connecting again': 'verbindet neu',
  nearly: 'fast',
  Waiting: 'Pause',
  'There is no step until one of you says go on.':
    'Es gibt keinen Schritt, bis jemand von Ihnen „weiter“ sagt.',
  'Emitter: ready?': 'Sender: bereit?',
  'Emitter away': 'Sender nicht da',
  'There is no step until one of you starts again.':
    'Es gibt keinen Schritt, bis jemand von Ihnen neu startet.',
  'Waiting for the panel phone': 'Wartet auf das Telefon der Zentrale',
  'Waiting for the emitter phone': 'Wartet auf das Telefon am Sender',
  'The first step comes when both have joined.': 'Der erste Schritt kommt, wenn beide da sind.',
  'There is no step now. Go on, or say what the meter shows.':
    'Jetzt gibt es keinen Schritt. Weiter, oder sagen Sie, was das Messgerät zeigt.',
  'Hold. Do not turn': 'Warten. Nicht drehen',
  'Asked before:': 'Vorher verlangt:',
  '. If it is already done, say so.': '. Falls schon erledigt, sagen Sie es.',
  'The panel phone is away. This step waits for it.':
    'Das Telefon der Zentrale ist nicht verbunden. Dieser Schritt wartet darauf.',
  'The emitter phone is away. This step waits for it.':
    'Das Telefon am Sender ist nicht verbunden. Dieser Schritt wartet darauf.',
};
