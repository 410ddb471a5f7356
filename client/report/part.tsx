import { TO_COVER } from '../../src/phrases/headings.ts';
import { COVER, type Part } from '../../src/report/report.ts';
import { BlockView } from './blocks.tsx';
import { InPart, Jump, spots } from './jump.tsx';

/** The cover or a pair. On paper it begins on a sheet of its own. */
export function PartView({ part, hasCover }: { part: Part; hasCover: boolean }) {
  const { id, title, subtitle, badge, blocks, foot } = part;
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
        {blocks.map((block, at) => (
          <BlockView key={at} block={block} />
        ))}
        <footer>{foot}</footer>
      </article>
    </InPart.Provider>
  );
}
