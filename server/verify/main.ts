import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import type { Entry } from '../../src/model/entry.ts';
import { METRES } from '../../src/model/units.ts';
import { currentSetup } from '../../src/model/written.ts';
import { findingText, SEVERITY_WORDS } from '../../src/phrases/findings.ts';
import { personText } from '../../src/phrases/people.ts';
import { shownFor } from '../../src/phrases/units.ts';
import { wrongText } from '../../src/phrases/verify.ts';
import { type Verified, verify } from '../../src/verify/verify.ts';

/** Exit status. 0: the log is whole. 1: something in it is wrong. 2: the file could not be read. */
const WHOLE = 0;
const WRONG = 1;
const UNREADABLE = 2;

function report(result: Verified): string[] {
  if (!result.ok) return [`WRONG: ${wrongText(result.wrong)}`];
  const { head, entries, findings, replayed } = result;
  const opened = entries[0]?.fact;
  const shown = opened?.type === 'opened' ? shownFor(currentSetup(opened.setup)) : METRES;
  return [
    `Whole: ${head.count} entries of log ${head.job}; every hash and signature is right.`,
    replayed
      ? 'Replay: the engine gives the same advice and the same findings.'
      : 'Replay: not done. Another version of the engine wrote the log; verify it with that version.',
    `Head:  ${head.hash}`,
    'Compare count and head with the printed report: a file that was rewritten from start to end also passes.',
    ...peopleIn(entries),
    ...(findings.length === 0 ? ['Findings: none.'] : ['Findings:']),
    ...findings.map(
      (finding) =>
        `  ${SEVERITY_WORDS[finding.severity]}: ${findingText(finding, shown)} (entries ${finding.entries.join(', ')})`,
    ),
  ];
}

/** Who took a seat, and who signed, as the log names them. */
function peopleIn(entries: readonly Entry[]): string[] {
  const lines = entries.flatMap(({ seq, fact }) => {
    if (fact.type === 'seated') return [`  ${fact.seat}: ${personText(fact.person)} (from entry ${seq})`];
    return fact.type === 'signed' ? [`  signed by: ${personText(fact)}, ${fact.role} (entry ${seq})`] : [];
  });
  return lines.length > 0 ? ['People, as they gave their names:', ...lines] : [];
}

function main(): number {
  const [file] = new Command('verify')
    .description('Checks an exported log (JSON Lines) without the server or the network.')
    .argument('<file>', 'the .jsonl export of a job or a site')
    .addHelpText('after', '\nExit status: 0 whole, 1 wrong, 2 the file could not be read.')
    .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : UNREADABLE))
    .parse(process.argv).args;
  let text: string;
  try {
    text = readFileSync(file as string, 'utf8');
  } catch (error) {
    console.error(`verify: ${file} could not be read: ${(error as Error).message}`);
    return UNREADABLE;
  }
  const result = verify(text);
  console.log(report(result).join('\n'));
  return result.ok ? WHOLE : WRONG;
}

process.exitCode = main();
