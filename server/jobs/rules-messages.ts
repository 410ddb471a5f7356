import type { Input } from '../../src/conversation/input.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { FlatState } from '../../src/visit/flat-state.ts';
import type { Decision } from './rules.ts';

export interface Asked {
  readonly id: number;
  readonly job: JobId;
  readonly input: Input;
  readonly now: number;
  /** What it is decided from: the state after the last decision here, or before it, or another one. */
  readonly from: 'decided' | 'same' | FlatState;
}
/** `forget`: jobs that are put away. */
export type ToRules = { readonly asks: readonly Asked[]; readonly forget: readonly JobId[] };
export type FromRules = { readonly id: number } & (
  | { readonly decision: Decision }
  | { readonly failed: string }
);
