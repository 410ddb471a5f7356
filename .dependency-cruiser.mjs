import { readFileSync } from 'node:fs';

/**
 * The one table of the program's folders: what each holds, and from which others its files may take something, types
 * included. Every folder may take from `SHARED`. These rules are made of it, `npm test` holds the code to it, and
 * `npm run arrows` writes it into docs/architecture.md. Each folder stands below all that it takes from.
 */
const FOLDERS = JSON.parse(readFileSync(new URL('tests/architecture/folders.json', import.meta.url), 'utf8'));
const SHARED = 'src/model';

/** The files of a folder, and not those of the folders in it. */
const filesOf = (folder) => `^${folder}/[^/]+$`;

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    {
      name: 'no-circle',
      comment: 'Files that take from each other in a circle can only be understood together.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    ...Object.entries(FOLDERS).map(([folder, { from }]) => ({
      name: `arrows-of-${folder.replaceAll('/', '-')}`,
      comment: `${folder} takes from these alone: ${[SHARED, ...from].join(', ')}.`,
      severity: 'error',
      from: { path: filesOf(folder) },
      to: { path: '^(src|server|client)/', pathNot: [folder, SHARED, ...from].map(filesOf) },
    })),
    {
      name: 'pure-core',
      comment: 'src/ has no I/O: it runs unchanged in Node and in a browser.',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['core'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^node_modules|[.]css$|[?]' },
    // An arrow that only carries a type is an arrow: who reads one file has to know the other.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.mjs'] },
  },
};
