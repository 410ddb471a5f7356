import type { Sentences } from '../translate.ts';

/** Of a job whose log one phone keeps alone. */
export const BROUGHT: Sentences = {
  'One phone alone kept the record up to here. From here on the server keeps it':
    'Nur ein Telefon hat das Protokoll bis hierher geführt. Von hier an führt es der Server',
  'Kept on this phone only': 'Nur auf diesem Telefon',
  'Only this phone has the record. If the phone is lost or its browser is cleared, the record is lost. Bring it to the server as soon as there is a link.':
    'Nur dieses Telefon hat das Protokoll. Geht das Telefon verloren oder wird sein Browser geleert, ist das Protokoll verloren. Bringen Sie es zum Server, sobald es eine Verbindung gibt.',
  'Bring the record to the server': 'Das Protokoll zum Server bringen',
  'Bringing the record to the server': 'Das Protokoll wird zum Server gebracht',
  'No server at hand?': 'Kein Server erreichbar?',
  'This phone can keep the record alone, and bring it to the server later. Until then nobody else can see it, and it cannot be signed. The record says that one phone alone kept it.':
    'Dieses Telefon kann das Protokoll allein führen und später zum Server bringen. Bis dahin kann es niemand sonst sehen, und es kann nicht unterschrieben werden. Das Protokoll sagt, dass nur ein Telefon es geführt hat.',
  'Begin without the server': 'Ohne den Server beginnen',
  'This needs the server. Bring the record there first.':
    'Das braucht den Server. Bringen Sie das Protokoll zuerst dorthin.',
  'This record is open in another window of this phone, or on its way to the server. Close the other window, or bring the record to the server, then load this page again.':
    'Dieses Protokoll ist in einem anderen Fenster dieses Telefons offen oder auf dem Weg zum Server. Schließen Sie das andere Fenster, oder bringen Sie das Protokoll zum Server, und laden Sie dann diese Seite neu.',
  'This browser cannot keep the record. Leave private browsing or make room on the phone, then try again.':
    'Dieser Browser kann das Protokoll nicht behalten. Verlassen Sie das private Surfen oder machen Sie Platz auf dem Telefon, und versuchen Sie es dann noch einmal.',
  'This phone could not keep that. Make room on it. It is tried again.':
    'Dieses Telefon konnte das nicht behalten. Machen Sie Platz darauf. Es wird noch einmal versucht.',
  'The record that this phone kept is damaged or gone. Show this screen to your supervisor, and do not count on the alignment.':
    'Das Protokoll, das dieses Telefon geführt hat, ist beschädigt oder fehlt. Zeigen Sie diesen Bildschirm Ihrer Aufsicht, und verlassen Sie sich nicht auf die Ausrichtung.',
  'The record is not whole': 'Das Protokoll ist nicht vollständig',
  'Go on with it on this phone': 'Auf diesem Telefon damit weitermachen',
  'The record stays on this phone, and on its first page. Nobody else has it until you bring it to the server.':
    'Das Protokoll bleibt auf diesem Telefon und steht auf der ersten Seite. Niemand sonst hat es, bis Sie es zum Server bringen.',
  'Only this phone has the record. Bring it to the server: it is in the menu.':
    'Nur dieses Telefon hat das Protokoll. Bringen Sie es zum Server: im Menü.',
  'The record that this phone kept is damaged, and the server cannot take it. Show this to your supervisor.':
    'Das Protokoll, das dieses Telefon geführt hat, ist beschädigt, und der Server kann es nicht annehmen. Zeigen Sie das Ihrer Aufsicht.',
  'The record that this phone kept holds entries that only a server writes. The server cannot take it. Show this to your supervisor.':
    'Das Protokoll, das dieses Telefon geführt hat, enthält Einträge, die nur ein Server schreibt. Der Server kann es nicht annehmen. Zeigen Sie das Ihrer Aufsicht.',
  'The server has another record under this number. It cannot take this one. Show this to your supervisor.':
    'Der Server hat unter dieser Nummer ein anderes Protokoll. Er kann dieses nicht annehmen. Zeigen Sie das Ihrer Aufsicht.',
  'This phone can keep the record, and bring it to the server later. The other phone reaches it over the same Wi-Fi, by square codes that the two show each other. Until then nobody else can see the record, and it cannot be signed.':
    'Dieses Telefon kann die Aufzeichnung behalten und sie später zum Server bringen. Das andere Telefon erreicht es im selben WLAN, mit quadratischen Codes, die beide einander zeigen. Bis dahin kann niemand sonst die Aufzeichnung sehen, und sie kann nicht unterschrieben werden.',
  'The server takes no record of a practice.': 'Der Server nimmt keine Aufzeichnung einer Übung.',
  "The record stays on the panel's phone. To come back, meet it again: scan its code.":
    'Die Aufzeichnung bleibt auf dem Telefon an der Zentrale. Um zurückzukommen, treffen Sie es neu: Scannen Sie seinen Code.',
};
