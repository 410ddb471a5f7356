import type { Sentences } from '../translate.ts';

export const ACCOUNTS: Sentences = {
  'Whoever runs this server asks for an account before a site or a job is opened, and for a signature. Sign in with your passkey.':
    "La personne qui gère ce serveur demande un compte avant d'ouvrir un site ou un travail, et pour signer. Connectez-vous avec votre clé d'accès.",
  'This was left alone for too long, or too long ago begun. Sign in again with your passkey, then try once more.':
    "C'est resté trop longtemps sans suite, ou commencé il y a trop longtemps. Reconnectez-vous avec votre clé d'accès, puis réessayez.",
  'This server has no accounts: nobody needs one here.':
    "Ce serveur n'a pas de comptes : personne n'en a besoin ici.",
  'This passkey opens nothing here. Its account was withdrawn, or it belongs to another server. Ask whoever runs this server for an invitation.':
    "Cette clé d'accès n'ouvre rien ici. Son compte a été retiré, ou elle est d'un autre serveur. Demandez une invitation à la personne qui gère ce serveur.",
  'The passkey was not taken. Try once more. If it is refused again, ask whoever runs this server to withdraw the account and to invite you anew.':
    "La clé d'accès n'a pas été acceptée. Réessayez. Si elle est refusée encore, demandez à la personne qui gère ce serveur de retirer le compte et de vous inviter à nouveau.",
  'The passkey could not be taken. Begin once more from the same link.':
    "La clé d'accès n'a pas pu être acceptée. Recommencez depuis le même lien.",
  'This invitation is no longer good. It works once, and for a day. Ask for a new one.':
    "Cette invitation n'est plus valable. Elle sert une fois, pendant un jour. Demandez-en une autre.",
  'This is the only passkey of the account, and it stays. Add another one first.':
    "C'est la seule clé d'accès du compte, elle reste. Ajoutez-en d'abord une autre.",
  'There is no such passkey, or it was removed before.':
    "Cette clé d'accès n'existe pas, ou elle a déjà été enlevée.",
  'This device is not signed in any more.': "Cet appareil n'est plus connecté.",
  'may open jobs': 'peut ouvrir des travaux',
  'may open sites and jobs, and sign records': 'peut ouvrir des sites et des travaux, et signer des rapports',
  'may open sites and jobs, sign records, invite and withdraw people, and see who read what':
    'peut ouvrir des sites et des travaux, signer des rapports, inviter et retirer des personnes, et voir qui a lu quoi',
  '{role}: {what they may}': '{role} : {what they may}',
  Technician: 'Technicien',
  Supervisor: 'Responsable',
  Administrator: 'Administrateur',
  'Your account may not open jobs. Ask an administrator.':
    'Votre compte ne peut pas ouvrir de travaux. Demandez à un administrateur.',
  'Your account may not open sites: a supervisor may. Ask an administrator.':
    'Votre compte ne peut pas ouvrir de sites : un responsable le peut. Demandez à un administrateur.',
  'Your account may not sign records: a supervisor may. Ask an administrator.':
    'Votre compte ne peut pas signer de rapports : un responsable le peut. Demandez à un administrateur.',
  'Only an administrator sees and changes who has an account.':
    'Seul un administrateur voit et change qui a un compte.',
  'A passkey belongs to a name, and you opened this page under an address of digits. Open it under the name of the server: whoever runs it knows the name. On the server’s own machine, localhost works.':
    "Une clé d'accès est liée à un nom, et vous avez ouvert cette page sous une adresse en chiffres. Ouvrez-la sous le nom du serveur : la personne qui le gère le connaît. Sur la machine du serveur même, localhost convient.",
  'Passkeys work only over https. Open this page with https:// before the name of the server.':
    "Les clés d'accès ne marchent que par https. Ouvrez cette page avec https:// devant le nom du serveur.",
  'This browser can use no passkeys. Use a newer one, or another device.':
    "Ce navigateur ne peut pas utiliser de clés d'accès. Prenez-en un plus récent, ou un autre appareil.",
  'No passkey was given. Try again. If the browser warned of the certificate of this server, trust it first: open /trust.':
    "Aucune clé d'accès n'a été donnée. Réessayez. Si le navigateur a mis en garde contre le certificat de ce serveur, faites-lui d'abord confiance : ouvrez /trust.",
  'This device has a passkey of this account already.': "Cet appareil a déjà une clé d'accès de ce compte.",
  'Sign in with a passkey': "Se connecter avec une clé d'accès",
  'Signed in as': 'Connecté en tant que',
  'Your invitation': 'Votre invitation',
  'A passkey replaces a password: this device keeps it and asks for your finger, your face or your PIN. Nothing is typed, and nothing can be read off your screen.':
    "Une clé d'accès remplace un mot de passe : cet appareil la garde et demande votre doigt, votre visage ou votre code. Rien n'est tapé, et rien ne peut être lu sur votre écran.",
  'Signatures that you give here will carry this name. If it is not yours, stop here.':
    "Les signatures que vous donnez ici porteront ce nom. Si ce n'est pas le vôtre, arrêtez-vous ici.",
  'Make the passkey': "Créer la clé d'accès",
  'Your account': 'Votre compte',
  'Anybody who reaches this server may open sites and jobs. Nobody signs in here.':
    'Toute personne qui atteint ce serveur peut ouvrir des sites et des travaux. Personne ne se connecte ici.',
  'This device has shown the passphrase, and may open sites and jobs.':
    'Cet appareil a donné le mot de passe, et peut ouvrir des sites et des travaux.',
  'This device is asked for the passphrase when it opens a site or a job.':
    'Le mot de passe est demandé à cet appareil quand il ouvre un site ou un travail.',
  'Who opens sites and jobs here, or signs, has an account. To join a job, the code is enough.':
    'Pour ouvrir ici des sites et des travaux, ou signer, il faut un compte. Pour rejoindre un travail, le code suffit.',
  'No account, or a lost device? Ask whoever runs this server for an invitation.':
    'Pas de compte, ou appareil perdu ? Demandez une invitation à la personne qui gère ce serveur.',
  'Sign in': 'Se connecter',
  'Sign out': 'Se déconnecter',
  'Sign out on all devices': 'Se déconnecter de tous les appareils',
  Passkeys: "Clés d'accès",
  Made: 'Créée',
  'Not used since': 'Pas utilisée depuis',
  'Only under the name': 'Seulement sous le nom',
  'Remove this passkey': "Enlever cette clé d'accès",
  'Yes, remove this passkey': "Oui, enlever cette clé d'accès",
  'Add a passkey': "Ajouter une clé d'accès",
  'For a second device. One passkey may be lost, and you still come in.':
    "Pour un deuxième appareil. Si l'une se perd, vous entrez quand même.",
  'Signed in': 'Connexions',
  'This device': 'Cet appareil',
  'Sign this device out': 'Déconnecter cet appareil',
  'This server has no such sign-in. Use a passkey, or ask whoever runs this server.':
    "Ce serveur ne connaît pas cette connexion. Utilisez une clé d'accès, ou demandez à qui gère ce serveur.",
  'This sign-in was not begun on this device, took longer than five minutes, or was used before. Begin again.':
    'Cette connexion n’a pas commencé sur cet appareil, a pris plus de cinq minutes, ou a déjà servi. Recommencez.',
  '{x} does not answer now. Try again in a minute. If it goes on, tell whoever runs this server.':
    '{x} ne répond pas maintenant. Réessayez dans une minute. Si cela continue, dites-le à qui gère ce serveur.',
  '{x} did not sign you in. Begin again. If it goes on, tell whoever runs this server.':
    '{x} ne vous a pas connecté. Recommencez. Si cela continue, dites-le à qui gère ce serveur.',
  '{x} knows you, but gives you no role here. Ask whoever looks after the accounts of your firm.':
    '{x} vous connaît, mais ne vous donne aucun rôle ici. Demandez à qui gère les comptes de votre entreprise.',
  '{x} does not say your name, and signatures need one. Ask whoever looks after the accounts of your firm.':
    '{x} ne dit pas votre nom, et il en faut un pour signer. Demandez à qui gère les comptes de votre entreprise.',
  'Sign in with {x}': 'Se connecter avec {x}',
  'Not signed in': 'Non connecté',
  'Signing in': 'Connexion en cours',
  'Begin again': 'Recommencer',
  'Your firm gives you this account, and says what it may do here.':
    'Votre entreprise vous donne ce compte, et dit ce qu’il peut faire ici.',
};
