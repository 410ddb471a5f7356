/** "1 pair", "12 pairs" */
export const pairCount = (pairs: number): string => `${pairs} ${pairs === 1 ? 'pair' : 'pairs'}`;

/** What a list or text on paper leaves out, and where to find it. */
export const andMore = (named: string, left: number): string => `${named} and ${left} more`;
export const cutText = (start: string, where: string): string => `${start}… (whole in ${where})`;
export const THE_LOG = 'the log';
