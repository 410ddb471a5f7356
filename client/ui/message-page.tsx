import type { ComponentChildren } from 'preact';
import { Masthead } from './masthead.tsx';

/** A page that says one thing and what to do about it. */
export function MessagePage({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <main class="page">
      <Masthead />
      <section class="card">
        <h1>{title}</h1>
        {children}
        <p>
          <a class="button" href="/">
            To the start
          </a>
        </p>
      </section>
    </main>
  );
}
