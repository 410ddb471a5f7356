import { useEffect, useState } from 'preact/hooks';
import './square.css';

/** A square code to scan. `text`: one of our own addresses; `label`: what it leads to. */
export function Square({ text, label }: { text: string; label: string }) {
  const [svg, setSvg] = useState<string>();
  useEffect(() => {
    let shown = true;
    // The library is loaded only when a code is shown.
    import('uqr').then(
      ({ renderSVG }) => shown && setSvg(renderSVG(text, { border: 2 })),
      () => undefined,
    );
    return () => {
      shown = false;
    };
  }, [text]);
  // Our own address, drawn by the library: no text from a person is in it.
  return svg ? (
    <div class="square" role="img" aria-label={label} dangerouslySetInnerHTML={{ __html: svg }} />
  ) : (
    <div class="square" />
  );
}
