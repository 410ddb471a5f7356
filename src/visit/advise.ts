import { HEARER } from '../engine/advice.ts';
import { advise as adviseSearch } from '../engine/advise.ts';
import { fallFigure, isBeamMoved } from '../engine/fall.ts';
import { sampleHere } from '../engine/search.ts';
import type { Action, Addressee, Advice } from '../model/advice.ts';
import { CHECKLISTS, type ChecklistItem } from '../model/checklists.ts';
import type { Seq } from '../model/ids.ts';
import { lastOf } from '../model/placed.ts';
import { filterNeeded, looksLost, thresholdDb } from '../plan/covers.ts';
import { PROOFS, type Proof, panelShows } from './attempts.ts';
import { type ClearReading, clearReadings } from './beam.ts';
import { answerTo, type Commission, isCommissioning } from './commission.ts';
import { acceptable, careReadings, cleaning, comparedWithLast } from './periodic.ts';
import {
  afterMissing,
  beforeMissing,
  isIsolationLifted,
  isProven,
  isRequired,
  isSettled,
  isTestSettled,
  type Judged,
  type Progress,
  progressOf,
  readingAfter,
  testAnswer,
} from './progress.ts';
import { type CommissionRuleId, PROVING_CAUSES } from './rules.ts';
import { coverFor, readingLacking } from './verdict.ts';

/** The advice, and when to ask again if nothing happens. */
export interface TimedAdvice {
  readonly advice: Advice;
  readonly wakeAt?: number;
}

/**
 * The next thing to do on a pair, before, during and after its alignment. Depends only on the entries and the
 * time, so that a replay gives the same advice.
 */
export function advise(commission: Commission, now: number): TimedAdvice {
  const { search } = commission;
  if (!isCommissioning(commission)) return adviseSearch(search, now);
  const progress = progressOf(commission, now);
  if (search.accepted && isProven(commission, progress)) return restoreService(commission);
  const [first] = isIsolationLifted(commission) ? (['outputs-isolated'] as const) : beforeMissing(commission);
  if (first) return confirmItem(commission, 'before', 'before', first);
  if (search.accepted) return prove(commission, progress, now);
  return keep(commission, now) ?? adviseSearch(search, now);
}

/**
 * A periodic visit before anything is touched: read, clean, read again, compare. Undefined where there is nothing to keep
 * or to compare with, or the signal has fallen and the cause was looked into: then the beam is aligned.
 */
function keep(commission: Commission, now: number): TimedAdvice | undefined {
  const { search, counted } = commission;
  const { kept, missing } = acceptable(commission, now);
  if (!kept) return undefined;
  const { found, cleaned } = careReadings(commission);
  const clean = cleaning(commission);
  if (!found) return readSettled(search, now, search.stay.since, 'as-found');
  if (!clean) return confirmItem(commission, 'clean', 'care', 'optics-cleaned');
  const last = cleaned ?? found;
  if (clean.done && !cleaned) return readSettled(search, now, clean.at, 'after-cleaning', [clean.seq]);
  const lacks = (id: string) => missing.find((each) => each.id === id);
  if (lacks('as-last-left') || lacks('not-saturated')) {
    const looked = counted.findLast(({ type, seq }) => type === 'checked' && seq > found.seq);
    const figures = comparedWithLast(commission, last);
    if (!looked) {
      const causes = [...PROVING_CAUSES['signal-fell']];
      return advice('signal-fell', { kind: 'check', causes }, [last.seq], figures);
    }
    // Whoever looked may have freed the path: it is read once more before anything is turned.
    if (last.to < looked.at) return readSettled(search, now, looked.at, 'signal-fell', [looked.seq]);
    return undefined;
  }
  if (lacks('settled-doubt')) return undefined;
  const held = lacks('steady-hold');
  const here = sampleHere(search);
  if (held && here) {
    const until = here.from + search.meter.holdMs;
    return now < until
      ? advice('keep-steady', { kind: 'hold', reason: 'proving-steady', until }, [last.seq], held.figures)
      : advice('keep-steady', { kind: 'read' }, [last.seq], held.figures);
  }
  if (missing.length > 0) return advice('keep-steady', { kind: 'read' }, [last.seq]);
  return advice(
    'keep',
    { kind: 'offer-accept' },
    [found.seq, clean.seq, last.seq],
    comparedWithLast(commission, last),
  );
}

