import { ENGINE_VERSION } from '../engine/version.ts';
import { isSame } from '../formats/same.ts';
import { findFault } from '../log/chain.ts';
import type { Wrong } from '../log/fault.ts';
import { fromJsonLines } from '../log/json-lines.ts';
import { isForgotten } from '../log/names.ts';
import { isPractice } from '../log/practice.ts';
import type { Signed } from '../log/signed-head.ts';
import type { Stamped } from '../log/time-stamp.ts';
import type { Entry } from '../model/entry.ts';
import type { Finding, FindingId } from '../model/finding.ts';
import type { Head } from '../model/ids.ts';
import { isSameName } from '../model/person.ts';
import { VisitRecord } from '../record/visit-record.ts';
import { advise } from '../visit/advise.ts';
import type { Photo } from '../visit/photos.ts';
import { commissionOf } from '../visit/search.ts';
import { EMPTY, fold, type JobState } from '../visit/state.ts';
import { Said } from './said.ts';
import { checkSigned, type Known } from './signed-heads.ts';
import { checkStamps } from './stamps.ts';

export type Verified =
  | {
      readonly ok: true;
      readonly head: Head;
      readonly entries: readonly Entry[];
      readonly findings: readonly Finding[];
      /** Removed ones, too. Their pictures lie beside the log: `checkPhotos`. */
      readonly photos: readonly Photo[];
      /** False for a log of another engine version: its advice and findings were not compared with this one's. */
      readonly replayed: boolean;
      /** What signatures of a server prove of it. */
      readonly signed: Signed;
      /** What time stamps prove of it. */
      readonly stamped: Stamped;
    }
  | { readonly ok: false; readonly wrong: Wrong };

/**
 * Checks an export (`ladderline-log` JSON Lines) from the file alone: its form, the chain and its head, every
 * signature against the entries before it, every reading against the words it came from, and that a replay gives the
 * same advice and the same findings. It
 * proves order and completeness. Somebody who can rewrite the whole file can make a new chain; that shows only in
 * what they cannot make: the signatures of the server, by a key that the reader knows, heads kept elsewhere, and time stamps of
 * an authority that the reader named.
 */
export function verify(text: string, known: Known): Verified {
  const read = fromJsonLines(text);
  if (!read.ok) {
    const { ok, ...fault } = read;
    return { ok, wrong: { kind: 'file', ...fault } };
  }
  const { entries, head, proof } = read;
  const fault = findFault(entries, head);
  if (fault) return { ok: false, wrong: { kind: 'chain', ...fault } };
  if (isPractice(entries)) return { ok: false, wrong: { kind: 'practice' } };
  const replayed = isOfThisEngine(entries);
  const wrong = replay(entries, replayed);
  if (wrong) return { ok: false, wrong };
  const checked = checkSigned(entries, head, proof, known);
  if ('wrong' in checked) return { ok: false, wrong: checked.wrong };
  const timed = checkStamps(head, proof ?? {}, known.check, known.checkStamp);
  if ('wrong' in timed) return { ok: false, wrong: timed.wrong };
  const { findings, state } = new VisitRecord(read);
  const { signed } = checked;
  return {
    ok: true,
    head,
    entries,
    findings,
    photos: state.photos,
    replayed,
    signed,
    stamped: timed.stamped,
  };
}

/** A log without a version is older than the first numbered one. */
function isOfThisEngine([first]: readonly Entry[]): boolean {
  return first?.fact.type !== 'opened' || first.fact.engine === ENGINE_VERSION;
}

function replay(entries: readonly Entry[], advice: boolean): Wrong | undefined {
  let state = EMPTY;
  const said = new Said();
  for (const entry of entries) {
    const { seq, fact } = entry;
    if (fact.type === 'said') said.hear(seq, fact, state);
    if (fact.type === 'reading' && !said.holds(fact)) return { kind: 'words', seq, from: fact.from };
    if (advice && fact.type === 'instruction' && !isAdvised(state, fact.advice, entry.at))
      return { kind: 'advice', seq };
    if (fact.type === 'signed') {
      if (fact.head.count !== seq || fact.head.hash !== entry.prev || fact.head.job !== entry.job) {
        return { kind: 'signature', seq };
      }
      // Older signatures have no declaration, and were not held to their names.
      const { name, signature, declaration } = fact;
      if (declaration !== undefined && signature.kind === 'typed' && !isSameName(signature.text, name)) {
        return { kind: 'signer', seq };
      }
      const ids = new VisitRecord({ entries: entries.slice(0, seq) }, { state }).findings.map(({ id }) => id);
      if (advice && !isSame(...comparable(ids, fact.findings, entries.slice(0, seq))))
        return { kind: 'findings', seq };
    }
    state = fold(state, entry);
  }
  return undefined;
}

/** Both lists of findings, without the one that rests on names where some of these were forgotten since. */
function comparable(
  now: readonly string[],
  signed: readonly string[],
  before: readonly Entry[],
): [readonly string[], readonly string[]] {
  if (!before.some((entry) => entry.fact.type === 'seated' && isForgotten(entry))) return [now, signed];
  const rests: FindingId = 'same-in-both';
  const without = (ids: readonly string[]) => ids.filter((id) => id !== rests);
  return [without(now), without(signed)];
}

function isAdvised(state: JobState, advice: unknown, at: number): boolean {
  const commission = commissionOf(state);
  return commission !== undefined && isSame(advise(commission, at).advice, advice);
}
