import { createPublicKey } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { Command } from 'commander';
import * as z from 'zod/mini';
import { ENGINE_VERSION } from '../../src/engine/version.ts';
import { type Archive, readArchive } from '../../src/log/archive.ts';
import { soundsIn } from '../../src/log/enclosure.ts';
import { headIn } from '../../src/log/json-lines.ts';
import { forgottenCount, isNamed } from '../../src/log/names.ts';
import { Fingerprint, fingerprintOf, SignedHead } from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import { printable } from '../../src/model/hidden.ts';
import { JobId } from '../../src/model/ids.ts';
import { METRES } from '../../src/model/units.ts';
import { currentSetup } from '../../src/model/written.ts';
import { findingText } from '../../src/phrases/findings.ts';
import { personText } from '../../src/phrases/people.ts';
import { SEVERITY_WORDS } from '../../src/phrases/severities.ts';
import { shownFor } from '../../src/phrases/units.ts';
import {
  keptText,
  NO_LOG_IN_ZIP,
  namesLines,
  notReplayedText,
  photoFaultText,
  photoLines,
  REPLAYED,
  signedLines,
  soundFaultText,
  soundLines,
  stampedLines,
  wrongText,
} from '../../src/phrases/verify.ts';
import { checkPhotos } from '../../src/verify/photos.ts';
import type { KeptHead, Known } from '../../src/verify/signed-heads.ts';
import { checkSounds } from '../../src/verify/sounds.ts';
import { type Verified, verify } from '../../src/verify/verify.ts';
import { checkSignature } from '../notary/ed25519.ts';
import { certificatesIn } from '../stamps/ask.ts';
import { stampsBy } from '../stamps/token.ts';
import { checkFolder } from './folder.ts';

/** Exit status. */
const VERIFIED = 0;
const WRONG = 1;
const UNREADABLE = 2;
/** Nothing in it is wrong, and something that was asked for could not be checked. */
const NOT_VERIFIED = 3;

/** What is wrong with the log, or with the pictures and sounds beside it. */
function wrongIn(result: Verified, archive: Archive | undefined): string[] {
  if (!result.ok) return [wrongText(result.wrong)];
  if (!archive) return [];
  return [
    ...checkPhotos(result.photos, archive).map(photoFaultText),
    ...checkSounds(result.entries, archive).map(soundFaultText),
  ];
}

/** `kept`: how many heads of the log were kept elsewhere; undefined when nobody gave any. */
function report(
  result: Verified & { ok: true },
  archive: Archive | undefined,
  kept: number | undefined,
): string[] {
  const { head, entries, findings, photos, replayed, signed, stamped } = result;
  const opened = entries[0]?.fact;
  const shown = opened?.type === 'opened' ? shownFor(currentSetup(opened.setup)) : METRES;
  return [
    `Whole: ${head.count} entries of log ${head.job}; every hash and signature is right.`,
    replayed ? REPLAYED : notReplayedText(engineOf(entries), ENGINE_VERSION),
    `Head:  ${head.hash}`,
    ...signedLines(signed, head.count),
    ...stampedLines(stamped, head.count),
    ...(kept === undefined ? [] : [keptText(kept)]),
    ...photoLines(photos, archive !== undefined),
    ...soundLines(soundsIn(entries).size, archive?.sounds.size ?? 0),
    ...namesLines(openNames(entries), forgottenCount(entries)),
    ...peopleIn(entries),
    ...(findings.length === 0 ? ['Findings: none.'] : ['Findings:']),
    ...findings.map(
      (finding) =>
        `  ${SEVERITY_WORDS[finding.severity]}: ${findingText(finding, shown)} (entries ${finding.entries.join(', ')})`,
    ),
  ];
}

/** How many entries hold names in their hashed text, as in older logs. */
const openNames = (entries: readonly Entry[]): number =>
  entries.filter((entry) => entry.sealed === undefined && isNamed(entry, [])).length;

/** Who took a seat, and who signed, as the log names them. */
function peopleIn(entries: readonly Entry[]): string[] {
  const lines = entries.flatMap(({ seq, fact }) => {
    if (fact.type === 'seated') return [`  ${fact.seat}: ${personText(fact.person)} (from entry ${seq})`];
    return fact.type === 'signed' ? [`  signed by: ${personText(fact)}, ${fact.role} (entry ${seq})`] : [];
  });
  return lines.length > 0 ? ['People, as they gave their names:', ...lines] : [];
}

/** Which engine the log says it was written by; undefined for one from before engines had numbers. */
function engineOf([first]: readonly Entry[]): number | undefined {
  return first?.fact.type === 'opened' ? first.fact.engine : undefined;
}

/** A public key by its fingerprint, as it is printed, or in a file (PEM). */
function keyOf(given: string): Fingerprint {
  const plain = given.replace(/[\s:]/g, '').toLowerCase();
  if (Fingerprint.safeParse(plain).success) return plain;
  const key = createPublicKey(readFileSync(given, 'utf8'));
  return fingerprintOf(key.export({ type: 'spki', format: 'der' }).toString('hex'));
}

