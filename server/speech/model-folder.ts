import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { env } from '@xenova/transformers';
import * as z from 'zod/mini';
import { TypedLanguage } from '../../src/model/language.ts';
import { SpeechUnavailable } from './transcriber.ts';

/** The files that every model folder must hold, and the graphs of each kind of model. */
const TABLES = ['config.json', 'preprocessor_config.json', 'tokenizer.json'];
const GRAPHS = { letters: ['model'], words: ['encoder_model', 'decoder_model_merged'] } as const;

/** Beside a model that writes letters: the folders of the second hearer, and of the hearer of single words. */
export const SECOND = 'second';
export const SINGLE = 'single';

/** The files that a phone fetches: those of a model that writes letters, and of the other hearers. */
export const LETTER_FILES = [
  ...TABLES,
  'onnx/model_quantized.onnx',
  ...['preprocessor_config.json', 'words.json', 'onnx/model_quantized.onnx'].map(
    (file) => `${SECOND}/${file}`,
  ),
  ...['words.json', 'onnx/model_quantized.onnx'].map((file) => `${SINGLE}/${file}`),
];

/** A model in the layout of `@xenova/transformers`. */
export interface ModelFolder {
  readonly path: string;
  /** The name by which the library finds it. */
  readonly name: string;
  /** `letters`: connectionist temporal classification; `words`: Whisper. */
  readonly writes: keyof typeof GRAPHS;
  /** What it hears: `language` of its config.json; English without one. Only of a model that writes letters. */
  readonly language: TypedLanguage | undefined;
  /** The weights are there in 8 bits; these are preferred. */
  readonly quantized: boolean;
  json(file: string): unknown;
}

const Config = z.looseObject({ model_type: z.optional(z.string()), language: z.optional(z.string()) });

function languageOf(folder: string, named: string | undefined): TypedLanguage | undefined {
  if (named === undefined || named === 'en') return undefined;
  const { data } = TypedLanguage.safeParse(named);
  if (data) return data;
  const known = ['en', ...TypedLanguage.options].join(', ');
  throw new SpeechUnavailable(
    `${folder}: config.json says that the model hears "${named}", and there are sentences in ${known} only.`,
  );
}

/** Opens the model's folder. From then on the library reads local files only. Throws `SpeechUnavailable`. */
export function openFolder(folder: string): ModelFolder {
  const there = (file: string): boolean => existsSync(join(folder, file));
  const json = (file: string): unknown => {
    try {
      return JSON.parse(readFileSync(join(folder, file), 'utf8'));
    } catch (error) {
      throw new SpeechUnavailable(`${join(folder, file)} cannot be read: ${error}`);
    }
  };
  const { model_type, language: named } = there('config.json') ? Config.parse(json('config.json')) : {};
  const isWhisper = model_type === 'whisper';
  const writes = isWhisper ? 'words' : 'letters';
  const graphs = (kind: string): string[] => GRAPHS[writes].map((graph) => `onnx/${graph}${kind}.onnx`);
  const quantized = !graphs('').every(there) || graphs('_quantized').every(there);
  const missing = [...TABLES, ...graphs(quantized ? '_quantized' : '')].filter((file) => !there(file));
  if (missing.length > 0) {
    throw new SpeechUnavailable(`There is no speech model in ${folder}: ${missing.join(', ')} missing.`);
  }
  const language = languageOf(folder, named);
  env.allowRemoteModels = false;
  env.localModelPath = `${dirname(resolve(folder))}/`;
  return { path: folder, name: basename(resolve(folder)), writes, language, quantized, json };
}
