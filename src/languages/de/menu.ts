import type { Sentences } from '../translate.ts';

export const MENU: Sentences = {
  'This job': 'Dieser Auftrag',
  'Stop the job': 'Auftrag anhalten',
  'At this phone': 'An diesem Telefon',
  '(name forgotten)': '(Name vergessen)',
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
  'From now on the sound of what you say is kept with this record for {n} days. Both of you can turn it off in the menu.':
    'Von jetzt an wird der Ton dessen, was Sie sagen, {n} Tage lang mit diesem Protokoll aufbewahrt. Sie können es beide im Menü ausschalten.',
  'The sound of what you say is no longer kept. What was kept before is deleted when its days are over.':
    'Der Ton dessen, was Sie sagen, wird nicht mehr aufbewahrt. Was vorher aufbewahrt wurde, wird gelöscht, wenn seine Tage um sind.',
  'Your voice': 'Ihre Stimme',
  'If you are heard wrong: read ten digits in English, with a short pause after each. It takes fifteen seconds. Where they are heard badly, you are asked more often instead.':
    'Wenn Sie falsch verstanden werden: lesen Sie zehn Ziffern auf Englisch, mit einer kurzen Pause nach jeder. Es dauert fünfzehn Sekunden. Werden sie schlecht gehört, werden Sie öfter gefragt.',
  'Nothing of your voice is stored. What was learnt of it is gone when this page is closed.':
    'Von Ihrer Stimme wird nichts gespeichert. Was von ihr gelernt wurde, ist weg, wenn diese Seite geschlossen wird.',
  'Read ten digits': 'Zehn Ziffern lesen',
  'I have read them': 'Ich habe sie gelesen',
  'Listening to the ten digits': 'Die zehn Ziffern werden gehört',
  'These were not heard as ten digits. Read them again in this order, with a short pause after each, or go on without.':
    'Das wurde nicht als zehn Ziffern gehört. Lesen Sie sie noch einmal in dieser Reihenfolge, mit einer kurzen Pause nach jeder, oder machen Sie ohne weiter.',
  'Your digits were heard well. Nothing changes.': 'Ihre Ziffern wurden gut gehört. Nichts ändert sich.',
  'Some of your digits were heard badly. Until this page is closed you are asked more often.':
    'Einige Ihrer Ziffern wurden schlecht gehört. Bis diese Seite geschlossen wird, werden Sie öfter gefragt.',
  'Forget my voice': 'Meine Stimme vergessen',
  'Sound of what is said': 'Ton des Gesprochenen',
  'Not kept: the server listens, writes down the words, and forgets the sound.':
    'Nicht aufbewahrt: der Server hört zu, schreibt die Wörter auf und vergisst den Ton.',
  'Kept with the record for {n} days, so that a supervisor can listen to a reading that is doubted.':
    '{n} Tage lang mit dem Protokoll aufbewahrt, damit ein Vorgesetzter einen bezweifelten Messwert anhören kann.',
  'Keep the sound for {n} days': 'Den Ton {n} Tage aufbewahren',
  'Do not keep the sound': 'Den Ton nicht aufbewahren',
  'What a phone hears by itself, without the server, is never kept.':
    'Was ein Telefon selbst hört, ohne den Server, wird nie aufbewahrt.',
  Listen: 'Anhören',
  'Practice keeps nothing, and no sound.': 'Übung bewahrt nichts auf, auch keinen Ton.',
  'From now on the sound of what you say is kept with this record for one day. Both of you can turn it off in the menu.':
    'Von jetzt an wird der Ton von dem, was Sie sagen, einen Tag lang mit diesem Protokoll aufbewahrt. Beide können das im Menü ausschalten.',
  'Listen to: {x}': 'Anhören: {x}',
  'There is no sound with this entry.': 'Zu diesem Eintrag gibt es keinen Ton.',
  'The sound is deleted: its days are over.': 'Der Ton ist gelöscht: seine Tage sind um.',
  'The sound is not on the server, or is not the one that was kept.':
    'Der Ton ist nicht auf dem Server, oder es ist nicht der, der aufbewahrt wurde.',
  '{x}, percent filter on': '{x}, Prozent Filter davor',
  'yes, let it in': 'ja, hereinlassen',
  'no, not our phone': 'nein, nicht unser Telefon',
  'a new join code': 'ein neuer Code zum Beitreten',
  'take back entry {n}': 'Eintrag {n} zurücknehmen',
};
