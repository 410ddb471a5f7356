import { useState } from 'preact/hooks';
import type { JobId, Seq } from '../../src/model/ids.ts';
import { LISTEN, listenLabel } from '../../src/phrases/sound.ts';
import { ask } from '../browser/requests.ts';
import { useObjectUrl } from '../photos/use-object-url.ts';

/** Who may listen: with a token of the job, or of the site of the visit. */
export interface Listener {
  readonly token: string;
  readonly visit?: JobId;
}

/** The sound beside the words of an entry, fetched when somebody wants to hear it. */
export function Sound({ listener, seq, words }: { listener: Listener; seq: Seq; words: string }) {
  const { token, visit } = listener;
  const [sound, setSound] = useState<Blob>();
  const [trouble, setTrouble] = useState<string>();
  const url = useObjectUrl(sound);
  const path =
    visit === undefined
      ? `/api/sound?seq=${seq}`
      : `/api/site/sound?${new URLSearchParams({ job: visit, seq: String(seq) })}`;
  const listen = async () => {
    setTrouble(undefined);
    try {
      setSound(await (await ask(path, { token })).blob());
    } catch (error) {
      setTrouble((error as Error).message);
    }
  };
  if (url) {
    // biome-ignore lint/a11y/useMediaCaption: the words stand above it, as they were heard
    return <audio class="log-sound" src={url} controls autoplay aria-label={listenLabel(words)} />;
  }
  return (
    <p class="log-sound">
      <button type="button" class="entry-link" aria-label={listenLabel(words)} onClick={listen}>
        {LISTEN}
      </button>
      {trouble && <span role="alert"> {trouble}</span>}
    </p>
  );
}
