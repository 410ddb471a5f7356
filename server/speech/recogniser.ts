import { wordGraph } from '../../src/grammar/graph.ts';
import { type Recogniser, recogniser } from '../../src/speech/recogniser.ts';
import { loadLetterModel } from './letter-model.ts';
import { openFolder } from './model-folder.ts';
import { loadSecondHearer } from './second-hearer.ts';
import { loadWordModel } from './word-model.ts';

export type { Recogniser };

/** The model in `folder`, the second hearer beside it, and the crew's grammar. Rejects with `SpeechUnavailable`. */
export async function loadRecogniser(folder: string): Promise<Recogniser> {
  const opened = openFolder(folder);
  return opened.writes === 'words'
    ? loadWordModel(opened)
    : recogniser(await loadLetterModel(opened), wordGraph(), await loadSecondHearer(opened));
}
