import { X509Certificate } from 'node:crypto';
import { Hono } from 'hono';
import { NO_AUTHORITY } from '../../src/phrases/bad-requests.ts';
import { AUTHORITY_PATH, type TrustInfo } from '../../src/protocol/trust.ts';
import { type Env, refuse } from './http.ts';

/** The certificate in use now; undefined where there is no https. `authority`: who signed it (PEM), where phones must trust it. */
export type CertificateNow = () => { authority?: string } | undefined;

const authorityNow = (certificate: CertificateNow): X509Certificate | undefined => {
  const pem = certificate()?.authority;
  return pem === undefined ? undefined : new X509Certificate(pem);
};

/** How a phone comes to a page that may use its microphone. */
export function trustApi(
  certificate: CertificateNow,
  localName: () => string | undefined = () => undefined,
): Hono<Env> {
  return new Hono<Env>().get('/trust', (c) =>
    c.json({
      ...infoOf(certificate() !== undefined, authorityNow(certificate)),
      localName: localName(),
    } satisfies TrustInfo),
  );
}

/** The certificate that phones are told to trust. */
export function authorityFile(certificate: CertificateNow): Hono<Env> {
  return new Hono<Env>().get(AUTHORITY_PATH, (c) => {
    const cert = authorityNow(certificate);
    if (!cert) return refuse(c, 'bad-target', NO_AUTHORITY, 404);
    // By this type iPhones offer to install it.
    return c.body(new Uint8Array(cert.raw), 200, {
      'Content-Type': 'application/x-x509-ca-cert',
      'Cache-Control': 'no-store',
    });
  });
}

function infoOf(hasHttps: boolean, own: X509Certificate | undefined): TrustInfo {
  if (!own) return { kind: hasHttps ? 'trusted' : 'no-https' };
  const name = /CN=([^\n,]+)/.exec(own.subject)?.[1] ?? '';
  return { kind: 'own-authority', name, fingerprint: own.fingerprint256 };
}
