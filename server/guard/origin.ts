/**
 * Whether a browser's request comes from a page of this server. A program sends no Origin, and is let in: it has no
 * user whose browser another website could misuse.
 */
export function isOwnOrigin(origin: string | undefined, host: string | undefined): boolean {
  if (origin === undefined) return true;
  try {
    return new URL(origin).host === host;
  } catch {
    return false;
  }
}