/** A reading that counts once the hands are off for the settle time. */
const readSettled = (
  { meter }: Commission['search'],
  now: number,
  since: number,
  rule: CommissionRuleId,
  because: readonly Seq[] = [],
): TimedAdvice => {
  const until = since + meter.settleMs;
  return now < until
    ? advice(rule, { kind: 'hold', reason: 'settling', until }, because)
    : advice(rule, { kind: 'read' }, because);
};

function prove(commission: Commission, progress: Progress, now: number): TimedAdvice {
  return (
    coveredNow(commission, progress) ??
    restoring(progress) ??
    clearAfter(commission, now) ??
    beamMoved(commission, now) ??
    afterFailure(commission, progress) ??
    fromNormal(commission) ??
    nextProof(commission, progress, now) ??
    strongerFilter(commission, progress) ??
    nextTest(commission) ??
    advice('come-back', { kind: 'read' })
  );
}

/** Something covers the receiver: wait for the panel, then uncover. */
function coveredNow(commission: Commission, { last, all }: Progress): TimedAdvice | undefined {
  if (commission.search.path === 'clear') return undefined;
  const judged = all.at(-1);
  const open =
    judged && last[judged.attempt.proof] === judged && !judged.attempt.cleared ? judged : undefined;
  const uncover = advice('restore', { kind: 'uncover' }, open && seqsOf(open));
  if (!open) return uncover;
  const { attempt, verdict } = open;
  const lacks = readingLacking(attempt, commission.setup);
  if (verdict.kind === 'covered') {
    // It cannot count any more: nobody waits for the panel.
    if (lacks === 'before') return advice('not-read', { kind: 'uncover' }, seqsOf(open));
    const { proof } = attempt;
    const expect = proof === 'quiet' ? 'normal' : proof;
    const watch = { kind: 'watch-panel', expect, until: verdict.until } as const;
    return advice(RULE_OF[proof], watch, seqsOf(open), verdict.figures);
  }
  // It can still be measured while it is there.
  if ((verdict.kind === 'shown' || verdict.kind === 'not-decisive') && lacks === 'behind') {
    return advice('read-behind', { kind: 'read' }, seqsOf(open), verdict.figures);
  }
  // Only while it is in alarm does the panel name the zone.
  if (verdict.kind === 'shown' && attempt.proof === 'alarm' && !testAnswer(commission, 'panel-indication')) {
    return confirmItem(commission, 'indication', 'tests', 'panel-indication');
  }
  return uncover;
}

/**
 * A clear reading before a cover is asked for again when it is older than this: putting the cover on takes time, and
 * then it must still be fresh. ms. Common practice, no source.
 */
const READ_AGAIN_MS = 120_000;

const RULE_OF = {
  quiet: 'prove-quiet',
  alarm: 'prove-alarm',
  fault: 'prove-fault',
} as const satisfies Record<Proof, CommissionRuleId>;

function restoring({ last }: Progress): TimedAdvice | undefined {
  const open = Object.values(last).find(({ verdict }) => verdict.kind === 'restoring');
  if (open?.verdict.kind !== 'restoring') return undefined;
  const { until, figures } = open.verdict;
  return advice('restore', { kind: 'watch-panel', expect: 'normal', until }, seqsOf(open), figures);
}

/** The cover is off: is the beam still what it was? */
function clearAfter(commission: Commission, now: number): TimedAdvice | undefined {
  const cleared = lastOf(commission.counted, 'path');
  const accepted = commission.search.accepted?.seq ?? 0;
  if (!cleared || cleared.seq < accepted || lastClear(commission)) return undefined;
  return readClear(commission, now, 'clear-after', [cleared.seq]);
}

