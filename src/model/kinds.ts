import type * as z from 'zod/mini';

/** The names that tell the members of a union apart, in their order: of facts `kindsOf(Fact, 'type')`. */
export const kindsOf = <U extends z.core.$ZodDiscriminatedUnion, K extends keyof z.output<U> & string>(
  union: U,
  by: K,
): z.output<U>[K][] => [...(union._zod.propValues?.[by] ?? [])] as z.output<U>[K][];
