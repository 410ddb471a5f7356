import type { ComponentChildren } from 'preact';
import './site.css';

interface Props {
  masthead: ComponentChildren;
  /** The heading, and what belongs beside it. */
  head: ComponentChildren;
  children: ComponentChildren;
}

/** The frame of a site's pages. */
export const SiteFrame = ({ masthead, head, children }: Props) => (
  <main class="site">
    {masthead}
    <header class="site-head">{head}</header>
    {children}
  </main>
);
