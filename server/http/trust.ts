import { X509Certificate } from 'node:crypto';
import { Hono } from 'hono';
import { NO_AUTHORITY } from '../../src/phrases/bad-requests.ts';
import { AUTHORITY_PATH, TrustInfo } from '../../src/protocol/trust.ts';
import { refuse } from './http.ts';

/**
 * What a phone needs to trust the server's own certificate, over plain HTTP too. `certificate`: the one in use;
 * undefined where there is no https.
 */
export function trust(certificate: () => { authority?: string } | undefined): Hono {
  const app = new Hono();
  const authority = () => {
    const pem = certificate()?.authority;
    return pem === undefined ? undefined : new X509Certificate(pem);
  };
  app.get('/api/trust', (c) => {
    c.header('Cache-Control', 'no-store');
    return c.json(TrustInfo.parse(infoOf(certificate() !== undefined, authority())));
  });
  app.get(AUTHORITY_PATH, (c) => {
    const cert = authority();
    if (!cert) return refuse(c, 'bad-target', NO_AUTHORITY, 404);
    // By this type iPhones offer to install it.
    return c.body(new Uint8Array(cert.raw), 200, {
      'Content-Type': 'application/x-x509-ca-cert',
      'Cache-Control': 'no-store',
    });
  });
  return app;
}

function infoOf(hasHttps: boolean, own: X509Certificate | undefined): TrustInfo {
  if (!own) return { kind: hasHttps ? 'trusted' : 'no-https' };
  const name = /CN=([^\n,]+)/.exec(own.subject)?.[1] ?? '';
  return { kind: 'own-authority', name, fingerprint: own.fingerprint256 };
}
