import { wordGraph } from '../../src/grammar/graph.ts';
import type { TypedLanguage } from '../../src/model/language.ts';
import { type LetterModel, type Recogniser, recogniser } from '../../src/speech/recogniser.ts';
import { grammarOf, remarkIn, understand } from '../../src/understand/understand.ts';
import { loadLetterModel } from './letter-model.ts';
import { openFolder } from './model-folder.ts';
import { loadSecondHearer, loadSingleWords } from './other-hearers.ts';
import { loadWordModel } from './word-model.ts';

export type { Recogniser };

/** Letters of another language, read with its grammar. The other hearers know English words only, and so does a reading of digits. */
function speaking(language: TypedLanguage, model: LetterModel): Recogniser {
  const grammar = grammarOf(language);
  const spoken = {
    fillers: grammar.fillers,
    understand: (text: string) => understand(text, language),
    remark: remarkIn(language),
  };
  const { hear } = recogniser(model, wordGraph('sentence', grammar), {}, spoken);
  return { hear: async (samples, options) => ({ ...(await hear(samples, options)), language }) };
}

/** The model in `folder`, the other hearers beside it, and the crew's grammar. Rejects with `SpeechUnavailable`. */
export async function loadRecogniser(folder: string): Promise<Recogniser> {
  const opened = openFolder(folder);
  if (opened.writes === 'words') return loadWordModel(opened);
  const { language } = opened;
  if (language) return speaking(language, await loadLetterModel(opened));
  return recogniser(await loadLetterModel(opened), wordGraph(), {
    second: await loadSecondHearer(opened),
    single: await loadSingleWords(opened),
  });
}
