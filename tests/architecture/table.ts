import { readFileSync } from 'node:fs';

/** Every folder may take from it. */
export const SHARED = 'src/model';

/** What each folder holds, and from which others it may take; see `.dependency-cruiser.mjs`. */
export const FOLDERS: Record<string, { holds: string; from: string[] }> = JSON.parse(
  readFileSync(new URL('folders.json', import.meta.url), 'utf8'),
);

/** The table of docs/architecture.md, as Markdown. */
export function arrowsTable(): string {
  const rows = Object.entries(FOLDERS).map(([folder, { holds, from }]) => {
    const others = from.map((each) => `\`${each}\``).join(', ');
    return `| \`${folder}\` | ${holds} | ${others || '–'} |`;
  });
  return [`| folder | holds | takes from (all: \`${SHARED}\`) |`, '| --- | --- | --- |', ...rows].join('\n');
}
