import type { Captioned } from '../../src/charts/turns-scene.ts';
import type { Picks } from './marker.tsx';
import { Drawing, Keys } from './scene.tsx';
import { useWidth } from './use-width.ts';

/** A chart with its heading, as wide as the page allows. */
export function Chart(
  props: {
    draw: (width: number) => Captioned;
    firstWidth: number;
    empty: string;
    note?: string | undefined;
  } & Partial<Picks>,
) {
  const { draw, firstWidth, empty, note, onPick } = props;
  const [ref, width] = useWidth<HTMLDivElement>(firstWidth);
  const { title, caption, scene } = draw(Math.max(280, width));
  return (
    <figure class="chart">
      <figcaption>
        <h3>{title}</h3>
        {caption && <p>{caption}</p>}
      </figcaption>
      <div ref={ref} class="drawing">
        {scene ? <Drawing scene={scene} onPick={onPick} /> : <p class="empty">{empty}</p>}
      </div>
      {scene && <Keys keys={scene.keys} />}
      {note && <p class="note">{note}</p>}
    </figure>
  );
}
