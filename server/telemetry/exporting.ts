/** What tells somebody else how the server is. */
export interface Exporting {
  /** Gives what it still has, and ends. Never rejects. */
  close(): Promise<void>;
}
