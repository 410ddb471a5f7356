import type { Cell } from '../formats/csv.ts';
import { replaced } from '../log/amendments.ts';
import type { Entry } from '../model/entry.ts';
import type { Fact, FactOf } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { Person } from '../model/person.ts';
import type { MeterProfile } from '../model/profile.ts';
import { toTurns } from '../model/turns.ts';
import { currentPlan, currentSetup } from '../model/written.ts';
import { describe } from '../phrases/describe.ts';
import { thresholdDb } from '../plan/covers.ts';
import { cellOf, PAIR_COLUMNS, type PairColumn, TEXT_COLUMNS } from '../site/pair-columns.ts';

interface Context {
  meter: MeterProfile | undefined;
  takenBackBy: ReadonlyMap<Seq, Seq>;
  /** The first signature whose head covers an entry, by the number of the signature. */
  signedIn: (seq: Seq) => Seq | undefined;
  /** Who was in the seat of each entry, or signed it, by its number. */
  people: readonly (Person | undefined)[];
}

const when = <T extends Fact['type']>(fact: Fact, type: T, cell: (fact: FactOf<T>) => Cell): Cell =>
  fact.type === type ? cell(fact as FactOf<T>) : undefined;

/** A column of the CSV export. `is`: its XML Schema datatype, as CSV on the Web names them. */
interface Column {
  readonly is: 'integer' | 'decimal' | 'string' | 'dateTime';
  readonly says: string;
  readonly cell: (entry: Entry, context: Context) => Cell;
}

/** A plan's column holds decimals where its cells are numbers. */
const datatypeOf = (name: PairColumn): Column['is'] => (TEXT_COLUMNS.has(name) ? 'string' : 'decimal');

const column = (is: Column['is'], says: string, cell: Column['cell']): Column => ({ is, says, cell });

