import type { RequestListener, ServerResponse } from 'node:http';

/** The requests that are being answered, so that a server that stops can wait for them. */
export class UnderWay {
  private readonly open = new Set<ServerResponse>();
  private whenDone: (() => void)[] = [];

  counts(handle: RequestListener): RequestListener {
    return (request, response) => {
      this.open.add(response);
      response.once('close', () => {
        this.open.delete(response);
        if (this.open.size === 0) for (const done of this.whenDone.splice(0)) done();
      });
      handle(request, response);
    };
  }

  /** Resolves as soon as there is none. */
  done(): Promise<void> {
    return new Promise((resolve) => {
      if (this.open.size === 0) resolve();
      else this.whenDone.push(resolve);
    });
  }
}
