import type { Sensed } from '../indicator/sense.ts';

/**
 * What the buttons say. Each goes through the same parser as typed or spoken words; a test checks that each
 * one means what it should.
 */
export const WORDS = {
  done: 'done',
  again: 'say again',
  wait: 'wait',
  goOn: 'go on',
  wrongWay: 'wrong way',
  cannot: "can't do it",
  stuck: 'stuck',
  endOfTravel: 'end of travel',
  outOfReach: "can't reach it",
  yes: 'yes',
  no: 'no',
  unsure: 'not sure',
  accept: 'accept',
  stop: 'stop',
  start: 'start',
  noSignal: 'no signal',
  saturated: 'saturated',
  rising: 'rising',
  falling: 'falling',
  steady: 'steady',
  wandering: 'wandering',
  blocked: 'blocked',
  clear: 'clear',
  panelAlarm: 'panel shows alarm',
  panelFault: 'panel shows fault',
  panelNormal: 'panel shows normal',
} as const;

/** What a phone that follows a tone or a lamp says of the light: words of buttons, so that the same parser takes them. */
export const SENSED_WORDS: Readonly<Record<Sensed, string>> = {
  nothing: WORDS.noSignal,
  'too-strong': WORDS.saturated,
  rising: WORDS.rising,
  falling: WORDS.falling,
  steady: WORDS.steady,
  changing: WORDS.wandering,
};

/** The words for a name typed as the answer to "who was told?". */
export const toldWords = (who: string): string => `told ${who.trim()}`;

/** The number pad of the panel. */
export const PAD_BACK = 'Take back the last figure';
export const PAD_POINT = 'point';
export const PAD_MINUS = 'minus';
