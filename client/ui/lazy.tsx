import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { breath } from './breath.ts';
import { MessagePage } from './message-page.tsx';

/** A component whose code is fetched apart. */
export type Lazy<P> = ComponentType<P> & {
  /** Begins to fetch the code, so that it is here before it is needed. */
  ahead(): void;
};

const Loading = () => <p class="loading">Loading</p>;

/**
 * A page whose code is fetched when it is first opened: at once, without waiting for a drawing. `Meanwhile` is drawn until the
 * code is here.
 */
export function lazy<P extends object>(
  load: () => Promise<ComponentType<P>>,
  Meanwhile: ComponentType<P> = Loading,
): Lazy<P> {
  let loaded: ComponentType<P> | undefined;
  let loading: Promise<void> | undefined;
  const fetched = (): Promise<void> => {
    loading ??= load().then(
      async (page) => {
        // To run the code and to draw the page are two pieces of work.
        await breath();
        loaded = page;
      },
      (error) => {
        loading = undefined;
        throw error;
      },
    );
    return loading;
  };
  // What fails now is fetched again when it is needed, and only then is it said.
  const ahead = () => void fetched().catch(() => undefined);
  function Lazy(props: P) {
    const [state, setState] = useState<'loading' | 'failed' | 'ready'>(loaded ? 'ready' : 'loading');
    if (state === 'loading') ahead();
    useEffect(() => {
      if (state !== 'loading') return;
      fetched().then(
        () => setState('ready'),
        () => setState('failed'),
      );
    }, [state]);
    if (state === 'failed') return <NotLoaded again={() => setState('loading')} />;
    const Loaded = loaded;
    return Loaded ? <Loaded {...props} /> : <Meanwhile {...props} />;
  }
  return Object.assign(Lazy, { ahead });
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
