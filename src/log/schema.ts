import * as z from 'zod/mini';
import { Entry } from '../model/entry.ts';
import { Fact } from '../model/facts.ts';
import { Hash } from '../model/ids.ts';
import { BesideEntry, Closing } from './json-lines.ts';
import { fieldsOf } from './names.ts';

/** What each kind of fact in a log says. */
const SAYS: Record<Fact['type'], string> = {
  opened: 'The job was opened with this setup; always the first entry of a job.',
  seated: 'A phone took a seat.',
  link: 'The phone of a seat connected or disconnected.',
  said: 'Words as they were received, before they were understood.',
  camera: 'What a phone that watches the meter by camera says of itself.',
  sensor: 'What a phone that follows a tone or a lamp says of itself; when it begins, what it was taught.',
  unheard: 'Sound that gave no words, and why.',
  reading: 'What the meter showed.',
  trend: 'What the reading is doing.',
  move: 'A turn that was made; eighths of a turn, clockwise positive.',
  gain: 'The gain was changed.',
  path: 'The path of the beam: clear, partly covered or blocked.',
  're-aimed': 'The emitter was aimed at the receiver by eye; positions start again from zero.',
  disturbed: 'It was knocked, or a turn was not counted: positions start again from here.',
  choice: 'The crew chose an adjuster.',
  cannot: 'A turn that was asked for could not be made.',
  checked: 'A list of causes was worked through.',
  item: 'An item of a checklist was answered.',
  panel: 'What the fire panel shows.',
  confirm: 'The entry "target" was questioned and confirmed.',
  retract: 'The entry "target" no longer counts; it stays in the log.',
  accept: 'The alignment was accepted: with all its evidence, or without it for a given reason.',
  pause: 'The crew asked for time, or the next order waits for the emitter.',
  resume: 'The crew continued.',
  admission: 'The panel answered a phone that asked for a seat without a code; both screens showed "mark".',
  'key-withdrawn': 'A key to this log was taken away: of a phone in a seat, or a link.',
  brought: 'Up to here one phone alone kept the log, without a server. From here on the server keeps it.',
  remark: 'A remark.',
  'watcher-remark': 'A remark by somebody who watched, under the name "by" that was typed there.',
  sound: 'From here on the sound of what is said is kept for so many days; 0: no longer.',
  mounted: 'How the emitter hangs, as the person facing it sees it.',
  readback: 'What was understood, read back; "of" is the entry it became.',
  query: 'A question about words that could mean two things or none.',
  notice: 'Something both should know; it asks for no action.',
  instruction: 'The next move, as it was spoken; supersedes every earlier one.',
  withdrawn: 'The instruction is no longer valid, and there is no new one.',
  stopped: 'The crew stopped.',
  restarted: 'The crew started again.',
  'issue-opened': 'Something that must be settled before signing: a test failed.',
  'issue-closed': 'It was settled, and how.',
  'plan-changed': 'The desk changed the plan of the pair while the visit was open, from what and to what.',
  practised: 'Only in practice: what was really done at the simulated pair, whatever was said of it.',
  signed: 'The record up to "head" was read and signed; "findings" are those that were shown.',
  'as-left':
    'How the pair was left; each value replaces an earlier one. Heights in metres, delays in seconds.',
  conditions: 'Sun, weather and building during the work; replaces what was written before.',
  variation: 'What was done otherwise than planned or required, and who agreed.',
  'next-due': 'What is to be done next, and by when; replaces what was written before.',
  'struck-out':
    'What an entry wrote for the hand-over holds no longer: a variation, or one value as it was left. Why is told.',
  step: 'A step of cause and effect was answered: passed, failed or not done.',
  photo:
    'A photo; "hash" is SHA-256 of a salt and the picture, a JPEG, which both lie beside the log. Width and height in pixels.',
  'photo-removed': 'The picture of the photo of entry "photo" was removed, and why; its entry stays.',
  'names-forgotten':
    'The names beside these entries were deleted with their salts, and why; the entries stay. "afterDays": the server keeps names for so many days.',
  'site-opened': 'The site was opened; always the first entry of a site.',
  'units-chosen': 'The site reads and writes its figures in these units from here on.',
  'steps-defined': 'The test steps of visits that begin from here on; they replace those before.',
  'pair-planned': 'A pair was added to the site, or its plan replaced.',
  'pair-dropped': 'A pair was taken out of the site.',
  'job-begun': 'A visit to a pair: its record is the log "job".',
};

/** Says of the schema of a fact what the fact says; leaves any other as it is. */
export function describeFact(schema: z.core.JSONSchema.BaseSchema): void {
  const type = schema.properties?.type;
  const says = typeof type === 'object' && type.const !== undefined && SAYS[type.const as Fact['type']];
  if (says) schema.description = says;
}

/** Facts as they stand in hashed bodies: with their names, as in older logs, or without. */
const WrittenFact = z.discriminatedUnion(
  'type',
  Fact.def.options.map((option) => {
    const fields = fieldsOf({ type: option.shape.type.def.values[0], item: 'people-told' });
    if (fields.length === 0) return option;
    const mask = Object.fromEntries(fields.map((field) => [field, true]));
    return z.partial(option as z.ZodMiniObject, mask as never);
  }) as unknown as typeof Fact.def.options,
);

const EntryLine = z
  .object({
    hash: Hash.check(z.describe('SHA-256 of the exact text of "entry", in hexadecimal.')),
    entry: z
      .extend(z.omit(Entry, { hash: true, salt: true }), { fact: WrittenFact })
      .check(
        z.describe(
          'RFC 8785 canonical JSON: the text its hash is taken over. With "sealed", the fields of the fact that name people are not in it.',
        ),
      ),
    names: z
      .optional(BesideEntry)
      .check(
        z.describe(
          'Where the entry has "sealed": "of", the fields of the fact that name people, and "salt", 16 random bytes in hexadecimal. "sealed" is the SHA-256 of these bytes and, behind them, of the canonical text of "of". Missing: forgotten.',
        ),
      ),
  })
  .check(z.describe('An entry.'));

/**
 * JSON Schema (2020-12) of one line of a JSON Lines export, made from the shapes that the program itself
 * reads and writes by. It describes the form only; the verifier checks the chain of hashes.
 */
export function lineSchema(): object {
  const { $schema, ...schema } = z.toJSONSchema(
    z.union([
      EntryLine,
      Closing.check(z.describe("The last line: how many entries there are, and the last one's hash.")),
    ]),
    {
      reused: 'ref',
      override: ({ jsonSchema }) => describeFact(jsonSchema),
    },
  );
  return { $schema, title: 'A line of a Ladderline log (JSON Lines)', ...schema };
}
