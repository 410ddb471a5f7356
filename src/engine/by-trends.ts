import type { Action, Advice } from '../model/advice.ts';
import { AXES, type Axis, otherAxis } from '../model/turns.ts';
import { HEARER, type TimedAdvice } from './advice.ts';
import { lacksAim } from './hunt.ts';
import { wayAround } from './lit-around.ts';
import type { Look } from './looks.ts';
import { costHere, lookHere, missingByTrends, peakSeen, RISK, sideSeen, steadySince } from './proven.ts';
import { CAUSES, type RuleId } from './rules.ts';
import type { Search } from './search.ts';
import { WANDERING_BREAKS } from './stay.ts';
import { acrossTo, type Line, lineOf, mostTelling, turnTo } from './trend-line.ts';
import { widening } from './widening.ts';

/** The light is looked at: no number is wanted. */
const LOOK: Action = { kind: 'read', as: 'trend' };

/** It has not ended after so many turns. */
const MOST_TURNS = 125;

/** The square that is searched where nothing is seen: as for a search with numbers. */
const SQUARE = widening(2, 8);

/** The next thing to do where only trends are seen. Depends only on the events and the time. */
export function adviseByTrends(search: Search, now: number): TimedAdvice {
  const looks = search.looks ?? [];
  if (search.accepted) return say('finished', { kind: 'finished' });
  if (search.wavered >= WANDERING_BREAKS)
    return say('wandering', { kind: 'check', causes: [...CAUSES.wandering] }, looks.slice(-1));
  if (search.path !== 'clear') return covered(search, now);
  if (search.blocking.dark === false) return say('not-by-reflection', { kind: 're-aim' });
  const here = lookHere(search);
  if (here && lacksAim(search)) return say('aim-first', { kind: 're-aim' }, [here]);
  if (here && search.moves - firstMoves(search) > MOST_TURNS)
    return say('no-single-peak', { kind: 'check', causes: [...CAUSES.noPeak] }, [here]);
  const onward = lookAround(search, looks);
  if (onward) return onward;
  if (!here) return settling(search, search.stay.since, now) ?? say('look', LOOK, looks.slice(-1));
  if (here.seen === 'too-strong') return flooded(search, here);
  const step = here.seen === 'nothing' ? dark(search, looks, here) : undefined;
  if (step) return step;
  return turnOn(search, looks, here) ?? atTheEnd(search, looks, here, now);
}

/** The turns made by the last check of the causes; the search begins anew with it. */
const firstMoves = (search: Search): number => search.looked.moves;

/** Once a peak is proven: on to the places around it. Both adjusters are turned before the light is looked at again. */
function lookAround(search: Search, looks: readonly Look[]): TimedAdvice | undefined {
  const peak = peakSeen(looks);
  const place = peak && wayAround(search, looks, peak);
  const step = place && stepTo(search, place);
  return step && say('light-around', step, [peak]);
}

function covered(search: Search, now: number): TimedAdvice {
  const isChecking = search.path === 'blocked' && search.blocking.dark === undefined;
  if (!isChecking || search.blocking.seqs.length === 0) return say('free-path', { kind: 'unblock' });
  return settling(search, search.stay.since, now) ?? say('blocking-check', LOOK);
}

const settling = ({ meter }: Search, since: number, now: number): TimedAdvice | undefined => {
  const until = since + meter.settleMs;
  return now < until ? say('settle', { kind: 'hold', reason: 'settling', until }) : undefined;
};

const canSet = ({ meter }: Search): boolean => meter.gain === 'continuous' || meter.gain === 'stepped';

function flooded(search: Search, here: Look): TimedAdvice {
  return canSet(search)
    ? say('lower-gain', { kind: 'gain', change: 'lower' }, [here])
    : say('too-strong', { kind: 'check', causes: [...CAUSES.strong] }, [here]);
}

/** Nothing is seen: back to where something was; else full gain, an aim by eye, a widening square. */
function dark(search: Search, looks: readonly Look[], here: Look): TimedAdvice | undefined {
  const before = looks.at(-2);
  // Dark at the end of one turn: the search knows what that says.
  if (before && before.gain === here.gain && before.seen !== 'nothing') return turnOn(search, looks, here);
  const isDimmed = before && before.gain !== here.gain && before.seen !== 'nothing';
  if (isDimmed && canSet(search)) return say('look', { kind: 'gain', change: 'raise' }, [before, here]);
  const lit = looks.findLast(({ seen }) => seen !== 'nothing');
  const back = lit && stepTo(search, lit.turned);
  if (back) return say('recover-signal', back, [lit, here]);
  if (canSet(search) && !search.gainFull)
    return say('full-gain-to-find', { kind: 'gain', change: 'full' }, [here]);
  if (search.aims === 0 || lit) return say('re-aim', { kind: 're-aim' }, [here]);
  const isLooked = (place: Record<Axis, number>) =>
    looks.some(({ turned }) => AXES.every((axis) => turned[axis] === place[axis]));
  const next = SQUARE.find((place) => !isLooked(place) && stepTo(search, place));
  const step = next && stepTo(search, next);
  if (step) return say('widening-square', step, [here], { places: looks.length });
  if (search.checks >= search.aims) return say('re-aim', { kind: 're-aim' }, [here]);
  return say('nothing-there', { kind: 'check', causes: [...CAUSES.nothing] }, [here], {
    places: looks.length,
  });
}

