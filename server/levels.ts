import { HEAVY_WORK, type HeavyWork } from './guard/turns.ts';
import type { Rooms } from './jobs/rooms.ts';
import type { Sockets } from './jobs/sockets.ts';
import type { SpeechService } from './speech/service.ts';
import type { FreeSpace } from './store/free-space.ts';
import type { Metrics } from './telemetry/metrics.ts';

interface Measured {
  rooms: Rooms;
  sockets: Sockets;
  heavy: HeavyWork;
  speech: SpeechService;
  disk: FreeSpace;
}

/** What of the server is measured by a look at it, whenever the metrics are read. */
export function addLevels(metrics: Metrics, { rooms, sockets, heavy, speech, disk }: Measured): void {
  metrics.level('jobs_live', 'Jobs that somebody is connected to, or was a moment ago.', () => rooms.count);
  metrics.level(
    'connections',
    'Open websockets, by who is at the other end; none: has not said who it is.',
    () => sockets.counts(),
    'role',
  );
  metrics.level(
    'heavy_waiting',
    'Heavy work that waits for its turn.',
    () => HEAVY_WORK.map((kind) => [kind, heavy[kind].queued] as const),
    'kind',
  );
  metrics.level(
    'heavy_under_way',
    'Heavy work that is being done.',
    () => HEAVY_WORK.map((kind) => [kind, heavy[kind].underWay] as const),
    'kind',
  );
  metrics.level('speech_ready', '1 while the server can hear speech.', () => (speech.state.ready ? 1 : 0));
  metrics.level('disk_free_bytes', 'Room on the disk of the data folder.', () => disk.now());
  metrics.level('disk_least_bytes', 'Below it /api/health answers 503.', () => disk.least);
}
