import { useEffect, useState } from 'preact/hooks';
import { type Route, routeOf } from './browser/route.ts';
import { HomePage } from './home/home-page.tsx';
import { lazy } from './ui/lazy.tsx';
import { MessagePage } from './ui/message-page.tsx';

// The first page is small; each of these comes when it is wanted.
const JoinPage = lazy(() => import('./join/join-page.tsx').then((m) => m.JoinPage));
const PanelPage = lazy(() => import('./panel/panel-page.tsx').then((m) => m.PanelPage));
const EmitterPage = lazy(() => import('./emitter/emitter-page.tsx').then((m) => m.EmitterPage));
const ReviewPage = lazy(() => import('./review/review-page.tsx').then((m) => m.ReviewPage));
const NewSitePage = lazy(() => import('./planning/new-site-page.tsx').then((m) => m.NewSitePage));
const BoardPage = lazy(() => import('./board/board-page.tsx').then((m) => m.BoardPage));
const PlanPage = lazy(() => import('./planning/plan-page.tsx').then((m) => m.PlanPage));
const ImportPage = lazy(() => import('./planning/import-page.tsx').then((m) => m.ImportPage));
const ReportPage = lazy(() => import('./report/report-page.tsx').then((m) => m.ReportPage));
const VisitPage = lazy(() => import('./visit/visit-page.tsx').then((m) => m.VisitPage));

export function App() {
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
  return <Page route={route} />;
}

const here = (): Route => routeOf(location.pathname, location.hash);

function Page({ route }: { route: Route }) {
  switch (route.page) {
    case 'home':
      return <HomePage />;
    case 'join':
      return <JoinPage code={route.code} />;
    case 'panel':
      return <PanelPage fresh={route.fresh} />;
    case 'emitter':
      return <EmitterPage />;
    case 'watch':
      return route.token ? <ReviewPage key={route.token} token={route.token} /> : <NoWatchToken />;
    case 'report':
      return route.token ? (
        <ReportPage key={`${route.token}/${route.job}`} token={route.token} job={route.job} />
      ) : (
        <NoWatchToken />
      );
    case 'site-new':
      return <NewSitePage />;
    case 'site':
      return route.token ? <BoardPage key={route.token} token={route.token} /> : <NoSiteToken />;
    case 'site-plan':
      return route.token ? (
        <PlanPage key={route.token} token={route.token} pair={route.pair} />
      ) : (
        <NoSiteToken />
      );
    case 'site-import':
      return route.token ? <ImportPage key={route.token} token={route.token} /> : <NoSiteToken />;
    case 'site-pair':
      return route.token && route.job ? (
        <VisitPage key={`${route.token}/${route.job}`} token={route.token} job={route.job} />
      ) : (
        <NoSiteToken />
      );
    case 'unknown':
      return (
        <MessagePage title="There is no such page">
          <p>The address may have been cut short. A join link ends in six letters and digits.</p>
        </MessagePage>
      );
  }
}

const NoWatchToken = () => (
  <MessagePage title="This link is not complete">
    <p>
      A link to watch a job carries a long key after the <code>#</code>. Ask the person at the panel to share
      it again, whole.
    </p>
  </MessagePage>
);

const NoSiteToken = () => (
  <MessagePage title="This link is not complete">
    <p>
      A link to a site carries a long key after the <code>#</code>. Open it from the start of this app, or ask
      whoever opened the site to share it again, whole.
    </p>
  </MessagePage>
);
