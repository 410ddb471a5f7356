import { spawnSync } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/**
 * A time-stamping authority that is none of ours: OpenSSL (`openssl ts`, after RFC 3161 and RFC 5816), with certificates by
 * `openssl ca`. Debian: apt-get install openssl.
 */
export const OPENSSL = spawnSync('openssl', ['version']).status === 0;
export const NO_OPENSSL = 'openssl is not installed: time stamps are not tried against another maker of them';

const TSA_USAGE = 'critical,timeStamping';

const CONFIG = `
[ca]
default_ca = own
[own]
database = index.txt
new_certs_dir = .
serial = serial
default_md = sha256
policy = anything
unique_subject = no
copy_extensions = none
[anything]
commonName = supplied
[req]
distinguished_name = dn
prompt = no
[dn]
CN = unused
[root]
basicConstraints = critical,CA:TRUE
keyUsage = critical,keyCertSign,cRLSign
subjectKeyIdentifier = hash
[tsa]
default_tsa = stamps
[stamps]
serial = tsa-serial
crypto_device = builtin
signer_digest = sha256
default_policy = 1.2.3.4.1
other_policies = 1.2.3.4.5
digests = sha256
accuracy = secs:1
ordering = no
tsa_name = no
ess_cert_id_chain = no
ess_cert_id_alg = sha256
`;

/** Runs in `folder`. Throws with what it said when it fails. */
export function openssl(folder: string, args: readonly string[], input?: Uint8Array): Buffer {
  const { status, stdout, stderr } = spawnSync('openssl', args, { cwd: folder, input });
  if (status !== 0) throw new Error(`openssl ${args.join(' ')}: ${stderr}`);
  return stdout;
}

export interface Wanted {
  /** Extended key usage, as OpenSSL writes it; empty: none. */
  usage?: string;
  keyUsage?: string;
  /** "YYMMDDHHMMSSZ" */
  from?: string;
  to?: string;
  /** More lines of extensions. */
  more?: string;
  /** Signs other certificates, and so many may stand below it. */
  authority?: number;
  rsa?: boolean;
  by?: string;
}

/** A folder with an authority that signs itself (`root`), and what it has signed. */
export class OtherAuthority {
  readonly folder = mkdtempSync(join(tmpdir(), 'ladderline-tsa-'));
  private made = 0;

  constructor(readonly name = 'Test stamps') {
    writeFileSync(join(this.folder, 'openssl.cnf'), CONFIG);
    writeFileSync(join(this.folder, 'index.txt'), '');
    writeFileSync(join(this.folder, 'serial'), '1000\n');
    writeFileSync(join(this.folder, 'tsa-serial'), '01\n');
    this.key('root', true);
    this.run(
      ...['req', '-new', '-config', 'openssl.cnf', '-key', 'root.key'],
      ...['-subj', `/CN=${name} root`, '-out', 'root.csr'],
    );
    this.run(
      ...['ca', '-batch', '-notext', '-selfsign', '-config', 'openssl.cnf', '-extensions', 'root'],
      ...['-keyfile', 'root.key', '-in', 'root.csr', '-out', 'root.pem'],
      ...['-startdate', '200101000000Z', '-enddate', '491231235959Z'],
    );
  }

  remove(): void {
    rmSync(this.folder, { recursive: true });
  }

  run(...args: string[]): Buffer {
    return openssl(this.folder, args);
  }

  path(file: string): string {
    return join(this.folder, file);
  }

  certificate(name: string): X509Certificate {
    return new X509Certificate(readFileSync(this.path(`${name}.pem`)));
  }

  private key(name: string, rsa: boolean): void {
    const of = rsa
      ? ['-algorithm', 'RSA', '-pkeyopt', 'rsa_keygen_bits:2048']
      : ['-algorithm', 'EC', '-pkeyopt', 'ec_paramgen_curve:P-256'];
    this.run('genpkey', ...of, '-out', `${name}.key`);
  }

