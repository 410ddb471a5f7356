import { wordGraph } from '../../src/grammar/graph.ts';
import { type Recogniser, recogniser } from '../../src/speech/recogniser.ts';
import { loadLetterModel } from './letter-model.ts';
import { openFolder } from './model-folder.ts';
import { loadSecondHearer, loadSingleWords } from './other-hearers.ts';
import { loadWordModel } from './word-model.ts';

export type { Recogniser };

/** The model in `folder`, the other hearers beside it, and the crew's grammar. Rejects with `SpeechUnavailable`. */
export async function loadRecogniser(folder: string): Promise<Recogniser> {
  const opened = openFolder(folder);
  if (opened.writes === 'words') return loadWordModel(opened);
  return recogniser(await loadLetterModel(opened), wordGraph(), {
    second: await loadSecondHearer(opened),
    single: await loadSingleWords(opened),
  });
}
