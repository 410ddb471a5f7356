import { useEffect, useRef } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import { aloud } from '../language/aloud.ts';
import { hasVoice, loadVoice, phoneVoice } from '../speak/voice.ts';

const voice = phoneVoice();
export const voiceAvailable = hasVoice();

/**
 * Speaks the words for the crew again during the replay. Words that come while the voice is busy are left out: it
 * never says two things at once.
 */
export function useReplayVoice(entries: readonly Entry[], count: number, on: boolean): void {
  const busy = useRef(false);
  const said = useRef(count);
  useEffect(() => {
    if (!on) return;
    said.current = count;
    return () => {
      voice.cut();
      busy.current = false;
    };
  }, [on]);
  useEffect(() => {
    const came = entries.slice(said.current, count);
    said.current = count;
    if (!on || busy.current) return;
    const text = came.map(wordsOf).findLast((words) => words !== undefined);
    if (text === undefined) return;
    busy.current = true;
    const free = () => {
      busy.current = false;
    };
    voice.speak(aloud(text), loadVoice(), { began() {}, ended: free, failed: free });
  }, [entries, count, on]);
}

function wordsOf({ fact }: Entry): string | undefined {
  switch (fact.type) {
    case 'instruction':
      return fact.say;
    case 'readback':
    case 'query':
    case 'notice':
    case 'said':
      return fact.text;
    default:
      return undefined;
  }
}
