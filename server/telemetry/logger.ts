import { type DestinationStream, type Logger, pino } from 'pino';

export const LOG_LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'];

/**
 * JSON lines, a line for each thing that happened. What a line may hold: ids of jobs and entries, kinds, counts, times,
 * and blocks of addresses. Never a token, a code, a passphrase, a name, or what somebody said or wrote.
 */
export function makeLogger(
  level: string,
  to: DestinationStream = pino.destination({ dest: 2, sync: true }),
): Logger {
  return pino({ level, timestamp: pino.stdTimeFunctions.isoTime, serializers: { err: outline } }, to);
}

/** Of an error what helps to mend it. Whatever else hangs on it may be what somebody sent, so it is left out. */
function outline(error: unknown): object {
  if (!(error instanceof Error)) return { type: typeof error };
  const { name, message, stack, cause } = error;
  const { code } = error as NodeJS.ErrnoException;
  return {
    type: name,
    message,
    stack,
    ...(code !== undefined && { code }),
    ...(cause !== undefined && { cause: outline(cause) }),
  };
}
