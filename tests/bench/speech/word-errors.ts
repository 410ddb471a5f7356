/** Substitutions, deletions and insertions between two texts (NIST's word error count). */
export function wordErrors(said: string, heard: string): number {
  const a = said.split(' ').filter(Boolean);
  const b = heard.split(' ').filter(Boolean);
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  a.forEach((word, i) => {
    const next = [i + 1];
    b.forEach((other, j) => {
      const change = (row[j] as number) + (word === other ? 0 : 1);
      next.push(Math.min(change, (row[j + 1] as number) + 1, (next[j] as number) + 1));
    });
    row = next;
  });
  return row[b.length] as number;
}
