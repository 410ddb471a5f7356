/**
 * Whether a browser's request comes from a page of this server. Programs send no Origin, and have no user
 * whose browser could be misused.
 */
export function isOwnOrigin(origin: string | undefined, host: string | undefined): boolean {
  if (origin === undefined) return true;
  try {
    return new URL(origin).host === host;
  } catch {
    return false;
  }
}
