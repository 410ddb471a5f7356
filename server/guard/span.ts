import { randomBytes } from 'node:crypto';

/** Where a piece of work stands in a trace: what one process carries to another is one trace at the collector. */
export interface Span {
  readonly trace: string;
  readonly id: string;
  /** That it was asked for by. */
  readonly parent?: string;
}

/** As the header `traceparent` of W3C Trace Context (version 00) has it: 16 and 8 bytes, in hexadecimal. */
const TRACEPARENT = /^00-([0-9a-f]{32})-([0-9a-f]{16})-[0-9a-f]{2}$/;

/** `traceparent`: as another process of ours wrote it. Without one a trace begins. */
export function spanAfter(traceparent: string | undefined): Span {
  const id = randomBytes(8).toString('hex');
  const [, trace, parent] = TRACEPARENT.exec(traceparent ?? '') ?? [];
  return trace === undefined || parent === undefined
    ? { trace: randomBytes(16).toString('hex'), id }
    : { trace, id, parent };
}

/** `01`: it is recorded. */
export const traceparentOf = ({ trace, id }: Span): string => `00-${trace}-${id}-01`;
