import type { ComponentChildren } from 'preact';
import { Page } from './page.tsx';

/** A page that says one thing and what to do about it. */
export const MessagePage = ({ title, children }: { title: string; children: ComponentChildren }) => (
  <Page>
    <section class="card">
      <h1>{title}</h1>
      {children}
      <p>
        <a class="button" href="/">
          To the start
        </a>
      </p>
    </section>
  </Page>
);
