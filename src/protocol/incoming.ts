import * as z from 'zod/mini';
import { FORGOTTEN } from '../model/forgotten.ts';
import { hiddenIn } from '../model/hidden.ts';
import { longestOf } from '../model/range.ts';
import { hiddenCharacterText, NOT_A_NAME, notAboveText, UNKNOWN_FIELD } from '../phrases/bad-requests.ts';

/** What is wrong with a field of a message, and where. */
export interface FieldFault {
  readonly path: readonly PropertyKey[];
  readonly message: string;
}

/** A text that may be longer than this may have several lines; a shorter one is a name. */
const NAME_AT_MOST = 200;

/**
 * What a new message may not bring although its schema lets it pass, because logs already written must still be read:
 * characters that nobody sees, what stands for a forgotten name and, where it is `strict`, fields that nobody knows.
 */
export function incomingFaults(
  schema: z.core.$ZodType,
  value: unknown,
  strict: boolean,
  path: readonly PropertyKey[] = [],
): FieldFault[] {
  const within = (inner: z.core.$ZodType, each = value, key?: PropertyKey): FieldFault[] =>
    incomingFaults(inner, each, strict, key === undefined ? path : [...path, key]);
  if (schema instanceof z.ZodMiniOptional || schema instanceof z.ZodMiniDefault)
    return within(schema.def.innerType);
  if (schema instanceof z.ZodMiniPipe) return within(schema.def.in);
  if (schema instanceof z.ZodMiniString && typeof value === 'string') {
    const hidden = hiddenIn(value, longestOf(schema) > NAME_AT_MOST);
    if (hidden) return [{ path, message: hiddenCharacterText(hidden) }];
    return value.trim() === FORGOTTEN ? [{ path, message: NOT_A_NAME }] : [];
  }
  if (schema instanceof z.ZodMiniArray && Array.isArray(value)) {
    return value.flatMap((each, i) => within(schema.def.element, each, i));
  }
  if (schema instanceof z.ZodMiniDiscriminatedUnion) {
    const option = named(schema, value);
    if (option) return within(option);
  }
  if (schema instanceof z.ZodMiniUnion) {
    const fitting = schema.def.options.filter((option) => z.safeParse(option, value).success);
    return fitting.map((option) => within(option)).toSorted((a, b) => a.length - b.length)[0] ?? [];
  }
  if (schema instanceof z.ZodMiniObject && typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, each]) => {
      const field = Object.hasOwn(schema.shape, key) ? schema.shape[key] : undefined;
      if (field) return within(field, each, key);
      return strict ? [{ path: [...path, key], message: UNKNOWN_FIELD }] : [];
    });
  }
  return [];
}

/** The one of a union's options that a value says that it is, without trying any. */
function named({ _zod: { def } }: z.ZodMiniDiscriminatedUnion, value: unknown): z.core.$ZodType | undefined {
  const name = (value as Record<string, unknown> | null)?.[def.discriminator];
  return def.options.find((option) => {
    const field = option instanceof z.ZodMiniObject ? option.shape[def.discriminator] : undefined;
    return field instanceof z.ZodMiniLiteral && field.def.values.includes(name as string);
  });
}

/** A refinement: no figure of a new value, as `inverted` pairs them, is above the one it must not be above. */
export const noneInverted =
  <T>(inverted: (value: T) => readonly (readonly [low: string, high: string])[], under: string[] = []) =>
  (value: T, ctx: z.core.$RefinementCtx<T>): void => {
    for (const [low, high] of inverted(value)) {
      const issue = { path: [...under, high], message: notAboveText(low, high) };
      ctx.issues.push({ code: 'custom', input: value, ...issue });
    }
  };
