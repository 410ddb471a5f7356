import { TO_COVER } from '../../src/phrases/headings.ts';
import { COVER, type Part } from '../../src/report/report.ts';
import { useMoreAndMore } from '../ui/in-steps.ts';
import { BlockView } from './blocks.tsx';
import { InPart, Jump, spots } from './jump.tsx';

/** Drawn at first: about a screen of a phone. */
const FIRST_BLOCKS = 3;

/** The cover or a pair. On paper it begins on a sheet of its own. */
export function PartView({ part, hasCover }: { part: Part; hasCover: boolean }) {
  const { id, title, subtitle, badge, blocks, foot } = part;
  const drawn = useMoreAndMore(blocks.length, FIRST_BLOCKS);
  const seqs = new Set(
    blocks.flatMap((block) => (block.kind === 'entries' ? block.rows.map(({ seq }) => seq) : [])),
  );
  return (
    <InPart.Provider value={{ id, seqs }}>
      <article class="sheet" id={spots.part(id)} tabIndex={-1}>
        <header>
          <div>
            <h1>{title}</h1>
            <p>{subtitle}</p>
          </div>
          <p class={badge.heed ? 'sheet-badge heed' : 'sheet-badge'}>{badge.text}</p>
        </header>
        {hasCover && id !== COVER && (
          <p class="sheet-back">
            <Jump to={spots.part(COVER)}>{TO_COVER}</Jump>
          </p>
        )}
        {blocks.slice(0, drawn).map((block, at) => (
          <BlockView key={at} block={block} />
        ))}
        <footer>{foot}</footer>
      </article>
    </InPart.Provider>
  );
}
