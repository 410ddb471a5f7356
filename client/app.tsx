import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { type Route, routeOf } from './browser/route.ts';
import type { PartsOf, ScreenName } from './browser/screens.ts';
import { drawsDocument } from './language/languages.ts';
import { Returning } from './seat/returning.tsx';
import { inPieces } from './ui/breath.ts';
import { lazy } from './ui/lazy.tsx';
import { MessagePage } from './ui/message-page.tsx';

/**
 * What the pages stand on that hold a link, file after file. Run in one go with the page, they would keep a slow phone from
 * drawing and answering for half a second.
 */
const LINK = [
  // In one file with the other packages.
  () => import('nanoid'),
  () => import('../src/protocol/socket.ts'),
];
const onLink = <M,>(page: () => Promise<M>): Promise<M> => inPieces(LINK).then(page);
/** And on a job, which they fold themselves. */
const onJob = <M,>(page: () => Promise<M>): Promise<M> =>
  inPieces([...LINK, () => import('../src/visit/state.ts')]).then(page);

/** The component of each screen. Its code is fetched when it is opened; the head of the page already asks for it. */
const PAGES: { [S in ScreenName]: ComponentType<PartsOf<S>> } = {
  home: lazy(() => import('./home/home-page.tsx').then((m) => m.HomePage)),
  join: lazy(() => import('./join/join-page.tsx').then((m) => m.JoinPage)),
  ask: lazy(() => import('./join/ask-page.tsx').then((m) => m.AskPage)),
  meet: lazy(() => import('./meeting/meet-page.tsx').then((m) => m.MeetPage)),
  account: lazy(() => import('./account/account-page.tsx').then((m) => m.AccountPage)),
  invited: lazy(() => import('./account/invited-page.tsx').then((m) => m.InvitedPage)),
  'signed-in': lazy(() => import('./account/signed-in-page.tsx').then((m) => m.SignedInPage)),
  figures: lazy(() => import('./account/figures-page.tsx').then((m) => m.FiguresPage)),
  reads: lazy(() => import('./account/reads-page.tsx').then((m) => m.ReadsPage)),
  trust: lazy(() => import('./trust/trust-page.tsx').then((m) => m.TrustPage)),
  practice: lazy(() => import('./practising/practice-page.tsx').then((m) => m.PracticePage)),
  alone: lazy(() => import('./alone/alone-page.tsx').then((m) => m.AlonePage)),
  panel: lazy(
    () => onJob(() => import('./panel/panel-page.tsx')).then((m) => m.PanelPage),
    ({ fresh }) => <Returning seat={fresh ? undefined : 'panel'} />,
  ),
  emitter: lazy(
    () => onJob(() => import('./emitter/emitter-page.tsx')).then((m) => m.EmitterPage),
    () => <Returning seat="emitter" />,
  ),
  review: lazy(() => onLink(() => import('./review/review-page.tsx')).then((m) => m.ReviewPage)),
  report: lazy(() => import('./report/report-page.tsx').then((m) => m.ReportPage)),
  board: lazy(() => import('./board/board-page.tsx').then((m) => m.BoardPage)),
  'new-site': lazy(() => import('./planning/new-site-page.tsx').then((m) => m.NewSitePage)),
  plan: lazy(() => import('./planning/plan-page.tsx').then((m) => m.PlanPage)),
  import: lazy(() => import('./planning/import-page.tsx').then((m) => m.ImportPage)),
  visit: lazy(() => import('./visit/visit-page.tsx').then((m) => m.VisitPage)),
};

/** What a supervisor reads, and what is printed and kept: see `drawsDocument`. */
const DOCUMENTS: ReadonlySet<ScreenName> = new Set([
  'review',
  'report',
  'board',
  'new-site',
  'plan',
  'import',
  'visit',
]);

export function App() {
  const route = useRoute();
  drawsDocument(route.kind === 'screen' && DOCUMENTS.has(route.name));
  switch (route.kind) {
    case 'screen': {
      const Page = PAGES[route.name] as ComponentType<Readonly<Record<string, string>>>;
      return <Page key={Object.values(route.parts).join('/')} {...route.parts} />;
    }
    case 'cut-short':
      return <CutShort />;
    case 'unknown':
      return <Unknown />;
  }
}

const here = (): Route => routeOf(location.pathname, location.hash);

function useRoute(): Route {
  const [route, setRoute] = useState(here);
  useEffect(() => {
    const follow = () => setRoute(here());
    addEventListener('popstate', follow);
    addEventListener('hashchange', follow);
    return () => {
      removeEventListener('popstate', follow);
      removeEventListener('hashchange', follow);
    };
  }, []);
  return route;
}

const CutShort = () => (
  <MessagePage title="This link is not complete">
    <p>
      The link needs a long key after the <code>#</code>. Ask the person who sent it to send all of it again.
      A site that this device knows also opens from the start page.
    </p>
  </MessagePage>
);

const Unknown = () => (
  <MessagePage title="There is no such page">
    <p>Part of the address may be missing. A link to join ends in six letters and digits.</p>
  </MessagePage>
);