  /** A certificate `NAME.pem` and its key. */
  issue(name: string, wanted: Wanted = {}): X509Certificate {
    const { usage = TSA_USAGE, keyUsage = 'critical,digitalSignature', authority, by = 'root' } = wanted;
    this.key(name, wanted.rsa ?? false);
    writeFileSync(
      this.path(`${name}.ext`),
      [
        authority === undefined
          ? 'basicConstraints = critical,CA:FALSE'
          : `basicConstraints = critical,CA:TRUE,pathlen:${authority}`,
        ...(keyUsage ? [`keyUsage = ${authority === undefined ? keyUsage : 'critical,keyCertSign'}`] : []),
        ...(usage && authority === undefined ? [`extendedKeyUsage = ${usage}`] : []),
        'subjectKeyIdentifier = hash',
        wanted.more ?? '',
        '',
      ].join('\n'),
    );
    this.run(
      'req',
      '-new',
      '-config',
      'openssl.cnf',
      '-key',
      `${name}.key`,
      '-subj',
      `/CN=${this.name} ${name}`,
      '-out',
      `${name}.csr`,
    );
    this.run(
      ...['ca', '-batch', '-notext', '-config', 'openssl.cnf', '-in', `${name}.csr`, '-out', `${name}.pem`],
      ...['-cert', `${by}.pem`, '-keyfile', `${by}.key`, '-extfile', `${name}.ext`],
      ...['-startdate', wanted.from ?? '250101000000Z', '-enddate', wanted.to ?? '491231235959Z'],
    );
    return this.certificate(name);
  }

  /** What `openssl ts` answers to a question (RFC 3161): a TimeStampResp. `chain`: certificates that it also puts in. */
  reply(question: Uint8Array, signer: string, chain: readonly string[] = []): Buffer {
    const file = `question-${++this.made}`;
    writeFileSync(this.path(file), question);
    const between = chain.map((name) => readFileSync(this.path(`${name}.pem`), 'utf8')).join('');
    if (between) writeFileSync(this.path('chain.pem'), between);
    return this.run(
      ...['ts', '-reply', '-config', 'openssl.cnf', '-section', 'stamps', '-queryfile', file],
      ...['-signer', `${signer}.pem`, '-inkey', `${signer}.key`, ...(between ? ['-chain', 'chain.pem'] : [])],
    );
  }

  /** A token over a TSTInfo of any kind, signed with any certificate, which `openssl ts` would refuse. `named`: with the ESSCertIDv2. */
  forge(info: Uint8Array, signer: string, named = true, more: readonly string[] = []): Buffer {
    const file = `info-${++this.made}`;
    writeFileSync(this.path(file), info);
    return this.run(
      ...['cms', '-sign', '-binary', '-nodetach', '-in', file, '-outform', 'DER', '-md', 'sha256'],
      ...[
        '-econtent_type',
        '1.2.840.113549.1.9.16.1.4',
        '-signer',
        `${signer}.pem`,
        '-inkey',
        `${signer}.key`,
      ],
      ...(named ? ['-cades'] : []),
      ...more,
    );
  }
}

/** A server on this machine; ended with the test. Its address. */
export async function answering(handle: RequestListener): Promise<string> {
  const server = createServer(handle).listen(0, '127.0.0.1');
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  await new Promise((resolve) => server.once('listening', resolve));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}

export const bodyOf = async (request: AsyncIterable<Uint8Array>): Promise<Buffer> => {
  const parts: Uint8Array[] = [];
  for await (const part of request) parts.push(part);
  return Buffer.concat(parts);
};

/** Answers as a time-stamping authority does over HTTP (RFC 3161, section 3.4). */
export const stamping =
  (authority: OtherAuthority, signer: string): RequestListener =>
  async (request, response) => {
    const reply = authority.reply(await bodyOf(request), signer);
    response.writeHead(200, { 'content-type': 'application/timestamp-reply' }).end(reply);
  };
