import { archivedContent, archivedSalt } from '../log/archive.ts';
import type { ChainFault, FileFault, PhotoFault, SoundFault, Wrong } from '../log/fault.ts';
import type { Signed } from '../log/signed-head.ts';
import type { StampDoubt, Stamped, StampFault } from '../log/time-stamp.ts';
import type { Photo } from '../visit/photos.ts';

const FILE: Record<FileFault['fault'], string> = {
  'not-json': 'is not JSON',
  'not-an-entry': 'is neither an entry of a log nor its closing line',
  'not-canonical': 'is not the exact text that its hash was taken over',
  'unknown-field': 'has a field that this format does not have',
  'no-head': 'should be the closing line with the head: the end of the file was cut off',
  'after-head': 'comes after the closing line',
};

const CHAIN: Record<ChainFault['fault'], string> = {
  order: 'is not the next one: an entry before it was removed, added or moved',
  job: 'belongs to another log',
  prev: 'does not follow the one before it',
  hash: 'was changed: its hash does not match',
  head: 'is missing, or is one too many: the log does not end where its head says',
  names: 'has other names beside it than it was sealed with: the names or their salt were changed',
  'names-missing': 'has lost the names beside it, and no entry says that they were forgotten',
  'names-back': 'has names beside it that a later entry says were forgotten',
  ref: 'has the id of another message beside it',
  cut: 'and those after it are missing: the log was longer before',
  rewritten: 'is not the one that stood here before: the log was written again up to here',
  missing: 'is missing, and so is the whole log',
};

const STAMP: Record<StampFault | 'tree', string> = {
  tree: 'is not of a tree that was signed and holds them',
  form: 'is no time stamp (RFC 3161), or was damaged',
  imprint: 'is for something else',
  nonce: 'answers another question than the one that the server sent',
  signature: 'was changed: the signature in it does not match',
  signer: 'does not name the certificate that signed it',
};

/** "Entry 17 was changed: its hash does not match." */
export function wrongText(wrong: Wrong): string {
  switch (wrong.kind) {
    case 'file':
      return `Line ${wrong.line} ${FILE[wrong.fault]}${wrong.field === undefined ? '' : `: "${wrong.field}"`}.`;
    case 'practice':
      return 'This is practice on a simulated pair. It is no record of a real one, and proves nothing.';
    case 'chain':
      return `Entry ${wrong.seq} ${CHAIN[wrong.fault]}.`;
    case 'signature':
      return `Entry ${wrong.seq} signs a record that is not the one before it.`;
    case 'signer':
      return `Entry ${wrong.seq} is signed with a typed name that is not the signer's.`;
    case 'words':
      return wrong.from === undefined
        ? `Entry ${wrong.seq} is a reading that nobody said or typed.`
        : `Entry ${wrong.seq} is a reading that the words of entry ${wrong.from} do not say: one of the two was changed.`;
    case 'signed-head':
      return `Entry ${wrong.seq} is not the one that the server signed: the log was cut, or written again.`;
    case 'bad-signature':
      return `Entry ${wrong.seq} has a signature of the server that is not right: somebody made it up, or changed it.`;
    case 'stamp':
      return `The time stamp over the entries up to ${wrong.seq} ${STAMP[wrong.fault]}.`;
    case 'advice':
      return `Entry ${wrong.seq} is not what this version's engine advises here. Verify with the version that wrote the log, or ask why.`;
    case 'findings':
      return `Entry ${wrong.seq} was signed with findings that differ from the record's.`;
  }
}

/** "The picture of entry 31 was changed: its hash does not match." */
export function photoFaultText(fault: PhotoFault): string {
  switch (fault.kind) {
    case 'missing':
      return `The picture of entry ${fault.seq} is missing: ${archivedContent('photos', fault.seq)} or ${archivedSalt('photos', fault.seq)} is not in the file.`;
    case 'changed':
      return `The picture of entry ${fault.seq}, or its salt, was changed: the hash does not match.`;
    case 'came-back':
      return `The picture of entry ${fault.seq} is in the file, but the log says that it was removed.`;
    case 'strange':
      return strangeText(fault.name);
  }
}

/** Quoted as JSON: a name may hold signs that a terminal obeys. */
const strangeText = (name: string): string =>
  `The file holds ${JSON.stringify(name)}: no entry names it, or it is there twice.`;

export const soundFaultText = (fault: SoundFault): string =>
  fault.kind === 'strange'
    ? strangeText(fault.name)
    : `The sound of entry ${fault.seq}, or its salt, was changed: the hash does not match.`;

/** The photos of a log whose pictures are as they were. `archived`: the pictures came with it. */
export function photoLines(photos: readonly Photo[], archived: boolean): string[] {
  const there = photos.filter(({ removed }) => !removed).length;
  const pictures = there === 1 ? '1 picture' : `${there} pictures`;
  const whole = archived
    ? `Photos: ${pictures}, as the log names ${there === 1 ? 'it' : 'them'}.`
    : `NOT VERIFIED: ${pictures}. They are not in this file: save the record with its photos, and verify that.`;
  const gone = photos.flatMap(({ seq, removed }) =>
    removed ? [`  Removed: the picture of entry ${seq}, by entry ${removed.seq}: ${removed.why}`] : [],
  );
  return there > 0 || gone.length > 0 ? [whole, ...gone] : [];
}

