/** `there`: from the process with the phone to the one with the job. `back`: the other way. */
export type Way = 'there' | 'back';

/** What takes messages from one process to another, in their order. */
export interface Carrier {
  /** Whoever listens on this way gets it. Where it resolves, the carrier has it. */
  send(way: Way, text: string): unknown;
  listen(way: Way, take: (text: string) => void): Promise<void>;
  close(): Promise<void>;
}

/** A carrier's server, where it has one, started for this run alone. */
export interface Broker {
  /** Given to both processes. */
  readonly address: string;
  /** Its processor time so far, ms. */
  processorMs(): number;
  end(): Promise<void>;
}

export interface Kind {
  readonly name: string;
  /** What becomes of what was on its way when it, or its line, breaks. */
  readonly keeps: string;
  /** Undefined where its program is not installed. */
  start(folder: string): Promise<Broker | undefined>;
  /** `isOther`: on the side of the process that answers. */
  open(address: string, isOther: boolean): Promise<Carrier>;
}
