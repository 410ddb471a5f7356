import { renderUnicodeCompact } from 'uqr';
import type { Fingerprint, TreeHead } from '../src/log/signed-head.ts';
import { lanAddresses } from './network/addresses.ts';
import type { Options } from './options.ts';
import { VERSION } from './process/program.ts';
import type { RunningServer } from './start.ts';
import { SYNTHESISER } from './voice/synthesiser.ts';

const NOTES: Record<Options['tls'], string> = {
  own: 'The server made its own certificate: phones warn once, and iPhones may still refuse it (see --help).',
  files: '',
  off: 'Without https, a page gets no microphone: people type (see --help).',
};

const VOICE: Record<Options['voice'], string> = {
  on: `${SYNTHESISER.package}, which ${SYNTHESISER.licence}`,
  off: 'off: phones speak with their own',
};

/** A link that opens a mail program with the newest head written out. */
const mailOf = (address: string, head: TreeHead): string =>
  `mailto:${address}?subject=${encodeURIComponent(`Ladderline: head of ${head.size} signed heads`)}&body=${encodeURIComponent(JSON.stringify(head))}`;

/** For the person who starts the server: one line for each address, the data folder, and the speech engine. */
export function greeting(
  options: Options,
  { port, treeHead }: Pick<RunningServer, 'port' | 'treeHead'>,
  fingerprint: Fingerprint,
  speech: string,
): string {
  const scheme = options.tls === 'off' ? 'http' : 'https';
  const lan = lanAddresses(options.host).map((address) => `${scheme}://${address}:${port}`);
  const lines = [
    `Ladderline ${VERSION}`,
    `  This machine  http://localhost:${port}`,
    ...lan.map((url) => `  On the LAN    ${url}`),
    `  Data folder   ${options.data}`,
    `  Signing key   ${fingerprint}`,
    `  Speech        ${speech}`,
    `  Voice         ${VOICE[options.voice]}`,
  ];
  if (options.headsMail) lines.push(`  Mail a head   ${mailOf(options.headsMail, treeHead())}`);
  const [first] = lan;
  if (first) {
    if (NOTES[options.tls]) lines.push(`  Note          ${NOTES[options.tls]}`);
    lines.push('', renderUnicodeCompact(first, { border: 2 }));
  }
  return lines.join('\n');
}
