import { describe, expect, it } from 'vitest';
import { sentencesBelow, sentencesIn } from './sentences.ts';

/**
 * Where no words for phones and desks may stand. Labels in `.tsx` files stand with their markup; the other folders of
 * `server/` speak to who starts the server, at the terminal.
 */
const FOLDERS = [
  'src',
  'client',
  'server/http',
  'server/jobs',
  'server/record',
  'server/report',
  'server/site',
];

/** Files and folders whose sentences stay where they are, and why. */
const EXCEPTIONS: Readonly<Record<string, string>> = {
  'src/phrases/': 'the place for words',
  'src/grammar/': 'what people may say, not what is said to them',
  'src/languages/': 'the same words in other languages, and what people may say in them',
  'src/simulator/': 'an invented site and crew; the program never shows them',
  'src/plan/check.ts': 'a figure and its source stand together',
  'src/model/guidance.ts': 'limits and their source stand together',
  'src/model/profile.ts': 'names of profiles, stored with them; why a profile is refused',
  'src/protocol/socket.ts': 'why a message of a wrong form is refused: for who writes a client',
  'src/log/schema.ts': 'descriptions in the published schema',
  'src/protocol/routes.ts': 'descriptions in the published documents of the wire',
  'src/protocol/reads.ts': 'descriptions in the published documents of the wire',
  'src/protocol/openapi.ts': 'descriptions in the published documents of the wire',
  'src/protocol/asyncapi.ts': 'descriptions in the published documents of the wire',
  'src/record/csv-columns.ts': 'descriptions of the columns, beside the columns',
  'client/ui/first-error.ts': 'a selector of the page',
  'client/meeting/code.ts': 'lines that browsers write to each other',
  'server/http/pages.ts': 'a header of HTTP',
  'server/report/standards.ts': 'what a file says of itself, in the words of its standard',
  'server/report/thread.ts': 'errors for the journal',
  'server/jobs/rules.ts': 'errors for the journal',
  'server/jobs/rules-threads.ts': 'errors for the journal',
  'server/http/headers.ts': 'headers of HTTP',
  'server/jobs/connection.ts': 'why a socket closes, in the closing frame',
};

const excused = (file: string): string | undefined =>
  Object.keys(EXCEPTIONS).find((place) => file === place || (place.endsWith('/') && file.startsWith(place)));

describe('words for people', () => {
  const all = FOLDERS.flatMap(sentencesBelow);

  it('stand in src/phrases and nowhere else', () => {
    const astray = all.filter(({ file }) => excused(file) === undefined);
    expect(astray.map(({ file, line, text }) => `${file}:${line} ${text}`)).toEqual([]);
  });

  it('are still found in each place that is excused', () => {
    const used = new Set(all.map(({ file }) => excused(file)));
    expect(Object.keys(EXCEPTIONS).filter((place) => !used.has(place))).toEqual([]);
  });
});

describe('a text in the code', () => {
  const texts = (code: string) => sentencesIn('sample.ts', code).map(({ text }) => text);

  it('of three words or more is for people', () => {
    expect(texts(`say('Turn it back.'); say(\`Heard \${x}, is it right?\`)`)).toEqual([
      'Turn it back.',
      'Heard …, is it right?',
    ]);
  });

  it('of one or two words, a path, a type or an error that is thrown is not', () => {
    expect(
      texts(`
        import x from './a b c.ts';
        type T = 'one of these words';
        const d = \`M\${x},\${y} h 5 v 7\`;
        label('no signal');
        throw new Error('no such rule here');
      `),
    ).toEqual([]);
  });
});