/** The columns of the CSV export, in order; one row an entry. docs/export.md has them as a table. */
export const COLUMNS: Readonly<Record<string, Column>> = {
  seq: column(
    'integer',
    'Number of the entry, from 0; in the last row, the number of entries.',
    ({ seq }) => seq,
  ),
  time_utc: column(
    'dateTime',
    "When it was logged, by the server's clock: ISO 8601, UTC, to the millisecond.",
    ({ at }) => new Date(at).toISOString(),
  ),
  actor: column('string', 'Who did it: panel, emitter, engine, server or supervisor.', ({ actor }) => actor),
  seat: column('string', 'Whose words or phone it is about: panel or emitter.', ({ fact }) =>
    'seat' in fact ? fact.seat : undefined,
  ),
  type: column(
    'string',
    'What kind of fact it is, as in the schema; in the last row, "head".',
    ({ fact }) => fact.type,
  ),
  text: column(
    'string',
    'Words as they were said or shown; for facts without words, what the exchange shows for them.',
    ({ actor, fact }, { meter }) => ('text' in fact ? fact.text : describe({ actor, fact }, meter)?.text),
  ),
  why: column('string', 'Why an instruction was given.', ({ fact }) =>
    when(fact, 'instruction', ({ why }) => why),
  ),
  via: column('string', 'How words came: typed, voice, button, camera or sensor.', ({ fact }) =>
    when(fact, 'said', ({ via, camera, sensor }) => (camera ? 'camera' : sensor ? 'sensor' : via)),
  ),
  confidence: column(
    'decimal',
    'How sure the speech model was of its words, or the camera of its number, from 0 to 1.',
    ({ fact }) => when(fact, 'said', ({ confidence, camera }) => confidence ?? camera?.belief),
  ),
  reading_kind: column(
    'string',
    'What the meter showed: value, none or saturated; seen: there was light, and nobody read a number.',
    ({ fact }) => ('reading' in fact ? fact.reading.kind : undefined),
  ),
  reading: column('decimal', 'The number it showed, in the unit beside it.', ({ fact }) =>
    'reading' in fact && fact.reading.kind === 'value' ? fact.reading.value : undefined,
  ),
  unit: column('string', "The meter's unit.", ({ fact }, { meter }) =>
    'reading' in fact && fact.reading.kind === 'value' ? meter?.unit : undefined,
  ),
  axis: column('string', 'The adjuster: horizontal or vertical.', ({ fact }) =>
    'axis' in fact ? fact.axis : undefined,
  ),
  turns: column('decimal', 'Full turns that were made, clockwise positive.', ({ fact }) =>
    when(fact, 'move', ({ eighths }) => toTurns(eighths)),
  ),
  gain: column('string', 'What was done to the gain: lowered, raised, set or full.', ({ fact }) =>
    when(fact, 'gain', ({ change }) => change),
  ),
  gain_to: column('decimal', 'What it was set to, where that was said.', ({ fact }) =>
    when(fact, 'gain', ({ to }) => to),
  ),
  instruction: column(
    'integer',
    'The instruction acted on, refused or withdrawn, by its entry.',
    ({ fact }) => ('instruction' in fact ? fact.instruction : undefined),
  ),
  rule: column('string', 'The rule an instruction follows.', ({ fact }) =>
    when(fact, 'instruction', ({ advice }) => advice.rule),
  ),
  because: column('string', 'The entries an instruction rests on, with spaces between.', ({ fact }) =>
    when(fact, 'instruction', ({ advice }) => advice.because.join(' ')),
  ),
  from: column('integer', 'The entry of the words it was understood from.', ({ fact }) =>
    'from' in fact ? fact.from : undefined,
  ),
  target: column(
    'integer',
    'The entry that is read back, asked about, confirmed, taken back, corrected, found to fail or settled.',
    ({ fact }) => targetOf(fact),
  ),
  retracted_by: column(
    'integer',
    'The entry that took this one back or corrected it: this one no longer counts.',
    ({ seq }, { takenBackBy }) => takenBackBy.get(seq),
  ),
  ref: column('string', "The id of the phone's message it came from.", ({ ref }) => ref),
  prev: column('string', 'The hash of the entry before; 64 zeros for the first.', ({ prev }) => prev),
  hash: column(
    'string',
    'The hash of this entry; in the last row, the hash the chain ends at.',
    ({ hash }) => hash,
  ),
  band_low: column(
    'decimal',
    'The band in which a reading may be accepted: from here. In the first row, and beside each reading.',
    ({ fact }, { meter }) => (hasBand(fact) ? meter?.bandLow : undefined),
  ),
  band_high: column('decimal', 'The same band: up to here.', ({ fact }, { meter }) =>
    hasBand(fact) ? meter?.bandHigh : undefined,
  ),
  lost_at: column(
    'decimal',
    'At or below this there is no usable signal. In the first row, and beside each reading.',
    ({ fact }, { meter }) => (hasBand(fact) ? meter?.lostAt : undefined),
  ),
  saturated_at: column(
    'decimal',
    'At or above this the receiver is saturated. In the first row, and beside each reading.',
    ({ fact }, { meter }) => (hasBand(fact) ? meter?.saturatedAt : undefined),
  ),
  alarm_threshold_db: column(
    'decimal',
    'The loss of light at which the detector alarms, in dB over the whole path. Where a plan stands.',
    ({ fact }) => thresholdDb(planIn(fact)),
  ),
  ...Object.fromEntries(
    PAIR_COLUMNS.map((name) => [
      `plan_${name}`,
      column(
        datatypeOf(name),
        `Column "${name}" of a table of pairs. In the first row of a job, with the meter and the adjusters that were used, and where the desk changed it; in the log of a site, where a pair was planned.`,
        ({ fact }) => {
          const plan = planIn(fact);
          return plan && cellOf(plan, name);
        },
      ),
    ]),
  ),
  guidance: column(
    'string',
    'The guidance that the plans of a site are checked against. In the first row of a site, and of a visit to one of its pairs.',
    ({ fact }) =>
      fact.type === 'opened'
        ? fact.setup.guidance?.name
        : when(fact, 'site-opened', ({ code }) => code?.name),
  ),
  signed_name: column('string', 'Who signed.', ({ fact }) => when(fact, 'signed', ({ name }) => name)),
  signed_role: column('string', 'As what.', ({ fact }) => when(fact, 'signed', ({ role }) => role)),
  signed_count: column('integer', 'How many entries, from the first on, the signature covers.', ({ fact }) =>
    when(fact, 'signed', ({ head }) => head.count),
  ),
  signed_hash: column('string', 'The hash of the last entry that the signature covers.', ({ fact }) =>
    when(fact, 'signed', ({ head }) => head.hash),
  ),
  signed_findings: column(
    'string',
    'The findings that the signer was shown, with spaces between.',
    ({ fact }) => when(fact, 'signed', ({ findings }) => findings.join(' ')),
  ),
  signed_in: column(
    'integer',
    'The entry of the first signature that covers this entry; empty where none does.',
    ({ seq }, { signedIn }) => signedIn(seq),
  ),
  person: column(
    'string',
    'Who was in the seat of this entry when it was logged, or who signed; empty where nobody was named.',
    ({ seq }, { people }) => people[seq]?.name,
  ),
  person_firm: column(
    'string',
    'Their firm, where it was given.',
    ({ seq }, { people }) => people[seq]?.firm,
  ),
  person_competence: column(
    'string',
    'Their competence, where it was given.',
    ({ seq }, { people }) => people[seq]?.competence,
  ),
  phone: column(
    'string',
    'A mark of the phone that took the seat: the same phone has the same mark within this log, and another in any other log.',
    ({ fact }) => when(fact, 'seated', ({ phone }) => phone),
  ),
  signed_declaration: column('string', 'The words that were signed.', ({ fact }) =>
    when(fact, 'signed', ({ declaration }) => declaration),
  ),
  signed_site_findings: column(
    'string',
    'The findings of the site about this pair that the signer was shown, with spaces between.',
    ({ fact }) => when(fact, 'signed', ({ ofSite }) => ofSite?.findings.join(' ')),
  ),
};

const hasBand = (fact: Fact): boolean => fact.type === 'opened' || 'reading' in fact;

/** The plan that a fact puts down, with the profiles that the job uses. */
function planIn(fact: Fact): PairPlan | undefined {
  if (fact.type === 'pair-planned') return currentPlan(fact.pair);
  if (fact.type === 'plan-changed') return currentPlan(fact.after);
  if (fact.type !== 'opened') return undefined;
  const { plan, pair, meter, adjusters, pathLength } = currentSetup(fact.setup);
  return {
    // A job outside a site has no plan, and its pair only a name.
    ...(plan ?? { id: '', name: pair, ...(pathLength !== undefined && { pathLength }) }),
    meter,
    adjusters,
  };
}

function targetOf(fact: Fact): Seq | undefined {
  if ('of' in fact) return fact.of;
  if ('target' in fact) return fact.target;
  if ('about' in fact) return fact.about;
  return 'issue' in fact ? fact.issue : replaced(fact);
}
