import type { Found } from './find.ts';
import type { FoundHolder } from './holder.ts';

interface Report {
  readonly lines: string[];
  /** The name stands nowhere any more where it can be deleted. */
  readonly isDone: boolean;
}

/** Where else a name stands. */
interface Besides {
  readonly holders?: readonly FoundHolder[];
  /** In the list of who read what. */
  readonly readers?: readonly string[];
  /** Folders beside the database that hold an older one. */
  readonly copies?: readonly string[];
}

/** For people: where the name stands, and what was or will be done. */
export function forgetLines(
  name: string,
  found: readonly Found[],
  isSure: boolean,
  { holders = [], readers = [], copies = [] }: Besides = {},
): Report {
  if (found.length + holders.length + readers.length === 0)
    return {
      lines: [
        `Nothing found: no record and no account holds the name ${JSON.stringify(name)}. Write it as it was typed.`,
        ...copyLines(copies),
      ],
      isDone: false,
    };
  const records = found.length > 0 ? recordLines(found, isSure) : { lines: [], isDone: true };
  return {
    lines: [
      ...holders.map((one) => holderLine(one, isSure)),
      ...readers.map((reader) => readerLine(reader, isSure)),
      ...records.lines,
      ...copyLines(copies),
    ],
    isDone:
      records.isDone &&
      (isSure || readers.length === 0) &&
      holders.every(({ kept }) => isSure && kept === undefined),
  };
}

function holderLine({ as, role, kept }: FoundHolder, isSure: boolean): string {
  const which = as === 'account' ? `the account (${role})` : `an invitation (${role})`;
  if (kept !== undefined) return `KEPT: ${which}: ${kept}`;
  return isSure
    ? `Withdrawn: ${which}. It opens nothing from now on.`
    : `Found: ${which}. With --yes it is withdrawn, and opens nothing from then on.`;
}

const readerLine = (reader: string, isSure: boolean): string =>
  `${isSure ? 'Forgotten' : 'Found'}: ${JSON.stringify(reader)} in who read what. ${isSure ? 'The lines stay, without the name.' : 'With --yes the lines stay, without the name.'}`;

/** What was put aside is another data folder, and was not looked into. */
const copyLines = (copies: readonly string[]): string[] =>
  copies.map(
    (folder) =>
      `NOT LOOKED INTO: ${folder}, which a restore has put aside. Delete it when nobody needs it any more, or run this for it (--data).`,
  );

function recordLines(found: readonly Found[], isSure: boolean): Report {
  const damaged = found.filter(({ beside, damaged }) => damaged && beside.length > 0);
  const sound = found.filter(({ beside, damaged }) => !damaged && beside.length > 0);
  const count = sound.reduce((sum, { beside }) => sum + beside.length, 0);
  const before = found.filter(({ inside }) => inside.length > 0);
  const old = before.reduce((sum, { inside }) => sum + inside.length, 0);
  const loose = found.filter((each) => each.loose.length > 0);
  const lines = [
    ...sound.map(
      ({ job, beside, as }) =>
        `${isSure ? 'Forgotten' : 'Found'}: record ${job}, ${entriesText(beside.length)}: ${as.map((each) => JSON.stringify(each)).join('; ')}`,
    ),
    ...(sound.length === 0 && damaged.length === 0
      ? ['Nothing to delete: the name lies beside no entry (any more).']
      : []),
    ...damaged.map(
      ({ job, beside }) =>
        `DAMAGED: record ${job} fails its check, and was left as it is, with the name in ${entriesText(beside.length)}.`,
    ),
    ...(old > 0
      ? [
          `KEPT: made before names could be forgotten: ${entriesText(old)} in these records keep the name: ${before.map(({ job }) => job).join(', ')}`,
        ]
      : []),
    ...loose.map(
      ({ job, loose: seqs }) =>
        `KEPT: record ${job} holds it in free text (remarks, spoken words, captions), which is part of the chain: ${seqs.length === 1 ? 'entry' : 'entries'} ${seqs.join(', ')}`,
    ),
    ...(old > 0 || loose.length > 0
      ? [
          'What is kept goes only with its whole data folder: see "forgetting somebody" in docs/operations.md.',
        ]
      : []),
  ];
  if (sound.length > 0 && !isSure)
    lines.push(
      `Nothing is changed yet. To delete the name from ${entriesText(count)} in ${recordsText(sound.length)}, run it again with --yes.`,
    );
  if (sound.length > 0 && isSure)
    lines.push(
      `The name is deleted from ${entriesText(count)} in ${recordsText(sound.length)}, and each record says so. The chain holds.`,
      'Backups, exports, reports and prints made before still hold it. A backup that is restored brings it back: forget it again then.',
    );
  return { lines, isDone: damaged.length === 0 && (isSure || sound.length === 0) };
}

const entriesText = (count: number): string => (count === 1 ? '1 entry' : `${count} entries`);
const recordsText = (count: number): string => (count === 1 ? '1 record' : `${count} records`);
