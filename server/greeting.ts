import { X509Certificate } from 'node:crypto';
import { renderUnicodeCompact } from 'uqr';
import { SCREENS } from '../client/browser/screens.ts';
import type { Fingerprint, TreeHead } from '../src/log/signed-head.ts';
import type { LocalNameState } from './local-name/local-name.ts';
import { lanAddresses } from './network/addresses.ts';
import type { Options } from './options.ts';
import { nameOf } from './postgres/address.ts';
import { VERSION } from './process/program.ts';
import type { RunningServer } from './start.ts';
import { SYNTHESISER } from './voice/synthesiser.ts';

const NOTES: Record<Options['tls'], string> = {
  own: 'The server signs its own certificate. On a new phone, open the page above or scan the code: it says how to trust it.',
  files: '',
  off: 'Without https, a page gets no microphone: people type (see --help).',
};

const BY_NAME: Record<Exclude<LocalNameState, 'held'>, string> = {
  asking: 'not yet: the network has not answered',
  taken: 'no: another machine on this network has that name. Give another one: --local-name',
  failed: 'no: this network takes no multicast DNS',
  'no-network': 'no: this machine is on no network',
};

const VOICE: Record<Options['voice'], string> = {
  on: `${SYNTHESISER.package}, which ${SYNTHESISER.licence}`,
  off: 'off: phones speak with their own',
};

/** A link that opens a mail program with the newest head written out. */
const mailOf = (address: string, head: TreeHead): string =>
  `mailto:${address}?subject=${encodeURIComponent(`Ladderline: head of ${head.size} signed heads`)}&body=${encodeURIComponent(JSON.stringify(head))}`;

/**
 * For the person who starts the server: one line for each address, the data folder, and the speech engine. `authority`:
 * the certificate (PEM) that phones are told to trust. `byName`: what became of the local name, where one was given.
 */
export function greeting(
  options: Options,
  { port, treeHead }: Pick<RunningServer, 'port' | 'treeHead'>,
  fingerprint: Fingerprint,
  speech: string,
  authority: string | undefined,
  byName?: LocalNameState,
): string {
  const scheme = options.tls === 'off' ? 'http' : 'https';
  const lan = lanAddresses(options.host).map((address) => `${scheme}://${address}:${port}`);
  const lines = [
    `Ladderline ${VERSION}`,
    `  This machine  http://localhost:${port}`,
    ...lan.map((url) => `  On the LAN    ${url}`),
    ...(byName === undefined
      ? []
      : [
          `  By name       ${byName === 'held' ? `${scheme}://${options.localName}:${port}` : BY_NAME[byName]}`,
        ]),
    `  Data folder   ${options.data}`,
    ...(options.store ? [`  Records       ${nameOf({ url: options.store })}`] : []),
    `  Signing key   ${fingerprint}`,
    `  Speech        ${speech}`,
    `  Voice         ${VOICE[options.voice]}`,
  ];
  if (options.headsMail) lines.push(`  Mail a head   ${mailOf(options.headsMail, treeHead())}`);
  const [address] = lanAddresses(options.host);
  const [first] = lan;
  if (address && first) {
    const newPhone = options.tls === 'own' ? `http://${address}:${port}${SCREENS.trust.path}` : undefined;
    if (newPhone) lines.push(`  A new phone   ${newPhone}`);
    if (authority) lines.push(`  Authority     ${new X509Certificate(authority).fingerprint256}`);
    if (NOTES[options.tls]) lines.push(`  Note          ${NOTES[options.tls]}`);
    lines.push('', renderUnicodeCompact(newPhone ?? first, { border: 2 }));
  }
  return lines.join('\n');
}
