import type { Sentences } from '../translate.ts';

export const MENU: Sentences = {
  'This job': 'Dieser Auftrag',
  'Stop the job': 'Auftrag anhalten',
  'At this phone': 'An diesem Telefon',
  'not named': 'ohne Namen',
  'Give a name': 'Namen angeben',
  'Somebody else is here now': 'Jetzt ist jemand anderes hier',
  'Keep for the record': 'Für das Protokoll aufbewahren',
  'Remark for the record': 'Bemerkung für das Protokoll',
  'Keep the remark': 'Bemerkung aufbewahren',
  Screen: 'Bildschirm',
  'As the phone is set': 'Wie das Telefon eingestellt ist',
  'In the sun': 'In der Sonne',
  'At night': 'Bei Nacht',
  '{theme}: chosen': '{theme}: gewählt',
  'Voice of this phone': 'Stimme dieses Telefons',
  'Voice is on. Turn it off': 'Stimme ist an. Ausschalten',
  'Voice is off. Turn it on': 'Stimme ist aus. Einschalten',
  'Vibration is on. Turn it off': 'Vibration ist an. Ausschalten',
  'Vibration is off. Turn it on': 'Vibration ist aus. Einschalten',
  Pace: 'Tempo',
  Loudness: 'Lautstärke',
  'Try the voice': 'Stimme probieren',
  'This is how I speak.': 'So spreche ich.',
  'Without a link': 'Ohne Verbindung',
  'Another phone takes over': 'Ein anderes Telefon übernimmt',
  'This phone keeps the pages: they open without a link.':
    'Dieses Telefon bewahrt die Seiten auf: sie öffnen sich ohne Verbindung.',
  'What you press or type is kept. It is sent when the link is back.':
    'Was Sie drücken oder tippen, wird aufbewahrt. Es wird gesendet, wenn die Verbindung wieder da ist.',
  '1 thing that you said or pressed is kept here. It is sent when the link is back.':
    '1 Sache, die Sie gesagt oder gedrückt haben, ist hier aufbewahrt. Sie wird gesendet, wenn die Verbindung wieder da ist.',
  '{n} things that you said or pressed are kept here. It is sent when the link is back.':
    '{n} Sachen, die Sie gesagt oder gedrückt haben, sind hier aufbewahrt. Sie werden gesendet, wenn die Verbindung wieder da ist.',
  'This is the job as this phone last saw it. The other phone may have gone on since.':
    'Dies ist der Auftrag, wie ihn dieses Telefon zuletzt gesehen hat. Das andere Telefon kann seitdem weitergemacht haben.',
  'The record stays on the server. To come back, this phone needs a new code.':
    'Das Protokoll bleibt auf dem Server. Um zurückzukommen, braucht dieses Telefon einen neuen Code.',
};
