import type { Sentences } from '../translate.ts';

/** The phone that follows a tone or a lamp. */
export const INDICATOR: Sentences = {
  'The phone at the panel listens to the tone now.': 'Le téléphone de la centrale écoute maintenant le son.',
  'The phone at the panel looks at the lamp now.': 'Le téléphone de la centrale regarde maintenant la lampe.',
  'The phone at the panel has stopped listening.': "Le téléphone de la centrale n'écoute plus.",
  'The phone at the panel has stopped looking at the lamp.':
    'Le téléphone de la centrale ne regarde plus la lampe.',
  'The phone at the panel has lost the lamp: it was moved.':
    'Le téléphone de la centrale a perdu la lampe: il a été déplacé.',
  'The phone at the panel sees nothing around the lamp: it is too dark.':
    'Le téléphone de la centrale ne voit rien autour de la lampe: il fait trop sombre.',
  'The phone at the panel cannot tell the tone: it is too loud there.':
    'Le téléphone de la centrale ne distingue pas le son: il y a trop de bruit.',
  'The phone at the panel hears nothing at all: its microphone is off.':
    "Le téléphone de la centrale n'entend rien du tout: son micro est coupé.",
  'The phone at the panel cannot tell what the indicator does.':
    "Le téléphone de la centrale ne sait pas ce que fait l'indicateur.",
  'It was taught: what counts is how strong it is.': 'Il a appris: ce qui compte est son intensité.',
  'It was taught: what counts is its pitch.': 'Il a appris: ce qui compte est sa hauteur.',
  'It was taught: what counts is its colour.': 'Il a appris: ce qui compte est sa couleur.',
  'It was taught: what counts is how often it goes on.':
    "Il a appris: ce qui compte est le nombre de fois où il s'allume.",
  '{value} (by a tone, taught profile, {n} moments)': '{value} (par un son, profil appris, {n} instants)',
  '{value} (by a lamp, taught profile, {n} moments)': '{value} (par une lampe, profil appris, {n} instants)',
  'by a tone, taught profile': 'par un son, profil appris',
  'by a lamp, taught profile': 'par une lampe, profil appris',
  'The phone at the panel tells what the light does. Only what it tells counts.':
    'Le téléphone de la centrale dit ce que fait la lumière. Seul compte ce qu’il dit.',
  'This phone follows the indicator': "Ce téléphone suit l'indicateur",
  'What tells of the light at the panel? Prop this phone there, so that nobody has to hold it.':
    "Qu'est-ce qui indique la lumière à la centrale? Posez ce téléphone là, de sorte que personne n'ait à le tenir.",
  'A tone': 'Un son',
  'A lamp': 'Une lampe',
  'Now show it the tone three times. Press, and be quiet until it says that it has learnt. Leave the phone as it stands.':
    "Faites-lui entendre le son trois fois. Appuyez, et restez silencieux jusqu'à ce qu'il dise qu'il a appris. Laissez le téléphone comme il est.",
  'Draw the box close round the lamp. Around it must be edges to see, such as those of the panel. Then show it the lamp three times: press, and keep out of the picture.':
    "Tracez le cadre au plus près de la lampe. Autour, il faut des bords visibles, comme ceux de la centrale. Montrez-lui ensuite la lampe trois fois: appuyez, et restez hors de l'image.",
  'The box round the lamp. The arrow keys move it; with Shift they change its size.':
    'Le cadre autour de la lampe. Les flèches le déplacent; avec Maj elles changent sa taille.',
  'Show me none': 'Montre-moi rien',
  'No light at all: cover the beam.': 'Aucune lumière: couvrez le faisceau.',
  'This is none': "C'est rien",
  'Show me some': 'Montre-moi un peu',
  'So little light that you can just tell it from none.':
    'Si peu de lumière que vous la distinguez à peine de rien.',
  'This is some': "C'est un peu",
  'Show me plenty': 'Montre-moi beaucoup',
  'So much light that more changes nothing.': 'Tant de lumière que plus ne change rien.',
  'This is plenty': "C'est beaucoup",
  Learnt: 'Appris',
  'Learning: keep still': 'Il apprend: ne bougez pas',
  Begin: 'Commencer',
  'soon after I press': 'juste après mon appui',
  '1 minute after I press': '1 minute après mon appui',
  '3 minutes after I press': '3 minutes après mon appui',
  'Begins in {n} s': 'Commence dans {n} s',
  'Teach it once more': 'Lui apprendre encore une fois',
  'Follow it': 'Le suivre',
  'Nothing was there at some or at plenty. Bring the phone closer, or choose the other kind of indicator.':
    "À un peu ou à beaucoup, il n'y avait rien. Approchez le téléphone, ou choisissez l'autre sorte d'indicateur.",
  'Some and plenty looked or sounded alike. Show it less at some, and more at plenty.':
    'Un peu et beaucoup étaient pareils. Montrez moins à un peu, et plus à beaucoup.',
  'None and some looked or sounded alike. Show it a little more at some.':
    'Rien et un peu étaient pareils. Montrez un peu plus à un peu.',
  'Some did not lie between none and plenty. Show it all three once more, in this order.':
    "Un peu n'était pas entre rien et beaucoup. Montrez les trois encore une fois, dans cet ordre.",
  'It could not hear or see well enough just then. Try that one again.':
    "À ce moment il n'entendait ou ne voyait pas assez bien. Recommencez celui-là.",
  Waits: 'Attend',
  'Too loud!': 'Trop de bruit!',
  'Hears nothing!': "N'entend rien!",
  'Not clear!': 'Pas clair!',
  'Put the phone back, or teach it once more. Nothing is told until then.':
    "Remettez le téléphone à sa place, ou apprenez-lui encore une fois. D'ici là, il ne dit rien.",
  'Give the panel light, or uncover the camera. Nothing is told until then.':
    "Éclairez la centrale, ou dégagez la caméra. D'ici là, il ne dit rien.",
  'It is louder than when it was taught. Wait, or stop the noise. Nothing is told until then.':
    "Il y a plus de bruit que lorsqu'il a appris. Attendez, ou arrêtez le bruit. D'ici là, il ne dit rien.",
  'Look whether another app has the microphone. Nothing is told until then.':
    "Regardez si une autre application a le micro. D'ici là, il ne dit rien.",
  'It fits nothing that it was taught. Look at the indicator, or teach it once more.':
    "Cela ne correspond à rien de ce qu'il a appris. Regardez l'indicateur, ou apprenez-lui encore une fois.",
  'It tells what the light does each time it is asked for. Nothing was asked for yet.':
    "Il dit ce que fait la lumière chaque fois qu'on le demande. Rien n'a encore été demandé.",
  'This browser changes the loudness of the microphone by itself: only the pitch, or how often it goes on, can be followed.':
    'Ce navigateur change lui-même le volume du micro: on ne peut suivre que la hauteur, ou le nombre de fois où il sonne.',
  'A second phone listens to a tone or looks at a lamp':
    'Un second téléphone écoute un son ou regarde une lampe',
  'Two phones, and something to prop one of them at the panel. A tone or a lamp there that follows the light. No number. A detector that sets its own gain cannot be aligned so.':
    "Deux téléphones, et de quoi poser l'un d'eux à la centrale. Là, un son ou une lampe qui suit la lumière. Aucun nombre. Un détecteur qui règle lui-même son gain ne peut pas être aligné ainsi.",
  'Prop the first phone and teach it: show it none, some and plenty.':
    'Posez le premier téléphone et apprenez-lui: montrez-lui rien, un peu et beaucoup.',
  'Climb. The propped phone tells what the light does: rising, falling, steady, nothing, too strong. The phone that you carry speaks each order. Expect about {n} turns.':
    'Montez. Le téléphone posé dit ce que fait la lumière: monte, baisse, stable, rien, trop de lumière. Le téléphone que vous portez dit chaque ordre. Comptez environ {n} tours.',
  'Weaker than with numbers: accepted on trends, no reading. Each trend was told by a phone, by the profile that you taught it, and the record names both. How strong the signal is, and whether it lies in the band, nobody read. Read it at the panel before you rely on it.':
    "Plus faible qu'avec des nombres: accepté sur des tendances, sans lecture. Chaque tendance a été dite par un téléphone, selon le profil que vous lui avez appris, et le journal nomme les deux. Personne n'a lu la force du signal, ni s'il est dans la plage. Lisez-le à la centrale avant de vous y fier.",
  'Begin with a tone or a lamp': 'Commencer avec un son ou une lampe',
  'accepted on trends, no reading: a second phone told what a tone or a lamp did, by a profile that the same person taught it':
    'accepté sur des tendances, sans lecture: un second téléphone a dit ce que faisait un son ou une lampe, selon un profil que la même personne lui a appris',
  'light seen': 'lumière vue',
  'Hands off: the phone at the panel tells what the light does.':
    'Mains écartées: le téléphone de la centrale dit ce que fait la lumière.',
  'The other phone is not taught yet': "L'autre téléphone n'a pas encore appris",
  'Teach the phone at the panel none, some and plenty. Then it tells what the light does.':
    'Montrez au téléphone de la centrale rien, un peu et beaucoup. Ensuite il dit ce que fait la lumière.',
  'Wait: the other phone tells': "Attendez: l'autre téléphone le dit",
  'Leave the card in the beam: the phone at the panel tells what is left.':
    'Laissez la carte dans le faisceau: le téléphone de la centrale dit ce qui reste.',
  'Leave the card: the other phone tells': "Laissez la carte: l'autre téléphone le dit",
  some: 'un peu',
  plenty: 'beaucoup',
};
