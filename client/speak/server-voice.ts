import type { SoundOut } from './sound-out.ts';
import type { Voice } from './voice.ts';

/** A voice made by the server, for a phone whose browser has none. A failure is silence: the speaker notices that. */
export function serverVoice(token: string, out: SoundOut): Voice {
  let current: { abort: AbortController; source?: AudioBufferSourceNode } | undefined;
  const cut = () => {
    const cutting = current;
    current = undefined;
    cutting?.abort.abort();
    cutting?.source?.stop();
  };
  return {
    unlock: () => out.unlock(),
    cut,
    async speak(text, { rate, volume }, { began, ended }) {
      cut();
      const mine: NonNullable<typeof current> = { abort: new AbortController() };
      current = mine;
      const sound = await fetchVoice(text, rate, token, mine.abort.signal);
      const context = out.context();
      if (!sound || !context || current !== mine) return;
      const buffer = await context.decodeAudioData(sound);
      if (current !== mine) return;
      const source = new AudioBufferSourceNode(context, { buffer });
      source.connect(new GainNode(context, { gain: volume })).connect(context.destination);
      source.onended = () => {
        if (current === mine) ended();
      };
      source.start();
      mine.source = source;
      began();
    },
  };
}

async function fetchVoice(
  text: string,
  rate: number,
  token: string,
  signal: AbortSignal,
): Promise<ArrayBuffer | undefined> {
  const query = new URLSearchParams({ text, rate: `${rate}` });
  try {
    const answer = await fetch(`/api/voice?${query}`, {
      headers: { authorization: `Bearer ${token}` },
      signal,
    });
    return answer.ok ? await answer.arrayBuffer() : undefined;
  } catch {
    return undefined;
  }
}