/** `named`: how many entries name a sound; `there`: how many of them have it in the file. */
export const soundLines = (named: number, there: number): string[] =>
  named === 0
    ? []
    : [`Sounds: ${there} of ${named}, as the log names them. The others are deleted, or not in this file.`];

/** `open`: how many entries hold names in their hashed text; `forgotten`: how many have lost theirs, as the log says. */
export const namesLines = (open: number, forgotten: number): string[] => [
  ...(forgotten > 0
    ? [
        `Names: ${entriesText(forgotten)} had names that were forgotten, as the log says. What rests on them could not be checked.`,
      ]
    : []),
  ...(open > 0 ? [`Names: ${entriesText(open)} of an older form, whose names cannot be forgotten.`] : []),
];

const entriesText = (count: number): string => (count === 1 ? '1 entry' : `${count} entries`);

export const NO_LOG_IN_ZIP =
  'it is no whole ZIP with a log in it, or one that grows beyond all measure (1 GB) when it is unpacked.';

export const REPLAYED = 'Replay: the engine gives the same advice and the same findings.';

/** `written`: the number that the log names; `here`: this program's. */
export const notReplayedText = (written: number | undefined, here: number): string =>
  `NOT VERIFIED: advice and findings. The log says that engine ${written ?? 'without a number'} wrote it, and this is engine ${here}. Verify it with the program of that engine: somebody who changes the number can hide other changes.`;

/** `kept`: how many heads of this log were kept elsewhere. */
export const keptText = (kept: number): string =>
  kept === 0
    ? 'NOT VERIFIED: no head of this log is among those that were kept elsewhere.'
    : `Kept elsewhere: all ${kept} heads are of this log.`;

const NOT_PROVEN =
  'NOT PROVEN: who wrote it, and when. Somebody who can write the whole file can make another like it.';

/** What the signatures of a server prove of a log of `count` entries. */
export function signedLines(signed: Signed, count: number): string[] {
  switch (signed.kind) {
    case 'none':
      return [
        NOT_PROVEN,
        '  No head in the file is signed by a server; in older exports none is. Compare count and head with the printed report.',
      ];
    case 'nobodys':
      return [
        NOT_PROVEN,
        `  It is signed with the key ${signed.key}. Compare that with the key that your server prints at its start, or give yours: --key.`,
      ];
    case 'other-key':
      return [
        `NOT PROVEN: it is not signed with the key you gave, but with ${signed.key}.`,
        '  Ask whose key that is before you rely on the file.',
      ];
    case 'signed': {
      const when = (ms: number) => new Date(ms).toISOString();
      return [
        `Signed: the first ${signed.count} entries stood so at ${when(signed.at)}, by the key you gave; the first signature is of ${when(signed.first)}.`,
        `  Key:  ${signed.key}`,
        ...(signed.count < count ? [`NOT PROVEN: the ${count - signed.count} entries after them.`] : []),
      ];
    }
  }
}

const DOUBT: Record<StampDoubt, string> = {
  'nobody-named':
    'The file has time stamps. Whether they are to be believed only the certificate of the authority says: give it with --stamp-authority.',
  'no-certificate':
    'The certificate that signed the time stamp is not in the file. Give it with --stamp-authority, together with that of the authority.',
  algorithm: 'The time stamp is signed by a method that this program cannot check.',
  purpose: 'The certificate that signed the time stamp is not one for time stamps alone.',
  'not-valid-then': 'The certificate that signed the time stamp was not valid at the time that it states.',
  'other-authority': 'The time stamp does not come from the authority whose certificate you gave.',
};

const NO_TIME = 'NOT PROVEN: the time. That of the signatures is the one that the server itself gave.';

/** What time stamps prove of a log of `count` entries. */
export function stampedLines(stamped: Stamped, count: number): string[] {
  switch (stamped.kind) {
    case 'none':
      return [NO_TIME, '  No authority stamped the time of anything in the file.'];
    case 'unproven':
      return [NO_TIME, `  ${DOUBT[stamped.doubt]}`];
    case 'stamped': {
      const { stamps, unproven } = stamped;
      const last = stamps.at(-1);
      const after = count - Math.max(...stamps.map((each) => each.count));
      return [
        ...stamps.map(
          ({ count: of, at, accuracy, by }) =>
            `Time: the first ${of} entries stood so at ${new Date(at).toISOString()}${
              accuracy === undefined ? '' : ` (to within ${accuracy / 1000} s)`
            }, as ${by} vouches.`,
        ),
        `  Its certificate ends at ${new Date(last?.until ?? 0).toISOString()}. Whether it was withdrawn before, no file can say: ask the authority.`,
        ...(unproven === 0
          ? []
          : [`NOT PROVEN: ${unproven} more time stamps, of somebody else or not valid.`]),
        ...(after > 0 ? [`NOT PROVEN: the time of the ${after} entries after them.`] : []),
      ];
    }
  }
}
