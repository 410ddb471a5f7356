import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { MessagePage } from './message-page.tsx';

/** A page whose code is fetched when it is first opened: at once, without waiting for a drawing. */
export function lazy<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let loaded: ComponentType<P> | undefined;
  let loading: Promise<ComponentType<P>> | undefined;
  return function Lazy(props: P) {
    const [state, setState] = useState<'loading' | 'failed' | 'ready'>(loaded ? 'ready' : 'loading');
    if (state === 'loading') loading ??= load();
    useEffect(() => {
      if (state !== 'loading') return;
      loading?.then(
        (page) => {
          loaded = page;
          setState('ready');
        },
        () => {
          loading = undefined;
          setState('failed');
        },
      );
    }, [state]);
    if (state === 'failed') return <NotLoaded again={() => setState('loading')} />;
    const Loaded = loaded;
    return Loaded ? <Loaded {...props} /> : <p class="loading">Loading</p>;
  };
}

const NotLoaded = ({ again }: { again: () => void }) => (
  <MessagePage title="This page did not load">
    <p>The link to the server failed, or the server has a new version. Nothing you entered is lost.</p>
    <div class="choices">
      <button type="button" class="button main" onClick={again}>
        Try again
      </button>
      <button type="button" class="button" onClick={() => location.reload()}>
        Load the page again
      </button>
    </div>
  </MessagePage>
);
