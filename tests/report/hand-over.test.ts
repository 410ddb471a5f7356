import { describe, expect, it } from 'vitest';
import { checked, headAfter, seal } from '../../src/log/chain.ts';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { HandOverFact } from '../../src/model/hand-over.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { momentsIn } from '../../src/report/moments.ts';
import { type PairPage, pairPage } from '../../src/report/pair-page.ts';
import { playedVisit, SETUP } from '../findings/site.ts';

/** A whole visit, up to its signature, with these facts put down at its end. */
function visitWith(facts: readonly HandOverFact[]): CheckedLog {
  const played = playedVisit();
  const entries = played.slice(
    0,
    played.findIndex(({ fact }) => fact.type === 'signed'),
  );
  for (const fact of facts) {
    const last = entries.at(-1);
    if (!last) throw new Error('the visit is empty');
    entries.push(seal(headAfter(last), { actor: 'supervisor', fact }, last.at + 1000));
  }
  const last = entries.at(-1);
  if (!last) throw new Error('the visit is empty');
  return checked({ entries, head: headAfter(last) });
}

const { plan } = SETUP as { plan: PairPlan };

/** The page of the pair, where the site has this plan of it now. */
const pageOf = (facts: readonly HandOverFact[], planNow = plan): PairPage =>
  pairPage({ plan: planNow, visits: [visitWith(facts)] }, momentsIn('UTC'));

function rowsOf({ part }: PairPage): readonly (readonly [string, string])[] {
  for (const block of part.blocks) {
    if (block.kind === 'facts' && block.title === 'Hand-over') {
      return block.rows.map(({ name, value }) => [name, value] as const);
    }
  }
  throw new Error('the page has no hand-over');
}

const late = (plan.alarmDelay ?? 0) + 5;

it('the page of a pair says all that was written for its hand-over', () => {
  const rows = rowsOf(
    pageOf([
      { type: 'as-left', values: { alarmDelay: late, receiverSerial: 'R-0012' } },
      { type: 'conditions', sun: 'near', weather: 'bright', building: ['dusty'] },
      { type: 'variation', what: 'No cover at hand', agreedWith: 'W. Example' },
      { type: 'next-due', what: 'Clean and test', on: '2027-11-26' },
    ]),
  );
  expect(rows).toEqual([
    ['Alarm delay', `${late} s (planned: ${plan.alarmDelay} s)`],
    ['Serial number of the receiver', 'R-0012'],
    ['Conditions', 'sun near the receiver, bright, dust in the air'],
    ['Variation agreed', 'No cover at hand (agreed with W. Example)'],
    ['To be done next', 'Clean and test, by 2027-11-26'],
  ]);
});

it('it says so where nothing was written', () => {
  expect(rowsOf(pageOf([]))).toEqual([['Hand-over', 'Nothing was written down for the hand-over.']]);
});

it('what was left is beside the plan of the visit, as in its finding, though the site has another by now', () => {
  const page = pageOf([{ type: 'as-left', values: { alarmDelay: late } }], { ...plan, alarmDelay: late });
  expect(rowsOf(page)).toEqual([['Alarm delay', `${late} s (planned: ${plan.alarmDelay} s)`]]);
});

it('a variation is among those of the cover', () => {
  const { variations } = pageOf([{ type: 'variation', what: 'No cover at hand', agreedWith: 'W. Example' }]);
  expect(variations).toContain('No cover at hand (agreed with W. Example)');
});

describe('what was written by mistake', () => {
  const variation = { type: 'variation', what: 'No cover at hand', agreedWith: 'W. Example' } as const;
  /** The entry of the first fact that `visitWith` puts down. */
  const first = visitWith([variation]).entries.length - 1;

  it('a withdrawn variation stands in the record with its reason, and no longer on the cover', () => {
    const page = pageOf([variation, { type: 'struck-out', entry: first, why: 'A cover was found' }]);
    expect(rowsOf(page)).toEqual([
      [
        'Variation withdrawn',
        `No cover at hand (agreed with W. Example). Withdrawn, #${first + 1}: A cover was found`,
      ],
    ]);
    expect(page.variations).toEqual([]);
  });

  it('a value that was struck out is not known, differs from no plan, and says what it was', () => {
    const facts: HandOverFact[] = [
      { type: 'as-left', values: { alarmDelay: late, firmware: '1.2' } },
      { type: 'struck-out', entry: first, field: 'alarmDelay', why: 'Read from the wrong unit' },
    ];
    expect(rowsOf(pageOf(facts))).toEqual([
      ['Firmware', '1.2'],
      ['Alarm delay', `not known. ${late} s no longer holds, #${first + 1}: Read from the wrong unit`],
    ]);
    const again: HandOverFact[] = [...facts, { type: 'as-left', values: { alarmDelay: plan.alarmDelay } }];
    expect(rowsOf(pageOf(again))).toEqual([
      ['Alarm delay', `${plan.alarmDelay} s`],
      ['Firmware', '1.2'],
    ]);
  });

  it.each<[string, HandOverFact]>([
    ['an entry that wrote none', { type: 'struck-out', entry: first - 1, why: 'Not so' }],
    [
      'a value of an entry that wrote another',
      { type: 'struck-out', entry: first, field: 'gain', why: 'Not so' },
    ],
  ])('strikes nothing out for %s', (_, fact) => {
    expect(rowsOf(pageOf([variation, fact]))).toEqual(rowsOf(pageOf([variation])));
  });
});
