import type { SamplePart } from '../../src/charts/scene.ts';
import { shapeOf } from '../../src/charts/shapes.ts';
import type { Seq } from '../../src/model/ids.ts';

export interface Picks {
  /** Shows an entry in the exchange. */
  onPick: (seq: Seq) => void;
}

/** The mark of a reading, drawn around the origin. */
export function Shape({ sample, outline }: { sample: SamplePart; outline: ReturnType<typeof shapeOf> }) {
  const { cameBy, retracted } = sample;
  return (
    <>
      {cameBy !== 0 && <path class="line tail" d={`M${-4 * cameBy},0H${-13 * cameBy}`} />}
      <path class={outline.hollow ? 'marker hollow' : 'marker'} d={outline.d} />
      {retracted && <path class="line strike" d="M-8,8L8,-8" />}
    </>
  );
}

/** One reading. Its label is its tooltip. A click shows its entry. */
export function Marker({ sample, onPick }: { sample: SamplePart } & Picks) {
  const { x, y, gain, label, retracted, seq } = sample;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') onPick(seq);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: there is no button inside a drawing
    <g
      class={retracted ? 'sample retracted' : 'sample'}
      transform={`translate(${x},${y})`}
      role="button"
      tabIndex={0}
      aria-label={label}
      onClick={() => onPick(seq)}
      onKeyDown={onKeyDown}
    >
      <title>{label}</title>
      <circle class="target" r={12} />
      <Shape sample={sample} outline={shapeOf(gain)} />
    </g>
  );
}
