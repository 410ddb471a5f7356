import { appendFileSync, readFileSync } from 'node:fs';
import { loadLetterModel } from '../../../server/speech/letter-model.ts';
import { openFolder } from '../../../server/speech/model-folder.ts';
import { loadSecondHearer, loadSingleWords } from '../../../server/speech/other-hearers.ts';
import { wordGraph } from '../../../src/grammar/graph.ts';
import { withEdges } from '../../../src/speech/edges.ts';
import { type Weighing, weigher } from '../../../src/speech/hear.ts';
import { secondHearer } from '../../../src/speech/second.ts';
import { knownTo, type Spotted, spot } from '../../../src/speech/single-words.ts';
import type { Utterance } from './recordings.ts';

/** What the three hearers made of one utterance, before any belief. */
export interface Stranger extends Pick<Utterance, 'set' | 'speaker' | 'text' | 'recordings'> {
  weighing: Weighing;
  spotted: Spotted | undefined;
  /** Processor time. */
  ms: number;
}

/** The same as a line of a file: what the hearers say of each text that was found. */
interface Line extends Pick<Utterance, 'set' | 'speaker' | 'text' | 'recordings'> {
  weighing: Pick<Weighing, 'free' | 'weighed'>;
  opinions?: Record<string, number>;
  scores?: Record<string, number>;
  leftOut?: Record<string, number>;
  rivals?: Spotted['rivals'];
  ms: number;
}

/** Hears all with the hearers of a model's folder. */
export async function* hearAll(model: string, utterances: readonly Utterance[]): AsyncGenerator<Stranger> {
  const folder = openFolder(model);
  const letters = await loadLetterModel(folder);
  const weigh = weigher(wordGraph(), letters.alphabet);
  const second = await loadSecondHearer(folder);
  const single = await loadSingleWords(folder);
  const opinionOf = second && secondHearer(second.words);
  for (const { sound, ...said } of utterances) {
    const samples = withEdges(await sound());
    const begun = process.cpuUsage();
    const weighing = weigh(
      await letters.logits(samples),
      {},
      second && opinionOf?.(await second.logits(samples)),
    );
    const first = weighing.weighed?.sentences[0]?.text ?? '';
    const spotted = single && knownTo(single, first) ? await spot(single, samples) : undefined;
    const { user, system } = process.cpuUsage(begun);
    yield { ...said, weighing, spotted, ms: (user + system) / 1000 };
  }
}

/** Adds a line to a file. Minus infinity, which JSON lacks, is left out. */
export function keep(file: string, { weighing, spotted, ...rest }: Stranger): void {
  const { free, weighed, opinion } = weighing;
  const texts = [...(weighed?.sentences ?? []), ...(spotted?.rivals ?? [])].map(({ text }) => text);
  const told = (say: (text: string) => number | undefined): Record<string, number> =>
    Object.fromEntries(
      texts.flatMap((text) => {
        const value = say(text);
        return value !== undefined && Number.isFinite(value) ? [[text, value]] : [];
      }),
    );
  const line: Line = {
    ...rest,
    weighing: { free, weighed },
    ...(opinion && { opinions: told(opinion) }),
    ...(spotted && { scores: told(spotted.score), leftOut: told(spotted.leftOut), rivals: spotted.rivals }),
  };
  appendFileSync(file, `${JSON.stringify(line)}\n`);
}

/** What `keep` wrote. */
export function kept(file: string): Stranger[] {
  return readFileSync(file, 'utf8')
    .trim()
    .split('\n')
    .map((line) => {
      const { weighing, opinions, scores, leftOut, rivals, ...rest } = JSON.parse(line) as Line;
      return {
        ...rest,
        weighing: {
          ...weighing,
          ...(opinions && { opinion: (text: string) => opinions[text] ?? Number.NEGATIVE_INFINITY }),
        },
        spotted: scores &&
          rivals && { rivals, score: (text) => scores[text], leftOut: (text) => leftOut?.[text] },
      };
    });
}
