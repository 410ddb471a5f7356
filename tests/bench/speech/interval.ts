/** Wilson's 95 % interval of a share (Wilson 1927, from memory). */
export function wilson(part: number, n: number): { low: number; high: number } {
  const z = 1.96;
  const share = part / n;
  const middle = share + z ** 2 / (2 * n);
  const reach = z * Math.sqrt((share * (1 - share)) / n + z ** 2 / (4 * n ** 2));
  const whole = 1 + z ** 2 / n;
  return { low: Math.max(0, (middle - reach) / whole), high: Math.min(1, (middle + reach) / whole) };
}
