import { AloneWay } from '../../src/model/alone.ts';
import {
  ALONE_HEADING,
  ALONE_RULES,
  ALONE_WAYS,
  HOW_IT_GOES,
  WHAT_IT_IS_WORTH,
  WHAT_YOU_NEED,
} from '../../src/phrases/alone.ts';
import { follow, linkTo } from '../browser/route.ts';
import { Page } from '../ui/page.tsx';
import { LoneForm } from './lone-form.tsx';
import './alone.css';

/** The ways for one person alone: what each needs, how it goes, and what its evidence is worth. */
export const AlonePage = () => (
  <Page class="alone">
    <h1>{ALONE_HEADING}</h1>
    <p>{ALONE_RULES}</p>
    {AloneWay.options.map((way) => (
      <Way key={way} way={way} />
    ))}
    <LoneForm />
  </Page>
);

function Way({ way }: { way: AloneWay }) {
  const { title, needs, goes, worth, start } = ALONE_WAYS[way];
  return (
    <section class="card alone-way">
      <h2>{title}</h2>
      <h3>{WHAT_YOU_NEED}</h3>
      <p>{needs}</p>
      <h3>{HOW_IT_GOES}</h3>
      <ol>
        {goes.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <h3>{WHAT_IT_IS_WORTH}</h3>
      <p>{worth}</p>
      <a class="button main" href={linkTo('panel', { fresh: 'new', alone: way })} onClick={follow}>
        {start}
      </a>
    </section>
  );
}
