import type { Key, Part, SamplePart, Scene } from '../../src/charts/scene.ts';
import { shapeOf } from '../../src/charts/shapes.ts';
import { Marker, type Picks, Shape } from './marker.tsx';

/** A scene as a drawing. Without `onPick` its readings cannot be clicked, as on paper. */
export function Drawing({ scene, onPick }: { scene: Scene; onPick?: Picks['onPick'] | undefined }) {
  const { width, height, name, parts } = scene;
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      {parts.map((part, index) => (
        <PartView key={index} part={part} onPick={onPick} />
      ))}
    </svg>
  );
}

/** What a scene's marks mean. */
export function Keys({ keys }: { keys: readonly Key[] }) {
  return (
    <ul class="legend">
      {keys.map(({ parts, text }) => (
        <li key={text}>
          <svg class="swatch" width={20} height={20} viewBox="-10 -10 20 20" aria-hidden="true">
            {parts.map((part, index) => (
              <PartView key={index} part={part} onPick={undefined} />
            ))}
          </svg>
          {text}
        </li>
      ))}
    </ul>
  );
}

function PartView({ part, onPick }: { part: Part; onPick: Picks['onPick'] | undefined }) {
  switch (part.kind) {
    case 'line':
      return <path class={`line ${part.style}`} d={part.d} />;
    case 'area':
      return <path class={`area ${part.style}`} d={part.d} />;
    case 'text':
      return (
        <text class={part.style} x={part.x} y={part.y} text-anchor={part.anchor}>
          {part.text}
        </text>
      );
    case 'sample':
      return onPick ? <Marker sample={part} onPick={onPick} /> : <PlainSample sample={part} />;
  }
}

const PlainSample = ({ sample }: { sample: SamplePart }) => (
  <g class={sample.retracted ? 'retracted' : ''} transform={`translate(${sample.x},${sample.y})`}>
    <Shape sample={sample} outline={shapeOf(sample.gain)} />
  </g>
);
