import type * as z from 'zod/mini';

/** The lowest and the highest number that a schema lets pass; null where it has no limit. A field may be left out. */
export function rangeOf(
  field: z.core.$ZodNumber | z.core.$ZodOptional<z.core.$ZodNumber>,
): [low: number | null, high: number | null] {
  const { bag } = ('innerType' in field._zod.def ? field._zod.def.innerType : field)._zod;
  const { minimum, exclusiveMinimum, maximum, exclusiveMaximum } = bag as Bag;
  return [minimum ?? exclusiveMinimum ?? null, maximum ?? exclusiveMaximum ?? null];
}

/** What the checks of a number say of it. */
type Bag = { [limit in 'minimum' | 'exclusiveMinimum' | 'maximum' | 'exclusiveMaximum']?: number };
