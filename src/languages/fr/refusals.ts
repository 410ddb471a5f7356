import type { Sentences } from '../translate.ts';

/** What was refused, and why. */
export const REFUSALS: Sentences = {
  'That entry is not a reading that still counts. Nothing was changed.':
    "Cette entrée n'est pas une valeur qui compte encore. Rien n'a été changé.",
  'That entry cannot be taken back, or already was.': "Cette entrée ne peut pas être annulée, ou l'est déjà.",
  'That entry is not an open issue. Nothing was changed.':
    "Cette entrée n'est pas un point ouvert. Rien n'a été changé.",
  'There is no reading to accept yet.': "Il n'y a pas encore de valeur à accepter.",
  'Accept the alignment first. What is written for the hand-over is about an accepted pair.':
    "Acceptez d'abord l'alignement. Ce qui est écrit pour la remise concerne une paire acceptée.",
  'This job is not practice: its beam is real. Nothing was written down.':
    "Ce travail n'est pas un exercice: son faisceau est réel. Rien n'a été noté.",
  'This is practice on a simulated pair. It is no record, and nobody signs it.':
    "C'est un exercice sur une paire simulée. Ce n'est pas un registre, et personne ne le signe.",
  'This visit has no such step. Nothing was written down.':
    "Cette visite n'a pas une telle étape. Rien n'a été noté.",
  'Nothing is filled in. Nothing was written down.': "Rien n'est rempli. Rien n'a été noté.",
  'That no longer stands: it was struck out or replaced meanwhile. Read the record again.':
    "Cela ne vaut plus: c'est barré ou remplacé entre-temps. Relisez le registre.",
  'Nothing is missing. Say "accept": no override is needed.':
    "Il ne manque rien. Dites «accepter»: il n'y a rien à forcer.",
  'There is nothing to sign yet.': "Il n'y a encore rien à signer.",
  'The record has grown while you read it. Read what is new, then sign again.':
    'Le registre a grandi pendant que vous le lisiez. Lisez ce qui est nouveau, puis signez de nouveau.',
  'The typed signature is not the name of the signer. Type the name as it stands above, or draw the signature.':
    "La signature tapée n'est pas le nom du signataire. Tapez le nom comme il est écrit plus haut, ou dessinez la signature.",
  '{x} has signed this record already. A second signature is for another person.':
    '{x} a déjà signé ce registre. Une deuxième signature est pour une autre personne.',
  'The comparison with the other pairs of the site is not read yet. Wait a moment, then sign.':
    "La comparaison avec les autres paires du site n'est pas encore lue. Attendez un instant, puis signez.",
  'The findings of the site have changed while you read. Read what is new, then sign again.':
    'Les constats du site ont changé pendant votre lecture. Lisez ce qui est nouveau, puis signez de nouveau.',
  '"{x}" is not a reading. Type what the meter showed, such as 142.':
    "\"{x}\" n'est pas une valeur. Tapez ce qu'affichait l'appareil, par exemple 142.",
  'A site has at most {n} pairs. Open another site for the rest.':
    'Un site a au plus {n} paires. Ouvrez un autre site pour le reste.',
  'There is no pair {x} on this site. Nothing was changed.':
    "Il n'y a pas de paire {x} sur ce site. Rien n'a été changé.",
  'The plan of {x} has no meter. Choose the meter for its readings.':
    "Le plan de {x} n'a pas d'appareil. Choisissez l'appareil de ses valeurs.",
  'There is no such time zone. Give a name like "Europe/London" or "UTC".':
    'Ce fuseau horaire n\'existe pas. Donnez un nom comme "Europe/London" ou "UTC".',
  'Two of these pairs have the id {x}.': "Deux de ces paires ont l'identifiant {x}.",
  'The ids {x} and {x1} differ only in capital letters. Give one of them another id.':
    "Les identifiants {x} et {x1} ne diffèrent que par les majuscules. Donnez-en un autre à l'un d'eux.",
};
