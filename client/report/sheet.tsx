import { useLayoutEffect, useRef } from 'preact/hooks';
import { type Page, pageNumber } from '../../src/report/report.ts';
import { BlockView } from './blocks.tsx';

/** Letter sizes, tried one after another until a page fits its sheet. */
const TYPES = [1, 0.92, 0.85, 0.78, 0.7, 0.62];

/** One page as a sheet of A4. */
export function Sheet({ page, index, total }: { page: Page; index: number; total: number }) {
  const { title, subtitle, badge, blocks, foot } = page;
  const sheet = useRef<HTMLElement>(null);
  const content = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (!sheet.current || !content.current) return;
    const { style } = content.current;
    style.setProperty('zoom', '1');
    for (const type of TYPES) {
      sheet.current.style.setProperty('--type', String(type));
      if (content.current.scrollHeight <= content.current.clientHeight) return;
    }
    style.setProperty('zoom', String(content.current.clientHeight / content.current.scrollHeight));
  }, [page]);
  return (
    <article class="sheet" ref={sheet}>
      <div class="sheet-content" ref={content}>
        <header>
          <div>
            <h1>{title}</h1>
            <p>{subtitle}</p>
          </div>
          <p class={badge.heed ? 'sheet-badge heed' : 'sheet-badge'}>{badge.text}</p>
        </header>
        {blocks.map((block, at) => (
          <BlockView key={at} block={block} />
        ))}
      </div>
      <footer>
        <span>{foot}</span>
        <span>{pageNumber(index, total)}</span>
      </footer>
    </article>
  );
}
