import type { Receipt } from './socket.ts';

/**
 * What the phone on the ladder tells of the instruction that is valid now, where it is news after what it told before. What was
 * spoken is not only shown any more. `current`: the number of that instruction.
 */
export function receiptNews(
  { instruction, how }: Receipt,
  before: Receipt | undefined,
  current: number | undefined,
): Receipt | undefined {
  if (instruction !== current) return undefined;
  const known = before?.instruction === instruction ? before.how : undefined;
  return known === how || known === 'spoken' ? undefined : { instruction, how };
}
