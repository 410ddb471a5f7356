import { appendFile } from 'node:fs/promises';
import type { Publish, Published } from './notary.ts';

/** So long may whoever takes the heads need to answer, ms. */
const WITHIN_MS = 10_000;

/** One JSON value a line: what is written and sent elsewhere. */
const lineOf = ({ tree, heads }: Published): string =>
  JSON.stringify({ format: 'ladderline-heads', version: 1, tree, heads });

/** Adds a line to a file, best on another machine or one that can only be added to. */
export const toFile =
  (file: string): Publish =>
  (news) =>
    appendFile(file, `${lineOf(news)}\n`, { mode: 0o644 });

/** Posts it as JSON. */
export const toAddress =
  (url: string): Publish =>
  async (news) => {
    const answer = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: lineOf(news),
      redirect: 'error',
      signal: AbortSignal.timeout(WITHIN_MS),
    });
    await answer.body?.cancel();
    if (!answer.ok) throw new Error(`${new URL(url).host} answered ${answer.status}`);
  };
