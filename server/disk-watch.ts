import type { Logger } from 'pino';
import { diskAlmostFullText } from '../src/phrases/service.ts';
import type { FreeSpace } from './store/free-space.ts';

const EVERY_MS = 60_000;

/** Says once when the disk of the data folder fills up, and once when there is room again. Call what it returns to end it. */
export function watchDisk(disk: FreeSpace, log: Logger): () => void {
  let isLow = false;
  const look = async () => {
    const free = await disk.now();
    if (free < disk.least === isLow) return;
    isLow = !isLow;
    if (isLow) log.error({ free, least: disk.least }, diskAlmostFullText(free, disk.least));
    else log.info({ free }, 'the disk of the data folder has room again');
  };
  const lookSafely = () =>
    void look().catch((err: unknown) => log.error({ err }, 'the disk of the data folder cannot be asked'));
  lookSafely();
  const timer = setInterval(lookSafely, EVERY_MS).unref();
  return () => clearInterval(timer);
}
