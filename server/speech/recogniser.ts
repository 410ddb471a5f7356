import { wordGraph } from '../../src/grammar/graph.ts';
import { type Recogniser, recogniser } from '../../src/speech/recogniser.ts';
import { loadModel } from './model.ts';

export type { Recogniser };

/** The model in `folder` and the crew's grammar. Rejects with `SpeechUnavailable`. */
export async function loadRecogniser(folder: string): Promise<Recogniser> {
  return recogniser(await loadModel(folder), wordGraph());
}