/** The last settled reading since the path is clear under this acceptance. */
function lastClear(commission: Commission): ClearReading | undefined {
  const accepted = commission.search.accepted?.seq ?? 0;
  const since = Math.max(accepted, lastOf(commission.counted, 'path')?.seq ?? 0);
  return clearReadings(commission).findLast(({ seq }) => seq > since);
}

function readClear(
  { search }: Commission,
  now: number,
  rule: CommissionRuleId,
  because: readonly Seq[] = [],
): TimedAdvice {
  const until = search.stay.since + search.meter.settleMs;
  return now < until
    ? advice(rule, { kind: 'hold', reason: 'settling', until }, because)
    : advice(rule, { kind: 'read' }, because);
}

/** The clear path no longer reads what was accepted: the cause is looked for; if that does not help, it is aligned again. */
function beamMoved(commission: Commission, now: number): TimedAdvice | undefined {
  const { search, counted } = commission;
  const readings = clearReadings(commission).filter(({ accept }) => accept === search.accepted?.seq);
  const isOff = ({ accepted, reading }: ClearReading): boolean =>
    isBeamMoved(accepted, reading, search.meter);
  const [first] = readings.slice(readings.findLastIndex((each) => !isOff(each)) + 1);
  const last = readings.at(-1);
  if (!first || !last) return undefined;
  const looked = counted.findLast(({ type, seq }) => type === 'checked' && seq > first.seq)?.seq;
  const because = [last.accept, last.seq];
  if (looked === undefined) {
    const figures = fallFigure(last.accepted, last.reading, search.meter);
    return advice(
      'beam-moved',
      { kind: 'check', causes: [...PROVING_CAUSES['beam-moved']] },
      because,
      figures,
    );
  }
  if (last.seq < looked) return readClear(commission, now, 'beam-moved', because);
  // The screws are no longer where the count says: as in the search, it begins again from an aim by eye.
  return advice('beam-moved', { kind: 're-aim' }, because);
}

/** A failure that nobody has checked yet. */
function afterFailure(commission: Commission, { last }: Progress): TimedAdvice | undefined {
  const lookInto = (
    causes: readonly string[],
    since: readonly Seq[],
    figures = {},
  ): TimedAdvice | undefined => {
    const latest = Math.max(...since);
    const looked = commission.counted.some(({ type, seq }) => type === 'checked' && seq > latest);
    if (looked) return undefined;
    return advice('failed-test', { kind: 'check', causes: [...causes] }, since, figures);
  };
  for (const { verdict, attempt } of Object.values(last)) {
    if (verdict.kind !== 'failed' || isSettled(commission, { last }, attempt.proof)) continue;
    const { covered, shown, cleared, after } = attempt;
    const seen = [covered, shown, cleared, after].flatMap((fact) => fact?.seq ?? []);
    const given = lookInto(PROVING_CAUSES[verdict.why], seen, verdict.figures);
    if (given) return given;
  }
  for (const item of CHECKLISTS.tests) {
    const answer = testAnswer(commission, item);
    if (!answer || isTestSettled(commission, item)) continue;
    const given = lookInto(PROVING_CAUSES[item === 'wiring' ? 'wiring' : 'indication'], [answer.seq]);
    if (given) return given;
  }
  return undefined;
}

function fromNormal(commission: Commission): TimedAdvice | undefined {
  if (panelShows(commission) === 'normal') return undefined;
  return advice('panel-normal-first', { kind: 'watch-panel', expect: 'normal' });
}

function nextProof(commission: Commission, progress: Progress, now: number): TimedAdvice | undefined {
  for (const proof of PROOFS) {
    if (!isRequired(proof, commission.setup) || isSettled(commission, progress, proof)) continue;
    const cover = coverFor(proof, commission.setup);
    if (!cover) continue;
    const last = progress.last[proof];
    const because = last && seqsOf(last);
    const clear = lastClear(commission);
    if (!clear || now - clear.at > READ_AGAIN_MS) return readClear(commission, now, 'clear-before', because);
    const action = { kind: 'cover', ...cover } as const;
    if (looksLost(cover)) return likeLostBeam(commission, action);
    if (last?.verdict.kind === 'unread') return advice('not-read', action, because, last.verdict.figures);
    return last?.verdict.kind === 'not-decisive'
      ? advice('not-decisive', action, because, last.verdict.figures)
      : advice(RULE_OF[proof], action, because);
  }
  return undefined;
}

