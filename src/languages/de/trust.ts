import type { Sentences } from '../translate.ts';

/** How a phone is told to trust the server. */
export const TRUST: Sentences = {
  'The microphone of this phone': 'Das Mikrofon dieses Telefons',
  'Browsers give a page the microphone only over https from a server that the phone trusts. Everything else, typing too, works without.':
    'Browser geben einer Seite das Mikrofon nur über https von einem Server, dem das Telefon vertraut. Alles andere, auch Tippen, geht ohne.',
  'On this device there is nothing to do. For a phone, open this page at the network address that the server prints.':
    'Auf diesem Gerät ist nichts zu tun. Für ein Telefon öffnen Sie diese Seite unter der Netzadresse, die der Server ausgibt.',
  'This server gives no https, so the microphone stays off. Type instead. Whoever runs the server can start it without':
    'Dieser Server bietet kein https, darum bleibt das Mikrofon aus. Tippen Sie. Wer den Server betreibt, kann ihn starten ohne',
  'Done: this device trusts the server. Allow the microphone when the page asks for it.':
    'Fertig: dieses Gerät vertraut dem Server. Erlauben Sie das Mikrofon, wenn die Seite danach fragt.',
  'Open it over https': 'Über https öffnen',
  'This device does not trust the server yet.': 'Dieses Gerät vertraut dem Server noch nicht.',
  'For a phone: scan this': 'Für ein Telefon: dies scannen',
  'Square code that opens this page on a phone': 'Quadratcode, der diese Seite auf einem Telefon öffnet',
  '1. Get the certificate': '1. Zertifikat holen',
  'Get the certificate': 'Zertifikat holen',
  'If the browser warns of the download, keep it. The server prints the same number at its start:':
    'Wenn der Browser vor dem Download warnt, behalten Sie ihn. Der Server gibt beim Start dieselbe Nummer aus:',
  '2. Tell the device to trust it': '2. Dem Gerät sagen, dass es ihm vertraut',
  'It is good only for addresses of private networks, for names that end in .local, and for this server. Take it away again in the same place.':
    'Es gilt nur für Adressen privater Netze, für Namen, die auf .local enden, und für diesen Server. An derselben Stelle entfernen Sie es wieder.',
  '3. Open the page over https': '3. Seite über https öffnen',
  'Check it over https': 'Über https prüfen',
  'There the phone begins anew: join a job that is under way with a new code from the other phone.':
    'Dort beginnt das Telefon neu: treten Sie einem laufenden Auftrag mit einem neuen Code vom anderen Telefon bei.',
  'iPhone or iPad': 'iPhone oder iPad',
  Android: 'Android',
  Computer: 'Computer',
  'Use Safari for this page. After "Get the certificate", tap Allow.':
    'Benutzen Sie Safari für diese Seite. Nach "Zertifikat holen" tippen Sie auf Zulassen.',
  'Settings, General, VPN & Device Management: tap':
    'Einstellungen, Allgemein, VPN und Geräteverwaltung: tippen Sie auf',
  ', then Install.': ', dann Installieren.',
  'Settings, General, About, Certificate Trust Settings (at the end): turn on':
    'Einstellungen, Allgemein, Info, Zertifikatsvertrauenseinstellungen (am Ende): schalten Sie ein:',
  '. Without this second step nothing changes.': '. Ohne diesen zweiten Schritt ändert sich nichts.',
  'Settings: search for "CA certificate". It is under Security, Encryption & credentials, Install a certificate.':
    'Einstellungen: suchen Sie nach "CA-Zertifikat". Es steht unter Sicherheit, Verschlüsselung und Anmeldedaten, Zertifikat installieren.',
  'Tap CA certificate, then Install anyway, and choose ladderline.crt in Downloads. The phone may want a screen lock first.':
    'Tippen Sie auf CA-Zertifikat, dann Trotzdem installieren, und wählen Sie ladderline.crt in Downloads. Vielleicht verlangt das Telefon zuerst eine Bildschirmsperre.',
  'Use Chrome. Firefox takes it only after its own setting "Use third party CA certificates".':
    'Benutzen Sie Chrome. Firefox nimmt es nur nach seiner eigenen Einstellung "Use third party CA certificates".',
  'Windows: open the file, Install Certificate, Current User, and choose "Trusted Root Certification Authorities".':
    'Windows: Datei öffnen, Zertifikat installieren, Aktueller Benutzer, und "Vertrauenswürdige Stammzertifizierungsstellen" wählen.',
  'Mac: open the file, then in Keychain Access open it again: Trust, Always Trust.':
    'Mac: Datei öffnen, dann in der Schlüsselbundverwaltung noch einmal öffnen: Vertrauen, Immer vertrauen.',
  'Firefox: Settings, Certificates, View Certificates, Authorities, Import.':
    'Firefox: Einstellungen, Zertifikate, Zertifikate anzeigen, Zertifizierungsstellen, Importieren.',
};
