import type { Action, Advice, Question } from '../model/advice.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { JobSetup } from '../model/setup.ts';
import { PRE_AIM_M } from '../plan/geometry.ts';
import { isCommissioning } from '../visit/commission.ts';
import { amountGlyph, amountWords, senseWord } from './amounts.ts';
import { causeText } from './causes.ts';
import { movedText } from './facts.ts';
import { askItem } from './items.ts';
import { lookText } from './looking.ts';
import { nearText, nearWords } from './near.ts';
import {
  ALIGN_AGAIN,
  beamMovedText,
  coverText,
  likeLostBeamText,
  READ_BEHIND,
  READ_CLEAR,
  signalFellText,
  strongerFilterText,
  watchText,
} from './proving.ts';
import { valueText } from './readings.ts';
import { lengthText, shownFor } from './units.ts';
import { walkingText } from './walking.ts';
import { whyText } from './why.ts';

/** An instruction's words: one short spoken sentence, a few words for very large type, and the reason. */
export interface InstructionText {
  say: string;
  show: string;
  why: string;
}

export function instructionText(advice: Advice, setup: JobSetup): InstructionText {
  const walking = setup.alone === 'walking' ? walkingText(advice) : undefined;
  return { ...(walking ?? actionText(advice, setup)), why: whyText(advice, setup) };
}

type SayShow = Omit<InstructionText, 'why'>;

function actionText({ action, rule, figures, because }: Advice, setup: JobSetup): SayShow {
  const { meter } = setup;
  const shown = shownFor(setup);
  const far = shown.path === undefined ? '' : `, ${lengthText(shown.path, shown)} away`;
  switch (action.kind) {
    case 'turn':
      return turnText(action);
    case 'gain':
      return rule === 'set-own-gain' ? OWN_GAIN : gainText(action, meter);
    case 'read':
      return action.as === 'trend' ? lookText({ rule, because }, setup.alone) : readText(rule);
    case 'hold':
      return HOLD[action.reason];
    case 're-aim':
      if (rule === 'beam-moved') return ALIGN_AGAIN;
      if (rule === 'aim-first') {
        return {
          say: 'Aim by eye or laser. Say done.',
          show: `Aim by eye or laser, within ${nearText(PRE_AIM_M, shown)} of the receiver${far}`,
        };
      }
      return {
        say: `Aim by eye, within ${nearWords(PRE_AIM_M, shown)}. Say done.`,
        show: `Aim by eye, within ${nearText(PRE_AIM_M, shown)} of the receiver${far}`,
      };
    case 'block':
      return {
        // A cover at either end darkens the light by way of a wall too, and proves nothing.
        say: 'Dull card in the direct line. Say blocked.',
        show: 'Dull card in the direct line, metres out',
      };
    case 'unblock':
      return { say: 'Uncover the beam. Say clear.', show: 'Uncover the beam' };
    case 'ask':
      return questionText(action.question, meter);
    case 'check': {
      if (rule === 'stronger-filter') return strongerFilterText(figures.filterNeeded);
      const list = action.causes.map(causeText).join('; ');
      if (rule === 'beam-moved') return beamMovedText(list);
      if (rule === 'like-lost-beam') return likeLostBeamText(list);
      if (rule === 'signal-fell') return signalFellText(list);
      return { say: `Check: ${list}. Then say done.`, show: `Check: ${list}` };
    }
    case 'offer-accept':
      if (rule === 'keep')
        return { say: 'As the last visit left it. Say accept.', show: 'As left last: say "accept"' };
      return {
        say: 'All is proven. Say accept.',
        show: 'Ready: say "accept"',
      };
    case 'confirm-item':
      return askItem(action.item);
    case 'cover':
      return coverText(action, rule);
    case 'uncover':
      return { say: 'Uncover the receiver. Then say clear.', show: 'Uncover the receiver' };
    case 'watch-panel':
      return watchText(action, rule);
    case 'settle-issue':
      return {
        say: 'Issue open: test again, or write why.',
        show: 'An issue is open',
      };
    case 'offer-sign':
      return {
        say: 'Proven and in service. It can be signed.',
        show: 'Proven: ready to be signed',
      };
    case 'finished':
      if (isCommissioning({ setup })) {
        return { say: 'Proven and signed. Do not touch it.', show: 'Proven and signed' };
      }
      return { say: 'Aligned and accepted. Do not touch it.', show: 'Aligned and accepted' };
  }
}

