import { useEffect, useState } from 'preact/hooks';
import { HomePage } from './home/home-page.tsx';
import { type Route, routeOf } from './route.ts';
import { lazy } from './ui/lazy.tsx';
import { MessagePage } from './ui/message-page.tsx';

// The first page is small; each of these comes when it is wanted.
const JoinPage = lazy(() => import('./join/join-page.tsx').then((m) => m.JoinPage));
const PanelPage = lazy(() => import('./panel/panel-page.tsx').then((m) => m.PanelPage));
const EmitterPage = lazy(() => import('./emitter/emitter-page.tsx').then((m) => m.EmitterPage));
const ReviewPage = lazy(() => import('./review/review-page.tsx').then((m) => m.ReviewPage));

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
      return route.token ? <ReviewPage token={route.token} /> : <NoWatchToken />;
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
