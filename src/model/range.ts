import type * as z from 'zod/mini';

/** The lowest and the highest number that a schema lets pass; null where it has no limit. A field may be left out. */
export function rangeOf(
  field: z.core.$ZodNumber | z.core.$ZodOptional<z.core.$ZodNumber>,
): [low: number | null, high: number | null] {
  const checks = checksOf('innerType' in field._zod.def ? field._zod.def.innerType : field);
  const low = checks.flatMap((check) => (check.check === 'greater_than' ? [Number(check.value)] : []));
  const high = checks.flatMap((check) => (check.check === 'less_than' ? [Number(check.value)] : []));
  return [low.length > 0 ? Math.max(...low) : null, high.length > 0 ? Math.min(...high) : null];
}

/** The longest text that a schema lets pass, in UTF-16 units; Infinity where it has no limit. */
export const longestOf = (text: z.core.$ZodType): number =>
  Math.min(
    Number.POSITIVE_INFINITY,
    ...checksOf(text).flatMap((check) => {
      if (check.check === 'max_length') return [check.maximum];
      return check.check === 'length_equals' ? [check.length] : [];
    }),
  );

const checksOf = (schema: z.core.$ZodType): Check[] =>
  (schema._zod.def.checks ?? []).map((check) => check._zod.def as Check);

/** What is read of the checks of a schema. */
type Check =
  | z.core.$ZodCheckGreaterThanDef
  | z.core.$ZodCheckLessThanDef
  | z.core.$ZodCheckMaxLengthDef
  | z.core.$ZodCheckLengthEqualsDef;