function readText(rule: Advice['rule']): SayShow {
  switch (rule) {
    case 'as-found':
      return { say: 'Panel: read it before anything is touched.', show: 'Read the meter as found' };
    case 'after-cleaning':
    case 'signal-fell':
      return READ_CLEAR;
    case 'read-twice':
      return { say: 'Panel: read again, to be sure.', show: 'Read the meter again' };
    case 'clear-before':
    case 'clear-after':
    case 'beam-moved':
      return READ_CLEAR;
    case 'read-behind':
      return READ_BEHIND;
    default:
      return { say: 'Panel: read the meter.', show: 'Read the meter' };
  }
}

const OWN_GAIN: SayShow = {
  say: 'Detector: set its own gain. Say done.',
  show: "Let the detector set its gain, as its maker's instructions say",
};
const UNTIL_LESS: SayShow = {
  say: 'Lower gain until not too strong.',
  show: 'Lower gain until not too strong',
};
const UNTIL_SEEN: SayShow = {
  say: 'Raise gain until you see something.',
  show: 'Raise gain until something shows',
};

function turnText({ axis, eighths, reversal }: Extract<Action, { kind: 'turn' }>): SayShow {
  const sense = senseWord(eighths);
  const back = reversal ? 'back ' : '';
  return {
    say: `${capital(axis)}: ${amountWords(eighths)}, ${sense}.`,
    show: `${capital(axis)} ${back}${amountGlyph(eighths)} ${sense}`,
  };
}

function gainText({ change, toward }: Extract<Action, { kind: 'gain' }>, meter: MeterProfile): SayShow {
  if (change === 'full') return { say: 'Gain to full. Say done.', show: 'Gain to full' };
  if (toward === undefined) return change === 'lower' ? UNTIL_LESS : UNTIL_SEEN;
  const verb = change === 'lower' ? 'Lower' : 'Raise';
  const target = valueText(toward, meter);
  return {
    say: `${verb} gain to read ${target}.`,
    show: `${verb} gain toward ${target}`,
  };
}

const HOLD: Record<Extract<Action, { kind: 'hold' }>['reason'], SayShow> = {
  settling: { say: 'Hands off: still settling.', show: 'Hold: settling' },
  wandering: { say: 'Hold. The reading keeps changing.', show: 'Hold: reading keeps changing' },
  'proving-steady': { say: 'Hands off. Proving that it holds.', show: 'Hold: proving steady' },
  waiting: { say: 'Hold.', show: 'Hold' },
};

export function questionText(question: Question, meter: MeterProfile): SayShow {
  switch (question.kind) {
    case 'which-value': {
      const names = question.options.map((value) => valueText(value, meter));
      const say =
        names.length === 1 ? `Did the meter show ${names[0]}?` : `${names.join(', or ')}? Say which.`;
      return { say, show: names.length === 1 ? `${names[0]}?` : `${names.join(' or ')}?` };
    }
    case 'which-move': {
      const names = question.options.map(({ axis, eighths }) => movedText(axis, eighths));
      const { ago } = question;
      if (ago !== undefined)
        return {
          say: `${ago} turns ago, did you turn: ${names[0]}?`,
          show: `${ago} turns ago: turned ${names[0]}?`,
        };
      return { say: `Did you turn: ${names.join(', or ')}?`, show: `Turned ${names.join(', or ')}?` };
    }
    case 'is-it-so':
      return WHETHER[question.what];
  }
}

const WHETHER: Record<Extract<Question, { kind: 'is-it-so' }>['what'], SayShow> = {
  'path-clear': { say: 'Is the beam path clear? Say yes or no.', show: 'Path clear?' },
  'gain-untouched': { say: 'Is the gain untouched? Say yes or no.', show: 'Gain untouched?' },
  reading: { say: 'Reading right? Say yes, or say it again.', show: 'Reading right?' },
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
