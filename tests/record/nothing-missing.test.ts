import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/model/entry.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import {
  brokenSigned,
  brokenUnsignable,
  NOT_SIGNED,
  NOTHING_MISSING,
  SIGNABLE_UNPROVEN,
} from '../../src/phrases/signature.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { momentsIn } from '../../src/report/moments.ts';
import { signBlocks } from '../../src/report/sign-block.ts';
import type { Plant } from '../../src/simulator/plants.ts';
import { playedVisit, SETUP } from '../findings/site.ts';

const alone: JobSetup = { ...SETUP, scope: 'alignment' };
const upTo = (entries: readonly Entry[], type: Entry['fact']['type']): Entry[] =>
  entries.slice(
    0,
    entries.findIndex(({ fact }) => fact.type === type),
  );
const unsigned = (plants: Plant[], setup = SETUP) =>
  new VisitRecord({ entries: upTo(playedVisit(plants, 1, setup), 'signed') });
const linesOf = (record: VisitRecord): string[] =>
  signBlocks(record, momentsIn('UTC')).flatMap((block) => (block.kind === 'signature' ? block.lines : []));

describe('that nothing is missing for signing', () => {
  it.each<[string, Plant[], JobSetup, boolean]>([
    ['every test made and passed', [], SETUP, true],
    ['a test that failed first, and passed later', ['late-alarm'], SETUP, true],
    ['an alarm test that failed, answered for in writing', ['excused'], SETUP, false],
    ['a quiet test that failed, answered for in writing', ['too-sensitive-excused'], SETUP, false],
    ['an alignment alone, which has no tests', [], alone, false],
  ])('%s', (_, plants, setup, isTested) => {
    const record = unsigned(plants, setup);
    expect(record.state.signed).toBeUndefined();
    expect(record.missing).toEqual([]);
    expect(record.isTested).toBe(isTested);
    expect(linesOf(record)).toContain(isTested ? NOTHING_MISSING : SIGNABLE_UNPROVEN);
    expect(linesOf(record)).not.toContain(isTested ? SIGNABLE_UNPROVEN : NOTHING_MISSING);
  });

  it('is not said of a broken log, which cannot be signed and proves no signature', () => {
    const entries = playedVisit();
    const fault = { seq: 7, fault: 'hash' } as const;
    const before = linesOf(new VisitRecord({ entries: upTo(entries, 'signed') }, { fault }));
    expect(before).toEqual([NOT_SIGNED, brokenUnsignable(7)]);
    const after = linesOf(new VisitRecord({ entries }, { fault }));
    expect(after).toContain(brokenSigned(7));
    expect(linesOf(new VisitRecord({ entries }))).not.toContain(brokenSigned(7));
  });

  it('is not said before the acceptance, nor before the last test', () => {
    const { entries } = unsigned([]);
    const accept = entries.findIndex(({ fact }) => fact.type === 'accept');
    const early = [entries.slice(0, accept), entries.slice(0, accept + 1)];
    for (const record of early.map((some) => new VisitRecord({ entries: some }))) {
      expect(record.missing).not.toEqual([]);
      expect(record.isTested).toBe(false);
      expect(linesOf(record)).not.toContain(NOTHING_MISSING);
    }
  });
});
