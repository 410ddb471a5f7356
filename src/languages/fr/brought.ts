import type { Sentences } from '../translate.ts';

/** Of a job whose log one phone keeps alone. */
export const BROUGHT: Sentences = {
  'One phone alone kept the record up to here. From here on the server keeps it':
    "Jusqu'ici, un seul téléphone a tenu le dossier. À partir d'ici, le serveur le tient",
  'Kept on this phone only': 'Seulement sur ce téléphone',
  'Only this phone has the record. If the phone is lost or its browser is cleared, the record is lost. Bring it to the server as soon as there is a link.':
    "Seul ce téléphone a le dossier. Si le téléphone est perdu ou son navigateur vidé, le dossier est perdu. Apportez-le au serveur dès qu'il y a une liaison.",
  'Bring the record to the server': 'Apporter le dossier au serveur',
  'Bringing the record to the server': 'Le dossier est apporté au serveur',
  'No server at hand?': 'Pas de serveur à portée ?',
  'This phone can keep the record alone, and bring it to the server later. Until then nobody else can see it, and it cannot be signed. The record says that one phone alone kept it.':
    "Ce téléphone peut tenir le dossier seul, et l'apporter au serveur plus tard. Jusque-là, personne d'autre ne peut le voir, et il ne peut pas être signé. Le dossier dit qu'un seul téléphone l'a tenu.",
  'Begin without the server': 'Commencer sans le serveur',
  'This needs the server. Bring the record there first.':
    "Cela demande le serveur. Apportez-y d'abord le dossier.",
  'This record is open in another window of this phone, or on its way to the server. Close the other window, or bring the record to the server, then load this page again.':
    "Ce dossier est ouvert dans une autre fenêtre de ce téléphone, ou en route vers le serveur. Fermez l'autre fenêtre, ou apportez le dossier au serveur, puis rechargez cette page.",
  'This browser cannot keep the record. Leave private browsing or make room on the phone, then try again.':
    'Ce navigateur ne peut pas garder le dossier. Quittez la navigation privée ou faites de la place sur le téléphone, puis réessayez.',
  'This phone could not keep that. Make room on it. It is tried again.':
    "Ce téléphone n'a pas pu garder cela. Faites-y de la place. Un nouvel essai suivra.",
  'The record that this phone kept is damaged or gone. Show this screen to your supervisor, and do not count on the alignment.':
    "Le dossier que ce téléphone tenait est abîmé ou absent. Montrez cet écran à votre superviseur, et ne comptez pas sur l'alignement.",
  'The record is not whole': "Le dossier n'est pas entier",
  'Go on with it on this phone': 'Continuer sur ce téléphone',
  'The record stays on this phone, and on its first page. Nobody else has it until you bring it to the server.':
    "Le dossier reste sur ce téléphone, sur sa première page. Personne d'autre ne l'a avant que vous l'apportiez au serveur.",
  'Only this phone has the record. Bring it to the server: it is in the menu.':
    "Seul ce téléphone a le dossier. Apportez-le au serveur : c'est dans le menu.",
  'The record that this phone kept is damaged, and the server cannot take it. Show this to your supervisor.':
    'Le dossier que ce téléphone tenait est abîmé, et le serveur ne peut pas le prendre. Montrez cela à votre superviseur.',
  'The record that this phone kept holds entries that only a server writes. The server cannot take it. Show this to your supervisor.':
    'Le dossier que ce téléphone tenait contient des entrées que seul un serveur écrit. Le serveur ne peut pas le prendre. Montrez cela à votre superviseur.',
  'The server has another record under this number. It cannot take this one. Show this to your supervisor.':
    'Le serveur a un autre dossier sous ce numéro. Il ne peut pas prendre celui-ci. Montrez cela à votre superviseur.',
  'This phone can keep the record, and bring it to the server later. The other phone reaches it over the same Wi-Fi, by square codes that the two show each other. Until then nobody else can see the record, and it cannot be signed.':
    "Ce téléphone peut garder l'enregistrement et l'apporter au serveur plus tard. L'autre téléphone le joint sur le même Wi-Fi, par des codes carrés que les deux se montrent. D'ici là, personne d'autre ne peut voir l'enregistrement, et il ne peut pas être signé.",
  'The server takes no record of a practice.': "Le serveur n'accepte pas d'enregistrement d'un exercice.",
  "The record stays on the panel's phone. To come back, meet it again: scan its code.":
    "L'enregistrement reste sur le téléphone de la centrale. Pour revenir, retrouvez-le : scannez son code.",
};
