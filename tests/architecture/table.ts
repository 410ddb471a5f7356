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

const nameOf = (folder: string): string => folder.replace('src/', '').replaceAll('/', '-');

/** All that a folder takes from, at first hand or through others. */
function reached(folder: string, among: ReadonlySet<string>, seen = new Set<string>()): Set<string> {
  for (const other of arrowsFrom(folder, among)) {
    if (seen.has(other)) continue;
    seen.add(other);
    reached(other, among, seen);
  }
  return seen;
}

const arrowsFrom = (folder: string, among: ReadonlySet<string>): string[] =>
  folder === SHARED ? [] : [SHARED, ...(FOLDERS[folder]?.from ?? [])].filter((other) => among.has(other));

/** The folders of the core as a Mermaid drawing. An arrow that follows from others is left out. */
export function coreDrawing(): string {
  const core = new Set(Object.keys(FOLDERS).filter((folder) => folder.startsWith('src/')));
  const lines = [...core].flatMap((folder) => {
    const direct = arrowsFrom(folder, core);
    const needed = direct.filter(
      (other) => !direct.some((through) => through !== other && reached(through, core).has(other)),
    );
    return needed.length > 0 ? [`  ${nameOf(folder)} --> ${needed.map(nameOf).join(' & ')}`] : [];
  });
  return ['```mermaid', 'flowchart TB', ...lines, '```'].join('\n');
}