const KeptLine = z.object({ heads: z.array(z.extend(SignedHead, { job: JobId })) });

/** Heads of one log in a file that `--heads-file` or `--heads-to` of the server wrote. */
function keptIn(file: string, job: JobId): KeptHead[] {
  const lines = readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '');
  return lines.flatMap((line) => KeptLine.parse(JSON.parse(line)).heads).filter((head) => head.job === job);
}

interface Given {
  key?: string;
  heads?: string;
  stampAuthority?: string;
}

/** Throws when a key, heads or certificates were given and cannot be read. */
const knownFrom = (text: string, { key, heads, stampAuthority }: Given): Known => ({
  check: checkSignature,
  checkStamp: stampsBy(stampAuthority === undefined ? undefined : certificatesIn(stampAuthority)),
  ...(key !== undefined && { key: keyOf(key) }),
  ...(heads !== undefined && { kept: keptIn(heads, headIn(text)?.job ?? '') }),
});

/** "PK": every ZIP begins so, and no JSON Lines. */
const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

function archiveIn(bytes: Uint8Array): Archive {
  const archive = readArchive(bytes);
  if (!archive) throw new Error(NO_LOG_IN_ZIP);
  return archive;
}

interface Checked {
  readonly result: Verified;
  readonly archive: Archive | undefined;
  readonly known: Known;
  readonly wrong: readonly string[];
}

/** Throws where the file, or what was given, cannot be read. */
function checkFile(file: string, given: Given): Checked {
  const bytes = readFileSync(file);
  const archive = isZip(bytes) ? archiveIn(bytes) : undefined;
  const text = archive?.log ?? bytes.toString('utf8');
  const known = knownFrom(text, given);
  const result = verify(text, known);
  return { result, archive, known, wrong: wrongIn(result, archive) };
}

/** What of a file that is right was asked for and could not be checked: nothing, where it is true. */
function isProven({ result, known }: Checked & { result: { ok: true } }, given: Given): boolean {
  const { signed, stamped, head, replayed } = result;
  const isSigned = known.key === undefined || (signed.kind === 'signed' && signed.count === head.count);
  const isKept = known.kept === undefined || known.kept.length > 0;
  const isStamped =
    given.stampAuthority === undefined ||
    (stamped.kind === 'stamped' && stamped.stamps.some(({ count }) => count === head.count));
  return replayed && isSigned && isKept && isStamped;
}

/** An export of all that a firm or a person has. */
async function mainOfFolder(folder: string, given: Given): Promise<number> {
  let areProven = true;
  const { wrong, whole } = await checkFolder(folder, (file, hash) => {
    const checked = checkFile(file, given);
    const { result } = checked;
    if (!result.ok || checked.wrong.length > 0) return checked.wrong;
    areProven &&= isProven({ ...checked, result }, given);
    return result.head.hash === hash ? [] : ['the record ends elsewhere than the list says.'];
  });
  for (const each of wrong) console.log(printable(`WRONG: ${each}`));
  if (wrong.length > 0) return WRONG;
  console.log(`Whole: ${whole}; every file and every hash is right.`);
  return areProven ? VERIFIED : NOT_VERIFIED;
}

async function main(): Promise<number> {
  const program = new Command('verify')
    .description(
      'Checks an exported log, and the photos saved with it, or a folder of npm run export, without the server or the network.',
    )
    .argument(
      '<file>',
      'the .jsonl export of a job or a site, the .zip of a job with its photos, or a folder of npm run export',
    )
    .option(
      '--key <key>',
      "the server's public key: its fingerprint, as at its start and on reports, or a PEM file",
    )
    .option('--heads <file>', 'signed heads that were kept elsewhere (see --heads-file of the server)')
    .option(
      '--stamp-authority <file>',
      'certificate of the authority whose time stamps you believe (PEM), from that authority',
    )
    .addHelpText(
      'after',
      '\nExit status: 0 verified, 1 wrong, 2 a file or key could not be read, 3 nothing wrong, but not all of it could be verified.',
    )
    .exitOverride((error) => process.exit(error.exitCode === 0 ? VERIFIED : UNREADABLE))
    .parse(process.argv);
  const [file = ''] = program.args;
  const given = program.opts<Given>();
  let checked: Checked;
  try {
    if (statSync(file).isDirectory()) return await mainOfFolder(file, given);
    checked = checkFile(file, given);
  } catch (error) {
    console.error(
      printable(
        `verify: ${file}, the key, the heads or the certificate could not be read: ${(error as Error).message}`,
      ),
    );
    return UNREADABLE;
  }
  const { result, archive, known, wrong } = checked;
  for (const each of wrong) console.log(printable(`WRONG: ${each}`));
  if (!result.ok || wrong.length > 0) return WRONG;
  console.log(report(result, archive, known.kept?.length).map(printable).join('\n'));
  return isProven({ ...checked, result }, given) ? VERIFIED : NOT_VERIFIED;
}

process.exitCode = await main();
