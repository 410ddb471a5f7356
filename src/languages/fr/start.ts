import type { Sentences } from '../translate.ts';

export const START: Sentences = {
  'Join with the code from the panel': 'Rejoindre avec le code de la centrale',
  'Join code': 'Code',
  'The panel phone shows it in large letters, with a square code to scan.':
    "Le téléphone de la centrale l'affiche en grandes lettres, avec un code carré à scanner.",
  Join: 'Rejoindre',
  Joining: 'Connexion',
  'Who is at this phone?': 'Qui est à ce téléphone?',
  'Your name': 'Votre nom',
  'Stands in the record. You can go on without: it then says “not named”.':
    'Figure dans le registre. Vous pouvez continuer sans: il y sera écrit "sans nom".',
  Firm: 'Entreprise',
  'If you like.': 'Si vous voulez.',
  Competence: 'Compétence',
  'Such as a card or a course, if you like.': 'Par exemple une carte ou un stage, si vous voulez.',
  'Two phones, one beam: line it up together.': 'Deux téléphones, un faisceau: alignez-le ensemble.',
  'At the panel': 'À la centrale',
  'At the emitter': "À l'émetteur",
  'You read the meter. This opens a job and gives the code for the other phone.':
    "Vous lisez l'appareil. Ceci ouvre un travail et donne le code pour l'autre téléphone.",
  'You turn the screws. You need the code from the panel.':
    'Vous tournez les vis. Il vous faut le code de la centrale.',
  'A whole site': 'Un site entier',
  'Plan its pairs, see the status of each, and sign the records.':
    "Prévoir ses paires, voir l'état de chacune et signer les registres.",
  'Open a site': 'Ouvrir un site',
  Continue: 'Continuer',
  'Leave this job': 'Quitter ce travail',
  'Yes, leave this job': 'Oui, quitter ce travail',
  "Alarm outputs isolated? Someone told? Ladder footed? The maker's instructions, local code and licensed practice come before anything this tool says.":
    "Sorties d'alarme isolées? Quelqu'un prévenu? Échelle bien calée? Les instructions du fabricant, les règles locales et la pratique agréée priment sur tout ce que dit cet outil.",
  'Language of this phone': 'Langue de ce téléphone',
  'Nobody who grew up with this language has checked it yet. Speaking is understood in English only: type, or use the buttons.':
    "Personne dont c'est la langue maternelle ne l'a encore vérifiée. La parole n'est comprise qu'en anglais: tapez, ou utilisez les boutons.",
  'This language could not be loaded. Try again when there is a link.':
    "Cette langue n'a pas pu être chargée. Réessayez quand il y a une liaison.",
  "The supervisor's pages and the report are English.":
    'Les pages du responsable et le rapport sont en anglais.',
};
