import type { Database, Row } from '../postgres/database.ts';
import { StoreFailure } from '../store/store.ts';

/** A firm that shares the database, and the login that its server has there. */
export interface Firm {
  readonly name: string;
  readonly login: string;
}

/** As it stands in lists and on pages. */
const LONGEST_NAME = 60;

/** The firms that share a database. Only the owner of the tables may look at them and change them. Rejects with `StoreFailure`. */
export class Firms {
  constructor(private readonly database: Database) {}

  /** By their names. */
  async all(): Promise<Firm[]> {
    await this.refuseOthers();
    return this.database.rows<Row & Firm>('SELECT name, login FROM firms ORDER BY name');
  }

  /** From now on whoever comes with this login has the rows of this firm, and no others. */
  async add({ name, login }: Firm): Promise<void> {
    await this.refuseOthers();
    if (name.trim() !== name || name.length < 1 || name.length > LONGEST_NAME)
      throw new StoreFailure(`a firm has a name of 1 to ${LONGEST_NAME} letters, without spaces around it.`);
    await this.refuseUnfit(login);
    const firms = await this.all();
    const taken = firms.find((firm) => firm.name === name || firm.login === login);
    if (taken)
      throw new StoreFailure(
        `${taken.name} is there already, with the login ${taken.login}: a firm has one login, and a login one firm.`,
      );
    await this.database.transaction(async (rows) => {
      await rows('INSERT INTO firms (name, login) VALUES ($1, $2)', [name, login]);
      await rows('SELECT grant_firm($1)', [login]);
    });
  }

  /** Its login is shown nothing from now on. What it has stays, and is there again when the firm is added under the same name. */
  async withdraw(name: string): Promise<Firm> {
    await this.refuseOthers();
    const [firm] = await this.database.rows<Row & Firm>(
      'DELETE FROM firms WHERE name = $1 RETURNING name, login',
      [name],
    );
    if (!firm) throw new StoreFailure(`no firm here is called ${name}: npm run firm -- list`);
    return firm;
  }

  private async refuseOthers(): Promise<void> {
    const is = await this.database.row<{ owned: boolean; owner: string }>(`
      SELECT pg_has_role(relowner, 'MEMBER') AS owned, pg_get_userbyid(relowner) AS owner
      FROM pg_class WHERE oid = to_regclass('firms')`);
    if (!is?.owned)
      throw new StoreFailure(
        `only the owner of the tables may do that: name ${is?.owner} in --store (postgres://${is?.owner}@…).`,
      );
  }

  /** One that would pass by the rules for rows keeps no firm apart. */
  private async refuseUnfit(login: string): Promise<void> {
    const is = await this.database.row<{ may: boolean; passes: boolean; owns: boolean }>(
      `SELECT rolcanlogin AS may, rolsuper OR rolbypassrls AS passes,
        pg_has_role(r.oid, (SELECT relowner FROM pg_class WHERE oid = to_regclass('firms')), 'MEMBER') AS owns
      FROM pg_roles r WHERE rolname = $1`,
      [login],
    );
    if (!is?.may)
      throw new StoreFailure(
        `the database has no login ${login}: make it first (CREATE ROLE ${login} LOGIN PASSWORD '…').`,
      );
    if (is.passes || is.owns)
      throw new StoreFailure(
        `the login ${login} passes by the rules that keep firms apart (it is a superuser, has BYPASSRLS, or owns the tables): make another.`,
      );
  }
}
