/** A number as people or programs write it. A comma before three figures could mean thousands and is not guessed at. */
export function numberIn(text: string): number | undefined {
  if (!/^[+-]?(\d+([.]\d+|,\d{1,2})?|[.]\d+)(e[+-]?\d{1,3})?$/i.test(text)) return undefined;
  const value = Number(text.replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}
