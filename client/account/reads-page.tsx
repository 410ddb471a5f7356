import { useEffect, useState } from 'preact/hooks';
import { keyRoleText } from '../../src/phrases/keys.ts';
import { NO_READS, READS_ARE, readerText, readKindText } from '../../src/phrases/reads.ts';
import { type ReadLine, Reads } from '../../src/protocol/reads.ts';
import { request } from '../browser/requests.ts';
import { follow, linkTo } from '../browser/route.ts';
import type { PartsOf } from '../browser/screens.ts';
import { moment } from '../browser/times.ts';
import { useAct } from '../browser/use-act.ts';
import { Failure } from '../ui/failure.tsx';
import { Page } from '../ui/page.tsx';
import { SignIn } from './sign-in.tsx';
import './reads.css';

const readsOf = (log: string, before?: number): Promise<Reads> => {
  const query = new URLSearchParams({
    ...(log !== '' && { log }),
    ...(before !== undefined && { before: String(before) }),
  });
  return request(`/api/reads?${query}`, Reads);
};

/** Who read what, for an administrator; with `log`, of one job or site. */
export function ReadsPage({ log }: PartsOf<'reads'>) {
  const [lines, setLines] = useState<readonly ReadLine[]>();
  const [more, setMore] = useState(false);
  const { busy, failure, act } = useAct();
  const look = (known: readonly ReadLine[] = []) =>
    void act(
      () => readsOf(log, known.at(-1)?.number),
      (found) => {
        setLines([...known, ...found.reads]);
        setMore(found.more);
      },
    );
  useEffect(() => look(), []);
  return (
    <Page class="reads">
      <section class="card">
        <h1>Who read what</h1>
        <p class="hint">{READS_ARE}</p>
        {log !== '' && (
          <a class="button" href={linkTo('reads', {})} onClick={follow}>
            Show all records
          </a>
        )}
        {!lines && !failure && <p class="hint">Loading</p>}
        {lines?.length === 0 && <p>{NO_READS}</p>}
        <ul class="read-lines">
          {lines?.map((line) => (
            <Line key={line.number} of={line} isAlone={log !== ''} />
          ))}
        </ul>
        <Failure text={failure?.text} />
        {failure?.reason === 'locked' && <SignIn onSignedIn={() => look()} />}
        {more && (
          <button type="button" class="button" disabled={busy} onClick={() => look(lines)}>
            Show older ones
          </button>
        )}
      </section>
    </Page>
  );
}

const Line = ({ of: line, isAlone }: { of: ReadLine; isAlone: boolean }) => (
  <li>
    {line.reader === 'account' ? (
      <strong translate={false}>{line.name}</strong>
    ) : (
      <strong>{readerText(line.reader)}</strong>
    )}
    <span>{readKindText(line.what)}</span>
    {line.site !== undefined && (
      <span translate={false}>{[line.pair, line.site].filter(Boolean).join(', ')}</span>
    )}
    {line.role && (
      <span class="hint">
        <span>{keyRoleText(line.role)}</span> <span translate={false}>{line.key}</span>
      </span>
    )}
    <span class="hint">
      In the hour from <span translate={false}>{moment(line.hour)}</span>
    </span>
    {line.log !== undefined && !isAlone && (
      <a class="button" href={linkTo('reads', { log: line.log })} onClick={follow}>
        Only this record
      </a>
    )}
  </li>
);
