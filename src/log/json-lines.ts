import * as z from 'zod/mini';
import { Entry } from '../model/entry.ts';
import { Salt } from '../model/forgotten.ts';
import { type Hash, Head } from '../model/ids.ts';
import { bodyOf } from './chain.ts';
import type { FileFault } from './fault.ts';
import { Names, namesIn, withNames } from './names.ts';
import { namesText } from './sealing.ts';
import { HeadProof } from './signed-head.ts';

/**
 * The log as JSON Lines (UTF-8, one JSON value a line, every line ended by "\n").
 *
 * An entry's line is `{"hash":"H","entry":B}`: B is the entry's RFC 8785 canonical body, byte for byte the
 * text that was hashed, so that SHA-256 alone can check a line. Where B has `sealed`, the line goes on with
 * `,"names":{"of":N,"salt":"S"}}` instead of `}`: `sealed` is the SHA-256 of the bytes of S and of the canonical text N. Names that
 * were forgotten are not there. The last line is
 * `{"format":"ladderline-log","version":2,"head":{"count":N,"hash":"H","job":"J"}}`: the number of entries
 * and the hash of the last one. A file without it, or with fewer entries than it counts, has been cut. Beside the head
 * it may have `proof`: heads that the server signed. Files from before that have none. Version 1 has no `names`.
 */
export const JSON_LINES_FORMAT = 'ladderline-log';
export const JSON_LINES_VERSION = 2;

export function toJsonLines(entries: readonly Entry[], head: Head, proof?: HeadProof): string {
  const lines = entries.map(entryLine);
  // A log without names beside it gives the same file as ever.
  const version = entries.some(({ sealed }) => sealed !== undefined) ? JSON_LINES_VERSION : 1;
  const closing = { format: JSON_LINES_FORMAT, version, head, ...(proof && { proof }) };
  return `${[...lines, JSON.stringify(closing)].join('\n')}\n`;
}

/** The line of one entry, without its end. */
export const entryLine = (entry: Entry): string =>
  `{"hash":"${entry.hash}","entry":${bodyOf(entry)}${besideOf(entry)}}`;

function besideOf({ fact, sealed, salt }: Entry): string {
  const names = namesIn(fact);
  if (sealed === undefined || salt === undefined || !names) return '';
  return `,"names":{"of":${namesText(names)},"salt":"${salt}"}`;
}

const ENTRY_LINE = /^\{"hash":"([0-9a-f]{64})","entry":(?=\{)/;
/** No body has a field of the name `names`, and a quotation mark in a text has a backslash before it. */
const NAMES = ',"names":';

/** The texts in the line of an entry; undefined where it is none. */
function partsOf(line: string): { hash: Hash; body: string; names: string | undefined } | undefined {
  const [start, hash] = ENTRY_LINE.exec(line) ?? [];
  if (start === undefined || hash === undefined || !line.endsWith('}}')) return undefined;
  const at = line.indexOf(`}${NAMES}{`, start.length);
  if (at === -1) return { hash, body: line.slice(start.length, -1), names: undefined };
  return { hash, body: line.slice(start.length, at + 1), names: line.slice(at + 1 + NAMES.length, -1) };
}

/** What lies beside an entry: the fields of its fact that name people, and what is hashed before their canonical text. */
export const BesideEntry = z.object({ of: Names, salt: Salt });

/** The last line. */
export const Closing = z.object({
  format: z.literal(JSON_LINES_FORMAT),
  version: z.union([z.literal(1), z.literal(JSON_LINES_VERSION)]),
  head: Head,
  proof: z.optional(HeadProof),
});

export type ReadLog =
  | { ok: true; entries: Entry[]; head: Head; proof?: HeadProof | undefined }
  | ({ ok: false } & FileFault);

/**
 * Reads what `toJsonLines` wrote. It checks only the form of the file; `findFault(entries, head)` checks the
 * chain.
 */
export function fromJsonLines(text: string): ReadLog {
  const lines = text.split(/\r?\n/);
  if (lines.at(-1) === '') lines.pop();
  const entries: Entry[] = [];
  let head: Head | undefined;
  let proof: HeadProof | undefined;
  for (const [index, line] of lines.entries()) {
    const fault = (name: FileFault['fault']) => ({ ok: false, line: index + 1, fault: name }) as const;
    if (head) return fault('after-head');
    const value = parse(line);
    if (value === undefined) return fault('not-json');
    const closing = Closing.safeParse(value);
    if (closing.success) {
      const strange = strangeField(value, closing.data);
      if (strange !== undefined) return { ...fault('unknown-field'), field: strange };
      ({ head, proof } = closing.data);
      continue;
    }
    const read = entryIn(line);
    if ('fault' in read) return { ok: false, line: index + 1, ...read };
    entries.push(read.entry);
  }
  if (!head) return { ok: false, line: lines.length + 1, fault: 'no-head' };
  return { ok: true, entries, head, ...(proof && { proof }) };
}

/** The entry of a line that `entryLine` wrote. It checks only the form. */
export function entryIn(line: string): { entry: Entry } | Omit<FileFault, 'line'> {
  const parts = partsOf(line);
  if (!parts) return { fault: 'not-an-entry' };
  const { hash, body, names } = parts;
  const open = parse(body) as Open | undefined;
  // The whole line is JSON, and yet its halves are not: `names` stands inside the entry.
  if (!open) return { fault: 'not-an-entry' };
  const written = whole(hash, open, names === undefined ? undefined : parse(names));
  const entry = Entry.safeParse(written);
  if (!entry.success) return { fault: 'not-an-entry' };
  const strange = strangeField(written, entry.data);
  if (strange !== undefined) return { fault: 'unknown-field', field: strange };
  const beside = names === undefined ? '' : NAMES + names;
  if (bodyOf(entry.data) !== body || besideOf(entry.data) !== beside) return { fault: 'not-canonical' };
  return { entry: entry.data };
}

/** A body as it was hashed, of which nobody knows yet what it holds. */
interface Open {
  fact?: unknown;
  sealed?: unknown;
}

/** The entry with what lies beside it. Whatever else stands there makes another text of it, and is found by that. */
function whole(hash: Hash, body: Open, names: unknown): unknown {
  const beside = BesideEntry.safeParse(names).data;
  if (body.sealed === undefined || typeof body.fact !== 'object' || body.fact === null)
    return { ...body, hash };
  const fact = withNames(body.fact, beside && ((names as { of: Names }).of as Names));
  return { ...body, fact, ...(beside && { salt: beside.salt }), hash };
}

/** Where the log ends by the closing line alone. */
export function headIn(text: string): Head | undefined {
  return Closing.safeParse(parse(text.trimEnd().split('\n').at(-1) ?? '')).data?.head;
}

/** The first field of `given` that was dropped when it was read as `known`: nothing may stand there without notice. */
function strangeField(given: unknown, known: unknown): string | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  for (const [name, value] of Object.entries(given)) {
    const kept = (known as Record<string, unknown> | undefined)?.[name];
    if (kept === undefined) return name;
    const below = strangeField(value, kept);
    if (below !== undefined) return `${name}.${below}`;
  }
  return undefined;
}

function parse(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
