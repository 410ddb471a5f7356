import type { Sentences } from '../translate.ts';

export const LOOKING: Sentences = {
  'You see an indicator from the ladder': "Vous voyez un témoin depuis l'échelle",
  'This phone only. A lamp or a tone that follows the light, and that you see or hear from the ladder. No number. A detector that sets its own gain cannot be aligned so.':
    "Ce téléphone seulement. Une lampe ou un son qui suit la lumière, et que vous voyez ou entendez depuis l'échelle. Aucun nombre. Un détecteur qui règle lui-même son gain ne peut pas être aligné ainsi.",
  'Set the gain beforehand so that the indicator is neither dark nor at its limit.':
    "Réglez d'abord le gain pour que le témoin ne soit ni éteint ni à sa limite.",
  'Turn as it says, and say "done" each time. Then say only what the light does: rising, falling, steady, nothing, too strong.':
    'Tournez comme il le dit, et dites « fait » chaque fois. Dites ensuite seulement ce que fait la lumière : monte, baisse, stable, rien, trop de lumière.',
  'It is held against your last look: look well each time, and always from the same place.':
    "C'est comparé à votre dernier regard : regardez bien chaque fois, et toujours du même endroit.",
  'Expect about {n} turns. For the blocking check you put a card into the beam and look from the ladder.':
    "Comptez environ {n} tours. Pour l'essai de masquage vous placez une carte dans le faisceau et regardez depuis l'échelle.",
  'Weaker than with numbers: accepted on trends, no reading. Each side of each peak was seen to be darker twice, the light went out behind a card, and then stayed the same. How strong the signal is, and whether it lies in the band, nobody read. Read it at the panel before you rely on it.':
    "Plus faible qu'avec des nombres : accepté d'après les tendances, sans lecture. Chaque côté de chaque maximum a été vu plus sombre deux fois, la lumière s'est éteinte derrière une carte, puis elle est restée la même. La force du signal, et s'il est dans la bande, personne ne l'a lu. Lisez-le à la centrale avant de vous y fier.",
  'Begin with an indicator': 'Commencer avec un témoin',
  'accepted on trends, no reading: the same person saw from the ladder what an indicator did':
    "accepté d'après les tendances, sans lecture : la même personne a vu depuis l'échelle ce que faisait un témoin",
  'Look at the indicator only when you stand still and hold on. Never look into the emitter or a laser.':
    "Ne regardez le témoin que lorsque vous êtes immobile et bien tenu. Ne regardez jamais dans l'émetteur ni dans un laser.",
  'Look: steady, nothing or too strong?': 'Regardez : « stable », « rien » ou « trop de lumière »?',
  'Steady, nothing, too strong?': 'Stable, rien, trop de lumière?',
  'Against your last look: rising, falling, steady?':
    'Par rapport à votre dernier regard : monte, baisse, stable?',
  'Look again: still steady?': 'Regardez encore : toujours « stable »?',
  'Still steady?': 'Toujours stable?',
  'Behind the card: nothing, or steady?': 'Derrière la carte : « rien » ou « stable »?',
  'Behind the card: nothing?': 'Derrière la carte : rien?',
  'Too soon: not counted. Wait until you are asked.':
    "Trop tôt : cela ne compte pas. Attendez qu'on vous le demande.",
  'No number counts here. Say rising, falling, steady, nothing or too strong.':
    'Aucun nombre ne compte ici. Dites « monte », « baisse », « stable », « rien » ou « trop de lumière ».',
  'Say undo. Then say what the light does.': 'Dites « annuler ». Dites ensuite ce que fait la lumière.',
  'a look at the light here': 'un regard sur la lumière ici',
  'light that is not too strong: lower the gain': "une lumière qui n'est pas trop forte : baissez le gain",
  'light seen to fall twice on each side of the horizontal peak':
    'la lumière vue baisser deux fois de chaque côté du maximum horizontal',
  'light seen to fall twice on each side of the vertical peak':
    'la lumière vue baisser deux fois de chaque côté du maximum vertical',
  'both adjusters turned across their peaks, and no rise beside them':
    'les deux vis tournées à travers leur maximum, sans hausse à côté',
  'a look where a stronger peak may be': 'un regard là où un maximum plus fort peut être',
  'the blocking check: blocked, nothing may be seen, and then the same light as before':
    "l'essai de masquage : masqué, on ne doit rien voir, puis la même lumière qu'avant",
  'light that stays the same': 'une lumière qui reste la même',
  'a fresh look': 'un regard récent',
  'Not for a detector that sets its own gain: its indicator stays the same while the light changes.':
    'Pas pour un détecteur qui règle lui-même son gain : son témoin reste le même quand la lumière change.',
  Light: 'Lumière',
  'accepted on trends, no reading': "accepté d'après les tendances, sans lecture",
  'nobody read a number: whether it lies in the band is not known':
    "personne n'a lu de nombre : on ne sait pas s'il est dans la bande",
  'light, no number': 'lumière, sans nombre',
  'Indicator without a number': 'Témoin sans nombre',
  'Look at the light': 'Regardez la lumière',
  Nothing: 'Rien',
  'Too strong': 'Trop forte',
  'Keeps changing': 'Change sans cesse',
  'Nobody read a number: there is nothing to draw. What the light did stands in the exchange.':
    "Personne n'a lu de nombre : il n'y a rien à dessiner. Ce qu'a fait la lumière est dans l'échange.",
};
