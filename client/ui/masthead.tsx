import { Mark } from './mark.tsx';

export const Masthead = () => (
  <header class="masthead">
    <a href="/" class="masthead-home">
      <Mark size={40} />
      <span>Ladderline</span>
    </a>
  </header>
);
