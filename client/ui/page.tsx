import type { ComponentChildren } from 'preact';
import { Masthead } from './masthead.tsx';

/** The frame of a page that is read from the top. `class`: a class of its own beside the frame's. */
export const Page = ({ class: own, children }: { class?: string; children: ComponentChildren }) => (
  <main class={own ? `page ${own}` : 'page'}>
    <Masthead />
    {children}
  </main>
);
