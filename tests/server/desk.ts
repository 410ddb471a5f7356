import { SiteOpened, SiteView } from '../../src/protocol/site.ts';
import { get, newId, post } from './phone.ts';

/** A site's desk; with the other token, someone who only reads. */
export class Desk {
  constructor(
    readonly url: string,
    readonly token: string,
  ) {}

  static async open(url: string, site = 'Hollin Bridge sorting hall') {
    const opened = SiteOpened.parse(await (await post(url, '/api/sites', { site })).json());
    return { ...opened, desk: new Desk(url, opened.desk), reader: new Desk(url, opened.watch) };
  }

  /** Makes up an id when the body has none. Asking for a report is no command and has none. */
  post(path: string, body: object): Promise<Response> {
    const sent = path === '/api/site/report' ? body : { id: newId(), ...body };
    return post(this.url, path, sent, { authorization: `Bearer ${this.token}` });
  }

  get(path: string): Promise<Response> {
    return get(this.url, path, this.token);
  }

  /** The board as it is now, perhaps before every log was read. */
  async boardAtOnce(): Promise<SiteView> {
    return SiteView.parse(await (await this.get('/api/site')).json());
  }

  /** The board after every log was read. */
  async board(): Promise<SiteView> {
    for (;;) {
      const board = await this.boardAtOnce();
      if (board.pairs.every(({ status }) => status)) return board;
    }
  }
}
