import * as z from 'zod/mini';

/** What the crew is asked before and after, and the tests that end in a yes or a no. */
export const CHECKLISTS = {
  before: ['outputs-isolated', 'people-told', 'access-inspected', 'laser-caution', 'path-clear'],
  /** Of a periodic visit, between the first reading and the tests. */
  care: ['optics-cleaned'],
  tests: ['panel-indication', 'wiring'],
  after: ['outputs-restored', 'covers-on', 'panel-normal'],
} as const;

export const Checklist = z.enum(['before', 'care', 'tests', 'after']);
export type Checklist = z.infer<typeof Checklist>;

export const ChecklistItem = z.enum([
  ...CHECKLISTS.before,
  ...CHECKLISTS.care,
  ...CHECKLISTS.tests,
  ...CHECKLISTS.after,
]);
export type ChecklistItem = z.infer<typeof ChecklistItem>;

/** The receiver's face half covered, a filter before it, or all of it covered. */
export const Cover = z.enum(['half', 'filter', 'full']);
export type Cover = z.infer<typeof Cover>;

/** Part of the light that a filter holds back, percent. */
export const FilterGrade = z.number().check(z.gt(0), z.lt(100));

/** With what the receiver was covered, and the grade of the filter, where it was one. */
export const UsedCover = z.object({ how: Cover, filter: z.optional(FilterGrade) });
export type UsedCover = z.infer<typeof UsedCover>;
