import type { Rollup } from 'vite';

/** The first file, and the pages that a phone meets at a job. */
const MAIN = /[/]client[/]main[.]tsx$/;
const HOME = /[/]client[/]home[/]home-page[.]tsx$/;
const SEAT = /[/]client[/]seat[/]seat-page[.]tsx$/;
const JOIN = /[/]client[/]join[/]join-page[.]tsx$/;
const SCREENS = [/[/]client[/]panel[/]panel-screen[.]tsx$/, /[/]client[/]ladder[/]ladder-screen[.]tsx$/];
const MESSAGES = /[/]src[/]protocol[/]socket[.]ts$/;

const PACKAGES = /[/]node_modules[/](?:zod|nanoid|canonicalize)[/]/;
const CORE = /[/]src[/]/;
const PLAN = /[/]src[/](?:plan|phrases[/](?:plan|units|beside))/;

/**
 * The files of what a phone fetches before it can join a job, or show the cautions at a seat: nothing is in them that comes
 * only later. Left to itself the bundler makes few files, and puts into them what other pages need. Undefined: it decides.
 */
export function chunkOf(
  id: string,
  { getModuleInfo, getModuleIds }: Rollup.ManualChunkMeta,
): string | undefined {
  const reach = (from: string | undefined, reached = new Set<string>()): Set<string> => {
    if (from === undefined || reached.has(from)) return reached;
    reached.add(from);
    for (const next of getModuleInfo(from)?.importedIds ?? []) reach(next, reached);
    return reached;
  };
  const isNeededBy = (page: RegExp): boolean =>
    reach([...getModuleIds()].find((each) => page.test(each))).has(id);
  const [bySeat, byJoin, byHome] = [isNeededBy(SEAT), isNeededBy(JOIN), isNeededBy(HOME)];
  if (isNeededBy(MAIN) || (byHome && (bySeat || byJoin))) return 'index';
  // What a seat shows after its cautions fetches no other page for a line of it.
  const byScreen = SCREENS.some(isNeededBy);
  if (byHome) return byScreen ? 'home-and-seat' : 'home-page';
  if ((bySeat || byJoin) && PACKAGES.test(id)) return 'packages';
  if (isNeededBy(MESSAGES) || (bySeat && byJoin)) return 'messages';
  if (byJoin) return byScreen ? 'join-and-seat' : 'join-page';
  if (!bySeat) return undefined;
  if (PLAN.test(id)) return 'plan';
  return CORE.test(id) ? 'state' : 'seat';
}
