import { type Archive, archivedName } from '../log/archive.ts';
import { isEnclosed, soundsIn } from '../log/enclosure.ts';
import type { SoundFault } from '../log/fault.ts';
import type { Entry } from '../model/entry.ts';

/**
 * Every sound of an archive held to the hash that an entry names. One that is not there is no fault: sounds are deleted when
 * their days are over, and a lost one leaves the words as they were understood.
 */
export function checkSounds(entries: readonly Entry[], { sounds }: Archive): readonly SoundFault[] {
  const named = soundsIn(entries);
  return [...sounds].flatMap(([seq, found]): SoundFault[] => {
    const sound = named.get(seq);
    if (!sound) return [{ kind: 'strange', name: archivedName('sounds', seq, found) }];
    const { salt, content } = found;
    const isWhole = salt !== undefined && content && isEnclosed({ salt, content }, sound.hash);
    return isWhole ? [] : [{ kind: 'changed', seq }];
  });
}
