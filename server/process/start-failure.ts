/** The server cannot start. The message says in one sentence why, and what to do. */
export class StartFailure extends Error {
  override name = 'StartFailure';
}
