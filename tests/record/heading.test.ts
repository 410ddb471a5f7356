import { describe, expect, it } from 'vitest';
import type { Finding, Severity, SiteFinding } from '../../src/model/finding.ts';
import { PAIR_STATUSES, type PairStatus } from '../../src/model/pair-status.ts';
import { headingText } from '../../src/phrases/record-heading.ts';
import { headingOf } from '../../src/record/heading.ts';

const found = (...severities: Severity[]): Finding[] =>
  severities.map((severity) => ({ id: 'drift', severity, entries: [], figures: {}, about: [] }));
const ofSite = (id: SiteFinding['id'], severity: Severity): SiteFinding => ({
  id,
  severity,
  pair: 'B2',
  entries: [],
  figures: {},
});
const told = (
  status: PairStatus,
  findings: readonly Finding[] = [],
  site: readonly SiteFinding[] | undefined = [],
) => {
  const heading = headingOf({ status, findings, fault: undefined }, site);
  return [headingText(heading), heading.look];
};

describe('what stands above a record', () => {
  it.each<[PairStatus, text: string, look: string]>([
    ['not-started', 'Not started', 'plain'],
    ['aligning', 'Aligning', 'plain'],
    ['isolated', 'Outputs isolated', 'heed'],
    ['aligned', 'Aligned, not proven', 'plain'],
    ['proven', 'Proven, not signed', 'calm'],
    ['signed', 'Signed', 'calm'],
    ['signed-not-proven', 'Signed, not proven', 'heed'],
    ['needs-attention', 'Needs attention', 'heed'],
  ])('without findings, %s', (status, text, look) => {
    expect(told(status)).toEqual([text, look]);
  });

  it('is never calm beside a question, and is heeded beside a serious finding, whatever the status', () => {
    for (const status of PAIR_STATUSES) {
      expect(told(status, found('question'))[1], status).not.toBe('calm');
      expect(told(status, found('note'))[1], status).toBe(told(status)[1]);
      expect(told(status, found('serious'))[1], status).toBe('heed');
      expect(told(status, [], [ofSite('weak-neighbour', 'question')])[1], status).not.toBe('calm');
      expect(told(status, [], [ofSite('undone', 'serious')])[1], status).toBe('heed');
    }
  });

  it('counts what is serious and what is to be asked, of the record and of the site', () => {
    expect(told('signed', found('serious', 'question', 'note', 'question'))[0]).toBe(
      'Signed: 1 serious, 2 to be asked',
    );
    expect(told('signed', found('question'), [ofSite('weaker-since', 'question')])[0]).toBe(
      'Signed: 2 to be asked',
    );
    expect(told('signed', found('note'))[0]).toBe('Signed');
  });

  it('is not calm before it is known what the site finds', () => {
    expect(headingOf({ status: 'signed', findings: [], fault: undefined }, undefined).look).toBe('plain');
    expect(headingOf({ status: 'signed', findings: [], fault: undefined }, []).look).toBe('calm');
  });

  it('says that a broken log makes nothing certain', () => {
    const heading = headingOf({ status: 'signed', findings: [], fault: { seq: 3, fault: 'hash' } }, []);
    expect([headingText(heading), heading.look]).toEqual(['Log broken, nothing here is certain', 'heed']);
  });

  it('says that the plan was changed since', () => {
    expect(told('signed', [], [ofSite('plan-changed', 'serious')])).toEqual([
      'Plan changed, prove it anew: 1 serious',
      'heed',
    ]);
    expect(
      headingOf({ status: 'signed', findings: [], fault: undefined }, [ofSite('plan-changed', 'question')]),
    ).toMatchObject({
      status: 'needs-attention',
      planChanged: true,
    });
  });
});
