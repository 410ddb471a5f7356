import { type ComponentChildren, createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Seq } from '../../src/model/ids.ts';
import { atMentions } from '../../src/report/named-entries.ts';

/** The part that is drawn, and the entries that it explains. */
export const InPart = createContext<{ id: string; seqs: ReadonlySet<Seq> }>({ id: '', seqs: new Set() });

/** Ids of what links on the page lead to. */
export const spots = {
  part: (part: string): string => `part-${part}`,
  block: (part: string, title: string): string => `block-${part}-${title}`,
  entry: (part: string, seq: Seq): string => `entry-${part}-${seq}`,
};

/** Leads to another place of this page. The address holds the token, so no link can stand there. */
export const Jump = ({ to, children }: { to: string; children: ComponentChildren }) => (
  <button type="button" class="jump" onClick={() => show(to)}>
    {children}
  </button>
);

function show(id: string): void {
  const element = document.getElementById(id);
  element?.scrollIntoView({ block: 'start' });
  element?.focus({ preventScroll: true });
}

/** A text in which "#12" leads to the row of entry 12. */
export function Linked({ text }: { text: string }) {
  const { id, seqs } = useContext(InPart);
  if (seqs.size === 0 || !text.includes('#')) return <>{text}</>;
  return (
    <>
      {atMentions(text).map(({ text: words, seq }, index) =>
        seq !== undefined && seqs.has(seq) ? (
          <Jump key={index} to={spots.entry(id, seq)}>
            {words}
          </Jump>
        ) : (
          words
        ),
      )}
    </>
  );
}
