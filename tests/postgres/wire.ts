import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';
import { setTimeout } from 'node:timers/promises';

/** A way to a process that can be cut, as a network between machines is, while the process itself goes on. */
export class Wire {
  private readonly ends = new Set<Socket>();
  private isCut = false;
  private readonly server = createServer((caller) => this.pass(caller));

  /** `portOf`: where the process is now; undefined where it is not known yet. */
  constructor(private readonly portOf: () => number | undefined) {}

  async lay(): Promise<void> {
    await once(this.server.listen(0, '127.0.0.1'), 'listening');
  }

  get url(): string {
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }

  /** All that is on it ends, and for so long nobody comes through. */
  async cut(ms: number): Promise<void> {
    this.isCut = true;
    for (const end of this.ends) end.destroy();
    await setTimeout(ms);
    this.isCut = false;
  }

  async remove(): Promise<void> {
    for (const end of this.ends) end.destroy();
    this.server.close();
    await once(this.server, 'close');
  }

  private pass(caller: Socket): void {
    const port = this.portOf();
    if (this.isCut || port === undefined) {
      caller.destroy();
      return;
    }
    const called = connect(port, '127.0.0.1');
    for (const [end, other] of [
      [caller, called],
      [called, caller],
    ] as const) {
      this.ends.add(end);
      end.setNoDelay(true);
      end.on('error', () => {});
      end.on('close', () => {
        this.ends.delete(end);
        other.destroy();
      });
      end.pipe(other);
    }
  }
}
