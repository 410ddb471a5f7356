import type { Guidance } from '../model/guidance.ts';
import type { Held, HeldPoint, NotHeld } from '../plan/held.ts';
import { pairCount } from './counts.ts';
import { GUIDANCE_ONLY } from './plan-formulas.ts';

/** What was held against a guidance, and what was not. */
const NAMES: { readonly [id in HeldPoint['id']]: { readonly [side in HeldPoint['side']]?: string } } = {
  reach: { most: 'reach to each side' },
  'wall-distance': { least: 'how near to a wall', most: 'how far from a wall' },
  'ceiling-height': { most: 'height of the ceiling' },
  'emitter-ceiling': {
    least: 'how near the emitter is to the ceiling',
    most: 'how far the emitter is below it',
  },
  'receiver-ceiling': {
    least: 'how near the receiver is to the ceiling',
    most: 'how far the receiver is below it',
  },
};
const nameOf = ({ id, side }: HeldPoint): string => NAMES[id][side] ?? id;

const WHY: Record<NotHeld, string> = {
  'no-limit': 'the guidance has no value',
  'no-value': 'the plan has no value',
};
const WHYS = Object.keys(WHY) as NotHeld[];

const guidanceName = ({ name, source }: Guidance): string => (source ? `${name} (${source})` : name);

export const NO_GUIDANCE =
  'No guidance chosen: distances to walls and other beams were not checked. Ceilings were held against common practice.';

/** "Held against BS 5839-1 style (BS 5839-1, from memory): reach to each side. Not checked, the plan has no value: …" */
export function heldText(held: Held | undefined): string {
  if (!held) return NO_GUIDANCE;
  const { guidance, ran, not } = held;
  const name = guidanceName(guidance);
  const done =
    ran.length === 0
      ? `Nothing was held against ${name}.`
      : `Held against ${name}: ${ran.map(nameOf).join(', ')}.`;
  return [done, ...WHYS.flatMap((why) => notChecked(not, why))].join(' ');
}

function notChecked(not: Held['not'], why: NotHeld): string[] {
  const names = not.filter((each) => each.why === why).map(nameOf);
  return names.length === 0 ? [] : [`Not checked, ${WHY[why]}: ${names.join(', ')}.`];
}

/** The same for all pairs of a site, and each thing that was not checked on some of them. */
export interface HeldOnSite {
  readonly text: string;
  readonly not: readonly string[];
}

/** `all`: of every pair; undefined where its record names no guidance. */
export function heldOnSite(code: Guidance | undefined, all: readonly (Held | undefined)[]): HeldOnSite {
  if (!code) return { text: NO_GUIDANCE, not: [] };
  const ran = all.filter((held) => held && held.ran.length > 0).length;
  const unnamed = all.filter((held) => !held).length;
  const name = guidanceName(code);
  const text =
    ran === 0
      ? `No pair was held against ${name}.`
      : `${ran} of ${pairCount(all.length)} held against ${name}.`;
  const counts = new Map<string, number>();
  for (const point of all.flatMap((held) => held?.not ?? [])) {
    const what = `${nameOf(point)}: ${WHY[point.why]}`;
    counts.set(what, (counts.get(what) ?? 0) + 1);
  }
  return {
    text,
    not: [
      ...[...counts].map(([what, pairs]) => `${what}, ${pairCount(pairs)}`),
      ...(unnamed > 0 ? [`everything: the record does not name the guidance, ${pairCount(unnamed)}`] : []),
    ],
  };
}

/** The same in one sentence. */
export const heldOnSiteText = ({ text, not }: HeldOnSite): string =>
  `${text}${not.length > 0 ? ` Not checked: ${not.join('; ')}.` : ''} ${capital(GUIDANCE_ONLY)}.`;

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

export const NOT_CHECKED = 'Not checked';
