/**
 * The same answers, each worked out once: the hearers are asked about the same few texts of an utterance again and
 * again. For the length of one utterance, so it needs no limit.
 */
export function remembered<T>(answer: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    if (!known.has(text)) known.set(text, answer(text));
    return known.get(text) as T;
  };
}
