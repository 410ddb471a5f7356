import { useState } from 'preact/hooks';
import type { JobSetup } from '../../src/model/setup.ts';
import {
  BEGIN_HERE,
  CANNOT_KEEP,
  NO_SERVER_ABOUT,
  NO_SERVER_HEADING,
  NO_SERVER_TWO,
} from '../../src/phrases/kept-here.ts';
import type { Sitter } from '../../src/protocol/access.ts';
import { browserStorage } from '../browser/storage.ts';
import { addJobHere } from '../saved/jobs-here.ts';
import { saveSeat } from '../saved/saved-seats.ts';
import { Failure } from '../ui/failure.tsx';
import { intoSight } from '../ui/into-sight.ts';
import './here.css';

interface Props {
  /** What the form says now; undefined where something in it is wrong. */
  typed: () => { setup: JobSetup; sitter: Sitter } | undefined;
  /** No other phone has to reach this one. */
  isOnePhone: boolean;
  onBegun: () => void;
}

/** Offered where the server does not answer. */
export function BeginHere({ typed, isOnePhone, onBegun }: Props) {
  const [failure, setFailure] = useState<string>();
  const begin = async () => {
    const form = typed();
    if (!form) return;
    const { setup, sitter } = form;
    const title = `${setup.site}, ${setup.pair}`;
    try {
      const { newToken, RoomHere } = await import('./room-here.ts');
      // Asked only now: a browser that must not lose it may ask its person.
      await navigator.storage?.persist?.();
      const job = await RoomHere.begin(setup, sitter);
      const token = newToken();
      const keeps =
        addJobHere(browserStorage, { job, token, title }) &&
        saveSeat(browserStorage, { seat: 'panel', job, token, title, here: true });
      if (keeps) onBegun();
      else setFailure(CANNOT_KEEP);
    } catch {
      setFailure(CANNOT_KEEP);
    }
  };
  return (
    <section class="no-server" ref={intoSight}>
      <h2>{NO_SERVER_HEADING}</h2>
      <p>{isOnePhone ? NO_SERVER_ABOUT : NO_SERVER_TWO}</p>
      <Failure text={failure} />
      <button type="button" class="button" onClick={begin}>
        {BEGIN_HERE}
      </button>
    </section>
  );
}
