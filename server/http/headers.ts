/** What no page of ours needs is off for whatever a page might load (Permissions Policy, W3C). */
const PERMISSIONS = [
  'microphone=(self)',
  'camera=(self)',
  'screen-wake-lock=(self)',
  ...['geolocation', 'payment', 'usb', 'serial', 'hid', 'midi', 'display-capture'].map(
    (name) => `${name}=()`,
  ),
].join(', ');

/**
 * On every answer: pages, files, refusals and broken requests. By the OWASP HTTP Headers Cheat Sheet; from memory.
 * `host`: as the browser sent it, and known to be ours.
 */
export function protectiveHeaders(host: string | undefined): Record<string, string> {
  return {
    'Content-Security-Policy': contentPolicy(host),
    'Permissions-Policy': PERMISSIONS,
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Origin-Agent-Cluster': '?1',
    'X-Permitted-Cross-Domain-Policies': 'none',
  };
}

function contentPolicy(host: string | undefined): string {
  // Older Safari does not count a websocket to the same host as 'self'.
  const sockets = host ? ` ws://${host} wss://${host}` : '';
  return [
    "default-src 'self'",
    // The speech model may run in the page, as WebAssembly.
    "script-src 'self' 'wasm-unsafe-eval'",
    "worker-src 'self' blob:",
    "img-src 'self' data: blob:",
    "media-src 'self' data: blob:",
    `connect-src 'self'${sockets}`,
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

const ONE_YEAR_S = 365 * 24 * 3600;

/** RFC 6797. Only where phones trust the certificate: elsewhere a browser would lock people out. */
export const STRICT_TRANSPORT = { 'Strict-Transport-Security': `max-age=${ONE_YEAR_S}` };
