/**
 * What stays English in every language, and why. The fewer the better: a text that a crew reads on a phone does not
 * belong here. `untranslated.test.ts` fails for each one that is not needed any more.
 */

const PAPER =
  'the report and the certificate: one document for everybody who reads it later, in one language';
const DESK = "the supervisor's pages, not translated yet";
const OPERATOR = 'for who runs the server';

/** Whole folders and files, by how their path begins. */
export const ENGLISH_PLACES: Readonly<Record<string, string>> = {
  'client/report/': PAPER,
  'src/phrases/cover-page.ts': PAPER,
  'src/phrases/declaration.ts': PAPER,
  'src/phrases/pair-page.ts': PAPER,
  'src/phrases/proving-table.ts': PAPER,
  'src/phrases/result.ts': PAPER,
  'src/phrases/seal.ts': PAPER,
  'src/phrases/entry-rows.ts': PAPER,
  'src/phrases/headings.ts': PAPER,
  'src/phrases/findings.ts': PAPER,
  'src/phrases/held.ts': PAPER,
  'src/phrases/history.ts': PAPER,
  'src/phrases/verify.ts': 'the check of a saved log, a program for the command line',
  'src/phrases/log-failures.ts': 'what is wrong with a damaged log, for who must find out why',
  'src/phrases/bad-requests.ts': 'what is said to other programs: our pages send no such thing',
  'client/account/people.tsx': DESK,
  'src/phrases/account-holders.ts': DESK,
  'client/board/': DESK,
  'client/planning/': DESK,
  'client/review/': DESK,
  'client/site/': DESK,
  'client/visit/': DESK,
  'src/phrases/board.ts': DESK,
  'src/phrases/stamping.ts': DESK,
  'src/phrases/damage.ts': DESK,
  'src/phrases/plan.ts': DESK,
  'src/phrases/plan-warnings.ts': DESK,
  'src/phrases/plan-formulas.ts': DESK,
  'src/phrases/plan-warnings-desk.ts': DESK,
  'src/phrases/planned.ts': DESK,
  'src/phrases/record-heading.ts': DESK,
  'src/phrases/signature.ts': DESK,
  'src/phrases/table-faults.ts': DESK,
  'src/phrases/table-preview.ts': DESK,
  'src/phrases/visits.ts': DESK,
};

const EXAMPLE = 'an example of what people type';
const FORMAT = 'the name of a format';
const PIECE = 'a piece of a text that has a line of its own';

/** Single texts, as `texts.ts` finds them. */
export const ENGLISH_TEXTS: Readonly<Record<string, string>> = {
  'Tamsin Quay, hall 3': EXAMPLE,
  B2: EXAMPLE,
  'ABC 234': EXAMPLE,
  'KILO 417': EXAMPLE,
  '--tls off': 'an option of the server',
  'en-GB': FORMAT,
  '2-digit': FORMAT,
  GMT: 'the same in all languages',
  UTC: 'the same in all languages',
  'face face-compact': 'two classes of a style sheet',
  'as stated': 'a value that stands behind a choice',
  ladderline: PIECE,
  or: PIECE,
  'fitted peak at': PIECE,
  read: PIECE,
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen': PIECE,
  'The disk of the data folder has 7 MB free, less than the 7 MB that should be: make room on it, before nothing more can be recorded.':
    OPERATOR,
  'The metrics are for who runs the server: send the token in the file metrics.token of the data folder.':
    OPERATOR,
};
