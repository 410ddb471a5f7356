import {
  AutoModelForSpeechSeq2Seq,
  AutoProcessor,
  AutoTokenizer,
  type PreTrainedTokenizer,
} from '@xenova/transformers';
import type { Recogniser } from '../../src/speech/recogniser.ts';
import { fromWritten, type Written } from '../../src/speech/written.ts';
import type { ModelFolder } from './model-folder.ts';

/** Texts followed at the same time. Each one costs a run of the decoder for each of its tokens. */
const BEAMS = 3;
/** No sentence of a crew is longer. This stops a model that repeats itself. */
const MOST_TOKENS = 60;

const ENGLISH = { language: 'english', task: 'transcribe' };
/** The library's types only have what all tokenizers have. */
type WhisperTokenizer = PreTrainedTokenizer & {
  get_decoder_prompt_ids(options: typeof ENGLISH): [number, number][];
};

/** A text that the library follows. `score`: log probability of its tokens. */
interface Beam {
  output_token_ids: number[];
  score: number;
}

/** A model that writes whole words (Whisper). The grammar sees only these words, and expectations have no effect. */
export async function loadWordModel({ name, quantized, json }: ModelFolder): Promise<Recogniser> {
  const [processor, tokenizer, model] = await Promise.all([
    AutoProcessor.from_pretrained(name),
    AutoTokenizer.from_pretrained(name),
    AutoModelForSpeechSeq2Seq.from_pretrained(name, { quantized }),
  ]);
  const english = isMultilingual(json) && {
    forced_decoder_ids: (tokenizer as WhisperTokenizer).get_decoder_prompt_ids(ENGLISH),
  };
  return {
    async hear(samples) {
      if (samples.length === 0) return fromWritten([]);
      const { input_features } = await processor(samples);
      let beams: Beam[] = [];
      await model.generate(input_features, {
        ...english,
        num_beams: BEAMS,
        max_new_tokens: MOST_TOKENS,
        // The returned result has no scores, nor has a search without beams.
        callback_function: (now: Beam[]) => {
          beams = now;
        },
      });
      return fromWritten(
        beams.map(
          ({ output_token_ids, score }): Written => ({
            text: tokenizer.decode(output_token_ids, { skip_special_tokens: true }),
            probability: Math.exp(score),
          }),
        ),
      );
    },
  };
}

/** Models for English only do not accept a language. */
function isMultilingual(json: ModelFolder['json']): boolean {
  try {
    return (json('generation_config.json') as { is_multilingual?: boolean }).is_multilingual === true;
  } catch {
    return false;
  }
}
