import type { ComponentChildren } from 'preact';
import { Masthead } from './masthead.tsx';

/** The frame of a page that is read from the top. `class`: an extra class. */
export const Page = ({ class: own, children }: { class?: string; children: ComponentChildren }) => (
  <main class={own ? `page ${own}` : 'page'}>
    <Masthead />
    {children}
  </main>
);
