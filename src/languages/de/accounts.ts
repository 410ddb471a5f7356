import type { Sentences } from '../translate.ts';

export const ACCOUNTS: Sentences = {
  'Whoever runs this server asks for an account before a site or a job is opened, and for a signature. Sign in with your passkey.':
    'Wer diesen Server betreibt, verlangt ein Konto, bevor ein Objekt oder ein Auftrag eröffnet wird, und für eine Unterschrift. Melden Sie sich mit Ihrem Passkey an.',
  'This was left alone for too long, or too long ago begun. Sign in again with your passkey, then try once more.':
    'Das blieb zu lange liegen oder wurde vor zu langer Zeit begonnen. Melden Sie sich noch einmal mit Ihrem Passkey an und versuchen Sie es wieder.',
  'This server has no accounts: nobody needs one here.':
    'Dieser Server hat keine Konten: Hier braucht niemand eines.',
  'This passkey opens nothing here. Its account was withdrawn, or it belongs to another server. Ask whoever runs this server for an invitation.':
    'Dieser Passkey öffnet hier nichts. Sein Konto wurde entzogen, oder er gehört zu einem anderen Server. Bitten Sie die Person, die diesen Server betreibt, um eine Einladung.',
  'The passkey was not taken. Try once more. If it is refused again, ask whoever runs this server to withdraw the account and to invite you anew.':
    'Der Passkey wurde nicht angenommen. Versuchen Sie es noch einmal. Wird er wieder abgelehnt, bitten Sie die Person, die diesen Server betreibt, das Konto zu entziehen und Sie neu einzuladen.',
  'The passkey could not be taken. Begin once more from the same link.':
    'Der Passkey konnte nicht angenommen werden. Beginnen Sie noch einmal mit demselben Link.',
  'This invitation is no longer good. It works once, and for a day. Ask for a new one.':
    'Diese Einladung gilt nicht mehr. Sie gilt einmal und einen Tag lang. Bitten Sie um eine neue.',
  'This is the only passkey of the account, and it stays. Add another one first.':
    'Das ist der einzige Passkey des Kontos, er bleibt. Fügen Sie zuerst einen anderen hinzu.',
  'There is no such passkey, or it was removed before.':
    'Diesen Passkey gibt es nicht, oder er wurde schon entfernt.',
  'This device is not signed in any more.': 'Dieses Gerät ist nicht mehr angemeldet.',
  'may open jobs': 'darf Aufträge eröffnen',
  'may open sites and jobs, and sign records':
    'darf Objekte und Aufträge eröffnen und Protokolle unterschreiben',
  'may open sites and jobs, sign records, invite and withdraw people, and see who read what':
    'darf Objekte und Aufträge eröffnen, Protokolle unterschreiben, Personen einladen und ihnen das Konto entziehen, und sehen, wer was gelesen hat',
  '{role}: {what they may}': '{role}: {what they may}',
  Technician: 'Techniker',
  Supervisor: 'Aufsicht',
  Administrator: 'Verwaltung',
  'Your account may not open jobs. Ask an administrator.':
    'Ihr Konto darf keine Aufträge eröffnen. Fragen Sie die Verwaltung.',
  'Your account may not open sites: a supervisor may. Ask an administrator.':
    'Ihr Konto darf keine Objekte eröffnen, das darf die Aufsicht. Fragen Sie die Verwaltung.',
  'Your account may not sign records: a supervisor may. Ask an administrator.':
    'Ihr Konto darf keine Protokolle unterschreiben, das darf die Aufsicht. Fragen Sie die Verwaltung.',
  'Only an administrator sees and changes who has an account.':
    'Nur die Verwaltung sieht und ändert, wer ein Konto hat.',
  'A passkey belongs to a name, and you opened this page under an address of digits. Open it under the name of the server: whoever runs it knows the name. On the server’s own machine, localhost works.':
    'Ein Passkey gehört zu einem Namen, und Sie haben diese Seite unter einer Adresse aus Ziffern geöffnet. Öffnen Sie sie unter dem Namen des Servers: Wer ihn betreibt, kennt den Namen. Auf dem Rechner des Servers selbst geht localhost.',
  'Passkeys work only over https. Open this page with https:// before the name of the server.':
    'Passkeys gehen nur über https. Öffnen Sie diese Seite mit https:// vor dem Namen des Servers.',
  'This browser can use no passkeys. Use a newer one, or another device.':
    'Dieser Browser kann keine Passkeys benutzen. Nehmen Sie einen neueren oder ein anderes Gerät.',
  'No passkey was given. Try again. If the browser warned of the certificate of this server, trust it first: open /trust.':
    'Es wurde kein Passkey gegeben. Versuchen Sie es noch einmal. Hat der Browser vor dem Zertifikat dieses Servers gewarnt, vertrauen Sie ihm zuerst: /trust öffnen.',
  'This device has a passkey of this account already.': 'Dieses Gerät hat schon einen Passkey dieses Kontos.',
  'Sign in with a passkey': 'Mit einem Passkey anmelden',
  'Signed in as': 'Angemeldet als',
  'Your invitation': 'Ihre Einladung',
  'A passkey replaces a password: this device keeps it and asks for your finger, your face or your PIN. Nothing is typed, and nothing can be read off your screen.':
    'Ein Passkey ersetzt ein Kennwort: Dieses Gerät bewahrt ihn auf und fragt nach Ihrem Finger, Ihrem Gesicht oder Ihrer PIN. Nichts wird getippt, und nichts kann vom Bildschirm abgelesen werden.',
  'Signatures that you give here will carry this name. If it is not yours, stop here.':
    'Unterschriften, die Sie hier geben, tragen diesen Namen. Ist es nicht Ihrer, hören Sie hier auf.',
  'Make the passkey': 'Passkey anlegen',
  'Your account': 'Ihr Konto',
  'Anybody who reaches this server may open sites and jobs. Nobody signs in here.':
    'Wer diesen Server erreicht, darf Objekte und Aufträge eröffnen. Hier meldet sich niemand an.',
  'This device has shown the passphrase, and may open sites and jobs.':
    'Dieses Gerät hat das Kennwort gezeigt und darf Objekte und Aufträge eröffnen.',
  'This device is asked for the passphrase when it opens a site or a job.':
    'Dieses Gerät wird nach dem Kennwort gefragt, wenn es ein Objekt oder einen Auftrag eröffnet.',
  'Who opens sites and jobs here, or signs, has an account. To join a job, the code is enough.':
    'Wer hier Objekte und Aufträge eröffnet oder unterschreibt, hat ein Konto. Um einem Auftrag beizutreten, genügt der Code.',
  'No account, or a lost device? Ask whoever runs this server for an invitation.':
    'Kein Konto, oder das Gerät verloren? Bitten Sie die Person, die diesen Server betreibt, um eine Einladung.',
  'Sign in': 'Anmelden',
  'Sign out': 'Abmelden',
  'Sign out on all devices': 'Auf allen Geräten abmelden',
  Passkeys: 'Passkeys',
  Made: 'Angelegt',
  'Not used since': 'Seither nicht benutzt',
  'Only under the name': 'Nur unter dem Namen',
  'Remove this passkey': 'Diesen Passkey entfernen',
  'Yes, remove this passkey': 'Ja, diesen Passkey entfernen',
  'Add a passkey': 'Passkey hinzufügen',
  'For a second device. One passkey may be lost, and you still come in.':
    'Für ein zweites Gerät. Geht ein Passkey verloren, kommen Sie trotzdem hinein.',
  'Signed in': 'Angemeldet',
  'This device': 'Dieses Gerät',
  'Sign this device out': 'Dieses Gerät abmelden',
  'This server has no such sign-in. Use a passkey, or ask whoever runs this server.':
    'Dieser Server kennt diese Anmeldung nicht. Nehmen Sie einen Passkey, oder fragen Sie, wer diesen Server betreibt.',
  'This sign-in was not begun on this device, took longer than five minutes, or was used before. Begin again.':
    'Diese Anmeldung wurde nicht auf diesem Gerät begonnen, dauerte länger als fünf Minuten oder wurde schon benutzt. Beginnen Sie noch einmal.',
  '{x} does not answer now. Try again in a minute. If it goes on, tell whoever runs this server.':
    '{x} antwortet jetzt nicht. Versuchen Sie es in einer Minute noch einmal. Bleibt es so, sagen Sie es dem, der diesen Server betreibt.',
  '{x} did not sign you in. Begin again. If it goes on, tell whoever runs this server.':
    '{x} hat Sie nicht angemeldet. Beginnen Sie noch einmal. Bleibt es so, sagen Sie es dem, der diesen Server betreibt.',
  '{x} knows you, but gives you no role here. Ask whoever looks after the accounts of your firm.':
    '{x} kennt Sie, gibt Ihnen hier aber keine Rolle. Fragen Sie, wer die Konten Ihrer Firma betreut.',
  '{x} does not say your name, and signatures need one. Ask whoever looks after the accounts of your firm.':
    '{x} nennt Ihren Namen nicht, und Unterschriften brauchen einen. Fragen Sie, wer die Konten Ihrer Firma betreut.',
  'Sign in with {x}': 'Anmelden mit {x}',
  'Not signed in': 'Nicht angemeldet',
  'Signing in': 'Anmeldung läuft',
  'Begin again': 'Noch einmal beginnen',
  'Your firm gives you this account, and says what it may do here.':
    'Ihre Firma gibt Ihnen dieses Konto und sagt, was es hier darf.',
};
