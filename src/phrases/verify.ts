import type { ChainFault, FileFault, Wrong } from '../log/fault.ts';

const FILE: Record<FileFault['fault'], string> = {
  'not-json': 'is not JSON',
  'not-an-entry': 'is neither an entry of a log nor its closing line',
  'not-canonical': 'is not the exact text that its hash was taken over',
  'no-head': 'should be the closing line with the head: the end of the file was cut off',
  'after-head': 'comes after the closing line',
};

const CHAIN: Record<ChainFault['fault'], string> = {
  order: 'is not the next one: an entry before it was removed, added or moved',
  job: 'belongs to another log',
  prev: 'does not follow the one before it',
  hash: 'was changed: its hash does not match',
  head: 'is missing, or is one too many: the log does not end where its head says',
  ref: 'has the id of another message beside it',
  cut: 'and those after it are missing: the log was longer before',
  rewritten: 'is not the one that stood here before: the log was written again up to here',
  missing: 'is missing, and so is the whole log',
};

/** "Entry 17 was changed: its hash does not match." */
export function wrongText(wrong: Wrong): string {
  switch (wrong.kind) {
    case 'file':
      return `Line ${wrong.line} ${FILE[wrong.fault]}.`;
    case 'chain':
      return `Entry ${wrong.seq} ${CHAIN[wrong.fault]}.`;
    case 'signature':
      return `Entry ${wrong.seq} signs a record that is not the one before it.`;
    case 'signer':
      return `Entry ${wrong.seq} is signed with a typed name that is not the signer's.`;
    case 'advice':
      return `Entry ${wrong.seq} is not what this version's engine advises here. Verify with the version that wrote the log, or ask why.`;
    case 'findings':
      return `Entry ${wrong.seq} was signed with findings that differ from the record's.`;
  }
}
