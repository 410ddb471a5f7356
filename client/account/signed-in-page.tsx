import { useEffect } from 'preact/hooks';
import { follow, linkTo } from '../browser/route.ts';
import { useAct } from '../browser/use-act.ts';
import { Failure } from '../ui/failure.tsx';
import { Page } from '../ui/page.tsx';
import { finishSso } from './requests.ts';
import { goBack, takeLeft } from './sso.ts';

/** Where the provider of the firm leads back to: takes what it answered, and goes to where the person was. */
export function SignedInPage() {
  const { failure, act } = useAct();
  useEffect(() => {
    const left = takeLeft() ?? { back: linkTo('account', {}), again: false };
    const { search } = location;
    // What is in it is good once: nothing of it stays in the address or in the history.
    history.replaceState(null, '', location.pathname);
    void act(
      () => finishSso(search, left.again),
      () => goBack(left),
    );
  }, []);
  return (
    <Page>
      <section class="card">
        <h1>{failure ? 'Not signed in' : 'Signing in'}</h1>
        <Failure text={failure?.text} />
        {failure && (
          <a class="button main" href={linkTo('account', {})} onClick={follow}>
            Begin again
          </a>
        )}
      </section>
    </Page>
  );
}
