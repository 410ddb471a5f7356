import type { Log } from '../../src/model/entry.ts';
import { unreadableText } from '../../src/phrases/requests.ts';
import { JobRecord } from '../../src/protocol/jobs.ts';
import { ApiError, ask } from './requests.ts';

/**
 * A log as text and as read. It is kept as it was sent: the hash also covers fields that this page does not know.
 * @throws {ApiError}
 */
export async function readLog(path: string, token: string): Promise<{ text: string; log: Log }> {
  const response = await ask(path, { token });
  const text = await response.text();
  try {
    const raw: unknown = JSON.parse(text);
    JobRecord.parse(raw);
    return { text, log: raw as Log };
  } catch {
    throw new ApiError(unreadableText(response.status));
  }
}
