import type { Seen } from './crews.ts';
import type { CrewKeys } from './logs.ts';

/** Where the server's records are while it is measured. */
export interface Place {
  /** For the server's command line. */
  readonly args: readonly string[];
  /**
   * Lays down jobs whose logs are this long, of so many different pairs. Straight into the tables, in their order: ten million entries would take hours one
   * append after the other.
   */
  lay(jobs: number, length: number, pairs: number): Promise<CrewKeys[]>;
  /** Where the database has processes of its own, the first of them. */
  readonly database?: number;
  /** How many acknowledged messages are not where they were acknowledged. */
  misplaced(places: Seen['places']): Promise<number>;
  remove(): Promise<void>;
}

/** Logs laid down in one transaction. */
export const BATCH = 100;