function stepTo(search: Search, place: Readonly<Record<Axis, number>>): Action | undefined {
  for (const axis of AXES) {
    const step = turnTo(search, axis, place[axis]);
    if (step) return step;
  }
  return undefined;
}

/**
 * First each peak is found, then the adjusters are turned across them, one after the other; the adjuster that is in work stays
 * in work, and the other one stands at its own peak meanwhile.
 */
function turnOn(search: Search, looks: readonly Look[], here: Look): TimedAdvice | undefined {
  const { axis } = search;
  const other = otherAxis(axis);
  const inWork = lineOf(search, looks, here, axis, here.turned[other]);
  if (inWork.risk > FOUND) return find(search, looks, here, inWork);
  const next = lineOf(search, looks, here, other, inWork.home);
  const off = Math.abs(here.turned[axis] - inWork.home);
  const offNext = Math.abs(here.turned[other] - next.home);
  const home = (line: Line) => {
    const back = turnTo(search, line.axis, line.home);
    return back && say('middle-of-equals', back, [here]);
  };
  // On its way across, the adjuster in work goes on, unless the other one is far from where it should stand.
  const slack = off > 1 ? ON_THE_WAY : 1;
  if (next.risk > slack * FOUND || offNext > slack)
    return (
      (off > 1 ? home(inWork) : undefined) ??
      (next.risk > FOUND ? find(search, looks, here, next) : home(next))
    );
  for (const line of [inWork, next]) {
    const to = acrossTo(search, looks, line, here);
    const step = to !== undefined && turnTo(search, line.axis, to);
    if (step) return say('prove-peak', step, [here]);
    const back = home(line);
    if (back) return back;
  }
  // All was seen, and still it is not sure enough: once more from below, with the slack of the screw taken up; else one more look.
  for (const line of [inWork, next]) {
    if (costHere(looks, here, line.axis).risk <= RISK) continue;
    const down = search.lastTurn[line.axis] < 0 && turnTo(search, line.axis, line.home - TAKES_UP);
    return down ? say('middle-of-equals', down, [here]) : find(search, looks, here, line);
  }
  return undefined;
}

/** As much of a turn as takes up the largest backlash that is thought of. Eighths. */
const TAKES_UP = 5;

/** Between two stops of a way across, what is known of the other adjuster may change by so much. */
const ON_THE_WAY = 3;

function find(search: Search, looks: readonly Look[], here: Look, line: Line): TimedAdvice | undefined {
  const to = mostTelling(search, line.belief, line.axis, here);
  const step = to !== undefined && turnTo(search, line.axis, to);
  if (!step) return undefined;
  return say(sideSeen(looks, here, line.axis, 1).length > 0 ? 'reverse-on-fall' : 'find-slope', step, [here]);
}

/** A peak is found when it is unlikelier than this to be farther off than is allowed; proving its sides tells the rest. */
const FOUND = 0.1;

function atTheEnd(search: Search, looks: readonly Look[], here: Look, now: number): TimedAdvice {
  const missing = missingByTrends(search, now);
  const lacks = (id: string) => missing.some((each) => each.id === id);
  const stuck = AXES.filter((axis) => search.stuck[axis]);
  if (lacks('bracket-horizontal') || lacks('bracket-vertical') || lacks('at-peak') || lacks('second-peak')) {
    const causes = stuck.length > 0 ? stuck.map((axis) => `${axis}-stuck`) : [...CAUSES.noPeak];
    return say(stuck.length > 0 ? 'stuck-adjuster' : 'no-single-peak', { kind: 'check', causes }, [here]);
  }
  if (lacks('blocking-check')) return say('blocking-check', { kind: 'block' }, [here]);
  const until = (steadySince(looks, search) ?? here).at + search.meter.holdMs;
  if (now < until) return say('hold-steady', { kind: 'hold', reason: 'proving-steady', until }, [here]);
  if (missing.length > 0) return say('hold-steady', LOOK, [here]);
  return say('offer-accept', { kind: 'offer-accept' }, evidence(looks, here));
}

/** The looks that acceptance rests on. */
export const evidence = (looks: readonly Look[], here: Look): readonly Look[] => [
  ...AXES.flatMap((axis) =>
    ([-1, 1] as const).flatMap((side) => sideSeen(looks, here, axis, side).slice(-2)),
  ),
  here,
];

function say(
  rule: RuleId,
  action: Action,
  because: readonly Look[] = [],
  figures: Record<string, number> = {},
): TimedAdvice {
  const seqs = [...new Set(because.map(({ seq }) => seq))].sort((a, b) => a - b);
  const advice: Advice = { to: HEARER[action.kind], action, rule, because: seqs, figures };
  return action.kind === 'hold' ? { advice, wakeAt: action.until } : { advice };
}