/** Only a filter as good as a full cover can prove the alarm here: the crew is asked for a weaker one first. */
function likeLostBeam({ counted, search }: Commission, cover: Action): TimedAdvice {
  const since = search.accepted?.seq ?? 0;
  const asked = counted.some(({ type, seq }) => type === 'checked' && seq > since);
  const causes = [...PROVING_CAUSES['like-lost-beam']];
  return advice('like-lost-beam', asked ? cover : { kind: 'check', causes }, [since]);
}

/** No cover of this crew can prove the alarm: the work ends here until one is brought. */
function strongerFilter(commission: Commission, progress: Progress): TimedAdvice | undefined {
  const threshold = thresholdDb(commission.setup.plan);
  if (threshold === undefined || isSettled(commission, progress, 'alarm')) return undefined;
  const figures = { threshold, filterNeeded: filterNeeded(threshold) };
  return advice(
    'stronger-filter',
    { kind: 'check', causes: [...PROVING_CAUSES['stronger-filter']] },
    [],
    figures,
  );
}

function nextTest(commission: Commission): TimedAdvice | undefined {
  const item = CHECKLISTS.tests.find((each) => !isTestSettled(commission, each));
  if (item) return confirmItem(commission, item === 'wiring' ? 'wiring' : 'indication', 'tests', item);
  return undefined;
}

/** Proven: restore the protection, settle open issues, and sign the record. */
function restoreService(commission: Commission): TimedAdvice {
  const issue = commission.issues.find(({ closed }) => !closed);
  if (issue) return advice('failed-test', { kind: 'settle-issue', issue: issue.seq }, [issue.about]);
  const [before] = beforeMissing(commission);
  if (before) return confirmItem(commission, 'before', 'before', before);
  const [after] = afterMissing(commission);
  if (after) return confirmItem(commission, 'after', 'after', after);
  if (commission.signed) return advice('signed', { kind: 'finished' }, [commission.signed.seq]);
  const reading = readingAfter(commission);
  return advice('offer-sign', { kind: 'offer-sign' }, reading && [reading.seq]);
}

function confirmItem(
  commission: Commission,
  rule: CommissionRuleId,
  list: keyof typeof CHECKLISTS,
  item: ChecklistItem,
): TimedAdvice {
  const said = answerTo(commission, list, item);
  return advice(rule, { kind: 'confirm-item', list, item }, said && [said.seq]);
}

/** Who can do it. */
const ASKED: Record<ChecklistItem, Addressee> = {
  'outputs-isolated': 'panel',
  'people-told': 'panel',
  'access-inspected': 'emitter',
  'laser-caution': 'both',
  'path-clear': 'both',
  'optics-cleaned': 'emitter',
  'panel-indication': 'panel',
  wiring: 'both',
  'outputs-restored': 'panel',
  'covers-on': 'emitter',
  'panel-normal': 'panel',
};

const seqsOf = ({ attempt: { covered, shown, cleared, restored } }: Judged): Seq[] =>
  [covered, shown, cleared, restored].flatMap((fact) => fact?.seq ?? []);

function advice(
  rule: CommissionRuleId,
  action: Action,
  because: readonly Seq[] = [],
  figures: Readonly<Record<string, number>> = {},
): TimedAdvice {
  const to = action.kind === 'confirm-item' ? ASKED[action.item] : HEARER[action.kind];
  const advice: Advice = { to, action, rule, because: [...because].sort((a, b) => a - b), figures };
  const until = 'until' in action ? action.until : undefined;
  return until === undefined ? { advice } : { advice, wakeAt: until };
}
